package plan

import (
	"fmt"
	"slices"
	"time"
)

// timeline lists what to do when, in the order of the day.
func (p *planner) timeline() {
	type moment struct {
		at   time.Time
		what string
	}
	var all []moment
	add := func(at time.Time, format string, args ...any) {
		all = append(all, moment{at, fmt.Sprintf(format, args...)})
	}
	first := p.beds[0]
	for i, bed := range p.beds {
		b, c := p.day.Beers[i], p.plan.Cooling[i]
		if bed.Before(first) {
			first = bed
		}
		if !c.FloatsFrom.IsZero() {
			add(c.FloatsFrom, "Weigh down the kegs of %s, or let water off: less than {%.2g share} full they float and tip.", b.Name, c.FloatsBelow)
		}
		for _, t := range c.TopUps {
			if c.Chiller != nil {
				add(t.time, "Top up the ice box of %s with {%.6g kg} of ice.", b.Name, t.Ice)
			} else {
				add(t.time, "Top up the tub of %s with {%.6g kg} of ice; keep the water, let only the overflow run off.", b.Name, t.Ice)
			}
		}
		if c.Chiller != nil {
			add(bed, "Fill the ice box of %s: {%.6g kg} of ice around the %s; shade for the keg.", b.Name, c.Ice, c.Chiller.Kind)
			continue
		}
		ready := fmt.Sprintf("Cold by about %s", c.ReadyAt)
		if c.never != nil {
			ready = "It does not get cold enough"
		}
		add(bed, "Stand %s of %s in the tub: {%.6g kg} of ice, {%.6g l} of water. %s.",
			kegs(b.Kegs.int()), b.Name, c.Ice, c.Water, ready)
	}
	add(first.Add(-30*time.Minute), "Fetch the ice.")
	add(p.start.Add(-2*slack), "Turn on the gas, set the regulators, check every joint with soapy water.")
	for i, b := range p.day.Beers {
		plan := p.plan.Beers[i]
		add(p.start.Add(-slack), "Regulator of %s at {%.6g kpa}. Pour a glass, throw it away, measure the next: {%.6g c} or colder, and {%.6g s} to fill.",
			b.Name, plan.SetGauge, b.ServeAt.Celsius(), p.plan.Lines[i].PourTime)
	}
	add(p.start, "First guests. Keep water and food beside the beer.")
	for i, b := range p.day.Beers {
		if plan := p.plan.Beers[i]; plan.LastsFor < p.day.Hours.si {
			add(p.start.Add(time.Duration(plan.LastsFor)*time.Second), "%s may run out from here on.", b.Name)
		}
	}
	add(p.end, "Last glass. Close the cylinder, vent the kegs, rinse lines and taps with water, then clean them.")
	slices.SortStableFunc(all, func(a, b moment) int { return a.at.Compare(b.at) })
	for _, m := range all {
		p.plan.Timeline = append(p.plan.Timeline, Moment{p.dayClock(m.at), m.what})
	}
}

// dayClock writes a time, with its day if it is not the day of the event.
func (p *planner) dayClock(t time.Time) string {
	switch {
	case t.YearDay() == p.start.YearDay():
		return clock(t)
	case t.Before(p.start):
		return "the day before, " + clock(t)
	}
	return "next day, " + clock(t)
}

// shopping lists what to bring.
func (p *planner) shopping() {
	add := func(what, format string, args ...any) {
		p.plan.Shopping = append(p.plan.Shopping, Item{what, fmt.Sprintf(format, args...)})
	}
	for i, b := range p.day.Beers {
		plan := p.plan.Beers[i]
		amount := fmt.Sprintf("%s of %s", kegs(plan.Kegs), b.Keg.text)
		if plan.Needed > plan.Kegs {
			amount += fmt.Sprintf("; %d would last", plan.Needed)
		}
		add(b.Name, "%s", amount)
	}
	start := 0.0
	for _, c := range p.plan.Cooling {
		start += c.Ice
	}
	total := p.totalIce()
	later := ""
	if total > start {
		later = fmt.Sprintf(", {%.6g kg} as top-ups", total-start)
	}
	add("ice", "{%.6g kg} at the start%s: %.0f bags of {%.6g kg}",
		start, later, float64(p.bags(mass{quantityOf{total, true}}.mass()))/p.day.Ice.Bag.si, p.day.Ice.Bag.si)
	add("CO2", "{%.6g kg} in use; %d of {%.6g kg}", p.plan.Gas.CO2, p.plan.Gas.Needed, p.plan.Gas.Cylinder)
	for i, b := range p.day.Beers {
		line := p.plan.Lines[i]
		if c := p.plan.Cooling[i].Chiller; c != nil {
			add("line for "+b.Name, "%s, behind a %s %s", join(line.Tubes), c.Kind, c.Tube)
			continue
		}
		add("line for "+b.Name, "%s; {%.6g m} of the last tube would pour at {%.6g l_per_min}", join(line.Tubes), line.Length, line.Target)
	}
	glasses := 0
	for _, plan := range p.plan.Beers {
		glasses += plan.Planned
	}
	add("glasses", "%d servings of %s planned; plastic outdoors", glasses, p.day.Glass.Size.text)
	add("and", "thermometer, spanner, spare seals, soapy water, bucket, towels, drinking water, first-aid kit")
}

func join(texts []string) string {
	s := ""
	for i, t := range texts {
		if i > 0 {
			s += " + "
		}
		s += t
	}
	return s
}
