package carbonation

import "math"

// gasDensity returns the density of CO2 gas, kg/m³ or g/L, at a pressure of p
// pascals:
//
//	ρ = p M / (Z R T),  Z = 1 + B p / R T
//
// Within 0.1 % of Span & Wagner at 0.5 MPa, 0.5 % at 1 MPa: for kegs and
// bottles, not for cylinders.
func gasDensity(kelvin, p float64) float64 {
	perPascal := lnFugacityPerPascal(kelvin)
	return p * molarMassCO2 * 1e-3 / ((1 + p*perPascal) * gasConstant * kelvin)
}

// Saturation of CO2, from the triple point to the critical point. Source: Span
// & Wagner, J. Phys. Chem. Ref. Data 25 (1996) 1509, auxiliary equations 3.13 and
// 3.14.
const (
	criticalT       = 304.1282 // K
	criticalP       = 7.3773e6 // Pa
	criticalDensity = 467.6    // kg/m³
)

// saturationPressure returns the vapour pressure of liquid CO2, Pa.
func saturationPressure(kelvin float64) float64 {
	h := 1 - kelvin/criticalT
	ln := -7.0602087*h + 1.9391218*math.Pow(h, 1.5) - 1.6463597*h*h - 3.2995634*h*h*h*h
	return criticalP * math.Exp(ln*criticalT/kelvin) // eq. 3.13
}

// liquidDensity returns the density of saturated liquid CO2, kg/m³.
func liquidDensity(kelvin float64) float64 {
	h := 1 - kelvin/criticalT
	ln := 1.9245108*math.Pow(h, 0.34) - 0.62385555*math.Sqrt(h) -
		0.32731127*math.Pow(h, 10.0/6) + 0.39245142*math.Pow(h, 11.0/6)
	return criticalDensity * math.Exp(ln) // eq. 3.14
}

// acentric is the acentric factor of CO2, and the two Ω the constants of the
// equation below. Source: Peng & Robinson, Ind. Eng. Chem. Fundam. 15 (1976)
// 59; the factor as in Poling, Prausnitz & O'Connell, both from memory.
const (
	acentric = 0.2239
	omegaA   = 0.45724
	omegaB   = 0.07780
)

// densePressure returns the pressure of CO2 at a density in kg/m³ by the
// equation of Peng & Robinson. It is poor beside the critical point; only its
// rise with temperature is used here.
func densePressure(kelvin, density float64) float64 {
	v := molarMassCO2 * 1e-3 / density
	rt := gasConstant * criticalT
	a, b := omegaA*rt*rt/criticalP, omegaB*rt/criticalP
	kappa := 0.37464 + acentric*(1.54226-0.26992*acentric)
	s := 1 + kappa*(1-math.Sqrt(kelvin/criticalT))
	return gasConstant*kelvin/(v-b) - a*s*s/(v*(v+b)+b*(v-b))
}
