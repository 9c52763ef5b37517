// Package water gives the properties of liquid water and of ice near
// atmospheric pressure. Arguments and results are bare float64 in SI units:
// kelvin, kg/m³, J/(kg K), Pa s, W/(m K).
//
// The functions are the inner loop of every simulation, so they return no
// error: outside [MinT, MaxT], and for NaN, they return NaN. Callers check
// their own narrower ranges first.
//
// Liquid: IAPWS SR6-08(2011), Revised Supplementary Release on Properties of
// Liquid Water at 0.1 MPa. Ice: IAPWS R10-06(2009), Revised Release on the
// Equation of State 2006 for H2O Ice Ih.
package water

import "math"

// Range of the liquid equations, K: −20 °C (supercooled) to 110 °C (under
// pressure). IAPWS SR6-08(2011), section 1.
const (
	MinT = 253.15
	MaxT = 383.15
)

// ZeroCelsius is 0 °C in kelvin, and to 3 mK the melting point of ice in air.
const ZeroCelsius = 273.15

// Constants of IAPWS SR6-08(2011), table 1.
const (
	gasConstant = 461.51805 // J/(kg K)
	refT        = 10.0      // Tr, K
	refP        = 1e5       // p0, Pa
	poleHot     = 593.0     // Ta, K
	poleCold    = 232.0     // Tb, K
)

// A term is one summand coefficient · base^power.
type term struct {
	c float64
	n int
}

// Coefficients of the specific volume (eq. 2): a5 to a10 with powers n of α,
// b5 to b10 with powers m of β. IAPWS SR6-08(2011), table 1.
const a5 = 1.93763157e-2

var (
	volumeA = [...]term{
		{6.74458446e3, 4}, {-2.22521604e5, 5}, {1.00231247e8, 7}, {-1.63552118e9, 8}, {8.32299658e9, 9},
	}
	volumeB = [...]term{
		{5.78545292e-3, 1}, {-1.53195665e-2, 2}, {3.11337859e-2, 3},
		{-4.23546241e-2, 4}, {3.38713507e-2, 5}, {-1.19946761e-2, 6},
	}
)

// Coefficients of the heat capacity: c3, a1 to a3 and b1 to b4. Same table.
const c3 = -8.983025854

var (
	heatA = [...]term{{-1.661470539e5, 4}, {2.708781640e6, 5}, {-1.557191544e8, 7}}
	heatB = [...]term{{-8.237426256e-1, 2}, {1.908956353, 3}, {-2.017597384, 4}, {8.546361348e-1, 5}}
)

// Density returns the density of liquid water at t kelvin and 0.1 MPa, kg/m³.
// It has its maximum at 3.98 °C.
func Density(t float64) float64 {
	alpha, beta, ok := reduced(t)
	if !ok {
		return math.NaN()
	}
	v := a5
	for _, k := range volumeA {
		v += k.c * power(alpha, k.n)
	}
	for _, k := range volumeB {
		v += k.c * power(beta, k.n)
	}
	return refP / (gasConstant * refT * v) // eq. 2: v = (R Tr/p0)(…)
}

// HeatCapacity returns the isobaric specific heat of liquid water at t kelvin,
// J/(kg K).
func HeatCapacity(t float64) float64 {
	alpha, beta, ok := reduced(t)
	if !ok {
		return math.NaN()
	}
	s := 0.0
	for _, k := range heatA {
		s += float64(k.n*(k.n+1)) * k.c * power(alpha, k.n+2)
	}
	for _, k := range heatB {
		s += float64(k.n*(k.n+1)) * k.c * power(beta, k.n+2)
	}
	return -gasConstant * (c3 + t/refT*s) // eq. 4
}

// Viscosity returns the dynamic viscosity of liquid water at t kelvin, Pa s.
func Viscosity(t float64) float64 {
	if !(MinT <= t && t <= MaxT) {
		return math.NaN()
	}
	x := t / 300
	return 1e-6 * (280.68*math.Pow(x, -1.9) + 511.45*math.Pow(x, -7.7) +
		61.131*math.Pow(x, -19.6) + 0.45903*math.Pow(x, -40)) // eq. 7
}

// Conductivity returns the thermal conductivity of liquid water at t kelvin,
// W/(m K). The release fits it from 273.15 K up; below that it is carried on,
// and its table 8 prints a value at 260 K.
func Conductivity(t float64) float64 {
	if !(MinT <= t && t <= MaxT) {
		return math.NaN()
	}
	x := t / 300
	return 1.6630*math.Pow(x, -1.15) - 1.7781*math.Pow(x, -3.4) +
		1.1567*math.Pow(x, -6.0) - 0.432115*math.Pow(x, -7.6) // eq. 8
}

// reduced returns α = Tr/(Ta−T) and β = Tr/(T−Tb); ok is false outside the
// range of the equations.
func reduced(t float64) (alpha, beta float64, ok bool) {
	return refT / (poleHot - t), refT / (t - poleCold), MinT <= t && t <= MaxT
}

// power returns x^n for a small n ≥ 0; math.Pow takes five times as long.
func power(x float64, n int) float64 {
	p := 1.0
	for ; n > 0; n >>= 1 {
		if n&1 == 1 {
			p *= x
		}
		x *= x
	}
	return p
}
