package lines

import (
	"errors"
	"math"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// tap judges the beer at the tap against the keg, the glass's part taken out.
func (d *Diagnosis) tap(o *Observation) error {
	if !d.Tap.IsValid() {
		return nil
	}
	d.checked("beer at the tap against the keg")
	expected := d.expected
	rise := d.Tap.Sub(expected)
	if float64(rise) <= temperatureSlack {
		return nil
	}
	atTap, err := carbonation.PressureFor(o.content(), d.Tap, o.Run.Beer)
	if err != nil {
		return err
	}
	atKeg, err := carbonation.PressureFor(o.content(), o.Run.Temp, o.Run.Beer)
	if err != nil {
		return err
	}
	d.found(Finding{
		Cause: "beer warms on its way", Size: size(atTap.Pascals() - atKeg.Pascals()), Fits: true,
		Measured: say("{%.4g c} at the tap, the glass's part taken out", d.Tap.Celsius()),
		Expected: say("{%.4g c} from a keg at {%.4g c}", expected.Celsius(), o.Run.Temp.Celsius()),
		Remedy:   "insulate the line from keg to tap, keep it short and shaded, and lay ice or a frozen bottle along it; if several glasses in a row stay warm, the keg's top is warmer than its thermometer",
		Confirm:  "the third glass in a row is colder than the first",
	})
	return nil
}

// filled returns the glass as it was filled, standing in the line's air.
func (o *Observation) filled() thermal.Glassful {
	around := o.Serving.Around
	if !around.Air.IsValid() {
		around = thermal.Shade(o.GlassWas)
	}
	g := thermal.DefaultGlassful(o.Glass, around)
	g.From, g.Liquid, g.Beer = o.GlassWas, o.Glass.Volume, o.Run.Beer
	return g
}

// content returns what the beer holds, or what is usual.
func (o *Observation) content() carbonation.Content {
	if o.Serving.Content.IsValid() {
		return o.Serving.Content
	}
	return carbonation.Volumes(usualVolumes)
}

// servingOr returns the serving with a usual content where none is known.
func (o *Observation) servingOr() Serving {
	s := o.Serving
	s.Content = o.content()
	return s
}

// line judges beer that stands in the line, and beer that flows.
func (d *Diagnosis) line(o *Observation) error {
	s := o.servingOr()
	if len(o.Run.Tubes) == 0 {
		return nil
	}
	if s.LineTemp.IsValid() || s.Around.Air.IsValid() {
		if err := d.standing(o, s); err != nil {
			return err
		}
	} else {
		d.unknown("What the line passes through: give the air's temperature, or the line's.")
	}
	if !o.Serving.Content.IsValid() {
		return nil
	}
	p, err := o.Run.Profile(s, 50)
	if errors.Is(err, ErrNoSolution) {
		return nil // the flow's finding
	}
	if err != nil {
		return err
	}
	d.checked("gas leaving in the flowing line")
	over := math.Max(0, d.Needed.Pascals()-o.applied()) // counted as the keg's already
	if own := float64(p.Excess) - over; own > float64(p.Threshold) {
		d.found(Finding{
			Cause: "gas leaves in the flowing line", Size: size(own), Fits: !o.FirstOnly,
			Measured: say("the beer leaves the line at {%.4g c}; to hold its gas on the way {%.4g kpa} more are lacking than in a balanced line", p.Outlet.Celsius(), float64(p.Excess)/1e3),
			Expected: say("less than {%.4g kpa} more", float64(p.Threshold)/1e3),
			Remedy:   d.leaving(own),
			Confirm:  "bubbles travel with the beer in a clear line",
		})
	}
	return nil
}

// leaving says what to do about gas that leaves by own pascals more than the
// keg accounts for.
func (d *Diagnosis) leaving(own float64) Sentence {
	if d.aim.once != "" {
		return "cool or insulate the line"
	}
	return say("cool or insulate the line, or raise the pressure by {%.4g kpa} and its restriction with it", own/1e3)
}

// standing judges the beer that rests in the line between glasses.
func (d *Diagnosis) standing(o *Observation, s Serving) error {
	r, err := o.Run.Stand(s)
	if errors.Is(err, ErrNoSolution) {
		return nil
	}
	if err != nil {
		return err
	}
	d.checked("beer standing in the line")
	if !s.LineTemp.IsValid() && !r.Never && r.Limit == 0 {
		d.kegsFault()
		return nil
	}
	measured := s.LineTemp.IsValid() && s.LineTemp.Sub(r.Breakout) > 0
	if !measured && (r.Never || !o.FirstOnly) {
		return nil
	}
	warm := r.Settles
	if measured {
		warm = s.LineTemp
	}
	if warm.Celsius() > 40 {
		warm = thermal.Celsius(40)
	}
	atLine, err := carbonation.PressureFor(s.Content, warm, o.Run.Beer)
	if err != nil {
		return err
	}
	f := Finding{
		Cause: "warm line", Size: size(atLine.Pascals() - o.applied() - o.ambient()), Fits: true,
		Measured: say("beer that stands in the line passes {%.4g c} after {%.4g s}, on its way to {%.4g c}", r.Breakout.Celsius(), r.Limit.Seconds(), r.Settles.Celsius()),
		Expected: say("a line that stays below {%.4g c}, where the gas stays in", r.Breakout.Celsius()),
		Remedy:   say("pour the {%.4g l} that the line holds into a jug after a pause; insulate and shade the line, or lay it in ice%s", float64(r.HoldUp)*1e3, o.foamed(s)),
		Confirm:  "the second glass in a row pours clean",
	}
	if measured {
		f.Measured = say("the line is at {%.4g c}", s.LineTemp.Celsius())
	}
	if r.TooCold {
		f.Expected = "a line about as cold as the keg, once the keg's pressure holds its gas"
	}
	d.found(f)
	return nil
}

// kegsFault lets what was found of the keg's gas explain a first glass too: beer
// in a line as cold as the keg foams at rest.
func (d *Diagnosis) kegsFault() {
	for i := range d.Findings {
		switch d.Findings[i].Cause {
		case "pressure too low for the beer's gas", "keg too warm for its pressure", "over-carbonated", "elevation forgotten":
			d.Findings[i].Fits = true
		}
	}
}

// foamed says how long the line would last under half an inch more of foam,
// nothing if that is not known.
func (o *Observation) foamed(s Serving) Sentence {
	const foam = Inch / 2
	s.Insulation, s.LineTemp = s.Insulation+foam, thermal.Temperature{}
	r, err := o.Run.Stand(s)
	if err != nil || r.Never || !s.Around.Air.IsValid() {
		return ""
	}
	return say("; {%.4g m} more of foam make it last {%.4g s}", float64(foam), r.Limit.Seconds())
}

// rest judges how long a carried keg has stood. Common practice, no source: an
// hour or two, until its foam has fallen and its gas has settled.
func (d *Diagnosis) rest(o *Observation) error {
	const hour = time.Hour
	if o.Carried && o.Since < hour {
		d.found(Finding{
			Cause: "keg carried within the hour", Fits: !o.FirstOnly,
			Measured: say("{%.4g s} of rest", o.Since.Seconds()),
			Expected: say("{%.4g s} to {%.4g s} (common practice, no source)", hour.Seconds(), 2*hour.Seconds()),
			Remedy:   say("let it stand for {%.4g s} more, cold and with the gas on", (hour - o.Since).Seconds()),
			Confirm:  "it calms down with nothing changed",
		})
	}
	return nil
}

// glass judges the glass by what it costs.
func (d *Diagnosis) glass(o *Observation) error {
	if !o.GlassWas.IsValid() || o.Glass.Mass <= 0 {
		d.unknown("The glass: whether it is clean shows when bubbles stick to its side. Its own temperature was not given.")
		return nil
	}
	from := o.Run.Temp
	if d.Tap.IsValid() {
		from = d.Tap
	}
	g := o.filled()
	r, err := g.Pour(from, 0)
	if err != nil {
		return err
	}
	d.checked("what the glass costs")
	const worth = 2.5 // K
	if float64(r.GlassCost) <= worth {
		return nil
	}
	before, err := carbonation.PressureFor(o.content(), from, o.Run.Beer)
	if err != nil {
		return err
	}
	after, err := carbonation.PressureFor(o.content(), r.Temperature, o.Run.Beer)
	if err != nil {
		return err
	}
	d.found(Finding{
		Cause: "warm or dirty glass", Size: unit.Pressure(after.Pascals() - before.Pascals()), Fits: !o.FirstOnly,
		Measured: say("a glass at {%.4g c} warms the beer by {%.3g k}", o.GlassWas.Celsius(), float64(r.GlassCost)),
		Expected: say("no more than {%.3g k}", worth),
		Remedy:   "rinse the glass with cold, clean water just before it is filled; wash without grease or detergent left on it",
		Confirm:  "the same pour into a cold, wet, clean glass stays quiet",
	})
	return nil
}
