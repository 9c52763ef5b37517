package lines

import (
	"cmp"
	"math"
	"slices"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/solve"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Calibration is what one timed glass says about a run.
type Calibration struct {
	Factor         float64     // on friction in the tubes, for [Run.Calibration]
	Flow           Flow        // as measured
	EquivalentBore unit.Length // of the tube that loses most, with which an uncalibrated run would pour as measured; NaN if no bore near it does
	LossPerMetre   Gradient    // of that tube, at the measured flow
	Friction       unit.Pressure
	Fixed          unit.Pressure // fittings and hardware

	gauge           carbonation.Gauge
	rated           unit.Pressure
	drive, computed float64 // Pa
	worst           int
	tube            Tube
	time            time.Duration
}

var invalidCalibration = Calibration{
	Factor: nan, Flow: Flow(nan), EquivalentBore: unit.Length(nan),
	LossPerMetre: Gradient(nan), Friction: unit.Pressure(nan), Fixed: unit.Pressure(nan),
}

// Calibrate returns the factor on friction with which the run pours glass in the
// measured time under the applied pressure g:
//
//	c = (p − ρ g h − Δp_fixed(Q)) / Δp_friction(Q),   Q = glass / time
//
// The glass is the liquid that was caught, without foam. Fittings and hardware
// keep their estimates, so the factor takes up their error too; it holds for
// this run and carries over to other flows better than to other tubes. The
// calibration that r has does not matter.
//
// It returns a [*RangeError] outside the validity table, also for the factor: a
// run that seems to have five times its friction has a kink, a tap half open or
// a wrong gauge. The error wraps [ErrNoSolution] if rise, fittings and hardware
// alone need more than g.
func (r Run) Calibrate(g carbonation.Gauge, glass unit.Volume, measured time.Duration) (Calibration, error) {
	const fn = "lines.Run.Calibrate"
	fail := func(err error) (Calibration, error) { return invalidCalibration, err }
	r.Calibration = 1
	q := float64(glass) / measured.Seconds()
	if err := cmp.Or(
		limitGauge.Check(fn, g.KPa()),
		limitGlass.Check(fn, float64(glass/volume.Litre)),
		limitTime.Check(fn, measured.Seconds()),
		limitFlow.Check(fn, Flow(q).LitresPerMinute()),
	); err != nil {
		return fail(err)
	}
	c, err := r.circuit(fn)
	if err != nil {
		return fail(err)
	}
	fixed := (c.fittings + c.hardware) * q * q
	computed := c.at(q) - fixed
	if !(computed > 0) {
		return fail(noSolution(fn, "there is no friction to calibrate; give a tube and a glass"))
	}
	drive := g.Pascals() - c.lift
	if drive <= fixed {
		return fail(lacks(fn, (c.lift+fixed)/1e3, g.KPa(), "rise, fittings and hardware alone need {%.5g kpa} at {%.5g l_per_min}; {%.5g kpa} is applied",
			(c.lift+fixed)/1e3, Flow(q).LitresPerMinute(), g.KPa()))
	}
	out := Calibration{
		Factor: (drive - fixed) / computed, Flow: Flow(q),
		Friction: unit.Pressure(drive - fixed), Fixed: unit.Pressure(fixed),
		gauge: g, rated: r.Rated, drive: drive, computed: computed, time: measured,
	}
	if err := limitCalibration.Check(fn, out.Factor); err != nil {
		return fail(err)
	}
	out.equivalent(&c, q)
	return out, nil
}

// equivalent finds the bore of the tube that loses most with which c loses
// what the run did.
func (k *Calibration) equivalent(c *circuit, q float64) {
	loss := func(i int) float64 { return c.tubes[i].loss * c.tubes[i].friction(q) * q * q }
	for i := range c.n {
		if loss(i) > loss(k.worst) {
			k.worst = i
		}
	}
	k.tube = c.tubes[k.worst].tube
	length := float64(k.tube.Length)
	k.LossPerMetre = Gradient(k.Factor * loss(k.worst) / length)
	want := float64(k.Friction) - (k.computed - loss(k.worst))
	trial := circuit{density: c.density, viscosity: c.viscosity, calibration: 1}
	excess := func(scale float64) float64 {
		t := k.tube
		t.Bore *= unit.Length(scale)
		t.Coil *= unit.Length(scale) // keeps d/D
		t.Roughness *= unit.Length(scale)
		trial.n = 0
		if trial.add("", t) != nil {
			return nan
		}
		return trial.at(q) - want
	}
	scale, ok := solve.Root(excess, 0.6, 1.6, 1e-9)
	if !ok {
		scale = nan
	}
	k.EquivalentBore = unit.Length(scale) * k.tube.Bore
}

// Steps returns the working, without an equivalent bore that there is not.
func (k Calibration) Steps() []Step {
	return slices.DeleteFunc([]Step{
		step("flow", "Q", float64(k.Flow), "m3_per_s", "glass over time, as measured"),
		step("pressure left by the rise", "p − ρ g h", k.drive, "pa", "applied pressure less hydrostatics"),
		step("fittings and hardware", "Δp_fixed", float64(k.Fixed), "pa", "estimates, at that flow"),
		step("friction as computed", "Δp_friction", k.computed, "pa", "Churchill 1977, White 1929, Ito 1959"),
		step("friction as measured", "c Δp_friction", float64(k.Friction), "pa", "what is left"),
		step("calibration factor", "c", k.Factor, "", "measured over computed"),
		step("bore of the tube that loses most", "d", float64(k.tube.Bore), "m", "given"),
		step("its equivalent bore", "d_eq", float64(k.EquivalentBore), "m", "with which c would be 1"),
		step("its loss", "Δp/L", float64(k.LossPerMetre), "pa_per_m", "with the factor"),
	}, valueless)
}

// Band returns the uncertainty of the factor: half a second in the time, 0.5 psi
// in the gauge and half of what fittings and hardware take.
func (k Calibration) Band() Band {
	const seconds, gauge = 0.5, float64(carbonation.PSI) / 2
	// Friction goes with about Q^1.8, the fixed losses with Q².
	flow := seconds / k.time.Seconds()
	friction := float64(k.Friction)
	width := math.Hypot(math.Hypot(1.8*flow+2*flow*float64(k.Fixed)/friction, gauge/friction), uncertainFixed*float64(k.Fixed)/friction)
	return Band{
		Name: "factor", Low: k.Factor * math.Max(0, 1-width), High: k.Factor * (1 + width),
		Source: "half a second, half a psi, and fittings and hardware within 50 %",
	}
}
