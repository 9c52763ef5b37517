package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/solve"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Solid polyethylene, of which tubs are made, and the foam of an ice chest.
// Sources: high-density polyethylene, DIN EN 12524:2000; moulded polystyrene
// foam, ASHRAE Handbook, Fundamentals (read at second hand).
const (
	SolidPlastic Conductivity = 0.50   // W/(m K)
	ChestFoam    Conductivity = 0.0355 // W/(m K)
)

// newBathModel builds the balance and puts it at the start.
func newBathModel(b IceBath, fn string) (*bathModel, error) {
	c := b.From.Celsius()
	m := &bathModel{
		IceBath: b, n: float64(b.Kegs), body: bodyOf(b.Vessel),
		rho: b.Beer.density(c), c: b.Beer.heatCapacity(c), densest: b.Beer.densest(),
		steel: float64(b.Vessel.Tare) * steelHeat, cold: water.IceCold(b.IceFrom.Kelvin()),
		scale: 1, put: float64(b.Ice), heap: float64(b.Ice), iceGone: math.NaN(), coldest: c,
	}
	m.fresh = float64(b.Water) * water.Density(b.WaterFrom.Kelvin())
	m.salt = m.fresh * b.Salt / (1 - b.Salt)
	if err := m.stand(fn); err != nil {
		return nil, err
	}
	if err := m.plan(fn); err != nil {
		return nil, err
	}
	beer := b.Fill * float64(b.Vessel.Capacity)
	m.border = math.Max(leastCovered, m.covered(beer, m.put))
	m.films()
	m.y[inBeer], m.y[inIce] = beer, m.put
	lower, upper := m.capacities(beer)
	m.y[inLower], m.y[inUpper] = lower*c, upper*c
	m.y[inWater] = m.fresh * m.brineHeat(m.fresh) * b.WaterFrom.Celsius()
	if m.put == 0 {
		m.iceGone = 0
	}
	m.integrate(1)
	return m, nil
}

// integrate makes the integrator; fine divides its tolerances and steps.
func (m *bathModel) integrate(fine float64) {
	const kelvin = 1e-4 // per step
	inf := math.Inf(1)
	lower, upper := m.capacities(m.y[inBeer])
	bath := waterHeat * (m.put + m.fresh)
	m.s = solve.NewIntegrator(m.derivative, []float64{
		kelvin * (lower + upper) / fine, kelvin * (lower + upper) / fine, inf,
		kelvin * math.Max(bath, 1e4) / fine, 1e-5 * (m.put + 1) / fine, inf, inf,
	}, 1800/fine)
}

// stand finds how deep the bath is around the kegs.
func (m *bathModel) stand(fn string) error {
	foot := float64(m.Vessel.Displaced(m.Vessel.Height)) / float64(m.Vessel.Height)
	m.share = 1 / (iceDensity * packed * (m.Tub.Floor() - m.n*foot) * float64(m.Vessel.Height))
	liquid := m.Water + unit.Volume(m.put)*volume.Litre
	if m.Drained {
		liquid = 0
	}
	depth, err := m.Tub.Depth(liquid, m.Vessel, m.Kegs)
	if err != nil {
		return err
	}
	if most := (m.Tub.Floor() - m.n*foot) * float64(m.Tub.Height) * iceDensity * packed; m.Drained && m.put > most {
		return needs(fn, "ice_kg", most, m.put, "around %s the tub takes {%.6g kg} of loose ice, and {%.6g kg} were given", countOf(m.Kegs, "keg"), most, m.put)
	}
	m.start = float64(depth / m.Vessel.Height)
	m.depth = math.Min(m.start, 1)
	return nil
}

// capacities returns the heat capacities of one keg below and above the border,
// J/K. Its steel lies evenly along its height.
func (m *bathModel) capacities(beer float64) (lower, upper float64) {
	v := math.Min(beer, m.border*float64(m.Vessel.Capacity))
	return m.rho*m.c*v + m.steel*m.border, m.rho*m.c*(beer-v) + m.steel*(1-m.border)
}

// covered returns the share of the keg's height below the bath: what the depth
// gives, or less where the keg floats, or the height of the loose ice.
func (m *bathModel) covered(beer, ice float64) float64 {
	s := m.depth
	if m.Drained {
		s = ice * m.share
	} else if draught := m.draught(beer); draught < s {
		s = draught
	}
	return math.Min(s, 1)
}

// leastCovered is the lowest border between the zones, so that there is always
// beer below it.
const leastCovered = 0.05

