package carbonation

import (
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Pumped is the state of a keg under a hand pump: the answer of
// [AirPump.After].
type Pumped struct {
	Oxygen           float64       // dissolved then, mg/L, averaged over the keg
	OxygenSaturation float64       // that the beer tends to, mg/L
	Stale            time.Duration // until the oxygen passes 0.3 mg/L, the most that packaged beer may have
	Content          Content       // CO2 that is left in the end, shared with the headspace
	Sag              unit.Pressure // lost by drawing one glass
	Strokes          float64       // of the pump that restore it
	Balance          Gauge         // below which the beer foams in the keg
	Foams            bool          // the pressure falls below Balance within one glass

	pump        AirPump
	elapsed     time.Duration
	law         law
	diffusivity float64 // of oxygen, m²/s
	capacity    float64 // m³
	gas         float64 // m³
	depth       float64 // m
	left        float64 // Pa of CO2 in the end
}

// Steps returns the working: enough to redo the sum by hand.
func (p Pumped) Steps() []volume.Step {
	a := p.pump
	way := volume.Step{Name: "share of saturation", Symbol: "w", Value: p.Oxygen / p.OxygenSaturation, Source: "diffusion, τ = D t/h², Crank eqs. 4.18 and 4.20"}
	if a.Carried {
		way.Source = "1 − exp(−k t/h), k = 2e-6 m/s, our estimate"
	}
	steps := []volume.Step{
		{Name: "temperature", Symbol: "T", Value: p.law.kelvin, Suffix: "k", Source: "given"},
		{Name: "absolute pressure", Symbol: "p", Value: a.Gauge.KPa() + a.Air.KPa(), Suffix: "kpa_abs", Source: "gauge + air"},
		{Name: "gas in the keg", Symbol: "V_G", Value: 1e3 * p.gas, Suffix: "l", Source: "(1 − full) × capacity"},
		{Name: "depth of the beer", Symbol: "h", Value: p.depth, Suffix: "m", Source: "full × capacity over the cross-section by the outside diameter"},
		{Name: "oxygen saturation", Symbol: "c_s", Value: p.OxygenSaturation, Suffix: "mg_per_l", Source: "APHA 1985, times p over 1 atm"},
		{Name: "diffusivity of oxygen", Symbol: "D", Value: p.diffusivity, Suffix: "m2_per_s", Source: "CRC Handbook, Arrhenius between 10 and 30 °C"},
		{Name: "time", Symbol: "t", Value: p.elapsed.Seconds(), Suffix: "s", Source: "given"},
		way,
		{Name: "oxygen", Symbol: "c_O2", Value: p.Oxygen, Suffix: "mg_per_l", Source: "w c_s"},
		{Name: "sag", Symbol: "Δp", Value: float64(p.Sag) / 1e3, Suffix: "kpa", Source: "p v/(V_G + v)"},
		{Name: "strokes", Symbol: "n", Value: p.Strokes, Source: "p v/(p_air v_stroke)"},
	}
	steps = append(steps, p.law.steps(a.Beer)...)
	return append(steps,
		volume.Step{Name: "balance of the beer as tapped", Symbol: "p_b", Value: p.Balance.KPa(), Suffix: "kpa", Source: "pressure that holds the content at T, less air"},
		volume.Step{Name: "CO2 pressure in the end", Symbol: "p_CO2", Value: p.left / 1e3, Suffix: "kpa_abs", Source: "root of c(p) V_L + ρ(p) V_G = c0 V_L"},
		volume.Step{Name: "content in the end", Symbol: "c", Value: p.Content.Volumes(), Suffix: "volumes", Source: "β K0 φ p_CO2 M / 1 atm / 1.9768 g/L"},
	)
}

// Band returns the interval of the dissolved oxygen: a factor of two either
// way, since nobody's keg is quite still and CO2 keeps part of the air out.
func (p Pumped) Band() volume.Band {
	return volume.Band{
		Name: "oxygen", Suffix: "mg_per_l", Low: p.Oxygen / 2, High: min(2*p.Oxygen, p.OxygenSaturation),
		Source: "estimate: mixing in a keg that is being tapped is not better known",
	}
}

// Cautions says what can hurt someone, or a keg.
func (p Pumped) Cautions() []volume.Remark {
	return append(HighPressure(p.pump.Gauge), caution(HandPump, "Do not pump above the relief valve or the stamp on the keg."+
		" Never put a hand pump on a keg to be kept: empty it the same day."))
}

// Notes says what the answer rests on.
func (p Pumped) Notes() []volume.Remark {
	var all []volume.Remark
	if p.Foams {
		all = append(all, note(Foaming, "Within one glass the pressure is below {%v kpa}, where this beer foams in the keg: pump a little and often, or keep it colder.", p.Balance.KPa()))
	}
	return append(
		all,
		note(Staling, "The 8 to 12 hours are common practice, no source. Above {%v mg_per_l} of oxygen packaged beer stales early in"+
			" the weeks it is kept; it is not harmful. The taste follows in hours when warm, in a day or two when cold.", staleOxygen),
		note(Method, "The CO2 left is the end, if keg and air came to rest: a bound, not reached in a day."),
	)
}
