package thermal

import (
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/water"
)

// Constants of nature. Sources: standard gravity, and the Stefan-Boltzmann
// constant of the SI of 2019.
const (
	gravity         = 9.80665           // m/s²
	stefanBoltzmann = 5.670374419e-8    // W/(m² K⁴)
	zeroCelsius     = water.ZeroCelsius // K
)

// nusseltPlate is natural convection at an upright plate or cylinder of height
// L, on which ra and the result are based; any ra to 1e12, ±15 %, ±30 % where
// turbulent.
//
// Source: S. W. Churchill and H. H. S. Chu, Int. J. Heat Mass Transfer 18
// (1975) 1323, as eq. 9.26 in Bergman et al.; an upright cylinder counts as a
// plate if D/L ≥ 35/Gr^¼.
func nusseltPlate(ra, pr float64) float64 { return nusseltPlateAt(ra, plateFactor(pr)) }

// nusseltPlateAt is nusseltPlate with the part that depends on the Prandtl
// number given, for many ra at one pr.
func nusseltPlateAt(ra, factor float64) float64 {
	r := 0.825 + factor*sixthRoot(ra)
	return r * r
}

func plateFactor(pr float64) float64 {
	return 0.387 / math.Pow(1+math.Pow(0.492/pr, 9./16), 8./27)
}

// nusseltCylinder is natural convection around a horizontal cylinder, on whose
// diameter ra and the result are based; 1e-5 to 1e12, ±15 %.
//
// Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, as eq.
// 9.34 in Bergman et al.
func nusseltCylinder(ra, pr float64) float64 {
	r := 0.60 + 0.387*sixthRoot(ra)/math.Pow(1+math.Pow(0.559/pr, 9./16), 8./27)
	return r * r
}

// nusseltAssisted is natural convection from a horizontal face whose buoyancy
// carries the fluid away: warm and facing up, or cold and facing down. Length
// is area over perimeter; ra 1e4 to 1e11, ±20 %. Below that range the lower
// branch is carried on.
//
// Source: W. H. McAdams, Heat Transmission (1954), as eqs. 9.30 and 9.31 in
// Bergman et al.
func nusseltAssisted(ra float64) float64 {
	if ra < 1e7 {
		return 0.54 * math.Sqrt(math.Sqrt(ra))
	}
	return 0.15 * math.Cbrt(ra)
}

// nusseltHindered is natural convection from a horizontal face that holds the
// fluid against it: warm and facing down, or cold and facing up. Length is
// area over perimeter; ra 1e5 to 1e10, ±30 %.
//
// Source: McAdams (1954), as eq. 9.32 in older editions of Bergman et al.
func nusseltHindered(ra float64) float64 { return 0.27 * math.Sqrt(math.Sqrt(ra)) }

// nusseltCross is flow across a cylinder, on whose diameter re and the result
// are based; re pr > 0.2, ±20 %.
//
// Source: S. W. Churchill and M. Bernstein, J. Heat Transfer 99 (1977) 300, as
// eq. 7.54 in Bergman et al.
func nusseltCross(re, pr float64) float64 {
	return 0.3 + 0.62*math.Sqrt(re)*math.Cbrt(pr)/math.Sqrt(math.Sqrt(1+math.Pow(0.4/pr, 2./3)))*
		math.Pow(1+math.Pow(re/282000, 5./8), 4./5)
}

// nusseltFlat is laminar flow along a flat face of length L, averaged over it;
// re to 5e5, ±15 %. Source: Pohlhausen's solution, eq. 7.30 in Bergman et al.
func nusseltFlat(re, pr float64) float64 { return 0.664 * math.Sqrt(re) * math.Cbrt(pr) }

// mixed joins forced and natural convection at one surface, n = 3 for upright
// ones, ±25 %. Source: S. W. Churchill, AIChE J. 23 (1977) 10 (from memory).
func mixed(forced, natural float64) float64 {
	return math.Cbrt(forced*forced*forced + natural*natural*natural)
}

