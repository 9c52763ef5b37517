package volume

import (
	"cmp"
	"fmt"
	"math"

	"gonum.org/v1/gonum/unit"
)

// Densities in kg/m³ that the counting of weights and floating rests on.
// Water: at 0 °C, IAPWS SR6-08. Beer: a gravity of 1.008, ordinary beer.
// Steel: AISI 304, Incropera & DeWitt, Fundamentals of Heat and Mass Transfer,
// table A.1.
const (
	waterDensity = 999.8
	beerDensity  = 1008
	steelDensity = 7900
)

// hexagonal is the densest packing of equal circles in the plane, π/√12.
const hexagonal = 0.9068996821171089

// A Tub is an open vessel with a flat floor and upright walls in which kegs
// stand in ice and water. Its shape seen from above does not matter.
type Tub struct {
	Capacity unit.Volume // brimful, empty of kegs
	Height   unit.Length // inside, floor to brim
}

// Floor returns the area of the floor in m²: capacity over height.
func (t Tub) Floor() float64 { return float64(t.Capacity) / float64(t.Height) }

// Displaced returns the volume of bath that the vessel pushes aside when it
// stands upright in a bath of that depth. It counts the beer it holds and the
// metal of its shell, spread evenly over its height:
//
//	V = (capacity + tare/ρ_steel) · min(depth, height)/height
//
// The rings at top and bottom are open and flood, so the outside dimensions
// alone would overstate it by about a third.
func (v Vessel) Displaced(depth unit.Length) unit.Volume {
	covered := math.Min(float64(depth)/float64(v.Height), 1)
	return unit.Volume(covered * v.body())
}

// body returns the volume of contents and shell in m³.
func (v Vessel) body() float64 { return float64(v.Capacity) + float64(v.Tare)/steelDensity }

// FloatsBelow returns the share of fill, 0 to 1, below which the vessel lifts
// off the floor of a bath of that depth and floats, 0 if it stands even when
// empty. A floating keg tips, so weigh it down or lower the bath.
//
//	fill = (ρ_water V_displaced − tare) / (ρ_beer capacity)
//
// The beer has a gravity of 1.008; coupler and hose are not counted, and steady
// the keg by a few per cent.
func (v Vessel) FloatsBelow(depth unit.Length) float64 {
	lift := waterDensity*float64(v.Displaced(depth)) - float64(v.Tare)
	return math.Max(0, math.Min(lift/(beerDensity*float64(v.Capacity)), 1))
}

// Holds returns how much water, with ice counted as the water it melts to, it
// takes to fill the tub to that depth around kegs standing upright in it.
// Floating ice displaces its own mass, so the level stays while it melts.
//
//	V = floor · depth − kegs · V_displaced
//
// Valid for depths from 0 to the height of the tub and for kegs that can stand
// on its floor; otherwise it returns a [*RangeError], or [ErrNoSolution] with
// the numbers that make it so, and NaN.
func (t Tub) Holds(depth unit.Length, keg Vessel, kegs int) (unit.Volume, error) {
	const fn = "volume.Tub.Holds"
	if err := t.check(fn, keg, kegs); err != nil {
		return unit.Volume(math.NaN()), err
	}
	r := limitDepth
	r.Max, r.Source = float64(t.Height), "the height of the tub"
	if err := r.Check(fn, float64(depth)); err != nil {
		return unit.Volume(math.NaN()), err
	}
	return t.holds(depth, keg, kegs), nil
}

func (t Tub) holds(depth unit.Length, keg Vessel, kegs int) unit.Volume {
	return unit.Volume(t.Floor()*float64(depth)) - unit.Volume(kegs)*keg.Displaced(depth)
}

// Depth returns how high a bath stands around kegs standing upright in the
// tub. bath is the volume of water, with ice counted as the water it melts to:
// a tub of floating ice keeps its level while the ice melts. It is the inverse
// of [Tub.Holds].
//
// The kegs are taken to stand: ask [Vessel.FloatsBelow] whether they do.
//
// A bath that runs over the brim, or kegs that cannot stand on the floor, give
// [ErrNoSolution] with the numbers that make it so, and NaN; a value outside
// its range gives a [*RangeError] and NaN.
func (t Tub) Depth(bath unit.Volume, keg Vessel, kegs int) (unit.Length, error) {
	const fn = "volume.Tub.Depth"
	if err := cmp.Or(t.check(fn, keg, kegs), limitBath.Check(fn, float64(bath/Litre))); err != nil {
		return unit.Length(math.NaN()), err
	}
	if most := t.holds(t.Height, keg, kegs); bath > most*(1+1e-12) {
		return unit.Length(math.NaN()), &NoSolutionError{
			Func: fn, Why: say("the tub runs over: around %s it takes {%.6g l}, and {%.6g l} were given", several(kegs, "keg"), float64(most/Litre), float64(bath/Litre)),
			Key: "bath_l", Needed: float64(most / Litre), Given: float64(bath / Litre),
		}
	}
	// Below the tops of the kegs the bath fills the floor between them, above
	// them the whole floor.
	between := t.Floor()
	if kegs > 0 {
		between -= float64(kegs) * keg.body() / float64(keg.Height)
	}
	depth := float64(bath) / between
	if kegs > 0 && depth > float64(keg.Height) {
		depth = (float64(bath) + float64(kegs)*keg.body()) / t.Floor()
	}
	return unit.Length(math.Min(depth, float64(t.Height))), nil
}

// check refuses a tub or keg without size and kegs that cannot stand on the
// floor: no shape takes more than the densest packing of circles.
func (t Tub) check(fn string, keg Vessel, kegs int) error {
	if err := cmp.Or(
		limitTub.Check(fn, float64(t.Capacity/Litre)),
		limitTubHeight.Check(fn, float64(t.Height)),
		limitTubKegs.Check(fn, float64(kegs)),
	); err != nil || kegs == 0 {
		return err
	}
	if err := keg.check(fn); err != nil {
		return err
	}
	foot := math.Pi / 4 * float64(keg.Diameter) * float64(keg.Diameter)
	room := t.Floor()
	if kegs > 1 {
		room *= hexagonal
	}
	if float64(kegs)*math.Max(foot, keg.body()/float64(keg.Height)) > room {
		return &NoSolutionError{Func: fn, Why: say("%s, each {%.5g mm} across, cannot stand on the floor of a tub of {%.6g l} that is {%.4g m} high",
			several(kegs, "keg"), float64(keg.Diameter/Millimetre), float64(t.Capacity/Litre), float64(t.Height))}
	}
	return nil
}

// several writes a number of things: "1 keg", "2 kegs".
func several(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
