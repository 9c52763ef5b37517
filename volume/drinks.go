package volume

import (
	"math"

	"gonum.org/v1/gonum/unit"
)

// Drinks is the alcohol of one serving in the standard drinks of three
// countries. It says how much is served, not how much is safe: nobody can tell
// that from a count. Offer water and food, serve nobody who is drunk or too
// young, and see that no one drives; local law decides.
type Drinks struct {
	Ethanol unit.Mass // pure alcohol
	US      float64   // standard drinks of 14 g
	UK      float64   // units of 10 mL
	AU      float64   // standard drinks of 10 g
}

// Ethanol at 20 °C, kg/m³, OIML R 22; US standard drink, 0.6 US fl oz or 14 g
// (National Institute on Alcohol Abuse and Alcoholism); UK unit, 10 mL;
// Australian standard drink, 10 g. The three definitions were read in secondary
// sources.
const (
	ethanolDensity           = 789.239
	usDrink        unit.Mass = 14 * Gram
	ukUnit                   = 10 * Millilitre
	auDrink        unit.Mass = 10 * Gram
)

// Drinks returns the alcohol of one pour of beer of alcohol content abv, a
// fraction by volume (0.05, not 5).
//
//	ethanol = liquid · abv · 789.24 g/L
//
// Twelve US fluid ounces at 5 % are one US standard drink. Valid for abv from 0
// to 0.20; outside it Drinks returns a [*RangeError] and NaN.
func (y Yield) Drinks(abv float64) (Drinks, error) {
	if err := limitABV.Check("volume.Yield.Drinks", abv); err != nil {
		nan := math.NaN()
		return Drinks{unit.Mass(nan), nan, nan, nan}, err
	}
	alcohol := unit.Volume(abv) * y.Liquid
	ethanol := unit.Mass(ethanolDensity * float64(alcohol))
	return Drinks{ethanol, float64(ethanol / usDrink), float64(alcohol / ukUnit), float64(ethanol / auDrink)}, nil
}
