package lines

import (
	"cmp"
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
	Findings []Finding  // those that fit first, then by size; empty if nothing is off
	Checked  []string   // what was looked at
	Unknown  []Sentence // what was not read, and would have shown more

	Content carbonation.Content // of the beer, given or inferred; invalid if unknown
	Needed  carbonation.Gauge   // that holds the content at the keg's temperature
	Flow    Flow                // measured, or computed where nothing was timed
	Tap     thermal.Temperature // of the beer at the tap: what was read less the glass's part; invalid if not read

	seen     *Observation
	computed Pour                // of the run as built; its flow is 0 where nothing drives it
	run      Run                 // with the calibration that a timed glass gives, where it gives one
	odd      Sentence            // why the timed glass fits no calibration, "" if it fits one
	expected thermal.Temperature // of the beer at the tap, from keg and line
	aim      aim
}

// An aim is where the remedies for the keg lead. The line is judged and balanced
// there, so that the remedies do not pull against each other.
type aim struct {
	gauge carbonation.Gauge
	keg   thermal.Temperature
	once  Sentence // what has to be done first, "" if the keg stays as it is
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
// It judges what the keg's gas and temperature want against the gauge, the beer
// at the tap against what an open glass bears and against the keg, the flow
// against the run and against the target, the line's standing and flowing beer
// ([Run.Stand], [Run.Profile]), the glass, and how long a carried keg has rested.
//
// The remedies go together: where one changes the pressure or the keg's
// temperature, lengths of tube are for what it leads to, and a flow that it puts
// right is no finding of its own. None cools beer below 34 °F (1.1 °C).
//
// It returns a [*RangeError] outside the validity tables, and the errors of
// [Run.Flow]; a rise that takes all the pressure is a finding.
func (o Observation) Diagnose() (Diagnosis, error) {
	d := Diagnosis{Flow: Flow(nan), seen: &o}
	if err := o.check("lines.Observation.Diagnose"); err != nil {
		return Diagnosis{Flow: Flow(nan)}, err
	}
	for _, judge := range []func(*Observation) error{d.read, d.gas, d.warmth, d.pour, d.tap, d.line, d.rest, d.glass} {
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
		}
		// To a pascal: of two that are one cause, the one judged first leads.
		return cmp.Compare(math.Round(float64(b.Size)), math.Round(float64(a.Size)))
	})
	d.share()
	return d, nil
}

// share sets what part each finding has in the sum of all.
func (d *Diagnosis) share() {
	sum := 0.0
	for _, f := range d.Findings {
		sum += float64(f.Size)
	}
	for i := range d.Findings {
		if sum > 0 {
			d.Findings[i].Share = float64(d.Findings[i].Size) / sum
		} else {
			d.Findings[i].Share = 1 / float64(len(d.Findings))
		}
	}
}

func (d *Diagnosis) found(f Finding)       { d.Findings = append(d.Findings, f) }
func (d *Diagnosis) checked(what string)   { d.Checked = append(d.Checked, what) }
func (d *Diagnosis) unknown(what Sentence) { d.Unknown = append(d.Unknown, what) }

// size is what a finding comes to as a pressure of p pascals.
func size(p float64) unit.Pressure { return unit.Pressure(math.Abs(p)) }

// applied returns the pressure on the beer in Pa, as the gauge reads it.
func (o *Observation) applied() float64 { return o.Serving.Gauge.Pascals() }

// ambient returns the air pressure in Pa.
func (o *Observation) ambient() float64 { return o.Serving.Air.Pascals() }

// Steps returns the working, without what is not known.
func (d Diagnosis) Steps() []Step {
	if d.seen == nil {
		return nil
	}
	steps := []Step{
		step("keg", "T_keg", d.seen.Run.Temp.Celsius(), "c", "given"),
		step("gauge", "p", d.seen.applied(), "pa", "given"),
		step("air", "p_air", d.seen.ambient(), "pa", "given"),
		step("content", "c_CO2", d.Content.Volumes(), "volumes", "given, or carbonation.ContentAt where it was carbonated"),
		step("pressure that holds it, gauge", "p_eq", d.Needed.Pascals(), "pa", "carbonation.PressureFor at the keg's temperature"),
		step("flow", "Q", float64(d.Flow), "m3_per_s", "glass over time, or Run.Flow"),
		step("pressure that the line is balanced for, gauge", "p_aim", d.aim.gauge.Pascals(), "pa", "what the remedies for the keg lead to; as read if there are none"),
		step("beer at the tap", "T_tap", d.Tap.Celsius(), "c", "reading less the glass's part (thermal.Glassful)"),
	}
	for _, f := range d.Findings {
		steps = append(steps, step(f.Cause, "Δp", float64(f.Size), "pa", "size of the finding"))
	}
	return slices.DeleteFunc(steps, valueless)
}

// Band returns the uncertainty of the largest finding: what readings and
// solubility leave open.
func (d Diagnosis) Band() Band {
	b := Band{Name: "size", Suffix: "pa", Source: "half a psi, half a kelvin and 1.5 % of content"}
	if len(d.Findings) > 0 {
		p := float64(d.Findings[0].Size)
		b.Low, b.High = math.Max(0, p-pressureSlack), p+pressureSlack
	}
	return b
}
