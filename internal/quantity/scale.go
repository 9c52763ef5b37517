package quantity

import (
	"math"
	"strconv"
	"strings"
)

// A Scale writes numbers of one suffix in one unit, whatever their size: for
// the columns of a table and the axes of a chart.
type Scale struct {
	Unit          string // "" for a pure number
	factor, shift float64
	decimals      int
}

// Value returns v, in the unit of the suffix, in the unit of the scale.
func (s Scale) Value(v float64) float64 { return v*s.factor + s.shift }

// Back returns the number in the unit of the suffix that the scale shows as
// shown.
func (s Scale) Back(shown float64) float64 { return (shown - s.shift) / s.factor }

// Text writes v, in the unit of the suffix, without its unit. It is empty for
// NaN.
func (s Scale) Text(v float64) string {
	switch shown := s.Value(v); {
	case math.IsNaN(v):
		return ""
	case s.decimals < 0:
		return significant(shown)
	case math.Abs(shown) >= 1e9:
		return strconv.FormatFloat(shown, 'g', 4, 64) // 300 digits say no more
	default:
		return strconv.FormatFloat(shown, 'f', s.decimals, 64)
	}
}

// Scales returns the scales on which to write numbers of a suffix up to the
// size largest, for US and for metric readers; they are equal where both read
// the same.
func Scales(suffix string, largest float64) (us, metric Scale) {
	if suffix == "s" {
		s := timeScale(math.Abs(largest))
		return s, s
	}
	d := displayed(suffix)
	if d == nil {
		s := Scale{factor: 1, decimals: -1}
		return s, s
	}
	return d.us.scale(largest), d.metric.scale(largest)
}

func (f form) scale(largest float64) Scale {
	if f.below != nil && math.Abs(largest) < f.small {
		f = *f.below
	}
	decimals := f.decimals
	if shown := math.Abs(largest * f.factor); f.shift == 0 && f.unit != "°C" && shown > 0 {
		for decimals < 6 && shown < math.Pow(10, float64(1-decimals)) {
			decimals++ // small numbers keep two digits
		}
	}
	return Scale{f.unit, f.factor, f.shift, decimals}
}

// timeScale picks seconds, minutes, hours or days.
func timeScale(seconds float64) Scale {
	switch {
	case !(seconds >= 100):
		return Scale{"s", 1, 0, 1}
	case seconds < 100*minute:
		return Scale{"min", 1.0 / minute, 0, 1}
	case seconds < 48*hour:
		return Scale{"h", 1.0 / hour, 0, 2}
	}
	return Scale{"d", 1.0 / (24 * hour), 0, 2}
}

// StepOf returns the kind of a difference between two quantities of kind k: of
// a temperature a [Difference], else k itself.
func StepOf(k Kind) Kind {
	if k == Temperature {
		return Difference
	}
	return k
}

// Sizeable reports whether quantities of kind k are numbers, which a range can
// run through.
func (k Kind) Sizeable() bool { return k != Switch && k != Text }

// UnitOf returns the unit that ends text, as typed; "" if it is a bare number.
func UnitOf(text string) string {
	text = strings.TrimSpace(text)
	return strings.TrimSpace(text[numberEnd(text):])
}

// ScalesOf returns the scales on which to write all of values in one column.
// Pure numbers get decimals to suit them all, none if they are whole.
func ScalesOf(suffix string, values []float64) (us, metric Scale) {
	largest := Largest(values)
	us, metric = Scales(suffix, largest)
	if us.decimals >= 0 || largest >= 1e6 {
		return us, metric
	}
	decimals := 0
	for _, v := range values {
		if v != math.Trunc(v) && !math.IsNaN(v) && !math.IsInf(v, 0) {
			decimals = max(1, 3-int(math.Floor(math.Log10(largest)+1)))
		}
	}
	if largest >= 1000 {
		decimals = 0
	}
	s := Scale{factor: 1, decimals: min(decimals, 6)}
	return s, s
}

// Largest returns the largest size among values, leaving out what is not
// finite.
func Largest(values []float64) float64 {
	largest := 0.0
	for _, v := range values {
		if a := math.Abs(v); a > largest && !math.IsInf(a, 0) {
			largest = a
		}
	}
	return largest
}
