package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/water"
)

// HeatCapacity returns the specific heat of the beer at t, by mass fractions
// of water, alcohol w and real extract E:
//
//	c = (1 − w − E) c_w + w c_A + E c_E
//	c_A = 6500 − 85 t + 1.2 t²    (apparent, of ethanol in dilute solution)
//	c_E = 1548.8 + 1.9625 t       (carbohydrate)
//
// with t in °C and c in J/(kg K). Ordinary beer comes within 1 % of water,
// because alcohol raises the heat capacity by as much as extract lowers it.
//
// Valid from −5 °C to 40 °C within 1.5 %; outside it, or for an invalid t,
// HeatCapacity returns a [*RangeError] and NaN.
//
// Sources: water IAPWS SR6-08; c_A ours, fitted to the specific heats of
// aqueous ethanol in Perry's Chemical Engineers' Handbook (from memory); c_E
// Choi & Okos (1986), as in the ASHRAE Handbook of Refrigeration (from memory).
func (b Beer) HeatCapacity(t Temperature) (SpecificHeat, error) {
	c := t.Celsius()
	if err := limitLiquid.Check("thermal.Beer.HeatCapacity", c); err != nil {
		return SpecificHeat(math.NaN()), err
	}
	return SpecificHeat(b.heatCapacity(c)), nil
}

// heatCapacity returns the specific heat in J/(kg K) at c °C.
func (b Beer) heatCapacity(c float64) float64 {
	w, e := b.ABW()/100, b.extract()
	alcohol := 6500 + (-85+1.2*c)*c
	carbohydrate := 1548.8 + 1.9625*c
	return (1-w-e)*water.HeatCapacity(c+water.ZeroCelsius) + w*alcohol + e*carbohydrate
}

// Conductivity returns the thermal conductivity of the beer at t:
//
//	λ = [(1 − w) λ_w + w λ_A − 0.72 w (1 − w) (λ_w − λ_A)] (1 − 0.54 E)
//
// with w and E the mass fractions of alcohol and real extract and
// λ_A = 0.174 − 0.00026 t W/(m K) that of ethanol at t °C.
//
// Valid from −5 °C to 40 °C within 4 %; outside it, or for an invalid t,
// Conductivity returns a [*RangeError] and NaN.
//
// Sources: water IAPWS SR6-08; the mixture Filippov (1955), as in Reid,
// Prausnitz & Poling, The Properties of Gases and Liquids, eq. 10-12.1; extract
// as sugar, Riedel (1949); constants from memory.
func (b Beer) Conductivity(t Temperature) (Conductivity, error) {
	c := t.Celsius()
	if err := limitLiquid.Check("thermal.Beer.Conductivity", c); err != nil {
		return Conductivity(math.NaN()), err
	}
	return Conductivity(b.conductivity(c)), nil
}

// conductivity returns the thermal conductivity in W/(m K) at c °C.
func (b Beer) conductivity(c float64) float64 {
	w := b.ABW() / 100
	kw := water.Conductivity(c + water.ZeroCelsius)
	ka := 0.174 - 0.00026*c
	return ((1-w)*kw + w*ka - 0.72*w*(1-w)*(kw-ka)) * (1 - 0.54*b.extract())
}

// fluidAt returns what films need of the beer at c °C.
func (b Beer) fluidAt(c float64) heat.Fluid {
	mu, k := b.viscosity(c), b.conductivity(c)
	return heat.Fluid{K: k, Nu: mu / b.density(c), Pr: mu * b.heatCapacity(c) / k}
}

// OriginalExtract returns the extract of the wort that the beer was fermented
// from, in degrees Plato, by Balling's rule with A the alcohol and E the real
// extract in percent by mass:
//
//	OE = 100 (2.0665 A + E) / (100 + 1.0665 A)
//
// Source: Balling (1865), as in standard brewing texts; constants from memory.
func (b Beer) OriginalExtract() float64 {
	a := b.ABW()
	return 100 * (2.0665*a + 100*b.extract()) / (100 + 1.0665*a)
}

// FreezingPoint returns the temperature at which ice begins to form in the
// beer, with A the alcohol in percent by mass and OE the original extract in
// degrees Plato:
//
//	t_f = −(0.42 A + 0.04 OE + 0.2) °C
//
// within 0.4 K. The 0.2 stands for salts and dissolved gas; below 5 °P it falls
// in proportion to OE, so that water freezes at 0 °C.
//
// Source: the rule of the brewing trade, from memory. It is also printed with
// the signs of the last two terms reversed, which would put beer of 5 % at
// −1.0 °C, above the −1.6 °C of its alcohol alone (Lange's Handbook of
// Chemistry, 15th ed.) and so cannot be right.
func (b Beer) FreezingPoint() Temperature {
	oe := b.OriginalExtract()
	return Celsius(-(ethanolDepression*b.ABW() + 0.04*oe + 0.2*min(1, oe/5)))
}

// ethanolDepression is by how much 1 % by mass of ethanol lowers the freezing
// point, K.
const ethanolDepression = 0.42
