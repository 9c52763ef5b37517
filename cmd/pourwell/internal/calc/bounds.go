package calc

import (
	"strings"
	"sync"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// limits holds the rows of the packages' validity tables by what they bound,
// such as "volume.Tub.Height"; made when first asked for.
var limits = sync.OnceValue(func() map[string]volume.Range {
	rows := map[string]volume.Range{}
	for pkg, table := range map[string]func() []volume.Range{
		"volume": volume.Limits, "thermal": thermal.Limits, "carbonation": carbonation.Limits, "lines": lines.Limits,
	} {
		for _, r := range table() {
			for _, field := range strings.Fields(r.Fields) {
				rows[pkg+"."+field] = r
			}
		}
	}
	return rows
})

// Limit returns the row that bounds a field. It panics if there is none, a
// mistake in a description.
func Limit(field string) volume.Range {
	if r, ok := limits()[field]; ok {
		return r
	}
	panic("calc: no range for " + field)
}

// Answer holds what was typed, or set by the environment, against the ranges of
// the inputs, whether the calculation comes to use it or not, and runs it.
// Outside one it returns a [*volume.RangeError].
func (c *Calculation) Answer(in *Values, out *Result) error {
	for i := range c.all {
		if in.cells[i].given || in.cells[i].supposed {
			if err := c.all[i].check(c, in.cells[i].si); err != nil {
				return err
			}
		}
	}
	if err := c.Run(in, out); err != nil {
		return err
	}
	in.noteUnused(out)
	return nil
}

// check holds an input's value, in SI, against its range.
func (in *Input) check(c *Calculation, si float64) error {
	if in.limit.Name == "" || in.Repeat {
		return nil
	}
	suffix, v := in.limit.Suffix, si
	if own, _ := quantity.Suffix(in.Kind, 0); quantity.Alike(own, suffix) {
		v = quantity.In(suffix, si)
	}
	return in.limit.Check(c.Title(), v)
}
