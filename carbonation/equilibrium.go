package carbonation

import (
	"math"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// Equilibrium is beer and the gas above it at rest with each other: the answer
// of the methods of [Draught].
type Equilibrium struct {
	Temperature thermal.Temperature
	Gauge       Gauge
	Absolute    Pressure // of all the gas above the beer
	Partial     Pressure // of its CO2
	Content     Content
	CO2Share    float64 // of the gas, 0 to 1
	Nitrogen    float64 // dissolved in the end, mg/L, as in water; 0 on pure CO2

	law           law
	beer          thermal.Beer
	air           Pressure
	nitrogenHenry float64 // Pa
	lead          lead
}

// A lead says which quantity an equilibrium was solved for.
type lead uint8

const (
	leadContent lead = iota
	leadGauge
	leadTemperature
	leadShare
)

// Steps returns the working: enough to redo the sum by hand.
func (e Equilibrium) Steps() []volume.Step {
	p := e.Partial.pascal
	steps := []volume.Step{
		{Name: "temperature", Symbol: "T", Value: e.law.kelvin, Suffix: "k", Source: e.from(leadTemperature)},
		{Name: "air pressure", Symbol: "p_air", Value: e.air.KPa(), Suffix: "kpa_abs", Source: "given"},
		{Name: "gauge pressure", Symbol: "p_g", Value: e.Gauge.KPa(), Suffix: "kpa", Source: e.from(leadGauge)},
		{Name: "absolute pressure", Symbol: "p", Value: e.Absolute.KPa(), Suffix: "kpa_abs", Source: "p = p_g + p_air"},
		{Name: "CO2 share", Symbol: "x", Value: e.CO2Share, Source: e.from(leadShare)},
		{Name: "CO2 pressure", Symbol: "p_CO2", Value: p / 1e3, Suffix: "kpa_abs", Source: "p_CO2 = x p, Dalton"},
	}
	steps = append(steps, e.law.steps(e.beer)...)
	steps = append(steps,
		volume.Step{Name: "fugacity coefficient", Symbol: "φ", Value: e.law.fugacity(p), Source: "φ = exp(B p_CO2 / R T), Weiss 1974 eq. 9"},
		volume.Step{Name: "content", Symbol: "c", Value: e.Content.GramsPerLitre(), Suffix: "g_per_l", Source: "c = β K0 φ p_CO2 M / 1 atm, M = 44.0095 g/mol"},
		volume.Step{Name: "content", Symbol: "v", Value: e.Content.Volumes(), Suffix: "volumes", Source: "v = c / 1.9768 g/L"},
	)
	if e.CO2Share < 1 {
		steps = append(steps,
			volume.Step{Name: "Henry constant of nitrogen", Symbol: "kH", Value: e.nitrogenHenry / 1e6, Suffix: "mpa", Source: "IAPWS G7-04 eq. 3"},
			volume.Step{Name: "dissolved nitrogen", Symbol: "c_N2", Value: e.Nitrogen, Suffix: "mg_per_l", Source: "c = (1−x) p ρ_w M / (kH M_w), as in water"},
		)
	}
	return steps
}

// from says where a quantity comes from that was either given or sought.
func (e Equilibrium) from(l lead) string {
	if e.lead == l {
		return "sought: the value that satisfies the rest"
	}
	return "given"
}

// steps returns the working of the law of solubility for b.
func (l law) steps(b thermal.Beer) []volume.Step {
	chart, _ := chartBeta(l.kelvin)
	return []volume.Step{
		{Name: "Henry coefficient of water", Symbol: "K0", Value: math.Exp(l.lnK0), Suffix: "mol_per_l_atm", Source: "Weiss 1974 eq. 12, S = 0"},
		{Name: "second virial coefficient", Symbol: "B", Value: 1e6 * virial(l.kelvin), Suffix: "cm3_per_mol", Source: "Weiss 1974 eq. 6"},
		{Name: "real extract", Symbol: "RE", Value: b.RealExtract(), Suffix: "plato", Source: "Tabarié's rule"},
		{Name: "alcohol", Symbol: "A", Value: b.ABW(), Suffix: "percent_by_mass", Source: "from the alcohol by volume"},
		{Name: "ordinary beer over water", Symbol: "β_chart", Value: chart, Source: "β_chart = min(0.9368 + 0.00246 t, 0.965), fit to the trade's chart"},
		{Name: "this beer over water", Symbol: "β", Value: l.beta, Source: "β = 1 − (1 − β_chart)(0.0095 RE + 0.003 A)/(the same for 5 % ABV, FG 1.010)"},
	}
}

// Band returns the interval in which a measurement of the quantity sought is
// expected: 1.5 % in content for ordinary beer, 5 % above 8 % ABV or 8 °P of
// real extract, 1 % for water.
func (e Equilibrium) Band() volume.Band {
	r := spread(e.beer)
	band := func(name, suffix string, value, half float64) volume.Band {
		return volume.Band{
			Name: name, Suffix: suffix, Low: value - half, High: value + half,
			Source: "scatter of solubility data and charts; the beer and the gauge add theirs",
		}
	}
	switch e.lead {
	case leadGauge:
		return band("gauge pressure", "kpa", e.Gauge.KPa(), r*e.Absolute.KPa())
	case leadTemperature:
		slope := -contentSlope(e.law.kelvin, e.Partial.pascal, strength(e.beer))
		return band("temperature", "c", e.Temperature.Celsius(), r/slope)
	case leadShare:
		b := band("CO2 share", "", e.CO2Share, r*e.CO2Share)
		b.High = min(b.High, 1)
		return b
	default:
		return band("content", "volumes", e.Content.Volumes(), r*e.Content.Volumes())
	}
}

// Cautions says what can hurt someone: a high pressure, and nitrogen in the
// air of a room.
func (e Equilibrium) Cautions() []volume.Remark {
	all := HighPressure(e.Gauge)
	if e.CO2Share < 1 {
		all = append(all, caution(Suffocation, "Nitrogen and blends stifle as CO2 does, and no nose warns of them: air the room and use a detector."+
			" Their cylinders stand far above the pressure of CO2; use a regulator made for them, and let the supplier mix."))
	}
	return all
}

// Notes says what the answer rests on, and what an equilibrium is not.
func (e Equilibrium) Notes() []volume.Remark {
	all := belowAir(e.Gauge, "beer")
	if e.CO2Share < 1 {
		return append(
			all,
			note(Nitrogen, "Nitrogen enters as slowly as CO2, over a week or more at rest: {%v mg_per_l} is the end, as in water, within 5 %%.", e.Nitrogen),
			note(Practice, "The trade's blend rule is the same sum on absolute pressure without the real gas: it lies up to 2.5 %% off."),
		)
	}
	return append(all, note(AtRest, "A keg at rest settles here in a week or more. In an afternoon the pressure moves the beer and hardly changes its CO2."))
}
