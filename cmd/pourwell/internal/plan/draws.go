package plan

import (
	"math"
	"time"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// draws returns when beer i is drawn, counted from a time before the first
// glass: what guests are expected to ask for, fast in the first hour, with what
// is wasted, at most what the kegs give.
func (p *planner) draws(i int, from time.Time) []thermal.Pour {
	d, plan := p.demands[i], p.plan.Beers[i]
	length := p.end.Sub(p.start)
	first := min(length, time.Hour)
	early, _ := d.At(first)
	all, _ := d.At(length)
	if all == 0 {
		return nil
	}
	held := math.Min(1, float64(plan.Kegs*plan.PerKeg)/all)
	glass := p.pours[i] / unit.Volume(1-p.pour(&p.day.Beers[i]).Waste)
	volume := func(servings float64) unit.Volume { return unit.Volume(servings*held) * glass }
	open := p.start.Sub(from)
	draws := []thermal.Pour{{Start: open, End: open + first, Volume: volume(early)}}
	if length > first {
		draws = append(draws, thermal.Pour{Start: open + first, End: open + length, Volume: volume(all - early)})
	}
	return draws
}

// drawnBy returns how much of the draws is out at a time.
func drawnBy(draws []thermal.Pour, at time.Duration) (litre float64) {
	for _, d := range draws {
		share := float64(at-d.Start) / float64(d.End-d.Start)
		litre += litres(d.Volume) * math.Max(0, math.Min(share, 1))
	}
	return litre
}

// pace is how glasses come in a queue: one after another with the usual change
// between them, ten in a row.
func (p *planner) pace(i int) thermal.Pours {
	glass, flow := p.pours[i], p.flow(i)
	return thermal.Pours{
		Glass: glass, Flow: thermal.Flow(flow), Number: 10,
		Every: (flow.TimeFor(glass) + p.day.Taps.Change.duration()).Truncate(time.Millisecond) + time.Millisecond,
	}
}

// typical spaces the glasses as the first hour's guests do on average.
func (p *planner) typical(i int) thermal.Pours {
	pours := p.pace(i)
	first := min(p.end.Sub(p.start), time.Hour)
	if glasses, _ := p.demands[i].At(first); glasses > 0 {
		pours.Every = max(pours.Every, time.Duration(float64(first)/glasses))
	}
	return pours
}
