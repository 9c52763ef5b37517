package pipe

import "math"

// A straight tube may carry laminar or turbulent flow between these Reynolds
// numbers, whichever the disturbance at its entrance decides. Source: the
// measurements of [5], which leave the laminar line for good at 3080, and the
// customary lower limit of 2100.
const (
	TransitionLow  = 2100
	TransitionHigh = 3100
)

// Straight returns the Darcy friction factor of a straight tube at Reynolds
// number re and relative roughness e/d, 0 for a smooth tube.
//
//	f = 8 [(8/Re)¹² + (A+B)^(−3/2)]^(1/12)
//	A = [2.457 ln(1 / ((7/Re)^0.9 + 0.27 e/d))]¹⁶
//	B = (37530/Re)¹⁶
//
// It holds from creeping to fully rough flow and is continuous through the
// transition, where it is one line between two possible answers; see
// [Transition].
//
// Special cases are:
//
//	Straight(0, e/d) = +Inf
//	Straight(re, e/d) = NaN if either argument is negative or NaN
//
// Source: [1]; gives back the reference values of testdata to all their digits.
func Straight(re, roughness float64) float64 {
	if !(re >= 0 && roughness >= 0) {
		return math.NaN()
	}
	if re < 200 {
		return Laminar(re) // the other terms are below 1e-12 of this one
	}
	var rough float64 // ln(1 / ((7/Re)^0.9 + 0.27 e/d))
	if roughness == 0 {
		rough = 0.9 * math.Log(re/7) // the same, one logarithm cheaper
	} else {
		rough = -math.Log(math.Pow(7/re, 0.9) + 0.27*roughness)
	}
	a := power16(2.457 * rough)
	b := power16(37530 / re)
	sum := a + b
	laminar := 8 / re
	laminar3 := laminar * laminar * laminar
	laminar6 := laminar3 * laminar3
	return 8 * math.Cbrt(math.Sqrt(math.Sqrt(laminar6*laminar6+1/(sum*math.Sqrt(sum))))) // [1], the power 1/12 as roots
}

// Laminar returns the Darcy friction factor 64/Re of laminar flow in a
// straight tube, +Inf at Re = 0.
func Laminar(re float64) float64 { return 64 / re }

// Transition returns the least and the greatest friction factor a straight
// smooth tube may show at Reynolds number re: the laminar line and the
// turbulent one between [TransitionLow] and [TransitionHigh], and the
// value of [Straight] for both outside.
//
// The turbulent line is that of Blasius, f = 0.3164 Re^(−1/4), which [5]
// confirms from Re 3100 on.
func Transition(re, roughness float64) (low, high float64) {
	f := Straight(re, roughness)
	if !(TransitionLow <= re && re <= TransitionHigh) {
		return f, f
	}
	blasius := 0.3164 / math.Sqrt(math.Sqrt(re))
	return math.Min(f, Laminar(re)), math.Max(f, blasius)
}

func power16(x float64) float64 {
	x *= x
	x *= x
	x *= x
	return x * x
}
