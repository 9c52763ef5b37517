package pipe

import "math"

// TurbulentCoil is the Reynolds number from which the heat transfer of a coil
// follows its turbulent correlation whatever the curvature.
const TurbulentCoil = 22000

// NusseltCoiled returns the Nusselt number in a smooth tube wound into a coil,
// from the Reynolds number, the Prandtl number and the curvature d/D, where D
// is the mean diameter of the winding. Properties are those of the bulk; for
// a wall much colder or warmer multiply by (Pr/Pr_wall)^0.14.
//
// Below [CriticalSchmidt]:
//
//	Nu = 3.66 + 0.08 [1 + 0.8 (d/D)^0.9] Re^m Pr^(1/3)
//	m  = 0.5 + 0.2903 (d/D)^0.194
//
// from Re 22000 up:
//
//	Nu = (ξ/8) Re Pr / [1 + 12.7 √(ξ/8) (Pr^(2/3) − 1)]
//	ξ  = 0.3164 Re^(−1/4) + 0.03 √(d/D)
//
// and between the two linear in Re.
//
// Valid for d/D to 0.14, Re to 1e5 and Pr from 0.7 to 200; NaN if an argument
// is negative or NaN. The transitional and the turbulent branch agree within
// 30 %, twice the customary 15 %, with Schmidt's correlation as the library ht
// evaluates it. The laminar branch is the highest of several authors': at Pr 13
// those of Dravid and of Manlapaz & Churchill lie 25 to 40 % below it, so trust
// it from −40 % to +10 %.
//
// Source: V. Gnielinski, Proc. 8th Int. Heat Transfer Conf., San Francisco, 6
// (1986) 2847, as in the VDI Heat Atlas, section Gc; the rule between the
// branches from memory.
func NusseltCoiled(re, pr, curvature float64) float64 {
	if !(re >= 0 && pr >= 0 && curvature >= 0) {
		return math.NaN()
	}
	critical := CriticalSchmidt(curvature)
	switch {
	case re <= critical:
		return laminarCoil(re, pr, curvature)
	case re >= TurbulentCoil:
		return turbulentCoil(re, pr, curvature)
	}
	g := (re - critical) / (TurbulentCoil - critical)
	return (1-g)*laminarCoil(critical, pr, curvature) + g*turbulentCoil(TurbulentCoil, pr, curvature)
}

func laminarCoil(re, pr, curvature float64) float64 {
	m := 0.5 + 0.2903*math.Pow(curvature, 0.194)
	return 3.66 + 0.08*(1+0.8*math.Pow(curvature, 0.9))*math.Pow(re, m)*math.Cbrt(pr) // VDI Gc eq. 5
}

func turbulentCoil(re, pr, curvature float64) float64 {
	xi := 0.3164/math.Sqrt(math.Sqrt(re)) + 0.03*math.Sqrt(curvature)
	c := math.Cbrt(pr)
	return xi / 8 * re * pr / (1 + 12.7*math.Sqrt(xi/8)*(c*c-1)) // VDI Gc
}
