package thermal

import (
	"math"

	"example.com/pourwell/volume"
)

// Errors of the leaf package, so that a caller of thermal need not import it.
type RangeError = volume.RangeError

var (
	ErrNoSolution = volume.ErrNoSolution
	ErrNever      = volume.ErrNever
)

// The validity table of the package. The doc comment of the package prints it
// and a test compares the two.
var (
	limitABV     = volume.Range{Name: "alcohol by volume", Min: 0, Max: 0.20, Suffix: "share", Source: "a fraction: 0.05 is 5 %; beer models hold to 20 %", Fields: "BeerOf.abv BeerFromOriginal.abv"}
	limitFG      = volume.Range{Name: "final gravity", Min: 0.98, Max: 1.20, Source: "gravities of finished beer and of wort", Fields: "BeerOf.fg"}
	limitOG      = volume.Range{Name: "original gravity", Min: 0.98, Max: 1.20, Source: "gravities of wort", Fields: "BeerFromOriginal.og"}
	limitExtract = volume.Range{Name: "real extract", Min: -0.05, Max: 40, Suffix: "percent_by_mass", Source: "gravity too low or too high for this alcohol"}
	limitLiquid  = volume.Range{Name: "beer temperature", Min: -5, Max: 40, Suffix: "c", Source: "OIML R 22 ends at 40 °C; the viscosity data of Bingham & Jackson run from 0 to 40 °C", Fields: "Beer.Density.t Beer.Viscosity.t Beer.HeatCapacity.t Beer.Conductivity.t Keg.From Keg.Reach.to IceBath.From IceBath.Reach.to Upkeep.Hold Coil.Chill.inlet Coil.Serve.inlet Coil.LargestFlow.inlet Coil.LargestFlow.target Line.Carry.inlet Line.Stand.inlet Glassful.Pour.beer Calibration.Readings.Temperature"}

	limitAir      = volume.Range{Name: "air temperature", Min: -20, Max: 60, Suffix: "c", Source: "air properties checked from -20 to 60 °C", Fields: "Surroundings.Air Glassful.From Calibration.Air Conductance.Melts.air"}
	limitHumidity = volume.Range{Name: "relative humidity", Min: 0, Max: 1, Suffix: "share", Source: "a share: 0.5 is 50 %", Fields: "Surroundings.Humidity"}
	limitAltitude = volume.Range{Name: "pressure altitude", Min: -500, Max: 6000, Suffix: "m", Source: "inhabited places; the standard atmosphere holds to 11 km", Fields: "Surroundings.Altitude"}
	limitSun      = volume.Range{Name: "sun", Min: 0, Max: 1200, Suffix: "w_per_m2", Source: "clear sky at the zenith gives about 1040", Fields: "Surroundings.Sun"}
	limitWind     = volume.Range{Name: "wind", Min: 0, Max: 20, Suffix: "m_per_s", Source: "a gale; nobody serves beer in more", Fields: "Surroundings.Wind"}
	limitLatitude = volume.Range{Name: "latitude", Min: -90, Max: 90, Suffix: "degree", Source: "degrees north of the equator, south below 0", Fields: "ClearSky.latitude"}
	limitDay      = volume.Range{Name: "day of the year", Min: 1, Max: 366, Source: "1 is the first of January", Fields: "ClearSky.day"}
	limitHour     = volume.Range{Name: "hour by the sun", Min: 0, Max: 24, Suffix: "h", Source: "12 is when the sun stands highest", Fields: "ClearSky.hour"}

	limitKegLitres = volume.Range{Name: "keg", Min: 0.1, Max: 200, Suffix: "l", Source: "from a bottle to a barrel", Fields: "Keg.Vessel.Capacity IceBath.Vessel.Capacity"}
	limitKegWide   = volume.Range{Name: "keg diameter", Min: 0.04, Max: 0.8, Suffix: "m", Source: "from a bottle to a barrel", Fields: "Keg.Vessel.Diameter IceBath.Vessel.Diameter"}
	limitKegHigh   = volume.Range{Name: "keg height", Min: 0.05, Max: 1.5, Suffix: "m", Source: "from a bottle to a barrel", Fields: "Keg.Vessel.Height IceBath.Vessel.Height"}
	limitTare      = volume.Range{Name: "tare", Min: 0, Max: 100, Suffix: "kg", Source: "from a can to a barrel", Fields: "Keg.Vessel.Tare IceBath.Vessel.Tare"}
	limitFill      = volume.Range{Name: "fill", Min: 0.01, Max: 1, Suffix: "share", Source: "a share of the capacity; an empty keg has no beer to warm", Fields: "Keg.Fill IceBath.Fill"}
	limitJacket    = volume.Range{Name: "jacket", Min: 0, Max: 0.1, Suffix: "m", Source: "jackets of kegs", Fields: "Keg.Jacket"}
	limitUA        = volume.Range{Name: "measured UA", Min: 0, Max: 1000, Suffix: "w_per_k", Source: "0 leaves it to the model", Fields: "Keg.UA IceBath.UA"}
	limitSurface   = volume.Range{Name: "surface", Min: 0, Max: float64(len(finishes) - 1), Source: "Bare or Painted", Fields: "Keg.Surface"}
	limitDuration  = volume.Range{Name: "time", Min: 0, Max: 30 * 24, Suffix: "h", Source: "beer kept for a month is a matter of storage, not of a day", Fields: "Keg.After.d IceBath.After.d IceBath.KeptCold.d Conductance.Melts.d IceBath.Pours.Start IceBath.Pours.End IceBath.TopUps.At"}

	limitBathAir      = volume.Range{Name: "air temperature around a bath", Min: 0, Max: 60, Suffix: "c", Source: "in frost the bath itself freezes", Fields: "IceBath.Around.Air"}
	limitBathKegs     = volume.Range{Name: "kegs in a tub", Min: 1, Max: 50, Source: "a large trough", Fields: "IceBath.Kegs"}
	limitIce          = volume.Range{Name: "ice", Min: 0, Max: 5000, Suffix: "kg", Source: "a large trough", Fields: "IceBath.Ice IceBath.TopUps.Ice"}
	limitWater        = volume.Range{Name: "water", Min: 0, Max: 5000, Suffix: "l", Source: "a large trough", Fields: "IceBath.Water"}
	limitIceFrom      = volume.Range{Name: "ice temperature", Min: -25, Max: 0, Suffix: "c", Source: "freezers; ice melts at 0 °C", Fields: "IceBath.IceFrom"}
	limitWaterFrom    = volume.Range{Name: "water temperature", Min: 0, Max: 40, Suffix: "c", Source: "tap water", Fields: "IceBath.WaterFrom"}
	limitSalt         = volume.Range{Name: "salt in the water", Min: 0, Max: 0.20, Suffix: "share", Source: "a share by mass; brine's freezing point is fitted to 20 %", Fields: "IceBath.Salt"}
	limitWall         = volume.Range{Name: "tub wall", Min: 0, Max: 0.3, Suffix: "m", Source: "tubs and ice chests", Fields: "IceBath.Wall"}
	limitConductivity = volume.Range{Name: "wall conductivity", Min: 0.01, Max: 400, Suffix: "w_per_m_k", Source: "from foam to copper", Fields: "IceBath.Conductivity"}
	limitBathMass     = volume.Range{Name: "ice and water together", Min: 0.1, Max: 10000, Suffix: "kg", Source: "less is no bath"}
	limitPour         = volume.Range{Name: "volume of a pour", Min: 0, Max: 10000, Suffix: "l", Source: "a pour takes beer out", Fields: "IceBath.Pours.Volume"}
	limitBag          = volume.Range{Name: "bag of ice", Min: 0.1, Max: 1000, Suffix: "kg", Source: "from a handful to a pallet", Fields: "Upkeep.Bag"}
	limitReserve      = volume.Range{Name: "reserve of ice", Min: 0, Max: 0.9, Suffix: "share", Source: "a share of the first ice; more leaves no room to melt", Fields: "Upkeep.Reserve"}

	limitTubeLength   = volume.Range{Name: "tube length", Min: 0.1, Max: 200, Suffix: "m", Source: "tubes of draft systems", Fields: "Coil.Length Plate.Passage Line.Length"}
	limitBore         = volume.Range{Name: "bore", Min: 2, Max: 25, Suffix: "mm", Source: "tubes of draft systems", Fields: "Coil.Bore Plate.Bore Line.Bore"}
	limitTubeWall     = volume.Range{Name: "tube wall", Min: 0.1, Max: 10, Suffix: "mm", Source: "tubes of draft systems", Fields: "Coil.Wall Line.Wall"}
	limitWallLambda   = volume.Range{Name: "conductivity of the tube", Min: 0.02, Max: 500, Suffix: "w_per_m_k", Source: "from foam to copper", Fields: "Coil.Conductivity Line.Conductivity Line.InsulationConductivity"}
	limitCurvature    = volume.Range{Name: "bore over winding", Min: 0.002, Max: 0.14, Source: "Schmidt 1967 holds to 0.14"}
	limitBath         = volume.Range{Name: "bath temperature", Min: -5, Max: 40, Suffix: "c", Source: "range of the beer's properties", Fields: "Coil.Bath"}
	limitFilm         = volume.Range{Name: "film coefficient", Min: 20, Max: 20000, Suffix: "w_per_m2_k", Source: "from still air in ice to boiling", Fields: "Coil.Film Plate.Film"}
	limitFilmBand     = volume.Range{Name: "band of the film coefficient", Min: 0, Max: 0.9, Suffix: "share", Source: "a share: 0.4 is ±40 %", Fields: "Coil.FilmBand"}
	limitFlow         = volume.Range{Name: "flow", Min: 0.01, Max: 40, Suffix: "l_per_min", Source: "taps of draft systems", Fields: "Coil.Chill.flow Plate.Chill.flow Line.Carry.flow Pours.Flow"}
	limitCoilReynolds = volume.Range{Name: "Reynolds number", Min: 0, Max: 1e5, Source: "VDI Heat Atlas, coils"}
	limitGlassVolume  = volume.Range{Name: "glass", Min: 0.02, Max: 20, Suffix: "l", Source: "from a taster to a jug", Fields: "Pours.Glass Glassful.Liquid"}
	limitEvery        = volume.Range{Name: "time from glass to glass", Min: 0, Max: 86400, Suffix: "s", Source: "a glass must be full before the next begins", Fields: "Pours.Every"}
	limitNumber       = volume.Range{Name: "number of glasses", Min: 1, Max: 10000, Source: "counted from the first", Fields: "Pours.Number"}

	limitPlateSize = volume.Range{Name: "size of the plate", Min: 0.05, Max: 1.5, Suffix: "m", Source: "plates of ice boxes", Fields: "Plate.Width Plate.Depth"}
	limitPlateMass = volume.Range{Name: "mass of the plate", Min: 0.5, Max: 100, Suffix: "kg", Source: "plates of ice boxes", Fields: "Plate.Mass"}
	limitContact   = volume.Range{Name: "contact share", Min: 0, Max: 1, Suffix: "share", Source: "a share: 0.13 is 13 %", Fields: "Plate.Contact"}
	limitPlateBeer = volume.Range{Name: "beer temperature at a plate", Min: 0, Max: 40, Suffix: "c", Source: "melting ice at 0 °C can warm nothing", Fields: "Plate.Chill.inlet Plate.Serve.inlet Plate.DrainDue.inlet"}
	limitPlateIce  = volume.Range{Name: "ice on the plate", Min: 0.5, Max: 500, Suffix: "kg", Source: "from a handful of cubes to a bin", Fields: "Plate.DrainDue.ice"}

	limitInsulation = volume.Range{Name: "insulation", Min: 0, Max: 200, Suffix: "mm", Source: "foam on a beer line", Fields: "Line.Insulation"}
	limitSolar      = volume.Range{Name: "absorbed share of sunshine", Min: 0, Max: 1, Suffix: "share", Source: "a share: 0.9 is 90 %", Fields: "Line.Solar Glassful.Solar"}
	limitStanding   = volume.Range{Name: "standing time", Min: 0, Max: 168, Suffix: "h", Source: "a week; beer in a line spoils long before", Fields: "Line.Stand.d"}
	limitGlassMass  = volume.Range{Name: "mass of the glass", Min: 0, Max: 5, Suffix: "kg", Source: "from a paper cup to a stein", Fields: "Glassful.Glass.Mass"}
	limitGlassBore  = volume.Range{Name: "bore of the glass", Min: 20, Max: 300, Suffix: "mm", Source: "from a flute to a jug", Fields: "Glassful.Glass.Bore"}
	limitGlassFill  = volume.Range{Name: "fill of the glass", Min: 0, Max: 1, Suffix: "share", Source: "beer up to the brim, without any head"}
	limitWait       = volume.Range{Name: "wait", Min: 0, Max: 24, Suffix: "h", Source: "a day", Fields: "Glassful.Pour.wait"}

	limitReadings    = volume.Range{Name: "number of readings", Min: 2, Max: 10000, Source: "two points make a line"}
	limitSpan        = volume.Range{Name: "time between first and last", Min: 60, Max: 30 * 86400, Suffix: "s", Source: "a minute to 30 days", Fields: "MeltedIce.during"}
	limitApproach    = volume.Range{Name: "distance of a reading from the air", Min: 0.5, Max: 60, Suffix: "k", Source: "nearer, a thermometer's error outweighs the reading"}
	limitContent     = volume.Range{Name: "content", Min: 0.1, Max: 1000, Suffix: "l", Source: "from a bottle to a tank", Fields: "Calibration.Content"}
	limitMetal       = volume.Range{Name: "mass of metal", Min: 0, Max: 200, Suffix: "kg", Source: "vessels of the trade", Fields: "Calibration.Metal"}
	limitThermometer = volume.Range{Name: "error of the thermometer", Min: 0.001, Max: 5, Suffix: "k", Source: "from a laboratory's to none", Fields: "Calibration.Thermometer"}
	limitMelted      = volume.Range{Name: "melted ice", Min: 0.1, Max: 500, Suffix: "kg", Source: "from a handful to a bin", Fields: "MeltedIce.melted"}
	limitMeltAir     = volume.Range{Name: "air around the ice", Min: 5, Max: 60, Suffix: "c", Source: "nearer 0 °C the difference is too uncertain", Fields: "MeltedIce.air"}
	limitBoxUA       = volume.Range{Name: "UA of a box", Min: 0, Max: 1000, Suffix: "w_per_k", Source: "from a good ice chest (0.5) to an open trough"}
)

