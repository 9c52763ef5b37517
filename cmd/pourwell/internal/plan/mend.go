package plan

import (
	"fmt"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// mendCold returns the change with which the beer of tub i would be cold all
// day with the ice there is, the smallest first: more ice, a lid, more or less
// water, and these together. Each is tried on the whole day before it is named.
func (p *planner) mendCold(i int) string {
	b := &p.day.Beers[i]
	bag := unit.Mass(p.day.Ice.Bag.si)
	given := b.Tub.filled()
	given.ice = p.bags(given.ice)
	if fit, err := p.fit(b); err == nil && given.ice > fit.Ice { // overfull: begin with what fits
		given.ice = p.bags(fit.Ice) - bag
		given.water = min(given.water, fit.Water)
	}
	for _, lid := range []bool{given.lid, true} {
		for _, water := range []unit.Volume{0, -0.010, 0.010, -0.020, 0.020, 0.030} {
			f := filling{given.ice, max(0, given.water+water), lid}
			for range 9 {
				if p.coldWith(i, f) {
					return "put " + f.said(given) + " into the tub of " + b.Name + " at the start" + lidded(f.lid && !given.lid)
				}
				f.ice += 2 * bag
			}
		}
	}
	return fmt.Sprintf("chill %s beforehand, serve it a little warmer, bring more ice or a larger tub: nothing tried here, with the ice there is,"+
		" a lid, and less or more water, keeps it cold", b.Name)
}

// coldWith reports whether beer i is cold all day with that filling and the ice
// that is available for all tubs.
func (p *planner) coldWith(i int, f filling) bool {
	c, _, err := p.tub(i, f)
	if err != nil || !c.Holds {
		return false
	}
	total := c.Ice + c.TopUp
	for k, other := range p.plan.Cooling {
		if k != i {
			total += other.Ice + other.TopUp
		}
	}
	return !p.day.Ice.Available.set || total <= p.day.Ice.Available.si+1e-9
}

// said names the ice of f, and its water where that is not what was given.
func (f filling) said(given filling) string {
	s := fmt.Sprintf("{%.6g kg} of ice", float64(f.ice))
	if f.water != given.water {
		s += fmt.Sprintf(" and {%.6g l} of water", litres(f.water))
	}
	return s
}

func lidded(yes bool) string {
	if yes {
		return ", and a lid or a thick blanket over it"
	}
	return ""
}

// mendChiller returns what would make the chilled beer cold enough, the
// gentlest first, each tried.
func (p *planner) mendChiller(i int) string {
	b := &p.day.Beers[i]
	beer, err := b.liquid()
	if err != nil {
		return "describe the beer"
	}
	pours := p.pace(i)
	if b.Chiller.Kind == "coil" {
		coil, err := p.coilOf(b, beer)
		if err != nil {
			return err.Error()
		}
		for _, factor := range []float64{1, 1.5, 2, 3} {
			longer := coil.Packed()
			longer.Length = unit.Length(factor) * coil.Length
			if s, err := longer.Serve(p.keeps[i], pours); err == nil && s.Last.Celsius() <= b.ServeAt.Celsius() {
				return fmt.Sprintf("pack ice tight around a coil of {%.6g m} for %s", float64(longer.Length), b.Name)
			}
		}
	}
	for cooler := p.keeps[i].Celsius(); cooler > b.ServeAt.Celsius(); cooler-- {
		var s thermal.Service
		var err error
		if b.Chiller.Kind == "plate" {
			var plate thermal.Plate
			if plate, err = b.plate(beer); err == nil {
				s, err = plate.Serve(thermal.Celsius(cooler), pours)
			}
		} else {
			var coil thermal.Coil
			if coil, err = p.coilOf(b, beer); err == nil {
				s, err = coil.Serve(thermal.Celsius(cooler), pours)
			}
		}
		if err == nil && s.Last.Celsius() <= b.ServeAt.Celsius() {
			return fmt.Sprintf("chill the keg of %s beforehand and keep it at {%.6g c}", b.Name, cooler)
		}
	}
	return fmt.Sprintf("stand the keg of %s in ice instead", b.Name)
}
