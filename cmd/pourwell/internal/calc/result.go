package calc

import (
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// A Result is the answer of one calculation. Sentences in it quote numbers as
// {key}, a result or input key, or as {38.5 c}, a number with the unit suffix
// of a key; the report writes them in the reader's units.
type Result struct {
	Answer   string   // the answer in plain words
	Values   []Value  // in the order set
	Notes    []string // what the answer rests on and what it leaves out
	Cautions []string // what can hurt someone
	Tables   []Table

	steps []func() []volume.Step
	bands []bandOf
}

type bandOf struct {
	key  string
	band func() Band
}

// A Value is one answer under its key: a number in the unit of the key's
// suffix, or a text.
type Value struct {
	Key    string
	Number float64
	Text   string
	IsText bool
}

// A Table is a list of rows under one key, such as the tubes of a line.
type Table struct {
	Key     string
	Columns []string // keys
	Rows    [][]any  // each cell a float64 or a string
	Curve   bool     // the rows are a course: later columns against the first
}

// A Band is the uncertainty of the answer under Key, in the key's unit.
type Band struct {
	Key       string
	Low, High float64
	Source    string
}

// Reset empties r for another run.
func (r *Result) Reset() {
	r.Answer = ""
	r.Values, r.Notes, r.Cautions = r.Values[:0], r.Notes[:0], r.Cautions[:0]
	r.Tables, r.steps, r.bands = r.Tables[:0], r.steps[:0], r.bands[:0]
}

// Set adds an answer: a number v in the unit of the key's suffix.
func (r *Result) Set(key string, v float64) {
	r.Values = append(r.Values, Value{Key: key, Number: v})
}

// SetText adds an answer that is a word.
func (r *Result) SetText(key, text string) {
	r.Values = append(r.Values, Value{Key: key, Text: text, IsText: true})
}

// Get returns the number set under key; ok is false if there is none.
func (r *Result) Get(key string) (v float64, ok bool) {
	for i := range r.Values {
		if r.Values[i].Key == key && !r.Values[i].IsText {
			return r.Values[i].Number, true
		}
	}
	return 0, false
}

// Note adds a sentence about what the answer rests on.
func (r *Result) Note(sentence string) { r.Notes = append(r.Notes, sentence) }

// Caution adds a sentence about what can hurt someone.
func (r *Result) Caution(sentence string) { r.Cautions = append(r.Cautions, sentence) }

// Remark adds what a package's result says beside its numbers: cautions in
// their place, notes in theirs.
func (r *Result) Remark(remarks []volume.Remark) {
	for _, m := range remarks {
		if m.Severity == volume.Note {
			r.Note(string(m.Text))
		} else {
			r.Caution(string(m.Text))
		}
	}
}

// Table adds a list of rows.
func (r *Result) Table(t Table) { r.Tables = append(r.Tables, t) }

// Working adds the steps of a package's result, called only if asked for.
func (r *Result) Working(steps func() []volume.Step) { r.steps = append(r.steps, steps) }

// Steps returns the working of the whole answer.
func (r *Result) Steps() []volume.Step {
	var all []volume.Step
	for _, s := range r.steps {
		all = append(all, s()...)
	}
	return all
}

// Band adds the uncertainty of the answer under key, called only if asked
// for.
func (r *Result) Band(key string, band func() volume.Band) {
	r.bands = append(r.bands, bandOf{key, func() Band {
		b := band()
		_, suffix := quantity.SplitKey(key)
		return Band{key, quantity.Convert(b.Suffix, suffix, b.Low), quantity.Convert(b.Suffix, suffix, b.High), b.Source}
	}})
}

// Lead returns the key of the leading answer: the first that has a band, else
// the first that is a number, else "".
func (r *Result) Lead() string {
	if len(r.bands) > 0 {
		return r.bands[0].key
	}
	for i := range r.Values {
		if !r.Values[i].IsText {
			return r.Values[i].Key
		}
	}
	return ""
}

// Bands returns the uncertainties of the answers that have one.
func (r *Result) Bands() []Band {
	all := make([]Band, len(r.bands))
	for i, b := range r.bands {
		all[i] = b.band()
	}
	return all
}
