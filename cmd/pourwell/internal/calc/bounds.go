package calc

import (
	"strings"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// A bound is the range that an input's description states, ready to be held
// against its value in SI.
type bound struct {
	input       int
	limit       volume.Range
	zero, scale float64 // SI of 0 and of 1 less 0 in the unit of the limit
}

// boundsOf returns the bounds of the inputs that have a range.
func boundsOf(inputs []Input) []bound {
	var all []bound
	for i := range inputs {
		in := &inputs[i]
		if in.Limit.Name == "" || !in.Kind.Sizeable() || in.Repeat {
			continue
		}
		unit := strings.TrimSuffix(in.Limit.Unit, " abs")
		if in.Kind == quantity.Gauge && unit != in.Limit.Unit {
			continue // of absolute pressures; the air around decides
		}
		zero, errZero := quantity.Parse(in.Kind, "0"+unit)
		one, errOne := quantity.Parse(in.Kind, "1"+unit)
		if errZero == nil && errOne == nil {
			all = append(all, bound{i, in.Limit, zero, one - zero})
		}
	}
	return all
}

// Answer runs the calculation and holds what was typed against the ranges that
// the descriptions state; outside one it returns a [*volume.RangeError]. The
// packages check their arguments themselves, and what they say goes first: this
// holds where a calculation does not come to use one.
func (c *Calculation) Answer(in *Values, out *Result) error {
	if err := c.Run(in, out); err != nil {
		return err
	}
	for i := range c.bounds {
		if err := c.bounds[i].check(c, &in.cells[c.bounds[i].input]); err != nil {
			return err
		}
	}
	return nil
}

func (b *bound) check(c *Calculation, cell *cell) error {
	if !cell.given {
		return nil
	}
	v := (cell.si - b.zero) / b.scale
	slack := 1e-9 * (b.limit.Max - b.limit.Min) // rounding on the way through SI
	if v >= b.limit.Min-slack && v <= b.limit.Max+slack {
		return nil
	}
	return b.limit.Check(c.Title(), v)
}
