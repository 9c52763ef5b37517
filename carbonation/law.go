package carbonation

import (
	"math"

	"example.com/pourwell/thermal"
)

// A law is the solubility of CO2 in one liquid at one temperature, whatever
// the pressure. It carries its parts because results show them.
type law struct {
	kelvin    float64
	lnK0      float64 // K0 the Henry coefficient of water, mol/(L atm)
	perPascal float64 // B/RT, 1/Pa
	beta      float64 // solubility over that in water
}

// lawAt returns the law for a beer of the given strength. It does not check
// the range of the temperature.
func lawAt(kelvin, strength float64) law {
	return law{kelvin, lnHenry(kelvin), lnFugacityPerPascal(kelvin), beerBeta(kelvin, strength)}
}

// fugacity returns the fugacity coefficient at a partial pressure of p pascals.
func (l law) fugacity(p float64) float64 { return math.Exp(p * l.perPascal) }

// content returns the content in g/L under p pascals of CO2.
//
//	c = β M K0 exp(B p / R T) p
func (l law) content(p float64) float64 {
	return l.beta * (molarMassCO2 / atmosphere) * math.Exp(l.lnK0+p*l.perPascal) * p
}

// pressure returns the partial pressure in pascals that holds c g/L. It is
// infinite where none does: beyond some 5 MPa, the most that the law takes, the
// content falls again.
func (l law) pressure(c float64) float64 {
	// With a = B/RT, p exp(ap) = c/(β M K0), so that w = ap solves w exp(w) = z;
	// z lies between −0.3 and 0.
	z := l.perPascal * c / (l.beta * (molarMassCO2 / atmosphere) * math.Exp(l.lnK0))
	if z < -1/math.E {
		return math.Inf(1)
	}
	w := z * (1 - z*(1-z*(1.5-z*(8.0/3.0)))) // power series of the root
	for range 8 {                            // Halley's rule
		e := math.Exp(w)
		f := w*e - z
		step := f / (e*(w+1) - f*(w+2)/(2*w+2))
		w -= step
		if math.Abs(step) <= 1e-6*math.Abs(w) { // convergence is cubic: the next step would be below 1e-17
			break
		}
	}
	return w / l.perPascal
}

// warmth returns the temperature in kelvin at which p pascals hold c g/L in a
// beer of the given strength, NaN if it lies outside the range of the law.
// Newton's rule on ln c, whose slope is analytic.
func warmth(c, p, strength float64) float64 {
	low, high := limitTemperature.Min+iceKelvin, limitTemperature.Max+iceKelvin
	target := math.Log(c / (p * (molarMassCO2 / atmosphere)))
	kelvin := low + 11.5
	for range 50 {
		excess := lnHenry(kelvin) + p*lnFugacityPerPascal(kelvin) + math.Log(beerBeta(kelvin, strength)) - target
		slope := contentSlope(kelvin, p, strength)
		step := excess / slope
		next := kelvin - step
		if math.IsNaN(next) {
			return next
		}
		if math.Abs(step) < 1e-10*kelvin {
			const slack = 1e-9 // so that a round trip from a bound stays in
			if next < low-slack || next > high+slack {
				return math.NaN()
			}
			return min(max(next, low), high)
		}
		kelvin = min(max(next, low-5), high+5)
	}
	return math.NaN()
}

// contentSlope returns d ln c / dT at constant pressure, 1/K.
func contentSlope(kelvin, p, strength float64) float64 {
	chart, chartSlope := chartBeta(kelvin)
	return lnHenrySlope(kelvin) + p*lnFugacitySlope(kelvin) + chartSlope*strength/(1-(1-chart)*strength)
}

// spread returns the relative uncertainty of a content in b: that of water
// where the sources agree, of the chart for ordinary beer, and wider beyond
// the beers the chart was made for.
func spread(b thermal.Beer) float64 {
	switch {
	case math.Abs(strength(b)) < 1e-6: // water
		return 0.01
	case b.ABV() > 0.08, b.RealExtract() > 8:
		return 0.05
	default:
		return 0.015
	}
}
