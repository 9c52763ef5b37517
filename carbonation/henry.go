package carbonation

import "math"

// A sparingGas dissolves in water so little that Henry's law is all there is
// to it. Source of the coefficients: IAPWS G7-04 (2004), table 2.
type sparingGas struct {
	a, b, c   float64
	molarMass float64 // g/mol
}

var (
	nitrogen = sparingGas{-9.67578, 4.72162, 11.70585, 28.0134}
	oxygen   = sparingGas{-9.44833, 4.43822, 11.42005, 31.9988}
)

// Critical point of water. Source: IAPWS R2-83, as G7-04 uses it.
const (
	waterCriticalT = 647.096  // K
	waterCriticalP = 22.064e6 // Pa
	waterMolarMass = 18.015268
)

// henry returns Henry's constant kH, Pa, on the mole-fraction basis at the
// saturation pressure of water. The data behind it begin at 274 K for oxygen
// and at 278 K for nitrogen; colder, down to 272 K, it is within 3 % of other
// published equations.
func (g sparingGas) henry(kelvin float64) float64 {
	tr := kelvin / waterCriticalT
	tau := 1 - tr
	ln := g.a/tr + g.b*math.Pow(tau, 0.355)/tr + g.c*math.Pow(tr, -0.41)*math.Exp(tau) // IAPWS G7-04, eq. 3
	return steamPressure(kelvin) * math.Exp(ln)
}

// dissolved returns the mass of the gas in water, mg/L, under p pascals of it,
// for the Henry's constant of the gas, Pa.
func (g sparingGas) dissolved(henry, p float64) float64 {
	const gramsPerLitre = 1000 // of water: 0.9998 at 0 °C, 0.998 at 20 °C, small beside the rest
	return 1e3 * p / henry * gramsPerLitre * g.molarMass / waterMolarMass
}

// steamPressure returns the vapour pressure of water, Pa. Source: Wagner &
// Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783, eq. 1, as IAPWS G7-04 eq. 4
// prescribes it.
func steamPressure(kelvin float64) float64 {
	tr := kelvin / waterCriticalT
	tau := 1 - tr
	s := math.Sqrt(tau)
	ln := tau * (-7.85951783 + 1.84408259*s + tau*tau*(-11.7866497+22.6807411*s-15.9618719*tau+1.80122502*tau*tau*tau*tau*s)) / tr
	return waterCriticalP * math.Exp(ln)
}
