package plan

import (
	"math"
	"time"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// topUp runs the tub from bedding to the last glass, adding ice whenever it is
// low: as much as was put in first less what is left, or as much as fits.
func (p *planner) topUp(bath thermal.IceBath, bed time.Time) (thermal.IceBath, thermal.Chilling, error) {
	total := p.end.Sub(bed)
	day, err := bath.After(total)
	for n := 0; err == nil && n < topUps && bath.Ice > 0; n++ {
		at, low := firstLow(day, bath.Ice, total)
		if !low {
			break
		}
		topped, next, fits := p.add(bath, at, total)
		if !fits {
			break
		}
		bath, day = topped, next
	}
	if err != nil {
		return bath, day, err
	}
	return p.trim(bath, day, total)
}

// trim takes whole bags off the last top-up as long as enough ice is left at
// the end.
func (p *planner) trim(bath thermal.IceBath, day thermal.Chilling, total time.Duration) (thermal.IceBath, thermal.Chilling, error) {
	last := len(bath.TopUps) - 1
	bag := unit.Mass(p.day.Ice.Bag.si)
	for last >= 0 {
		spare := day.IceLeft - lowIce*bath.Ice
		less := bag * unit.Mass(math.Floor(float64(spare/bag)))
		if less < bag || bath.TopUps[last].Ice-less < bag {
			break
		}
		trimmed := bath
		trimmed.TopUps = append([]thermal.TopUp(nil), bath.TopUps...)
		trimmed.TopUps[last].Ice -= less
		next, err := trimmed.After(total)
		if err != nil {
			return bath, day, err
		}
		if next.IceLeft < lowIce*bath.Ice {
			break
		}
		bath, day = trimmed, next
	}
	return bath, day, nil
}

// add returns the tub with ice added at a time, and how it fares; fits is false
// if not even one bag fits.
func (p *planner) add(bath thermal.IceBath, at, total time.Duration) (thermal.IceBath, thermal.Chilling, bool) {
	bag := unit.Mass(p.day.Ice.Bag.si)
	for ice := p.bags(bath.Ice * (1 - lowIce)); ice >= bag; ice = p.bags(ice/2 - bag/4) {
		topped := bath
		topped.TopUps = append(append([]thermal.TopUp(nil), bath.TopUps...), thermal.TopUp{At: at, Ice: ice})
		if day, err := topped.After(total); err == nil {
			return topped, day, true
		}
		if ice == bag {
			break
		}
	}
	return bath, thermal.Chilling{}, false
}

// bags rounds an amount of ice up to whole bags.
func (p *planner) bags(ice unit.Mass) unit.Mass {
	bag := p.day.Ice.Bag.si
	return unit.Mass(math.Ceil(float64(ice)/bag-1e-9) * bag)
}

// firstLow returns when the ice is first low after the last top-up, and whether
// that is early enough before the end to matter.
func firstLow(day thermal.Chilling, first unit.Mass, total time.Duration) (time.Duration, bool) {
	n := int(total/grain) + 1
	for _, s := range day.Course(n) {
		if s.Ice < unit.Mass(lowIce)*first && s.At > 0 && s.At < total-slack {
			return s.At.Truncate(time.Minute), true
		}
	}
	return 0, false
}
