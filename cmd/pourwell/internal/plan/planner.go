package plan

import (
	"fmt"
	"strings"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A planner carries what one part of the plan hands to the next.
type planner struct {
	file    string
	day     Day
	plan    Plan
	start   time.Time
	end     time.Time
	air     carbonation.Pressure
	set     []carbonation.Gauge   // of each beer's regulator
	keeps   []thermal.Temperature // of each keg while it is served, at the warmest
	demands []volume.Demand
	pours   []unit.Volume // of beer in a glass of each
	beds    []time.Time   // when each tub's kegs go into the ice

	heeds []heeded // cautions of the packages
}

// Compute plans the day that was read from the file of that name.
func Compute(file string, day Day) (Plan, error) {
	p := planner{file: file, day: day}
	if err := p.assume(); err != nil {
		return Plan{}, err
	}
	if err := p.bounds(); err != nil {
		return Plan{}, err
	}
	air, err := carbonation.AirAt(p.day.Elevation.length())
	if err != nil {
		return Plan{}, err
	}
	p.air = air
	for _, part := range []func() error{p.amounts, p.standing, p.pressures, p.pouring, p.cooling, p.gas, p.taps, p.loads, p.advice} {
		if err := part(); err != nil {
			return Plan{}, err
		}
	}
	p.plan.Title = p.title()
	p.judge()
	p.timeline()
	p.shopping()
	p.cautions()
	return p.plan, nil
}

func (p *planner) title() string {
	d := &p.day
	name := strings.TrimSpace(d.Title)
	if name == "" {
		name = "A day of serving"
	}
	when := d.Start + " to " + clock(p.end)
	if d.Date != "" {
		when = p.start.Format("2 January 2006") + ", " + when
	}
	where := "at sea level"
	if d.Elevation.si != 0 {
		where = fmt.Sprintf("{%.6g m} above the sea", d.Elevation.si)
	}
	return fmt.Sprintf("%s: %s, %s, {%.6g c}, %s", name, when, counted(d.Guests.Count.int(), "guest"), d.Air.Celsius(), where)
}

// about names the beer in an error from a package.
func (p *planner) about(b *Beer, err error) error { return fmt.Errorf("%s: %w", b.Name, err) }

// command remembers the command line whose results give, under key, the number
// at a path of the plan again.
func (p *planner) command(answers, key, format string, args ...any) {
	p.plan.Commands = append(p.plan.Commands, Command{answers, key, "pourwell " + fmt.Sprintf(format, args...)})
}

// also remembers that the last command line answers another number of the plan.
func (p *planner) also(answers, key string) {
	last := p.plan.Commands[len(p.plan.Commands)-1]
	p.plan.Commands = append(p.plan.Commands, Command{answers, key, last.Line})
}

// clock writes a time of day.
func clock(t time.Time) string { return t.Format("15:04") }
