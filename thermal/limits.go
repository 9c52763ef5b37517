package thermal

import (
	"math"
)

// The validity table of the package. The doc comment of the package prints it
// and a test compares the two.
var (
	limitABV     = Range{Name: "alcohol by volume", Min: 0, Max: 0.20, Suffix: "share", Source: "beer models hold to 20 %", Fields: "BeerOf.abv BeerFromOriginal.abv"}
	limitFG      = Range{Name: "final gravity", Min: 0.98, Max: 1.179, Source: "strong dry beer; wort of the densest real extract", Fields: "BeerOf.fg"}
	limitOG      = Range{Name: "original gravity", Min: 1, Max: 1.289, Source: "no wort weighs less than water; the strongest beer of the densest real extract came from the upper end", Fields: "BeerFromOriginal.og"}
	limitExtract = Range{Name: "real extract", Min: -0.05, Max: 40, Suffix: "percent_by_mass", Source: "gravity too low or too high for this alcohol"}
	limitLiquid  = Range{Name: "beer temperature", Min: -5, Max: 40, Suffix: "c", Source: "OIML R 22 ends at {40 c}; the viscosity data of Bingham & Jackson run from {0 c} on", Fields: "Keg.From Keg.Reach.to IceBath.From IceBath.Reach.to Upkeep.Hold" +
		" Coil.Chill.inlet Coil.Serve.inlet Coil.LargestFlow.inlet Coil.LargestFlow.target Line.Carry.inlet Line.Stand.inlet Glassful.Pour.beer" +
		" Calibration.Readings.Temperature Beer.Density.t Beer.Viscosity.t Beer.HeatCapacity.t Beer.Conductivity.t"}

	limitAir      = Range{Name: "air temperature", Min: -20, Max: 60, Suffix: "c", Source: "air properties were checked that far", Fields: "Surroundings.Air Calibration.Air Glassful.From Conductance.Melts.air"}
	limitHumidity = Range{Name: "relative humidity", Min: 0, Max: 1, Suffix: "share", Source: "a share", Fields: "Surroundings.Humidity"}
	limitAltitude = Range{Name: "pressure altitude", Min: -500, Max: 6000, Suffix: "m", Source: "inhabited places; the standard atmosphere holds to {11000 m}", Fields: "Surroundings.Altitude"}
	limitSun      = Range{Name: "sun", Min: 0, Max: 1200, Suffix: "w_per_m2", Source: "clear sky at the zenith gives about {1040 w_per_m2}", Fields: "Surroundings.Sun"}
	limitWind     = Range{Name: "wind", Min: 0, Max: 20, Suffix: "m_per_s", Source: "a gale; nobody serves beer in more", Fields: "Surroundings.Wind"}
	limitLatitude = Range{Name: "latitude", Min: -90, Max: 90, Suffix: "degree", Source: "degrees north of the equator, south below 0", Fields: "ClearSky.latitude"}
	limitDay      = Range{Name: "day of the year", Min: 1, Max: 366, Source: "1 is the first of January", Fields: "ClearSky.day"}
	limitHour     = Range{Name: "hour by the sun", Min: 0, Max: 24, Suffix: "h", Source: "12 is when the sun stands highest", Fields: "ClearSky.hour"}

	limitKegLitres = Range{Name: "keg", Min: 0.1, Max: 200, Suffix: "l", Source: "from a bottle to a barrel", Fields: "Keg.Vessel.Capacity IceBath.Vessel.Capacity"}
	limitKegWide   = Range{Name: "keg diameter", Min: 0.04, Max: 0.8, Suffix: "m", Source: "from a bottle to a barrel", Fields: "Keg.Vessel.Diameter IceBath.Vessel.Diameter"}
	limitKegHigh   = Range{Name: "keg height", Min: 0.05, Max: 1.5, Suffix: "m", Source: "from a bottle to a barrel", Fields: "Keg.Vessel.Height IceBath.Vessel.Height"}
	limitTare      = Range{Name: "tare", Min: 0, Max: 100, Suffix: "kg", Source: "from a can to a barrel", Fields: "Keg.Vessel.Tare IceBath.Vessel.Tare"}
	limitFill      = Range{Name: "fill", Min: 0.01, Max: 1, Suffix: "share", Source: "a share of the capacity; an empty keg has no beer to warm", Fields: "Keg.Fill IceBath.Fill"}
	limitJacket    = Range{Name: "jacket", Min: 0, Max: 0.1, Suffix: "m", Source: "jackets of kegs", Fields: "Keg.Jacket"}
	limitUA        = Range{Name: "measured UA", Min: 0, Max: 1000, Suffix: "w_per_k", Source: "0 leaves it to the model", Fields: "Keg.UA IceBath.UA"}
	limitSurface   = Range{Name: "surface", Min: 0, Max: float64(len(finishes) - 1), Source: "Bare or Painted", Fields: "Keg.Surface"}
	limitDuration  = Range{Name: "time", Min: 0, Max: 30 * 24, Suffix: "h", Source: "beer kept for a month is a matter of storage, not of a day", Fields: "Keg.After.d IceBath.After.d IceBath.KeptCold.d Conductance.Melts.d Pour.Start Pour.End TopUp.At"}

	limitBathAir      = Range{Name: "air temperature around a bath", Min: 0, Max: 60, Suffix: "c", Source: "in frost the bath itself freezes", Fields: "IceBath.Around.Air"}
	limitBathKegs     = Range{Name: "kegs in a tub", Min: 1, Max: 50, Source: "a large trough", Fields: "IceBath.Kegs"}
	limitIce          = Range{Name: "ice", Min: 0, Max: 5000, Suffix: "kg", Source: "a large trough", Fields: "IceBath.Ice TopUp.Ice"}
	limitWater        = Range{Name: "water", Min: 0, Max: 5000, Suffix: "l", Source: "a large trough", Fields: "IceBath.Water"}
	limitIceFrom      = Range{Name: "ice temperature", Min: -25, Max: 0, Suffix: "c", Source: "freezers; ice melts at {0 c}", Fields: "IceBath.IceFrom"}
	limitWaterFrom    = Range{Name: "water temperature", Min: 0, Max: 40, Suffix: "c", Source: "tap water", Fields: "IceBath.WaterFrom"}
	limitSalt         = Range{Name: "salt in the water", Min: 0, Max: 0.20, Suffix: "share", Source: "a share by mass; brine's freezing point is fitted to 20 %", Fields: "IceBath.Salt"}
	limitWall         = Range{Name: "tub wall", Min: 0, Max: 0.3, Suffix: "m", Source: "tubs and ice chests", Fields: "IceBath.Wall"}
	limitConductivity = Range{Name: "wall conductivity", Min: 0.01, Max: 400, Suffix: "w_per_m_k", Source: "from foam to copper", Fields: "IceBath.Conductivity"}
	limitBathMass     = Range{Name: "ice and water together", Min: 0.1, Max: 10000, Suffix: "kg", Source: "less is no bath"}
	limitPour         = Range{Name: "volume of a pour", Min: 0, Max: 10000, Suffix: "l", Source: "a pour takes beer out", Fields: "Pour.Volume"}
	limitBag          = Range{Name: "bag of ice", Min: 0.1, Max: 1000, Suffix: "kg", Source: "from a handful to a pallet", Fields: "Upkeep.Bag"}
	limitReserve      = Range{Name: "reserve of ice", Min: 0, Max: 0.9, Suffix: "share", Source: "a share of the first ice; more leaves no room to melt", Fields: "Upkeep.Reserve"}

	limitTubeLength   = Range{Name: "tube length", Min: 0.1, Max: 200, Suffix: "m", Source: "tubes of draft systems", Fields: "Coil.Length Plate.Passage Line.Length"}
	limitBore         = Range{Name: "bore", Min: 2, Max: 25, Suffix: "mm", Source: "tubes of draft systems", Fields: "Coil.Bore Plate.Bore Line.Bore"}
	limitTubeWall     = Range{Name: "tube wall", Min: 0.1, Max: 10, Suffix: "mm", Source: "tubes of draft systems", Fields: "Coil.Wall Line.Wall"}
	limitWallLambda   = Range{Name: "conductivity of the tube", Min: 0.02, Max: 500, Suffix: "w_per_m_k", Source: "from foam to copper", Fields: "Coil.Conductivity Line.Conductivity Line.InsulationConductivity"}
	limitWinding      = Range{Name: "winding", Min: 0.014, Max: 12.5, Suffix: "m", Source: "the narrowest tube wound tightest, the widest one wound widest", Fields: "Coil.Winding"}
	limitCurvature    = Range{Name: "bore over winding", Min: 0.002, Max: 0.14, Source: "Schmidt 1967 holds to 0.14"}
	limitBath         = Range{Name: "bath temperature", Min: -5, Max: 40, Suffix: "c", Source: "range of the beer's properties", Fields: "Coil.Bath"}
	limitFilm         = Range{Name: "film coefficient", Min: 20, Max: 20000, Suffix: "w_per_m2_k", Source: "from still air in ice to boiling", Fields: "Coil.Film Plate.Film"}
	limitFilmBand     = Range{Name: "band of the film coefficient", Min: 0, Max: 0.9, Suffix: "share", Source: "a share of it", Fields: "Coil.FilmBand"}
	limitFlow         = Range{Name: "flow", Min: 0.01, Max: 40, Suffix: "l_per_min", Source: "taps of draft systems", Fields: "Pours.Flow Coil.Chill.flow Plate.Chill.flow Line.Carry.flow"}
	limitCoilReynolds = Range{Name: "Reynolds number", Min: 0, Max: 1e5, Source: "VDI Heat Atlas, coils"}
	limitGlassVolume  = Range{Name: "beer in the glass", Min: 0.02, Max: 20, Suffix: "l", Source: "from a taster to a jug", Fields: "Pours.Glass Glassful.Liquid"}
	limitEvery        = Range{Name: "time from glass to glass", Min: 0, Max: 86400, Suffix: "s", Source: "a glass must be full before the next begins", Fields: "Pours.Every"}
	limitNumber       = Range{Name: "number of glasses", Min: 1, Max: 10000, Source: "counted from the first", Fields: "Pours.Number"}

	limitPlateSize = Range{Name: "size of the plate", Min: 0.05, Max: 1.5, Suffix: "m", Source: "plates of ice boxes", Fields: "Plate.Width Plate.Depth"}
	limitPlateMass = Range{Name: "mass of the plate", Min: 0.5, Max: 100, Suffix: "kg", Source: "plates of ice boxes", Fields: "Plate.Mass"}
	limitContact   = Range{Name: "contact share", Min: 0, Max: 1, Suffix: "share", Source: "a share", Fields: "Plate.Contact"}
	limitPlateBeer = Range{Name: "beer temperature at a plate", Min: 0, Max: 40, Suffix: "c", Source: "melting ice at {0 c} can warm nothing", Fields: "Plate.Chill.inlet Plate.Serve.inlet Plate.DrainDue.inlet"}
	limitPlateIce  = Range{Name: "ice on the plate", Min: 0.5, Max: 500, Suffix: "kg", Source: "from a handful of cubes to a bin", Fields: "Plate.DrainDue.ice"}

	limitInsulation = Range{Name: "insulation", Min: 0, Max: 200, Suffix: "mm", Source: "foam on a beer line", Fields: "Line.Insulation"}
	limitSolar      = Range{Name: "absorbed share of sunshine", Min: 0, Max: 1, Suffix: "share", Source: "a share", Fields: "Line.Solar Glassful.Solar"}
	limitStanding   = Range{Name: "standing time", Min: 0, Max: 168, Suffix: "h", Source: "a week; beer in a line spoils long before", Fields: "Line.Stand.d"}
	limitGlassMass  = Range{Name: "mass of the glass", Min: 0, Max: 5, Suffix: "kg", Source: "from a paper cup to a stein", Fields: "Glassful.Glass.Mass"}
	limitGlassBore  = Range{Name: "bore of the glass", Min: 20, Max: 300, Suffix: "mm", Source: "from a flute to a jug", Fields: "Glassful.Glass.Bore"}
	limitGlassFill  = Range{Name: "fill of the glass", Min: 0, Max: 1, Suffix: "share", Source: "beer up to the brim, without any head", Fields: "Glassful.Filled.share"}
	limitWait       = Range{Name: "wait", Min: 0, Max: 24, Suffix: "h", Source: "a day", Fields: "Glassful.Pour.wait"}

	limitReadings    = Range{Name: "number of readings", Min: 2, Max: 100000, Source: "two points make a line; one a second makes a day", Fields: "Calibration.Readings"}
	limitSpan        = Range{Name: "time between first and last", Min: 60, Max: 30 * 86400, Suffix: "s", Source: "a minute to 30 days", Fields: "MeltedIce.during Calibration.Readings.Time"}
	limitApproach    = Range{Name: "distance of a reading from the air", Min: 0.5, Max: 60, Suffix: "k", Source: "nearer, a thermometer's error outweighs the reading"}
	limitContent     = Range{Name: "content", Min: 0.1, Max: 1000, Suffix: "l", Source: "from a bottle to a tank", Fields: "Calibration.Content"}
	limitMetal       = Range{Name: "mass of metal", Min: 0, Max: 200, Suffix: "kg", Source: "vessels of the trade", Fields: "Calibration.Metal"}
	limitThermometer = Range{Name: "error of the thermometer", Min: 0.001, Max: 5, Suffix: "k", Source: "from a laboratory's to none", Fields: "Calibration.Thermometer"}
	limitMelted      = Range{Name: "melted ice", Min: 0.1, Max: 500, Suffix: "kg", Source: "from a handful to a bin", Fields: "MeltedIce.melted"}
	limitMeltAir     = Range{Name: "air around the ice", Min: 5, Max: 60, Suffix: "c", Source: "nearer {0 c} the difference is too uncertain", Fields: "MeltedIce.air"}
	limitBoxUA       = Range{Name: "UA of a box", Min: 0, Max: 1000, Suffix: "w_per_k", Source: "from a good ice chest (0.5) to an open trough", Fields: "Conductance.Melts.u"}
)

