package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/internal/water"
	"gonum.org/v1/gonum/unit"
)

// coilStations is the number of steps of the march; halving their length moves
// no outlet by 0.01 K.
const coilStations = 8

// chill marches the coil; all arguments are within their ranges.
func (c *Coil) chill(inlet, flow float64, stations int) CoilChill {
	bath, bore, length := c.Bath.Celsius(), float64(c.Bore), float64(c.Length)
	outside := bore + 2*float64(c.Wall)
	density := c.Beer.density(inlet)
	m := coilMarch{
		Coil: c, bath: bath, bore: bore, massFlow: density * flow,
		specific: c.Beer.heatCapacity((inlet + bath) / 2), // varies by less than 1 % between the two
		wall:     heat.RadialResistance(bore, outside, float64(c.Conductivity)),
		outer:    heat.FilmResistance(outside, float64(c.Film)),
	}
	capacityRate := m.massFlow * m.specific
	dx := length / float64(stations)
	theta, ntu := inlet-bath, 0.0
	for range stations { // midpoint rule on the logarithm of T − T_bath
		half := theta * math.Exp(-m.conductance(theta)*dx/2/capacityRate)
		step := m.conductance(half) * dx / capacityRate
		ntu += step
		theta *= math.Exp(-step)
	}
	outlet, freezes := bath+theta, c.Beer.FreezingPoint()
	ua := ntu * capacityRate
	r := CoilChill{
		Outlet: Celsius(outlet), NTU: ntu, Effectiveness: -math.Expm1(-ntu),
		Reynolds:         m.reynolds((inlet + outlet) / 2),
		CriticalReynolds: pipe.CriticalSchmidt(bore / float64(c.Winding)),
		UA:               Conductance(ua),
		Heat:             unit.Power(capacityRate * (inlet - outlet)),
		HoldUp:           unit.Volume(math.Pi / 4 * bore * bore * length),
		FreezeMargin:     c.Bath.Sub(freezes),
		coil:             *c, inlet: inlet, capacityRate: capacityRate,
		risk:  coilRisk{bath, freezes.Celsius(), c.ByPump},
		inner: length/ua - m.wall - m.outer, wall: m.wall, outer: m.outer,
		standing: c.standing(density * m.specific),
	}
	r.Blocks = r.FreezeMargin < 0
	if inlet > outlet { // beer colder than the bath melts nothing
		r.IcePerLitre = unit.Mass(density * m.specific * 1e-3 * (inlet - outlet) / water.LatentHeat)
		r.IcePerHour = unit.Mass(float64(r.Heat) * 3600 / water.LatentHeat)
	}
	return r
}

// A coilMarch holds what stays the same from station to station.
type coilMarch struct {
	*Coil
	bath, bore, massFlow, specific float64 // °C, m, kg/s, J/(kg K)
	wall, outer                    float64 // resistances, K m/W
}

// conductance returns U′ in W/(m K) where the beer is theta above the bath.
func (m *coilMarch) conductance(theta float64) float64 {
	t := m.bath + theta
	pr, k := m.prandtl(t)
	re := m.reynolds(t)
	nu := pipe.NusseltCoiled(re, pr, m.bore/float64(m.Winding))
	inner := 1 / (math.Pi * nu * k) // h_i π d = Nu k π
	// The wall is colder than the bulk and its beer thicker; one correction
	// suffices, since the factor is the 0.14th power.
	rest := m.wall + m.outer
	prWall, _ := m.prandtl(m.bath + theta*rest/(inner+rest))
	inner /= math.Pow(pr/prWall, 0.14) // VDI Gc, as for straight tubes
	return 1 / (inner + rest)
}

// prandtl returns the Prandtl number and the conductivity at t °C.
func (m *coilMarch) prandtl(t float64) (pr, k float64) {
	k = m.Beer.conductivity(t)
	return m.Beer.viscosity(t) * m.specific / k, k
}

// reynolds returns 4 ṁ/(π d μ) at t °C.
func (m *coilMarch) reynolds(t float64) float64 {
	return 4 * m.massFlow / (math.Pi * m.bore * m.Beer.viscosity(t))
}

// standing returns the time constant, in s, with which beer at rest in the
// coil follows the bath; volumetric is the beer's ρ c.
//
//	τ = (C′_beer + ½ C′_wall) / U′,  Nu = 5.783 inside
//
// The wall counts half, since its temperature lies between the two. The
// outside film is that at the low end of its band: the last kelvins go at the
// smallest differences, where natural convection is weakest.
func (c *Coil) standing(volumetric float64) float64 {
	const steel = 7900 * steelHeat // ρ c of AISI 304, J/(m³ K); Bergman et al., table A.1, from memory
	d := float64(c.Bore)
	outside := d + 2*float64(c.Wall)
	inner := 1 / (math.Pi * pipe.NusseltStill * c.Beer.conductivity(c.Bath.Celsius()))
	wall := heat.RadialResistance(d, outside, float64(c.Conductivity))
	outer := heat.FilmResistance(outside, float64(c.Film)*(1-c.FilmBand))
	capacity := math.Pi / 4 * (d*d*volumetric + (outside*outside-d*d)/2*steel)
	return capacity * (inner + wall + outer)
}

// serve runs the pours through the coil.
func (r *CoilChill) serve(p Pours) Service {
	bath := r.coil.Bath.Celsius()
	theta := r.inlet - bath
	glasses := float64(r.HoldUp) / float64(p.Glass) // V_h/V
	whole := math.Floor(glasses)
	s := Service{
		Sustained: r.Outlet, Recovery: recovery(theta, r.standing),
		row: row{
			cold: bath, warm: theta * math.Exp(-r.NTU),
			rested: math.Exp(-p.pause() / r.standing), whole: whole, once: glasses - whole,
		},
		pause: p.pause(), tau: r.standing, risk: r.risk, chilled: theta * math.Exp(-r.NTU),
	}
	s.settle(p.Number)
	// The last glass's distance from the bath has the relative uncertainty of
	// the outlet's.
	low, high := r.outletBand()
	share := 0.0
	if s.chilled != 0 {
		share = (s.Last.Celsius() - bath) / s.chilled
	}
	s.low, s.high, s.because = bath+share*(low-bath), bath+share*(high-bath), "films outside and inside the coil"
	s.melt(p, r.capacityRate*(r.inlet-s.Settled.Celsius()))
	return s
}
