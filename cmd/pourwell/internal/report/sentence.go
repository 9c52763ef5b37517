package report

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// Sentence writes the numbers that s quotes, {key} or {38.5 c}, in the units
// of sys. A key that has no value is left as it stands.
func Sentence(s string, in *calc.Values, out *calc.Result, sys quantity.System) string {
	return quantity.Quoted(s, func(inside string) string { return quoted(inside, in, out, sys) })
}

// quoted returns what {inside} stands for.
func quoted(inside string, in *calc.Values, out *calc.Result, sys quantity.System) string {
	if text, ok := quantity.Quote(inside, sys); ok {
		return text
	}
	v, ok := out.Get(inside)
	if !ok && in != nil {
		v, ok = in.ByKey(inside)
	}
	if !ok {
		return "{" + inside + "}"
	}
	return quantity.Show(suffixOf(inside), v, sys)
}
