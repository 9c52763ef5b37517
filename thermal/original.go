package thermal

import "example.com/pourwell/internal/solve"

// BeerFromOriginal returns the beer of alcohol content abv, as a fraction by
// volume at 20 °C, that was fermented from a wort of original gravity og, its
// density at 20 °C over that of water at 20 °C. The final gravity follows from
// Balling's rule; see [Beer.OriginalExtract].
//
// Valid for an abv from 0 to 0.20 and an og for which the final gravity lies
// from 0.98 to 1.20. Outside it BeerFromOriginal returns a [*RangeError] and
// ordinary beer, the zero value.
//
// Source: as [Beer.OriginalExtract] and [Beer.RealExtract].
func BeerFromOriginal(abv, og float64) (Beer, error) {
	const fn = "thermal.BeerFromOriginal"
	if err := limitABV.Check(fn, abv); err != nil {
		return Beer{}, err
	}
	least, most := limitFG.Min, limitFG.Max
	s := og - 1
	plato := 258.6 * s / (1 + 0.87955*s)
	excess := func(fg float64) float64 {
		return Beer{abv - ordinaryABV, fg - ordinaryFG}.OriginalExtract() - plato
	}
	// The extract is held at 0 below its own gravity, so look above that.
	for least < most && (Beer{abv - ordinaryABV, least - ordinaryFG}).RealExtract() < 0 {
		least += 0.0005
	}
	fg, ok := solve.Root(excess, least, most, 1e-9)
	if !ok {
		original := limitFG
		original.Name, original.Source = "original gravity", "no final gravity gives this alcohol from it"
		original.Min, original.Max = gravityOf(excess(least)+plato), gravityOf(excess(most)+plato)
		return Beer{}, original.Check(fn, og)
	}
	return BeerOf(abv, fg)
}

// gravityOf returns the gravity of a wort of extract e in degrees Plato.
func gravityOf(e float64) float64 { return 1 + e/(258.6-0.87955*e) }
