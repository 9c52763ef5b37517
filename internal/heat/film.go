package heat

import "math"

// The Stefan-Boltzmann constant of the SI of 2019, W/(m² K⁴).
const stefanBoltzmann = 5.670374419e-8

// NusseltPlate is natural convection at an upright plate or cylinder of height
// L, on which ra and the result are based; any ra to 1e12, ±15 %, ±30 % where
// turbulent.
//
// Source: S. W. Churchill and H. H. S. Chu, Int. J. Heat Mass Transfer 18
// (1975) 1323, as eq. 9.26 in Bergman et al.; an upright cylinder counts as a
// plate if D/L ≥ 35/Gr^¼.
func NusseltPlate(ra, pr float64) float64 { return NusseltPlateAt(ra, PlateFactor(pr)) }

// NusseltPlateAt is NusseltPlate with the part that depends on the Prandtl
// number given, for many ra at one pr.
func NusseltPlateAt(ra, factor float64) float64 {
	r := 0.825 + factor*sixthRoot(ra)
	return r * r
}

// PlateFactor returns the part of NusseltPlate that depends on the Prandtl
// number.
func PlateFactor(pr float64) float64 {
	return 0.387 / math.Pow(1+math.Pow(0.492/pr, 9./16), 8./27)
}

// NusseltCylinder is natural convection around a horizontal cylinder, on whose
// diameter ra and the result are based; 1e-5 to 1e12, ±15 %.
//
// Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, as eq.
// 9.34 in Bergman et al.
func NusseltCylinder(ra, pr float64) float64 {
	r := 0.60 + 0.387*sixthRoot(ra)/math.Pow(1+math.Pow(0.559/pr, 9./16), 8./27)
	return r * r
}

// NusseltAssisted is natural convection from a horizontal face whose buoyancy
// carries the fluid away: warm and facing up, or cold and facing down. Length
// is area over perimeter; ra 1e4 to 1e11, ±20 %. Below that range the lower
// branch is carried on.
//
// Source: W. H. McAdams, Heat Transmission (1954), as eqs. 9.30 and 9.31 in
// Bergman et al.
func NusseltAssisted(ra float64) float64 {
	if ra < 1e7 {
		return 0.54 * math.Sqrt(math.Sqrt(ra))
	}
	return 0.15 * math.Cbrt(ra)
}

// NusseltHindered is natural convection from a horizontal face that holds the
// fluid against it: warm and facing down, or cold and facing up. Length is
// area over perimeter; ra 1e5 to 1e10, ±30 %.
//
// Source: McAdams (1954), as eq. 9.32 in older editions of Bergman et al.
func NusseltHindered(ra float64) float64 { return 0.27 * math.Sqrt(math.Sqrt(ra)) }

// NusseltCross is flow across a cylinder, on whose diameter re and the result
// are based; re pr > 0.2, ±20 %.
//
// Source: S. W. Churchill and M. Bernstein, J. Heat Transfer 99 (1977) 300, as
// eq. 7.54 in Bergman et al.
func NusseltCross(re, pr float64) float64 {
	return 0.3 + 0.62*math.Sqrt(re)*math.Cbrt(pr)/math.Sqrt(math.Sqrt(1+math.Pow(0.4/pr, 2./3)))*
		math.Pow(1+math.Pow(re/282000, 5./8), 4./5)
}

// NusseltFlat is laminar flow along a flat face of length L, averaged over it;
// re to 5e5, ±15 %. Source: Pohlhausen's solution, eq. 7.30 in Bergman et al.
func NusseltFlat(re, pr float64) float64 { return 0.664 * math.Sqrt(re) * math.Cbrt(pr) }

// Mixed joins forced and natural convection at one surface, n = 3 for upright
// ones, ±25 %. Source: S. W. Churchill, AIChE J. 23 (1977) 10 (from memory).
func Mixed(forced, natural float64) float64 {
	return math.Cbrt(forced*forced*forced + natural*natural*natural)
}

// Radiative returns the coefficient of radiation, W/(m² K), between a surface
// of emissivity eps at a kelvin and surroundings at b kelvin.
func Radiative(eps, a, b float64) float64 {
	return eps * stefanBoltzmann * (a*a + b*b) * (a + b)
}

// sixthRoot returns x^(1/6); it is twice as fast as math.Pow.
func sixthRoot(x float64) float64 { return math.Cbrt(math.Sqrt(x)) }
