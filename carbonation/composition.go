package carbonation

import "example.com/pourwell/thermal"

// The solubility of CO2 in ordinary beer over that in water, β, rises with the
// Celsius temperature to a ceiling. Source: fit to the pressure-temperature
// chart of D. Miller, BrewingTechniques 2(1) 1994, table I; the ceiling from
// the manometric equation of MEBAK over water. Water vapour is not subtracted
// from the gas; if it were, β would be 0.004 greater.
const (
	betaAt0     = 0.9368
	betaSlope   = 0.00246 // per K
	betaCeiling = 0.965
)

// Weights of real extract (°P) and alcohol (% w/w) in the lowering of
// solubility. Extract: the slope of MEBAK's manometric method and of Usher's
// sucrose solutions (J. Chem. Soc. 97 (1910) 66, from memory) near 5 °C;
// alcohol: own estimate, sources disagree.
const (
	extractWeight = 0.0095
	alcoholWeight = 0.003
)

// ordinaryWeight is the weight of ordinary beer, to which the chart is taken
// to apply: 5 % ABV, final gravity 1.010.
var ordinaryWeight = weigh(thermal.Beer{})

func weigh(b thermal.Beer) float64 {
	return extractWeight*b.RealExtract() + alcoholWeight*b.ABW()
}

// strength returns how much further b is from water than ordinary beer is: 0
// for water, exactly 1 for ordinary beer.
func strength(b thermal.Beer) float64 {
	switch b {
	case thermal.Beer{}:
		return 1
	case thermal.Water():
		return 0
	}
	return weigh(b) / ordinaryWeight
}

// chartBeta returns β of ordinary beer and its slope per kelvin.
func chartBeta(kelvin float64) (beta, slope float64) {
	beta = betaAt0 + betaSlope*(kelvin-iceKelvin)
	if beta > betaCeiling {
		return betaCeiling, 0
	}
	return beta, betaSlope
}

// beerBeta returns β of a beer of the given strength:
//
//	β = 1 − (1 − β_chart) (0.0095 RE + 0.003 A) / (the same for ordinary beer)
func beerBeta(kelvin, strength float64) float64 {
	chart, _ := chartBeta(kelvin)
	return 1 - (1-chart)*strength
}