// radiative returns the coefficient of radiation, W/(m² K), between a surface
// of emissivity eps at a kelvin and surroundings at b kelvin.
func radiative(eps, a, b float64) float64 {
	return eps * stefanBoltzmann * (a*a + b*b) * (a + b)
}

// A fluid holds what a film coefficient needs of a fluid at one temperature.
type fluid struct {
	k  float64 // conductivity, W/(m K)
	nu float64 // kinematic viscosity, m²/s
	pr float64 // Prandtl number
}

// airAt returns the properties of air at t kelvin and p Pa.
func airAt(t, p float64) fluid {
	mu, k := air.Viscosity(t), air.Conductivity(t)
	return fluid{k, mu / air.Density(t, p), mu * air.HeatCapacity / k}
}

// waterAt returns the properties of liquid water at t kelvin.
func waterAt(t float64) fluid {
	mu, k := water.Viscosity(t), water.Conductivity(t)
	return fluid{k, mu / water.Density(t), mu * water.HeatCapacity(t) / k}
}

// beerAt returns the properties of beer at c °C.
func (b Beer) fluidAt(c float64) fluid {
	mu, k := b.viscosity(c), b.conductivity(c)
	return fluid{k, mu / b.density(c), mu * b.heatCapacity(c) / k}
}

// rayleigh returns g B L³ Pr/ν² for the relative density difference B that
// drives the flow and the length L.
func (f fluid) rayleigh(buoyancy, length float64) float64 {
	return gravity * buoyancy * length * length * length * f.pr / (f.nu * f.nu)
}

// airBuoyancy is the relative density difference between air at a surface of
// ts kelvin and air at ta kelvin.
func airBuoyancy(ts, ta float64) float64 { return 2 * math.Abs(ts-ta) / (ts + ta) }

// Density of water near its maximum: ρ = ρ_m (1 − a |t − t_m|^q), t in °C;
// within 2 % of the density difference from 0 to 25 °C. Source: B. Gebhart and
// J. C. Mollendorf, Deep-Sea Research 24 (1977) 831, pure water at 1 atm.
const (
	densestAt    = 4.029325 // t_m, °C
	densityCoeff = 9.297173e-6
	densityPower = 1.894816 // q
)

// waterBuoyancy returns twice the mean of |ρ − ρ_bulk|/ρ over the film between
// a wall at tw °C and bulk water at tb °C, whose density is greatest at tm °C:
//
//	B = (2/|tw − tb|) ∫ |ρ(t) − ρ(tb)| dt / ρ,  from tb to tw
//
// It is the density difference itself where density is linear, and stays above
// zero where wall and bulk straddle the maximum and have equal densities: there
// the film rises on one side and sinks on the other. The mean is our own
// construction, checked by the temperature of least heat transfer at a wall of
// 0 °C.
func waterBuoyancy(tw, tb, tm float64) float64 {
	x, y := math.Abs(tb-tm), math.Abs(tw-tm)
	fx := math.Pow(x, densityPower)
	fy := math.Pow(y, densityPower)
	d := math.Abs(tw - tb)
	if d < 1e-9 {
		return 0
	}
	// primitive of |s|^q − x^q over s, the distance from the maximum
	prim := func(s, fs float64) float64 { return s * (fs/(densityPower+1) - fx) }
	var area float64
	switch {
	case (tb-tm)*(tw-tm) >= 0: // same side: the sign does not change
		area = math.Abs(prim(y, fy) - prim(x, fx))
	case y <= x: // across the maximum, not yet as far as the conjugate temperature
		area = -(prim(x, fx) + prim(y, fy))
	default: // beyond it, where the film is lighter than the bulk
		area = -2*prim(x, fx) + prim(y, fy) - prim(x, fx)
	}
	return 2 * densityCoeff * area / d
}

// sixthRoot returns x^(1/6); it is twice as fast as math.Pow.
func sixthRoot(x float64) float64 { return math.Cbrt(math.Sqrt(x)) }
