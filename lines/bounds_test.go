package lines

import (
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

type trial = checktest.Trial

var tried = checktest.Tried

// fiveFeet is the usual short line.
func fiveFeet() Run {
	return DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 5 * Foot, Material: "vinyl"})
}

// An ask is what is asked of a run, beside the run itself.
type ask struct {
	serving Serving
	glass   unit.Volume
	time    time.Duration
	n       int // stations
}

func asked() ask {
	return ask{DefaultServing(psi(12), carbonation.Volumes(2.5)), 0.4e-3, 8 * time.Second, 5}
}

// runTrials asks everything of a changed run, a straight one and one through a
// coil in ice.
func runTrials(change func(*Run, *ask)) (all []trial) {
	for _, r := range []Run{fiveFeet(), warmRun()} {
		a := asked()
		change(&r, &a)
		s := a.serving
		p, err := r.Flow(s.Gauge)
		all = append(all, tried("Run.Flow", p, err))
		p, err = r.Gauge(s.Target)
		all = append(all, tried("Run.Gauge", p, err))
		k, err := r.Calibrate(s.Gauge, a.glass, a.time)
		all = append(all, tried("Run.Calibrate", k, err))
		if len(r.Tubes) > 0 {
			p, err = r.Length(len(r.Tubes)-1, s.Target, s.Gauge)
			all = append(all, tried("Run.Length", p, err))
			b, err := r.TradeLength(len(r.Tubes)-1, s.Gauge)
			all = append(all, tried("Run.TradeLength", b, err))
		}
		b, err := r.TradeGauge()
		all = append(all, tried("Run.TradeGauge", b, err))
		c, err := r.Clean()
		all = append(all, tried("Run.Clean", c, err))
		profile, err := r.Profile(s, a.n)
		all = append(all, tried("Run.Profile", profile, err))
		for _, around := range []thermal.Surroundings{{}, thermal.Shade(thermal.Celsius(30))} {
			s.Around = around
			st, err := r.Stand(s)
			all = append(all, tried("Run.Stand", st, err))
		}
		s.Chiller = thermal.DefaultCoil().Packed()
		w, err := r.Warm(s)
		all = append(all, tried("Run.Warm", w, err))
		o := Observation{Run: r, Serving: a.serving}
		d, err := o.Diagnose()
		all = append(all, tried("Observation.Diagnose", d, err))
	}
	return all
}

func tubeTrials(change func(*Tube)) []trial {
	return append(runTrials(func(r *Run, _ *ask) { change(&r.Tubes[len(r.Tubes)-1]) }),
		runTrials(func(r *Run, _ *ask) {
			r.DipTube = Tube{Bore: 7 * Millimetre, Length: 0.5}
			change(&r.DipTube)
		})...)
}

func observed(change func(*Observation)) []trial {
	a := asked()
	o := Observation{
		Run: fiveFeet(), Serving: a.serving, Glass: volume.GlassOf(a.glass), Time: a.time,
		BeerTemp: thermal.Fahrenheit(40), Carried: true,
		CarbonatedTemp: thermal.Fahrenheit(38), CarbonatedGauge: psi(12), CarbonatedFor: 7 * 24 * time.Hour,
	}
	o.Serving.Content = carbonation.Content{}
	change(&o)
	d, err := o.Diagnose()
	return []trial{tried("Observation.Diagnose", d, err)}
}

func days(d float64) time.Duration    { return time.Duration(d * 24 * float64(time.Hour)) }
func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }

var setters = map[string]func(v float64) []trial{
	"number of tubes": func(v float64) []trial {
		return runTrials(func(r *Run, _ *ask) {
			r.Tubes = nil
			for range int(max(0, v)) {
				r.Tubes = append(r.Tubes, Tube{Bore: Inch / 4, Length: 0.5, Material: "vinyl"})
			}
		})
	},
	"bore": func(v float64) []trial {
		return append(tubeTrials(func(t *Tube) { t.Bore = unit.Length(v) * Millimetre }),
			runTrials(func(r *Run, _ *ask) { r.Fittings[0].Bore = unit.Length(v) * Millimetre })...)
	},
	"outside diameter": func(v float64) []trial {
		t, err := TubeOfOD(unit.Length(v)*Millimetre, unit.Length(v)*Millimetre/4.5, 1)
		return []trial{tried("TubeOfOD", t, err)}
	},
	"length": func(v float64) []trial { return tubeTrials(func(t *Tube) { t.Length = unit.Length(v) }) },
	"wall":   func(v float64) []trial { return tubeTrials(func(t *Tube) { t.Wall = unit.Length(v) * Millimetre }) },
	"roughness over bore": func(v float64) []trial {
		return tubeTrials(func(t *Tube) { t.Roughness = unit.Length(v) * t.Bore })
	},
	"coil diameter over bore": func(v float64) []trial { return tubeTrials(func(t *Tube) { t.Coil = unit.Length(v) * t.Bore }) },
	"rise":                    func(v float64) []trial { return runTrials(func(r *Run, _ *ask) { r.Rise = unit.Length(v) }) },
	"keg height":              func(v float64) []trial { return runTrials(func(r *Run, _ *ask) { r.KegHeight = unit.Length(v) }) },
	"fullness":                func(v float64) []trial { return runTrials(func(r *Run, _ *ask) { r.Full = v }) },
	"loss coefficient":        func(v float64) []trial { return runTrials(func(r *Run, _ *ask) { r.Fittings[0].K = v }) },
	"hardware loss": func(v float64) []trial {
		return runTrials(func(r *Run, _ *ask) { r.Hardware.Loss = unit.Pressure(v) * carbonation.KPa })
	},
	"flow of the hardware loss": func(v float64) []trial {
		return runTrials(func(r *Run, _ *ask) { r.Hardware.At = Flow(v) * LitrePerMinute })
	},
	"rating": func(v float64) []trial {
		return runTrials(func(r *Run, _ *ask) { r.Rated = unit.Pressure(v) * carbonation.KPa })
	},
	"calibration factor": func(v float64) []trial { return runTrials(func(r *Run, _ *ask) { r.Calibration = v }) },
	"temperature": func(v float64) []trial {
		at := thermal.Celsius(v)
		all := runTrials(func(r *Run, _ *ask) { r.Temp = at })
		all = append(all, runTrials(func(_ *Run, a *ask) { a.serving.LineTemp = at })...)
		return append(all, observed(func(o *Observation) { o.BeerTemp = at })...)
	},
	"gauge pressure": func(v float64) []trial {
		g := carbonation.KPaG(v)
		return append(runTrials(func(_ *Run, a *ask) { a.serving.Gauge = g }),
			observed(func(o *Observation) { o.CarbonatedGauge = g })...)
	},
	"flow": func(v float64) []trial {
		return runTrials(func(_ *Run, a *ask) { a.serving.Target = Flow(v) * LitrePerMinute })
	},
	"content": func(v float64) []trial {
		return runTrials(func(_ *Run, a *ask) { a.serving.Content = carbonation.Volumes(v) })
	},
	"crevice radius": func(v float64) []trial {
		return runTrials(func(_ *Run, a *ask) { a.serving.Crevice = unit.Length(v * 1e-6) })
	},
	"number of stations": func(v float64) []trial { return runTrials(func(_ *Run, a *ask) { a.n = int(v) }) },
	"glass": func(v float64) []trial {
		glass := unit.Volume(v) * volume.Litre
		return append(runTrials(func(_ *Run, a *ask) { a.glass, a.time = glass, seconds(20*max(0.1, v)) }),
			observed(func(o *Observation) { o.Glass.Volume, o.Time = glass, seconds(20*max(0.1, v)) })...)
	},
	"time for a glass": func(v float64) []trial {
		return append(runTrials(func(_ *Run, a *ask) { a.time = seconds(v) }), observed(func(o *Observation) { o.Time = seconds(v) })...)
	},
	"time before the pour": func(v float64) []trial {
		return append(observed(func(o *Observation) { o.Since = days(v) }), observed(func(o *Observation) { o.CarbonatedFor = days(v) })...)
	},
}

// bounds says how the rows are tried; TestEveryBound and the tests of any run
// share what may end a calculation.
var bounds = checktest.Bounds{
	Setters: setters,
	Fine:    []error{ErrNoSolution},
	Empty:   []string{"Diagnosis.Tap", "Diagnosis.Content", "Diagnosis.Needed", "Calibration.EquivalentBore", "Warm.ColdOnly"},
	Shut:    map[string]string{"number of tubes below": "a list holds no fewer than none"},
}

// The bounds of every row are themselves within it, and nothing beyond them is.
func TestEveryBound(t *testing.T) { checktest.EveryBound[RangeError](t, Limits(), bounds) }

func TestFields(t *testing.T) {
	checktest.Fields(t, Limits(), map[string]string{
		"Observation.CarbonatedTemp": "carbonation.ContentAt holds it against its own row",
		"Observation.GlassWas":       "thermal.Glassful holds it against its own row",
	})
}

// Beer is no colder than carbonation knows an equilibrium, nor warmer.
func TestTemperatureIsSoluble(t *testing.T) {
	if r := limitSoluble(); limitTemperature.Min != r.Min || limitTemperature.Max > r.Max {
		t.Errorf("%+v is not within %+v", limitTemperature, r)
	}
}

// The air pressure has carbonation's row, at both of its ends and no further.
func TestAirPressure(t *testing.T) {
	r := limitAir()
	for _, v := range []float64{r.Min, r.Max} {
		s := asked().serving
		s.Air = carbonation.KPaA(v)
		_, err := fiveFeet().Profile(s, 5)
		if err != nil {
			t.Errorf("%g kPa: %v", v, err)
		}
		s.Air = carbonation.PaA(float64(unit.Pressure(v+(v-77)*1e-6) * carbonation.KPa))
		_, err = fiveFeet().Profile(s, 5)
		wantRange(t, "beyond", err, "air pressure")
	}
}
