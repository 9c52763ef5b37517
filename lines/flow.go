package lines

import (
	"cmp"
	"fmt"
	"math"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/solve"
	"gonum.org/v1/gonum/unit"
)

// Flow returns what the run pours with the applied pressure g on the beer in
// the keg: the flow at which its losses eat what the rise has left.
//
//	p = ρ g h + Σ c f (L/d) ρV²/2 + Σ K ρV²/2 + Δp_hw (Q/Q_hw)²
//
// Friction factors are those of Churchill [1] in straight tubes and of White
// [2] and Ito [3] in coils; c is the calibration factor.
//
// Where every tube is laminar or turbulent the friction is good to about 5 %,
// and the flow to 3 %; a bore that is 2 % off changes the flow by 5 %. See
// [Pour.Band], and calibrate with one timed glass.
//
// It returns a [*RangeError] outside the validity table, and an error that
// wraps [ErrNoSolution] if no pressure is applied and the beer does not fall to
// the tap, if the rise alone takes all of g, or if nothing in the run resists
// the flow.
func (r Run) Flow(g carbonation.Gauge) (Pour, error) {
	const fn = "lines.Run.Flow"
	if err := limitGauge.Check(fn, g.KPa()); err != nil {
		return invalidPour, err
	}
	c, err := r.circuit(fn)
	if err != nil {
		return invalidPour, err
	}
	q, err := c.flow(fn, unit.Pressure(g.Pascals()))
	if err != nil {
		return invalidPour, err
	}
	return c.pour(answerFlow, q, g.Pascals()), nil
}

// flow returns the flow in m³/s under the applied pressure, on behalf of fn.
func (c *circuit) flow(fn string, applied unit.Pressure) (float64, error) {
	drive := float64(applied) - c.lift
	if drive < 1e-6 { // a millionth of a pascal: nothing that flows could be seen
		if applied < 1e-6 {
			return nan, noSolution(fn, "no pressure is applied, and the beer does not fall to the tap")
		}
		return nan, lacks(fn, c.lift/1e3, float64(applied)/1e3, "the rise alone needs {%.5g kpa}; {%.5g kpa} is applied", c.lift/1e3, float64(applied)/1e3)
	}
	rough := c.fittings + c.hardware
	for i := range c.n {
		rough += 0.03 * c.tubes[i].loss // a middling friction factor, to begin with
	}
	if rough == 0 {
		return nan, noSolution(fn, "nothing in the run resists the flow; give a tube, a fitting or the hardware's loss")
	}
	lo, hi := 0.0, math.Sqrt(drive/rough)
	for c.at(hi) < drive {
		lo, hi = hi, 1.5*hi
	}
	for q := hi / 1.5; lo == 0 && q > 0; q /= 3 {
		if c.at(q) < drive {
			lo = q
		} else {
			hi = q
		}
	}
	q, ok := solve.Root(func(q float64) float64 { return c.at(q) - drive }, lo, hi, 1e-12*hi)
	if !ok {
		return nan, noSolution(fn, "no flow uses up {%.5g kpa}", float64(applied)/1e3)
	}
	if err := limitFlow.Check(fn, Flow(q).LitresPerMinute()); err != nil {
		return nan, err
	}
	return q, nil
}

// Gauge returns the applied pressure at which the run pours q, by the equation
// of [Run.Flow] read the other way.
//
// It returns a [*RangeError] outside the validity table.
func (r Run) Gauge(q Flow) (Pour, error) {
	const fn = "lines.Run.Gauge"
	if err := limitFlow.Check(fn, q.LitresPerMinute()); err != nil {
		return invalidPour, err
	}
	c, err := r.circuit(fn)
	if err != nil {
		return invalidPour, err
	}
	p := c.lift + c.at(float64(q))
	if err := limitGauge.Check(fn, p/float64(carbonation.KPa)); err != nil {
		return invalidPour, err
	}
	return c.pour(answerGauge, float64(q), p), nil
}

// Length returns the length of r.Tubes[i] with which the run pours q under the
// applied pressure g; the length it has in r does not matter. The answer is
// exact and unique because friction grows in proportion to the length.
//
// It returns a [*RangeError] outside the validity table, and an error that
// wraps [ErrNoSolution] if the rest of the run alone takes more than g, or if
// the length would be longer than any line.
//
// Length panics if r has no tube i.
func (r Run) Length(i int, q Flow, g carbonation.Gauge) (Pour, error) {
	const fn = "lines.Run.Length"
	if i < 0 || i >= len(r.Tubes) {
		panic(fmt.Sprintf("%s: no tube %d among %d", fn, i, len(r.Tubes)))
	}
	if err := cmp.Or(limitGauge.Check(fn, g.KPa()), limitFlow.Check(fn, q.LitresPerMinute())); err != nil {
		return invalidPour, err
	}
	c, err := r.circuit(fn)
	if err != nil {
		return invalidPour, err
	}
	if r.DipTube != (Tube{}) {
		i++ // the dip tube is the circuit's first
	}
	length, err := c.length(fn, i, float64(q), g.Pascals())
	if err != nil {
		return invalidPour, err
	}
	p := c.pour(answerLength, float64(q), g.Pascals())
	p.Length, p.solved = unit.Length(length), i
	return p, nil
}

// length gives tube i the length at which flow q loses what applied leaves.
func (c *circuit) length(fn string, i int, q, applied float64) (float64, error) {
	s := &c.tubes[i]
	s.loss = 0
	rest := c.lift + c.at(q)
	gradient := 0.0
	if q > 0 {
		gradient = c.perMetre(s.tube) * s.friction(q) * q * q
	}
	left := applied - rest
	if left < 0 {
		return nan, lacks(fn, rest/1e3, applied/1e3, "the rest of the run needs {%.5g kpa} at {%.5g l_per_min}; {%.5g kpa} is applied",
			rest/1e3, Flow(q).LitresPerMinute(), applied/1e3)
	}
	length := left / gradient
	if !(length <= limitLength.Max) {
		return nan, noSolution(fn, "{%.5g kpa} would need more than {%g m} of this tube at {%.5g l_per_min}",
			left/1e3, limitLength.Max, Flow(q).LitresPerMinute())
	}
	s.tube.Length = unit.Length(length)
	s.loss = c.perMetre(s.tube) * length
	return length, nil
}
