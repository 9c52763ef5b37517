package lines

import (
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
)

// coldestKeg is the coldest, in °C, that anyone is told to make a keg or a line:
// 34 °F. Below it ice forms in lines and taps; common practice, no source.
const coldestKeg = 10.0 / 9

// flatVolumes is the content below which beer tastes flat; common practice, no
// source.
const flatVolumes = 2.2

// hold finds what the beer holds, and the pressure that keeps it there.
func (d *Diagnosis) hold(o *Observation) error {
	d.Content = o.Serving.Content
	if !d.Content.IsValid() && o.CarbonatedTemp.IsValid() && o.CarbonatedGauge.IsValid() {
		var err error
		d.Content, err = carbonation.ContentAt(o.CarbonatedTemp, o.CarbonatedGauge.Absolute(o.Serving.Air), o.Run.Beer)
		if err != nil {
			return err
		}
		if o.CarbonatedFor < 7*24*time.Hour {
			d.unknown("A still keg needs about a week to take up its gas: what it holds is taken from where it was carbonated, and is less sure the shorter that was.")
		}
	}
	if !d.Content.IsValid() {
		d.unknown("What the beer holds: give its content, or the temperature and gauge it was carbonated at. Without it the keg's gas cannot be judged.")
		return nil
	}
	o.Serving.Content = d.Content
	var err error
	d.Needed, err = o.holds(d.Content, o.Run.Temp)
	return err
}

// holds returns the gauge pressure that holds c at t.
func (o *Observation) holds(c carbonation.Content, t thermal.Temperature) (carbonation.Gauge, error) {
	p, err := carbonation.PressureFor(c, t, o.Run.Beer)
	return p.Gauge(o.Serving.Air), err
}

// gas judges the keg: does the applied pressure hold its gas at its
// temperature?
func (d *Diagnosis) gas(o *Observation) error {
	if !d.Content.IsValid() {
		return nil
	}
	d.checked("gas of the keg against its gauge and temperature")
	over := d.Needed.Pascals() - o.applied()
	missing := float64(carbonation.Atmosphere) - o.ambient()
	switch {
	case over < -pressureSlack:
		return d.tooHigh(o, over)
	case over <= pressureSlack:
		return nil
	case missing > 3e3 && over-missing <= pressureSlack:
		d.set(d.Needed)
		d.found(Finding{
			Cause: "elevation forgotten", Size: size(over), Fits: !o.FirstOnly,
			Measured: say("the gauge shows {%.5g kpa} in air {%.5g kpa} thinner than at sea level", o.Serving.Gauge.KPa(), missing/1e3),
			Expected: say("{%.5g kpa} on this gauge for {%.4g volumes} at {%.4g c}", d.Needed.KPa(), d.Content.Volumes(), o.Run.Temp.Celsius()),
			Remedy:   say("set {%.5g kpa}: %s", d.Needed.KPa(), d.balance(o, d.aim)),
			Confirm:  "a chart for sea level gives the pressure that is set now",
		})
		return nil
	}
	return d.warmOrOver(o, over)
}

// set makes g the pressure that the line is balanced for.
func (d *Diagnosis) set(g carbonation.Gauge) {
	d.aim = aim{g, d.seen.Run.Temp, say("with {%.5g kpa} set, ", g.KPa())}
}

// warmOrOver says why the keg's gas presses harder than the gauge: the keg is
// too warm, holds too much, or is simply under too little pressure.
func (d *Diagnosis) warmOrOver(o *Observation, over float64) error {
	warmer := o.CarbonatedTemp.IsValid() && o.Run.Temp.Sub(o.CarbonatedTemp) > 1
	t, err := carbonation.TemperatureFor(d.Content, o.Serving.Gauge.Absolute(o.Serving.Air), o.Run.Beer)
	measured := say("the keg is at {%.4g c}, where {%.4g volumes} press with {%.5g kpa}; the gauge shows {%.5g kpa}",
		o.Run.Temp.Celsius(), d.Content.Volumes(), d.Needed.KPa(), o.Serving.Gauge.KPa())
	switch {
	case d.Content.Volumes() > highVolumes && !warmer:
		return d.overCarbonated(o, over)
	case o.chilled(): // a keg served warm: its pressure is what to change
		d.tooLow(o, over)
	case err == nil && t.Celsius() >= coldestKeg && o.applied() <= openGlass:
		d.aim = aim{o.Serving.Gauge, t, say("once the keg is at {%.4g c}, ", t.Celsius())}
		d.found(Finding{
			Cause: "keg too warm for its pressure", Size: size(over), Fits: !o.FirstOnly, Measured: measured,
			Expected: say("{%.4g c} for that gauge", t.Celsius()),
			Remedy:   say("cool the keg to {%.4g c}; until then %s", t.Celsius(), d.meanwhile(o)),
			Confirm:  say("the second glass in a row reads about {%.4g c} too", o.Run.Temp.Celsius()),
		})
	case d.kegTooWarm(o):
		if err := d.cool(o); err != nil {
			return err
		}
		d.found(Finding{
			Cause: "keg too warm for its pressure", Size: size(over), Fits: !o.FirstOnly, Measured: measured,
			Expected: say("a keg at {%.4g c} under {%.5g kpa}", d.aim.keg.Celsius(), d.aim.gauge.KPa()),
			Remedy:   say("cool the keg to {%.4g c} and then set {%.5g kpa}: %s; until then %s", d.aim.keg.Celsius(), d.aim.gauge.KPa(), d.balance(o, d.aim), d.meanwhile(o)),
			Confirm:  say("the second glass in a row reads about {%.4g c} too", o.Run.Temp.Celsius()),
		})
	default:
		d.tooLow(o, over)
	}
	return nil
}

