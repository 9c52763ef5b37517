package thermal

import (
	"math"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// lineBand is the uncertainty of a line's conductance and of its time constant.
// Source: bands of the outside films where the weather is known, combined.
const lineBand = 0.15

// Band returns the interval of the temperature, in °C, that ±15 % of the line's
// conductance spans.
func (r LineRun) Band() volume.Band {
	at := func(f float64) float64 {
		s := r.extent * f
		if r.flows {
			s /= r.capacity
		}
		return r.inlet + (r.settles-r.inlet)*(1-r.scale.after(s))
	}
	a, b := at(1-lineBand), at(1+lineBand)
	return volume.Band{Name: "temperature", Low: math.Min(a, b), High: math.Max(a, b), Suffix: "c", Source: "conductance of the line ±15 %"}
}

// Course returns the temperature of the standing beer at n evenly spaced times
// from the start to the end, both included; n is at least 2. For flowing beer
// there is none.
func (r LineRun) Course(n int) []Sample {
	if r.flows || !r.Temperature.IsValid() {
		return nil
	}
	return course(n, r.extent, func(s float64) float64 {
		return r.settles - (r.settles-r.inlet)*r.scale.after(s)
	})
}

// course samples a temperature in °C over so many seconds.
func course(n int, end float64, temperature func(s float64) float64) []Sample {
	samples := make([]Sample, max(n, 2))
	for i := range samples {
		s := end * float64(i) / float64(len(samples)-1)
		samples[i] = Sample{At: seconds(s), Beer: Celsius(temperature(s))}
	}
	return samples
}

// Steps returns the working, from the resistances to the temperature.
func (r LineRun) Steps() []volume.Step {
	steps := []volume.Step{
		{Name: "length", Symbol: "L", Value: float64(r.line.Length), Suffix: "m", Source: "given"},
		{Name: "bore", Symbol: "d", Value: float64(r.line.Bore), Suffix: "m", Source: "given"},
		{Name: "outside of the tube", Symbol: "d_o", Value: float64(r.line.Bore + 2*r.line.Wall), Suffix: "m", Source: "bore and twice the wall"},
		{Name: "outside of the foam", Symbol: "D", Value: float64(r.line.Bore + 2*r.line.Wall + 2*r.line.Insulation), Suffix: "m", Source: "and twice the insulation"},
		{Name: "inlet", Symbol: "T_in", Value: r.inlet, Suffix: "c", Source: "given"},
		{Name: "settling temperature", Symbol: "T_s", Value: r.settles, Suffix: "c", Source: "the outside takes up no heat: air, or above it in the sun"},
	}
	if r.flows {
		steps = append(steps, volume.Step{Name: "Nusselt number inside", Symbol: "Nu", Value: r.nusselt, Source: "Hausen or Gnielinski, straight tube"})
	}
	steps = append(steps,
		volume.Step{Name: "resistance up to the outer surface", Symbol: "R_i", Value: r.inside, Suffix: "k_m_per_w", Source: "film inside where it flows, ln(d_o/d)/(2π k) of tube and foam"},
		volume.Step{Name: "resistance beyond it", Symbol: "R_o", Value: r.outside, Suffix: "k_m_per_w", Source: "convection, radiation and dew, at the inlet temperature"},
		volume.Step{Name: "share of the heat that dew brings", Symbol: "q_dew/q", Value: r.dewShare, Source: "heat and mass transfer analogy"},
		volume.Step{Name: "conductance of the line", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "L/(R_i + R_o)"},
	)
	if r.flows {
		steps = append(steps,
			volume.Step{Name: "capacity rate of the flow", Symbol: "ṁc", Value: r.capacity, Suffix: "w_per_k", Source: "density × flow × specific heat of the beer"},
			volume.Step{Name: "temperature at the end", Symbol: "T", Value: r.Temperature.Celsius(), Suffix: "c", Source: "T_s + (T_in − T_s) e^(−UA/ṁc), UA following the temperature"})
	} else {
		steps = append(steps,
			volume.Step{Name: "heat capacity that takes part", Symbol: "C′", Value: r.capacity, Suffix: "j_per_m_k", Source: "∫ φ² dC′ of beer, wall and foam"},
			volume.Step{Name: "time constant", Symbol: "τ", Value: r.TimeConstant.Seconds(), Suffix: "s", Source: "(R_i + R_o) C′, R_o following the temperature"},
			volume.Step{Name: "time", Symbol: "t", Value: r.extent, Suffix: "s", Source: "given"},
			volume.Step{Name: "temperature after it", Symbol: "T", Value: r.Temperature.Celsius(), Suffix: "c", Source: "T_s + (T_in − T_s) e^(−t/τ), τ following the temperature"})
	}
	return append(steps, volume.Step{Name: "critical radius of the outer layer", Symbol: "r_c", Value: float64(r.CriticalRadius), Suffix: "m", Source: "k/h_o"})
}

// noLineRun is what a calculation of a line returns beside an error.
func noLineRun() LineRun {
	n := math.NaN()
	return LineRun{UA: Conductance(n), Heat: unit.Power(n), HoldUp: unit.Volume(n), CriticalRadius: unit.Length(n)}
}
