package volume

// A Range is one row of a package's validity table: the inclusive bounds
// between which a quantity may lie, and why they stand where they do. Each
// package lists its rows in a function named Limits; the checks, the
// documentation and the command's help all read that one table.
type Range struct {
	Name     string  // the quantity, as its RangeError names it
	Min, Max float64 // inclusive bounds, in Unit
	Unit     string  // empty for a pure number
	Source   string  // what sets the bounds
}

// Check returns nil if v lies within r, bounds included, and a [*RangeError]
// naming fn otherwise. NaN and infinities never lie within a range.
func (r Range) Check(fn string, v float64) error {
	if !(r.Min <= v && v <= r.Max) {
		return &RangeError{fn, r.Name, v, r.Min, r.Max, r.Unit, r.Source}
	}
	return nil
}
