package thermal

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// KeptCold returns b with the fewest bags of ice added that keep ice in the tub
// until d, each put in as late as leaves a quarter of the first ice: earlier
// ice melts for nothing, later ice finds the bath warm. Top-ups that b already
// has are kept.
//
// Valid for a bag from 0.1 kg and d up to 30 days; otherwise, and for the
// reasons of [IceBath.Reach], it returns an error, [ErrNoSolution] if more than
// 200 bags are needed, and b as it was.
func (b IceBath) KeptCold(d time.Duration, bag unit.Mass) (IceBath, error) {
	const fn = "thermal.IceBath.KeptCold"
	if err := b.check(fn); err != nil {
		return b, err
	}
	if err := limitDuration.Check(fn, d.Hours()); err != nil {
		return b, err
	}
	if err := limitBag.Check(fn, float64(bag)); err != nil {
		return b, err
	}
	kept := b
	kept.TopUps = append([]TopUp(nil), b.TopUps...)
	for range mostBags {
		m, err := newBathModel(kept, fn)
		if err != nil {
			return b, err
		}
		low := m.runsLow(d.Seconds(), math.Max(float64(b.Ice)/4, 0.1))
		if math.IsNaN(low) {
			return kept, nil
		}
		kept.TopUps = append(kept.TopUps, TopUp{At: seconds(low), Ice: bag})
	}
	return b, fmt.Errorf("%s: %w: %d bags of %s do not last for %.1f h",
		fn, ErrNoSolution, mostBags, massInBoth(float64(bag)), d.Hours())
}

var limitBag = volume.Range{Name: "bag of ice", Min: 0.1, Max: 1000, Suffix: "kg", Source: "from a handful to a pallet"}

const mostBags = 200

// runsLow returns the first moment, s, after the last top-up at which so little
// ice is left, or NaN if the ice then still lasts until end without another.
func (m *bathModel) runsLow(end, reserve float64) float64 {
	last := 0.0
	for _, u := range m.TopUps {
		last = math.Max(last, u.At.Seconds())
	}
	low := math.NaN()
	for m.t < end {
		m.advance(end)
		if math.IsNaN(low) && m.t >= last && m.y[inIce] <= reserve {
			low = m.t
		}
		if m.t >= last && !math.IsNaN(m.iceGone) && m.t < end {
			return low
		}
	}
	return math.NaN()
}
