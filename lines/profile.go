package lines

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// A Station is the state of the flowing beer at one place of a run.
type Station struct {
	Position    unit.Length         // along the tubes, from the beer's entrance
	Gauge       carbonation.Gauge   // of the beer
	Temperature thermal.Temperature // of the beer
	Equilibrium carbonation.Gauge   // that would hold the beer's content at that temperature
	Margin      unit.Pressure       // Gauge less Equilibrium; below zero the beer is supersaturated
}

// A Profile is beer on its way through a run, station by station.
type Profile struct {
	Pour        Pour                // the flow under the applied pressure
	Outlet      thermal.Temperature // of the beer at the tap
	Stations    []Station           // the last is the mouth of the tap, after its loss
	Residence   time.Duration       // of the beer in the tubes
	Exposure    float64             // supersaturation times residence, Pa s
	Balanced    float64             // the same for beer that is at rest with its keg all the way, Pa s
	Excess      unit.Pressure       // mean supersaturation beyond that of the balanced run
	Threshold   unit.Pressure       // supersaturation at which crevices let go of bubbles
	GasComesOut bool                // Excess is above Threshold

	serving Serving
	mean    float64 // mean equilibrium pressure, Pa absolute
}

// Profile returns pressure, temperature and the gas's equilibrium pressure of
// the flowing beer at n stations along the run.
//
// The pressure in the tubes falls with friction and rise; fittings and hardware
// count at the tap. The temperature follows [thermal.Line] where the line is in
// air and [thermal.Coil] where a coil lies in the chiller's bath, both at the
// flow, which is that of [Run.Flow], or of [Run.Warm] where there is a chiller.
//
// In every healthy line the margin is negative near the tap, for a fraction of a
// second, and nothing comes of it. So the run is judged by its exposure,
//
//	E = ∫ max(0, p_eq − p) dt
//
// less that of the same run with beer at rest with the applied pressure all the
// way, p_eq = p_applied: the cold, balanced run. Spread over the residence time
// this is the excess, and above 2γ/r gas is said to come out. A balanced cold
// line has an excess of exactly 0. The criterion is ours; it has not been
// measured.
//
// It returns a [*RangeError] outside the validity tables of this package and of
// thermal, and the errors of [Run.Flow].
func (r Run) Profile(s Serving, n int) (Profile, error) {
	const fn = "lines.Run.Profile"
	fail := func(err error) (Profile, error) { return invalidProfile, err }
	if err := cmp.Or(s.check(fn), limitStations.Check(fn, float64(n))); err != nil {
		return fail(err)
	}
	pour, err := r.serve(s)
	if err != nil {
		return fail(err)
	}
	p := Profile{Pour: pour, serving: s, Threshold: unit.Pressure(s.threshold())}
	w := walk{run: &r, serving: &s, pour: &pour, profile: &p, each: r.spacing(&pour, n)}
	p.Stations = make([]Station, 0, n+2*maxTubes+2)
	if err := w.all(); err != nil {
		return fail(err)
	}
	if t := w.time; t > 0 && !math.IsInf(t, 0) {
		p.Residence = time.Duration(t * float64(time.Second))
		p.Excess = unit.Pressure((p.Exposure - p.Balanced) / t)
		p.mean = w.sumEquilibrium / t
	}
	p.GasComesOut = p.Excess > p.Threshold
	return p, nil
}

// serve returns the flow of the run, coupled with its temperatures where a
// chiller makes that count.
func (r *Run) serve(s Serving) (Pour, error) {
	if !s.Chiller.Bath.IsValid() {
		return r.Flow(s.Gauge)
	}
	w, err := r.Warm(s)
	return w.Pour, err
}

var invalidProfile = Profile{
	Pour: invalidPour, Exposure: nan, Balanced: nan,
	Excess: unit.Pressure(nan), Threshold: unit.Pressure(nan),
}

// spacing returns the distance between stations for n of them over all tubes.
func (r *Run) spacing(p *Pour, n int) float64 {
	total := 0.0
	for i := range p.circuit.n {
		total += float64(p.circuit.tubes[i].tube.Length)
	}
	return total / float64(n-1)
}

// A walk goes along a run from keg to tap.
type walk struct {
	run     *Run
	serving *Serving
	pour    *Pour
	profile *Profile
	each    float64 // distance between stations, m

	position       float64 // m
	pressure       float64 // of the beer, Pa gauge
	temp           thermal.Temperature
	time           float64 // since the beer entered, s
	sumEquilibrium float64 // ∫ p_eq dt
	last           Station
	lastEq         float64 // Pa absolute
}

