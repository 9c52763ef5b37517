package carbonation

import (
	"cmp"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
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
	const fn = "carbonation.ContentAt"
	if err := limitTemperature.Check(fn, t.Celsius()); err != nil {
		return Content{}, err
	}
	if err := limitPartial.Check(fn, p.KPa()); err != nil {
		return Content{}, err
	}
	return Content{lawAt(t.Kelvin(), strength(b)).content(p.pascal), true}, nil
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
	const fn = "carbonation.PressureFor"
	if err := limitTemperature.Check(fn, t.Celsius()); err != nil {
		return Pressure{}, err
	}
	return lawAt(t.Kelvin(), strength(b)).hold(fn, c)
}

// hold returns the partial pressure that holds content c, checked for fn: all
// that ask for one ask here.
func (l law) hold(fn string, c Content) (Pressure, error) {
	if err := limitContent.Check(fn, c.Volumes()); err != nil {
		return Pressure{}, err
	}
	const good = 1 + 1e-10 // to which the inverse gives a bound back
	p := l.pressure(c.gramsPerLitre)
	if !(p <= 1e3*limitPartial.Max*good) {
		return Pressure{}, limitPartial.Check(fn, p/1e3)
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
	if err := cmp.Or(limitContent.Check(fn, c.Volumes()), limitPartial.Check(fn, p.KPa())); err != nil {
		return thermal.Temperature{}, err
	}
	s := strength(b)
	kelvin := warmth(c.gramsPerLitre, p.pascal, s)
	if kelvin > 0 {
		return thermal.Kelvin(kelvin), nil
	}
	cold, hot := limitTemperature.Min, limitTemperature.Max
	held := func(celsius float64) float64 {
		return lawAt(celsius+iceKelvin, s).content(p.pascal) / gramsPerLitrePerVolume
	}
	return thermal.Temperature{}, &volume.NoSolutionError{Func: fn, Why: say("under {%v kpa_abs} of CO2 the beer holds from {%v volumes} at {%v c} to {%v volumes} at {%v c}, never {%v volumes}",
		p.KPa(), held(hot), hot, held(cold), cold, c.Volumes())}
}
