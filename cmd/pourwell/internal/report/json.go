package report

import (
	"bytes"
	"encoding/json"
	"io"
	"math"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// schema is the version of the JSON contract. Keys are added, never renamed.
const schema = 1

// An object is a JSON object whose members keep their order.
type object []member

type member struct {
	name  string
	value any
}

func (o *object) add(name string, value any) { *o = append(*o, member{name, value}) }

// MarshalJSON writes the members in order; a number that is not finite is
// null.
func (o object) MarshalJSON() ([]byte, error) {
	buf := []byte{'{'}
	for _, m := range o {
		if f, ok := m.value.(float64); ok && (math.IsNaN(f) || math.IsInf(f, 0)) {
			m.value = nil
		}
		value, err := marshal(m.value)
		if err != nil {
			return nil, err
		}
		buf = append(appendName(buf, m.name), value...)
	}
	return append(buf, '}'), nil
}

// appendName begins the next member of the object that buf ends in.
func appendName(buf []byte, name string) []byte {
	if buf[len(buf)-1] != '{' {
		buf = append(buf, ',')
	}
	return append(appendString(buf, name), ':')
}

// appendString appends s as a JSON string.
func appendString(buf []byte, s string) []byte {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			text, _ := marshal(s) // a string has always a form in JSON
			return append(buf, text...)
		}
	}
	return append(append(append(buf, '"'), s...), '"')
}

func marshal(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimRight(b.Bytes(), "\n"), err
}

// WriteJSON writes v as one line of JSON.
func WriteJSON(w io.Writer, v any) error {
	b, err := marshal(v)
	if err != nil {
		return err
	}
	_, err = w.Write(append(b, '\n'))
	return err
}

// JSON writes the result as one object on one line.
func JSON(w io.Writer, in *calc.Values, out *calc.Result, opt Options) error {
	var o object
	o.add("schema", schema)
	o.add("calculation", in.Calculation().Title())
	o.add("inputs", inputsObject(in, nil))
	o.add("answer", Sentence(out.Answer, in, out, opt.Units))
	o.add("results", resultsObject(out))
	steps := []object{}
	for _, s := range out.Steps() {
		steps = append(steps, object{
			{"name", s.Name}, {"symbol", s.Symbol}, {"value", s.Value}, {"unit", quantity.Symbol(s.Suffix)}, {"source", s.Source},
		})
	}
	o.add("steps", steps)
	bands := object{}
	for _, b := range out.Bands() {
		bands.add(b.Key, object{{"low", b.Low}, {"high", b.High}, {"source", b.Source}})
	}
	o.add("bands", bands)
	if opt.Spreads != nil {
		o.add("tolerances", spreadsObject(opt.Spreads, out.Bands()))
	}
	o.foot(in, out, out.Notes, out.Cautions, opt.Units)
	return WriteJSON(w, o)
}

// foot adds what an answer, or all rows, rest on, and what can hurt someone.
func (o *object) foot(in *calc.Values, out *calc.Result, notes, cautions []string, sys quantity.System) {
	add := func(name string, sentences []string) {
		list := []string{}
		for _, s := range sentences {
			list = append(list, Sentence(s, in, out, sys))
		}
		o.add(name, list)
	}
	add("assumptions", in.Assumptions())
	add("notes", notes)
	add("cautions", cautions)
}

// inputsObject lists the inputs that have a value, in their order, without
// those whose key skip knows.
func inputsObject(in *calc.Values, skip func(key string) bool) object {
	o := object{}
	for key, value := range in.Each() {
		if skip == nil || !skip(key) {
			o.add(key, value)
		}
	}
	return o
}

// resultsObject lists the answers and tables under their keys. Sentences in a
// table quote their numbers in both systems, since units of display change no
// result.
func resultsObject(out *calc.Result) object {
	o := object{}
	for _, v := range out.Values {
		if v.IsText {
			o.add(v.Key, v.Text)
		} else {
			o.add(v.Key, v.Number)
		}
	}
	for _, t := range out.Tables {
		rows := []object{}
		for _, r := range t.Rows {
			row := object{}
			for i, c := range r {
				if text, ok := c.(string); ok {
					c = Sentence(text, nil, out, quantity.Both)
				}
				row.add(t.Columns[i], c)
			}
			rows = append(rows, row)
		}
		o.add(t.Key, rows)
	}
	return o
}
