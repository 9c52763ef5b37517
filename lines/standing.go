package lines

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/solve"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// A Standing is beer that rests in a line between two glasses.
type Standing struct {
	Breakout  thermal.Temperature // of the line's beer, above which gas comes out at the tap's height
	Settles   thermal.Temperature // that the line comes to at last
	Limit     time.Duration       // until the line is at Breakout; 0 if it is from the start
	Never     bool                // the line never gets there: Limit does not count
	TooCold   bool                // Breakout is below 34 °F, the coldest that a line is kept: only pressure helps
	Threshold unit.Pressure       // supersaturation at which crevices let go of bubbles
	HoldUp    unit.Volume         // beer in the tubes from the keg on: what foams

	serving  Serving
	rated    unit.Pressure
	beer     thermal.Beer
	start    thermal.Temperature // of the line before any coil
	chilled  thermal.Temperature // behind the coil
	pressure float64             // where the line is highest, Pa absolute
}

// Stand returns how warm the beer that stands in the run may get, and how long
// that takes in the serving's surroundings.
//
// At rest there is no friction: the pressure in the line is the applied one
// less the rise. Gas trapped in a crevice of radius r grows into a bubble when
// the beer is supersaturated by more than the pressure across a bubble of that
// radius,
//
//	p_eq(T) − p > 2γ/r        γ = 0.045 N/m
//
// Plastic, barbs and beer stone have crevices of some 4 to 13 µm, a threshold of
// 3 to 1 psi (practice; r is an assumption that nobody measures at a bar). This
// is the number behind a first glass of foam. The line that warms fastest
// counts; a chiller's coil stays cold and does not, and the line behind it starts
// as cold as the flow left it.
//
// It returns a [*RangeError] outside the validity tables of this package, of
// carbonation and of thermal.
//
// Source of the criterion: S. F. Jones, G. M. Evans, K. P. Galvin, Adv. Colloid
// Interface Sci. 80 (1999) 27, nucleation from cavities, type IV; from memory.
func (r Run) Stand(s Serving) (Standing, error) {
	const fn = "lines.Run.Stand"
	fail := func(err error) (Standing, error) { return invalidStanding, err }
	if err := s.check(fn); err != nil {
		return fail(err)
	}
	c, err := r.circuit(fn)
	if err != nil {
		return fail(err)
	}
	out := Standing{Threshold: unit.Pressure(s.threshold()), serving: s, rated: r.Rated, beer: r.Beer, start: r.Temp}
	if s.LineTemp.IsValid() {
		out.start = s.LineTemp
	}
	out.pressure = s.Gauge.Pascals() + s.Air.Pascals() - math.Max(0, c.lift)
	if out.pressure <= 0 {
		return fail(noSolution(fn, "the rise alone needs {%.5g kpa}; gauge and air give {%.5g kpa_abs}",
			c.lift/1e3, s.Gauge.Absolute(s.Air).KPa()))
	}
	if out.Breakout, err = out.breakout(float64(out.Threshold)); err != nil {
		return fail(err)
	}
	out.TooCold = out.Breakout.Celsius() < coldestKeg
	if s.Chiller.Bath.IsValid() {
		w, err := r.Warm(s)
		if err != nil {
			return fail(err)
		}
		out.chilled = w.Coil
	}
	if err := out.warm(&r); err != nil {
		return fail(err)
	}
	return out, nil
}

var invalidStanding = Standing{Threshold: unit.Pressure(nan), HoldUp: unit.Volume(nan)}

// breakout returns the temperature above which the beer is supersaturated by
// more than threshold. A line that breaks out beyond the temperatures at which an
// equilibrium is known does so always, or never.
func (s *Standing) breakout(threshold float64) (thermal.Temperature, error) {
	p := carbonation.PaA(s.pressure + threshold)
	t, err := carbonation.TemperatureFor(s.serving.Content, p, s.beer)
	if errors.Is(err, ErrNoSolution) {
		coldest, hottest := thermal.Celsius(limitSoluble().Min), thermal.Celsius(limitSoluble().Max)
		cold, err := s.serving.equilibrium(coldest, s.beer)
		if err != nil || cold > p.Pascals() {
			return coldest, err
		}
		return hottest, nil
	}
	return t, err
}

