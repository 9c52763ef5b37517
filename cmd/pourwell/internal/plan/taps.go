package plan

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/volume"
)

// taps asks how long guests wait for each beer in the first hour, and how many
// taps keep the wait they bear. A tap pours one beer, so each beer has a queue
// of its own.
func (p *planner) taps() error {
	t := &p.plan.Taps
	t.Taps = p.day.Taps.Count.int()
	if t.Taps == 0 {
		t.Taps = len(p.day.Beers)
		p.note(fmt.Sprintf("%s, one for each beer, with somebody at it", counted(t.Taps, "tap")))
	}
	if t.Taps < len(p.day.Beers) {
		return &FileError{p.file, 0, fmt.Sprintf("%s for %d beers", counted(t.Taps, "tap"), len(p.day.Beers)), "each beer needs a tap of its own: raise taps.count"}
	}
	for i := range p.day.Beers {
		beer, err := p.beerTaps(i)
		if err != nil {
			return p.about(&p.day.Beers[i], err)
		}
		t.Beers = append(t.Beers, beer)
		t.Needed += beer.Needed
	}
	p.spread(t)
	for i := range t.Beers {
		if err := p.queueAt(i, &t.Beers[i]); err != nil {
			return p.about(&p.day.Beers[i], err)
		}
	}
	return nil
}

// beerTaps returns the fewest taps that keep the wait for beer i.
func (p *planner) beerTaps(i int) (BeerTaps, error) {
	fewest, err := p.bar(i).Queue()
	return BeerTaps{Beer: p.day.Beers[i].Name, Taps: 1, Needed: fewest.Taps}, err
}

// spread gives each beer a tap, and those that are over to the beers that need
// them most.
func (p *planner) spread(t *TapPlan) {
	for over := t.Taps - len(t.Beers); over > 0; over-- {
		most := 0
		for i, b := range t.Beers {
			if b.Needed-b.Taps > t.Beers[most].Needed-t.Beers[most].Taps {
				most = i
			}
		}
		t.Beers[most].Taps++
	}
}

// queueAt fills in the wait at the taps of beer i.
func (p *planner) queueAt(i int, t *BeerTaps) error {
	bar := p.bar(i)
	bar.Taps = t.Taps
	q, err := bar.Queue()
	switch {
	case errors.Is(err, volume.ErrNever):
		t.Overrun = true
		return nil
	case err != nil:
		return err
	}
	t.Wait, t.Late, t.Utilisation = q.Mean.Seconds(), q.Late, q.Busy
	p.command(fmt.Sprintf("taps.beers.%d.wait_mean_s", i), "wait_mean_s",
		"volume taps --guests %d --per-hour %v --pour-time %vs --change %vs --wait %vs --taps %d",
		bar.Guests, bar.PerHour, bar.PourTime.Seconds(), bar.Change.Seconds(), bar.Wait.Seconds(), bar.Taps)
	p.also(fmt.Sprintf("taps.beers.%d.utilisation_share", i), "utilisation_share")
	return nil
}

// bar returns the queue for beer i in the first hour.
func (p *planner) bar(i int) volume.Bar {
	crowd := p.crowd()
	crowd.Share *= p.day.Beers[i].Share.si
	bar := crowd.Bar()
	bar.PourTime = time.Duration(p.plan.Lines[i].PourTime * float64(time.Second)).Round(time.Millisecond)
	bar.Change, bar.Wait = p.day.Taps.Change.duration(), p.day.Taps.Wait.duration()
	return bar
}

// worst returns the beer whose guests wait longest.
func (t *TapPlan) worst() BeerTaps {
	worst := t.Beers[0]
	for _, b := range t.Beers {
		if b.Overrun || b.Wait > worst.Wait && !worst.Overrun {
			worst = b
		}
	}
	return worst
}

func (p *planner) queue() Point {
	t := p.plan.Taps
	worst := t.worst()
	point := Point{
		Holds: true,
		What: fmt.Sprintf("%s: for %s {%.6g s} mean wait in the first hour, {%.2g share} wait longer than {%.6g s}",
			counted(t.Taps, "tap"), worst.Beer, worst.Wait, math.Max(worst.Late, 0), p.day.Taps.Wait.si),
		Mend: fmt.Sprintf("set up %s with somebody at each", counted(t.Needed, "tap")),
	}
	for _, b := range t.Beers {
		point.Holds = point.Holds && b.Taps >= b.Needed
	}
	if worst.Overrun {
		point.What = fmt.Sprintf("%s: cannot serve %s as fast as guests come in the first hour", counted(t.Taps, "tap"), worst.Beer)
	}
	return point
}

func (p *Plan) tapSentence() string {
	worst := p.Taps.worst()
	if worst.Overrun {
		return fmt.Sprintf("The queue for %s grows all through the first hour; %s would do in all.", worst.Beer, counted(p.Taps.Needed, "tap"))
	}
	return fmt.Sprintf("For %s guests wait {%.6g s} on average in the first hour, half of that if every glass takes equally long; its tap is busy {%.2g share} of the time.",
		worst.Beer, worst.Wait, worst.Utilisation)
}
