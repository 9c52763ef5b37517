package calc

import (
	"iter"

	"example.com/pourwell/internal/quantity"
)

// A Typed is what was typed for one input: its texts in their order, one
// unless the input repeats.
type Typed struct {
	Name  string
	Texts []string
}

// Input returns the input called name, nil if c has none.
func (c *Calculation) Input(name string) *Input {
	if i := c.index(name); i >= 0 {
		return &c.all[i]
	}
	return nil
}

// CellKey returns the key of the input as a column of rows: its InputKey, with
// the unit where the value is a number of litres.
func (in *Input) CellKey(isText bool) string {
	if in.Named != "" && !isText {
		return in.InputKey() + "_l"
	}
	return in.InputKey()
}

// Cell returns the value of the input called name, in the unit of its key's
// suffix or as a text; ok is false if it has none.
func (v *Values) Cell(name string) (cell Value, ok bool) {
	i := v.calc.index(name)
	in, c := &v.calc.all[i], &v.cells[i]
	isText := in.Kind == quantity.Text || in.Repeat || in.Named != "" && len(c.texts) > 0
	cell = Value{Key: in.CellKey(isText), Number: quantity.Missing(), IsText: isText}
	switch {
	case !c.set:
		return cell, false
	case isText:
		cell.Text = c.texts[0]
		for _, t := range c.texts[1:] {
			cell.Text += " " + t
		}
	default:
		_, cell.Number = quantity.Suffix(in.Kind, c.si)
	}
	return cell, true
}

// Assign makes v a copy of from, which must belong to the same calculation,
// without allocating.
func (v *Values) Assign(from *Values) {
	copy(v.cells, from.cells)
	v.used = from.used
}

// Suppose sets the input called name to a value that was not typed but rests
// on something else, such as the environment. It is stated as an assumption.
func (v *Values) Suppose(name, text string) error {
	i := v.calc.index(name)
	if err := v.parse(i, []string{text}); err != nil {
		return err
	}
	v.cells[i].supposed = true
	return nil
}

// Share marks in v what a run with other, a copy of v, has read and supposed,
// for the assumptions that v states.
func (v *Values) Share(other *Values) {
	v.used = v.used || other.used
	for i, c := range other.cells {
		if c.supposed && !v.cells[i].set {
			v.cells[i] = c
		}
	}
}

// ByKey returns the number of the input whose key in JSON is key, in the unit
// of the key's suffix; ok is false if there is none.
func (v *Values) ByKey(key string) (value float64, ok bool) {
	for i := range v.calc.all {
		in, c := &v.calc.all[i], &v.cells[i]
		if c.set && !in.Repeat && in.Kind != quantity.Text && in.InputKey() == key {
			_, value := quantity.Suffix(in.Kind, c.si)
			return value, true
		}
	}
	return 0, false
}

// Each yields the inputs that have a value: the key in JSON, and a float64, a
// bool, a string, or a []string for an input that repeats.
func (v *Values) Each() iter.Seq2[string, any] {
	return func(yield func(string, any) bool) {
		for i := range v.calc.all {
			in, c := &v.calc.all[i], &v.cells[i]
			if !c.set {
				continue
			}
			var value any
			switch {
			case in.Repeat:
				value = c.texts
			case in.Kind == quantity.Switch:
				value = c.si == 1
			case in.Kind == quantity.Text, in.Named != "" && len(c.texts) > 0:
				value = c.texts[0]
			default:
				_, value = quantity.Suffix(in.Kind, c.si)
			}
			if !yield(in.InputKey(), value) {
				return
			}
		}
	}
}
