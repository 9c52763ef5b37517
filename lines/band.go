package lines

import (
	"math"

	"example.com/pourwell/internal/pipe"
)

// Relative uncertainties of the losses.
const (
	uncertainStraight = 0.03 // of Churchill against [5], Re 3200 to 20000
	uncertainCoil     = 0.05 // of White and Ito against a trade table of coils
	uncertainLiquid   = 0.15 // of the viscosity of beer
	uncertainFixed    = 0.5  // of fittings and hardware: estimates, no published figure for a beer tap
)

// Band returns the uncertainty of what was asked for, a flow, a pressure or a
// length: that of the correlations and of the viscosity, half of what fittings
// and hardware take, and in a straight tube in transition the whole way from
// laminar to turbulent flow. The bores are taken as given.
func (p Pour) Band() Band {
	c := &p.circuit
	b := Band{Source: "friction within 3 to 5 %, viscosity 15 %, fittings and hardware 50 %; in transition the laminar and the turbulent line"}
	switch p.answer {
	case answerGauge:
		low, high := c.lossBand(float64(p.Flow))
		b.Name, b.Suffix = "applied pressure", "pa"
		b.Low, b.High = c.lift+low, c.lift+high
	case answerLength:
		b.Name, b.Suffix = "length", "m"
		b.Low, b.High = c.lengthBand(p.solved, float64(p.Flow), p.Gauge.Pascals())
	default:
		b.Name, b.Suffix = "flow", "m3_per_s"
		b.Low, b.High = c.flowBand(float64(p.Flow), p.Gauge.Pascals())
	}
	return b
}

// frictionBand returns the relative limits of the friction of segment s at flow q.
func (s *segment) frictionBand(q float64) (low, high float64) {
	re := s.reynolds * q
	f := s.friction(q)
	correlation, power := uncertainStraight, 0.25 // Δp ~ μ^0.25 when turbulent
	if s.curvature > 0 {
		correlation, power = uncertainCoil, 0.5
		if re > pipe.CriticalIto(s.curvature) {
			power = 0.25
		}
	} else if re < pipe.TransitionLow {
		power = 1
	}
	width := math.Hypot(correlation, power*uncertainLiquid)
	low, high = 1-width, 1+width
	if s.curvature == 0 {
		fLow, fHigh := pipe.Transition(re, s.roughness)
		low, high = low*fLow/f, high*fHigh/f
	}
	return low, high
}

// lossBand returns the limits of the losses at flow q in Pa.
func (c *circuit) lossBand(q float64) (low, high float64) {
	if q == 0 {
		return 0, 0
	}
	low, high = (1-uncertainFixed)*(c.fittings+c.hardware), (1+uncertainFixed)*(c.fittings+c.hardware)
	for i := range c.n {
		s := &c.tubes[i]
		f := s.friction(q)
		l, h := s.frictionBand(q)
		low += s.loss * f * l
		high += s.loss * f * h
	}
	return low * q * q, high * q * q
}

// flowBand returns the flows whose greatest and least losses are what the
// applied pressure leaves. The bands jump where the transition begins and ends,
// so it bisects.
func (c *circuit) flowBand(q, applied float64) (low, high float64) {
	drive := applied - c.lift
	find := func(lo, hi float64, greatest bool) float64 {
		for range 60 {
			mid := (lo + hi) / 2
			l, h := c.lossBand(mid)
			if greatest && h > drive || !greatest && l > drive {
				hi = mid
			} else {
				lo = mid
			}
		}
		return (lo + hi) / 2
	}
	return find(0, q, true), find(q, 4*q, false)
}

// lengthBand returns the limits of the length of tube i.
func (c *circuit) lengthBand(i int, q, applied float64) (low, high float64) {
	rest := *c
	s := &rest.tubes[i]
	perLength := c.perMetre(s.tube) * s.friction(q) * q * q
	l, h := s.frictionBand(q)
	s.loss = 0
	restLow, restHigh := rest.lossBand(q)
	left := applied - c.lift
	return math.Max(0, (left-restHigh)/(perLength*h)), (left - restLow) / (perLength * l)
}
