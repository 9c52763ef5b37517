package thermal

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Chilling is what kegs in an ice bath do.
type Chilling struct {
	Time        time.Duration
	Temperature Temperature   // of the beer as drawn, from the bottom, after Time
	Upper       Temperature   // at the top of the beer, above the bath
	Mixed       Temperature   // of all the beer in a keg, if it were mixed: mean of the two by volume
	Bath        Temperature   // of the water beside the kegs, or of the ice alone
	IceLeft     unit.Mass     // after Time
	IceMelted   unit.Mass     // by then
	Hold        time.Duration // from the start until the ice is gone; 30 days stands for longer
	UA          Conductance   // between one keg's beer and the bath, half-way between the temperatures
	Depth       unit.Length   // of the bath at the start
	Covered     float64       // share of the keg's height below it at the start, 0 to 1
	FloatsBelow float64       // fill below which a keg floats in that depth, 0 if it never does
	BathFreezes Temperature   // freezing point of the bath at the start: 0 °C unless salted
	FreezesBeer bool          // that is below the freezing point of the beer
	Layered     bool          // so much of the beer stands out of the bath, or is so much warmer, that Temperature is not that of the keg

	bath     IceBath
	timeAsks bool
}

func invalidChilling() Chilling {
	nan := math.NaN()
	return Chilling{
		IceLeft: unit.Mass(nan), IceMelted: unit.Mass(nan), UA: Conductance(nan),
		Depth: unit.Length(nan), Covered: nan, FloatsBelow: nan,
	}
}

// chilling gathers the answer at the present state.
func (m *bathModel) chilling() Chilling {
	f, now := m.flows(m.y[:]), m.sample()
	half := (m.From.Celsius() + f.t1) / 2
	c := Chilling{
		Time: now.At, Temperature: now.Beer, Upper: now.Upper, Mixed: m.mixed(now), Bath: now.Bath,
		IceLeft: now.Ice, IceMelted: unit.Mass(m.put) - now.Ice,
		UA:      m.conductance(half, f.tw),
		Covered: m.border, Depth: unit.Length(m.start * float64(m.Vessel.Height)),
		bath: m.IceBath,
	}
	c.Layered = c.Covered < enoughCovered*m.Fill || float64(c.Upper.Sub(c.Temperature)) > twoZones
	if !m.Drained {
		c.FloatsBelow = m.Vessel.FloatsBelow(c.Depth)
	}
	freezes, _ := m.bathPoints(m.fresh)
	c.BathFreezes = Celsius(freezes)
	c.FreezesBeer = freezes < m.Beer.FreezingPoint().Celsius()
	return c
}

// finish checks that no beer froze, and adds how long the ice holds.
func (m *bathModel) finish(fn string, c Chilling) (Chilling, error) {
	const reached = "temperature that the beer comes to"
	if err := cmp.Or(m.Beer.checkLiquid(fn, reached, Celsius(m.coldest)), m.Beer.checkLiquid(fn, reached, c.Temperature)); err != nil {
		return invalidChilling(), err
	}
	c.Hold = seconds(m.holds())
	return c, nil
}

// sample returns the present state.
func (m *bathModel) sample() Sample {
	f := m.flows(m.y[:])
	upper := f.t2
	if m.y[inBeer] <= m.border*float64(m.Vessel.Capacity) {
		upper = f.t1 // no beer above the bath
	}
	return Sample{
		At: seconds(m.t), Beer: Celsius(f.t1), Upper: Celsius(upper), Bath: Celsius(f.tw),
		Ice: unit.Mass(m.y[inIce]), Left: unit.Volume(m.y[inBeer]),
	}
}

// mixed returns the mean temperature of the beer of a sample by volume; that
// beside the bath where the keg is empty.
func (m *bathModel) mixed(s Sample) Temperature {
	if s.Left <= 0 {
		return s.Beer
	}
	below := math.Min(1, m.border*float64(m.Vessel.Capacity/s.Left))
	return s.Upper.Add(Difference(below) * s.Beer.Sub(s.Upper))
}

// conductance returns the UA between the lower beer of one keg at t °C and the
// bath at tw.
func (m *bathModel) conductance(t, tw float64) Conductance {
	beer, ice := m.y[inBeer], m.y[inIce]
	wet := math.Min(m.covered(beer, ice), math.Min(m.border, beer/float64(m.Vessel.Capacity)))
	area := m.body.side*wet + footArea*m.body.end
	return Conductance(area * m.coefficient(t, tw, ice, m.liquid(ice)))
}

// Course returns the state of tub and kegs at n evenly spaced times from the
// start to Time, both included. It is nil for a result that came with an error,
// and panics for an n below 2.
func (c Chilling) Course(n int) []Sample {
	samples := newCourse(n)
	m, err := newBathModel(c.bath, "thermal.Chilling.Course")
	if err != nil || !c.Temperature.IsValid() {
		return nil
	}
	for i := range samples {
		at := c.Time.Seconds() * float64(i) / float64(len(samples)-1)
		m.runFor(at)
		samples[i] = m.sample()
	}
	return samples
}

