package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Coil is a tube wound into a coil, laid in ice water, through which beer
// runs on its way to the tap. [DefaultCoil] has the usual values; the methods
// [Coil.Still], [Coil.Packed] and [Coil.Pumped] set the bath around it.
type Coil struct {
	Length       unit.Length     // of the tube in the bath
	Bore         unit.Length     // inside diameter of the tube
	Wall         unit.Length     // thickness of the tube
	Conductivity Conductivity    // of the wall
	Winding      unit.Length     // mean diameter of the winding, tube centre to tube centre
	Bath         Temperature     // of the water beside the coil
	Film         FilmCoefficient // between bath and tube, on the outside of the tube
	FilmBand     float64         // uncertainty of Film as a share of it, 0 where it was measured
	Beer         Beer
}

// DefaultCoil returns 50 ft of stainless steel tube of a quarter inch outside
// and 4.93 mm inside, wound 20 cm wide, in a still bath.
func DefaultCoil() Coil {
	return Coil{
		Length: 50 * 12 * volume.Inch, Bore: 4.93e-3, Wall: 0.71e-3,
		Conductivity: 14.9, // AISI 304; Bergman et al., table A.1, from memory
		Winding:      0.2,
	}.Still()
}

// Still returns the coil in ice water that nobody stirs: 2 °C beside the coil
// and 450 W/(m² K), with ±45 %.
//
// Source: assumed; still ice-water baths were measured 2 to 4 °C beside
// bottles. Natural convection by Churchill & Chu gives 450 to 500 on a tube of
// 16 to 18 °C but only 240 to 260 on one of 4 to 8 °C, where water is densest,
// so beer that enters below 10 °C leaves nearer the warm end of the band.
func (c Coil) Still() Coil { return c.in(Celsius(2), 450, 0.45) }

// Packed returns the coil in ice packed tight around it with the gaps full of
// water, or stirred by hand now and then: 0.5 °C and 1500 W/(m² K), with ±25 %.
//
// Source: assumed; by Churchill & Bernstein water gives it at 0.05 m/s.
func (c Coil) Packed() Coil { return c.in(Celsius(0.5), 1500, 0.25) }

// Pumped returns the coil in ice water that a pump drives past it: 0 °C and
// 3000 W/(m² K), with ±25 %.
//
// Source: assumed; by Churchill & Bernstein water gives it at 0.2 m/s.
func (c Coil) Pumped() Coil { return c.in(Celsius(0), 3000, 0.25) }

func (c Coil) in(bath Temperature, film FilmCoefficient, band float64) Coil {
	c.Bath, c.Film, c.FilmBand = bath, film, band
	return c
}

// A CoilChill is what a coil does to a steady flow.
type CoilChill struct {
	Outlet           Temperature // of the beer that leaves while the tap stays open
	Effectiveness    float64     // share of the way from inlet to bath that the beer goes
	NTU              float64     // number of transfer units, UA over the capacity rate of the flow
	Reynolds         float64     // of the beer at the mean of inlet and outlet
	CriticalReynolds float64     // at which flow in this coil ceases to be laminar
	UA               Conductance // of the whole coil, mean over its length
	Heat             unit.Power  // taken from the beer
	IcePerLitre      unit.Mass   // melted for each litre of beer, apart from what the box itself melts
	IcePerHour       unit.Mass   // melted in an hour of steady flow
	HoldUp           unit.Volume // beer in the coil
	FreezeMargin     Difference  // bath above the freezing point of the beer
	Blocks           bool        // bath is colder than that: beer that stands in the coil freezes in about a minute

	coil         Coil
	inlet        float64 // °C
	capacityRate float64 // W/K
	inner        float64 // mean resistance of the inside film, K m/W
	wall, outer  float64 // K m/W
	standing     float64 // time constant of beer at rest, s
}

// Chill returns how a steady flow of beer that enters at inlet leaves the
// coil. The tube is marched from end to end, at each station
//
//	1/U′ = 1/(h_i π d) + ln(d_o/d)/(2π k) + 1/(h_o π d_o)
//	ṁ c dT/dx = −U′ (T − T_bath)
//
// with h_i by the VDI Heat Atlas for coils, laminar below the critical
// Reynolds number of the winding, and h_o that of the bath.
//
// Valid from −5 °C to 40 °C, for a bore of at most 0.14 of the winding and
// Reynolds numbers to 1e5. Expect the outside film within ±45 % in a still bath
// and ±25 % in a moved one, see [CoilChill.Band]. Outside the range Chill
// returns a [*RangeError] and NaN, and where the beer would leave frozen an
// error that wraps [volume.ErrNoSolution].
//
// Special cases: a bath warmer than the beer warms it, and heat and ice come
// out negative.
//
// Sources: [pipe.NusseltCoiled]; latent heat of ice IAPWS-06.
func (c Coil) Chill(inlet Temperature, flow Flow) (CoilChill, error) {
	const fn = "thermal.Coil.Chill"
	if err := c.check(fn, inlet, flow); err != nil {
		return noCoilChill(), err
	}
	r := c.chill(inlet.Celsius(), float64(flow), coilStations)
	if err := limitCoilReynolds.Check(fn, r.Reynolds); err != nil {
		return noCoilChill(), err
	}
	if err := c.Beer.freezes(fn, r.Outlet); err != nil {
		return noCoilChill(), err
	}
	return r, nil
}

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
	outlet := bath + theta
	ua := ntu * capacityRate
	r := CoilChill{
		Outlet: Celsius(outlet), NTU: ntu, Effectiveness: -math.Expm1(-ntu),
		Reynolds:         m.reynolds((inlet + outlet) / 2),
		CriticalReynolds: pipe.CriticalSchmidt(bore / float64(c.Winding)),
		UA:               Conductance(ua),
		Heat:             unit.Power(capacityRate * (inlet - outlet)),
		HoldUp:           unit.Volume(math.Pi / 4 * bore * bore * length),
		FreezeMargin:     c.Bath.Sub(c.Beer.FreezingPoint()),
		coil:             *c, inlet: inlet, capacityRate: capacityRate,
		inner: length/ua - m.wall - m.outer, wall: m.wall, outer: m.outer,
		standing: c.standing(density * m.specific),
	}
	r.Blocks = r.FreezeMargin < 0
	r.IcePerLitre = unit.Mass(density * m.specific * 1e-3 * (inlet - outlet) / water.LatentHeat)
	r.IcePerHour = unit.Mass(float64(r.Heat) * 3600 / water.LatentHeat)
	return r
}
