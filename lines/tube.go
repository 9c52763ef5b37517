package lines

import (
	"cmp"
	"math"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// A Tube is a piece of tubing of one bore.
type Tube struct {
	Bore      unit.Length // inside diameter
	Length    unit.Length // along the tube; 0 where it is to be found
	Wall      unit.Length // thickness of the wall, 0 if not known
	Material  string      // vinyl, barrier, stainless, polyethylene, supply or copper; empty if not known
	Roughness unit.Length // height of the roughness inside; 0 for smooth, as plastic and drawn steel are
	Coil      unit.Length // mean diameter of the winding; 0 for a straight tube
}

// TubeOfOD returns the smooth straight tube of outside diameter od, a wall of
// thickness wall, and a length. Steel tubing is sold by its outside diameter,
// plastic by its bore; the friction goes with the fifth power of the bore, so
// an outside diameter is refused without a wall.
//
// It returns a [*RangeError] outside the validity table, and if wall is not
// positive or leaves no bore.
func TubeOfOD(od, wall, length unit.Length) (Tube, error) {
	const fn = "lines.TubeOfOD"
	if err := limitOutside.Check(fn, float64(od/Millimetre)); err != nil {
		return Tube{}, err
	}
	within := limitWall
	within.Min, within.Max = 0.01, min(limitWall.Max, float64(od/Millimetre)/2)
	within.Source = "an outside diameter needs the wall to give the bore"
	if err := within.Check(fn, float64(wall/Millimetre)); err != nil {
		return Tube{}, err
	}
	t := Tube{Bore: od - 2*wall, Length: length, Wall: wall}
	if err := t.check(fn); err != nil {
		return Tube{}, err
	}
	return t, nil
}

// A material is what the conduction of heat through a tube goes by.
type material struct {
	name         string
	conductivity thermal.Conductivity
	wall         unit.Length // usual thickness
}

// materials are those a [Tube] may be of, vinyl first: it stands for an unknown
// one. Conductivities: EN 12524 for plastics (polyethylene of high density
// between 0.33 and 0.50), Incropera, Fundamentals of Heat and Mass Transfer,
// table A.1 for metals. Walls: common practice, no source.
var materials = [...]material{
	{"vinyl", 0.14, Inch / 8},
	{"barrier", 0.33, Inch / 16},
	{"stainless", 14.9, 0.7 * Millimetre},
	{"polyethylene", 0.33, Inch / 16},
	{"supply", 0.33, Inch / 16},
	{"copper", 401, 0.8 * Millimetre},
}

// materialOf returns the material called name, vinyl for an unknown one.
func materialOf(name string) material {
	for _, m := range materials {
		if m.name == name {
			return m
		}
	}
	return materials[0]
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

// Check returns the [*RangeError] that every calculation with the tube would
// give, nil if there is none.
func (t Tube) Check() error { return t.check("lines.Tube.Check") }

// check returns the first of the tube's errors on behalf of fn.
func (t Tube) check(fn string) error {
	if err := cmp.Or(
		limitBore.Check(fn, float64(t.Bore/Millimetre)),
		limitLength.Check(fn, float64(t.Length)),
		limitWall.Check(fn, float64(t.Wall/Millimetre)),
		limitRoughness.Check(fn, float64(t.Roughness/t.Bore)),
	); err != nil || t.Coil == 0 {
		return err
	}
	return limitCoil.Check(fn, float64(t.Coil/t.Bore))
}
