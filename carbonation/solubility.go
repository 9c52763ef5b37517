package carbonation

import (
	"fmt"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// ContentAt returns the content of dissolved CO2 that beer b holds at
// equilibrium at temperature t.
//
// p is the partial pressure of CO2 in the gas above the beer, absolute: the
// gauge reading plus the air pressure, times the share of CO2 in the gas.
//
//	c = β K0 M p exp(B p / R T)
//
// Valid from -1.2 °C to 45 °C and from 0 to 1000 kPa; within 1.5 % for
// ordinary beer, 5 % above 8 % ABV, 1 % for water. Outside it, or for an
// invalid argument, ContentAt returns a [*RangeError] and an invalid content.
//
// Special cases: [thermal.Water] has β = 1 exactly; the zero [thermal.Beer]
// has the β of the trade's chart.
//
// Source: [1] Weiss 1974 for K0 and B; β fitted to [2]. Departures: the
// pressure correction of [1] (−0.14 % per atmosphere) is left out.
func ContentAt(t thermal.Temperature, p Pressure, b thermal.Beer) (Content, error) {
	kelvin := t.Kelvin()
	if c := kelvin - iceKelvin; !(limitTemperature.Min <= c && c <= limitTemperature.Max) {
		return Content{}, limitTemperature.Check("carbonation.ContentAt", t.Celsius())
	}
	if !p.valid || p.pascal > 1e3*limitPartial.Max {
		return Content{}, limitPartial.Check("carbonation.ContentAt", p.KPa())
	}
	return Content{lawAt(kelvin, strength(b)).content(p.pascal), true}, nil
}

// PressureFor returns the partial pressure of CO2, absolute, that holds
// content c in beer b at temperature t. It inverts [ContentAt], to 1e-10.
//
// Valid from -1.2 °C to 45 °C and from 0 to 20 volumes as long as the pressure
// stays within 1000 kPa. Outside it, or for an invalid argument, PressureFor
// returns a [*RangeError] and an invalid pressure.
//
// Source: as [ContentAt]; w eʷ = z by Halley's rule from its power series.
func PressureFor(c Content, t thermal.Temperature, b thermal.Beer) (Pressure, error) {
	kelvin := t.Kelvin()
	if c := kelvin - iceKelvin; !(limitTemperature.Min <= c && c <= limitTemperature.Max) {
		return Pressure{}, limitTemperature.Check("carbonation.PressureFor", t.Celsius())
	}
	if !c.valid || c.gramsPerLitre > limitContent.Max*gramsPerLitrePerVolume {
		return Pressure{}, limitContent.Check("carbonation.PressureFor", c.Volumes())
	}
	p := lawAt(kelvin, strength(b)).pressure(c.gramsPerLitre)
	if !(p <= 1e3*limitPartial.Max*(1+1e-10)) { // the round trip of the bound is good to that
		return Pressure{}, limitPartial.Check("carbonation.PressureFor", p/1e3)
	}
	return Pressure{min(p, 1e3*limitPartial.Max), true}, nil
}

// TemperatureFor returns the temperature at which a partial pressure p of CO2,
// absolute, holds content c in beer b. It inverts [ContentAt], to 1e-10 in
// content.
//
// Valid from 0 to 20 volumes and from 0 to 1000 kPa. Outside it, or for an
// invalid argument, TemperatureFor returns a [*RangeError]; if no temperature
// from -1.2 °C to 45 °C is the answer, an error that wraps
// [volume.ErrNoSolution]. The temperature is then invalid.
//
// Source: as [ContentAt]; Newton's rule on ln c, whose slope is analytic.
func TemperatureFor(c Content, p Pressure, b thermal.Beer) (thermal.Temperature, error) {
	const fn = "carbonation.TemperatureFor"
	if err := limitContent.Check(fn, c.Volumes()); err != nil {
		return thermal.Temperature{}, err
	}
	if err := limitPartial.Check(fn, p.KPa()); err != nil {
		return thermal.Temperature{}, err
	}
	s := strength(b)
	kelvin := warmth(c.gramsPerLitre, p.pascal, s)
	if kelvin > 0 {
		return thermal.Kelvin(kelvin), nil
	}
	cold, hot := limitTemperature.Min, limitTemperature.Max
	return thermal.Temperature{}, fmt.Errorf("%s: %w: under %s of CO2 the beer holds from %.3g volumes at %s to %.3g volumes at %s, never %.3g volumes",
		fn, volume.ErrNoSolution, inBoth(unit.Pressure(p.pascal), "absolute"),
		lawAt(hot+iceKelvin, s).content(p.pascal)/gramsPerLitrePerVolume, degrees(hot),
		lawAt(cold+iceKelvin, s).content(p.pascal)/gramsPerLitrePerVolume, degrees(cold), c.Volumes())
}

// inBoth writes a pressure in US and metric units.
func inBoth(p unit.Pressure, reference string) string {
	return fmt.Sprintf("%.3g psi (%.3g kPa) %s", float64(p/PSI), float64(p/KPa), reference)
}

// degrees writes a Celsius temperature on both scales.
func degrees(celsius float64) string {
	return fmt.Sprintf("%.1f °F (%.1f °C)", celsius*9/5+32, celsius)
}
