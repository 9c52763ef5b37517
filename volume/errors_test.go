package volume

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/unit"
)

// NaN, infinities and values beyond either bound fail; the bounds are inside,
// and so are those that have been through another unit: 20 volumes are
// 20.000000000000004 when they come back from grams in a litre.
func TestRangeCheck(t *testing.T) {
	r := Range{"share", 0, 1, "", "a share", ""}
	for _, v := range []float64{0, 0.5, 1, 1 + 2e-13} {
		if err := r.Check("test", v); err != nil {
			t.Error(err)
		}
	}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -5e-324, 1 + 2e-12} {
		var e *RangeError
		if err := r.Check("test", v); !errors.As(err, &e) || e.Func != "test" || e.Name != "share" || e.Min != 0 || e.Max != 1 {
			t.Errorf("%g: %v", v, err)
		}
	}
}

func ExampleRangeError() {
	_, err := DefaultCrowd(1e9, 5*time.Hour).Demand(Yield{})
	var e *RangeError
	if errors.As(err, &e) {
		fmt.Println(e)
		fmt.Println(e.Name, "up to", e.Max)
	}
	// Output:
	// volume.Crowd.Demand: guests 1e+09 is outside 1 to 1e+06 (beyond it, plan site by site)
	// guests up to 1e+06
}

// Lists are copies: changing one changes no table.
func TestListsAreCopies(t *testing.T) {
	Vessels()[0].Name = "changed"
	Glasses()[0].Name = "changed"
	if Vessels()[0].Name != "uk-barrel" || Glasses()[0].Name != "us-pint" {
		t.Error("a table was changed through its list")
	}
	if len(Vessels()) != len(vessels) || len(Glasses()) != len(glasses) {
		t.Error("a list is short")
	}
}

// A value that is written like the bound it breaks is said to lie a little
// beyond it, in either system of units.
func TestAlmostABound(t *testing.T) {
	r := Range{"content", 0, 20, "volumes", "a reason", ""}
	for _, c := range []struct {
		value     float64
		why, text string
	}{
		{20.0001, "content a little above 20.00 volumes is outside 0.00 to 20.00 volumes", "test: content 20.0001 volumes is outside 0 to 20 volumes (a reason)"},
		{20.00001, "content a little above 20.00 volumes is outside 0.00 to 20.00 volumes", "test: content 20.00001 volumes is outside 0 to 20 volumes (a reason)"},
		{21, "content 21.00 volumes is outside 0.00 to 20.00 volumes", "test: content 21 volumes is outside 0 to 20 volumes (a reason)"},
	} {
		var e *RangeError
		if err := r.Check("test", c.value); !errors.As(err, &e) {
			t.Errorf("%v passes", c.value)
		} else if e.Why().String() != c.why || e.Error() != c.text {
			t.Errorf("%v: %q, %q", c.value, e.Why(), e.Error())
		}
	}
	r = Range{"wind", 2, 20, "m_per_s", "a gale", ""}
	var e *RangeError
	if errors.As(r.Check("test", 1.9999), &e); e.Why().Metric() != "wind a little below 2.0 m/s is outside 2.0 to 20.0 m/s" {
		t.Errorf("%q", e.Why().Metric())
	}
}

// The errors that carry numbers give them under a key, so that a program need
// not read the sentence.
func TestErrorsCarryNumbers(t *testing.T) {
	tub := Tub{Capacity: 80 * Litre, Height: 0.45}
	keg := VesselOf(30 * Litre)
	_, err := tub.Depth(79*Litre, keg, 1)
	var none *NoSolutionError
	if !errors.As(err, &none) || !errors.Is(err, ErrNoSolution) || none.Key != "bath_l" || none.Given != 79 || !(none.Needed < 79) {
		t.Errorf("%v: %+v", err, none)
	}
	if room := none.Needed; room > 0 {
		if _, err := tub.Depth(unit.Volume(room)*Litre, keg, 1); err != nil {
			t.Errorf("what is needed is refused: %v", err)
		}
	}
}

// A refusal names the field of the function's own structure, or its parameter,
// and says of a value that was never set that it is missing.
func TestRangeErrorField(t *testing.T) {
	for _, c := range []struct{ fn, fields, want string }{
		{"volume.Tub.Depth", "Tub.Height Vessel.Height", "Tub.Height"}, {"volume.Tub.Depth", "Tub.Depth.bath Tub.Height", "Tub.Depth.bath"},
		{"volume.AirAt", "AirAt.elevation Pressure.StationAt.elevation", "AirAt.elevation"}, {"volume.Bar.Queue", "Crowd.Guests Demand.Guests", ""},
		{"volume.Bar.Queue", "Crowd.Guests", "Crowd.Guests"}, {"thermal.Keg.Reach", "Keg.After.d Keg.Fill", "Keg.Fill"}, {"f", "", ""},
	} {
		if got := fieldOf(c.fn, c.fields); got != c.want {
			t.Errorf("%s of %q: %q, want %q", c.fn, c.fields, got, c.want)
		}
	}
	tub := Tub{Capacity: unit.Volume(math.NaN()), Height: 0.45}
	_, err := tub.Depth(10*Litre, VesselOf(30*Litre), 1)
	var e *RangeError
	if !errors.As(err, &e) || e.Field != "Tub.Capacity" || !strings.Contains(err.Error(), "capacity of the tub is missing; it lies within 1 to 10000 L") {
		t.Errorf("%v: %+v", err, e)
	}
}
