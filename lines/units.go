package lines

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Flow is a flow of liquid by volume, in m³/s.
type Flow float64

// Units of flow, exact.
const (
	LitrePerMinute    Flow = 1e-3 / 60
	OuncePerSecond    Flow = Flow(volume.USFluidOunce)
	USGallonPerMinute Flow = Flow(volume.USGallon) / 60
)

// LitresPerMinute returns q in litres per minute.
func (q Flow) LitresPerMinute() float64 { return float64(q / LitrePerMinute) }

// OuncesPerSecond returns q in US fluid ounces per second.
func (q Flow) OuncesPerSecond() float64 { return float64(q / OuncePerSecond) }

// TimeFor returns how long q takes to deliver v: the longest Duration there is,
// some 292 years, if nothing flows.
func (q Flow) TimeFor(v unit.Volume) time.Duration {
	d := float64(v) / float64(q) * float64(time.Second)
	if !(d < math.MaxInt64) {
		return math.MaxInt64
	}
	return time.Duration(d)
}

// String returns q in litres per minute, such as "3.55 L/min".
func (q Flow) String() string { return fmt.Sprintf("%.2f L/min", q.LitresPerMinute()) }

// MarshalText implements [encoding.TextMarshaler].
func (q Flow) MarshalText() ([]byte, error) {
	return fmt.Appendf(nil, "%gm3/s", float64(q)), nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a flow such as
// "2oz/s" or "3L/min".
func (q *Flow) UnmarshalText(text []byte) error {
	v, err := quantity.Parse(quantity.Flow, string(text))
	if err != nil {
		return err
	}
	*q = Flow(v)
	return nil
}

// A Gradient is a loss of pressure along a tube, in Pa/m.
type Gradient float64

// Units of loss along a tube, exact.
const (
	PSIPerFoot  Gradient = Gradient(carbonation.PSI) / Gradient(Foot)
	BarPerMetre Gradient = 1e5
)

// Units of length in which tubing is sold, exact.
const (
	Millimetre             = volume.Millimetre
	Inch                   = volume.Inch
	Foot       unit.Length = 0.3048
)

// say formats a sentence; a braced verb, as in "{%.5g c}", quotes a number.
func say(format string, args ...any) Sentence { return quantity.Sayf[Sentence](format, args...) }

// noSolution is the error of fn that says why there is none.
func noSolution(fn, format string, args ...any) error {
	return &NoSolutionError{Func: fn, Why: say(format, args...)}
}

// lacks is the error of fn that a pressure, in kPa, is less than what is needed.
func lacks(fn string, needed, given float64, format string, args ...any) error {
	return &NoSolutionError{Func: fn, Why: say(format, args...), Key: "gauge_kpa", Needed: needed, Given: given}
}

// step is a line of working.
func step(name, symbol string, value float64, suffix, source string) Step {
	return Step{Name: name, Symbol: symbol, Value: value, Suffix: suffix, Source: source}
}

// valueless reports whether a step has no value.
func valueless(s Step) bool { return math.IsNaN(s.Value) }

var nan = math.NaN()
