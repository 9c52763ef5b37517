package lines

import "example.com/pourwell/carbonation"

// blocked reports whether less flows than the run would let through.
func (d *Diagnosis) blocked() bool { return float64(d.Flow) < d.computed.Band().Low/flowSlack }

// pour judges the flow: against the run as built and against the target. What
// the remedies for the keg put right is no finding.
func (d *Diagnosis) pour(o *Observation) error {
	if d.computed.Flow == 0 {
		return d.noFlow(o)
	}
	then := d.Flow
	if d.aim.once != "" {
		then, _ = d.at(o, d.aim)
	}
	certain := o.timed() || d.computed.Band().Low > float64(o.Serving.Target)
	switch {
	case o.timed() && d.blocked():
		return d.throttled(o)
	case o.fast(d.Flow) && d.odd != "":
		return d.impossible(o)
	case o.fast(d.Flow) && certain && o.fast(then):
		d.tooFast(o)
	case o.slow(d.Flow) && o.slow(d.computed.Flow) && o.slow(then):
		return d.tooSlow(o)
	}
	if d.odd != "" {
		d.unknown(say("How the line differs from its description: %s. It is judged as described.", d.odd))
	}
	return nil
}

// noFlow says that nothing drives the beer.
func (d *Diagnosis) noFlow(o *Observation) error {
	c, err := o.Run.circuit("lines.Observation.Diagnose")
	if err != nil {
		return err
	}
	f := Finding{
		Cause: "rise takes all the pressure", Size: size(c.lift - o.applied()), Fits: true,
		Measured: say("the rise needs {%.5g kpa}; the gauge shows {%.5g kpa}", c.lift/1e3, o.Serving.Gauge.KPa()),
		Expected: "a pressure above that of the rise",
		Remedy:   say("raise the keg or lower the tap: each {%.4g m} is worth {%.4g kpa}", 1.0, c.density*standardGravity/1e3),
		Confirm:  "nothing flows with the tap fully open",
	}
	if o.applied() < 1 { // Pa: no gauge shows it
		need, err := o.Run.Gauge(o.Serving.Target)
		if err != nil {
			return err
		}
		f.Cause, f.Size = "no pressure is applied", size(need.Gauge.Pascals()-o.applied())
		f.Measured = say("the gauge shows {%.5g kpa}", o.Serving.Gauge.KPa())
		f.Expected = "a pressure that drives the beer and holds its gas"
		f.Remedy = "turn the gas on, and look for a closed valve or an empty cylinder"
	}
	if q, err := d.at(o, d.aim); d.aim.once != "" && err == nil && q > 0 {
		f.Remedy = say("%sthe tap pours {%.4g l_per_min}", d.aim.once, q.LitresPerMinute())
	}
	d.found(f)
	return nil
}

// throttled says that less flows than the run would let through.
func (d *Diagnosis) throttled(o *Observation) error {
	computed := d.computed
	lost := o.applied()
	if p, err := o.Run.Gauge(d.Flow); err == nil {
		lost -= p.Gauge.Pascals()
	}
	d.found(Finding{
		Cause: "tap part open, or a kinked or blocked line", Size: size(lost), Fits: !o.FirstOnly,
		Measured: say("{%.4g l_per_min}, a glass in {%.4g s}", d.Flow.LitresPerMinute(), o.Time.Seconds()),
		Expected: say("{%.4g l_per_min}, a glass in {%.4g s}%s", computed.Flow.LitresPerMinute(), computed.TimeFor(o.Glass.Volume).Seconds(), surplus(lost, "lost where they should not be")),
		Remedy:   "open the tap in one quick pull, all the way; look for a kink, a half-seated coupler and a clogged screen",
		Confirm:  say("fully open and straight, the glass fills in about {%.3g s}", computed.TimeFor(o.Glass.Volume).Seconds()),
	})
	return nil
}

