package lines

import "example.com/pourwell/volume"

// The package's validity table: each range is checked by the calculations,
// listed by Limits and printed in the package comment.
var (
	limitTubes       = volume.Range{Name: "number of tubes", Min: 0, Max: maxTubes, Source: "a result holds its tubes without allocating"}
	limitBore        = volume.Range{Name: "bore", Min: 1, Max: 50, Suffix: "mm", Source: "beer tubing is 1/8 to 5/8 in (3 to 16 mm)"}
	limitLength      = volume.Range{Name: "length", Min: 0, Max: 300, Suffix: "m", Source: "longest lines of the trade, with room to spare"}
	limitWall        = volume.Range{Name: "wall", Min: 0, Max: 20, Suffix: "mm", Source: "thickness of tubing, not its outside diameter"}
	limitRoughness   = volume.Range{Name: "roughness over bore", Min: 0, Max: 0.05, Source: "fitted range of Churchill's formula"}
	limitCoil        = volume.Range{Name: "coil diameter over bore", Min: 5, Max: 200, Source: "data of White and of Ito; a wider coil counts as straight"}
	limitRise        = volume.Range{Name: "rise", Min: -30, Max: 30, Suffix: "m", Source: "a building's height"}
	limitKegHeight   = volume.Range{Name: "keg height", Min: 0, Max: 2, Suffix: "m", Source: "depth of beer in a full vessel"}
	limitFull        = volume.Range{Name: "fullness", Min: 0, Max: 1, Source: "a share"}
	limitK           = volume.Range{Name: "loss coefficient", Min: 0, Max: 1000, Source: "a ball valve two thirds closed has 210"}
	limitHardware    = volume.Range{Name: "hardware loss", Min: 0, Max: 500, Suffix: "kpa", Source: "loss of coupler, shank and tap"}
	limitHardwareAt  = volume.Range{Name: "flow of the hardware loss", Min: 0.01, Max: 60, Suffix: "l_per_min", Source: "the flow at which the loss was read"}
	limitCalibration = volume.Range{Name: "calibration factor", Min: 0.2, Max: 5, Source: "beyond it something else is wrong than friction"}
	limitTemperature = volume.Range{Name: "temperature", Min: -5, Max: 40, Suffix: "c", Source: "models of the beer's density and viscosity"}
	limitGauge       = volume.Range{Name: "gauge pressure", Min: -101, Max: 700, Suffix: "kpa", Source: "from vacuum to the highest rating of a keg"}
	limitContent     = volume.Range{Name: "content", Min: 0, Max: 6, Suffix: "volumes", Source: "from flat beer to more than a keg is rated for"}
	limitAir         = volume.Range{Name: "air pressure", Min: 50, Max: 110, Suffix: "kpa", Source: "inhabited heights"}
	limitCrevice     = volume.Range{Name: "crevice radius", Min: 0.5, Max: 100, Suffix: "um", Source: "from polished steel to a worn barb"}
	limitStations    = volume.Range{Name: "number of stations", Min: 2, Max: 2000, Source: "of a profile"}
	limitTime        = volume.Range{Name: "time for a glass", Min: 0.5, Max: 3600, Suffix: "s", Source: "a glass that somebody waited for"}
	limitFlow        = volume.Range{Name: "flow", Min: 0, Max: 60, Suffix: "l_per_min", Source: "some twenty times a usual pour"}
)

// Limits returns the package's validity table: the range of every quantity
// that its calculations check, with the reason for its bounds.
func Limits() []Range {
	return []Range{
		limitTubes, limitBore, limitLength, limitWall, limitRoughness, limitCoil, limitRise, limitKegHeight,
		limitFull, limitK, limitHardware, limitHardwareAt, limitCalibration, limitTemperature, limitGauge, limitFlow,
		limitContent, limitAir, limitCrevice, limitStations, limitTime,
	}
}
