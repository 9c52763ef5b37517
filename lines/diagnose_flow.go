package lines

import (
	"errors"

	"example.com/pourwell/carbonation"
)

// pour judges the flow: against the run as built and against the target.
func (d *Diagnosis) pour(o *Observation) error {
	computed, err := o.Run.serve(o.Serving)
	if errors.Is(err, ErrNoSolution) {
		return d.noFlow(o)
	}
	if err != nil {
		return err
	}
	d.Flow = computed.Flow
	timed := o.Time > 0 && o.Glass.Volume > 0
	if timed {
		if err := limitTime.Check("lines.Observation.Diagnose", o.Time.Seconds()); err != nil {
			return err
		}
		d.Flow = Flow(float64(o.Glass.Volume) / o.Time.Seconds())
		d.checked("flow against the run and the target")
	} else {
		d.unknown("The flow: time one glass. The computed flow is judged instead.")
	}
	band := computed.Band()
	target := o.Serving.Target
	switch {
	case timed && float64(d.Flow) < band.Low/flowSlack:
		return d.throttled(o, computed)
	case d.Flow > flowSlack*target && (timed || band.Low > float64(target)):
		return d.tooFast(o, timed)
	case d.Flow*slowSlack < target && computed.Flow*slowSlack < target:
		return d.tooSlow(o, computed)
	}
	return nil
}

// noFlow says that the rise takes all the pressure.
func (d *Diagnosis) noFlow(o *Observation) error {
	c, err := o.Run.circuit("lines.Observation.Diagnose")
	if err != nil {
		return err
	}
	d.Flow = 0
	d.found(Finding{
		Cause: "rise takes all the pressure", Size: size(c.lift - o.applied()), Fits: true,
		Measured: say("the rise needs {%.5g kpa}; the gauge shows {%.5g kpa}", kpa(c.lift), o.Serving.Gauge.KPa()),
		Expected: "a pressure above that of the rise",
		Remedy:   say("raise the keg or lower the tap: each {%.4g m} is worth {%.4g kpa}", 1.0, c.density*standardGravity/1e3),
		Confirm:  "nothing flows with the tap fully open",
	})
	return nil
}

// throttled says that less flows than the run would let through.
func (d *Diagnosis) throttled(o *Observation, computed Pour) error {
	lost := o.applied()
	if p, err := o.Run.Gauge(d.Flow); err == nil {
		lost -= p.Gauge.Pascals()
	}
	d.found(Finding{
		Cause: "tap part open, or a kinked or blocked line", Size: size(lost), Fits: o.fits(true),
		Measured: say("{%.4g l_per_min}, a glass in {%.4g s}", d.Flow.LitresPerMinute(), o.Time.Seconds()),
		Expected: say("{%.4g l_per_min}, a glass in {%.4g s}; {%.4g kpa} are lost where they should not be", computed.Flow.LitresPerMinute(), computed.TimeFor(o.Glass.Volume).Seconds(), kpa(lost)),
		Remedy:   "open the tap in one quick pull, all the way; look for a kink, a half-seated coupler and a clogged screen",
		Confirm:  say("fully open and straight, the glass fills in about {%.3g s}", computed.TimeFor(o.Glass.Volume).Seconds()),
	})
	return nil
}

// tooFast says that the run resists too little for the pressure.
func (d *Diagnosis) tooFast(o *Observation, timed bool) error {
	run := o.Run
	if timed {
		k, err := run.Calibrate(o.Serving.Gauge, o.Glass.Volume, o.Time)
		if err != nil {
			return d.impossible(o)
		}
		run.Calibration = k.Factor
	}
	target := o.Serving.Target
	spare := o.applied()
	if p, err := run.Gauge(target); err == nil {
		spare -= p.Gauge.Pascals()
	}
	remedy := say("fit a tap with flow control, or a line of narrow tube")
	if last, ok := o.tubes(); ok {
		if p, err := run.Length(last, target, o.Serving.Gauge); err == nil && p.Length > run.Tubes[last].Length {
			remedy = say("lengthen the last tube from {%.4g m} to {%.4g m}; do not lower the pressure, which keeps the gas in", float64(run.Tubes[last].Length), float64(p.Length))
		}
	}
	d.found(Finding{
		Cause: "too little restriction", Size: size(spare), Fits: o.fits(true),
		Measured: say("{%.4g l_per_min}", d.Flow.LitresPerMinute()),
		Expected: say("{%.4g l_per_min}; {%.4g kpa} are left over at the tap", target.LitresPerMinute(), kpa(spare)),
		Remedy:   remedy,
		Confirm:  "the beer shoots out of the tap and foams in the glass, clear in the line",
	})
	return nil
}

// impossible says that more flows than the run could let through as it was
// described, even without friction.
func (d *Diagnosis) impossible(o *Observation) error {
	p, err := o.Run.serve(o.Serving)
	if err != nil {
		return err
	}
	asks := p.circuit.lift + p.circuit.at(float64(d.Flow))
	d.found(Finding{
		Cause: "gauge or line not as described", Size: size(asks - o.applied()), Fits: true,
		Measured: say("{%.4g l_per_min} at {%.5g kpa}", d.Flow.LitresPerMinute(), o.Serving.Gauge.KPa()),
		Expected: say("{%.4g l_per_min} through these tubes, fittings and tap", p.Flow.LitresPerMinute()),
		Remedy:   "compare the gauge with another; measure bores and lengths again; count only the liquid in the glass, not its foam",
		Confirm:  "the line turns out wider or shorter, or the gauge reads low",
	})
	return nil
}

// tooSlow says that rise or line take too much of the pressure.
func (d *Diagnosis) tooSlow(o *Observation, computed Pour) error {
	target := o.Serving.Target
	need, err := o.Run.Gauge(target)
	if err != nil {
		return err
	}
	short := need.Gauge.Pascals() - o.applied()
	cause := "too much restriction for the pressure"
	if computed.Static > computed.Loss/4 {
		cause = "rise not allowed for"
	}
	remedy := say("give the line {%.5g kpa} with mixed gas, which leaves the content alone", need.Gauge.KPa())
	if last, ok := o.tubes(); ok {
		if p, err := o.Run.Length(last, target, o.Serving.Gauge); err == nil {
			remedy = say("shorten the last tube from {%.4g m} to {%.4g m}", float64(o.Run.Tubes[last].Length), float64(p.Length))
		}
	}
	d.found(Finding{
		Cause: cause, Size: size(short),
		Measured: say("{%.4g l_per_min} with {%.4g kpa} of rise and {%.4g kpa} of losses", d.Flow.LitresPerMinute(), float64(computed.Static/carbonation.KPa), float64(computed.Loss/carbonation.KPa)),
		Expected: say("{%.4g l_per_min} would need {%.5g kpa}", target.LitresPerMinute(), need.Gauge.KPa()),
		Remedy:   remedy,
		Confirm:  "the glass fills slowly but without foam, faster with the glass held lower",
	})
	return nil
}
