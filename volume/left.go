package volume

import (
	"cmp"
	"fmt"
	"math"

	"gonum.org/v1/gonum/unit"
)

// Remains is what is left in a keg or a gas cylinder.
type Remains struct {
	Mass   unit.Mass   // of the beer or the gas
	Volume unit.Volume // of the beer; 0 for a gas
	Share  float64     // of a full one
	Count  int         // whole pours, or whole kegs that the gas still serves

	weight, tare, step, low, high float64
	unit                          string
}

// How sure a weighing is: a kitchen or luggage scale reads to a quarter of a
// kilogram, and a tare from a table is as sure as its status says. Our
// assumption.
const (
	scaleReads           = 0.25
	unsureTare, sureTare = 0.1, 0.02
)

// Left returns how much beer is in the keg when it weighs so much on a scale,
// coupler and hose taken off, and how many pours it still gives.
//
//	volume = (weight − tare) / (gravity · 998.2 kg/m³)
//	pours = (volume − heel · capacity − line) · (1 − waste) / liquid
//
// gravity is that of the finished beer, about 1.010. The gas above the beer
// weighs up to 7 g for each litre of empty space and is not counted: in an
// empty sixth barrel it passes for a small glass. Tare as stamped on the keg, or
// as weighed empty, replaces that of the table, which may be a kilogram off.
//
// Valid from an empty keg to a full one, with half a kilogram more for the
// scale, and for gravities from 0.98 to 1.2; outside it Left returns a
// [*RangeError] and NaN.
func (p Pour) Left(weight unit.Mass, gravity float64) (Remains, error) {
	const fn = "volume.Pour.Left"
	y, err := p.PerKeg()
	density := gravity * beerWater
	full := density * float64(p.Keg.Capacity)
	if err := cmp.Or(
		err,
		p.Keg.check(fn),
		limitGravity.Check(fn, gravity),
		weighed(fn, "keg", "", float64(weight), float64(p.Keg.Tare), full),
	); err != nil {
		return noRemains(), err
	}
	r := Remains{weight: float64(weight), tare: float64(p.Keg.Tare), step: density, unit: "pour"}
	r.Mass = unit.Mass(math.Max(0, math.Min(r.weight-r.tare, full)))
	pours := func(mass float64) float64 {
		drawn := mass/density - p.Heel*float64(p.Keg.Capacity) - float64(p.Line)
		return whole(math.Max(0, drawn) * (1 - p.Waste) / float64(y.Liquid))
	}
	r.Volume = unit.Volume(float64(r.Mass) / density)
	r.Share = float64(r.Volume / p.Keg.Capacity)
	r.Count = int(pours(float64(r.Mass)))
	off := unsure(p.Keg.Weighed, r.tare)
	r.low, r.high = 1e3*math.Max(0, float64(r.Mass)-off)/density, 1e3*math.Min(full, float64(r.Mass)+off)/density
	return r, nil
}

// beerWater is the density of water at 20 °C in kg/m³, to which gravities
// refer. Source: OIML R 22.
const beerWater = 998.2012300

// A Cylinder is a cylinder of CO2 or mixed gas.
type Cylinder struct {
	Charge  unit.Mass // of gas, when full
	Tare    unit.Mass // empty, as stamped on it (TW or TARE), without regulator
	Weighed Status    // of the tare: Published if read off the stamp
}

// Left returns how much gas is in the cylinder when it weighs so much, the
// regulator taken off, and how many kegs of which each takes perKeg it still
// serves; perKeg 0 leaves Count at 0. The high-pressure gauge tells nothing
// while liquid CO2 is left: it shows the temperature. Weigh.
//
//	gas = weight − tare
//
// Valid from an empty cylinder to a full one, with half a kilogram more for the
// scale; outside it Left returns a [*RangeError] and NaN. A cylinder that
// weighs more than full may be overfilled: do not use it, let a licensed filler
// vent it.
func (c Cylinder) Left(weight, perKeg unit.Mass) (Remains, error) {
	const fn = "volume.Cylinder.Left"
	if err := cmp.Or(
		limitCharge.Check(fn, float64(c.Charge)),
		limitCylinder.Check(fn, float64(c.Tare)),
		limitPerKeg.Check(fn, float64(perKeg)),
		weighed(fn, "cylinder", "; do not use one that is overfilled", float64(weight), float64(c.Tare), float64(c.Charge)),
	); err != nil {
		return noRemains(), err
	}
	r := Remains{weight: float64(weight), tare: float64(c.Tare), step: float64(perKeg), unit: "keg"}
	r.Mass = unit.Mass(math.Max(0, math.Min(r.weight-r.tare, float64(c.Charge))))
	r.Share = float64(r.Mass / c.Charge)
	if perKeg > 0 {
		r.Count = int(math.Min(whole(float64(r.Mass/perKeg)), 1e6))
	}
	off := unsure(c.Weighed, r.tare)
	r.low, r.high = math.Max(0, float64(r.Mass)-off), math.Min(float64(c.Charge), float64(r.Mass)+off)
	return r, nil
}

