package sweep

import (
	"fmt"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// A Plan is what was typed for a calculation, with ranges and tolerances read.
type Plan struct {
	Base       *calc.Values // a range stands at its first value, a tolerance at its middle
	Axes       []*Axis      // in the order typed
	Tolerances []Tolerance  // in the order typed
}

// Read parses what was typed for the inputs of c. An input that is given twice
// without being one that repeats is a [*calc.UsageError].
func Read(c *calc.Calculation, typed []calc.Typed) (*Plan, error) {
	base, err := calc.NewValues(c)
	if err != nil {
		return nil, err
	}
	p := &Plan{Base: base}
	for _, t := range typed {
		in := c.Input(t.Name)
		if in != nil && len(t.Texts) > 1 && !in.Repeat {
			return nil, &calc.UsageError{
				What: fmt.Sprintf("--%s is given %d times", t.Name, len(t.Texts)),
				Hint: "give it once; several values are a list, A,B,C",
			}
		}
		if err := p.read(in, t); err != nil {
			return nil, err
		}
	}
	return p, nil
}

func (p *Plan) read(in *calc.Input, t calc.Typed) error {
	if in == nil {
		return p.Base.SetText(t.Name, t.Texts...)
	}
	axis, err := readInner(in, t.Texts)
	if err == nil && axis == nil && len(t.Texts) == 1 {
		axis, err = readAxis(in, t.Texts[0])
	}
	if err != nil {
		return err
	}
	if axis != nil {
		for i := range axis.texts { // words are checked before the first row
			if err := axis.set(p.Base, i); err != nil {
				return err
			}
		}
		p.Axes = append(p.Axes, axis)
		return axis.set(p.Base, 0)
	}
	if len(t.Texts) != 1 {
		return p.Base.SetText(t.Name, t.Texts...)
	}
	tolerance, err := readTolerance(in, t.Texts[0])
	if err != nil {
		return err
	}
	if tolerance != nil {
		if err := p.Base.SetText(t.Name, tolerance.middle); err != nil {
			return err
		}
		if err := tolerance.settle(p.Base); err != nil {
			return err
		}
		p.Tolerances = append(p.Tolerances, *tolerance)
		return nil
	}
	return p.Base.SetText(t.Name, t.Texts[0])
}

// Single reports whether p asks for one answer rather than rows.
func (p *Plan) Single() bool { return len(p.Axes) == 0 }

// Example returns an input of the calculation with a tolerance, as it may be
// typed.
func (p *Plan) Example() string {
	for _, in := range p.Base.Calculation().AllInputs() {
		switch in.Kind {
		case quantity.Temperature:
			return in.Name + " 38F+-1F"
		case quantity.Gauge:
			return in.Name + " 12psi+-5%"
		case quantity.Length, quantity.Volume, quantity.Count, quantity.Mass:
			first, _, _ := strings.Cut(strings.ReplaceAll(in.Kind.Example(), ",", " "), " ")
			return in.Name + " " + first + "+-5%"
		}
	}
	return "elevation 600m+-5%"
}

// RangeOf returns an input of c with a range, as it may be typed.
func RangeOf(c *calc.Calculation) string {
	for _, in := range c.Inputs {
		if in.Kind.Sizeable() && in.Kind != quantity.Number && in.Named == "" && !in.Repeat {
			return in.Name + " " + RangeExample(in.Kind)
		}
	}
	return "elevation " + RangeExample(quantity.Length)
}