// spread returns the share by which all coefficients between beer, bath and ice
// may be off together, low and high, and why.
func (c Chilling) spread() (low, high float64, why string) {
	if c.bath.Drained {
		return 0.5, 2, "a keg in ice without water, a factor of 2: how much of it touches ice is chance"
	}
	share, where := 0.35, "a keg in still ice water"
	within := func(t Temperature) bool { return t.Celsius() >= 2 && t.Celsius() <= 8 }
	if within(c.bath.From) && within(c.Temperature) {
		share, where = 0.5, "beer near the temperature where water is densest and convection weakest"
	}
	return 1 - share, 1 + share, where + ", ±" + percent(share) + " on its films and on those of the ice"
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
	m, err := newBathModel(c.bath, "thermal.Chilling.Steps")
	if err != nil {
		return nil
	}
	m.runFor(c.Time.Seconds())
	f := m.flows(m.y[:])
	lower, upper := m.capacities(m.y[inBeer])
	wet, alone := m.keg.at(f.t1, f.tw)
	steps := []volume.Step{
		{Name: "depth of the bath at the start", Symbol: "d", Value: float64(c.Depth), Suffix: "m", Source: "water and ice as water, around the kegs"},
		{Name: "share of the keg below it", Symbol: "s", Value: c.Covered, Source: "d over the keg's height, less where it floats"},
		{Name: "heat capacity below the bath, one keg", Symbol: "C1", Value: lower, Suffix: "j_per_k", Source: fmt.Sprintf("ρ V1 c + s m_steel %g J/(kg K), at the end", steelHeat)},
		{Name: "heat capacity above the bath, one keg", Symbol: "C2", Value: upper, Suffix: "j_per_k", Source: "the rest, at the end"},
		{Name: "coefficient with water around", Symbol: "U", Value: wet, Suffix: "w_per_m2_k", Source: "1/(1/h_beer + 1/h_water), Churchill & Chu with the density of Gebhart & Mollendorf"},
		{Name: "coefficient with ice alone", Symbol: "U", Value: alone, Suffix: "w_per_m2_k", Source: fmt.Sprintf("1/(1/h_beer + 1/%g), judged", iceAlone)},
		{Name: "conductance half-way, one keg", Symbol: "UA", Value: float64(c.UA), Suffix: "w_per_k", Source: "U times side below the bath and half the bottom"},
		{Name: "heat from the beer, one keg", Symbol: "q_keg", Value: f.lower + f.upper, Suffix: "w", Source: "U A (T1 − Tw), at the end"},
		{Name: "heat from the air, one keg", Symbol: "q_air", Value: f.airLower + f.airUpper, Suffix: "w", Source: "convection (Churchill & Chu, McAdams), radiation, dew, sun"},
		{Name: "heat through the tub", Symbol: "q_tub", Value: f.tub, Suffix: "w", Source: "wall, floor and top"},
		{Name: "heat that 1 kg of ice takes up", Symbol: "L", Value: m.cold, Suffix: "j_per_kg", Source: fmt.Sprintf("%g kJ/kg and warming to 0 °C; IAPWS R10-06", water.LatentHeat/1e3)},
	}
	melted := "(q_tub + n q_keg)/L" // the water runs off as it melts
	if !c.bath.Drained {
		ice := m.y[inIce]
		melt := m.melting(f.tw, ice, m.liquid(ice))
		steps = append(steps,
			volume.Step{Name: "share of the depth that ice reaches", Symbol: "r", Value: melt.reach, Source: fmt.Sprintf("ice over ice and water, over %g; 1 if stirred", packed)},
			volume.Step{Name: "coldest that ice can make the water", Symbol: "Td", Value: melt.drawn, Suffix: "c", Source: "T_freezing + (1 − r)(T_densest − T_freezing)"})
		melted = fmt.Sprintf("%g W/(K kg) m0^⅓ m^⅔ (Tw − Td)/L", iceFilm)
	}
	return append(steps,
		volume.Step{Name: "bath", Symbol: "Tw", Value: f.tw, Suffix: "c", Source: "∫ dH_w/dt"},
		volume.Step{Name: "melting", Symbol: "dm/dt", Value: f.melt * 3600, Suffix: "kg_per_h", Source: melted},
		volume.Step{Name: "time", Symbol: "t", Value: c.Time.Seconds(), Suffix: "s", Source: "the balance, stepped"},
		volume.Step{Name: "beer as drawn", Symbol: "T1", Value: c.Temperature.Celsius(), Suffix: "c", Source: "the balance, stepped"},
	)
}
