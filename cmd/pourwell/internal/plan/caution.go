package plan

import (
	"fmt"
	"slices"
	"strings"

	"example.com/pourwell/volume"
)

// A heeded is a caution of a package, and the beers whose results carry it.
type heeded struct {
	text  string
	beers []string
}

// heed keeps the cautions that the result of a package carries for a beer; the
// same for another beer is said once for both. A kind that is named in without
// is left out.
func (p *planner) heed(beer string, remarks []volume.Remark, without ...volume.Code) {
	for _, r := range remarks {
		if r.Severity == volume.Note || slices.Contains(without, r.Code) {
			continue
		}
		at := slices.IndexFunc(p.heeds, func(h heeded) bool { return h.text == string(r.Text) })
		switch {
		case at < 0:
			p.heeds = append(p.heeds, heeded{string(r.Text), []string{beer}})
		case !slices.Contains(p.heeds[at].beers, beer):
			p.heeds[at].beers = append(p.heeds[at].beers, beer)
		}
	}
}

// cautions says what can hurt someone: first what the day itself shows, then
// what the results of the packages carry, then what no number of theirs is
// about.
func (p *planner) cautions() {
	say := func(format string, args ...any) {
		p.plan.Cautions = append(p.plan.Cautions, fmt.Sprintf(format, args...))
	}
	for i, b := range p.day.Beers {
		plan, c := p.plan.Beers[i], p.plan.Cooling[i]
		if off := plan.SetGauge - plan.Gauge; off < -tooLow {
			say("%s: {%.6g kpa} is too low. Beer of {%.6g volumes} at {%.6g c} needs {%.6g kpa}; below it gas leaves the beer in keg and line, and it foams.",
				b.Name, plan.SetGauge, plan.Content, p.keeps[i].Celsius(), plan.Gauge)
		} else if off > tooHigh {
			say("%s: {%.6g kpa} is too high. It pours fast, and kept on for days the beer would gain gas up to {%.6g volumes}; {%.6g kpa} holds what it has.",
				b.Name, plan.SetGauge, plan.SetHolds, plan.Gauge)
		}
		if plan.WarmGauge > plan.SetGauge+tooLow {
			say("%s arrives with {%.6g kpa} in the keg, more than the regulator gives: connected warm, beer can run back into the gas line. Fit a check valve, chill first, connect then.",
				b.Name, plan.WarmGauge)
		}
		if c.FloatsAt != "" {
			say("%s: from about %s the kegs are less than {%.2g share} full and float in this tub. A keg that tips pulls at line and tap: weigh it down or let water off.",
				b.Name, c.FloatsAt, c.FloatsBelow)
		}
	}
	for _, h := range p.heeds {
		if len(h.beers) == len(p.day.Beers) || h.beers[0] == "" {
			say("%s", h.text)
		} else {
			say("%s: %s", strings.Join(h.beers, ", "), h.text)
		}
	}
	say("Ice water and electricity: pumps, coolers and extension leads only behind a residual-current device, plugs off the wet ground.")
	say("Wash hands, keep tap mouths and glasses clean.")
}
