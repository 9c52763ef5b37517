package thermal

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/internal/solve"
	"gonum.org/v1/gonum/unit"
)

// Upkeep says how a tub is kept cold by ice added in bags. Beside the
// bag, [UsualReserve] is what most need.
type Upkeep struct {
	Bag     unit.Mass
	Reserve float64     // share of the first ice that is left at any moment
	Hold    Temperature // warmest beer to be drawn; the zero value asks for none
}

// UsualReserve is the share of the first ice that is kept where nothing else is
// asked for: our choice, no source.
const UsualReserve = 0.2

// reserves are the shares of the first ice that KeptCold tries in turn, beside
// the one asked for, until the beer is held: our choice, no source.
var reserves = [...]float64{0.35, 0.5, 0.65, 0.8}

// mostTopUps ends a schedule that nobody would carry out: our choice.
const mostTopUps = 200

// KeptCold returns b with top-ups that keep it until d as u asks. Whenever no
// more than the reserve is left, as many whole bags go in as bring the ice back
// to what was there at first: earlier ice melts for nothing, later ice finds
// the bath warm. The last time takes no more bags than it needs. Where the beer
// that is drawn still comes warmer than u.Hold, more is kept in reserve: 35, 50,
// 65 and 80 % of the first ice are tried in turn. Beer counts as drawn while
// one of b.Pours runs, without any from the moment it first is cold enough.
// Top-ups that b already has are kept. A tub that begins without ice has no
// reserve to keep and is returned as it is.
//
// Valid for the rows of [Limits] and d up to 30 days; otherwise, and for the
// reasons of [IceBath.Reach], it returns an error and b as it was. An error is
// [ErrNoSolution] if more than 200 top-ups are needed, or if no reserve holds
// the beer at u.Hold.
func (b IceBath) KeptCold(d time.Duration, u Upkeep) (IceBath, error) {
	const fn = "thermal.IceBath.KeptCold"
	err := cmp.Or(
		b.check(fn),
		limitDuration.Check(fn, d.Hours()),
		limitBag.Check(fn, float64(u.Bag)),
		limitReserve.Check(fn, u.Reserve),
	)
	if err != nil || b.Ice == 0 {
		return b, err
	}
	if u.Hold == (Temperature{}) {
		return b.keep(fn, d, u)
	}
	if err := b.Beer.checkLiquid(fn, "temperature to hold", u.Hold); err != nil {
		return b, err
	}
	least, most := u.Reserve, max(u.Reserve, reserves[len(reserves)-1])
	kept, warmest, err := b.held(fn, d, u, least)
	if err != nil || warmest <= u.Hold.Celsius() {
		return kept, err
	}
	all, warmest, err := b.held(fn, d, u, most) // what this does not hold, less does not
	switch {
	case err != nil:
		return b, err
	case warmest > u.Hold.Celsius():
		return b, needs(fn, "temperature_c", warmest, u.Hold.Celsius(), "with ice added in time the beer still comes at {%.4g c}; {%.4g c} is to be held", warmest, u.Hold.Celsius())
	}
	for _, reserve := range reserves {
		if least < reserve && reserve < most {
			kept, warmest, err := b.held(fn, d, u, reserve)
			if err != nil || warmest <= u.Hold.Celsius() {
				return kept, err
			}
		}
	}
	return all, nil
}

// held returns b kept with the reserve given, and the warmest beer then drawn,
// °C; b as it was with an error.
func (b IceBath) held(fn string, d time.Duration, u Upkeep, reserve float64) (IceBath, float64, error) {
	u.Reserve = reserve
	kept, err := b.keep(fn, d, u)
	if err != nil {
		return b, math.NaN(), err
	}
	warmest, err := kept.warmest(d, u.Hold)
	if err != nil {
		return b, math.NaN(), err
	}
	return kept, warmest, nil
}

// keep adds the top-ups that the reserve asks for.
func (b IceBath) keep(fn string, d time.Duration, u Upkeep) (IceBath, error) {
	first := len(b.TopUps)
	back := math.Max(1, math.Floor(float64(b.Ice)*(1-u.Reserve)/float64(u.Bag)+1e-9)) // bags that bring the first ice back
	kept := b
	kept.TopUps = append([]TopUp(nil), b.TopUps...)
	for {
		low, err := kept.runsLow(fn, d, u)
		switch {
		case err != nil:
			return b, err
		case math.IsNaN(low):
			return kept.trim(fn, d, u, first)
		case len(kept.TopUps)-first == mostTopUps:
			return b, noSolution(fn, "%d top-ups do not last for {%.4g s}", mostTopUps, d.Seconds())
		}
		kept.TopUps = append(kept.TopUps, TopUp{At: seconds(low).Truncate(time.Minute), Ice: unit.Mass(back) * u.Bag})
	}
}

// trim takes from the last top-up the bags that the reserve can do without.
func (b IceBath) trim(fn string, d time.Duration, u Upkeep, first int) (IceBath, error) {
	last := len(b.TopUps) - 1
	if last < first {
		return b, nil
	}
	for bags := 1; unit.Mass(bags)*u.Bag < b.TopUps[last].Ice; bags++ {
		less := b
		less.TopUps = append([]TopUp(nil), b.TopUps...)
		less.TopUps[last].Ice = unit.Mass(bags) * u.Bag
		low, err := less.runsLow(fn, d, u)
		if err != nil {
			return b, err
		}
		if math.IsNaN(low) {
			return less, nil
		}
	}
	return b, nil
}

// runsLow returns the first moment, s, after the last top-up at which no more
// than the reserve is left, NaN if there is none before d.
func (b IceBath) runsLow(fn string, d time.Duration, u Upkeep) (float64, error) {
	m, err := newBathModel(b, fn)
	if err != nil {
		return math.NaN(), err
	}
	last := -1.0
	for _, t := range b.TopUps {
		last = math.Max(last, t.At.Seconds())
	}
	reserve := u.Reserve * float64(b.Ice)
	for end := d.Seconds(); m.t < end; {
		before := m.t
		m.advance(end)
		if m.t <= last || m.y[inIce] > math.Max(reserve, m.crumbs()) {
			continue
		}
		low, ok := solve.Root(func(x float64) float64 { return m.s.At(x, inIce) - reserve }, before, m.t, 1)
		if !ok {
			low = m.t // it was low when the last was put in
		}
		if low > last && low < end {
			return low, nil
		}
	}
	return math.NaN(), nil
}

// warmest returns the warmest beer that is drawn until d, °C, to five minutes.
func (b IceBath) warmest(d time.Duration, hold Temperature) (float64, error) {
	day, err := b.After(d)
	if err != nil {
		return math.NaN(), err
	}
	warmest, there := math.Inf(-1), false
	for _, s := range day.Course(int(d/(5*time.Minute)) + 2) {
		drawn := len(b.Pours) == 0 && there
		for _, p := range b.Pours {
			drawn = drawn || p.Volume > 0 && p.Start <= s.At && s.At <= p.End
		}
		there = there || s.Beer.Celsius() <= hold.Celsius()
		if drawn {
			warmest = math.Max(warmest, s.Beer.Celsius())
		}
	}
	if math.IsInf(warmest, -1) && len(b.Pours) == 0 {
		return day.Temperature.Celsius(), nil // it never gets there
	}
	return warmest, nil
}
