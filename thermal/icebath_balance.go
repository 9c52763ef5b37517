package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/solve"
)

// Components of the state. Heats are counted from liquid at 0 °C.
const (
	inLower = iota // heat of the beer and steel below the bath's surface, one keg, J
	inUpper        // heat of those above it, one keg, J
	inBeer         // beer left in one keg, m³
	inWater        // heat of the water of the bath, J
	inIce          // ice left, kg
	inGain         // heat that came from air and sun, J
	inDrawn        // heat that left with drawn beer, all kegs, J
	bathStates
)

// A bathModel is the heat balance of kegs in a tub, and its state.
type bathModel struct {
	IceBath
	n        float64 // kegs
	body     body
	rho, c   float64 // of beer, kg/m³ and J/(kg K)
	densest  float64 // of beer, °C
	steel    float64 // of one keg, J/K
	wall     float64 // resistance of its wall, m² K/W: nothing for steel, a tenth for a bottle's glass
	cold     float64 // that 1 kg of the ice takes up, J/kg
	fresh    float64 // water at the start, kg
	salt     float64 // kg
	depth    float64 // share of the keg's height below the bath, if the keg stands
	share    float64 // of the keg's height per kg of ice alone, where drained
	mixing   float64 // convection between the zones, W/(m² K) per K^(q/3)
	creep    float64 // conduction between the zones, W m/K
	scale    float64 // of all coefficients between beer, bath and ice; for the band
	keg      filmTable
	side     heat.Table // W/m² into the beer through the bare side
	top      heat.Table // W into the beer from above, full keg
	tub      heat.Table // W into the bath
	breaks   []float64
	s        *solve.Integrator
	t        float64
	y        [bathStates]float64
	put      float64 // ice put in so far, kg
	heap     float64 // ice that the present heap was made of, kg
	bailed   float64 // water that ran over the brim, kg
	toppedTo float64 // top-ups due before it are in, s
	rate     float64 // drawn from each keg, m³/s
	iceGone  float64 // s; NaN while there is ice
	extreme  float64 // the beer's temperature closest to a target, °C
	coldest  float64 // of the beer so far, °C
	border   float64 // between the zones: share of the keg's height below the bath at the start
	start    float64 // depth at the start, in heights of the keg
}

// derivative is the balance of [IceBath.Reach].
func (m *bathModel) derivative(_ float64, y, d []float64) {
	f := m.flows(y)
	// Beer drawn from the bottom lets the upper beer down into the lower zone.
	carried := 0.0
	if y[inBeer] > m.border*float64(m.Vessel.Capacity) {
		carried = m.rho * m.c * m.rate * f.t2
	}
	drawn := m.rho * m.c * m.rate * f.t1

	d[inLower] = carried - drawn - f.lower + f.mix + f.airLower
	d[inUpper] = -carried - f.upper - f.mix + f.airUpper
	d[inBeer] = -m.rate
	d[inWater] = f.tub + m.n*(f.lower+f.upper) - m.cold*f.melt
	if m.Drained {
		d[inWater] = 0 // melt water runs off at 0 °C
	}
	d[inIce] = -f.melt
	d[inGain] = f.tub + m.n*(f.airLower+f.airUpper)
	d[inDrawn] = m.n * drawn
}

// bathFlows are the heat flows of one moment, W, and what they rest on.
type bathFlows struct {
	t1, t2, tw float64 // °C: lower beer, upper beer, bath

	lower, upper       float64 // from one keg's beer to the bath
	mix                float64 // from one keg's upper beer to its lower
	airLower, airUpper float64 // from the air to one keg's beer
	tub                float64 // from air and sun to the bath
	melt               float64 // kg/s
}

func (m *bathModel) flows(y []float64) bathFlows {
	beer, ice := y[inBeer], math.Max(y[inIce], 0)
	lower, upper := m.capacities(beer)
	f := bathFlows{t1: y[inLower] / lower}
	layered := upper > 1e-6*lower
	f.t2 = f.t1
	if layered {
		f.t2 = y[inUpper] / upper
	}
	liquid := m.liquid(ice)
	if !m.Drained {
		// Ice that lies almost dry still carries a tenth of its mass as water.
		f.tw = y[inWater] / (math.Max(liquid, 0.1*ice) * m.brineHeat(liquid))
	}
	m.exchange(&f, beer, ice, liquid, layered)
	f.mix = m.mix(beer, f.t1, f.t2, layered)
	switch {
	case ice == 0:
	case m.Drained:
		f.melt = (m.n*(f.lower+f.upper) + f.tub) / m.cold
	default:
		f.melt = m.melting(f.tw, ice, liquid).rate
	}
	return f
}

// exchange adds the heat between beer, bath and air: through the wetted side
// below the bath's surface and above it, through the bottom, and through the
// top.
func (m *bathModel) exchange(f *bathFlows, beer, ice, liquid float64, layered bool) {
	s := m.covered(beer, ice)
	full := beer / float64(m.Vessel.Capacity)
	border := math.Min(m.border, full)
	if !m.Drained || ice > 0 {
		f.tub, _ = m.tub.At(f.tw)
		touched := m.body.side*math.Min(s, border) + footArea*m.body.end
		f.lower = touched * m.coefficient(f.t1, f.tw, ice, liquid) * (f.t1 - f.tw)
		if over := math.Min(s, full) - border; over > 0 {
			f.upper = m.body.side * over * m.coefficient(f.t2, f.tw, ice, liquid) * (f.t2 - f.tw)
		}
	}
	if bare := border - s; bare > 0 {
		q, _ := m.side.At(f.t1)
		f.airLower = m.body.side * bare * q
	}
	top, _ := m.top.At(f.t2)
	if bare := full - math.Max(s, border); bare > 0 {
		q, _ := m.side.At(f.t2)
		top += m.body.side * bare * q
	}
	if layered {
		f.airUpper = top
	} else {
		f.airLower += top
	}
}

// temperature returns the beer's temperature at the bottom, °C.
func (m *bathModel) temperature() float64 { return m.beerAt(m.y[inLower], m.y[inBeer]) }

func (m *bathModel) beerAt(heat, beer float64) float64 {
	lower, _ := m.capacities(beer)
	return heat / lower
}

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
