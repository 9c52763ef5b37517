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

// check refuses a vessel without the dimensions that a calculation needs.
func (v Vessel) check(fn string) error {
	if err := limitCapacity.Check(fn, 1e3*float64(v.Capacity)); err != nil {
		return err
	}
	if err := limitHeight.Check(fn, float64(v.Height)); err != nil {
		return err
	}
	if err := limitDiameter.Check(fn, float64(v.Diameter)); err != nil {
		return err
	}
	return limitTare.Check(fn, float64(v.Tare))
}
