package carbonation

import "example.com/pourwell/volume"

// A RangeError reports an argument outside the range in which a calculation
// holds; see [volume.RangeError].
type RangeError = volume.RangeError

// The validity table of the package. Each row is used by the checks of the
// functions that take the quantity, and printed in the documentation.
var (
	limitTemperature = volume.Range{Name: "temperature", Min: -1.2, Max: 45, Suffix: "c", Source: "fitted range of Weiss 1974 [1], to the coldest row of the trade's chart [2]"}
	limitPartial     = volume.Range{Name: "CO2 pressure", Min: 0, Max: 1000, Suffix: "kpa_abs", Source: "Henry's law and the virial fugacity hold"}
	limitContent     = volume.Range{Name: "content", Min: 0, Max: 20, Suffix: "volumes", Source: "water near freezing at 1 MPa holds 17"}
	limitAbsolute    = volume.Range{Name: "absolute pressure", Min: 0, Max: 1000, Suffix: "kpa_abs", Source: "far above the rating of any keg"}
	limitAir         = volume.Range{Name: "air pressure", Min: 45, Max: 110, Suffix: "kpa_abs", Source: "weather at inhabited places"}
	limitSeaLevel    = volume.Range{Name: "sea-level pressure", Min: 87, Max: 110, Suffix: "kpa_abs", Source: "lowest and highest ever recorded, from memory"}
	limitElevation   = volume.Range{Name: "elevation", Min: -500, Max: 6000, Suffix: "m", Source: "inhabited places"}
	limitShare       = volume.Range{Name: "CO2 share", Min: 0, Max: 1, Source: "a share of the gas"}

	limitLater     = volume.Range{Name: "later temperature", Min: -1.2, Max: 80, Suffix: "c", Source: "Carroll 1991 [5] above 45 °C; a car in the sun stays below"}
	limitInside    = volume.Range{Name: "CO2 pressure in the vessel", Min: 0, Max: 2000, Suffix: "kpa_abs", Source: "the virial fugacity is 0.7 % low there; no beer vessel is made for it"}
	limitHeadspace = volume.Range{Name: "headspace", Min: 0.001, Max: 0.99, Source: "a share of the vessel; without any it bursts"}
	limitAirShare  = volume.Range{Name: "air share", Min: 0, Max: 1, Source: "a share of the headspace"}
	limitFillLoss  = volume.Range{Name: "loss at filling", Min: 0, Max: 0.9, Source: "a share of the content"}
	limitOpenings  = volume.Range{Name: "openings", Min: 0, Max: 50, Source: "flat long before"}

	limitAired    = volume.Range{Name: "temperature under air", Min: 0, Max: 40, Suffix: "c", Source: "range of the APHA equation [9]"}
	limitFull     = volume.Range{Name: "full", Min: 0.02, Max: 0.98, Source: "a share of the keg; a fresh one has about 2 % of gas"}
	limitGlass    = volume.Range{Name: "glass", Min: 0.01, Max: 5, Suffix: "l", Source: "glasses and pitchers"}
	limitStroke   = volume.Range{Name: "pump stroke", Min: 0.01, Max: 5, Suffix: "l", Source: "hand pumps"}
	limitKeg      = volume.Range{Name: "keg", Min: 0.1, Max: 1000, Suffix: "l", Source: "growlers to serving tanks"}
	limitDiameter = volume.Range{Name: "keg diameter", Min: 0.03, Max: 2, Suffix: "m", Source: "growlers to serving tanks"}
	limitTime     = volume.Range{Name: "time", Min: 0, Max: 1000, Suffix: "d", Source: "longer than beer is kept"}

	limitKegs      = volume.Range{Name: "kegs", Min: 1, Max: 10000, Source: "one event"}
	limitPurges    = volume.Range{Name: "purges", Min: 0, Max: 100, Source: "a dozen leave no air"}
	limitCharge    = volume.Range{Name: "cylinder charge", Min: 0.005, Max: 100, Suffix: "kg", Source: "capsules to the largest portable cylinders"}
	limitFilling   = volume.Range{Name: "filling ratio", Min: 0.5, Max: 0.8, Suffix: "kg_per_l", Source: "regulations [11] allow 0.68 to 0.76"}
	limitCylinderT = volume.Range{Name: "cylinder temperature", Min: -30, Max: 70, Suffix: "c", Source: "outdoors to a car in the sun"}
	limitGas       = volume.Range{Name: "gas volume", Min: 0.01, Max: 1000, Suffix: "l", Source: "a gas line to a cellar of kegs"}
	limitFall      = volume.Range{Name: "fall of the gauge", Min: 0, Max: 1000, Suffix: "kpa", Source: "no more than the pressure itself"}
	limitRoom      = volume.Range{Name: "room", Min: 0.5, Max: 1e6, Suffix: "m3", Source: "a cupboard to a hall"}

	limitDepth = volume.Range{Name: "depth", Min: 0.02, Max: 2, Suffix: "m", Source: "bottles to serving tanks"}
	limitReach = volume.Range{Name: "reach", Min: 0, Max: 0.999, Source: "a share of the way; the whole is never reached"}

	limitWineT       = volume.Range{Name: "wine temperature", Min: 0, Max: 30, Suffix: "c", Source: "Regulation 2676/90 [4], with the temperature law of Weiss 1974 [1]"}
	limitWineAlcohol = volume.Range{Name: "wine alcohol", Min: 0, Max: 0.20, Source: "a fraction: 0.12 is 12 %"}
	limitWineSugar   = volume.Range{Name: "wine sugar", Min: 0, Max: 150, Suffix: "g_per_l", Source: "dry to sweet sparkling wines"}
)

// Limits returns the validity table of the package: the ranges in which its
// calculations hold, bounds included.
func Limits() []volume.Range {
	return []volume.Range{
		limitTemperature, limitPartial, limitContent, limitAbsolute, limitAir, limitSeaLevel, limitElevation, limitShare,
		limitLater, limitInside, limitHeadspace, limitAirShare, limitFillLoss, limitOpenings,
		limitAired, limitFull, limitGlass, limitStroke, limitKeg, limitDiameter, limitTime,
		limitKegs, limitPurges, limitCharge, limitFilling, limitCylinderT, limitGas, limitFall, limitRoom,
		limitDepth, limitReach, limitWineT, limitWineAlcohol, limitWineSugar,
	}
}
