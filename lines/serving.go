package lines

import (
	"cmp"
	"math"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// A Serving is what a run is served with: the gas, what the beer holds, and
// what the line passes through. [DefaultServing] has usual values.
type Serving struct {
	Gauge   carbonation.Gauge    // applied to the beer in the keg
	Content carbonation.Content  // dissolved in the beer
	Air     carbonation.Pressure // around gauge and glass; see [carbonation.AirAt]

	Around     thermal.Surroundings // of the line; invalid for a line as cold as the keg
	Insulation unit.Length          // thickness of foam around the line, 0 for a bare one
	LineTemp   thermal.Temperature  // of the beer in the line where it was measured; Around then does not count while it flows
	Chiller    thermal.Coil         // bath around every coiled tube; without a bath they count as lying in Around

	Crevice unit.Length // radius of the crevices that bubbles grow from, see [Run.Stand]
	Target  Flow        // to balance for
}

// DefaultServing returns a serving of beer of content c under applied pressure
// g at sea level through a bare, shaded line as cold as the keg, balanced for 2
// oz/s, with crevices of 5 µm.
func DefaultServing(g carbonation.Gauge, c carbonation.Content) Serving {
	return Serving{
		Gauge: g, Content: c, Air: carbonation.PaA(101325),
		Crevice: usualCrevice, Target: 2 * OuncePerSecond,
	}
}

// usualCrevice is the radius assumed, 5 µm: common practice, no source.
const usualCrevice unit.Length = 5e-6

// surfaceTension of beer in N/m. From memory: beers lie between 0.042 and
// 0.048, falling little with temperature; water has 0.073.
const surfaceTension = 0.045

// threshold returns the supersaturation in Pa at which a crevice lets go of
// bubbles, 2γ/r.
func (s *Serving) threshold() float64 { return 2 * surfaceTension / float64(s.Crevice) }

// check reports the first of the serving's errors on behalf of fn.
func (s *Serving) check(fn string) error {
	return cmp.Or(
		limitGauge.Check(fn, s.Gauge.KPa()),
		limitContent.Check(fn, s.Content.Volumes()),
		limitAir().Check(fn, s.Air.KPa()),
		limitCrevice.Check(fn, float64(s.Crevice)*1e6),
		ifGiven(fn, s.LineTemp),
	)
}

// ifGiven checks a temperature of the beer that may be invalid, for not known.
func ifGiven(fn string, t thermal.Temperature) error {
	if !t.IsValid() {
		return nil
	}
	return limitTemperature.Check(fn, t.Celsius())
}

// equilibrium returns the pressure in Pa absolute that holds the serving's
// content at t.
func (s *Serving) equilibrium(t thermal.Temperature, b thermal.Beer) (float64, error) {
	p, err := carbonation.PressureFor(s.Content, t, b)
	return p.Pascals(), err
}

// A warming is how the beer's temperature goes along a tube: towards an end
// temperature, by so many transfer units over the tube.
//
//	T(x) = T_end + (T_in − T_end) e^(−NTU x/L)
type warming struct {
	in, end, ntu float64 // °C, °C
}

func (w warming) at(share float64) float64 {
	if w.ntu == 0 {
		return w.in
	}
	return w.end + (w.in-w.end)*math.Exp(-w.ntu*share)
}

// towards returns the warming from in to out on the way to end.
func towards(in, out, end thermal.Temperature) warming {
	w := warming{in: in.Celsius(), end: end.Celsius()}
	if gone := (w.in - w.end) / (out.Celsius() - w.end); gone > 0 {
		w.ntu = math.Log(gone)
	}
	return w
}

// shortest is the shortest tube whose heat is counted, in m; thermal's models
// begin there.
const shortest = 0.1

// warm returns how beer that enters tube t at in warms or cools in it.
func (s *Serving) warm(t Tube, in thermal.Temperature, q Flow, b thermal.Beer) (warming, error) {
	still := warming{in: in.Celsius(), end: in.Celsius()}
	switch {
	case t.Length < shortest || q <= 0:
		return still, nil
	case s.cooled(t):
		c := s.coil(t, b)
		r, err := c.Chill(in, thermal.Flow(q))
		return towards(in, r.Outlet, c.Bath), err
	case s.LineTemp.IsValid():
		return warming{in: s.LineTemp.Celsius(), end: s.LineTemp.Celsius()}, nil
	case !s.Around.Air.IsValid():
		return still, nil
	}
	r, err := s.line(t, b).Carry(in, thermal.Flow(q))
	return towards(in, r.Temperature, r.Settles), err
}

// cooled reports whether tube t lies in the chiller's bath.
func (s *Serving) cooled(t Tube) bool { return t.Coil > 0 && s.Chiller.Bath.IsValid() }

// coil returns tube t as a coil in the chiller's bath.
func (s *Serving) coil(t Tube, b thermal.Beer) thermal.Coil {
	m, wall := t.wall()
	c := s.Chiller
	c.Length, c.Bore, c.Wall, c.Winding = t.Length, t.Bore, wall, t.Coil
	c.Conductivity, c.Beer = m.conductivity, b
	if t.Material == "" { // a coil in ice is of steel
		c.Conductivity = materialOf("stainless").conductivity
	}
	return c
}

// line returns tube t as a line in the surroundings.
func (s *Serving) line(t Tube, b thermal.Beer) thermal.Line {
	l := thermal.DefaultLine(s.Around)
	m, wall := t.wall()
	l.Length, l.Bore, l.Wall, l.Conductivity = t.Length, t.Bore, wall, m.conductivity
	l.Insulation, l.Beer = s.Insulation, b
	return l
}

// wall returns the tube's material and the thickness of its wall, the usual
// one where none is given.
func (t Tube) wall() (material, unit.Length) {
	m := materialOf(t.Material)
	switch {
	case t.Wall > 0:
		return m, t.Wall
	case t.Material == "" && t.Coil > 0:
		return m, materialOf("stainless").wall
	}
	return m, m.wall
}
