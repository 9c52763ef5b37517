// Package air gives the pressure of the atmosphere by height, the properties
// of air that heat transfer needs, and the water that air holds. Arguments and
// results are bare float64 in SI units: pascal absolute, kelvin, metre; shares
// from 0 to 1; humidity ratios in kg of water per kg of dry air.
//
// Outside their range, and for NaN, the functions return NaN; callers check
// their own narrower ranges first.
package air

import "math"

// SeaLevel is the standard pressure at sea level, Pa. Source: ICAO Doc 7488.
const SeaLevel = 101325.0

// GasConstant is the specific gas constant of dry air, J/(kg K), and
// HeatCapacity its specific heat at constant pressure, J/(kg K). Source: ICAO
// Doc 7488; the heat capacity is that of A-15 (Cengel) within 0.1 % from −20
// to 60 °C.
const (
	GasConstant  = 287.05287
	HeatCapacity = 1006.0
)

// The troposphere of the standard atmosphere. Source: ICAO Doc 7488, Manual of
// the ICAO Standard Atmosphere (1993).
const (
	seaLevelT = 288.15  // K
	lapse     = 0.0065  // K/m
	gravity   = 9.80665 // m/s²
	top       = 11000.0 // m, where the tropopause begins
	bottom    = -2000.0 // m
	exponent  = gravity / (GasConstant * lapse)
)

// Pressure returns the pressure of the standard atmosphere at the pressure
// altitude h, m of geopotential, from −2000 to 11 000:
//
//	p = 101325 (1 − 0.0065 h / 288.15)^5.2559
//
// Height above the sea is geopotential height within 0.05 % up to 3000 m.
// Weather moves the pressure at a place by some 3 %.
//
// Source: ICAO Doc 7488, troposphere.
func Pressure(h float64) float64 {
	if !(bottom <= h && h <= top) {
		return math.NaN()
	}
	return SeaLevel * math.Pow(1-lapse*h/seaLevelT, exponent)
}

// Altitude returns the pressure altitude, m, at which the standard atmosphere
// has the pressure p, Pa: the inverse of [Pressure].
func Altitude(p float64) float64 {
	h := seaLevelT / lapse * (1 - math.Pow(p/SeaLevel, 1/exponent))
	if !(bottom <= h && h <= top) {
		return math.NaN()
	}
	return h
}

// StationPressure returns the pressure, Pa, at a place h metres above the sea
// when a weather report gives qnh, Pa, the pressure reduced to sea level by
// the standard atmosphere.
//
// Source: ICAO Doc 7488: the place lies h above the level where the standard
// atmosphere has the pressure qnh.
func StationPressure(qnh, h float64) float64 { return Pressure(h + Altitude(qnh)) }

// Density returns the density of dry air, kg/m³, at t kelvin and p Pa, by the
// ideal gas law.
func Density(t, p float64) float64 {
	if !inRange(t) {
		return math.NaN()
	}
	return p / (GasConstant * t)
}

// Viscosity returns the dynamic viscosity of air, Pa s, at t kelvin, by
// Sutherland's law. Valid from 200 to 400 K.
//
// Source: US Standard Atmosphere 1976, eq. 51.
func Viscosity(t float64) float64 {
	if !inRange(t) {
		return math.NaN()
	}
	return 1.458e-6 * t * math.Sqrt(t) / (t + 110.4)
}

// Conductivity returns the thermal conductivity of air, W/(m K), at t kelvin.
// Valid from 200 to 400 K.
//
// Source: US Standard Atmosphere 1976, eq. 53.
func Conductivity(t float64) float64 {
	if !inRange(t) {
		return math.NaN()
	}
	return 2.64638e-3 * t * math.Sqrt(t) / (t + 245.4*math.Pow(10, -12/t))
}

func inRange(t float64) bool { return 200 <= t && t <= 400 }
