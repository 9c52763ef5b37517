package thermal

import "example.com/pourwell/volume"

// A Beer is a liquid described by its alcohol and its extract. It is opaque;
// make one with [BeerOf]. The zero value is ordinary beer, of 5 % alcohol by
// volume and a final gravity of 1.010.
type Beer struct {
	// Departure from ordinary beer, so that the zero value is ordinary beer.
	abv, fg float64
}

// Composition of ordinary beer, the zero Beer.
const (
	ordinaryABV = 0.05
	ordinaryFG  = 1.010
)

// Water is plain water: no alcohol, no extract.
var Water = Beer{-ordinaryABV, 1 - ordinaryFG}

// Densities at 20 °C, kg/m³. Source: OIML R 22.
const (
	waterDensity20   = 998.2012300
	ethanolDensity20 = 789.239
)

// BeerOf returns the beer of alcohol content abv, as a fraction by volume at
// 20 °C (0.05, not 5), and final gravity fg, its density at 20 °C over that of
// water at 20 °C.
//
// Valid from 0 to 0.20 and from 0.98 to 1.20; outside it, or if no real
// extract is left for that alcohol and gravity, BeerOf returns a [*RangeError]
// and ordinary beer, the zero value.
func BeerOf(abv, fg float64) (Beer, error) {
	if err := limitABV.Check("thermal.BeerOf", abv); err != nil {
		return Beer{}, err
	}
	if err := limitFG.Check("thermal.BeerOf", fg); err != nil {
		return Beer{}, err
	}
	b := Beer{abv - ordinaryABV, fg - ordinaryFG}
	if err := limitExtract.Check("thermal.BeerOf", b.RealExtract()); err != nil {
		return Beer{}, err
	}
	return b, nil
}

var (
	limitABV     = volume.Range{Name: "alcohol by volume", Min: 0, Max: 0.20, Source: "a fraction: 0.05 is 5 %; beer models hold to 20 %"}
	limitFG      = volume.Range{Name: "final gravity", Min: 0.98, Max: 1.20, Source: "gravities of finished beer and of wort"}
	limitExtract = volume.Range{Name: "real extract", Min: -0.05, Max: 40, Suffix: "percent_by_mass", Source: "gravity too low or too high for this alcohol"}
)

// ABV returns the alcohol content as a fraction by volume at 20 °C.
func (b Beer) ABV() float64 { return b.abv + ordinaryABV }

// FinalGravity returns the density at 20 °C relative to water at 20 °C.
func (b Beer) FinalGravity() float64 { return b.fg + ordinaryFG }

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
