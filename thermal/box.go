package thermal

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/internal/water"
	"gonum.org/v1/gonum/unit"
)

// Melts returns the ice that a box of conductance u melts in air of so many
// degrees above 0 °C in d, beer apart:
//
//	m = UA (T_air − 0 °C) d / L
//
// It is [MeltedIce] the other way round. Air below 0 °C melts none. Valid for
// a conductance from 0 to 1000 W/K, the air of [Surroundings] and up to 30
// days; outside it Melts returns a [*RangeError] and NaN.
//
// Source: M. Shawyer and A. F. Medina Pizzali, The use of ice on small fishing
// vessels, FAO Fisheries Technical Paper 436 (2003), chapter 7; latent heat
// IAPWS-06.
func (u Conductance) Melts(air Temperature, d time.Duration) (unit.Mass, error) {
	const fn = "thermal.Conductance.Melts"
	if err := cmp.Or(limitBoxUA.Check(fn, float64(u)), limitAir.Check(fn, air.Celsius()), limitDuration.Check(fn, d.Hours())); err != nil {
		return unit.Mass(math.NaN()), err
	}
	return unit.Mass(float64(u) * max(0, air.Celsius()) * d.Seconds() / water.LatentHeat), nil
}

// meltBand is by which share ice and water, weighed wet, are known.
const meltBand = 0.10

// MeltedIce returns the conductance of a box in which ice melted while water
// stood in it: what was left is weighed, or the water that ran off.
//
//	UA = m L / (T_air t)
//
// The box's inside counts as 0 °C throughout. The uncertainty is 10 %, as far
// as ice and water, weighed wet, are usually known.
//
// Valid for 0.1 to 500 kg, air from 5 to 60 °C and up to 30 days; outside it
// MeltedIce returns a [*RangeError] and NaN.
//
// Source: the method of FAO Fisheries Technical Paper 436 (2003) chapter 7;
// latent heat IAPWS-06.
func MeltedIce(melted unit.Mass, air Temperature, during time.Duration) (Calibrated, error) {
	const fn = "thermal.MeltedIce"
	if err := cmp.Or(limitMelted.Check(fn, float64(melted)), limitMeltAir.Check(fn, air.Celsius()), limitSpan.Check(fn, during.Seconds())); err != nil {
		return noCalibrated(), err
	}
	ua := float64(melted) * water.LatentHeat / (air.Celsius() * during.Seconds())
	return Calibrated{
		UA: Conductance(ua), Uncertainty: Conductance(meltBand * ua),
		air: air.Celsius(), melted: float64(melted), during: during.Seconds(),
	}, nil
}
