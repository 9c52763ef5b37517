package lines

import (
	"math"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// anyFloat draws mostly numbers of a sane size and now and then what nobody
// should have typed.
func anyFloat(t *rapid.T, name string, low, high float64) float64 {
	return rapid.OneOf(
		rapid.Float64Range(low, high), rapid.Float64Range(low, high), rapid.Float64Range(low, high),
		rapid.SampledFrom([]float64{0, low, high, -1, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1)}),
	).Draw(t, name)
}

func sane(t *rapid.T, name string, low, high float64) float64 {
	return rapid.Float64Range(low, high).Draw(t, name)
}

// anyRun draws a run with the given source of numbers.
func anyRun(t *rapid.T, f func(*rapid.T, string, float64, float64) float64) Run {
	length := func(name string, low, high float64) unit.Length { return unit.Length(f(t, name, low, high)) }
	r := DefaultRun()
	for range rapid.IntRange(0, 3).Draw(t, "tubes") {
		tube := Tube{Bore: length("bore", 3e-3, 0.012), Length: length("length", 0, 20), Material: rapid.SampledFrom(tubeWords()).Draw(t, "material")}
		if rapid.Bool().Draw(t, "coiled") {
			tube.Coil = tube.Bore * length("D/d", 10, 50)
		}
		r.Tubes = append(r.Tubes, tube)
	}
	if rapid.Bool().Draw(t, "dip") {
		r.DipTube = Tube{Bore: length("dip bore", 5e-3, 0.01), Length: length("dip length", 0.3, 0.6)}
	}
	r.Rise, r.KegHeight, r.Full = length("rise", -3, 5), length("keg", 0, 1), f(t, "full", 0, 1)
	r.Calibration = f(t, "calibration", 0.3, 3)
	r.Fittings[0].K = f(t, "K", 0, 10)
	r.Hardware.Loss = unit.Pressure(f(t, "hardware", 0, 3e4))
	r.Temp = thermal.Celsius(f(t, "temp", -1, 30))
	return r
}

func anyServing(t *rapid.T, f func(*rapid.T, string, float64, float64) float64) Serving {
	s := DefaultServing(carbonation.PaG(f(t, "gauge", 0, 4e5)), carbonation.Volumes(f(t, "content", 1, 4)))
	s.Crevice = unit.Length(f(t, "crevice", 1e-6, 2e-5))
	if rapid.Bool().Draw(t, "air") {
		s.Around = thermal.Shade(thermal.Celsius(f(t, "air temp", 5, 40)))
		s.Around.Sun = thermal.Irradiance(f(t, "sun", 0, 1000))
	}
	if rapid.Bool().Draw(t, "bath") {
		s.Chiller = thermal.DefaultCoil().Packed()
	}
	if rapid.Bool().Draw(t, "measured line") {
		s.LineTemp = thermal.Celsius(f(t, "line temp", 0, 30))
	}
	return s
}

// Whatever is typed, a result without an error is finite, and none panics.
func TestNoErrorMeansFinite(t *testing.T) {
	answered := map[string]int{}
	for _, source := range []func(*rapid.T, string, float64, float64) float64{sane, anyFloat} {
		rapid.Check(t, func(t *rapid.T) {
			r, s := anyRun(t, source), anyServing(t, source)
			report := func(name string, result any, err error) {
				t.Helper()
				checktest.HoldsUp[RangeError](t, "any run", tried(name, result, err), bounds)
				if err == nil {
					answered[name]++
				}
			}
			p, err := r.Flow(s.Gauge)
			report("Flow", p, err)
			for _, tube := range p.Tubes() {
				report("Flow tube", tube, err)
			}
			g, err := r.Gauge(Flow(source(t, "flow", 0, 1e-4)))
			report("Gauge", g, err)
			if len(r.Tubes) > 0 {
				l, err := r.Length(0, 6e-5, s.Gauge)
				report("Length", l, err)
			}
			trade, err := r.TradeGauge()
			report("TradeGauge", trade, err)
			profile, err := r.Profile(s, 20)
			report("Profile", profile, err)
			standing, err := r.Stand(s)
			report("Stand", standing, err)
			w, err := r.Warm(s)
			report("Warm", w, err)
			k, err := r.Calibrate(s.Gauge, 0.4e-3, time.Duration(sane(t, "slower", 0.8, 1.5)*float64(p.TimeFor(0.4e-3))))
			report("Calibrate", k, err)
			c, err := r.Clean()
			report("Clean", c, err)
			o := Observation{
				Run: r, Serving: s, Glass: volume.GlassOf(0.4e-3), Time: time.Duration(sane(t, "seconds", 1, 30) * 1e9),
				BeerTemp: thermal.Celsius(source(t, "beer", 0, 20)), GlassWas: thermal.Celsius(source(t, "glass", 0, 35)),
				FirstOnly: rapid.Bool().Draw(t, "first"), Carried: rapid.Bool().Draw(t, "carried"),
			}
			d, err := o.Diagnose()
			report("Diagnose", d, err)
		})
	}
	for _, name := range []string{"Flow", "Gauge", "Length", "Profile", "Stand", "Warm", "Calibrate", "Clean", "Diagnose"} {
		// A short run draws a fifth as many, too few to count on five answers.
		if answered[name] < 5 && !testing.Short() {
			t.Errorf("%s answered %d times of 200", name, answered[name])
		}
	}
}
