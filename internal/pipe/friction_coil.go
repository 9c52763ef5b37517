package pipe

import "math"

// Coiled returns the Darcy friction factor of a tube wound into a coil, at
// Reynolds number re, relative roughness e/d and curvature d/D, where D is the
// mean diameter of the winding. At curvature 0 it is [Straight].
//
// It is the largest of three: laminar flow in a coil after White,
//
//	f = (64/Re) / {1 − [1 − (11.6/De)^0.45]^(1/0.45)},   De = Re √(d/D) > 11.6
//
// turbulent flow in a coil after Ito,
//
//	f = √(d/D) {0.029 + 0.304 [Re (d/D)²]^(−1/4)}
//
// and the straight tube. The first two cross a little below [CriticalIto], so
// that taking the larger is continuous where switching at the critical number
// would jump by 3 to 5 %; it exceeds the switched value by at most 2 %. No
// coil loses less than the same tube straight.
//
// Valid for D/d from 5 to 200: White's data begin at 15 and Ito's at 16, and
// the tighter coils of a trade table (D/d 9.3 and 13.6) agree within 5 %.
// Ito's fit ends at Re (d/D)² = 300; Mori and Nakayama stay within 8 % of it
// to 1000.
//
// Special cases are those of Straight.
//
// Source: [2] as given by many texts, [3]; confirmed by the reference values of
// testdata.
func Coiled(re, roughness, curvature float64) float64 {
	straight := Straight(re, roughness)
	if curvature == 0 {
		return straight
	}
	return math.Max(straight, math.Max(white(re, curvature), ito(re, curvature)))
}

// white returns White's friction factor of laminar flow in a coil.
func white(re, curvature float64) float64 {
	dean := re * math.Sqrt(curvature)
	if dean <= 11.6 {
		return Laminar(re)
	}
	s := math.Pow(11.6/dean, 0.45)
	return Laminar(re) / (1 - math.Pow(1-s, 1/0.45)) // [2]
}

// ito returns Ito's friction factor of turbulent flow in a coil.
func ito(re, curvature float64) float64 {
	return math.Sqrt(curvature) * (0.029 + 0.304/math.Sqrt(math.Sqrt(re*curvature*curvature))) // [3]
}

// CriticalIto returns the Reynolds number at which flow in a coil of curvature
// d/D turns turbulent, as far as friction shows it: 20000 (d/D)^0.32, and
// never below that of a straight tube, [TransitionLow].
//
// Source: [3].
func CriticalIto(curvature float64) float64 {
	return math.Max(TransitionLow, 20000*math.Pow(curvature, 0.32))
}

// CriticalSchmidt returns the Reynolds number at which flow in a coil of
// curvature d/D turns turbulent, 2300 [1 + 8.6 (d/D)^0.45]; heat transfer
// correlations for coils are built on it.
//
// Source: [4].
func CriticalSchmidt(curvature float64) float64 {
	return 2300 * (1 + 8.6*math.Pow(curvature, 0.45))
}
