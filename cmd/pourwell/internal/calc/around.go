package calc

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
)

// airInputs give the air pressure around gauge and glass. Every calculation
// that it enters has them.
var airInputs = []Input{
	{Name: "elevation", Kind: quantity.Length, Limit: "carbonation.AirAt.elevation", Help: "height above sea level, standard atmosphere; sea level if not given"},
	{Name: "station-pressure", Kind: quantity.Pressure, Limit: "carbonation.Draught.Air", Help: "air pressure as a barometer on the spot reads it"},
	{Name: "sea-level-pressure", Kind: quantity.Pressure, Limit: "carbonation.Pressure.StationAt.p", Help: "air pressure of a weather report, together with --elevation"},
}

// Air returns the air pressure the inputs describe.
func (v *Values) Air() (carbonation.Pressure, error) {
	v.used = true
	elevation := quantity.Metres(v.Or("elevation", 0))
	station, sea := v.Has("station-pressure"), v.Has("sea-level-pressure")
	switch {
	case station && (sea || v.Given("elevation")):
		return carbonation.Pressure{}, &UsageError{
			"--station-pressure is the air pressure on the spot and needs no other",
			"drop --elevation and --sea-level-pressure",
		}
	case station:
		return v.pressure("station-pressure"), nil
	case sea && !v.Has("elevation"):
		return carbonation.Pressure{}, &UsageError{
			"--sea-level-pressure is a weather report's figure and needs the height",
			"add --elevation",
		}
	case sea:
		return v.pressure("sea-level-pressure").StationAt(elevation)
	}
	return carbonation.AirAt(elevation)
}

func (v *Values) pressure(name string) carbonation.Pressure {
	return carbonation.PaA(v.Number(name))
}

// noteUnused adds a note to out if an air pressure was typed that the
// calculation, as it was asked, did not read.
func (v *Values) noteUnused(out *Result) {
	if v.used || v.calc.NoAir {
		return
	}
	for i := range airInputs {
		if v.cells[v.calc.index(airInputs[i].Name)].given {
			out.Note("The air pressure does not enter this calculation.")
			return
		}
	}
}
