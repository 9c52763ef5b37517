package thermal

import (
	"math"
	"time"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/solve"
	"gonum.org/v1/gonum/unit"
)

// A kegModel is the heat balance of a keg in air.
type kegModel struct {
	capacity float64 // J/K
	air, ua  float64 // °C; W/K, 0 unless measured
	solAir   float64 // °C, with sun the air's temperature for a measured ua
	beer     Beer
	densest  float64 // °C
	latent   float64 // of dew, J/kg
	parts    [4]part
	table    heat.Table
	from     float64
	fine     float64 // divides step and tolerance; 1 unless a test refines
}

// newKegModel builds the balance. The parts are the wetted side, the side
// above the beer with the top, and the bottom.
func newKegModel(k Keg) *kegModel {
	c := k.From.Celsius()
	m := &kegModel{
		beer: k.Beer, densest: k.Beer.densest(), air: k.Around.Air.Celsius(), ua: float64(k.UA),
		latent: air.CondensationHeat(k.Around.Air.Kelvin()), from: c, fine: 1,
	}
	m.capacity = k.Beer.density(c)*float64(k.Vessel.Capacity)*k.Fill*k.Beer.heatCapacity(c) +
		float64(k.Vessel.Tare)*steelHeat
	b := bodyOf(k.Vessel)
	finish := finishes[k.Surface]
	skin := heat.Face{Diameter: b.diameter, Length: b.height, Dry: finish.dry, Wet: finish.wet, Ambient: k.Around.ambient()}
	light := heat.SunOn(float64(k.Around.Sun))
	sideways, up := light.OnUpright(), light.OnLevel()

	side := part{Face: skin, area: b.side * k.Fill, inside: b.side * k.Fill, height: b.height * k.Fill}
	side.Sun = finish.solar * sideways
	gap := part{Face: skin, area: b.side * (1 - k.Fill)} // beside the gas space
	gap.Sun = side.Sun
	if j := float64(k.Jacket); j > 0 {
		for _, p := range []*part{&side, &gap} {
			p.Dry, p.Wet = jacketFinish.dry, jacketFinish.wet
			p.Sun = jacketFinish.solar * sideways
			wide := b.diameter + 2*j
			p.area *= wide / b.diameter
			p.jacket = wide / 2 * math.Log(wide/b.diameter) / foamConductivity
			p.Diameter = wide
		}
	}
	// The gas space is as wide as the beer: its top and its side share the
	// surface of the beer in proportion to their areas.
	top := part{Face: skin, area: b.end, inside: b.end * b.end / (b.end + gap.area)}
	top.Kind, top.Sun = heat.Up, finish.solar*up
	gap.inside = b.end * gap.area / (b.end + gap.area)
	bottom := part{Face: skin, area: footArea * b.end, inside: footArea * b.end, height: b.diameter / 4}
	bottom.Kind = heat.Down
	m.parts = [4]part{side, gap, top, bottom}
	if m.ua > 0 {
		m.measured()
	}
	m.table.Tabulate(m.air, m.evaluate)
	return m
}

// measured prepares the balance of a keg whose UA was measured:
//
//	C dT/dt = UA (T_sa − T)
//
// T_sa is the sol-air temperature: that which air in the shade would need to
// heat the keg as this air and sun do, the mean over its faces by area. Most of
// the sunshine on a well insulated keg goes back into the air, so that it
// settles no warmer than a bare one of the same finish would; all of the sun
// over a small UA would have it boil.
//
// Source: sol-air temperature, ASHRAE Handbook, Fundamentals, chapter on
// cooling loads (from memory); films [1] to [4] of the package.
func (m *kegModel) measured() {
	sum, area := 0.0, 0.0
	for i := range m.parts {
		p := &m.parts[i]
		sum += p.area * (p.Settles() - p.T)
		area += p.area
	}
	m.solAir = m.air + sum/area
}

// evaluate returns the heat into the keg and the dew's part of it, W, with
// beer of c °C.
func (m *kegModel) evaluate(c float64) (q, dew float64) {
	if m.ua > 0 {
		return m.ua * (m.solAir - c), 0
	}
	for i := range m.parts {
		qi, di := m.parts[i].heat(m.beer, m.densest, c)
		q += qi
		dew += di
	}
	return q, dew
}

