package thermal

import (
	"cmp"
	"math"

	"example.com/pourwell/internal/solve"
	"example.com/pourwell/volume"
)

// A CoilLimit is the most that a coil can do.
type CoilLimit struct {
	Flow  Flow      // largest steady flow that meets the target
	Chill CoilChill // the coil at that flow

	target float64 // °C
}

// LargestFlow returns the largest steady flow that still leaves the coil at
// the target temperature or colder, for beer that enters at inlet. It is the
// flow of a tap that never rests; between spaced glasses the coil recovers and
// does better, see [Coil.Serve].
//
// Valid as [Coil.Chill]. Where no flow from 0.01 to 40 L/min, or every one of
// them, reaches the target, LargestFlow returns NaN and an error that wraps
// [volume.ErrNoSolution].
func (c Coil) LargestFlow(inlet, target Temperature) (CoilLimit, error) {
	const fn = "thermal.Coil.LargestFlow"
	none := CoilLimit{Flow: Flow(math.NaN()), Chill: noCoilChill()}
	if err := cmp.Or(c.check(fn, inlet, Flow(1e-5)), limitLiquid.Check(fn, target.Celsius())); err != nil {
		return none, err
	}
	freezing := c.Beer.FreezingPoint()
	switch {
	case target.Sub(freezing) < 0:
		return none, needs(fn, "temperature_c", freezing.Celsius(), target.Celsius(), "the beer freezes at {%.6g c}, above the target of {%.6g c}", freezing.Celsius(), target.Celsius())
	case target.Sub(c.Bath) <= 0 && inlet.Sub(target) > 0:
		return none, needs(fn, "temperature_c", c.Bath.Celsius(), target.Celsius(), "the bath at {%.6g c} cannot bring beer to {%.6g c} at any flow: pack it with ice or pump it", c.Bath.Celsius(), target.Celsius())
	case inlet.Sub(target) <= 0:
		return none, noSolution(fn, "beer that enters at {%.6g c} meets {%.6g c} at any flow", inlet.Celsius(), target.Celsius())
	}
	flow, always := c.flowFor(inlet.Celsius(), target.Celsius(), likely)
	switch {
	case always:
		return none, noSolution(fn, "the coil meets {%.6g c} at every flow up to {%.4g l_per_min}, where the correlations end",
			target.Celsius(), Flow(flow).LitresPerMinute())
	case flow == 0:
		return none, noSolution(fn, "even at {%.4g l_per_min} the beer leaves above {%.6g c}", limitFlow.Min, target.Celsius())
	}
	return CoilLimit{Flow(flow), c.chill(inlet.Celsius(), flow, coilStations), target.Celsius()}, nil
}

// Outlets of a chill in °C: the likely one, and the ends of its band.
func likely(r *CoilChill) float64 { return r.Outlet.Celsius() }

func best(r *CoilChill) float64 { low, _ := r.outletBand(); return low }

func worst(r *CoilChill) float64 { _, high := r.outletBand(); return high }

// flowFor returns the largest flow, in m³/s, whose outlet meets the target in
// °C; 0 if none does. If every flow does it returns the greatest one, and true.
func (c *Coil) flowFor(inlet, target float64, outlet func(*CoilChill) float64) (flow float64, always bool) {
	excess := func(logFlow float64) float64 {
		r := c.chill(inlet, math.Exp(logFlow), coilStations)
		return outlet(&r) - target
	}
	// Where the inside film turns turbulent a faster flow may leave colder, so
	// search downwards from the greatest flow for the first that is cold enough.
	const points = 48
	least, greatest := math.Log(limitFlow.Min/60e3), math.Log(c.greatestFlow(inlet))
	step := (greatest - least) / points
	high := greatest
	if excess(high) <= 0 {
		return math.Exp(high), true
	}
	for range points {
		low := high - step
		if excess(low) <= 0 {
			x, _ := solve.Root(excess, low, high, 1e-10)
			return math.Exp(x), false
		}
		high = low
	}
	return 0, false
}

// greatestFlow returns the flow in m³/s at which the limits of flow or of the
// Reynolds number end.
func (c *Coil) greatestFlow(inlet float64) float64 {
	// The Reynolds number is checked at the mean of inlet and outlet; taken at
	// the inlet it is higher there, so this flow stays within.
	re := limitCoilReynolds.Max * math.Pi / 4 * float64(c.Bore) * c.Beer.viscosity(inlet) / c.Beer.density(inlet)
	return math.Min(limitFlow.Max/60e3, re)
}

// Band returns the interval of the flow, in m³/s: with both films at the worse
// and at the better end of their uncertainty. It solves for the two when asked.
func (l CoilLimit) Band() volume.Band {
	low, _ := l.Chill.coil.flowFor(l.Chill.inlet, l.target, worst)
	high, _ := l.Chill.coil.flowFor(l.Chill.inlet, l.target, best)
	return volume.Band{Name: "flow", Low: low, High: high, Suffix: "m3_per_s", Source: l.Chill.Band().Source}
}

// Steps returns the working of the coil at the largest flow.
func (l CoilLimit) Steps() []volume.Step {
	return append([]volume.Step{
		{Name: "target", Symbol: "T_max", Value: l.target, Suffix: "c", Source: "given"},
		{Name: "largest flow, by trial until the outlet meets it", Symbol: "V_max", Value: float64(l.Flow), Suffix: "m3_per_s", Source: "below"},
	}, l.Chill.Steps()...)
}
