package plan

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// What becomes of the beer that is left: two hours packing up in the shade,
// then a refrigerator. Assumed, and said.
const packingUp = 2 * time.Hour

var fridge = thermal.Celsius(2)

// loads fills in what people carry and what is in a serving.
func (p *planner) loads() error {
	for i := range p.day.Beers {
		b, plan := &p.day.Beers[i], &p.plan.Beers[i]
		yield, err := p.pour(b).PerKeg()
		if err != nil {
			return p.about(b, err)
		}
		drinks, err := yield.Drinks(b.ABV.si)
		if err != nil {
			return p.about(b, err)
		}
		plan.Serving, plan.DrinksUS, plan.DrinksUK, plan.DrinksAU = litres(yield.Liquid), drinks.US, drinks.UK, drinks.AU
		roomy := volume.Tub{Capacity: 1, Height: 1} // any tub: only the lift is asked
		fit, err := roomy.Fit(b.Keg.vessel(), 1, volume.BaggedIce)
		if err != nil {
			return p.about(b, err)
		}
		plan.Lift, plan.TwoLift = float64(fit.Lift), fit.TwoLift
		p.heed(b.Name, fit.Cautions(), volume.Floating, volume.FullTub)
		if b.Chiller.Kind == "" {
			if fit, err = p.fit(b); err != nil {
				return p.about(b, err)
			}
			p.heed(b.Name, fit.Cautions(), volume.Floating) // when, says the day
			c := &p.plan.Cooling[i]
			c.MostIce, c.MostWater = float64(fit.Ice), litres(fit.Water)
		}
		if err := p.leftover(i, plan); err != nil {
			return p.about(b, err)
		}
	}
	return nil
}

// leftover fills in how warm the beer left in a tub's keg gets while packing up
// and how long a refrigerator takes to bring it back.
func (p *planner) leftover(i int, plan *BeerPlan) error {
	b, c := &p.day.Beers[i], p.plan.Cooling[i]
	if c.Chiller != nil || len(c.Hours) == 0 {
		return nil
	}
	last := c.Hours[len(c.Hours)-1]
	beer, err := b.liquid()
	if err != nil {
		return err
	}
	v := b.Keg.vessel()
	fill := last.Left / litres(v.Capacity)
	if fill < 0.02 {
		return nil
	}
	around := thermal.Shade(p.day.Air)
	around.Humidity, around.Altitude = p.day.Humidity.si, p.day.Elevation.length()
	keg := thermal.Keg{Vessel: v, Beer: beer, Fill: fill, From: thermal.Celsius(last.Beer), Around: around}
	home, err := keg.After(packingUp)
	if err != nil {
		return err
	}
	keg.From, keg.Around = home.Temperature, thermal.Shade(fridge)
	plan.InKeg = last.Left
	plan.HomeAt = home.Temperature.Celsius()
	back, err := keg.Reach(b.ServeAt)
	if errors.Is(err, thermal.ErrNever) {
		return nil
	}
	plan.Rechill = back.Time.Seconds()
	return err
}

// afterBlock says what to do with what is left.
func (p *Plan) afterBlock() report.Block {
	b := report.Block{Heading: "Afterwards"}
	for _, beer := range p.Beers {
		if beer.Rechill > 0 {
			b.Bullets = append(b.Bullets, fmt.Sprintf("%s: about {%.6g l} left in each keg. {7200 s} of packing up in the shade brings it to {%.6g c};"+
				" a refrigerator at {2 c} takes {%.6g s} to bring it back. Keep it under its pressure, cold and dark.",
				beer.Name, beer.InKeg, beer.HomeAt, beer.Rechill))
		}
	}
	b.Bullets = append(b.Bullets,
		"Returning empties: close the cylinder, vent every keg by its relief valve before anything is unscrewed.",
		"Clean lines and taps the same day: pourwell lines clean gives the amounts.")
	return b
}

// advice says what to serve in.
func (p *planner) advice() error {
	light := volume.Shade
	if p.day.Sun.si > 0 {
		light = volume.Sun
	}
	strongest := 0.0
	for _, b := range p.day.Beers {
		strongest = max(strongest, b.ABV.si)
	}
	all, err := p.day.Glass.Size.glass().Notes(strongest, light)
	if err != nil {
		return err
	}
	for _, note := range all {
		p.plan.Glasses = append(p.plan.Glasses, adviceOf(string(note.Text)))
	}
	return nil
}

// adviceOf takes a note on a glass apart: what to do, why, and in brackets how
// far that can be trusted.
func adviceOf(note string) GlassAdvice {
	what, rest, _ := strings.Cut(note, ". ")
	why, status, _ := strings.Cut(rest, " (")
	return GlassAdvice{What: what + ".", Why: why, Status: strings.TrimSuffix(status, ")")}
}

func (p *Plan) glassBlock() report.Block {
	b := report.Block{Heading: "Glasses"}
	for _, beer := range p.Beers {
		b.Lines = append(b.Lines, fmt.Sprintf("A glass of %s holds {%.6g l} of beer: %.1f US standard drinks, %.1f UK units, %.1f Australian standard drinks.",
			beer.Name, beer.Serving, beer.DrinksUS, beer.DrinksUK, beer.DrinksAU))
	}
	for _, g := range p.Glasses {
		b.Bullets = append(b.Bullets, g.What+" "+g.Why)
	}
	return b
}