// warm finds when the fastest of the lines gets to the breakout temperature.
func (s *Standing) warm(r *Run) error {
	s.Never, s.Settles = true, s.start
	limit := s.Breakout.Celsius()
	if s.start.Celsius() >= limit {
		s.Never = false
	}
	start := s.start
	for _, t := range r.Tubes {
		s.HoldUp += t.Volume()
		if s.serving.cooled(t) {
			start = s.chilled
		}
		if !s.serving.Around.Air.IsValid() || s.serving.cooled(t) || t.Length < shortest {
			continue
		}
		at, settles, err := stands(s.serving.line(t, s.beer), start, limit)
		if err != nil {
			return err
		}
		if settles.Celsius() > s.Settles.Celsius() {
			s.Settles = settles
		}
		if at >= 0 && (s.Never || at < s.Limit) {
			s.Limit, s.Never = at, false
		}
	}
	return nil
}

// longest is how long a line is watched.
const longest = 24 * time.Hour

// stands returns when line l, at start, comes to limit °C, negative for never
// within a day, and where it settles.
func stands(l thermal.Line, start thermal.Temperature, limit float64) (time.Duration, thermal.Temperature, error) {
	last, err := l.Stand(start, longest)
	if err != nil {
		return 0, thermal.Temperature{}, err
	}
	switch {
	case start.Celsius() >= limit:
		return 0, last.Settles, nil
	case last.Temperature.Celsius() <= limit:
		return -1, last.Settles, nil
	}
	// The way is nearly exponential: solve on a logarithmic scale of time.
	at := func(logarithm float64) float64 {
		after, err := l.Stand(start, time.Duration(math.Exp(logarithm)*float64(time.Second)))
		if err != nil {
			return nan
		}
		return after.Temperature.Celsius() - limit
	}
	x, ok := solve.Root(at, 0, math.Log(longest.Seconds()), 1e-4)
	if !ok { // within the first second
		return 0, last.Settles, nil
	}
	return time.Duration(math.Exp(x) * float64(time.Second)), last.Settles, nil
}

// Steps returns the working.
func (s Standing) Steps() []Step {
	return []Step{
		step("content of the beer", "c_CO2", s.serving.Content.Volumes(), "volumes", "given"),
		step("pressure at the highest place, absolute", "p", s.pressure, "pa", "applied + air − ρ g h"),
		step("radius of a crevice", "r", float64(s.serving.Crevice), "m", "given; assumed 5 µm"),
		step("surface tension", "γ", surfaceTension, "n_per_m", "from memory, beers 0.042 to 0.048"),
		step("threshold", "2γ/r", float64(s.Threshold), "pa", "pressure across a bubble of that radius"),
		step("breakout temperature", "T_b", s.Breakout.Celsius(), "c", "where p_eq = p + 2γ/r (carbonation.TemperatureFor)"),
		step("line at the start", "T_0", s.start.Celsius(), "c", "given"),
		step("line at last", "T_s", s.Settles.Celsius(), "c", "thermal.Line.Stand"),
		step("time to breakout", "t", s.Limit.Seconds(), "s", "thermal.Line.Stand, solved for T_b"),
	}
}

// Thresholds of plastic, barbs and beer stone, of crevices of 13 and 4 µm;
// practice.
const leastThreshold, mostThreshold = 1 * carbonation.PSI, 3 * carbonation.PSI

// Band returns the uncertainty of the breakout temperature: thresholds of 1 to 3
// psi, crevices of 13 to 4 µm, about the assumed 5 µm; for another radius those in
// the same proportion to it.
func (s Standing) Band() Band {
	given := float64(s.serving.Crevice / usualCrevice) // a wider crevice lets go sooner
	low, errLow := s.breakout(float64(leastThreshold) / given)
	high, errHigh := s.breakout(float64(mostThreshold) / given)
	b := Band{
		Name: "breakout temperature", Low: low.Celsius(), High: high.Celsius(), Suffix: "c",
		Source: fmt.Sprintf("crevices of %.3g to %.3g µm", 13*given, 4*given),
	}
	if errLow != nil || errHigh != nil {
		b.Low, b.High = nan, nan
	}
	return b
}