// meanwhile says what to do while a warm keg is not cold.
func (d *Diagnosis) meanwhile(o *Observation) Sentence {
	if d.kegTooWarm(o) {
		return say("{%.5g kpa} keep its gas in, but beer that warm foams in any glass", d.Needed.KPa())
	}
	return say("set {%.5g kpa}: %s", d.Needed.KPa(), d.balance(o, aim{gauge: d.Needed, keg: o.Run.Temp}))
}

// tooLow says that the gauge does not hold the beer's gas.
func (d *Diagnosis) tooLow(o *Observation, over float64) {
	d.set(d.Needed)
	d.found(Finding{
		Cause: "pressure too low for the beer's gas", Size: size(over), Fits: !o.FirstOnly,
		Measured: say("the gauge shows {%.5g kpa}; {%.4g volumes} press with {%.5g kpa} at {%.4g c}", o.Serving.Gauge.KPa(), d.Content.Volumes(), d.Needed.KPa(), o.Run.Temp.Celsius()),
		Expected: say("{%.5g kpa}", d.Needed.KPa()),
		Remedy:   say("set {%.5g kpa}: %s", d.Needed.KPa(), d.balance(o, d.aim)),
		Confirm:  say("with the gas shut off the keg's own gauge climbs to about {%.5g kpa} overnight", d.Needed.KPa()),
	})
}

// overCarbonated says that the beer holds more than it should. It is vented to
// what the gauge holds, but not below what is usual.
func (d *Diagnosis) overCarbonated(o *Observation, over float64) error {
	goal := o.Serving.Gauge
	usual, err := o.holds(carbonation.Volumes(usualVolumes), o.Run.Temp)
	if err != nil {
		return err
	}
	if goal.Pascals() < usual.Pascals() {
		goal = usual
	}
	holds, err := carbonation.ContentAt(o.Run.Temp, goal.Absolute(o.Serving.Air), o.Run.Beer)
	if err != nil {
		return err
	}
	d.aim = aim{goal, o.Run.Temp, say("once the gas is vented to {%.5g kpa}, ", goal.KPa())}
	d.found(Finding{
		Cause: "over-carbonated", Size: size(over), Fits: !o.FirstOnly,
		Measured: say("{%.4g volumes} in the beer", d.Content.Volumes()),
		Expected: say("{%.4g volumes} at {%.4g c} under {%.5g kpa}", holds.Volumes(), o.Run.Temp.Celsius(), goal.KPa()),
		Remedy: say("shut the gas and vent the head space by its relief valve every hour until the gauge, given time, comes back to {%.5g kpa}; to serve meanwhile set {%.5g kpa}: %s",
			goal.KPa(), d.Needed.KPa(), d.balance(o, aim{gauge: d.Needed, keg: o.Run.Temp})),
		Confirm: say("with the gas shut off the keg's own gauge climbs to about {%.5g kpa} overnight", d.Needed.KPa()),
	})
	return nil
}

// tooHigh says that the gauge is above what the beer needs: it is turned down
// before anything else.
func (d *Diagnosis) tooHigh(o *Observation, over float64) error {
	holds, err := carbonation.ContentAt(o.Run.Temp, o.Serving.Gauge.Absolute(o.Serving.Air), o.Run.Beer)
	if err != nil {
		return err
	}
	f := Finding{
		Cause: "pressure too high for the beer's gas", Size: size(over), Fits: !o.FirstOnly && o.fast(d.Flow),
		Measured: say("the gauge shows {%.5g kpa}; {%.4g volumes} need {%.5g kpa} at {%.4g c}", o.Serving.Gauge.KPa(), d.Content.Volumes(), d.Needed.KPa(), o.Run.Temp.Celsius()),
		Expected: say("{%.5g kpa}; under {%.5g kpa} the beer comes to {%.4g volumes} in the end", d.Needed.KPa(), o.Serving.Gauge.KPa(), holds.Volumes()),
		Confirm:  "turned down, the beer pours slower and no flatter",
	}
	if d.Content.Volumes() < flatVolumes {
		f.Cause, f.Confirm = "under-carbonated for its pressure", "the beer tastes flat and pours without a lasting head"
	}
	if d.Needed.Pascals() > 0 {
		d.set(d.Needed)
		f.Remedy = say("for today set {%.5g kpa}, which keeps what the beer holds: %s; a week under {%.5g kpa} gives it more", d.Needed.KPa(), d.balance(o, d.aim), o.Serving.Gauge.KPa())
	} else { // less gas than the air alone holds
		f.Measured = say("{%.4g volumes} in the beer", d.Content.Volumes())
		f.Expected = say("{%.4g volumes} in the end at {%.4g c} under {%.5g kpa}", holds.Volumes(), o.Run.Temp.Celsius(), o.Serving.Gauge.KPa())
		f.Remedy = say("leave {%.5g kpa} on the cold keg for about a week; to serve it flat today, set no more than it takes to pour", o.Serving.Gauge.KPa())
	}
	d.found(f)
	return nil
}
