package volume

import (
	"cmp"
	"fmt"
	"math"
)

// A Choice is one beer among those on offer, or one size of keg among those on
// hand.
type Choice struct {
	Name  string
	Share float64 // of the beer drinkers who want it; the shares of a menu sum to 1
	Keg   Yield   // what each of its kegs gives
	Kegs  int     // on hand; 0 lets the confidence decide
	Price float64 // of a full keg, in any currency; 0 if it does not matter
}

// Menu returns the demand for each of several beers. Each drinker is taken to
// stay with one beer, so that a beer of share q is a crowd of its own, of which
// share · q drink beer; its chance of running out does not count those who turn
// to it when another is gone. The probability that some beer runs out is at
// most the sum of theirs.
//
// Errors as [Crowd.Demand], and if the shares do not sum to 1 within 0.001.
func (c Crowd) Menu(beers []Choice) ([]Demand, error) {
	const fn = "volume.Crowd.Menu"
	sum := 0.0
	for _, b := range beers {
		sum += b.Share
	}
	if err := cmp.Or(c.check(fn), limitBeers.Check(fn, float64(len(beers))), limitShares.Check(fn, sum)); err != nil {
		return nil, err
	}
	all := make([]Demand, len(beers))
	for i, b := range beers {
		var err error
		if all[i], err = c.demand(fn, b); err != nil && len(beers) == 1 {
			return nil, err
		} else if err != nil {
			return nil, fmt.Errorf("beer %d, %q: %w", i+1, b.Name, err)
		}
	}
	return all, nil
}

// Plus returns what two beers of one menu ask for together: the sums of
// servings, kegs, volume and leftovers, the larger chance of running out, the
// earlier times and the cost of all kegs over all servings drunk. The chance
// that some beer runs out lies between RunOut and the sum of all.
func (d Demand) Plus(e Demand) Demand {
	sum := Demand{
		Expected: d.Expected + e.Expected, Planned: d.Planned + e.Planned, Kegs: d.Kegs + e.Kegs, Volume: d.Volume + e.Volume,
		RunOut: math.Max(d.RunOut, e.RunOut), Leftover: d.Leftover + e.Leftover,
		LastsFor: min(d.LastsFor, e.LastsFor), RunsOutAt: min(d.RunsOutAt, e.RunsOutAt),
		crowd: d.crowd, parts: append(d.all(), e.all()...), drunk: d.drunk + e.drunk,
	}
	if sum.drunk > 0 {
		sum.GlassCost = (d.GlassCost*d.drunk + e.GlassCost*e.drunk) / sum.drunk
	}
	return sum
}

// all returns the demands that d is the sum of, itself if it is none.
func (d Demand) all() []Demand {
	if d.parts == nil {
		return []Demand{d}
	}
	return d.parts[:len(d.parts):len(d.parts)]
}

func (b Choice) check(fn string) error {
	if err := cmp.Or(
		limitChoice.Check(fn, b.Share),
		limitKegs.Check(fn, float64(b.Kegs)),
		limitPrice.Check(fn, b.Price),
		limitCapacity.Check(fn, float64(b.Keg.Pour.Keg.Capacity/Litre)),
	); err != nil {
		return err
	}
	if b.Keg.Pours < 1 {
		return &NoSolutionError{Func: fn, Why: say("a keg of {%.6g l} gives no whole pour of {%.6g l}",
			float64(b.Keg.Pour.Keg.Capacity/Litre), float64(b.Keg.Liquid/Litre))}
	}
	return limitPours.Check(fn, float64(b.Keg.Pours))
}
