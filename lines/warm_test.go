package lines

import (
	"errors"
	"math"
	"testing"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// warmRun is a keg at 20 °C, 50 ft of steel coil and a line.
func warmRun() Run {
	r := DefaultRun(
		Tube{Bore: 4.93e-3, Length: 50 * Foot, Wall: 0.71e-3, Coil: 0.2, Material: "stainless"},
		Tube{Bore: 3 * Inch / 16, Length: 4 * Foot, Material: "vinyl"})
	r.Temp = thermal.Celsius(20)
	return r
}

// warmServing is beer of 2.5 volumes at the pressure that holds it, through a
// coil packed with ice on a hot day.
func warmServing() Serving {
	s := DefaultServing(carbonation.Gauge{}, carbonation.Volumes(2.5))
	s.Around = thermal.Shade(thermal.Celsius(31))
	s.Chiller = thermal.DefaultCoil().Packed()
	return s
}

// About 30 psi hold 2.5 volumes at 20 °C (common practice, no source; within 2
// psi). 44 psi at 30 °C is the trade's chart continued by the same solubility
// of water (from memory; within 1 psi).
func TestWarmKegPressure(t *testing.T) {
	r, s := warmRun(), warmServing()
	w := must(r.Warm(s))(t)
	checktest.Near(t, "psi at 20 °C", w.Needed.PSI(), 30, 2)
	checktest.Near(t, "applied", w.Pour.Gauge.Pascals(), w.Needed.Pascals(), 1e-9)
	r.Temp = thermal.Celsius(30)
	hot := must(r.Warm(s))(t)
	checktest.Near(t, "psi at 30 °C", hot.Needed.PSI(), 44, 1)
}

func TestWarmSettlesFlowAndTemperatureTogether(t *testing.T) {
	r, s := warmRun(), warmServing()
	r.DipTube = Tube{Bore: 7e-3, Length: 0.5}
	w := must(r.Warm(s))(t)
	// The coil at that flow, from the thermal package alone.
	chill := must(s.coil(r.Tubes[0], r.Beer).Chill(r.Temp, thermal.Flow(w.Pour.Flow)))(t)
	checktest.Near(t, "after the coil, °C", w.Coil.Celsius(), chill.Outlet.Celsius(), 1e-6)
	if w.Outlet.Sub(w.Coil) <= 0 {
		t.Errorf("the line in warm air does not warm: %v to %v", w.Coil, w.Outlet)
	}
	// The losses at those temperatures use the pressure up.
	checktest.Near(t, "losses", float64(w.Pour.Loss+w.Pour.Static), w.Needed.Pascals(), 1e-4)
	// Cold beer in the coil resists more than the keg's: it pours slower.
	naive := must(r.Flow(w.Pour.Gauge))(t)
	if !(w.Pour.Flow < naive.Flow) || w.Pour.Flow < naive.Flow*0.8 {
		t.Errorf("coupled %v, at the keg's viscosity %v", w.Pour.Flow, naive.Flow)
	}
	// More pressure, more flow, warmer beer.
	s.Gauge = carbonation.PaG(float64(unit.Pressure(w.Needed.Pascals()) * 1.3))
	more := must(r.Warm(s))(t)
	if !(more.Pour.Flow > w.Pour.Flow) || more.Outlet.Sub(w.Outlet) <= 0 {
		t.Errorf("30 %% more pressure: %v %v, was %v %v", more.Pour.Flow, more.Outlet, w.Pour.Flow, w.Outlet)
	}
	if b := w.Band(); !(b.Low < float64(w.Pour.Flow) && float64(w.Pour.Flow) < b.High) {
		t.Errorf("flow outside %+v", b)
	}
	value := map[string]float64{}
	for _, step := range w.Steps() {
		value[step.Symbol] = step.Value
	}
	if value["T1"] != 20 || !(value["T2"] < 20 && value["T2"] > w.Coil.Celsius()) {
		t.Errorf("means %v", value)
	}
}

// The choker makes the coil's run pour the target.
func TestChoker(t *testing.T) {
	r, s := warmRun(), warmServing()
	r.Tubes[0] = Tube{Bore: 6.52e-3, Length: 75 * Foot, Wall: 0.71e-3, Coil: 0.2, Material: "stainless"}
	r.Tubes[1].Length = Foot
	s.Gauge = psi(50)
	w := must(r.Warm(s))(t)
	if w.Choker <= 0 {
		t.Fatalf("pours %v, no choker", w.Pour.Flow)
	}
	r.Tubes[1].Length += w.Choker
	checktest.Near(t, "with the choker, oz/s", must(r.Warm(s))(t).Pour.Flow.OuncesPerSecond(), 2, 0.01)

	s.Target = -1
	_, err := r.Warm(s)
	wantRange(t, "target", err, "flow")
}

func TestWarmErrors(t *testing.T) {
	r, s := warmRun(), warmServing()
	s.Content = carbonation.Content{}
	w, err := r.Warm(s)
	if err == nil || !math.IsNaN(float64(w.Choker)) || w.Outlet.IsValid() {
		t.Errorf("unknown content: %+v, %v", w, err)
	}
	s = warmServing()
	s.Crevice = -1
	_, err = r.Warm(s)
	wantRange(t, "crevice", err, "crevice radius")
	s = warmServing()
	s.Chiller.Film = 0
	_, err = r.Warm(s)
	wantRange(t, "film", err, "film coefficient")
	r.Rise = 30
	if _, err = r.Warm(warmServing()); !errors.Is(err, ErrNoSolution) {
		t.Errorf("rise: %v", err)
	}
	r.Calibration = 0
	_, err = r.Warm(warmServing())
	wantRange(t, "calibration", err, "calibration factor")
}

func BenchmarkWarm(b *testing.B) {
	r, s := warmRun(), warmServing()
	b.ReportAllocs()
	for b.Loop() {
		_, _ = r.Warm(s)
	}
}
