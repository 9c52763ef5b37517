package air

import (
	"math"
)

// melting parts the two saturation equations, K: below it over ice.
const melting = 273.15

// Ratio of the molar masses of water and dry air. Source: ASHRAE Handbook,
// Fundamentals (2017), chapter 1.
const molarRatio = 0.621945

// Lewis is the Lewis number of water vapour in air, thermal over mass
// diffusivity; from memory.
const Lewis = 0.845

// SaturationPressure returns the vapour pressure of water, Pa, at t kelvin:
// over ice below 0 °C, over liquid water above. Valid from 200 to 400 K,
// within 0.03 % of the ASHRAE tables.
//
// Source: R. W. Hyland and A. Wexler, ASHRAE Transactions 89 (1983) 500, as in
// ASHRAE Handbook, Fundamentals, chapter 1, eqs. 5 and 6.
func SaturationPressure(t float64) float64 {
	if !inRange(t) {
		return math.NaN()
	}
	if t < melting {
		return math.Exp(-5.6745359e3/t + 6.3925247 +
			t*(-9.677843e-3+t*(6.2215701e-7+t*(2.0747825e-9-9.484024e-13*t))) +
			4.1635019*math.Log(t)) // eq. 5
	}
	return math.Exp(-5.8002206e3/t + 1.3914993 +
		t*(-4.8640239e-2+t*(4.1764768e-5-1.4452093e-8*t)) +
		6.5459673*math.Log(t)) // eq. 6
}

// HumidityRatio returns the water in the air, kg per kg of dry air, at t
// kelvin, relative humidity rh (0 to 1) and p Pa:
//
//	w = 0.621945 p_v / (p − p_v), p_v = rh p_s(t)
//
// It is 0.5 % low at saturation, where air holds a little more than vapour
// alone would. Source: ASHRAE Handbook, Fundamentals, chapter 1.
func HumidityRatio(t, rh, p float64) float64 {
	pv := rh * SaturationPressure(t)
	if !(0 <= rh && rh <= 1 && pv < p) {
		return math.NaN()
	}
	return molarRatio * pv / (p - pv)
}

// CondensationHeat returns the heat that a kilogram of vapour gives off when
// it condenses at t kelvin, J/kg, within 0.1 % from 0 to 50 °C; it is not
// meant for frost. Source: ASHRAE Handbook, Fundamentals, chapter 1 (from
// memory).
func CondensationHeat(t float64) float64 { return 2.501e6 - 2360*(t-melting) }
