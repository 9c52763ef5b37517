package thermal

import (
	"cmp"
	"math"
	"slices"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Pour is a stretch of time in which beer is drawn at a steady rate, evenly
// from all kegs of the tub.
type Pour struct {
	Start, End time.Duration // from the start
	Volume     unit.Volume   // of beer, from all kegs together
}

// Between returns the pour that runs at flow f from start to end.
func (f Flow) Between(start, end time.Duration) Pour {
	return Pour{Start: start, End: end, Volume: unit.Volume(float64(f) * (end - start).Seconds())}
}

// A TopUp is ice put into the tub, as cold as the first.
type TopUp struct {
	At  time.Duration // from the start
	Ice unit.Mass
}

// checkSchedule checks pours and top-ups.
func (b IceBath) checkSchedule(fn string) error {
	for _, p := range b.Pours {
		end := volume.Range{
			Name: "end of a pour", Min: p.Start.Hours(), Max: limitDuration.Max, Suffix: "h",
			Source: "a pour ends after it starts",
		}
		if err := cmp.Or(
			limitDuration.Check(fn, p.Start.Hours()),
			end.Check(fn, p.End.Hours()),
			limitPour.Check(fn, float64(p.Volume/volume.Litre)),
		); err != nil {
			return err
		}
		if p.Volume > 0 && p.End == p.Start {
			return &RangeError{Func: fn, Name: "volume of a pour that takes no time", Value: float64(p.Volume / volume.Litre), Suffix: "l"}
		}
	}
	total := b.Ice
	for _, t := range b.TopUps {
		if err := cmp.Or(limitDuration.Check(fn, t.At.Hours()), limitIce.Check(fn, float64(t.Ice))); err != nil {
			return err
		}
		total += t.Ice
	}
	return limitIce.Check(fn, float64(total))
}

// plan sorts the times at which something changes, and refuses pours that the
// kegs cannot give.
func (m *bathModel) plan(fn string) error {
	total := unit.Volume(0)
	m.breaks = make([]float64, 0, 2*len(m.Pours)+len(m.TopUps)+1)
	for _, p := range m.Pours {
		total += p.Volume
		m.breaks = append(m.breaks, p.Start.Seconds(), p.End.Seconds())
	}
	for _, t := range m.TopUps {
		m.breaks = append(m.breaks, t.At.Seconds())
	}
	slices.Sort(m.breaks)
	have := unit.Volume(m.n*m.Fill) * m.Vessel.Capacity
	if total > have*(1+1e-9) {
		return needs(fn, "volume_l", float64(total/volume.Litre), float64(have/volume.Litre), "the pours take {%.6g l}, and %s {%.6g l} of beer", float64(total/volume.Litre), holding(m.Kegs), float64(have/volume.Litre))
	}
	return nil
}

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
