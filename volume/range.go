package volume

import (
	"math"
	"strings"

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
		return &RangeError{fn, r.Name, fieldOf(fn, r.Fields), v, r.Min, r.Max, r.Suffix, r.Source}
	}
	return nil
}

// fieldOf returns which of the fields and parameters that a row bounds belongs
// to the function: a parameter of it, else a field of its receiver, else the
// only one there is; "" if none can be told.
func fieldOf(fn, fields string) string {
	_, fn, _ = strings.Cut(fn, ".") // the package
	receiver, _, _ := strings.Cut(fn, ".")
	all := strings.Fields(fields)
	for _, f := range all {
		if strings.HasPrefix(f, fn+".") {
			return f
		}
	}
	for _, f := range all {
		last := f[strings.LastIndex(f, ".")+1:]
		if strings.HasPrefix(f, receiver+".") && 'A' <= last[0] && last[0] <= 'Z' { // no parameter of another method
			return f
		}
	}
	if len(all) == 1 {
		return all[0]
	}
	return ""
}
