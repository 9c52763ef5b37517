package lines

import (
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"github.com/google/go-cmp/cmp"
)

// A result does not change when the caller uses a list of the parameters again.
func TestResultsOwnTheirLists(t *testing.T) {
	tubes := []Tube{{Bore: 3 * Inch / 16, Length: 5 * Foot, Material: "vinyl", Wall: Inch / 8}}
	run := DefaultRun(tubes...)
	tubes[0].Bore = Inch
	if run.Tubes[0].Bore == Inch {
		t.Error("a run changes with the list that it was made from")
	}
	g, glass := carbonation.PSIG(12), 16*volume.USFluidOunce
	s := DefaultServing(g, carbonation.Volumes(2.57))
	s.Around = thermal.Shade(thermal.Celsius(30))
	var results []interface {
		Steps() []Step
		Band() Band
	}
	add := func(r interface {
		Steps() []Step
		Band() Band
	}, err error,
	) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, r)
	}
	flow, err := run.Flow(g)
	add(flow, err)
	gauge, err := run.Gauge(2 * OuncePerSecond)
	add(gauge, err)
	length, err := run.Length(0, 2*OuncePerSecond, g)
	add(length, err)
	profile, err := run.Profile(s, 10)
	add(profile, err)
	standing, err := run.Stand(s)
	add(standing, err)
	calibration, err := run.Calibrate(g, glass, 9*time.Second)
	add(calibration, err)
	clean, err := run.Clean()
	add(clean, err)
	trade, err := run.TradeGauge()
	add(trade, err)
	diagnosis, err := Observation{Run: run, Serving: s, Since: time.Hour, CarbonatedFor: time.Hour}.Diagnose()
	add(diagnosis, err)
	told := func() (all []any) {
		for _, r := range results {
			all = append(all, r.Steps(), r.Band())
		}
		return all
	}
	before := told()
	run.Tubes[0], run.Fittings[0].K = Tube{Bore: Inch, Length: 90 * Foot}, 50
	if diff := cmp.Diff(before, told()); diff != "" {
		t.Errorf("an answer changes with the caller's list:\n%s", diff)
	}
}