// surplus says how much pressure is where it should not be, nothing unless some
// is.
func surplus(p float64, where string) Sentence {
	if !(p > 0) {
		return ""
	}
	return say("; {%.4g kpa} are %s", p/1e3, where)
}

// tooFast says that the run resists too little for the pressure.
func (d *Diagnosis) tooFast(o *Observation) {
	target, run := o.Serving.Target, d.run
	run.Temp = d.aim.keg
	spare := d.aim.gauge.Pascals()
	if p, err := run.Gauge(target); err == nil {
		spare -= p.Gauge.Pascals()
	}
	remedy := say("%sfit a tap with flow control, or a line of narrow tube", d.aim.once)
	if was, length, ok := d.length(o, d.aim); ok && length > was {
		remedy = say("%slengthen the last tube from {%.4g m} to {%.4g m}", d.aim.once, was, length)
	}
	if d.Needed.IsValid() && o.applied() <= d.Needed.Pascals()+pressureSlack {
		remedy += "; do not lower the pressure, which keeps the gas in"
	}
	d.found(Finding{
		Cause: "too little restriction", Size: size(spare), Fits: !o.FirstOnly,
		Measured: say("{%.4g l_per_min}", d.Flow.LitresPerMinute()),
		Expected: say("{%.4g l_per_min}%s", target.LitresPerMinute(), surplus(spare, "left over at the tap")),
		Remedy:   remedy,
		Confirm:  "the beer shoots out of the tap and foams in the glass, clear in the line",
	})
}

// impossible says that more flows than the run could let through as it was
// described, even without friction.
func (d *Diagnosis) impossible(o *Observation) error {
	p := d.computed
	asks := p.circuit.lift + p.circuit.at(float64(d.Flow))
	d.found(Finding{
		Cause: "gauge or line not as described", Size: size(asks - o.applied()), Fits: true,
		Measured: say("{%.4g l_per_min} at {%.5g kpa}: %s", d.Flow.LitresPerMinute(), o.Serving.Gauge.KPa(), d.odd),
		Expected: say("{%.4g l_per_min} through these tubes, fittings and tap", p.Flow.LitresPerMinute()),
		Remedy:   "compare the gauge with another; measure bores and lengths again; count only the liquid in the glass, not its foam",
		Confirm:  "the line turns out wider or shorter, or the gauge reads low",
	})
	return nil
}

// tooSlow says that rise or line take too much of the pressure.
func (d *Diagnosis) tooSlow(o *Observation) error {
	target, computed, run := o.Serving.Target, d.computed, d.run
	run.Temp = d.aim.keg
	need, err := run.Gauge(target)
	if err != nil {
		return err
	}
	short := need.Gauge.Pascals() - d.aim.gauge.Pascals()
	cause := "too much restriction for the pressure"
	if computed.Static > computed.Loss/4 {
		cause = "rise not allowed for"
	}
	remedy := say("%sfit a wider last tube, or give the line {%.5g kpa} with mixed gas, which leaves the content alone", d.aim.once, need.Gauge.KPa())
	if was, length, ok := d.length(o, d.aim); ok && length < was {
		remedy = say("%sshorten the last tube from {%.4g m} to {%.4g m}", d.aim.once, was, length)
	}
	d.found(Finding{
		Cause: cause, Size: size(short),
		Measured: say("{%.4g l_per_min}: %s and losses {%.4g kpa}", d.Flow.LitresPerMinute(), took(float64(computed.Static)), float64(computed.Loss/carbonation.KPa)),
		Expected: say("{%.4g l_per_min} would need {%.5g kpa}", target.LitresPerMinute(), need.Gauge.KPa()),
		Remedy:   remedy,
		Confirm:  "the glass fills slowly but without foam, faster with the glass held lower",
	})
	return nil
}

// took says what the rise takes of the pressure, or the fall adds to it.
func took(static float64) Sentence {
	if static < 0 {
		return say("the fall to the tap adds {%.4g kpa}", -static/1e3)
	}
	return say("the rise takes {%.4g kpa}", static/1e3)
}
