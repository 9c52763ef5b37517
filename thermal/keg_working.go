package thermal

import (
	"math"

	"example.com/pourwell/volume"
)

// spread returns the share by which the keg's UA may be off, and why.
func (w Warming) spread() (share float64, why string) {
	k := w.keg
	switch {
	case k.UA > 0:
		return 0.05, "a measured UA, taken as good to 5 %; its calibration gives its own band"
	case k.Jacket > 0:
		return 0.15, "a jacket whose conductivity is a design value, ±15 %"
	case k.Around.Wind > 0:
		return 0.35, "moving air that was not measured at the keg, ±35 %"
	case w.DewHeatShare > 0.05:
		return 0.35, "a keg wet with dew, ±35 %"
	case w.Heat < 0:
		return 0.25, "a keg cooling in air, ±25 %; half a kelvin of air temperature counts as much again near the end"
	}
	return 0.20, "a dry keg in still air: correlations, emissivity and build, ±20 %"
}

// Band returns how far the answer may be off: of the time for [Keg.Reach], of
// the temperature for [Keg.After]. The correlations' scatter is carried to the
// answer by making all heat flows larger or smaller together.
func (w Warming) Band() volume.Band {
	b, why := w.spread()
	if w.timeAsks {
		h := w.Time.Hours()
		return volume.Band{Name: "time", Low: h / (1 + b), High: h / (1 - b), Suffix: "h", Source: why}
	}
	// With all heat b larger the beer is where it would else be b later.
	m := newKegModel(w.keg)
	_, slow := m.run(w.Time.Seconds()*(1-b), math.NaN())
	_, fast := m.run(w.Time.Seconds()*(1+b), math.NaN())
	return volume.Band{
		Name: "temperature", Low: math.Min(slow.t, fast.t), High: math.Max(slow.t, fast.t), Suffix: "c", Source: why,
	}
}

// Steps returns the working: the heat balance at the temperature half-way, from
// which the time follows as C ΔT over the mean heat.
func (w Warming) Steps() []volume.Step {
	k, m := w.keg, newKegModel(w.keg)
	middle := (k.From.Celsius() + w.Temperature.Celsius()) / 2
	steps := []volume.Step{
		{Name: "heat capacity of beer and steel", Symbol: "C", Value: m.capacity, Suffix: "j_per_k", Source: "ρ V c + m_steel 477 J/(kg K)"},
		{Name: "beer at the start", Symbol: "T0", Value: k.From.Celsius(), Suffix: "c", Source: "given"},
		{Name: "air", Symbol: "Ta", Value: k.Around.Air.Celsius(), Suffix: "c", Source: "given"},
		{Name: "beer half-way", Symbol: "Tm", Value: middle, Suffix: "c", Source: "(T0 + T1)/2"},
	}
	names := [...]string{"wetted side", "side above the beer", "top", "bottom"}
	if m.ua == 0 {
		for i := range m.parts {
			p := &m.parts[i]
			if p.area == 0 {
				continue
			}
			q, dew := p.heat(m.beer, m.densest, middle)
			steps = append(steps,
				volume.Step{Name: names[i] + ", area", Symbol: "A", Value: p.area, Suffix: "m2", Source: "vessel, as a cylinder as wide as it; ends dished"},
				volume.Step{Name: names[i] + ", heat half-way", Symbol: "q", Value: q, Suffix: "w", Source: "convection (Churchill & Chu, McAdams) in series, radiation, dew, sun"},
				volume.Step{Name: names[i] + ", of it dew", Symbol: "q_dew", Value: dew, Suffix: "w", Source: "h_c/(c_p Le^⅔) (w_a − w_s) h_fg"},
			)
		}
	}
	how := "q/(Ta − Tm)"
	if m.ua > 0 {
		how = "measured"
		steps = append(steps, volume.Step{Name: "air and sun as one temperature", Symbol: "Tsa", Value: m.solAir, Suffix: "c", Source: "sol-air temperature, mean of the faces by area; Ta in shade"})
	}
	return append(steps,
		volume.Step{Name: "conductance half-way, without sun", Symbol: "UA", Value: float64(w.UA), Suffix: "w_per_k", Source: how},
		volume.Step{Name: "mean heat", Symbol: "Q", Value: float64(w.Heat), Suffix: "w", Source: "C (T1 − T0)/t"},
		volume.Step{Name: "time", Symbol: "t", Value: w.Time.Seconds(), Suffix: "s", Source: "∫ C dT/q(T)"},
		volume.Step{Name: "beer at the end", Symbol: "T1", Value: w.Temperature.Celsius(), Suffix: "c", Source: "∫ q dt/C"},
		volume.Step{Name: "settles at", Symbol: "T∞", Value: w.Settles.Celsius(), Suffix: "c", Source: "q(T∞) = 0"},
	)
}
