package volume

import (
	"math"

	"example.com/pourwell/internal/quantity"
)

// A Range is one row of a package's validity table: the inclusive bounds
// between which a quantity may lie, and why they stand where they do. Each
// package lists its rows in a function named Limits; the checks, the
// documentation and the command's help all read that one table.
type Range struct {
	Name     string  // the quantity, as its RangeError names it
	Min, Max float64 // inclusive bounds, in the unit of Suffix
	Suffix   string  // of the unit, as keys end in: "c", "kpa", "share"; empty for a pure number
	Source   string  // what sets the bounds; may quote numbers as a [Sentence] does
	Fields   string  // what it bounds, parted by blanks: "Tub.Height" a field, "AirAt.elevation" a parameter
}

// Unit returns the unit of r's bounds as it is written behind a number, such as
// "°C"; "" for a pure number and for a share, which counts from 0 to 1.
func (r Range) Unit() string { return quantity.Symbol(r.Suffix) }

// Check returns nil if v, in the unit of r, lies within r, bounds included, and
// a [*RangeError] naming fn otherwise. NaN and infinities never lie within a
// range. A bound that has been through another unit and back is still a bound.
func (r Range) Check(fn string, v float64) error {
	if math.IsNaN(v) || quantity.Below(v, r.Min) || quantity.Above(v, r.Max) {
		return &RangeError{fn, r.Name, v, r.Min, r.Max, r.Suffix, r.Source}
	}
	return nil
}
