package carbonation

import "example.com/pourwell/volume"

// A RangeError reports an argument outside the range in which a calculation
// holds; see [volume.RangeError].
type RangeError = volume.RangeError

// The validity table of the package. Each row is used by the checks of the
// functions that take the quantity, and printed in the documentation.
var (
	limitTemperature = volume.Range{Name: "temperature", Min: -1.2, Max: 45, Unit: "°C", Source: "fitted range of [1], to the coldest row of [2]"}
	limitPartial     = volume.Range{Name: "CO2 pressure", Min: 0, Max: 1000, Unit: "kPa abs", Source: "Henry's law [5] and the virial fugacity hold"}
	limitContent     = volume.Range{Name: "content", Min: 0, Max: 20, Unit: "volumes", Source: "water near freezing at 1 MPa holds 17"}
	limitAbsolute    = volume.Range{Name: "absolute pressure", Min: 0, Max: 1000, Unit: "kPa abs", Source: "far above the rating of any keg"}
	limitAir         = volume.Range{Name: "air pressure", Min: 45, Max: 110, Unit: "kPa abs", Source: "weather at inhabited places"}
	limitSeaLevel    = volume.Range{Name: "sea-level pressure", Min: 87, Max: 110, Unit: "kPa abs", Source: "lowest and highest ever recorded, from memory"}
	limitElevation   = volume.Range{Name: "elevation", Min: -500, Max: 6000, Unit: "m", Source: "inhabited places"}
	limitShare       = volume.Range{Name: "CO2 share", Min: 0, Max: 1, Source: "a share of the gas"}
)

// Limits returns the validity table of the package: the ranges in which its
// calculations hold, bounds included.
func Limits() []volume.Range {
	return []volume.Range{
		limitTemperature, limitPartial, limitContent, limitAbsolute, limitAir, limitSeaLevel, limitElevation, limitShare,
	}
}
