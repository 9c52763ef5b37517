package carbonation

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Leak is what a fall of the gauge with the cylinder closed tells: the answer
// of [Supply.LeakTest].
type Leak struct {
	Rate      float64       // g/h
	Empty     time.Duration // until a full cylinder of the supply is used up by it
	PerDegree unit.Pressure // by which cooling of the gas by 1 K alone would lower the gauge

	supply Supply
	gas    unit.Volume
	fall   unit.Pressure
	over   time.Duration
	before float64 // g/L
	after  float64
}

// LeakTest returns the leak that a fall of the gauge shows while the cylinder
// is closed. The gas volume is that of hoses and headspaces which the gauge
// sees; the pressure before is s.Gauge, the temperature s.Temperature.
//
//	rate = V (ρ(p) − ρ(p − Δp)) / t
//
// Close the kegs off: beer gives CO2 up as the pressure falls and hides a leak.
// Cooling by 1 K looks like a leak of PerDegree.
//
// Outside the ranges of [Limits] or for an invalid argument LeakTest returns a
// [*RangeError] and a Leak of NaN; if the leak is too small to empty a cylinder
// within a century, an error that wraps [volume.ErrNever].
//
// Source: balance of matter with the virial equation, B of [1].
func (s Supply) LeakTest(gas unit.Volume, fall unit.Pressure, over time.Duration) (Leak, error) {
	const fn = "carbonation.Supply.LeakTest"
	none := Leak{Rate: math.NaN(), PerDegree: unit.Pressure(math.NaN())}
	drop := limitFall
	drop.Name, drop.Max = "pressure lost", s.Gauge.KPa()
	err := cmp.Or(
		s.checkGas(fn), limitGas.Check(fn, float64(gas/volume.Litre)),
		limitFall.Check(fn, float64(fall/KPa)), drop.Check(fn, float64(fall/KPa)), limitTest.Check(fn, over.Seconds()),
	)
	if err != nil {
		return none, err
	}
	kelvin, absolute := s.Temperature.Kelvin(), s.Gauge.above+s.Air.pascal
	l := Leak{supply: s, gas: gas, fall: fall, over: over, before: gasDensity(kelvin, absolute), after: gasDensity(kelvin, absolute-float64(fall))}
	l.PerDegree = unit.Pressure(absolute / kelvin)
	kgPerSecond := float64(gas) * (l.before - l.after) / over.Seconds()
	l.Rate = kgPerSecond * 1e3 * 3600
	if fall == 0 {
		return none, &volume.NeverError{Func: fn, Why: "the gauge did not fall, so that it shows no leak to empty the cylinder"}
	}
	seconds := s.usable() / kgPerSecond
	const century = 100 * 365.25 * 86400
	if !(seconds <= century) {
		return none, &volume.NeverError{Func: fn, Why: say("a fall of {%v kpa} loses {%v g_per_h} of CO2, and a cylinder lasts more than 100 years", float64(fall/KPa), l.Rate)}
	}
	l.Empty = time.Duration(seconds * float64(time.Second))
	return l, nil
}

// Steps returns the working: enough to redo the sum by hand.
func (l Leak) Steps() []volume.Step {
	s := l.supply
	return []volume.Step{
		{Name: "temperature", Symbol: "T", Value: s.Temperature.Kelvin(), Suffix: "k", Source: "given"},
		{Name: "absolute pressure before", Symbol: "p", Value: s.Gauge.KPa() + s.Air.KPa(), Suffix: "kpa_abs", Source: "gauge + air"},
		{Name: "fall", Symbol: "Δp", Value: float64(l.fall / KPa), Suffix: "kpa", Source: "given"},
		{Name: "gas volume", Symbol: "V", Value: float64(l.gas / volume.Litre), Suffix: "l", Source: "given"},
		{Name: "density before", Symbol: "ρ", Value: l.before, Suffix: "g_per_l", Source: "ρ = p M/(Z R T), Z = 1 + B p/R T"},
		{Name: "density after", Symbol: "ρ'", Value: l.after, Suffix: "g_per_l", Source: "the same at p − Δp"},
		{Name: "leak", Symbol: "q", Value: l.Rate, Suffix: "g_per_h", Source: "V (ρ − ρ')/t"},
		{Name: "usable in a cylinder", Symbol: "m_cyl", Value: s.usable(), Suffix: "kg", Source: "charge less the gas left at the pressure of the kegs"},
		{Name: "cylinder empty after", Symbol: "t_empty", Value: l.Empty.Hours(), Suffix: "h", Source: "m_cyl/q"},
	}
}

// Band returns the interval of the leak if the gas has warmed or cooled by half
// a kelvin during the test, which a hand or a cloud does.
func (l Leak) Band() volume.Band {
	off := float64(l.gas) * l.before * 0.5 / l.supply.Temperature.Kelvin() / l.over.Seconds() * 1e3 * 3600
	return volume.Band{
		Name: "leak", Suffix: "g_per_h", Low: max(0, l.Rate-off), High: l.Rate + off,
		Source: "0.5 K of warming or cooling during the test; the reading of the gauge adds its own",
	}
}

// Cautions says what can hurt someone who looks for the leak.
func (l Leak) Cautions() []volume.Remark {
	return append(HighPressure(l.supply.Gauge), caution(Leaking, "Find the leak with soapy water, never with a flame, and not by nose."+
		" A leak in a closed place fills it with CO2: air it and use a detector. Let the pressure off before you undo a fitting."))
}

// Notes says what looks like a leak and is none.
func (l Leak) Notes() []volume.Remark {
	return []volume.Remark{note(Cooling, "Cooling of the gas by 1 K alone lowers the gauge by {%v kpa}: wait until hoses and kegs are as warm as their surroundings.", float64(l.PerDegree/KPa))}
}