// all walks every tube and the tap.
func (w *walk) all() error {
	c, r := &w.pour.circuit, w.run
	weight := c.density * standardGravity
	dip := r.DipTube != (Tube{})
	w.temp = r.Temp
	w.pressure = w.pour.Gauge.Pascals()
	line := c.lift // the tubes' share of the rise, as pressure
	if dip {
		// In at the bottom of the keg, out at its top.
		w.pressure += weight * r.Full * float64(r.KegHeight)
		line -= weight * (1 - r.Full) * float64(r.KegHeight)
	}
	lineLength := 0.0
	for _, t := range r.Tubes {
		lineLength += float64(t.Length)
	}
	if err := w.station(w.temp.Celsius(), 0); err != nil {
		return err
	}
	for i := range c.n {
		t := c.tubes[i].tube
		climb := weight * float64(r.KegHeight)
		if !dip || i > 0 {
			climb = line * float64(t.Length) / lineLength
		}
		if err := w.tube(i, climb, dip && i == 0); err != nil {
			return err
		}
	}
	w.profile.Outlet = w.temp
	w.pressure = 0
	return w.station(w.temp.Celsius(), 0)
}

// tube walks tube i, which rises by climb in Pa.
func (w *walk) tube(i int, climb float64, inKeg bool) error {
	f := w.pour.tube(i)
	length := float64(f.Tube.Length)
	if length == 0 {
		return nil
	}
	heat := warming{in: w.temp.Celsius(), end: w.temp.Celsius()}
	if !inKeg {
		var err error
		if heat, err = w.serving.warm(f.Tube, w.temp, w.pour.Flow, w.run.Beer); err != nil {
			return err
		}
	}
	if heat.at(0) != w.temp.Celsius() { // a line whose temperature was measured
		if err := w.station(heat.at(0), 0); err != nil {
			return err
		}
	}
	steps := math.Max(1, math.Round(length/w.each))
	dt := length / steps / f.Speed
	drop := (float64(f.Loss) + climb) / steps
	for k := 1.0; k <= steps; k++ {
		w.position += length / steps
		w.pressure -= drop
		if err := w.station(heat.at(k/steps), dt); err != nil {
			return err
		}
	}
	w.temp = w.profile.Stations[len(w.profile.Stations)-1].Temperature
	return nil
}

// station adds the beer's state where the walk stands, dt after the last.
func (w *walk) station(celsius, dt float64) error {
	t := thermal.Celsius(celsius)
	eq := w.lastEq
	if t != w.last.Temperature || len(w.profile.Stations) == 0 {
		var err error
		if eq, err = w.serving.equilibrium(t, w.run.Beer); err != nil {
			return err
		}
	}
	air := w.serving.Air.Pascals()
	s := Station{
		Position: unit.Length(w.position), Gauge: carbonation.PaG(w.pressure),
		Temperature: t, Equilibrium: carbonation.PaG(eq - air),
		Margin: unit.Pressure(w.pressure + air - eq),
	}
	if dt > 0 && !math.IsInf(dt, 0) {
		before := w.last
		applied := w.pour.Gauge.Pascals()
		w.profile.Exposure += dt / 2 * (over(-before.Margin) + over(-s.Margin))
		w.profile.Balanced += dt / 2 * (over(unit.Pressure(applied-before.Gauge.Pascals())) + over(unit.Pressure(applied-w.pressure)))
		w.sumEquilibrium += dt / 2 * (w.lastEq + eq)
		w.time += dt
	}
	w.last, w.lastEq = s, eq
	w.profile.Stations = append(w.profile.Stations, s)
	return nil
}

// over returns a supersaturation, 0 where the beer is below saturation.
func over(p unit.Pressure) float64 { return math.Max(0, float64(p)) }

// Steps returns the working: that of the flow, then of the judgement.
func (p Profile) Steps() []Step {
	s := &p.serving
	return append(p.Pour.Steps(),
		step("content of the beer", "c_CO2", s.Content.Volumes(), "volumes", "given"),
		step("temperature at the tap", "T_out", p.Outlet.Celsius(), "c", "warming of the line at the flow (thermal.Line, thermal.Coil)"),
		step("mean equilibrium pressure, absolute", "p_eq", p.mean, "pa", "carbonation.PressureFor along the run"),
		step("residence in the tubes", "t", p.Residence.Seconds(), "s", "volume over flow"),
		step("exposure", "E", p.Exposure, "pa_s", "∫ max(0, p_eq − p) dt"),
		step("exposure of the balanced run", "E_b", p.Balanced, "pa_s", "the same with p_eq = p_applied"),
		step("mean excess of supersaturation", "Δ", float64(p.Excess), "pa", "(E − E_b)/t"),
		step("surface tension", "γ", surfaceTension, "n_per_m", "from memory, beers 0.042 to 0.048"),
		step("threshold of a crevice", "2γ/r", float64(p.Threshold), "pa", "pressure across a bubble of its radius"))
}

// Band returns the uncertainty of the excess: 1.5 % of the equilibrium
// pressure, as the content is known by no better.
func (p Profile) Band() Band {
	const share = 0.015
	return Band{
		Name: "excess", Low: float64(p.Excess) - share*p.mean, High: float64(p.Excess) + share*p.mean, Suffix: "pa",
		Source: "equilibrium pressure within 1.5 %; the gauge and the thermometer add theirs",
	}
}
