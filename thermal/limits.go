package thermal

import (
	"slices"

	"example.com/pourwell/volume"
)

// Errors of the leaf package, so that a caller of thermal need not import it.
type RangeError = volume.RangeError

var (
	ErrNoSolution = volume.ErrNoSolution
	ErrNever      = volume.ErrNever
)

// Limits returns the validity table of the package: one row for each quantity
// that is checked, as its [*RangeError] names it.
func Limits() []volume.Range {
	return slices.Concat(
		[]volume.Range{limitABV, limitFG, limitExtract, limitLiquid},
		[]volume.Range{limitAir, limitHumidity, limitAltitude, limitSun, limitWind, limitLatitude, limitDay, limitHour},
		[]volume.Range{limitKegLitres, limitKegWide, limitKegHigh, limitTare, limitFill, limitJacket, limitUA, limitSurface, limitDuration},
		[]volume.Range{
			limitBathAir, limitBathKegs, limitIce, limitWater, limitIceFrom, limitWaterFrom,
			limitSalt, limitWall, limitConductivity, limitBathMass, limitPour, limitBag,
		},
		[]volume.Range{
			limitTubeLength, limitBore, limitTubeWall, limitWallLambda, limitCurvature, limitBath, limitFilm, limitFilmBand,
			limitFlow, limitCoilReynolds, limitGlassVolume, limitEvery, limitNumber,
		},
		[]volume.Range{limitPlateSize, limitPlateMass, limitContact, limitPlateBeer, limitPlateIce},
		[]volume.Range{limitInsulation, limitSolar, limitStanding, limitGlassMass, limitGlassBore, limitGlassFill, limitWait},
		[]volume.Range{
			limitReadings, limitSpan, limitApproach, limitContent, limitMetal, limitThermometer, limitMelted, limitMeltAir, limitBoxUA,
		},
	)
}
