package thermal

import (
	"math"
	"time"

	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

var limitBoxUA = volume.Range{Name: "UA of a box", Min: 0, Max: 1000, Suffix: "w_per_k", Source: "from a good ice chest (0.5) to an open trough"}

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
	for _, c := range [...]struct {
		limit volume.Range
		value float64
	}{{limitBoxUA, float64(u)}, {limitAir, air.Celsius()}, {limitDuration, d.Hours()}} {
		if err := c.limit.Check(fn, c.value); err != nil {
			return unit.Mass(math.NaN()), err
		}
	}
	return unit.Mass(float64(u) * max(0, air.Celsius()) * d.Seconds() / water.LatentHeat), nil
}
