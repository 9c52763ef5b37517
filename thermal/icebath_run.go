package thermal

import (
	"math"

	"example.com/pourwell/internal/solve"
	"gonum.org/v1/gonum/unit"
)

// advance takes one step that does not pass end, the next change of pours or
// top-ups, or the moment when the ice is gone.
func (m *bathModel) advance(end float64) {
	for len(m.breaks) > 0 && m.breaks[0] <= m.t {
		m.breaks = m.breaks[1:]
	}
	if len(m.breaks) > 0 {
		end = math.Min(end, m.breaks[0])
	}
	m.begin()
	t := m.s.Step(m.t, end, m.y[:])
	if m.y[inIce] < m.crumbs() && math.IsNaN(m.iceGone) {
		x, ok := solve.Root(func(x float64) float64 { return m.s.At(x, inIce) - m.crumbs() }, m.t, t, 1e-3)
		if ok && x > m.t && x < t {
			m.s.Undo(m.y[:])
			for now := m.t; now < x; {
				now = m.s.Step(now, x, m.y[:])
			}
			t = x
		}
		m.y[inWater] -= m.cold * m.y[inIce] // the last crumbs melt at once
		if m.Drained {
			m.y[inWater] = 0
			m.y[inGain] += m.cold * m.y[inIce]
		}
		m.y[inIce], m.iceGone = 0, t
		m.s.Restart()
	}
	m.t = t
}

// crumbs is the mass of ice that counts as none, kg: a ten-thousandth, because
// the last of a melting piece goes ever faster.
func (m *bathModel) crumbs() float64 { return 1e-4 * m.heap }

// begin sets the pour rate for the step that starts now and puts in the top-ups
// that are due.
func (m *bathModel) begin() {
	rate := 0.0
	for _, p := range m.Pours {
		if s, e := p.Start.Seconds(), p.End.Seconds(); s <= m.t && m.t < e {
			rate += float64(p.Volume) / (e - s) / m.n
		}
	}
	if rate != m.rate {
		m.rate = rate
		m.s.Restart()
	}
	for _, u := range m.TopUps {
		if due := u.At.Seconds(); due <= m.t && due >= m.toppedTo {
			m.topUp(float64(u.Ice))
		}
	}
	m.toppedTo = math.Nextafter(m.t, math.Inf(1))
}

// topUp puts in ice, and the bath rises.
func (m *bathModel) topUp(ice float64) {
	if m.y[inIce] == 0 {
		m.heap = 0 // a new heap, whose surface is its own
	}
	m.heap += ice
	m.put += ice
	m.y[inIce] += ice
	m.iceGone = math.NaN()
	m.rise()
	m.s.Restart()
}

// rise finds the new depth; what the tub cannot take runs over the brim.
func (m *bathModel) rise() {
	if m.Drained {
		return
	}
	floor := m.Tub.Floor()
	foot := float64(m.Vessel.Displaced(m.Vessel.Height)) / float64(m.Vessel.Height)
	liquid := m.liquid(0) / 1000
	depth := liquid / (floor - m.n*foot)
	if depth > float64(m.Vessel.Height) {
		depth = (liquid + m.n*foot*float64(m.Vessel.Height)) / floor
	}
	if brim := float64(m.Tub.Height); depth > brim {
		if have := m.liquid(m.y[inIce]); have > 0 {
			over := math.Min((depth-brim)*(floor-m.n*foot)*1000, have)
			heat := m.y[inWater] * over / have
			m.bailed += over
			m.y[inWater] -= heat
			m.y[inDrawn] += heat
		}
		depth = brim
	}
	m.depth = math.Min(depth/float64(m.Vessel.Height), 1)
}

// temperature returns the beer's temperature at the bottom, °C.
func (m *bathModel) temperature() float64 { return m.beerAt(m.y[inLower], m.y[inBeer]) }

func (m *bathModel) beerAt(heat, beer float64) float64 {
	lower, _ := m.capacities(beer)
	return heat / lower
}

// runFor advances to the time end, s.
func (m *bathModel) runFor(end float64) {
	for m.t < end {
		m.advance(end)
		m.note(m.temperature())
	}
	m.begin() // what is due at end itself is in
}

// runTo advances until the beer has the target temperature, °C, and reports
// whether it ever does.
func (m *bathModel) runTo(target float64) bool {
	end := limitDuration.Max * 3600
	before := m.temperature()
	m.extreme = before
	if before == target {
		return true
	}
	m.begin()
	for m.t < end {
		m.advance(end)
		now := m.temperature()
		m.note(now)
		if (before-target)*(now-target) <= 0 {
			m.settleOn(target)
			return true
		}
		if math.Abs(now-target) < math.Abs(m.extreme-target) {
			m.extreme = now
		}
		// Without ice, and nothing more to come, a keg on its way to the air's
		// temperature does not turn back.
		if !math.IsNaN(m.iceGone) && len(m.breaks) == 0 && (now-before)*(target-now) < 0 && m.t > m.iceGone+6*3600 {
			return false
		}
		before = now
	}
	return false
}

// settleOn goes back within the last step to the moment when the beer had the
// target temperature.
func (m *bathModel) settleOn(target float64) {
	off := func(x float64) float64 {
		return m.beerAt(m.s.At(x, inLower), m.s.At(x, inBeer)) - target
	}
	start := m.s.Start()
	x, ok := solve.Root(off, start, m.t, 1e-3)
	if !ok || x >= m.t {
		return // at the end of the step
	}
	if m.iceGone == m.t { // the ice went at the end of this step: not yet then
		m.iceGone = math.NaN()
	}
	m.s.Undo(m.y[:])
	for m.t = start; m.t < x; {
		m.t = m.s.Step(m.t, x, m.y[:])
	}
}

// note keeps the coldest beer seen, to refuse what would freeze.
func (m *bathModel) note(c float64) { m.coldest = math.Min(m.coldest, c) }

// holds returns when the ice is gone, s, advancing as far as it takes; 30 days
// where it takes longer.
func (m *bathModel) holds() float64 {
	end := limitDuration.Max * 3600
	for m.t < end && (math.IsNaN(m.iceGone) || len(m.breaks) > 0) {
		m.advance(end)
	}
	if math.IsNaN(m.iceGone) {
		return end
	}
	return m.iceGone
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
	if !m.Drained {
		c.FloatsBelow = m.Vessel.FloatsBelow(c.Depth)
	}
	freezes, _ := m.bathPoints(m.fresh)
	c.BathFreezes = Celsius(freezes)
	c.FreezesBeer = freezes < m.Beer.FreezingPoint().Celsius()
	return c
}

// conductance returns the UA between the lower beer of one keg at t °C and the
// bath at tw.
func (m *bathModel) conductance(t, tw float64) Conductance {
	beer, ice := m.y[inBeer], m.y[inIce]
	wet := math.Min(m.covered(beer, ice), math.Min(m.border, beer/float64(m.Vessel.Capacity)))
	area := m.body.side*wet + footArea*m.body.end
	return Conductance(area * m.coefficient(t, tw, ice, m.liquid(ice)))
}

// finish checks that no beer froze, and adds how long the ice holds.
func (m *bathModel) finish(fn string, c Chilling) (Chilling, error) {
	if err := m.Beer.checkLiquid(fn, "beer temperature reached", Celsius(m.coldest)); err != nil {
		return invalidChilling(), err
	}
	if err := m.Beer.checkLiquid(fn, "beer temperature reached", c.Temperature); err != nil {
		return invalidChilling(), err
	}
	c.Hold = seconds(m.holds())
	return c, nil
}
