package lines

import (
	"cmp"
	"errors"

	"example.com/pourwell/volume"
)

// check reports the first of the readings that lies outside the validity table,
// on behalf of fn. What was not read is zero.
func (o *Observation) check(fn string) error {
	read := func(given bool, r Range, v float64) error {
		if !given {
			return nil
		}
		return r.Check(fn, v)
	}
	return cmp.Or(
		limitGauge.Check(fn, o.Serving.Gauge.KPa()),
		read(o.Glass.Volume != 0, limitGlass, float64(o.Glass.Volume/volume.Litre)),
		read(o.Time != 0, limitTime, o.Time.Seconds()),
		ifGiven(fn, o.BeerTemp),
		limitBefore.Check(fn, o.Since.Hours()/24),
		limitFlow.Check(fn, o.Serving.Target.LitresPerMinute()),
		read(o.CarbonatedGauge.IsValid(), limitGauge, o.CarbonatedGauge.KPa()),
		limitBefore.Check(fn, o.CarbonatedFor.Hours()/24),
	)
}

// read takes the readings: what the beer holds, what flows, and how warm it is
// at the tap.
func (d *Diagnosis) read(o *Observation) error {
	if err := d.hold(o); err != nil {
		return err
	}
	d.aim = aim{gauge: o.Serving.Gauge, keg: o.Run.Temp}
	d.run, d.Flow = o.Run, 0
	var err error
	d.computed, err = o.Run.serve(o.servingOr())
	switch {
	case errors.Is(err, ErrNoSolution):
		d.computed.Flow = 0
	case err != nil:
		return err
	case o.timed():
		if err := d.time(o); err != nil {
			return err
		}
	default:
		d.unknown("The flow: time one glass. The computed flow is judged instead.")
		d.Flow = d.computed.Flow
	}
	return d.temperatures(o)
}

func (o *Observation) timed() bool      { return o.Time > 0 && o.Glass.Volume > 0 }
func (o *Observation) chilled() bool    { return o.Serving.Chiller.Bath.IsValid() }
func (o *Observation) fast(q Flow) bool { return q > flowSlack*o.Serving.Target }
func (o *Observation) slow(q Flow) bool { return q*slowSlack < o.Serving.Target }

// time takes the flow from the timed glass, and the calibration unless something
// is in the way of the beer.
func (d *Diagnosis) time(o *Observation) error {
	d.checked("flow against the run and the target")
	d.Flow = Flow(float64(o.Glass.Volume) / o.Time.Seconds())
	if d.blocked() {
		return nil
	}
	k, err := d.run.Calibrate(o.Serving.Gauge, o.Glass.Volume, o.Time)
	var outside *RangeError
	var none *volume.NoSolutionError
	switch {
	case err == nil:
		d.run.Calibration = k.Factor
	case errors.As(err, &outside) && outside.Name == limitCalibration.Name:
		d.odd = outside.Why()
	case errors.As(err, &none):
		d.odd = none.Why
	default:
		return err
	}
	return nil
}

// at returns what flows where the remedies lead, 0 and an error if nothing does.
func (d *Diagnosis) at(o *Observation, a aim) (Flow, error) {
	run, s := d.run, o.servingOr()
	run.Temp, s.Gauge = a.keg, a.gauge
	p, err := run.serve(s)
	if err != nil {
		return 0, err
	}
	return p.Flow, nil
}

// length returns the length of the last tube that balances the run where the
// remedies lead; ok is false if there is none, if it is too short to reach the
// tap, or so long that nobody lays it: over 30 ft and twice what is there.
func (d *Diagnosis) length(o *Observation, a aim) (was, length float64, ok bool) {
	last := len(o.Run.Tubes) - 1
	if last < 0 {
		return 0, 0, false
	}
	run := d.run
	run.Temp = a.keg
	p, err := run.Length(last, o.Serving.Target, a.gauge)
	least := run.Rise // what the other tubes do not span of it
	for _, t := range run.Tubes[:last] {
		least -= t.Length
	}
	least = max(least, Foot)
	was = float64(run.Tubes[last].Length)
	most := max(30*Foot, 2*run.Tubes[last].Length)
	return was, float64(p.Length), err == nil && least <= p.Length && p.Length <= most
}

// balance says what the line wants where the remedies lead.
func (d *Diagnosis) balance(o *Observation, a aim) Sentence {
	q, err := d.at(o, a)
	was, length, ok := d.length(o, a)
	switch {
	case err == nil && !o.fast(q) && !o.slow(q):
		return say("the line then pours {%.4g l_per_min} as it is", q.LitresPerMinute())
	case ok:
		return say("the last tube then has to be {%.4g m} long instead of {%.4g m}", length, was)
	case o.fast(q):
		return "a tap with flow control, or a line of narrow tube, then has to slow the pour"
	default:
		return "a wider tube or a lower tap then has to speed the pour"
	}
}
