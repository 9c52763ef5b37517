package lines

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// A run whose friction is known to be c times computed gives c back.
func TestCalibrateFindsTheFactor(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r := threeTubes()
		r.Temp = thermal.Celsius(rapid.Float64Range(0, 20).Draw(rt, "temp"))
		r.Rise = unit.Length(rapid.Float64Range(-1, 1).Draw(rt, "rise"))
		r.Calibration = rapid.Float64Range(0.3, 4).Draw(rt, "factor")
		g := psi(rapid.Float64Range(8, 40).Draw(rt, "psi"))
		p, err := r.Flow(g)
		if err != nil {
			rt.Fatal(err)
		}
		glass := 16 * volume.USFluidOunce
		k, err := r.Calibrate(g, glass, p.TimeFor(glass))
		if err != nil {
			rt.Fatal(err)
		}
		if math.Abs(k.Factor/r.Calibration-1) > 1e-6 {
			rt.Errorf("factor %g, want %g", k.Factor, r.Calibration)
		}
		if b := k.Band(); !(b.Low < k.Factor && k.Factor < b.High) {
			rt.Errorf("factor %g outside %+v", k.Factor, b)
		}
		if math.Abs(float64(k.LossPerMetre)*float64(k.tube.Length)-float64(p.Tubes()[k.worst].Loss)) > 1e-4*float64(p.Loss) {
			rt.Errorf("loss per metre %v of tube %d", k.LossPerMetre, k.worst)
		}
	})
}

// A tube sold as 3/16 in that is really 4.40 mm wide: the calibration finds its
// bore.
func TestCalibrateFindsTheBore(t *testing.T) {
	r := DefaultRun(Tube{Bore: 4.40e-3, Length: 1.5})
	p := must(r.Flow(psi(12)))(t)
	r.Tubes[0].Bore = 3 * Inch / 16
	r.Fittings[0].Bore = 4.40e-3 // the same fittings
	k := must(r.Calibrate(psi(12), 0.4e-3, p.TimeFor(0.4e-3)))(t)
	checktest.Near(t, "equivalent bore, mm", float64(k.EquivalentBore/Millimetre), 4.40, 1e-4)
	value := map[string]float64{}
	for _, s := range k.Steps() {
		value[s.Symbol] = s.Value
	}
	checktest.Near(t, "factor redone", (value["p − ρ g h"]-value["Δp_fixed"])/value["Δp_friction"], k.Factor, 1e-12)

	// With the factor the run pours as measured.
	r.Calibration = k.Factor
	checktest.Near(t, "flow with the factor", float64(must(r.Flow(psi(12)))(t).Flow), float64(p.Flow), 1e-12)
}

func TestCalibrateErrors(t *testing.T) {
	r := DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 1.5})
	const glass = 0.4e-3
	_, err := r.Calibrate(carbonation.Gauge{}, glass, 8*time.Second)
	wantRange(t, "gauge", err, "gauge pressure")
	_, err = r.Calibrate(psi(12), glass, 0)
	wantRange(t, "time", err, "time for a glass")
	_, err = r.Calibrate(psi(12), -glass, time.Second)
	wantRange(t, "glass", err, "glass")
	_, err = r.Calibrate(psi(12), 4e-3, time.Second)
	wantRange(t, "flow", err, "flow")
	_, err = r.Calibrate(psi(12), glass, 40*time.Second)
	wantRange(t, "factor", err, "calibration factor")
	k, err := r.Calibrate(psi(12), glass, 2*time.Second)
	if !errors.Is(err, ErrNoSolution) || !strings.Contains(err.Error(), "alone need") || !math.IsNaN(k.Factor) {
		t.Errorf("fixed losses: %+v, %v", k, err)
	}
	if _, err = DefaultRun().Calibrate(psi(12), glass, 8*time.Second); !errors.Is(err, ErrNoSolution) {
		t.Errorf("no tube: %v", err)
	}
	r.Temp = thermal.Temperature{}
	_, err = r.Calibrate(psi(12), glass, 8*time.Second)
	wantRange(t, "temperature", err, "temperature")
}

// What a foot of tubing holds by the trade's table; see also TestTubeVolume.
func TestClean(t *testing.T) {
	c := must(DefaultRun(Tube{Bore: 3 * Inch / 8, Length: 20 * Foot}, Tube{Bore: Inch / 4, Length: 10 * Foot}).Clean())(t)
	want := 20*0.75 + 10*1.0/3 // oz
	checktest.Near(t, "fill, oz", float64(c.Fill)/float64(OuncePerSecond), want, 0.03*want)
	if !(c.Solution > c.Fill && c.Rinse > c.Solution) {
		t.Errorf("%+v", c)
	}
	if b := c.Band(); !(b.Low < float64(c.Fill) && float64(c.Fill) < b.High) {
		t.Errorf("fill outside %+v", b)
	}
	if steps := c.Steps(); steps[0].Value != float64(c.Fill) {
		t.Errorf("%+v", steps)
	}
	_, err := DefaultRun(Tube{}).Clean()
	wantRange(t, "bore", err, "bore")
	_, err = Run{Tubes: make([]Tube, 9)}.Clean()
	wantRange(t, "tubes", err, "number of tubes")
}
