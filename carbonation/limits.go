package carbonation

import (
	"cmp"

	"example.com/pourwell/volume"
)

// Gauge pressures are bounded as read at sea level; what they come to above
// vacuum is held against the absolute pressure besides, so that a place far
// from the sea moves the bounds. Source: the standard atmosphere.
const (
	mostAbsolute = 1000.0
	seaAir       = 101.325
	mostGauge    = mostAbsolute - seaAir
)

// The validity table of the package. Each row is used by the checks of the
// functions that take the quantity, and printed in the documentation.
var (
	limitTemperature = volume.Range{
		Name: "temperature", Min: -1.2, Max: 45, Suffix: "c", Source: "fitted range of Weiss 1974 [1], to the coldest row of the trade's chart [2]",
		Fields: "ContentAt.t PressureFor.t Draught.SolveContent.t Draught.SolveGauge.t Draught.SolveShare.t Sealed.Closed Supply.Temperature",
	}
	limitPartial = volume.Range{
		Name: "CO2 pressure", Min: 0, Max: 1000, Suffix: "kpa_abs", Source: "Henry's law and the virial fugacity hold",
		Fields: "ContentAt.p TemperatureFor.p Wine.ContentAt.p",
	}
	limitContent = volume.Range{
		Name: "content", Min: 0, Max: 20, Suffix: "volumes", Source: "water near freezing at {1000 kpa_abs} holds {17 volumes}",
		Fields: "PressureFor.c TemperatureFor.c Draught.SolveGauge.c Draught.SolveTemperature.c Draught.SolveShare.c Sealed.Content AirPump.Content Supply.From" +
			" Equilibrium.After.from Equilibrium.Reach.from Wine.PressureFor.c",
	}
	limitAbsolute = volume.Range{Name: "absolute pressure", Min: 0, Max: mostAbsolute, Suffix: "kpa_abs", Source: "far above the rating of any keg"}
	limitGauge    = volume.Range{
		Name: "gauge pressure", Min: -seaAir, Max: mostGauge, Suffix: "kpa", Source: "from vacuum to {1000 kpa_abs}, at sea level",
		Fields: "Draught.SolveContent.g Draught.SolveTemperature.g Draught.SolveShare.g",
	}
	limitPush = volume.Range{
		Name: "gauge pressure on a keg", Min: 0, Max: mostGauge, Suffix: "kpa", Source: "from the air around to far above the rating of any keg",
		Fields: "AirPump.Gauge Supply.Gauge",
	}
	limitAir       = volume.Range{Name: "air pressure", Min: 45, Max: 110, Suffix: "kpa_abs", Source: "weather at inhabited places", Fields: "Draught.Air Sealed.Air AirPump.Air Supply.Air"}
	limitSeaLevel  = volume.Range{Name: "sea-level pressure", Min: 87, Max: 110, Suffix: "kpa_abs", Source: "lowest and highest ever recorded, from memory", Fields: "Pressure.StationAt.p"}
	limitElevation = volume.Range{Name: "elevation", Min: -500, Max: 6000, Suffix: "m", Source: "inhabited places", Fields: "AirAt.elevation Pressure.StationAt.elevation"}
	limitShare     = volume.Range{Name: "CO2 share", Min: 0, Max: 1, Suffix: "share", Source: "a share of the gas", Fields: "Draught.CO2Share"}

	limitLater     = volume.Range{Name: "later temperature", Min: -1.2, Max: 80, Suffix: "c", Source: "Carroll 1991 [5] above {45 c}; a car in the sun stays below", Fields: "Sealed.At.t"}
	limitInside    = volume.Range{Name: "CO2 pressure in the vessel", Min: 0, Max: 2000, Suffix: "kpa_abs", Source: "the virial fugacity is 0.7 % low there; no beer vessel is made for it"}
	limitHeadspace = volume.Range{Name: "headspace", Min: 0.001, Max: 0.99, Suffix: "share", Source: "a share of the vessel; without any it bursts", Fields: "Sealed.Headspace Supply.Headspace"}
	limitAirShare  = volume.Range{Name: "air share", Min: 0, Max: 1, Suffix: "share", Source: "a share of the headspace", Fields: "Sealed.AirShare"}
	limitFillLoss  = volume.Range{Name: "loss at filling", Min: 0, Max: 0.9, Suffix: "share", Source: "a share of the content", Fields: "Sealed.FillLoss"}
	limitOpenings  = volume.Range{Name: "openings", Min: 0, Max: 50, Source: "flat long before", Fields: "Sealed.Openings"}
	limitRating    = volume.Range{Name: "rating", Min: 0, Max: 2000, Suffix: "kpa", Source: "no beer vessel is made for more", Fields: "Sealed.Rating"}
	limitRegulator = volume.Range{Name: "regulator", Min: 0, Max: mostGauge, Suffix: "kpa", Source: "from shut to far above the rating of any keg", Fields: "Sealed.Regulator"}

	limitAired    = volume.Range{Name: "temperature under air", Min: 0, Max: 40, Suffix: "c", Source: "range of the APHA equation [9]", Fields: "AirPump.Temperature"}
	limitFull     = volume.Range{Name: "full", Min: 0.02, Max: 0.98, Suffix: "share", Source: "a share of the keg; a fresh one has about 2 % of gas", Fields: "AirPump.Full"}
	limitGlass    = volume.Range{Name: "glass", Min: 0.01, Max: 5, Suffix: "l", Source: "glasses and pitchers", Fields: "AirPump.Glass"}
	limitStroke   = volume.Range{Name: "pump stroke", Min: 0.01, Max: 5, Suffix: "l", Source: "hand pumps", Fields: "AirPump.Stroke"}
	limitKeg      = volume.Range{Name: "keg", Min: 0.1, Max: 1000, Suffix: "l", Source: "growlers to serving tanks", Fields: "AirPump.Keg.Capacity Supply.Keg"}
	limitDiameter = volume.Range{Name: "keg diameter", Min: 0.03, Max: 2, Suffix: "m", Source: "growlers to serving tanks", Fields: "AirPump.Keg.Diameter"}
	limitTime     = volume.Range{Name: "time", Min: 0, Max: 1000, Suffix: "d", Source: "longer than beer is kept", Fields: "AirPump.After.elapsed Equilibrium.After.elapsed"}

	limitKegs      = volume.Range{Name: "kegs", Min: 1, Max: 10000, Source: "one event", Fields: "Supply.Kegs"}
	limitPurges    = volume.Range{Name: "purges", Min: 0, Max: 100, Source: "a dozen leave no air", Fields: "Supply.Purges"}
	limitCharge    = volume.Range{Name: "cylinder charge", Min: 0.005, Max: 100, Suffix: "kg", Source: "capsules to the largest portable cylinders", Fields: "Supply.Charge"}
	limitFilling   = volume.Range{Name: "filling ratio", Min: 0.5, Max: 0.8, Source: "mass of CO2 over that of the water it holds: regulations [11] allow 0.68 to 0.76", Fields: "Supply.Filling"}
	limitCylinderT = volume.Range{Name: "cylinder temperature", Min: -30, Max: 70, Suffix: "c", Source: "outdoors to a car in the sun", Fields: "Supply.CylinderTemperature Supply.CylinderAt.t"}
	limitGas       = volume.Range{Name: "gas volume", Min: 0.01, Max: 1000, Suffix: "l", Source: "a gas line to a cellar of kegs", Fields: "Supply.LeakTest.gas"}
	limitFall      = volume.Range{Name: "fall of the gauge", Min: 0, Max: mostGauge, Suffix: "kpa", Source: "no more than the pressure itself", Fields: "Supply.LeakTest.fall"}
	limitTest      = volume.Range{Name: "time of the test", Min: 1, Max: 1000 * 86400, Suffix: "s", Source: "a reading takes a second; longer than a cylinder is left shut", Fields: "Supply.LeakTest.over"}
	limitRoom      = volume.Range{Name: "room", Min: 0.5, Max: 1e6, Suffix: "m3", Source: "a cupboard to a hall", Fields: "Supply.IntoRoom.room"}

	limitStill = volume.Range{Name: "temperature at rest", Min: -1.2, Max: 40, Suffix: "c", Source: "the law of solubility, and the viscosity of beer to {40 c}", Fields: "Equilibrium.Temperature"}
	limitDepth = volume.Range{Name: "depth", Min: 0.02, Max: 2, Suffix: "m", Source: "bottles to serving tanks", Fields: "Equilibrium.After.depth Equilibrium.Reach.depth"}
	limitReach = volume.Range{Name: "reach", Min: 0, Max: 0.999, Suffix: "share", Source: "a share of the way; the whole is never reached", Fields: "Equilibrium.Reach.share"}

	limitWineT = volume.Range{
		Name: "wine temperature", Min: 0, Max: 30, Suffix: "c", Source: "Regulation 2676/90 [4], with the temperature law of Weiss 1974 [1]",
		Fields: "Wine.ContentAt.t Wine.PressureFor.t",
	}
	limitWineAlcohol = volume.Range{Name: "wine alcohol", Min: 0, Max: 0.20, Suffix: "share", Source: "a fraction: 0.12 is 12 %", Fields: "Wine.ABV"}
	limitWineSugar   = volume.Range{Name: "wine sugar", Min: 0, Max: 150, Suffix: "g_per_l", Source: "dry to sweet sparkling wines", Fields: "Wine.Sugar"}
)

// Limits returns the validity table of the package: the ranges in which its
// calculations hold, bounds included.
func Limits() []volume.Range {
	return []volume.Range{
		limitTemperature, limitPartial, limitContent, limitAbsolute, limitGauge, limitPush, limitAir, limitSeaLevel, limitElevation, limitShare,
		limitLater, limitInside, limitHeadspace, limitAirShare, limitFillLoss, limitOpenings, limitRating, limitRegulator,
		limitAired, limitFull, limitGlass, limitStroke, limitKeg, limitDiameter, limitTime,
		limitKegs, limitPurges, limitCharge, limitFilling, limitCylinderT, limitGas, limitFall, limitTest, limitRoom,
		limitStill, limitDepth, limitReach, limitWineT, limitWineAlcohol, limitWineSugar,
	}
}

// checkGauge holds a gauge pressure against its row, and what it comes to above
// vacuum in that air.
func checkGauge(fn string, row *volume.Range, g Gauge, air Pressure) error {
	return cmp.Or(row.Check(fn, g.KPa()), limitAbsolute.Check(fn, (g.Pascals()+air.Pascals())/1e3))
}
