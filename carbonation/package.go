package carbonation

import (
	"math"

	"example.com/pourwell/internal/water"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Package is beer in a closed vessel at a later temperature: the answer of
// [Sealed.At].
type Package struct {
	Temperature thermal.Temperature
	Gauge       Gauge               // in the headspace
	Absolute    Pressure            // of CO2, air and water vapour together
	Partial     Pressure            // of CO2
	Content     Content             // still dissolved
	InGas       Content             // CO2 in the headspace, for each litre of beer; it goes back as the beer cools
	Lost        Content             // CO2 that left the vessel, at filling and at each opening
	Headspace   float64             // share of the vessel that is gas now
	FullAt      thermal.Temperature // where the beer fills the vessel and bursts it; invalid if above 80 °C

	// A warm keg that is connected without a check valve sends beer into its
	// regulator. Both are 0 if there is no regulator, or if it is the stronger.
	PushBack unit.Pressure // above the regulator
	Lift     unit.Length   // of beer in the gas line by that excess

	OverCarbonated bool // more than 2.7 volumes went in
	Warm           bool // above 25 °C
	Hot            bool // above 45 °C, where the solubility is that of Carroll 1991
	Tight          bool // the expanding beer has left less than 1 % to gas
	OverRating     bool // the gauge pressure is above the rating given

	sealed Sealed
	charge charge
	split  gasSplit
	vapour float64 // Pa gained since closing
}

// pushBack returns by how much the vessel exceeds the pressure set on a
// regulator, and how high that lifts beer in the gas line; both 0 if the
// regulator is the stronger, or invalid.
//
//	h = Δp / (ρ g)
func (p Package) pushBack(set Gauge) (excess unit.Pressure, lift unit.Length) {
	const gravity = 9.80665
	over := p.Gauge.Pascals() - set.Pascals()
	if !(over > 0) {
		return 0, 0
	}
	density := water.Density(p.Temperature.Kelvin()) * p.sealed.Beer.FinalGravity()
	return unit.Pressure(over), unit.Length(over / (density * gravity))
}

// Steps returns the working: enough to redo the sum by hand.
func (p Package) Steps() []volume.Step {
	s, c, g := p.sealed, p.charge, p.split
	steps := []volume.Step{
		{Name: "temperature when closed", Symbol: "T0", Value: c.closed, Suffix: "k", Source: "given"},
		{Name: "content when drawn", Symbol: "c0", Value: s.Content.GramsPerLitre(), Suffix: "g_per_l", Source: "given"},
		{Name: "liquid when closed", Symbol: "V_L0", Value: c.liquid, Suffix: "l_per_l_vessel", Source: "1 − headspace"},
		{Name: "CO2 in the vessel", Symbol: "m", Value: c.co2, Suffix: "g_per_l_vessel", Source: "dissolved and in the headspace when closed, less what was let out"},
		{Name: "air in the vessel", Symbol: "n_air", Value: c.air, Suffix: "pa_l_per_k_vessel", Source: "p V / T of the air in the headspace when closed"},
		{Name: "temperature later", Symbol: "T", Value: g.law.kelvin, Suffix: "k", Source: "given"},
		{Name: "liquid later", Symbol: "V_L", Value: g.liquid, Suffix: "l_per_l_vessel", Source: "V_L0 ρ_w(T0)/ρ_w(T), IAPWS SR6-08"},
		{Name: "headspace later", Symbol: "V_G", Value: g.gas, Suffix: "l_per_l_vessel", Source: "1 − V_L"},
	}
	steps = append(steps, g.law.steps(s.Beer)...)
	return append(steps,
		volume.Step{Name: "CO2 pressure", Symbol: "p_CO2", Value: g.co2 / 1e3, Suffix: "kpa_abs", Source: "root of c(p) V_L + ρ(p) V_G = m"},
		volume.Step{Name: "fugacity coefficient", Symbol: "φ", Value: g.law.fugacity(g.co2), Source: "φ = exp(B p_CO2 / R T), Weiss 1974 eq. 9"},
		volume.Step{Name: "dissolved", Symbol: "c", Value: p.Content.GramsPerLitre(), Suffix: "g_per_l", Source: "c = β K0 φ p_CO2 M / 1 atm"},
		volume.Step{Name: "CO2 gas density", Symbol: "ρ", Value: gasDensity(g.law.kelvin, g.co2), Suffix: "g_per_l", Source: "ρ = p M/(Z R T), Z = 1 + B p/R T"},
		volume.Step{Name: "air pressure inside", Symbol: "p_a", Value: g.air / 1e3, Suffix: "kpa_abs", Source: "n_air T / V_G"},
		volume.Step{Name: "water vapour gained", Symbol: "Δp_w", Value: p.vapour / 1e3, Suffix: "kpa", Source: "p_w(T) − p_w(T0), Wagner & Pruss 1993; that at T0 is within β"},
		volume.Step{Name: "gauge pressure", Symbol: "p_g", Value: p.Gauge.KPa(), Suffix: "kpa", Source: "p_CO2 + p_a + Δp_w − p_air"},
	)
}

// Band returns the interval of the gauge pressure: the scatter of solubility,
// 3 % above 45 °C, and upwards 0.14 % more for each atmosphere of CO2, the
// effect of pressure on solubility that is left out.
func (p Package) Band() volume.Band {
	r := spread(p.sealed.Beer)
	if p.Hot {
		r = max(r, 0.03)
	}
	low := r * p.split.co2
	high := low + 0.0014*p.split.co2*p.split.co2/atmosphere
	return volume.Band{
		Name: "gauge pressure", Suffix: "kpa", Low: p.Gauge.KPa() - low/1e3, High: p.Gauge.KPa() + math.Abs(high)/1e3,
		Source: "scatter of solubility data; the content put in adds its own",
	}
}
