package serve

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/volume"
)

// taps asks how long guests wait at the taps there are in the first hour, and
// how many taps keep the wait they bear.
func (p *planner) taps() error {
	t := &p.plan.Taps
	t.Taps = p.day.Taps.Count.int()
	if t.Taps == 0 {
		t.Taps = len(p.day.Beers)
		p.note(fmt.Sprintf("%s, one for each beer, with somebody at it", counted(t.Taps, "tap")))
	}
	bar := p.bar()
	fewest, err := bar.Queue()
	if err != nil {
		return err
	}
	t.Needed = fewest.Taps
	bar.Taps = t.Taps
	q, err := bar.Queue()
	switch {
	case errors.Is(err, volume.ErrNever):
		t.overrun = true
		return nil
	case err != nil:
		return err
	}
	t.Wait, t.Late, t.Utilisation = q.Mean.Seconds(), q.Late, q.Busy
	p.command("taps.wait_mean_s", "wait_mean_s", "volume taps --guests %d --per-hour %v --pour-time %vs --change %vs --wait %vs --taps %d",
		bar.Guests, bar.PerHour, bar.PourTime.Seconds(), bar.Change.Seconds(), bar.Wait.Seconds(), bar.Taps)
	return nil
}

// bar returns the queue of the first hour, at the slowest of the lines.
func (p *planner) bar() volume.Bar {
	bar := p.crowd().Bar()
	slowest := 0.0
	for _, l := range p.plan.Lines {
		slowest = math.Max(slowest, l.PourTime)
	}
	bar.PourTime = time.Duration(slowest * float64(time.Second)).Round(time.Millisecond)
	bar.Change, bar.Wait = p.day.Taps.Change.duration(), p.day.Taps.Wait.duration()
	return bar
}

func (p *planner) queue() Point {
	t := p.plan.Taps
	point := Point{
		Holds: t.Taps >= t.Needed,
		What:  fmt.Sprintf("%s: {%.6g s} mean wait in the first hour, {%.2g share} wait longer than {%.6g s}", counted(t.Taps, "tap"), t.Wait, t.Late, p.day.Taps.Wait.si),
		Mend:  fmt.Sprintf("set up %s with somebody at each", counted(t.Needed, "tap")),
	}
	if t.overrun {
		point.What = fmt.Sprintf("%s cannot serve as fast as guests come in the first hour", counted(t.Taps, "tap"))
	}
	return point
}

func (p *Plan) tapSentence() string {
	t := p.Taps
	if t.overrun {
		return fmt.Sprintf("The queue at %s grows all through the first hour; %d would do.", counted(t.Taps, "tap"), t.Needed)
	}
	return fmt.Sprintf("At %s guests wait {%.6g s} on average in the first hour, less if every glass takes equally long; a tap is busy {%.2g share} of the time.",
		counted(t.Taps, "tap"), t.Wait, t.Utilisation)
}
