package water

import "math"

// LatentHeat is the heat that melts ice at 0 °C in air, J/kg: the enthalpy of
// water less that of ice, −333 354.87 J/kg at 273.1525 K and 101 325 Pa in
// table 6 of IAPWS R10-06(2009), both on the scale of IAPWS-95.
const LatentHeat = 333.43e3

// IceDensity is the density of ice without air bubbles at 0 °C, kg/m³.
// Source: IAPWS R10-06(2009), table 6, 916.721 at 273.1525 K.
const IceDensity = 916.72

// The ends of the range of ice, K. The lower lies 0.15 K below −25 °C, so that
// −25 °C is within it however it was rounded.
const (
	minIce = 248.0
	maxIce = 273.16
)

// IceHeatCapacity returns the specific heat of ice at t kelvin, J/(kg K):
// a straight line through the value of IAPWS R10-06(2009), table 6, at the
// melting point, which follows that equation of state within 0.05 % down to
// −20 °C. Outside 248 to 273.16 K it returns NaN.
func IceHeatCapacity(t float64) float64 {
	if !(minIce <= t && t <= maxIce) {
		return math.NaN()
	}
	return 2096.71 + 7.345*(t-ZeroCelsius)
}

// IceCold returns the heat that 1 kg of ice at t kelvin takes up until it is
// water at 0 °C, J/kg: the latent heat and what warms the ice to it. Outside
// 248 to 273.16 K it returns NaN.
func IceCold(t float64) float64 {
	mean := (t + ZeroCelsius) / 2 // exact, since the heat capacity is linear
	return LatentHeat + IceHeatCapacity(mean)*(ZeroCelsius-t) + 0*IceHeatCapacity(t)
}
