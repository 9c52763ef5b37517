package lines

import (
	"math"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Tube is a piece of tubing of one bore.
type Tube struct {
	Bore      unit.Length // inside diameter
	Length    unit.Length // along the tube; 0 where it is to be found
	Wall      unit.Length // thickness of the wall, 0 if not known
	Material  string      // one of [Materials], or empty if not known
	Roughness unit.Length // height of the roughness inside; 0 for smooth, as plastic and drawn steel are
	Coil      unit.Length // mean diameter of the winding; 0 for a straight tube
}

// TubeOfOD returns the smooth straight tube of outside diameter od, a wall of
// thickness wall, and a length. Steel tubing is sold by its outside diameter,
// plastic by its bore; the friction goes with the fifth power of the bore, so
// an outside diameter is refused without a wall.
//
// It returns a [*RangeError] if wall is not positive or leaves no bore.
func TubeOfOD(od, wall, length unit.Length) (Tube, error) {
	least := volume.Range{
		Name: "wall", Min: 0.01, Max: float64(od/Millimetre) / 2, Unit: "mm",
		Source: "an outside diameter needs the wall to give the bore",
	}
	if err := least.Check("lines.TubeOfOD", float64(wall/Millimetre)); err != nil {
		return Tube{}, err
	}
	t := Tube{Bore: od - 2*wall, Length: length, Wall: wall}
	if err := t.check("lines.TubeOfOD"); err != nil {
		return Tube{}, err
	}
	return t, nil
}

// Materials lists the names a [Tube] may bear: the trade's table of
// restriction and the conduction of heat through the wall go by them.
func Materials() []string {
	return []string{"vinyl", "barrier", "stainless", "polyethylene", "supply", "copper"}
}

// Volume returns what the tube holds.
func (t Tube) Volume() unit.Volume {
	return unit.Volume(math.Pi / 4 * float64(t.Bore*t.Bore*t.Length))
}

// Turns returns the number of turns of a coil, 0 for a straight tube.
func (t Tube) Turns() float64 {
	if t.Coil == 0 {
		return 0
	}
	return float64(t.Length / (math.Pi * t.Coil))
}

// check returns the first of the tube's errors on behalf of fn.
func (t Tube) check(fn string) error {
	if err := limitBore.Check(fn, float64(t.Bore/Millimetre)); err != nil {
		return err
	}
	if err := limitLength.Check(fn, float64(t.Length)); err != nil {
		return err
	}
	if err := limitWall.Check(fn, float64(t.Wall/Millimetre)); err != nil {
		return err
	}
	if err := limitRoughness.Check(fn, float64(t.Roughness/t.Bore)); err != nil {
		return err
	}
	if t.Coil != 0 {
		return limitCoil.Check(fn, float64(t.Coil/t.Bore))
	}
	return nil
}