// draught returns the share of its height to which a floating keg sinks.
func (m *bathModel) draught(beer float64) float64 {
	return (float64(m.Vessel.Tare) + m.rho*beer) / (waterIce * float64(m.Vessel.Displaced(m.Vessel.Height)))
}

// liquid returns the water in the bath, kg, without its salt.
func (m *bathModel) liquid(ice float64) float64 {
	if m.Drained {
		return 0
	}
	return m.fresh + m.put - ice - m.bailed
}

// films prepares the tables of heat flows.
func (m *bathModel) films() {
	m.keg.node = m.kegFilms
	m.keg.height = m.body.height * m.border
	outside := heat.Face{Ambient: m.Around.ambient()}
	sun := heat.SunOn(float64(m.Around.Sun))

	skin := part{Face: outside, area: 1, inside: 1, height: m.body.height / 4}
	skin.Diameter, skin.Length = m.body.diameter, m.body.height
	skin.Dry, skin.Wet = finishes[Bare].dry, finishes[Bare].wet
	skin.Sun = finishes[Bare].solar * sun.OnUpright()
	lid := skin
	lid.Kind, lid.area, lid.inside, lid.height = heat.Up, m.body.end, m.body.end, 0
	lid.Sun = finishes[Bare].solar * sun.OnLevel()
	if m.Lid {
		for _, q := range []*part{&skin, &lid} {
			q.Sun, q.Velocity, q.jacket = 0, 0, cover
		}
	}
	around := m.Around.Air.Celsius()
	m.side.Tabulate(around, func(c float64) (float64, float64) { return skin.heat(m.Beer, m.densest, c) })
	m.top.Tabulate(around, func(c float64) (float64, float64) { return lid.heat(m.Beer, m.densest, c) })
	m.tub.Tabulate(around, m.tubHeat(outside, sun))

	mid := heat.Water(zeroCelsius + 4)
	m.mixing = 0.15 * mid.K * math.Cbrt(heat.Gravity*heat.DensityCoeff*mid.Pr/(mid.Nu*mid.Nu))
	m.creep = mid.K*math.Pi/4*m.body.diameter*m.body.diameter + steelConductivity*math.Pi*m.body.diameter*shell
}

// Figures of the keg's wall. Conductivity of AISI 304, W/(m K): Bergman et al.,
// table A.1 (from memory); thickness, m, judged.
const (
	steelConductivity = 14.9
	shell             = 1.2e-3
)

// tubHeat returns the heat into a bath of c °C through wall, floor and top, W.
func (m *bathModel) tubHeat(outside heat.Face, sun heat.Light) func(c float64) (float64, float64) {
	floor := m.Tub.Floor()
	deep := math.Max(m.start, m.border) * float64(m.Vessel.Height)
	around := 2 * math.Sqrt(math.Pi*floor) // a round tub
	wall := float64(m.Wall) / float64(m.Conductivity)

	side := outside
	side.Length, side.Diameter = deep, around/math.Pi
	side.Dry, side.Wet, side.Sun = 0.9, 0.95, tubAbsorbs*sun.OnUpright()
	top := side
	top.Kind, top.Sun = heat.Up, iceAbsorbs*sun.OnLevel()
	under := stillWater
	if m.Lid {
		top.Sun, under = tubAbsorbs*sun.OnLevel(), cover+wall
	}
	open := math.Max(floor-m.n*math.Pi/4*m.body.diameter*m.body.diameter, 0)
	if m.UA > 0 {
		return func(c float64) (float64, float64) { return float64(m.UA) * (m.Around.Air.Celsius() - c), 0 }
	}
	return func(c float64) (float64, float64) {
		qs, ds := side.Through(c+zeroCelsius, wall+stillWater)
		qt, dt := top.Through(c+zeroCelsius, under)
		qf := (m.Around.Air.Celsius() - c) / (ground + wall)
		return around*deep*qs + open*qt + floor*qf, around*deep*ds + open*dt
	}
}

// Judged figures of tub and ground; no source.
const (
	tubAbsorbs = 0.6  // share of sunlight, a tub or lid of middling colour
	iceAbsorbs = 0.6  // share of sunlight, ice and water over a tub's floor
	stillWater = 5e-3 // film of the bath at its wall, m² K/W
	ground     = 0.2  // grass and soil under the tub, m² K/W
	cover      = 0.25 // lid or blanket with the air beneath it, m² K/W
)
