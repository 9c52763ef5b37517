package serve

import (
	"fmt"

	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// mendCold returns the change with which the beer of tub i would be cold all
// day, the smallest first: more ice, then more water so that the kegs stand
// covered, then both. Each is tried on the whole day before it is named.
func (p *planner) mendCold(i int) string {
	b := &p.day.Beers[i]
	bag := unit.Mass(p.day.Ice.Bag.si)
	waters := []unit.Volume{0, 0.010, 0.020, 0.030}
	for _, more := range waters {
		water := b.Tub.Water.volume() + more
		from := p.bags(b.Tub.Ice.mass())
		for step := unit.Mass(0); step <= 8; step++ {
			ice := from + step*2*bag
			c, _, err := p.tub(i, ice, water)
			if err != nil || !c.Holds {
				continue
			}
			switch {
			case more == 0:
				return fmt.Sprintf("put {%.6g kg} of ice into the tub of %s at the start", float64(ice), b.Name)
			case ice == from:
				return fmt.Sprintf("put {%.6g l} of water to the ice in the tub of %s, so that the bath covers more of the kegs", litres(water), b.Name)
			}
			return fmt.Sprintf("put {%.6g kg} of ice and {%.6g l} of water into the tub of %s at the start", float64(ice), litres(water), b.Name)
		}
	}
	return fmt.Sprintf("chill %s beforehand, serve it a little warmer, or use a larger tub with a lid: no amount of ice that fits this tub keeps it cold", b.Name)
}

// mendChiller returns what would make the chilled beer cold enough, the
// gentlest first, each tried.
func (p *planner) mendChiller(i int) string {
	b := &p.day.Beers[i]
	beer, err := b.liquid()
	if err != nil {
		return "describe the beer"
	}
	pours := p.pace(i, lines.Flow(p.plan.Lines[i].Flow)*lines.LitrePerMinute)
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
