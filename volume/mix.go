package volume

import (
	"cmp"

	"gonum.org/v1/gonum/unit"
)

// Mix returns the demand for one beer met from kegs of several sizes: those of
// the stock, each up to its Kegs, that hold the planned servings at the lowest
// price or, unless every size has a price, with the least left over, and then
// with the fewest kegs. Demand.Mix lists the kegs chosen; Name and Share of the
// stock do not matter.
//
// The choice is exact: all sums of pours are compared. Volume and the chance of
// running out are those of the kegs chosen. Leftover counts pours of the first
// size.
//
// Errors as [Crowd.Demand]; stock that does not suffice gives [ErrNoSolution]
// with the numbers that make it so. Mix plans up to 100 000 servings.
func (c Crowd) Mix(stock []Choice) (Demand, error) {
	const fn = "volume.Crowd.Mix"
	bad := noDemand(Choice{Share: 1})
	if err := cmp.Or(c.check(fn), limitSizes.Check(fn, float64(len(stock)))); err != nil {
		return bad, err
	}
	priced, held := true, int64(0)
	for _, s := range stock {
		if err := s.check(fn); err != nil {
			return bad, err
		}
		priced = priced && s.Price > 0
		held += int64(s.Kegs) * int64(s.Keg.Pours)
	}
	d := c.ask(Choice{Share: 1, Keg: stock[0].Keg})
	if err := limitMix.Check(fn, float64(d.Planned)); err != nil {
		return bad, err
	}
	if held < int64(d.Planned) {
		return bad, &NoSolutionError{
			Func: fn, Why: say("%s planned and the kegs on hand hold %d", several(d.Planned, "serving"), held),
			Key: "servings", Needed: float64(d.Planned), Given: float64(held),
		}
	}
	d.priced = priced
	d.Mix = cover(stock, d.Planned, priced)
	pours, price := 0, 0.0
	for _, m := range d.Mix {
		d.Kegs += m.Kegs
		d.Volume += unit.Volume(m.Kegs) * m.Keg.Pour.Keg.Capacity
		pours += m.Kegs * m.Keg.Pours
		price += float64(m.Kegs) * m.Price
	}
	d.meet(pours, price)
	return d, nil
}

// A lot is a number of kegs of one size taken or left together. Lots of 1, 2,
// 4, … make up every number.
type lot struct {
	size, kegs, pours int
	price             float64
}

// A way is the best known way to make exactly so many pours.
type way struct {
	price float64
	kegs  int // −1 if there is no way
}

func (w way) better(v way, priced bool) bool {
	if v.kegs < 0 || priced && w.price != v.price {
		return v.kegs < 0 || w.price < v.price
	}
	return w.kegs < v.kegs
}

// cover returns the kegs of the stock that hold at least need pours, which the
// whole stock does: a bounded knapsack over the sums of pours. Beyond need plus
// the largest keg no sum is worth having, for a keg could be left out.
func cover(stock []Choice, need int, priced bool) []Choice {
	largest := 0
	var lots []lot
	for i, s := range stock {
		largest = max(largest, s.Keg.Pours)
		for left, n := min(s.Kegs, need/s.Keg.Pours+1), 1; left > 0; n *= 2 {
			n = min(n, left)
			lots = append(lots, lot{i, n, n * s.Keg.Pours, float64(n) * s.Price})
			left -= n
		}
	}
	top := need + largest
	ways := make([]way, top+1)
	for i := range ways {
		ways[i].kegs = -1
	}
	ways[0].kegs = 0
	took := make([][]bool, len(lots))
	for i, l := range lots {
		took[i] = make([]bool, top+1)
		for sum := top; sum >= l.pours; sum-- {
			from := ways[sum-l.pours]
			if from.kegs < 0 {
				continue
			}
			if w := (way{from.price + l.price, from.kegs + l.kegs}); w.better(ways[sum], priced) {
				ways[sum] = w
				took[i][sum] = true
			}
		}
	}
	best := -1
	for sum := need; sum <= top; sum++ {
		if ways[sum].kegs < 0 {
			continue
		}
		if best < 0 || priced && ways[sum].price < ways[best].price {
			best = sum
		}
	}
	chosen := make([]Choice, len(stock))
	copy(chosen, stock)
	for i := range chosen {
		chosen[i].Kegs = 0
	}
	for i := len(lots) - 1; i >= 0; i-- {
		if took[i][best] {
			chosen[lots[i].size].Kegs += lots[i].kegs
			best -= lots[i].pours
		}
	}
	return chosen
}
