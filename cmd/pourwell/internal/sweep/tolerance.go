package sweep

import (
	"fmt"
	"math"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// A Tolerance is how far an input may be off, to either side. It is taken as
// the interval that holds 95 of 100 values, which scatter normally about the
// middle.
type Tolerance struct {
	Input *calc.Input
	Text  string // as typed after the sign

	middle   string  // text
	relative bool    // a percentage of the middle
	size     float64 // SI of the kind's difference, or a share of the middle
	value    float64 // the middle, SI
}

// PlusMinus returns the tolerance in the SI unit of the input's kind.
func (t *Tolerance) PlusMinus() float64 {
	if t.relative {
		return t.size * math.Abs(t.value)
	}
	return t.size
}

// signs are the ways to type plus or minus.
var signs = []string{"±", "+/-", "+-"}

// readTolerance reads "38F+-1F", "12psi+-5%" or "5%±0.5%". On a share the
// tolerance is in points, on anything else a percentage is relative. It returns
// nil if text has no tolerance.
func readTolerance(in *calc.Input, text string) (*Tolerance, error) {
	if !in.Kind.Sizeable() || in.Repeat {
		return nil, nil
	}
	for _, sign := range signs {
		middle, size, ok := strings.Cut(text, sign)
		if !ok {
			continue
		}
		t := &Tolerance{Input: in, Text: strings.TrimSpace(size), middle: strings.TrimSpace(middle)}
		return t, t.read()
	}
	return nil, nil
}

func (t *Tolerance) read() error {
	kind := quantity.StepOf(t.Input.Kind)
	if kind != quantity.Share && strings.HasSuffix(t.Text, "%") {
		kind, t.relative = quantity.Share, true
	}
	text := t.Text
	if !t.relative {
		text = withUnit(text, quantity.UnitOf(t.middle))
	}
	if kind == quantity.Count { // 60 guests give or take 7.5 is no mistake
		kind = quantity.Number
	}
	var err error
	if t.size, err = quantity.Parse(kind, text); err != nil {
		return asUsage(t.Input, "tolerance ", err)
	}
	switch {
	case !(t.size > 0):
		return usage(t.Input, fmt.Sprintf("a tolerance of %q is none", t.Text), "leave it out, or make it more than zero")
	case t.relative && t.Input.Kind == quantity.Temperature:
		return usage(t.Input, "a temperature has no percentage", "type a difference, for example 38F+-1F")
	}
	return nil
}

// settle takes the middle from v, where its text has been parsed. A tolerance
// wider than all that the input may be says nothing, and neither would a slope
// over it.
func (t *Tolerance) settle(v *calc.Values) error {
	t.value = v.Number(t.Input.Name)
	most := math.MaxFloat64
	own, _ := quantity.Suffix(t.Input.Kind, 0)
	if r, ok := t.Input.Range(); ok && quantity.Alike(own, r.Suffix) {
		most = quantity.SI(r.Suffix, r.Max) - quantity.SI(r.Suffix, r.Min)
	}
	if !(t.PlusMinus() <= most) {
		example := "+-5%"
		if t.Input.Kind == quantity.Temperature {
			example = "+-1F"
		}
		return usage(t.Input, fmt.Sprintf("a tolerance of %q is wider than the range of the input", t.Text), "type how far the value may be off, such as "+t.middle+example)
	}
	return nil
}

// spread returns the tolerance in the unit of its key.
func (t *Tolerance) spread() calc.InputSpread {
	suffix, size := quantity.Suffix(quantity.StepOf(t.Input.Kind), t.PlusMinus())
	key := strings.ReplaceAll(t.Input.Name, "-", "_")
	if suffix != "" && !strings.HasSuffix(key, "_"+suffix) {
		key += "_" + suffix
	}
	return calc.InputSpread{Name: t.Input.Name, Text: t.Text, Key: key, Size: size}
}
