package plan

import (
	"fmt"
	"math"

	"example.com/pourwell/carbonation"
)

// cautions says what can hurt someone, the day's own first.
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
		if warm := math.Max(plan.WarmGauge, plan.SetGauge); warm > float64(carbonation.HighGauge/carbonation.KPa) {
			say("%s: up to {%.6g kpa} in the keg. Stay below the stamp on the keg and the ratings of line, tap and relief valve; never defeat a relief valve.", b.Name, warm)
		}
		if plan.WarmGauge > plan.SetGauge+tooLow {
			say("%s arrives with {%.6g kpa} in the keg, more than the regulator gives: connected warm, beer can run back into the gas line. Fit a check valve, chill first, connect then.",
				b.Name, plan.WarmGauge)
		}
		if plan.TwoLift {
			say("%s: a full keg weighs {%.6g kg}. Two people, or a trolley and a ramp, lift it.", b.Name, plan.Lift)
		}
		if c.FloatsAt != "" {
			say("%s: from about %s the kegs are less than {%.2g share} full and float in this tub. A keg that tips pulls at line and tap: weigh it down or let water off.",
				b.Name, c.FloatsAt, c.FloatsBelow)
		}
	}
	for _, w := range p.warnings {
		say("%s", w)
	}
	say("CO2 gathers at the floor and suffocates without warning: keep cylinders upright, tied, out of closed rooms, tents and cars; never leave one in a hot car. Local codes and the supplier's rules bind.")
	say("Ice water and electricity: pumps, coolers and extension leads only behind a residual-current device, plugs off the wet ground.")
	say("Ice that has touched kegs is not for drinks. Wash hands, keep tap mouths and glasses clean.")
	say("Alcohol: know the local licence and age rules, offer water and food, plan the way home.")
}
