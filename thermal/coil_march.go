package thermal

import (
	"math"

	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/volume"
)

// Ranges of a coil, a plate and a line.
var (
	limitTubeLength   = volume.Range{Name: "tube length", Min: 0.1, Max: 200, Suffix: "m", Source: "tubes of draft systems"}
	limitBore         = volume.Range{Name: "bore", Min: 2, Max: 25, Suffix: "mm", Source: "tubes of draft systems"}
	limitTubeWall     = volume.Range{Name: "tube wall", Min: 0.1, Max: 10, Suffix: "mm", Source: "tubes of draft systems"}
	limitWallLambda   = volume.Range{Name: "conductivity of the tube", Min: 0.02, Max: 500, Suffix: "w_per_m_k", Source: "from foam to copper"}
	limitCurvature    = volume.Range{Name: "bore over winding", Min: 0.002, Max: 0.14, Source: "Schmidt 1967 holds to 0.14"}
	limitBath         = volume.Range{Name: "bath temperature", Min: -5, Max: 40, Suffix: "c", Source: "range of the beer's properties"}
	limitFilm         = volume.Range{Name: "film coefficient", Min: 20, Max: 20000, Suffix: "w_per_m2_k", Source: "from still air in ice to boiling"}
	limitFilmBand     = volume.Range{Name: "band of the film coefficient", Min: 0, Max: 0.9, Source: "a share: 0.4 is ±40 %"}
	limitFlow         = volume.Range{Name: "flow", Min: 0.01, Max: 40, Suffix: "l_per_min", Source: "taps of draft systems"}
	limitCoilReynolds = volume.Range{Name: "Reynolds number", Min: 0, Max: 1e5, Source: "VDI Heat Atlas, coils"}
)

// check returns a [*volume.RangeError] in the name of fn if the coil, the
// inlet temperature or the flow lies outside its range.
func (c *Coil) check(fn string, inlet Temperature, flow Flow) error {
	for _, x := range [...]struct {
		limit *volume.Range
		value float64
	}{
		{&limitTubeLength, float64(c.Length)},
		{&limitBore, float64(c.Bore) * 1e3},
		{&limitTubeWall, float64(c.Wall) * 1e3},
		{&limitWallLambda, float64(c.Conductivity)},
		{&limitCurvature, float64(c.Bore / c.Winding)},
		{&limitBath, c.Bath.Celsius()},
		{&limitFilm, float64(c.Film)},
		{&limitFilmBand, c.FilmBand},
		{&limitLiquid, inlet.Celsius()},
		{&limitFlow, flow.LitresPerMinute()},
	} {
		if err := x.limit.Check(fn, x.value); err != nil {
			return err
		}
	}
	return nil
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
// coil follows the bath; heat is the beer's ρ c.
//
//	τ = (C′_beer + ½ C′_wall) / U′,  Nu = 5.783 inside
//
// The wall counts half, since its temperature lies between the two. The
// outside film is that at the low end of its band: the last kelvins go at the
// smallest differences, where natural convection is weakest.
func (c *Coil) standing(heat float64) float64 {
	const steel = 7900 * steelHeat // ρ c of AISI 304, J/(m³ K); Bergman et al., table A.1, from memory
	d := float64(c.Bore)
	outside := d + 2*float64(c.Wall)
	inner := 1 / (math.Pi * pipe.NusseltStill * c.Beer.conductivity(c.Bath.Celsius()))
	wall := radialResistance(d, outside, float64(c.Conductivity))
	outer := filmResistance(outside, float64(c.Film)*(1-c.FilmBand))
	capacity := math.Pi / 4 * (d*d*heat + (outside*outside-d*d)/2*steel)
	return capacity * (inner + wall + outer)
}
