package lines

import (
	"sync"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/volume"
)

// The package's validity table: each range is checked by the calculations,
// listed by Limits and printed in the package comment.
var (
	limitTubes       = volume.Range{Name: "number of tubes", Min: 0, Max: maxTubes, Source: "a result holds its tubes without allocating", Fields: "Run.Tubes"}
	limitBore        = volume.Range{Name: "bore", Min: 1, Max: 50, Suffix: "mm", Source: "beer tubing is {3..16 mm}", Fields: "Tube.Bore Fitting.Bore"}
	limitOutside     = volume.Range{Name: "outside diameter", Min: 1, Max: 90, Suffix: "mm", Source: "the widest bore in the thickest wall", Fields: "TubeOfOD.od"}
	limitLength      = volume.Range{Name: "length", Min: 0, Max: 300, Suffix: "m", Source: "longest lines of the trade, with room to spare", Fields: "Tube.Length TubeOfOD.length"}
	limitWall        = volume.Range{Name: "wall", Min: 0, Max: 20, Suffix: "mm", Source: "thickness of tubing, not its outside diameter", Fields: "Tube.Wall TubeOfOD.wall"}
	limitRoughness   = volume.Range{Name: "roughness over bore", Min: 0, Max: 0.05, Source: "fitted range of Churchill's formula", Fields: "Tube.Roughness"}
	limitCoil        = volume.Range{Name: "coil diameter over bore", Min: 5, Max: 200, Source: "data of White and of Ito; a wider coil counts as straight", Fields: "Tube.Coil"}
	limitRise        = volume.Range{Name: "rise", Min: -30, Max: 30, Suffix: "m", Source: "a building's height", Fields: "Run.Rise"}
	limitKegHeight   = volume.Range{Name: "keg height", Min: 0, Max: 2, Suffix: "m", Source: "depth of beer in a full vessel", Fields: "Run.KegHeight"}
	limitFull        = volume.Range{Name: "fullness", Min: 0, Max: 1, Suffix: "share", Source: "a share", Fields: "Run.Full"}
	limitK           = volume.Range{Name: "loss coefficient", Min: 0, Max: 1000, Source: "a ball valve two thirds closed has 210", Fields: "Fitting.K"}
	limitHardware    = volume.Range{Name: "hardware loss", Min: 0, Max: 500, Suffix: "kpa", Source: "loss of coupler, shank and tap", Fields: "Hardware.Loss"}
	limitHardwareAt  = volume.Range{Name: "flow of the hardware loss", Min: 0.01, Max: 60, Suffix: "l_per_min", Source: "the flow at which the loss was read", Fields: "Hardware.At"}
	limitRated       = volume.Range{Name: "rating", Min: 0, Max: 10000, Suffix: "kpa", Source: "stamps of kegs, lines and taps; 0 if not known", Fields: "Run.Rated"}
	limitCalibration = volume.Range{Name: "calibration factor", Min: 0.2, Max: 5, Source: "beyond it something else is wrong than friction", Fields: "Run.Calibration"}
	limitTemperature = volume.Range{Name: "temperature", Min: -1.2, Max: 40, Suffix: "c", Source: "solubility of CO2 at the cold end, density and viscosity of beer at the warm one", Fields: "Run.Temp Serving.LineTemp Observation.BeerTemp"}
	limitGauge       = volume.Range{Name: "gauge pressure", Min: -101, Max: 700, Suffix: "kpa", Source: "from vacuum to the highest rating of a keg", Fields: "Serving.Gauge Observation.CarbonatedGauge Run.Flow.g Run.Length.g Run.TradeLength.g Run.Calibrate.g"}
	limitFlow        = volume.Range{Name: "flow", Min: 0, Max: 60, Suffix: "l_per_min", Source: "some twenty times a usual pour", Fields: "Serving.Target Run.Gauge.q Run.Length.q"}
	limitContent     = volume.Range{Name: "content", Min: 0, Max: 6, Suffix: "volumes", Source: "from flat beer to more than a keg is rated for", Fields: "Serving.Content"}
	limitCrevice     = volume.Range{Name: "crevice radius", Min: 0.5, Max: 100, Suffix: "um", Source: "from polished steel to a worn barb", Fields: "Serving.Crevice"}
	limitStations    = volume.Range{Name: "number of stations", Min: 2, Max: 2000, Source: "of a profile", Fields: "Run.Profile.n"}
	limitGlass       = volume.Range{Name: "glass", Min: 0.02, Max: 20, Suffix: "l", Source: "from a taster to a bucket", Fields: "Run.Calibrate.glass Observation.Glass.Volume"}
	limitTime        = volume.Range{Name: "time for a glass", Min: 0.5, Max: 3600, Suffix: "s", Source: "a glass that somebody waited for", Fields: "Run.Calibrate.measured Observation.Time"}
	limitBefore      = volume.Range{Name: "time before the pour", Min: 0, Max: 1000, Suffix: "d", Source: "longer than beer is kept", Fields: "Observation.Since Observation.CarbonatedFor"}
)

// Ranges that are carbonation's and stand in its table alone: of the air
// pressure, and of the temperatures at which an equilibrium is known.
var (
	limitAir     = fromCarbonation("air pressure")
	limitSoluble = fromCarbonation("temperature")
)

// fromCarbonation returns a row of carbonation's table by its name, looked up
// when it is first asked for.
func fromCarbonation(name string) func() volume.Range {
	return sync.OnceValue(func() volume.Range {
		for _, r := range carbonation.Limits() {
			if r.Name == name {
				return r
			}
		}
		panic("lines: carbonation has no range of the " + name)
	})
}

// Limits returns the package's validity table: the range of every quantity
// that its calculations check, with the reason for its bounds. That of the air
// pressure is in [carbonation.Limits].
func Limits() []Range {
	return []Range{
		limitTubes, limitBore, limitOutside, limitLength, limitWall, limitRoughness, limitCoil, limitRise, limitKegHeight,
		limitFull, limitK, limitHardware, limitHardwareAt, limitRated, limitCalibration, limitTemperature, limitGauge, limitFlow,
		limitContent, limitCrevice, limitStations, limitGlass, limitTime, limitBefore,
	}
}
