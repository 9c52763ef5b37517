package thermal

import (
	"fmt"
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/solve"
	"example.com/pourwell/volume"
)

// Judged figures of the keg's build; no source.
const (
	gasFilm  = 15.0 // through the gas space to the surface of the beer, W/(m² K)
	footArea = 0.5  // share of the bottom that air reaches, inside the foot ring
	dished   = 1.2  // area of a dished end over that of a flat one
)

// Heat capacity of stainless steel AISI 304, J/(kg K). Source: Bergman et al.,
// table A.1 (from memory).
const steelHeat = 477.0

// Conductivity of flexible elastomeric or polyethylene foam, design value,
// W/(m K). Source: DIN EN 12524:2000.
const foamConductivity = 0.050

// finishes are emissivity dry and wet, and absorptance for sunlight. Sources:
// Bergman et al., tables A.11 and A.12, clean and polished stainless steel
// (from memory); white paint and black lacquer in Mechanical Engineers'
// Handbook, vol. 4, table 19, for whose mean the painted absorptance stands; a
// surface with beads of dew is judged to lie between steel and a water film
// (0.96).
var finishes = [...]struct{ dry, wet, solar float64 }{
	Bare:    {0.20, 0.70, 0.40},
	Painted: {0.90, 0.95, 0.55},
}

// jacketFinish is that of a dark cloth or foam jacket.
var jacketFinish = struct{ dry, wet, solar float64 }{0.90, 0.95, 0.90}

// A body is the cylinder of a vessel's beer, as wide as the vessel: what lies
// above and below is open rings. Heat passes its side and ends.
type body struct{ diameter, height, side, end float64 } // m, m, m², m²

func bodyOf(v volume.Vessel) body {
	d := float64(v.Diameter)
	end := math.Pi / 4 * d * d
	h := float64(v.Capacity) / end
	return body{d, h, math.Pi * d * h, dished * end}
}

// A kegModel is the heat balance of a keg in air.
type kegModel struct {
	capacity float64 // J/K
	air, ua  float64 // °C; W/K, 0 unless measured
	solAir   float64 // °C, with sun the air's temperature for a measured ua
	beer     Beer
	densest  float64 // °C
	latent   float64 // of dew, J/kg
	parts    [4]part
	table    heatTable
	from     float64
	fine     float64 // divides step and tolerance; 1 unless a test refines
}

// A part is a face of the keg with its inside.
type part struct {
	face
	area   float64 // outside, m²
	inside float64 // area of the beer's side of it, m²; 0 for none
	height float64 // of the beer's film, m; 0 for a fixed film through gas
	jacket float64 // resistance, m² K/W of outside area
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
	skin := face{
		diameter: b.diameter, length: b.height, dry: finish.dry, wet: finish.wet,
		t: k.Around.Air.Kelvin(), p: air.Pressure(float64(k.Around.Altitude)), velocity: float64(k.Around.Wind),
	}
	skin.ratio = air.HumidityRatio(skin.t, k.Around.Humidity, skin.p)
	light := sunOn(k.Around.Sun)
	sideways, up := light.onUpright(), light.onLevel()

	side := part{face: skin, area: b.side * k.Fill, inside: b.side * k.Fill, height: b.height * k.Fill}
	side.sun = finish.solar * sideways
	gap := part{face: skin, area: b.side * (1 - k.Fill)} // beside the gas space
	gap.sun = side.sun
	if j := float64(k.Jacket); j > 0 {
		for _, p := range []*part{&side, &gap} {
			p.dry, p.wet = jacketFinish.dry, jacketFinish.wet
			p.sun = jacketFinish.solar * sideways
			wide := b.diameter + 2*j
			p.area *= wide / b.diameter
			p.jacket = wide / 2 * math.Log(wide/b.diameter) / foamConductivity
			p.diameter = wide
		}
	}
	// The gas space is as wide as the beer: its top and its side share the
	// surface of the beer in proportion to their areas.
	top := part{face: skin, area: b.end, inside: b.end * b.end / (b.end + gap.area)}
	top.kind, top.sun = faceUp, finish.solar*up
	gap.inside = b.end * gap.area / (b.end + gap.area)
	bottom := part{face: skin, area: footArea * b.end, inside: footArea * b.end, height: b.diameter / 4}
	bottom.kind = faceDown
	m.parts = [4]part{side, gap, top, bottom}
	if m.ua > 0 {
		m.measured()
	}
	m.table.tabulate(m.air, m.evaluate)
	return m
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

// heat returns the heat through the part into beer of c °C, and the dew's part.
func (p *part) heat(b Beer, densest, c float64) (q, dew float64) {
	if p.area == 0 || p.inside == 0 {
		return 0, 0
	}
	tb := c + zeroCelsius
	h := gasFilm
	if p.height > 0 {
		h = 100 // first guess, W/(m² K)
	}
	for range 3 {
		q, dew = p.through(tb, p.jacket+p.area/(p.inside*h))
		if p.height == 0 {
			break
		}
		h = b.film(c, c+q*p.area/(p.inside*h), p.height, densest)
	}
	return q * p.area, dew * p.area
}

// film returns the coefficient between beer of c °C and an upright wall of tw
// °C and that height, W/(m² K). Beyond −5 and 40 °C the properties at those
// bounds stand in: above, the film is a twentieth of the resistance or less;
// below, only a wall or a keg that is left in frost gets there.
func (b Beer) film(c, tw, height, densest float64) float64 {
	f := b.fluidAt(math.Max(limitLiquid.Min, math.Min((c+tw)/2, limitLiquid.Max)))
	ra := f.rayleigh(waterBuoyancy(tw, c, densest), height)
	return nusseltPlate(ra, f.pr) * f.k / height
}

// densest returns the temperature, °C, at which the beer is densest.
func (b Beer) densest() float64 {
	slope := func(c float64) float64 { return b.density(c+0.01) - b.density(c-0.01) }
	c, ok := solve.Root(slope, -20, 6, 1e-3)
	if !ok {
		return -20 // strong beer has no maximum above the range of its density
	}
	return c
}

// heat returns the heat into the keg and the dew's part of it, W, from the
// table.
func (m *kegModel) heat(c float64) (q, dew float64) { return m.table.at(c) }

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
		dark.parts[i].sun = 0
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

// never says that the process ends before the target, °C; how is what it does
// there, such as "settles at".
func never(fn, how string, target, there float64) error {
	return fmt.Errorf("%s: %w: the beer %s %s, so it does not get to %s",
		fn, ErrNever, how, onBothScales(Celsius(there)), onBothScales(Celsius(target)))
}

// checkLiquid refuses a temperature at which the beer is frozen or its
// properties are not known.
func (b Beer) checkLiquid(fn, name string, t Temperature) error {
	if err := limitLiquid.Check(fn, t.Celsius()); err != nil {
		return err
	}
	r := volume.Range{
		Name: name, Min: b.FreezingPoint().Celsius(), Max: limitLiquid.Max, Suffix: "c",
		Source: "this beer freezes at the lower bound",
	}
	return r.Check(fn, t.Celsius())
}

var limitDuration = volume.Range{Name: "time", Min: 0, Max: 30 * 24, Suffix: "h", Source: "beer kept for a month is a matter of storage, not of a day"}
