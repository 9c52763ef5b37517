package lines

import (
	"fmt"
	"math"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// A Warm is a warm keg served through a coil in a cold bath.
type Warm struct {
	Pour     Pour                // what the pressure permits through dip tube, coil, line and tap
	Outlet   thermal.Temperature // of the beer at the tap, while the tap stays open
	Coil     thermal.Temperature // of the beer that leaves the last coil
	Needed   carbonation.Gauge   // applied pressure that holds the gas in the warm keg
	Choker   unit.Length         // of tube like the last one to add for the target flow; 0 if the run is slow enough
	ColdOnly carbonation.Gauge   // that would do if the keg were as cold as the outlet

	serving Serving
	keg     thermal.Temperature
	means   [maxTubes]float64 // mean temperature of each tube, °C
}

var invalidWarm = Warm{Pour: invalidPour, Choker: unit.Length(nan)}

// Warm returns how a warm keg pours through coils in the serving's bath. The
// flow is what the pressure permits; the colder the beer gets the more it
// resists, and the slower it flows the colder it gets, so flow and temperatures
// are solved together.
//
// r.Temp is the keg's temperature. The gas in a warm keg presses harder: 2.5
// volumes need about 30 psi at 20 °C (common practice) and 44 psi at 30 °C,
// near the limit of vessels and relief devices, see [Warm.Cautions]. If the
// serving's Gauge is invalid the pressure that holds the gas is applied. Choker
// is the length to add of a tube like the run's last, beyond the coils, for the
// serving's target.
//
// It returns a [*RangeError] outside the validity tables of this package, of
// carbonation and of thermal, and the errors of [Run.Flow].
func (r Run) Warm(s Serving) (Warm, error) {
	const fn = "lines.Run.Warm"
	fail := func(err error) (Warm, error) { return invalidWarm, err }
	eq, err := s.equilibrium(r.Temp, r.Beer)
	if err != nil {
		return fail(err)
	}
	needed := carbonation.PaA(eq).Gauge(s.Air)
	if !s.Gauge.IsValid() {
		s.Gauge = needed
	}
	if err := s.check(fn); err != nil {
		return fail(err)
	}
	c, err := r.circuit(fn)
	if err != nil {
		return fail(err)
	}
	w := Warm{Needed: needed, serving: s, keg: r.Temp}
	q, err := w.couple(&r, &c, unit.Pressure(s.Gauge.Pascals()))
	if err != nil {
		return fail(err)
	}
	w.Pour = c.pour(answerFlow, q, s.Gauge.Pascals())
	if w.Choker, err = w.choke(&r, &c); err != nil {
		return fail(err)
	}
	if cold, err := s.equilibrium(w.Outlet, r.Beer); err == nil {
		w.ColdOnly = carbonation.PaA(cold).Gauge(s.Air)
	}
	return w, nil
}

// couple solves flow and temperatures together: the flow at the viscosities of
// the temperatures, the temperatures at the flow, until neither changes. Since
// the loss goes with the viscosity to about the power 1/4, each round takes most
// of the error away.
func (w *Warm) couple(r *Run, c *circuit, applied unit.Pressure) (float64, error) {
	const fn = "lines.Run.Warm"
	const rounds = 60
	q, err := c.flow(fn, applied)
	for range rounds {
		if err != nil {
			return nan, err
		}
		if err = w.temperatures(r, c, Flow(q)); err != nil {
			return nan, err
		}
		before := q
		q, err = c.flow(fn, applied)
		if math.Abs(q-before) <= 1e-9*q {
			return q, err
		}
	}
	return nan, noSolution(fn, "flow and temperature do not settle together")
}

// temperatures finds the beer's temperature along the tubes at flow q, and puts
// the viscosity of each tube's mean into c.
func (w *Warm) temperatures(r *Run, c *circuit, q Flow) error {
	t := r.Temp
	w.Coil = t
	dip := r.DipTube != (Tube{})
	for i := range c.n {
		s := &c.tubes[i]
		heat := warming{in: t.Celsius(), end: t.Celsius()}
		if !dip || i > 0 {
			var err error
			if heat, err = w.serving.warm(s.tube, t, q, r.Beer); err != nil {
				return err
			}
		}
		w.means[i] = heat.mean()
		viscosity, err := r.Beer.Viscosity(thermal.Celsius(w.means[i]))
		if err != nil {
			return err
		}
		s.reynolds = 4 * c.density / (math.Pi * float64(s.tube.Bore) * float64(viscosity))
		t = thermal.Celsius(heat.at(1))
		if w.serving.cooled(s.tube) {
			w.Coil = t
		}
	}
	w.Outlet = t
	return nil
}

// mean returns the mean temperature along the tube.
func (w warming) mean() float64 {
	if w.ntu == 0 {
		return w.in
	}
	return w.end + (w.in-w.end)*-math.Expm1(-w.ntu)/w.ntu
}

// choke returns the length of tube like the last to add for the target flow.
// It is found at the temperatures of that flow.
func (w *Warm) choke(r *Run, c *circuit) (unit.Length, error) {
	target := w.serving.Target
	if err := limitFlow.Check("lines.Run.Warm", target.LitresPerMinute()); err != nil {
		return unit.Length(nan), err
	}
	if w.Pour.Flow <= target || len(r.Tubes) == 0 || target == 0 {
		return 0, nil
	}
	choked, cold := *c, *w // the answer keeps the temperatures of its own flow
	if err := cold.temperatures(r, &choked, target); err != nil {
		return unit.Length(nan), err
	}
	q := float64(target)
	left := w.serving.Gauge.Pascals() - choked.lift - choked.at(q)
	last := &choked.tubes[choked.n-1]
	straight := *last
	straight.curvature = 0
	return unit.Length(left / (choked.perMetre(last.tube) * straight.friction(q) * q * q)), nil
}

// Steps returns the working: the temperatures, then the flow.
func (w Warm) Steps() []Step {
	steps := []Step{
		step("keg", "T_keg", w.keg.Celsius(), "c", "given"),
		step("pressure that holds the gas, gauge", "p_eq", w.Needed.Pascals(), "pa", "carbonation.PressureFor at the keg's temperature"),
	}
	for i := range w.Pour.circuit.n {
		n := fmt.Sprint(i + 1)
		steps = append(steps, step("mean temperature in tube "+n, "T"+n, w.means[i], "c", "thermal.Coil in the bath, thermal.Line in air, at the flow"))
	}
	steps = append(steps, step("temperature at the tap", "T_out", w.Outlet.Celsius(), "c", "end of the last tube"))
	return append(steps, w.Pour.Steps()...)
}

// Band returns the uncertainty of the flow; that of the temperature is the
// coil's, see [thermal.CoilChill].
func (w Warm) Band() Band { return w.Pour.Band() }
