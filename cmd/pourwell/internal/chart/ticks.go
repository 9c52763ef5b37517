package chart

import (
	"math"
	"strconv"
)

// ticks returns round numbers from low to high, about n of them, as multiples
// of 1, 2 or 5 times a power of ten, and how many decimals they need.
func ticks(low, high float64, n int) (marks []float64, decimals int) {
	if !(high > low) {
		return []float64{low}, 1
	}
	step := roundUp((high - low) / float64(n))
	const slack = 1e-9
	for k := math.Ceil(low/step - slack); k <= high/step+slack; k++ {
		marks = append(marks, k*step)
	}
	return marks, max(0, -int(math.Floor(math.Log10(step)+slack)))
}

// roundUp returns the least of 1, 2 and 5 times a power of ten that is not
// below v.
func roundUp(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= v*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}

// widen returns bounds around low and high that are ticks, with room for a
// curve that is flat.
func widen(low, high float64, n int) (float64, float64) {
	if high-low <= 1e-9*math.Max(math.Abs(low), math.Abs(high)) {
		room := math.Max(math.Abs(low)*0.05, 0.5)
		low, high = low-room, high+room
	}
	for range 3 { // a wider range may take a larger step
		step := roundUp((high - low) / float64(n))
		low, high = math.Floor(low/step+1e-9)*step, math.Ceil(high/step-1e-9)*step
	}
	return low, high
}

// tickText writes a tick; minus zero is zero.
func tickText(v float64, decimals int) string {
	if math.Abs(v) < 0.5*math.Pow(10, float64(-decimals)) {
		v = 0
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
