package carbonation

import (
	"cmp"
	"math"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// Draught is beer on gas at a place: what stays the same while temperature,
// pressure and content are weighed against each other. Its methods take any
// two of the three and solve the third.
type Draught struct {
	Beer     thermal.Beer // the zero value is ordinary beer
	Air      Pressure     // of the air around the gauge; see [AirAt]
	CO2Share float64      // of the gas, 0 to 1; the rest is nitrogen
}

// DefaultDraught returns ordinary beer on pure CO2 at sea level.
func DefaultDraught() Draught {
	return Draught{Air: PaA(101325), CO2Share: 1}
}

// SolveContent returns the equilibrium at temperature t under gauge pressure g
// and the content that the beer holds there, in the end: a still keg takes a
// week to follow its regulator.
//
//	p_CO2 = share (g + air)        (Dalton)
//	c = c(t, p_CO2)                ([ContentAt])
//
// Valid from -1.2 °C to 45 °C and from vacuum to 1000 kPa absolute, on the
// gauge to 898.7 kPa. Outside it, or for an invalid argument, it returns a
// [*RangeError] and an Equilibrium of NaN.
//
// Source: as [ContentAt]; partial pressures on absolute pressure by [3].
func (d Draught) SolveContent(t thermal.Temperature, g Gauge) (Equilibrium, error) {
	const fn = "carbonation.Draught.SolveContent"
	if err := d.check(fn, t, g); err != nil {
		return noEquilibrium(), err
	}
	e := d.at(t)
	e.Gauge, e.Absolute = g, g.Absolute(d.Air)
	e.Partial = Pressure{d.CO2Share * e.Absolute.pascal, true}
	e.Content = Content{e.law.content(e.Partial.pascal), true}
	return e.solved(leadContent), nil
}

// SolveGauge returns the equilibrium at temperature t at which the beer holds
// content c, and the gauge pressure to set for it.
//
// Valid as [Draught.SolveContent]. A gauge pressure below zero is an answer:
// the beer holds more than c without any regulator. A gas without CO2 holds no
// content; the error then wraps [volume.ErrNoSolution].
//
// Source: as [PressureFor].
func (d Draught) SolveGauge(t thermal.Temperature, c Content) (Equilibrium, error) {
	const fn = "carbonation.Draught.SolveGauge"
	if err := d.check(fn, t, PaG(0)); err != nil {
		return noEquilibrium(), err
	}
	e := d.at(t)
	if err := e.carry(fn, c); err != nil {
		return noEquilibrium(), err
	}
	if d.CO2Share == 0 {
		return noEquilibrium(), &volume.NoSolutionError{Func: fn, Why: say("a gas without CO2 holds none in the beer at any pressure, not {%v volumes}", c.Volumes())}
	}
	e.Absolute = Pressure{e.Partial.pascal / d.CO2Share, true}
	if err := limitAbsolute.Check(fn, e.Absolute.KPa()); err != nil {
		return noEquilibrium(), err
	}
	e.Gauge = e.Absolute.Gauge(d.Air)
	return e.solved(leadGauge), nil
}

// SolveTemperature returns the equilibrium under gauge pressure g at which the
// beer holds content c, and the temperature to keep for it.
//
// Valid as [Draught.SolveContent]; if no temperature in the range is the
// answer, the error wraps [volume.ErrNoSolution].
//
// Source: as [TemperatureFor].
func (d Draught) SolveTemperature(g Gauge, c Content) (Equilibrium, error) {
	const fn = "carbonation.Draught.SolveTemperature"
	if err := d.check(fn, thermal.Celsius(0), g); err != nil {
		return noEquilibrium(), err
	}
	absolute := g.Absolute(d.Air)
	partial := Pressure{d.CO2Share * absolute.pascal, true}
	t, err := TemperatureFor(c, partial, d.Beer)
	if err != nil {
		return noEquilibrium(), err
	}
	e := d.at(t)
	e.Gauge, e.Absolute, e.Partial, e.Content = g, absolute, partial, c
	return e.solved(leadTemperature), nil
}

// SolveShare returns the equilibrium at temperature t under gauge pressure g
// at which the beer holds content c, and the share of CO2 to blend for it. The
// CO2Share of d is not used.
//
// Valid as [Draught.SolveContent]; if even pure CO2 holds less than c at that
// pressure, the error wraps [volume.ErrNoSolution].
//
// Source: as [PressureFor], on absolute pressures by [3].
func (d Draught) SolveShare(t thermal.Temperature, c Content, g Gauge) (Equilibrium, error) {
	const fn = "carbonation.Draught.SolveShare"
	d.CO2Share = 1
	if err := d.check(fn, t, g); err != nil {
		return noEquilibrium(), err
	}
	e := d.at(t)
	e.CO2Share = 0
	if err := e.carry(fn, c); err != nil {
		return noEquilibrium(), err
	}
	e.Gauge, e.Absolute = g, g.Absolute(d.Air)
	if need := e.Partial.pascal; need > e.Absolute.pascal*(1+1e-12) {
		return noEquilibrium(), &NoSolutionError{
			Func: fn, Why: say("{%v volumes} at {%v c} need {%v kpa} of pure CO2 on the gauge; {%v kpa} is set", c.Volumes(), t.Celsius(), (need-d.Air.pascal)/1e3, g.KPa()),
			Key: "gauge_kpa", Needed: (need - d.Air.pascal) / 1e3, Given: g.KPa(),
		}
	}
	if e.Absolute.pascal > 0 { // a vacuum holds flat beer whatever the gas
		e.CO2Share = min(1, e.Partial.pascal/e.Absolute.pascal)
	}
	return e.solved(leadShare), nil
}

// check reports the first argument that lies outside its range.
func (d Draught) check(fn string, t thermal.Temperature, g Gauge) error {
	return cmp.Or(
		limitAir.Check(fn, d.Air.KPa()),
		limitShare.Check(fn, d.CO2Share),
		limitTemperature.Check(fn, t.Celsius()),
		checkGauge(fn, &limitGauge, g, d.Air),
	)
}

// at starts an equilibrium at t.
func (d Draught) at(t thermal.Temperature) Equilibrium {
	return Equilibrium{
		Temperature: t, CO2Share: d.CO2Share,
		law: lawAt(t.Kelvin(), strength(d.Beer)), beer: d.Beer, air: d.Air,
	}
}

// carry puts content c into e and the partial pressure that holds it.
func (e *Equilibrium) carry(fn string, c Content) error {
	p, err := e.law.hold(fn, c)
	e.Content, e.Partial = c, p
	return err
}

// solved marks which quantity was sought and adds what follows from the rest.
func (e Equilibrium) solved(lead lead) Equilibrium {
	e.lead = lead
	e.Nitrogen = 0
	if e.CO2Share < 1 {
		e.nitrogenHenry = nitrogen.henry(e.law.kelvin)
		e.Nitrogen = nitrogen.dissolved(e.nitrogenHenry, (1-e.CO2Share)*e.Absolute.pascal)
	}
	return e
}

func noEquilibrium() Equilibrium {
	return Equilibrium{CO2Share: math.NaN(), Nitrogen: math.NaN()}
}
