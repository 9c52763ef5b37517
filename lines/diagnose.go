package lines

import (
	"math"
	"slices"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// An Observation is what someone at the tap sees: a run, what it is served with,
// and readings. What was not read stays zero and is not judged.
type Observation struct {
	Run     Run     // as built; its Temp is the keg's temperature as measured
	Serving Serving // its Gauge is as read; its Content may be invalid if it is not known

	Glass    volume.Glass        // that was filled
	Time     time.Duration       // to fill it with liquid
	BeerTemp thermal.Temperature // read in the glass
	GlassWas thermal.Temperature // of the glass before

	FirstOnly bool          // only the first glass after a pause foams
	Carried   bool          // the keg was carried or shaken
	Since     time.Duration // how long ago

	CarbonatedTemp  thermal.Temperature // where the keg took up its gas, if the content is not known
	CarbonatedGauge carbonation.Gauge
	CarbonatedFor   time.Duration // how long it stood so; a still keg needs a week
}

// A Diagnosis is what the readings of an Observation say.
type Diagnosis struct {
	Findings []Finding // those that fit first, then by size; empty if nothing is off
	Checked  []string  // what was looked at
	Unknown  []string  // what was not read, and would have shown more

	Content carbonation.Content // of the beer, given or inferred; invalid if unknown
	Needed  carbonation.Gauge   // that holds the content at the keg's temperature
	Flow    Flow                // measured, or computed where nothing was timed
	Tap     thermal.Temperature // of the beer at the tap: what was read less the glass's part; invalid if not read

	seen *Observation
}

// Tolerances within which readings count as in order: half a psi of a gauge,
// half a kelvin of a thermometer and 1.5 % of content come to about 10 kPa; a
// timed glass is good to a quarter. Our choice.
const (
	pressureSlack    = 10e3 // Pa
	temperatureSlack = 1.5  // K, in the glass
	flowSlack        = 1.25
	slowSlack        = 1.6 // slow beer tries patience before it is a fault
)

// What beers usually hold, assumed where nothing is known, and what the most
// of them hold at most; common practice, no source.
const usualVolumes, highVolumes = 2.5, 2.8

// Diagnose ranks what is off, each with what was measured, what should be, a
// remedy with its number and what would confirm it. The size of a finding is
// what it comes to as a pressure: supersaturation, or pressure unspent or spent
// where it should not be. Where nothing is off the findings are empty, and what
// is left is what nobody measures: a dirty glass or tap.
//
// It judges what the keg's gas and temperature want against the gauge, the flow
// against the run and against the target, the beer at the tap against the keg,
// the line's standing and flowing beer ([Run.Stand], [Run.Profile]), the glass,
// and how long a carried keg has rested.
//
// It returns a [*RangeError] outside the validity tables, and the errors of
// [Run.Flow]; a rise that takes all the pressure is a finding.
func (o Observation) Diagnose() (Diagnosis, error) {
	d := Diagnosis{Flow: Flow(nan), seen: &o}
	if err := limitGauge.Check("lines.Observation.Diagnose", o.Serving.Gauge.KPa()); err != nil {
		return Diagnosis{Flow: Flow(nan)}, err
	}
	for _, judge := range []func(*Observation) error{d.gas, d.pour, d.tap, d.line, d.rest, d.glass} {
		if err := judge(&o); err != nil {
			return Diagnosis{Flow: Flow(nan)}, err
		}
	}
	slices.SortStableFunc(d.Findings, func(a, b Finding) int {
		switch {
		case a.Fits != b.Fits && a.Fits:
			return -1
		case a.Fits != b.Fits:
			return 1
		case a.Size > b.Size:
			return -1
		case a.Size < b.Size:
			return 1
		}
		return 0
	})
	return d, nil
}

func (d *Diagnosis) found(f Finding)              { d.Findings = append(d.Findings, f) }
func (d *Diagnosis) checked(what string)          { d.Checked = append(d.Checked, what) }
func (d *Diagnosis) unknown(what string)          { d.Unknown = append(d.Unknown, what) }
func kpa(p float64) float64                       { return p / 1e3 }
func size(p float64) unit.Pressure                { return unit.Pressure(math.Abs(p)) }
func (o *Observation) applied() float64           { return o.Serving.Gauge.Pascals() }
func (o *Observation) ambient() float64           { return o.Serving.Air.Pascals() }
func (o *Observation) fits(always bool) bool      { return always != o.FirstOnly }
func celsius(t thermal.Temperature) float64       { return t.Celsius() }
func (o *Observation) tubes() (last int, ok bool) { return len(o.Run.Tubes) - 1, len(o.Run.Tubes) > 0 }

// gas judges the keg: does the applied pressure hold its gas at its
// temperature?
func (d *Diagnosis) gas(o *Observation) error {
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
	eq, err := carbonation.PressureFor(d.Content, o.Run.Temp, o.Run.Beer)
	if err != nil {
		return err
	}
	d.Needed = eq.Gauge(o.Serving.Air)
	d.checked("gas of the keg against its gauge and temperature")
	over := d.Needed.Pascals() - o.applied()
	missing := float64(carbonation.Atmosphere) - o.ambient()
	switch {
	case over < -pressureSlack:
		return d.underCarbonated(o, over)
	case over <= pressureSlack:
		return nil
	case missing > 3e3 && over-missing <= pressureSlack:
		d.found(Finding{
			Cause: "elevation forgotten", Size: size(over), Fits: o.fits(true),
			Measured: say("the gauge shows {%.5g kpa} in air {%.5g kpa} thinner than at sea level", o.Serving.Gauge.KPa(), kpa(missing)),
			Expected: say("{%.5g kpa} on this gauge for {%.4g volumes} at {%.4g c}", d.Needed.KPa(), d.Content.Volumes(), celsius(o.Run.Temp)),
			Remedy:   say("set {%.5g kpa}", d.Needed.KPa()),
			Confirm:  "a chart for sea level gives the pressure that is set now",
		})
		return nil
	}
	return d.warmOrOver(o, over)
}

// coldest keg that somebody would be told to aim for, °C.
const coldKeg = 1

// warmOrOver says why the keg's gas presses harder than the gauge: the keg is
// too warm, holds too much, or is simply under too little pressure.
func (d *Diagnosis) warmOrOver(o *Observation, over float64) error {
	warmer := o.CarbonatedTemp.IsValid() && o.Run.Temp.Sub(o.CarbonatedTemp) > 1
	t, err := carbonation.TemperatureFor(d.Content, o.Serving.Gauge.Absolute(o.Serving.Air), o.Run.Beer)
	switch {
	case d.Content.Volumes() > highVolumes && !warmer:
		return d.overCarbonated(o, over)
	case err != nil || t.Celsius() < coldKeg:
		d.found(Finding{
			Cause: "pressure too low for the beer's gas", Size: size(over), Fits: o.fits(true),
			Measured: say("the gauge shows {%.5g kpa}; {%.4g volumes} press with {%.5g kpa} at {%.4g c}", o.Serving.Gauge.KPa(), d.Content.Volumes(), d.Needed.KPa(), celsius(o.Run.Temp)),
			Expected: say("{%.5g kpa}", d.Needed.KPa()),
			Remedy:   say("set {%.5g kpa}, and balance the line for it", d.Needed.KPa()),
			Confirm:  say("with the gas shut off the keg's own gauge climbs to about {%.5g kpa} overnight", d.Needed.KPa()),
		})
	default:
		d.found(Finding{
			Cause: "keg too warm for its pressure", Size: size(over), Fits: o.fits(true),
			Measured: say("the keg is at {%.4g c}, where {%.4g volumes} press with {%.5g kpa}; the gauge shows {%.5g kpa}", celsius(o.Run.Temp), d.Content.Volumes(), d.Needed.KPa(), o.Serving.Gauge.KPa()),
			Expected: say("{%.4g c} for that gauge", celsius(t)),
			Remedy:   say("cool the keg to {%.4g c}; until then set {%.5g kpa}, and balance the line for it", celsius(t), d.Needed.KPa()),
			Confirm:  say("the second glass in a row reads about {%.4g c} too", celsius(o.Run.Temp)),
		})
	}
	return nil
}

func (d *Diagnosis) overCarbonated(o *Observation, over float64) error {
	holds, err := carbonation.ContentAt(o.Run.Temp, o.Serving.Gauge.Absolute(o.Serving.Air), o.Run.Beer)
	if err != nil {
		return err
	}
	d.found(Finding{
		Cause: "over-carbonated", Size: size(over), Fits: o.fits(true),
		Measured: say("{%.4g volumes} in the beer", d.Content.Volumes()),
		Expected: say("{%.4g volumes} at {%.4g c} under {%.5g kpa}", holds.Volumes(), celsius(o.Run.Temp), o.Serving.Gauge.KPa()),
		Remedy:   say("shut the gas and vent the head space by its relief valve every hour until the gauge, given time, comes back to {%.5g kpa}; to serve meanwhile set {%.5g kpa} and lengthen the line", o.Serving.Gauge.KPa(), d.Needed.KPa()),
		Confirm:  say("with the gas shut off the keg's own gauge climbs to about {%.5g kpa} overnight", d.Needed.KPa()),
	})
	return nil
}

func (d *Diagnosis) underCarbonated(o *Observation, over float64) error {
	holds, err := carbonation.ContentAt(o.Run.Temp, o.Serving.Gauge.Absolute(o.Serving.Air), o.Run.Beer)
	if err != nil {
		return err
	}
	d.found(Finding{
		Cause: "under-carbonated for its pressure", Size: size(over),
		Measured: say("{%.4g volumes} in the beer", d.Content.Volumes()),
		Expected: say("{%.4g volumes} in the end at {%.4g c} under {%.5g kpa}", holds.Volumes(), celsius(o.Run.Temp), o.Serving.Gauge.KPa()),
		Remedy:   say("for today set {%.5g kpa}, which keeps what the beer holds; it takes a week at the other to rise", d.Needed.KPa()),
		Confirm:  "the beer tastes flat and pours without a lasting head",
	})
	return nil
}

// Steps returns the working.
func (d Diagnosis) Steps() []Step {
	if d.seen == nil {
		return nil
	}
	steps := []Step{
		step("keg", "T_keg", celsius(d.seen.Run.Temp), "°C", "given"),
		step("gauge", "p", d.seen.applied(), "Pa", "given"),
		step("air", "p_air", d.seen.ambient(), "Pa", "given"),
		step("content", "c_CO2", d.Content.Volumes(), "volumes", "given, or carbonation.ContentAt where it was carbonated"),
		step("pressure that holds it, gauge", "p_eq", d.Needed.Pascals(), "Pa", "carbonation.PressureFor at the keg's temperature"),
		step("flow", "Q", float64(d.Flow), "m³/s", "glass over time, or Run.Flow"),
		step("beer at the tap", "T_tap", celsius(d.Tap), "°C", "reading less the glass's part (thermal.Glassful)"),
	}
	for _, f := range d.Findings {
		steps = append(steps, step(f.Cause, "Δp", float64(f.Size), "Pa", "size of the finding"))
	}
	return steps
}

// Band returns the uncertainty of the largest finding: what readings and
// solubility leave open.
func (d Diagnosis) Band() Band {
	b := Band{Name: "size", Unit: "Pa", Source: "half a psi, half a kelvin and 1.5 % of content"}
	if len(d.Findings) > 0 {
		p := float64(d.Findings[0].Size)
		b.Low, b.High = math.Max(0, p-pressureSlack), p+pressureSlack
	}
	return b
}
