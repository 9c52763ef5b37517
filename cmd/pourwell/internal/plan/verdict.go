package plan

import (
	"errors"
	"fmt"

	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// Bounds of the verdict, our choice where no source is named.
const (
	fastest = 1.25 // times the target flow: above it a glass foams (practice)
	slowest = 0.5  // times the target flow: below it the queue grows
	tooLow  = 3.5  // kPa, half a psi below the balance: gas leaves the beer
	tooHigh = 35   // kPa, 5 psi above it: pours fast, and gains gas over days
)

// judge says what holds, what does not, and what would mend it.
func (p *planner) judge() {
	v := &p.plan.Verdict
	for i := range p.day.Beers {
		v.Points = append(v.Points, p.enough(i), p.cold(i), p.pressed(i), p.flows(i))
	}
	v.Points = append(v.Points, p.ice(), p.gasLasts(), p.queue())
	v.Holds = true
	failed := 0
	for k, point := range v.Points {
		if point.Holds {
			v.Points[k].Mend = ""
			continue
		}
		if v.Holds {
			v.Change = point.Mend
		}
		v.Holds = false
		failed++
	}
	switch {
	case v.Holds:
		v.Summary = "The plan holds."
	case failed == 1:
		v.Summary = "The plan does not hold yet: one thing to change."
	default:
		v.Summary = fmt.Sprintf("The plan does not hold yet: %d things to change.", failed)
	}
}

func (p *planner) enough(i int) Point {
	b, plan := p.day.Beers[i], p.plan.Beers[i]
	return Point{
		Holds: plan.RunOut <= 1-p.day.Guests.Confidence.si,
		What: fmt.Sprintf("%s: %d glasses in %s, %s chance that it runs out",
			b.Name, plan.Kegs*plan.PerKeg, kegs(plan.Kegs), chance(plan.RunOut)),
		Mend: fmt.Sprintf("bring %s of %s", kegs(plan.Needed), b.Name),
	}
}

func (p *planner) cold(i int) Point {
	b, c := p.day.Beers[i], p.plan.Cooling[i]
	point := Point{Holds: c.Holds}
	switch {
	case c.Chiller != nil:
		point.What = fmt.Sprintf("%s: through the %s, first glass {%.6g c}, tenth in a row {%.6g c}; {%.6g c} is wanted",
			b.Name, c.Chiller.Kind, c.Chiller.First, c.Chiller.Tenth, c.ServeAt)
		switch {
		case !c.Chiller.Iced:
			point.What = fmt.Sprintf("%s: {%.6g kg} of ice in the box run out before they are topped up", b.Name, c.Ice)
			point.Mend = fmt.Sprintf("put {%.6g kg} of ice into the box of %s at the start", float64(p.bags(unit.Mass((c.Chiller.BeerIce+c.Chiller.BoxIce)*(1+lowIce)))), b.Name)
		case !c.Holds:
			point.Mend = p.mendChiller(i)
		}
		return point
	case c.never != nil:
		if errors.Is(c.never, thermal.ErrNoSolution) {
			point.What = fmt.Sprintf("%s: {%.6g kg} of ice and {%.6g l} of water do not fit around the kegs in this tub", b.Name, c.Ice, c.Water)
			break
		}
		point.What = fmt.Sprintf("%s: never gets down to {%.6g c} in this tub", b.Name, c.ServeAt)
	case !c.Sure:
		point.What = fmt.Sprintf("%s: so near to {%.6g c} that it may never get there in this tub", b.Name, c.ServeAt)
	case !c.Holds:
		point.What = fmt.Sprintf("%s: warms to {%.6g c} while guests are there, above {%.6g c}", b.Name, c.Warmest, c.ServeAt)
	default:
		point.What = fmt.Sprintf("%s: leaves the keg at {%.6g c} or colder", b.Name, c.Warmest)
	}
	if !c.Holds {
		point.Mend = p.mendCold(i)
	}
	return point
}

func (p *planner) pressed(i int) Point {
	b, plan := &p.day.Beers[i], p.plan.Beers[i]
	off := plan.SetGauge - plan.Gauge
	return Point{
		Holds: -tooLow <= off && off <= tooHigh,
		What: fmt.Sprintf("%s: regulator at {%.6g kpa}; {%.6g kpa} holds {%.6g volumes} at {%.6g c}",
			b.Name, plan.SetGauge, plan.Gauge, plan.Content, p.keeps[i].Celsius()),
		Mend: fmt.Sprintf("set the regulator of %s to {%.6g kpa}", b.Name, plan.Gauge),
	}
}

func (p *planner) ice() Point {
	total := p.totalIce()
	point := Point{
		Holds: !p.day.Ice.Available.set || total <= p.day.Ice.Available.si+1e-9,
		What:  fmt.Sprintf("ice: {%.6g kg} in all", total),
	}
	if p.day.Ice.Available.set {
		point.What += fmt.Sprintf(", {%.6g kg} available", p.day.Ice.Available.si)
		point.Mend = fmt.Sprintf("find {%.6g kg} more ice, or put lids on the tubs", total-p.day.Ice.Available.si)
	}
	return point
}

// totalIce is all ice of the day, kg.
func (p *planner) totalIce() float64 {
	total := 0.0
	for _, c := range p.plan.Cooling {
		total += c.Ice + c.TopUp
	}
	return total
}

func kegs(n int) string { return counted(n, "keg") }

// counted writes a number of things: 1 keg, 2 kegs.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// chance writes a probability; small ones are not worth their digits.
func chance(p float64) string {
	if p < 0.001 {
		return "under {0.001 share}"
	}
	return fmt.Sprintf("{%.2g share}", p)
}
