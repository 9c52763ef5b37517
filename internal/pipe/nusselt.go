package pipe

import "math"

// The heat transfer of a straight tube is interpolated between these Reynolds
// numbers. Source: V. Gnielinski, Int. J. Heat Mass Transfer 63 (2013) 134.
const (
	NusseltTransitionLow  = 2300
	NusseltTransitionHigh = 4000
)

// Gnielinski returns the Nusselt number of turbulent flow in a tube, from the
// Reynolds number, the Prandtl number and the Darcy friction factor f.
//
//	Nu = (f/8) (Re − 1000) Pr / [1 + 12.7 √(f/8) (Pr^(2/3) − 1)]
//
// Valid for Re from 3000 to 5e6 and Pr from 0.5 to 2000, within 10 %. It gives
// back the value printed in the documentation of the library ht.
//
// Source: V. Gnielinski, Int. Chem. Eng. 16 (1976) 359; the 10 % as most
// textbooks quote it, from memory.
func Gnielinski(re, pr, f float64) float64 {
	c := math.Cbrt(pr)
	return f / 8 * (re - 1000) * pr / (1 + 12.7*math.Sqrt(f/8)*(c*c-1)) // Gnielinski 1976
}

// Petukhov returns the Darcy friction factor of turbulent flow in a smooth
// tube, the partner of [Gnielinski].
//
//	f = (0.790 ln Re − 1.64)^(−2)
//
// Valid for Re from 3000 to 5e6.
//
// Source: B. S. Petukhov, Adv. Heat Transfer 6 (1970) 503, as in most
// textbooks.
func Petukhov(re float64) float64 {
	s := 0.790*math.Log(re) - 1.64
	return 1 / (s * s)
}

// Hausen returns the mean Nusselt number of laminar flow in a tube whose wall
// is at one temperature, from the Graetz number Gz = Re Pr d/L.
//
//	Nu = 3.66 + 0.0668 Gz / (1 + 0.04 Gz^(2/3))
//
// Valid for Re below 2300 and Pr well above 1, within 10 %. It gives back the
// values of the library ht. In a tube without end, Gz = 0, Nu is 3.66.
//
// Source: H. Hausen, Z. VDI Beih. Verfahrenstechnik 4 (1943) 91.
func Hausen(gz float64) float64 {
	c := math.Cbrt(gz)
	return 3.66 + 0.0668*gz/(1+0.04*c*c) // Hausen 1943
}

// NusseltStraight returns the mean Nusselt number in a smooth straight tube,
// from the Reynolds and Prandtl numbers and the ratio d/L of bore to length, 0
// for a tube without end.
//
// It is [Hausen] below a Reynolds number of 2300, [Gnielinski] with [Petukhov]
// above 4000, and linear in Re between the two.
//
// Valid for Re to 5e6 and Pr from 0.7 to 2000; NaN if an argument is negative
// or NaN.
func NusseltStraight(re, pr, boreOverLength float64) float64 {
	if !(re >= 0 && pr >= 0 && boreOverLength >= 0) {
		return math.NaN()
	}
	if re <= NusseltTransitionLow {
		return Hausen(re * pr * boreOverLength)
	}
	if re >= NusseltTransitionHigh {
		return Gnielinski(re, pr, Petukhov(re))
	}
	laminar := Hausen(NusseltTransitionLow * pr * boreOverLength)
	turbulent := Gnielinski(NusseltTransitionHigh, pr, Petukhov(NusseltTransitionHigh))
	g := (re - NusseltTransitionLow) / (NusseltTransitionHigh - NusseltTransitionLow)
	return (1-g)*laminar + g*turbulent // Gnielinski 2013
}

// NusseltStill is the Nusselt number that governs the cooling of liquid at
// rest in a tube, once the first moments have passed: the square of the first
// zero of the Bessel function J0, from conduction alone.
//
// Source: the first term of the series for a long cylinder whose surface is
// held at one temperature, in any textbook of heat conduction; natural
// convection inside the tube can only raise it.
const NusseltStill = 2.404825557695773 * 2.404825557695773
