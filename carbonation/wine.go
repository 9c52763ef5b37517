package carbonation

import (
	"cmp"
	"math"

	"example.com/pourwell/thermal"
)

// Wine is wine or cider as a liquid that dissolves CO2. It is not a
// [thermal.Beer]: for the same alcohol and extract the wine trade's formula
// holds a tenth less than the beer trades' charts, and each is right for its
// own drink only.
type Wine struct {
	ABV   float64 // alcohol as a fraction by volume: 0.12, not 12
	Sugar float64 // g/L
}

// The EU's formula for sparkling wine at 20 °C, with p in Pa, A in % by volume
// and S in g/L. Source: Commission Regulation (EEC) No 2676/90, after
// Agabaliantz. Its 1.951e-5 g/(L Pa) is 0.987e-5 L/(L Pa) at 1.9767 g/L.
const (
	wineMass    = 1.951e-5 // g/(L Pa)
	wineWater   = 0.86
	wineAlcohol = 0.01    // per % by volume
	wineSugar   = 0.00144 // per g/L
)

// perPascal returns the content per pascal at a temperature, g/(L Pa).
func (w Wine) perPascal(kelvin float64) float64 {
	at20 := wineMass * (wineWater - wineAlcohol*100*w.ABV) * (1 - wineSugar*w.Sugar) // Regulation 2676/90
	return at20 * math.Exp(lnHenry(kelvin)-lnHenry(20+iceKelvin))
}

// ContentAt returns the content of CO2 that the wine holds at temperature t
// under an absolute partial pressure p of CO2.
//
//	c = 1.951e-5 p (0.86 − 0.01 A)(1 − 0.00144 S) K0(T)/K0(20 °C)
//
// Valid from 0 °C to 30 °C, 0 to 1000 kPa, to 20 % alcohol and 150 g/L of
// sugar; within 5 %. Outside it, or for an invalid argument, ContentAt returns a
// [*RangeError] and an invalid content.
//
// Special cases: without alcohol and sugar the formula holds 0.7 % less than
// water.
//
// Source: [4] at 20 °C; the temperature law of [1]. Dry cider lies between wine
// and beer.
func (w Wine) ContentAt(t thermal.Temperature, p Pressure) (Content, error) {
	const fn = "carbonation.Wine.ContentAt"
	if err := cmp.Or(w.check(fn, t), limitPartial.Check(fn, p.KPa())); err != nil {
		return Content{}, err
	}
	return Content{w.perPascal(t.Kelvin()) * p.pascal, true}, nil
}

// PressureFor returns the absolute partial pressure of CO2 that holds content c
// in the wine at temperature t. It inverts [Wine.ContentAt], with its validity
// and source.
func (w Wine) PressureFor(c Content, t thermal.Temperature) (Pressure, error) {
	const fn = "carbonation.Wine.PressureFor"
	if err := cmp.Or(w.check(fn, t), limitContent.Check(fn, c.Volumes())); err != nil {
		return Pressure{}, err
	}
	p := c.gramsPerLitre / w.perPascal(t.Kelvin())
	if err := limitPartial.Check(fn, p/1e3); err != nil {
		return Pressure{}, err
	}
	return Pressure{p, true}, nil
}

func (w Wine) check(fn string, t thermal.Temperature) error {
	return cmp.Or(limitWineAlcohol.Check(fn, w.ABV), limitWineSugar.Check(fn, w.Sugar), limitWineT.Check(fn, t.Celsius()))
}
