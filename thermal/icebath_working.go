package thermal

import (
	"math"

	"example.com/pourwell/volume"
)

// spread returns the share by which all coefficients between beer, bath and ice
// may be off together, low and high, and why.
func (c Chilling) spread() (low, high float64, why string) {
	if c.bath.Drained {
		return 0.5, 2, "a keg in ice without water, a factor of 2: how much of it touches ice is chance"
	}
	within := func(t Temperature) bool { return t.Celsius() >= 2 && t.Celsius() <= 8 }
	if within(c.bath.From) && within(c.Temperature) {
		return 0.5, 1.5, "beer near the temperature where water is densest and convection weakest, ±50 % on its films and on those of the ice"
	}
	return 0.65, 1.35, "a keg in still ice water, ±35 % on its films and on those of the ice"
}

// Band returns how far the answer may be off: of the time for [IceBath.Reach],
// of the temperature for [IceBath.After]. It runs the bath again with all films
// weaker and stronger. A time whose upper end is infinite may never come: the
// beer then stays just above the target. The answer itself always lies within.
func (c Chilling) Band() volume.Band {
	low, high, why := c.spread()
	x, y := c.again(low), c.again(high)
	name, suffix, z := "time", "h", c.Time.Hours()
	if !c.timeAsks {
		name, suffix, z = "temperature", "c", c.Temperature.Celsius()
	}
	return volume.Band{Name: name, Low: math.Min(z, math.Min(x, y)), High: math.Max(z, math.Max(x, y)), Suffix: suffix, Source: why}
}

// again returns the leading answer, h or °C, with the coefficients scaled.
func (c Chilling) again(scale float64) float64 {
	m, err := newBathModel(c.bath, "thermal.Chilling.Band")
	if err != nil {
		return math.NaN()
	}
	m.scale = scale
	if !c.timeAsks {
		m.runFor(c.Time.Seconds())
		return m.temperature()
	}
	if !m.runTo(c.Temperature.Celsius()) {
		return math.Inf(1)
	}
	return m.t / 3600
}

// Steps returns the working: the heat balance at the end of Time.
func (c Chilling) Steps() []volume.Step {
	b := c.bath
	m, err := newBathModel(b, "thermal.Chilling.Steps")
	if err != nil {
		return nil
	}
	m.runFor(c.Time.Seconds())
	f := m.flows(m.y[:])
	ice := m.y[inIce]
	liquid := m.liquid(ice)
	freezes, densest := m.bathPoints(liquid)
	lower, upper := m.capacities(m.y[inBeer])
	wet, alone := m.keg.at(f.t1, f.tw)
	reach := math.Min(1, ice/(ice+liquid)/packed)
	if b.Stirred {
		reach = 1
	}
	steps := []volume.Step{
		{Name: "depth of the bath at the start", Symbol: "d", Value: float64(c.Depth), Suffix: "m", Source: "water and ice as water, around the kegs"},
		{Name: "share of the keg below it", Symbol: "s", Value: c.Covered, Source: "d over the keg's height, less where it floats"},
		{Name: "heat capacity below the bath, one keg", Symbol: "C1", Value: lower, Suffix: "j_per_k", Source: "ρ V1 c + s m_steel 477 J/(kg K), at the end"},
		{Name: "heat capacity above the bath, one keg", Symbol: "C2", Value: upper, Suffix: "j_per_k", Source: "the rest, at the end"},
		{Name: "coefficient with water around", Symbol: "U", Value: wet, Suffix: "w_per_m2_k", Source: "1/(1/h_beer + 1/h_water), Churchill & Chu with the density of Gebhart & Mollendorf"},
		{Name: "coefficient with ice alone", Symbol: "U", Value: alone, Suffix: "w_per_m2_k", Source: "1/(1/h_beer + 1/75), judged"},
		{Name: "conductance half-way, one keg", Symbol: "UA", Value: float64(c.UA), Suffix: "w_per_k", Source: "U times side below the bath and half the bottom"},
		{Name: "heat from the beer, one keg", Symbol: "q_keg", Value: f.lower + f.upper, Suffix: "w", Source: "U A (T1 − Tw), at the end"},
		{Name: "heat from the air, one keg", Symbol: "q_air", Value: f.airLower + f.airUpper, Suffix: "w", Source: "convection (Churchill & Chu, McAdams), radiation, dew, sun"},
		{Name: "heat through the tub", Symbol: "q_tub", Value: f.tub, Suffix: "w", Source: "wall, floor and top"},
		{Name: "heat that 1 kg of ice takes up", Symbol: "L", Value: m.cold, Suffix: "j_per_kg", Source: "333.43 kJ/kg and warming to 0 °C; IAPWS R10-06"},
		{Name: "share of the depth that ice reaches", Symbol: "r", Value: reach, Source: "ice over ice and water, over 0.55; 1 if stirred"},
		{Name: "coldest that ice can make the water", Symbol: "Td", Value: freezes + (1-reach)*math.Max(0, densest-freezes), Suffix: "c", Source: "T_freezing + (1 − r)(T_densest − T_freezing)"},
		{Name: "bath", Symbol: "Tw", Value: f.tw, Suffix: "c", Source: "∫ dH_w/dt"},
		{Name: "melting", Symbol: "dm/dt", Value: f.melt * 3600, Suffix: "kg_per_h", Source: "25 W/(K kg) m0^⅓ m^⅔ (Tw − Td)/L"},
		{Name: "time", Symbol: "t", Value: c.Time.Seconds(), Suffix: "s", Source: "the balance, stepped"},
		{Name: "beer as drawn", Symbol: "T1", Value: c.Temperature.Celsius(), Suffix: "c", Source: "the balance, stepped"},
	}
	if b.Drained {
		return append(steps[:11], steps[13:]...)
	}
	return steps
}