// Limits returns the validity table of the package: one row for each quantity
// that is checked, as its [*RangeError] names it.
func Limits() []volume.Range {
	return []volume.Range{
		limitABV, limitFG, limitOG, limitExtract, limitLiquid,
		limitAir, limitHumidity, limitAltitude, limitSun, limitWind, limitLatitude, limitDay, limitHour,
		limitKegLitres, limitKegWide, limitKegHigh, limitTare, limitFill, limitJacket, limitUA, limitSurface, limitDuration,
		limitBathAir, limitBathKegs, limitIce, limitWater, limitIceFrom, limitWaterFrom, limitSalt, limitWall,
		limitConductivity, limitBathMass, limitPour, limitBag, limitReserve,
		limitTubeLength, limitBore, limitTubeWall, limitWallLambda, limitCurvature, limitBath, limitFilm, limitFilmBand,
		limitFlow, limitCoilReynolds, limitGlassVolume, limitEvery, limitNumber,
		limitPlateSize, limitPlateMass, limitContact, limitPlateBeer, limitPlateIce,
		limitInsulation, limitSolar, limitStanding, limitGlassMass, limitGlassBore, limitGlassFill, limitWait,
		limitReadings, limitSpan, limitApproach, limitContent, limitMetal, limitThermometer, limitMelted, limitMeltAir,
		limitBoxUA,
	}
}

// noSolution says why there is none, in a sentence that quotes its numbers.
func noSolution(fn, format string, args ...any) error {
	return &volume.NoSolutionError{Func: fn, Why: say(format, args...)}
}

// never says that the process ends before the target, °C; how is what it does
// there, such as "settles at".
func never(fn, how string, target, there float64) error {
	return &volume.NeverError{Func: fn, Why: say("the beer %s {%.6g c}, so it does not get to {%.6g c}", how, there, target)}
}

// finite returns an error in the name of fn if a value of its answer is not a
// finite number.
func finite(fn string, values ...float64) error {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return noSolution(fn, "the heat balance has no finite answer")
		}
	}
	return nil
}
