package calc

import (
	"fmt"

	"example.com/pourwell/internal/quantity"
)

// Quote replaces each {key} in s, a key of r or of the inputs, by the number
// under it, {38.5 c}, so that s can stand apart from them.
func (r *Result) Quote(s string, in *Values) string {
	return quantity.Quoted(s, func(inside string) string {
		v, ok := r.Get(inside)
		if !ok {
			v, ok = in.ByKey(inside)
		}
		if ok {
			_, suffix := quantity.SplitKey(inside)
			inside = fmt.Sprintf("%v %s", v, suffix)
		}
		return "{" + inside + "}"
	})
}

// A TypedInput is an input that was typed, as a part of a sentence.
type TypedInput struct {
	Name     string
	Words    string
	Sentence string // "temp {3.3 c}"
	Value    Value
}

// Typed returns the inputs that were typed, in their order.
func (v *Values) Typed() []TypedInput {
	var all []TypedInput
	for i := range v.calc.all {
		in := &v.calc.all[i]
		if !v.cells[i].given {
			continue
		}
		cell, _ := v.Cell(in.Name)
		switch {
		case in.Kind == quantity.Switch:
			all = append(all, TypedInput{in.Name, in.Words(), in.Words(), cell})
		case cell.IsText:
			all = append(all, TypedInput{in.Name, in.Words(), in.Words() + " " + cell.Text, cell})
		default:
			suffix, _ := quantity.Suffix(in.Kind, 0)
			all = append(all, TypedInput{in.Name, in.Words(), fmt.Sprintf("%s {%v %s}", in.Words(), cell.Number, suffix), cell})
		}
	}
	return all
}
