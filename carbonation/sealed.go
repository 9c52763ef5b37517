package carbonation

import (
	"cmp"
	"math"

	"example.com/pourwell/internal/solve"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// Sealed is beer in a closed vessel: a growler, bottle, can or keg. Its CO2
// divides between liquid and headspace, and the pressure follows the
// temperature.
type Sealed struct {
	Beer      thermal.Beer
	Air       Pressure            // of the air around the vessel
	Content   Content             // of the beer as it is drawn into the vessel
	Closed    thermal.Temperature // when closed, and whenever it is opened again
	Headspace float64             // share of the vessel that is gas when closed

	// AtBalance says that the headspace is CO2 at balance with the beer when
	// closed, as in a keg on gas or a bottle filled under pressure. Otherwise it
	// is gas at the pressure of the air, of which AirShare is air and the rest
	// CO2.
	AtBalance bool
	AirShare  float64

	Vessel    Container // what it is closed in; the cautions depend on it
	Rating    Gauge     // the maker's for the vessel; invalid if none is known
	Regulator Gauge     // on which it is connected later; invalid if it is not
	FillLoss  float64   // share of the content that foams off before closing
	Openings  int       // times it was opened and closed again before it is looked at
}

// Sealed returns beer of content c closed in a growler at temperature t with
// usual values: 4 % of headspace, filled with air, no loss at filling, not
// opened.
func (d Draught) Sealed(c Content, t thermal.Temperature) Sealed {
	return Sealed{Beer: d.Beer, Air: d.Air, Content: c, Closed: t, Headspace: 0.04, AirShare: 1}
}

// gasSplit is what a litre of vessel holds.
type gasSplit struct {
	liquid, gas float64 // L
	law         law
	co2, air    float64 // Pa in the headspace
}

// charge is what stays in the vessel whatever its temperature, for each litre
// of vessel.
type charge struct {
	closed   float64 // K
	liquid   float64 // L when closed
	co2      float64 // g, in liquid and headspace
	air      float64 // Pa L/K, in the headspace
	strength float64
}

// At returns what is in the vessel, at rest, at a later temperature t.
//
//	c V_L + ρ V_G = total                         (balance of CO2)
//	V_L = V_L,closed ρ_w(T_closed) / ρ_w(T)       (the beer expands into the headspace)
//	p = p_CO2 + p_air T V_G,closed / (T_closed V_G) + p_w(T) − p_w(T_closed)
//
// Valid to 80 °C; above 45 °C the solubility is that of [5], within 3 %. The
// vessel is taken as rigid; the air in the headspace as undissolved, which
// makes the pressure up to half a bar too high. If the beer fills the vessel
// before t, the error is a [*volume.NoSolutionError] that names the temperature:
// the vessel bursts there, whatever its gas. Outside the ranges of [Limits] or
// for an invalid argument At returns a [*RangeError] and a Package of NaN.
//
// Source: balance of matter with [ContentAt]; the temperature law agrees with
// the published pressures of [7] within 1 % in content.
func (s Sealed) At(t thermal.Temperature) (Package, error) {
	const fn = "carbonation.Sealed.At"
	if err := s.check(fn, t); err != nil {
		return noPackage(), err
	}
	k := strength(s.Beer)
	drawn := s.Content.gramsPerLitre * (1 - s.FillLoss)
	c := charge{closed: s.Closed.Kelvin(), liquid: 1 - s.Headspace, strength: k}
	l := hotLaw(c.closed, k)
	headspace := (1 - s.AirShare) * s.Air.pascal
	if s.AtBalance {
		headspace = l.pressure(drawn)
		if err := limitInside.Check(fn, headspace/1e3); err != nil {
			return noPackage(), err
		}
	} else {
		c.air = s.AirShare * s.Air.pascal * s.Headspace / c.closed
	}
	c.co2 = drawn*c.liquid + gasDensity(c.closed, headspace)*s.Headspace
	vented := 0.0
	for range s.Openings {
		before := c.co2
		if err := c.open(fn, s.Air.pascal); err != nil {
			return noPackage(), err
		}
		vented += before - c.co2
	}
	full := c.fullAt()
	split, err := c.at(fn, t.Kelvin())
	if err != nil {
		return noPackage(), err
	}
	if !(split.gas > 0) {
		return noPackage(), &volume.NoSolutionError{Func: fn, Why: say("the beer fills the vessel at {%v c} and no gas is left to give way: it bursts before {%v c}",
			full.Celsius(), t.Celsius())}
	}
	vapour := steamPressure(split.law.kelvin) - steamPressure(c.closed)
	p := Package{
		Temperature: t, FullAt: full, Headspace: split.gas,
		Partial: Pressure{split.co2, true}, Absolute: Pressure{split.co2 + split.air + vapour, true},
		Content: Content{split.law.content(split.co2), true},
		Lost:    Content{max(0, s.Content.gramsPerLitre-drawn+vented/c.liquid), true},
		InGas:   Content{gasDensity(split.law.kelvin, split.co2) * split.gas / c.liquid, true},
		sealed:  s, charge: c, split: split, vapour: vapour,
	}
	p.Gauge = p.Absolute.Gauge(s.Air)
	p.PushBack, p.Lift = p.pushBack(s.Regulator)
	p.OverCarbonated = s.Content.Volumes() > overCarbonated
	p.Warm = t.Celsius() > warm
	p.Hot = t.Celsius() > limitTemperature.Max
	p.Tight = split.gas < tight
	p.OverRating = s.Rating.valid && p.Gauge.above > s.Rating.above
	return p, nil
}

// at divides the charge at a temperature.
func (c charge) at(fn string, kelvin float64) (gasSplit, error) {
	g := gasSplit{law: hotLaw(kelvin, c.strength)}
	g.liquid = c.liquid * water.Density(c.closed) / water.Density(kelvin)
	g.gas = 1 - g.liquid
	if g.gas <= 0 {
		return g, nil
	}
	excess := func(p float64) float64 {
		return g.law.content(p)*g.liquid + gasDensity(kelvin, p)*g.gas - c.co2
	}
	p, ok := solve.Root(excess, 0, 1e3*limitInside.Max, 1e-6)
	if !ok {
		return g, limitInside.Check(fn, g.law.pressure(c.co2/g.liquid)/1e3)
	}
	g.co2, g.air = p, c.air*kelvin/g.gas
	return g, nil
}

// open lets the headspace out, at the temperature of closing: down to the
// pressure of the air, in its own proportion. If there is less pressure inside
// than outside, air comes in.
func (c *charge) open(fn string, outside float64) error {
	g, err := c.at(fn, c.closed)
	if err != nil {
		return err
	}
	if inside := g.co2 + g.air; inside > outside {
		left := outside / inside
		c.co2 -= (gasDensity(c.closed, g.co2) - gasDensity(c.closed, left*g.co2)) * g.gas
		c.air *= left
		return nil
	}
	c.air = (outside - g.co2) * g.gas / c.closed
	return nil
}

// fullAt returns the temperature at which the liquid fills the vessel, invalid
// if that is above the range of later temperatures.
func (c charge) fullAt() thermal.Temperature {
	room := func(kelvin float64) float64 { return c.liquid*water.Density(c.closed)/water.Density(kelvin) - 1 }
	kelvin, ok := solve.Root(room, c.closed, limitLater.Max+iceKelvin, 1e-3)
	if !ok {
		return thermal.Temperature{}
	}
	return thermal.Kelvin(kelvin)
}

func (s Sealed) check(fn string, t thermal.Temperature) error {
	err := cmp.Or(
		limitAir.Check(fn, s.Air.KPa()),
		limitContent.Check(fn, s.Content.Volumes()),
		limitTemperature.Check(fn, s.Closed.Celsius()),
		limitHeadspace.Check(fn, s.Headspace),
		limitAirShare.Check(fn, s.AirShare),
		limitFillLoss.Check(fn, s.FillLoss),
		limitOpenings.Check(fn, float64(s.Openings)),
		limitLater.Check(fn, t.Celsius()),
	)
	if err == nil && s.Rating.valid {
		err = limitRating.Check(fn, s.Rating.KPa())
	}
	if err == nil && s.Regulator.valid {
		err = limitRegulator.Check(fn, s.Regulator.KPa())
	}
	return err
}

func noPackage() Package { return Package{Headspace: math.NaN()} }
