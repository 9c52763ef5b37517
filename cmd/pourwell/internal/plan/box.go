package plan

import (
	"fmt"
	"time"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// boxTopUps is how often somebody will go and fill a box again in a day.
const boxTopUps = 8

// boxIce follows the ice of a chiller's box from filling it to the last glass:
// what beer and box melt, and when to top up, before a fifth of the first ice
// is left. It reports whether there is ice all the time.
func (p *planner) boxIce(i int, c *Cooling, s thermal.Service) (bool, error) {
	b, out := &p.day.Beers[i], c.Chiller
	length := p.end.Sub(p.start) + coldAhead
	filled := p.start.Add(-coldAhead)
	draws := p.draws(i, filled)
	ua := thermal.Conductance(b.Chiller.BoxUA.si)
	melted := func(t time.Duration) (float64, error) {
		box, err := ua.Melts(p.day.Air, t)
		return float64(box) + drawnBy(draws, t)*float64(s.IcePerLitre), err
	}
	total, err := melted(length)
	if err != nil {
		return false, err
	}
	out.BeerIce = drawnBy(draws, length) * float64(s.IcePerLitre)
	out.BoxIce = total - out.BeerIce
	need := float64(p.bags(unit.Mass(total * (1 + lowIce))))
	if b.Chiller.Ice.or(need) {
		p.note(fmt.Sprintf("%s: {%.6g kg} of ice in the box, a fifth more than beer and box melt", b.Name, need))
	}
	c.Ice = b.Chiller.Ice.si
	held := true
	for t := time.Duration(0); t <= length; t += grain {
		gone, err := melted(t)
		if err != nil {
			return false, err
		}
		left := c.Ice + c.TopUp - gone
		held = held && left > 0
		if left < lowIce*c.Ice && total-gone > left && len(c.TopUps) < boxTopUps && c.Ice > 0 {
			more := float64(p.bags(unit.Mass(min(c.Ice, (total-gone)*(1+lowIce)-left))))
			at := filled.Add(t)
			c.TopUps = append(c.TopUps, TopUp{clock(at), more, at})
			c.TopUp += more
		}
	}
	c.Left = max(0, c.Ice+c.TopUp-total)
	return held, nil
}
