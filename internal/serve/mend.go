package serve

import (
	"fmt"

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
				return fmt.Sprintf("put {%.4g kg} of ice into the tub of %s at the start", float64(ice), b.Name)
			case ice == from:
				return fmt.Sprintf("put {%.4g l} of water to the ice in the tub of %s, so that the bath covers more of the kegs", litres(water), b.Name)
			}
			return fmt.Sprintf("put {%.4g kg} of ice and {%.4g l} of water into the tub of %s at the start", float64(ice), litres(water), b.Name)
		}
	}
	return fmt.Sprintf("chill %s beforehand, serve it a little warmer, or use a larger tub with a lid: no amount of ice that fits this tub keeps it cold", b.Name)
}