// heat returns the heat into the keg and the dew's part of it, W, from the
// table.
func (m *kegModel) heat(c float64) (q, dew float64) { return m.table.At(c) }

// conductance returns the heat per kelvin, W/K, dew included, without sun.
func (m *kegModel) conductance(c float64) Conductance {
	if m.ua > 0 {
		return Conductance(m.ua)
	}
	if math.Abs(m.air-c) < 0.5 {
		c = m.air - 0.5
	}
	dark := &kegModel{beer: m.beer, densest: m.densest, air: m.air, parts: m.parts}
	for i := range dark.parts {
		dark.parts[i].Sun = 0
	}
	q, _ := dark.evaluate(c)
	return Conductance(q / (m.air - c))
}

// settles returns the temperature, °C, at which no heat flows.
func (m *kegModel) settles() float64 {
	if m.ua > 0 {
		return m.solAir
	}
	balance := func(c float64) float64 { q, _ := m.heat(c); return q }
	if balance(m.air) <= 0 { // shade: dew does not form on a keg as warm as the air
		return m.air
	}
	// Sun on a keg in still air warms it by some 30 K, on a jacket by 60 K.
	c, ok := solve.Root(balance, m.air, 130, 1e-4)
	if !ok {
		return math.NaN()
	}
	return c
}

// A kegState is the state after a run.
type kegState struct {
	t   float64 // °C
	dew float64 // heat that dew set free, J
}

// run advances the keg for so many seconds, or until its beer reaches target
// °C, whichever comes first; a NaN target is never reached.
func (m *kegModel) run(seconds, target float64) (float64, kegState) {
	y := [2]float64{m.from, 0}
	if seconds == 0 || target == m.from {
		return 0, kegState{m.from, 0}
	}
	s := m.integrator()
	end := math.Min(seconds, longest)
	for t := 0.0; t < end; {
		before := y[0]
		t0 := t
		t = s.Step(t, end, y[:])
		if (before-target)*(y[0]-target) <= 0 {
			x, ok := solve.Root(func(x float64) float64 { return s.At(x, 0) - target }, t0, t, 1e-3)
			if ok {
				return x, kegState{target, s.At(x, 1)}
			}
		}
	}
	return end, kegState{y[0], y[1]}
}

// longest is the longest time run for, s: within a year every keg settles.
const longest = 365 * 24 * 3600.0

// sample fills in the beer's temperature at the times of the samples.
func (m *kegModel) sample(samples []Sample) {
	y := [2]float64{m.from, 0}
	s := m.integrator()
	t := 0.0
	for i := range samples {
		for at := samples[i].At.Seconds(); t < at; {
			t = s.Step(t, at, y[:])
		}
		samples[i].Beer = Celsius(y[0])
		samples[i].Upper = samples[i].Beer
	}
}

func (m *kegModel) integrator() *solve.Integrator {
	d := func(_ float64, y, dydt []float64) {
		q, dew := m.heat(y[0])
		dydt[0], dydt[1] = q/m.capacity, dew
	}
	return solve.NewIntegrator(d, []float64{1e-5 / m.fine, math.Inf(1)}, 3600/m.fine)
}

// warming gathers the answer after a run.
func (k Keg) warming(m *kegModel, seconds float64, s kegState) Warming {
	heat := m.capacity * (s.t - k.From.Celsius())
	w := Warming{
		Time:        time.Duration(seconds * float64(time.Second)),
		Temperature: Celsius(s.t),
		Settles:     Celsius(m.settles()),
		UA:          m.conductance((k.From.Celsius() + s.t) / 2),
		Heat:        unit.Power(heat / seconds),
		Dew:         unit.Mass(s.dew / m.latent),
		keg:         k,
	}
	if heat > 0 {
		w.DewHeatShare = math.Min(s.dew/heat, 1)
	}
	if seconds == 0 {
		q, dew := m.heat(s.t)
		w.Heat = unit.Power(q)
		if q > 0 {
			w.DewHeatShare = math.Min(dew/q, 1)
		}
	}
	return w
}
