package plan

import (
	"fmt"
	"strings"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/lines"
)

// target is the flow that pours a glass well: 2 US fluid ounces a second,
// common practice, no source.
const target = 2 * lines.OuncePerSecond

// pouring asks what each line pours at the pressure that is set, and how long
// its last tube should be for the target flow.
func (p *planner) pouring() error {
	for i := range p.day.Beers {
		b := &p.day.Beers[i]
		plan, err := p.line(i, p.set[i])
		if err != nil {
			return p.about(b, err)
		}
		p.plan.Lines = append(p.plan.Lines, plan)
		if b.Chiller.Kind != "" {
			continue
		}
		tubes := `--tube "` + strings.Join(b.Line.Tubes, `" --tube "`) + `"`
		p.command(fmt.Sprintf("lines.%d.flow_l_per_min", i), "flow_l_per_min", "lines flow %s --rise %vm --gauge %vPa --temp %vC --glass %vL %s",
			tubes, b.Line.Rise.si, p.set[i].Pascals(), b.ServeAt.Celsius(), litres(p.pours[i]), b.flags())
		p.also(fmt.Sprintf("lines.%d.pour_time_s", i), "pour_time_s")
	}
	return nil
}

// line returns how the line of beer i pours with gauge pressure g on the keg.
func (p *planner) line(i int, g carbonation.Gauge) (LinePlan, error) {
	b := &p.day.Beers[i]
	plan := LinePlan{Beer: b.Name, Tubes: b.Line.Tubes, Target: lines.Flow(target).LitresPerMinute()}
	run, err := p.run(b)
	if err != nil {
		return plan, err
	}
	if b.Chiller.Kind != "" {
		return plan, p.warmLine(i, g, run, &plan)
	}
	last := len(run.Tubes) - 1
	full, err := run.Flow(g)
	if err != nil {
		return plan, err
	}
	plan.Flow, plan.PourTime = full.Flow.LitresPerMinute(), full.TimeFor(p.pours[i]).Seconds()
	low := run
	low.Full = 0
	if empty, err := low.Flow(g); err == nil {
		plan.FlowEmpty = empty.Flow.LitresPerMinute()
	}
	if long, err := run.Length(last, target, g); err == nil {
		plan.Length = float64(long.Length)
	}
	if trade, err := run.TradeLength(last, g); err == nil {
		plan.TradeLength = float64(trade.Length)
	}
	return plan, nil
}

// flow is how the line of beer i pours at the pressure that is set.
func (p *planner) flow(i int) lines.Flow {
	return lines.Flow(p.plan.Lines[i].Flow) * lines.LitrePerMinute
}

// run returns the beer's line as the lines package sees it.
func (p *planner) run(b *Beer) (lines.Run, error) {
	tubes := make([]lines.Tube, len(b.Line.Tubes))
	for i, text := range b.Line.Tubes {
		if err := tubes[i].UnmarshalText([]byte(text)); err != nil {
			return lines.Run{}, &FileError{p.file, 0, fmt.Sprintf("%s: tube %v", b.Name, err), `write "3/16in:5ft"`}
		}
	}
	beer, err := b.liquid()
	if err != nil {
		return lines.Run{}, err
	}
	run := lines.DefaultRun(tubes...)
	run.Rise, run.Beer, run.Temp = b.Line.Rise.length(), beer, b.ServeAt
	return run, nil
}

// balanced reports whether a flow is near enough to the target to pour well.
func (l *LinePlan) balanced() bool { return slowest*l.Target <= l.Flow && l.Flow <= fastest*l.Target }

// flows judges the line at the pressure that the beer needs: where the pressure
// is wrong it is mended first, and a line cut to fit the wrong pressure would
// be wrong ever after.
func (p *planner) flows(i int) Point {
	b, line := p.day.Beers[i], p.plan.Lines[i]
	point := Point{What: fmt.Sprintf("%s: {%.6g l_per_min}, a glass in {%.6g s}", b.Name, line.Flow, line.PourTime)}
	if !p.pressed(i).Holds {
		right := carbonation.PaG(1e3 * p.plan.Beers[i].Gauge)
		if mended, err := p.line(i, right); err == nil {
			line = mended
			point.What = fmt.Sprintf("%s: with {%.6g kpa} set, {%.6g l_per_min}, a glass in {%.6g s}",
				b.Name, right.KPa(), line.Flow, line.PourTime)
		}
	}
	point.Holds = line.balanced()
	switch {
	case line.Choker > 0:
		point.Mend = fmt.Sprintf("add {%.6g m} to the last tube of %s", line.Choker, b.Name)
	case line.Length > 0.05:
		point.Mend = fmt.Sprintf("make the last tube of %s {%.6g m} long", b.Name, line.Length)
	case b.Chiller.Kind == "coil":
		point.Mend = fmt.Sprintf("take a wider or shorter coil or line for %s", b.Name)
	default:
		point.Mend = fmt.Sprintf("give %s a wider or shorter line, or lower the tap", b.Name)
	}
	return point
}
