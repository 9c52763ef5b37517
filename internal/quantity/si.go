package quantity

import (
	"math"
	"time"

	gonum "gonum.org/v1/gonum/unit"
)

// Linear quantities by their SI unit, for code that reads and writes them and
// does no sums: they are the types of gonum.
type (
	Metres      = gonum.Length
	CubicMetres = gonum.Volume
	Kilograms   = gonum.Mass
	Pascals     = gonum.Pressure
	Watts       = gonum.Power
)

// Missing is the number that stands where there is none: not a number.
func Missing() float64 { return math.NaN() }

// Seconds returns a span of time of so many seconds. One that a Duration cannot
// hold, 292 years, comes back as the longest or shortest it can.
func Seconds(s float64) time.Duration {
	switch nanoseconds := math.Round(s * float64(time.Second)); {
	case nanoseconds >= math.MaxInt64:
		return math.MaxInt64
	case nanoseconds <= math.MinInt64:
		return math.MinInt64
	default:
		return time.Duration(nanoseconds)
	}
}

// Whole returns the whole number nearest to v, at most a billion either way.
func Whole(v float64) int { return int(math.Round(max(-1e9, min(v, 1e9)))) }
