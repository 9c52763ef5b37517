package thermal

import (
	"time"

	"gonum.org/v1/gonum/unit"
)

// A Sample is one moment of a time course.
type Sample struct {
	At    time.Duration
	Beer  Temperature // as it is drawn, from the bottom
	Upper Temperature // at the top of the beer
	Bath  Temperature // of the water around; invalid where there is none
	Ice   unit.Mass   // left
	Left  unit.Volume // of beer in each keg
}

// newCourse returns room for n samples; it panics for fewer than two, a mistake
// of the caller.
func newCourse(n int) []Sample {
	if n < 2 {
		panic("thermal: a course has two samples or more")
	}
	return make([]Sample, n)
}

// fill samples a temperature in °C over so many seconds.
func fill(samples []Sample, end float64, temperature func(s float64) float64) []Sample {
	for i := range samples {
		s := end * float64(i) / float64(len(samples)-1)
		samples[i] = Sample{At: seconds(s), Beer: Celsius(temperature(s))}
	}
	return samples
}
