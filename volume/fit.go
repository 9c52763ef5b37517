package volume

import (
	"cmp"
	"fmt"
	"math"

	"gonum.org/v1/gonum/unit"
)

// BaggedIce is the usual packing for [Tub.Fit]: bagged cubes leave about two
// fifths of the space between them, as random packings of cubes and spheres do;
// from memory.
const BaggedIce = 0.6

// Ice and lifting. Ice: density at 0 °C, IAPWS R10-06 as recalled.
const (
	iceDensity                        = 916.7
	loosestIce, tightestIce           = 0.5, 0.65 // packings
	onePerson               unit.Mass = 23        // load constant, 51 lb
)

// roundTub is the least share of a round floor that two to six equal kegs side
// by side cover, that of two: half. A square floor is covered to π/4 by one.
// R. L. Graham et al., Discrete Mathematics 181 (1998) 139; from memory.
const roundTub = 0.5

// A Fit is how kegs stand in a tub that is filled with ice and topped up with
// water.
type Fit struct {
	Tub  Tub
	Keg  Vessel
	Kegs int

	Ice      unit.Mass   // that fills the space around the kegs
	Water    unit.Volume // that fills the gaps until the ice is about to float
	Level    unit.Length // of the water, with the ice or when it has melted
	Top      unit.Length // of the ice
	Covered  float64     // share of the keg's height below the water
	Floats   float64     // share of fill below which a keg floats
	Feet     float64     // share of the floor that the kegs stand on
	Tight    bool        // whether they stand there depends on the tub's shape
	Lift     unit.Mass   // one full keg
	TwoLift  bool        // too heavy for one person
	Together unit.Mass   // kegs, ice and water, without the tub

	packing float64
	space   unit.Volume
}

// Fit returns how much ice and water the tub takes around kegs standing
// upright, and what is covered, floats and is too heavy. packing is the share
// of the space that the pieces of ice fill, [BaggedIce] for bagged cubes.
//
//	top = min(0.95 height, keg height)     space = floor · top − kegs · V_displaced
//	ice = packing · ρ_ice · space          water = (1 − packing) · ρ_ice/ρ_water · space
//	level = ρ_ice/ρ_water · top
//
// That is the most ice the space takes, with the most water that does not lift
// it from the floor; the level of the water stays while the ice melts, as long
// as none is drained. A twentieth of the tub's height is left free, and the tops
// of the kegs stay out. [Vessel.FloatsBelow] gives Floats at that level.
//
// TwoLift is set above 23 kg, the most that the revised NIOSH lifting equation
// allows in the best posture (T. R. Waters, V. Putz-Anderson, A. Garg,
// Applications Manual, DHHS (NIOSH) 94-110, 1994; from memory). Over the rim of
// a tub the posture is not the best: two people, or a trolley and a ramp. Local
// rules for lifting come first.
//
// Tight is set where one keg covers more than π/4 of the floor, which a square
// would have, or several more than half, which a round tub takes of two: try
// before the day.
//
// Valid for packings from 0.3 to 0.9; errors as [Tub.Holds].
func (t Tub) Fit(keg Vessel, kegs int, packing float64) (Fit, error) {
	const fn = "volume.Tub.Fit"
	nan := math.NaN()
	f := Fit{Tub: t, Keg: keg, Kegs: kegs, packing: packing}
	if err := cmp.Or(t.check(fn, keg, kegs), limitPacking.Check(fn, packing), keg.check(fn)); err != nil {
		f.Ice, f.Water, f.Level, f.Top = unit.Mass(nan), unit.Volume(nan), unit.Length(nan), unit.Length(nan)
		f.Covered, f.Floats, f.Feet, f.Lift, f.Together = nan, nan, nan, unit.Mass(nan), unit.Mass(nan)
		return f, err
	}
	f.Top = unit.Length(math.Min(0.95*float64(t.Height), float64(keg.Height)))
	f.space = t.holds(f.Top, keg, kegs)
	f.Ice = unit.Mass(packing * iceDensity * float64(f.space))
	f.Water = unit.Volume((1-packing)*iceDensity/waterDensity) * f.space
	f.Level = iceDensity / waterDensity * f.Top
	f.Covered = math.Min(float64(f.Level/keg.Height), 1)
	f.Floats = keg.FloatsBelow(f.Level)
	f.Feet = float64(kegs) * math.Pi / 4 * float64(keg.Diameter*keg.Diameter) / t.Floor()
	f.Tight = kegs > 1 && f.Feet > roundTub || kegs == 1 && f.Feet > math.Pi/4
	f.Lift = keg.Tare + unit.Mass(beerDensity*float64(keg.Capacity))
	f.TwoLift = f.Lift > onePerson
	f.Together = unit.Mass(kegs)*f.Lift + f.Ice + unit.Mass(waterDensity*float64(f.Water))
	return f, nil
}

// Steps returns the working.
func (f Fit) Steps() []Step {
	return []Step{
		{"floor of the tub", "A", f.Tub.Floor(), "m2", "capacity / height"},
		{"top of the ice", "h", float64(f.Top / Millimetre), "mm", "min(0.95 tub height, keg height)"},
		{"one keg displaces", "Vk", float64(f.Keg.Displaced(f.Top) / Litre), "l", "(capacity + tare/7900 kg/m³) · min(h, height)/height"},
		{"space around the kegs", "V", float64(f.space / Litre), "l", "A h − kegs Vk"},
		{"packing of the ice", "φ", f.packing, "", "given"},
		{"ice", "mi", float64(f.Ice), "kg", "φ · 916.7 kg/m³ · V"},
		{"water", "Vw", float64(f.Water / Litre), "l", "(1 − φ) · 916.7/999.8 · V"},
		{"level of the water", "hw", float64(f.Level / Millimetre), "mm", "916.7/999.8 · h"},
		{"one keg displaces at that level", "Vd", float64(f.Keg.Displaced(f.Level) / Litre), "l", "as Vk"},
		{"floats below this share of fill", "f", f.Floats, "", "(999.8 Vd − tare)/(1008 capacity)"},
		{"one full keg", "m", float64(f.Lift), "kg", "tare + 1008 kg/m³ · capacity"},
		{"most for one person", "LC", float64(onePerson), "kg", "load constant, DHHS (NIOSH) 94-110, from memory"},
	}
}

// Band returns the ice between a loose and a tight packing, in the proportion
// that the packing of bagged ice has to them.
func (f Fit) Band() Band {
	full, given := float64(f.Ice)/f.packing, f.packing/BaggedIce
	loose, tight := given*loosestIce, min(1, given*tightestIce)
	return Band{"ice", full * loose, full * tight, "kg", fmt.Sprintf("packings of %.3g to %.3g", loose, tight)}
}
