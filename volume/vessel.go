package volume

import "gonum.org/v1/gonum/unit"

// A Vessel is a keg, cask, bottle or growler. Height and Diameter are outside
// dimensions without coupler or valve.
type Vessel struct {
	Name     string        // trade name, for example "us-sixth"
	Capacity unit.Volume   // brimful
	Height   unit.Length   // outside
	Diameter unit.Length   // outside, at its widest
	Tare     unit.Mass     // empty
	Rated    unit.Pressure // gauge pressure a standard allows, 0 where none was found; the stamp on the vessel binds
	Source   string        // where the dimensions come from
}