// UsualTare returns the cylinder with the usual tare for its charge: steel at 2.5
// and 5 lb (6.5 and 12.5 lb empty; common practice, no source), aluminium at 10
// and 20 lb (14.5 and 25 lb; from memory), half as heavy again as its charge
// otherwise. An aluminium 5 lb cylinder weighs 7.5 to 8 lb empty: the stamp
// binds, so read it and set Tare.
func (c Cylinder) UsualTare() Cylinder {
	for _, u := range [...]struct {
		charge, tare unit.Mass
		status       Status
	}{
		{2.5 * Pound, 6.5 * Pound, Practice}, {5 * Pound, 12.5 * Pound, Practice},
		{10 * Pound, 14.5 * Pound, Memory}, {20 * Pound, 25 * Pound, Memory}, {50 * Pound, 115 * Pound, Memory},
	} {
		if math.Abs(float64(c.Charge/u.charge)-1) <= sameSize {
			return Cylinder{c.Charge, u.tare, u.status}
		}
	}
	return Cylinder{c.Charge, 1.5 * c.Charge, Estimate}
}

// weighed refuses a weight below the tare or above full, in either direction by
// more than a scale may be off.
func weighed(fn, what, beware string, weight, tare, full float64) error {
	const slack = 0.5
	r := limitWeight
	r.Name, r.Min, r.Max = "weight of the "+what, math.Max(0, tare-slack), tare+full+slack
	r.Source = fmt.Sprintf("from its tare to full; check the tare, taken as {%.5g kg}%s", tare, beware)
	return cmp.Or(limitWeight.Check(fn, weight), r.Check(fn, weight))
}

// unsure returns by how many kilograms a net weight may be off.
func unsure(s Status, tare float64) float64 {
	if s == Published || s == Law {
		return scaleReads + sureTare*tare
	}
	return scaleReads + unsureTare*tare
}

func noRemains() Remains {
	nan := math.NaN()
	return Remains{Mass: unit.Mass(nan), Volume: unit.Volume(nan), Share: nan}
}

// Steps returns the working.
func (r Remains) Steps() []Step {
	steps := []Step{
		{"weight on the scale", "m", r.weight, "kg", "given"},
		{"tare", "m0", r.tare, "kg", "the stamp, or the table"},
		{"left", "m − m0", float64(r.Mass), "kg", "not below 0 nor above full"},
	}
	if r.unit == "pour" {
		return append(steps,
			Step{"density of the beer", "ρ", r.step, "kg_per_m3", "gravity · 998.2 kg/m³"},
			Step{"beer left", "V", float64(r.Volume / Litre), "l", "(m − m0)/ρ"},
			Step{"whole pours", "n", float64(r.Count), "", "(V − heel − line)(1 − waste)/liquid, rounded down"})
	}
	return append(steps,
		Step{"gas for each keg", "mk", r.step, "kg", "given"},
		Step{"whole kegs", "n", float64(r.Count), "", "(m − m0)/mk, rounded down"})
}

// Band returns how much may be left, by the scale and the tare.
func (r Remains) Band() Band {
	const source = "scale to 0.25 kg; tare to 2 % from a stamp, to 10 % from a table (our assumption)"
	if r.unit == "pour" {
		return Band{"volume", r.low, r.high, "l", source}
	}
	return Band{"gas", r.low, r.high, "kg", source}
}
