package plan

import (
	"errors"
	"math"
	"time"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// topUp runs the tub from bedding to the last glass, adding ice as it takes to
// keep a reserve of it and the beer no warmer than hold; where no ice holds the
// beer so cold, the reserve alone, and held is invalid.
func (p *planner) topUp(bath thermal.IceBath, hold thermal.Temperature, bed time.Time) (kept thermal.IceBath, day thermal.Chilling, held thermal.Temperature, err error) {
	total := p.end.Sub(bed)
	u := thermal.Upkeep{Bag: unit.Mass(p.day.Ice.Bag.si), Reserve: lowIce, Hold: hold}
	kept, err = bath.KeptCold(total, u)
	if errors.Is(err, thermal.ErrNoSolution) {
		u.Hold = thermal.Temperature{}
		kept, err = bath.KeptCold(total, u)
	}
	if err != nil {
		return bath, day, u.Hold, err
	}
	day, err = kept.After(total)
	return kept, day, u.Hold, err
}

// bags rounds an amount of ice up to whole bags.
func (p *planner) bags(ice unit.Mass) unit.Mass {
	bag := p.day.Ice.Bag.si
	return unit.Mass(math.Ceil(float64(ice)/bag-1e-9) * bag)
}
