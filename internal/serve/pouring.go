package serve

import (
	"fmt"
	"strings"

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
		run, err := p.run(b)
		if err != nil {
			return p.about(b, err)
		}
		if b.Chiller.Kind != "" {
			plan := LinePlan{Beer: b.Name, Tubes: b.Line.Tubes, Target: lines.Flow(target).LitresPerMinute()}
			if err := p.warmPour(i, &plan); err != nil {
				return p.about(b, err)
			}
			p.plan.Lines = append(p.plan.Lines, plan)
			continue
		}
		last := len(run.Tubes) - 1
		full, err := run.Flow(p.set[i])
		if err != nil {
			return p.about(b, err)
		}
		plan := LinePlan{
			Beer: b.Name, Tubes: b.Line.Tubes, Target: lines.Flow(target).LitresPerMinute(),
			Flow: full.Flow.LitresPerMinute(), PourTime: full.TimeFor(p.pours[i]).Seconds(),
		}
		low := run
		low.Full = 0
		if empty, err := low.Flow(p.set[i]); err == nil {
			plan.FlowEmpty = empty.Flow.LitresPerMinute()
		}
		if long, err := run.Length(last, target, p.set[i]); err == nil {
			plan.Length = float64(long.Length)
		}
		if trade, err := run.TradeLength(last, p.set[i]); err == nil {
			plan.TradeLength = float64(trade.Length)
		}
		p.plan.Lines = append(p.plan.Lines, plan)
		tubes := `--tube "` + strings.Join(b.Line.Tubes, `" --tube "`) + `"`
		p.command(fmt.Sprintf("lines.%d.flow_l_per_min", i), "flow_l_per_min", "lines flow %s --rise %vm --gauge %vPa --temp %vC %s",
			tubes, b.Line.Rise.si, p.set[i].Pascals(), b.ServeAt.Celsius(), b.flags())
	}
	return nil
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
