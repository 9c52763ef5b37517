package thermal

import (
	"cmp"

	"example.com/pourwell/internal/solve"
)

// A Beer is a liquid described by its alcohol and its extract. It is opaque;
// make one with [BeerOf]. The zero value is ordinary beer, of 5 % alcohol by
// volume and a final gravity of 1.010.
type Beer struct {
	abv, fg float64
	other   bool // than ordinary beer, whose numbers are the zero value's
}

// Composition of ordinary beer, the zero Beer.
const (
	ordinaryABV = 0.05
	ordinaryFG  = 1.010
)

// Water returns plain water: no alcohol, no extract.
func Water() Beer { return beerOf(0, 1) }

// beerOf returns the beer of that composition; ordinary beer is the zero value.
func beerOf(abv, fg float64) Beer {
	if abv == ordinaryABV && fg == ordinaryFG {
		return Beer{}
	}
	return Beer{abv, fg, true}
}

// Densities at 20 °C, kg/m³. Source: OIML R 22.
const (
	waterDensity20   = 998.2012300
	ethanolDensity20 = 789.239
)

// BeerOf returns the beer of alcohol content abv, as a fraction by volume at
// 20 °C (0.05, not 5), and final gravity fg, its density at 20 °C over that of
// water at 20 °C.
//
// Valid from 0 to 0.20 and from 0.98 to 1.179; outside it, or if the real
// extract of that alcohol and gravity is below 0 or above 40 %, BeerOf returns a [*RangeError]
// and ordinary beer, the zero value.
func BeerOf(abv, fg float64) (Beer, error) {
	if err := cmp.Or(limitABV.Check("thermal.BeerOf", abv), limitFG.Check("thermal.BeerOf", fg)); err != nil {
		return Beer{}, err
	}
	b := beerOf(abv, fg)
	if err := limitExtract.Check("thermal.BeerOf", b.RealExtract()); err != nil {
		return Beer{}, err
	}
	return b, nil
}

// BeerFromOriginal returns the beer of alcohol content abv, as a fraction by
// volume at 20 °C, that was fermented from a wort of original gravity og, its
// density at 20 °C over that of water at 20 °C. The final gravity follows from
// Balling's rule; see [Beer.OriginalExtract].
//
// Valid for an abv from 0 to 0.20 and an og from 1 to 1.289 for which the final
// gravity lies from 0.98 to 1.179. Outside it BeerFromOriginal returns a [*RangeError] and
// ordinary beer, the zero value.
//
// Source: as [Beer.OriginalExtract] and [Beer.RealExtract].
func BeerFromOriginal(abv, og float64) (Beer, error) {
	const fn = "thermal.BeerFromOriginal"
	if err := cmp.Or(limitABV.Check(fn, abv), limitOG.Check(fn, og)); err != nil {
		return Beer{}, err
	}
	least, most := limitFG.Min, limitFG.Max
	s := og - 1
	plato := 258.6 * s / (1 + 0.87955*s)
	excess := func(fg float64) float64 {
		return beerOf(abv, fg).OriginalExtract() - plato
	}
	// The extract is held at 0 below its own gravity, so look above that.
	for least < most && beerOf(abv, least).RealExtract() < 0 {
		least += 0.0005
	}
	fg, ok := solve.Root(excess, least, most, 1e-9)
	if !ok {
		original := limitOG
		original.Name, original.Source = "gravity of a wort for this alcohol", "no final gravity gives this alcohol from another"
		original.Min, original.Max = gravityOf(excess(least)+plato), gravityOf(excess(most)+plato)
		return Beer{}, original.Check(fn, og)
	}
	return BeerOf(abv, fg)
}

// gravityOf returns the gravity of a wort of extract e in degrees Plato.
func gravityOf(e float64) float64 { return 1 + e/(258.6-0.87955*e) }

// ABV returns the alcohol content as a fraction by volume at 20 °C.
func (b Beer) ABV() float64 {
	if !b.other {
		return ordinaryABV
	}
	return b.abv
}

// FinalGravity returns the density at 20 °C relative to water at 20 °C.
func (b Beer) FinalGravity() float64 {
	if !b.other {
		return ordinaryFG
	}
	return b.fg
}

// ABW returns the alcohol content in percent by mass.
func (b Beer) ABW() float64 {
	return 100 * b.ABV() * ethanolDensity20 / (b.FinalGravity() * waterDensity20)
}

// RealExtract returns the dissolved extract in percent by mass (degrees Plato
// of the beer without its alcohol), by Tabarié's rule:
//
//	SG_extract = SG − SG_ethanol + 1
//	SG_extract = 1 + E / (258.6 − 0.87955 E)
//
// Sources: Tabarié's rule as in standard brewing texts; extract table fit from
// memory.
func (b Beer) RealExtract() float64 {
	ethanol := ethanolWaterDensity(b.ABW()/100, 20) / waterDensity20
	s := b.FinalGravity() - ethanol
	return 258.6 * s / (1 + 0.87955*s)
}

// OriginalExtract returns the extract of the wort that the beer was fermented
// from, in degrees Plato, by Balling's rule with A the alcohol and E the real
// extract in percent by mass:
//
//	OE = 100 (2.0665 A + E) / (100 + 1.0665 A)
//
// Source: Balling (1865), as in standard brewing texts; constants from memory.
func (b Beer) OriginalExtract() float64 {
	a := b.ABW()
	return 100 * (2.0665*a + 100*b.extract()) / (100 + 1.0665*a)
}
