package quantity

import (
	"math"
	"strconv"
	"strings"
)

// Ends writes the bounds of a range in US and in metric units, rounded inward
// to the digits shown, so that what is written lies within the range and a step
// beyond it does not. The unit is written once where both ends have it.
func Ends(suffix string, low, high float64) (us, metric string) {
	d := displayed(suffix)
	if d == nil {
		s := bareEnds(suffix, low, high)
		return s, s
	}
	return span(d.us.end(low, up), d.us.end(high, down)), span(d.metric.end(low, up), d.metric.end(high, down))
}

// Directions of rounding.
const (
	up   = 1.0
	down = -1.0
)

// roundTrip is what the way through another unit and back may cost a number, as
// a part of it.
const roundTrip = 1e-12

// Above reports whether v lies above a bound. A bound that has been through
// another unit and back does not.
func Above(v, bound float64) bool { return v > bound+roundTrip*math.Abs(bound) }

// Below is [Above] for a lower bound.
func Below(v, bound float64) bool { return v < bound-roundTrip*math.Abs(bound) }

// end writes v with its unit, rounded in the direction given.
func (f form) end(v, direction float64) string {
	if f.below != nil && math.Abs(v) < f.small {
		f = *f.below
	}
	text := toward(f.number(v), v*f.factor+f.shift, direction)
	if f.unit == "%" {
		text = strings.TrimSuffix(text, ".0")
	}
	return text + " " + f.unit
}

// toward returns text, a rounded form of exact, moved by one in its last digit
// where it was rounded against the direction.
func toward(text string, exact, direction float64) string {
	shown, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.Contains(text, "e") || (exact-shown)*direction <= roundTrip*max(1, math.Abs(exact)) {
		return text
	}
	_, digits, _ := strings.Cut(text, ".")
	return strconv.FormatFloat(shown+direction*math.Pow(10, -float64(len(digits))), 'f', len(digits), 64)
}

// bareEnds writes the bounds of a pure number, or of one whose unit has a
// symbol only, with five digits.
func bareEnds(suffix string, low, high float64) string {
	u := bySuffix()[suffix]
	if u != nil && u.of == "time" {
		return span(clockless(SI(suffix, low)), clockless(SI(suffix, high)))
	}
	five := func(v, direction float64) string {
		if v == math.Trunc(v) && math.Abs(v) < 1e15 {
			return strconv.FormatFloat(v, 'f', 0, 64)
		}
		return toward(strconv.FormatFloat(v, 'g', 5, 64), v, direction)
	}
	text := five(low, up) + " to " + five(high, down)
	if u != nil {
		text += " " + u.symbol
	}
	return text
}
