package thermal

import (
	"errors"

	"example.com/pourwell/volume"
)

// What the cautions of this package are about, beside [volume.Floating],
// [volume.Lifting] and [volume.FullTub].
const (
	WarmKeg      volume.Code = "warm-keg"       // a keg gains pressure as it warms
	KegInSun     volume.Code = "keg-in-sun"     // it goes on to warm
	GasInCar     volume.Code = "gas-in-car"     // kegs and cylinders on the road
	NotForDrinks volume.Code = "not-for-drinks" // ice and water that have cooled something
	FrozenBeer   volume.Code = "frozen-beer"    // a coil or line blocked, a keg's fittings burst
	NearFreezing volume.Code = "near-freezing"  // a bath hardly warmer than that
	Electricity  volume.Code = "electricity"    // a pump in ice water
	ThermalShock volume.Code = "thermal-shock"  // a hot glass that can crack
)

// Thresholds of the cautions.
const (
	warmKeg     = 25.0 // °C of the beer; judged, no source
	hotKeg      = 40.0 // °C that a keg left where it stands comes to; judged, no source
	freezeDoubt = 0.4  // K by which a beer's freezing point may be off, see Beer.FreezingPoint

	// glassShock is the difference, K, up to which glasses of soda-lime glass
	// are safe: annealed containers are tested with 42 K (ISO 7459, from memory).
	glassShock = 40.0
)

func caution(code volume.Code, format string, args ...any) Remark {
	return Remark{Code: code, Severity: volume.Caution, Text: say(format, args...)}
}

// What the notes of this package are about, beside [volume.LightStruck].
const (
	DewHeats     volume.Code = "dew"            // what dew brings
	ClosedCar    volume.Code = "closed-car"     // how a car warms
	KegPractice  volume.Code = "keg-practice"   // what practice says of a keg in the shade
	UAInSun      volume.Code = "ua-in-sun"      // how the sun counts beside a measured UA
	Uncovered    volume.Code = "uncovered"      // beer above the bath
	LateTopUp    volume.Code = "late-top-up"    // ice that comes after the end
	LatePour     volume.Code = "late-pour"      // beer drawn after the end
	TubInSun     volume.Code = "tub-in-sun"     // ice that the sun melts
	SaltedBath   volume.Code = "salted-bath"    // how cold it gets
	WarmBath     volume.Code = "warm-bath"      // a bath warmer than the beer
	CoilPractice volume.Code = "coil-practice"  // lengths that practice asks for
	IceForBeer   volume.Code = "ice-for-beer"   // what the ice counts
	WarmForPlate volume.Code = "warm-for-plate" // beer that asks for a coil
	FloodedPlate volume.Code = "flooded-plate"  // melt water on a plate
	FoamDelays   volume.Code = "foam-delays"    // what foam on a line does
	AbsorbedSun  volume.Code = "absorbed-sun"   // sunshine that is assumed
	LineInSun    volume.Code = "line-in-sun"    // warmer than the air
	WarmInLine   volume.Code = "warm-in-line"   // beer that foams at the tap
	OneSided     volume.Code = "one-sided"      // a band on one side of the answer
	RinsedGlass  volume.Code = "rinsed-glass"   // the same glass, cooler
	Scattered    volume.Code = "scattered"      // readings that disagree
	WideReadings volume.Code = "wide-readings"  // readings too near each other
	LikeTheDay   volume.Code = "like-the-day"   // weather to calibrate in
	ClosedBox    volume.Code = "closed-box"     // what melted ice takes for granted
)

// Thresholds of the notes; judged, no source, unless one is given.
const (
	dewCounts     = 0.01 // share of the heat
	enoughCovered = 0.8  // share of the beer below the bath
	twoZones      = 4.0  // K between the beer above the bath and below it
	plateBeer     = 13.0 // °C, practice
	sunCounts     = 1.0  // K by which a line in the sun settles above the air
	foamsAtTap    = 10.0 // °C
	bandShows     = 0.1  // K
	glassCounts   = 1.0  // K by which a glass warms the beer
	rinse         = 10.0 // °C, water from the tap
)

func note(code volume.Code, format string, args ...any) Remark {
	return Remark{Code: code, Severity: volume.Note, Text: say(format, args...)}
}

// why returns the reason of an error of the packages as a sentence.
func why(err error) volume.Sentence {
	var outside *RangeError
	var none *volume.NoSolutionError
	var never *volume.NeverError
	switch {
	case errors.As(err, &outside):
		return outside.Why()
	case errors.As(err, &none):
		return none.Why
	case errors.As(err, &never):
		return never.Why
	}
	return volume.Sentence(err.Error())
}