// Limits returns the validity table of the package: one row for each quantity
// that is checked, as its [*RangeError] names it.
func Limits() []Range {
	return []Range{
		limitABV, limitFG, limitOG, limitExtract, limitLiquid,
		limitAir, limitHumidity, limitAltitude, limitSun, limitWind, limitLatitude, limitDay, limitHour,
		limitKegLitres, limitKegWide, limitKegHigh, limitTare, limitFill, limitJacket, limitUA, limitSurface, limitDuration,
		limitBathAir, limitBathKegs, limitIce, limitWater, limitIceFrom, limitWaterFrom, limitSalt, limitWall,
		limitConductivity, limitBathMass, limitPour, limitBag, limitReserve,
		limitTubeLength, limitBore, limitTubeWall, limitWallLambda, limitWinding, limitCurvature, limitBath, limitFilm, limitFilmBand,
		limitFlow, limitCoilReynolds, limitGlassVolume, limitEvery, limitNumber,
		limitPlateSize, limitPlateMass, limitContact, limitPlateBeer, limitPlateIce,
		limitInsulation, limitSolar, limitStanding, limitGlassMass, limitGlassBore, limitGlassFill, limitWait,
		limitReadings, limitSpan, limitApproach, limitContent, limitMetal, limitThermometer, limitMelted, limitMeltAir,
		limitBoxUA,
	}
}

// never says that the process ends before the target, °C; how is what it does
// there, such as "settles at".
func never(fn, how string, target, there float64) error {
	return &NeverError{
		Func: fn, Why: say("the beer %s {%.6g c}, so it does not get to {%.6g c}", how, there, target),
		Key: "temperature_c", Settles: there, Asked: target,
	}
}

// noSolution is an [ErrNoSolution] in the name of fn with a sentence.
func noSolution(fn, format string, args ...any) error {
	return &NoSolutionError{Func: fn, Why: say(format, args...)}
}

// needs is an [ErrNoSolution] in the name of fn with the numbers under key that
// decide: with which there would be an answer, and what was given.
func needs(fn, key string, needed, given float64, format string, args ...any) error {
	return &NoSolutionError{Func: fn, Why: say(format, args...), Key: key, Needed: needed, Given: given}
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
