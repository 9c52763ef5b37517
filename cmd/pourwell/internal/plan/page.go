package plan

import (
	"fmt"
	"slices"

	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/internal/quantity"
)

// Page lays the plan out for a person: the verdict first.
func (p *Plan) Page(explain bool) report.Page {
	page := report.Page{Title: p.Title}
	add := func(b report.Block) { page.Blocks = append(page.Blocks, b) }
	add(p.verdictBlock())
	timeline := report.Block{Heading: "The day"}
	for _, m := range p.Timeline {
		timeline.Rows = append(timeline.Rows, []string{m.At, m.What})
	}
	add(timeline)
	bring := report.Block{Heading: "Bring"}
	for _, i := range p.Shopping {
		bring.Rows = append(bring.Rows, []string{i.What, i.Amount})
	}
	add(bring)
	add(p.beerBlock())
	add(p.lineBlock())
	for i := range p.Cooling {
		add(p.Cooling[i].block())
	}
	add(report.Block{Heading: "Gas and queue", Lines: []string{p.gasSentence(), p.tapSentence()}})
	add(p.glassBlock())
	add(p.afterBlock())
	add(report.Block{Heading: "Cautions", Bullets: p.Cautions})
	add(report.Block{Heading: "Assumed", Bullets: p.Assumptions})
	if explain {
		b := report.Block{Heading: "The same by hand"}
		for _, c := range p.Commands {
			b.Bullets = append(b.Bullets, c.Answers+" is "+c.Key+" of: "+c.Line)
		}
		add(b)
	}
	return page
}

func (p *Plan) verdictBlock() report.Block {
	b := report.Block{Heading: "Verdict", Lines: []string{p.Verdict.Summary}}
	if p.Verdict.Change != "" {
		b.Lines = append(b.Lines, "Change this first: "+p.Verdict.Change+".")
	}
	for _, failed := range []bool{true, false} {
		for _, point := range p.Verdict.Points {
			switch {
			case point.Holds == failed:
			case point.Holds:
				b.Rows = append(b.Rows, []string{"ok", point.What + "."})
			default:
				b.Rows = append(b.Rows, []string{"NO", point.What + ": " + point.Mend + "."})
			}
		}
	}
	return b
}

func (p *Plan) beerBlock() report.Block {
	b := report.Block{Heading: "Beer"}
	for _, beer := range p.Beers {
		b.Rows = append(b.Rows, []string{beer.Name, fmt.Sprintf(
			"%.0f glasses expected, plan for %d; on hand %s, %d glasses. The chance that it runs out is %s; {%.6g l} left to serve on average."+
				" {%.6g volumes} of CO2 need {%.6g kpa} on the regulator.",
			beer.Expected, beer.Planned, kegs(beer.Kegs), beer.Kegs*beer.PerKeg, chance(beer.RunOut), beer.Leftover, beer.Content, beer.Gauge)})
	}
	return b
}

func (p *Plan) lineBlock() report.Block {
	b := report.Block{Heading: "Lines"}
	for _, l := range p.Lines {
		s := fmt.Sprintf("%s pours {%.6g l_per_min}, a glass in {%.6g s}, {%.6g l_per_min} from a nearly empty keg", join(l.Tubes), l.Flow, l.PourTime, l.FlowEmpty)
		if l.Length > 0 {
			s += fmt.Sprintf(". For {%.6g l_per_min} make the last tube {%.6g m} long", l.Target, l.Length)
		}
		if l.Choker > 0 {
			s += fmt.Sprintf(". For {%.6g l_per_min} add {%.6g m} to the last tube", l.Target, l.Choker)
		}
		if l.Length > 0 && l.TradeLength > 0 {
			s += fmt.Sprintf("; the trade's table says {%.6g m}", l.TradeLength)
		}
		b.Rows = append(b.Rows, []string{l.Beer, s + "."})
	}
	b.Bullets = []string{"Physics of smooth tubes and the trade's table differ; one timed glass settles it: pourwell lines calibrate."}
	return b
}

func (c *Cooling) block() report.Block {
	if c.Chiller != nil {
		heading := fmt.Sprintf("%s for %s, %s", map[string]string{"coil": "Coil", "plate": "Plate"}[c.Chiller.Kind], c.Beer, c.Chiller.State)
		return report.Block{Heading: heading, Lines: []string{c.chillerSentence()}}
	}
	b := report.Block{
		Heading: "Tub of " + c.Beer,
		Columns: []string{"", "beer drawn", "ice left", "beer left in each keg"},
	}
	if c.Chill > 0 {
		b.Lines = []string{fmt.Sprintf("Cold in about {%.6g s}, bedded {%.6g s} ahead to be sure. The bath covers {%.2g share} of the keg.", c.Chill, c.Longest, c.Covered)}
	}
	for _, h := range c.Hours {
		b.Rows = append(b.Rows, []string{h.At, fmt.Sprintf("{%.6g c}", h.Beer), fmt.Sprintf("{%.6g kg}", h.Ice), fmt.Sprintf("{%.6g l}", h.Left)})
	}
	return b
}

// InUnits returns the plan with the numbers its sentences quote written in the
// units of sys, for JSON.
func (p Plan) InUnits(sys quantity.System) Plan {
	write := func(s *string) { *s = report.Written(*s, sys) }
	each := func(list []string) []string {
		list = append([]string{}, list...)
		for i := range list {
			write(&list[i])
		}
		return list
	}
	write(&p.Title)
	write(&p.Verdict.Summary)
	write(&p.Verdict.Change)
	p.Verdict.Points = slices.Clone(p.Verdict.Points)
	for i := range p.Verdict.Points {
		write(&p.Verdict.Points[i].What)
		write(&p.Verdict.Points[i].Mend)
	}
	p.Timeline = slices.Clone(p.Timeline)
	for i := range p.Timeline {
		write(&p.Timeline[i].What)
	}
	p.Shopping = slices.Clone(p.Shopping)
	for i := range p.Shopping {
		write(&p.Shopping[i].Amount)
	}
	p.Cautions, p.Assumptions = each(p.Cautions), each(p.Assumptions)
	return p
}
