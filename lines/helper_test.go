package lines

import (
	"errors"
	"math"
	"testing"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/unit"
)

func must[T any](v T, err error) func(*testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func psi(p float64) carbonation.Gauge { return carbonation.PSIG(p) }

// bare is a run of tubes alone, at 3 °C: no fittings, no hardware, no keg.
func bare(tubes ...Tube) Run {
	return Run{Tubes: tubes, Calibration: 1, Full: 1, Temp: thermal.Celsius(3)}
}

// threeTubes is a run as an ice box has it: dip tube, coil, choker.
func threeTubes() Run {
	r := DefaultRun(
		Tube{Bore: 0.00652, Length: 15, Coil: 0.2, Material: "stainless"},
		Tube{Bore: 3 * Inch / 16, Length: 1.2, Material: "vinyl"})
	r.DipTube = Tube{Bore: 7e-3, Length: 0.55, Material: "stainless"}
	r.Rise = 0.3
	return r
}

func wantRange(t *testing.T, what string, err error, name string) {
	t.Helper()
	var re *RangeError
	if !errors.As(err, &re) {
		t.Errorf("%s: error %v, want a RangeError", what, err)
	} else if re.Name != name {
		t.Errorf("%s: RangeError of %q, want %q", what, re.Name, name)
	}
}

// approx compares floating-point numbers of our types to a relative tolerance.
func approx(share float64) cmp.Option {
	near := func(a, b float64) bool {
		return a == b || math.Abs(a-b) <= share*math.Max(math.Abs(a), math.Abs(b))
	}
	return cmp.Options{
		cmp.Comparer(near),
		cmp.Comparer(func(a, b unit.Length) bool { return near(float64(a), float64(b)) }),
		cmp.Comparer(func(a, b unit.Pressure) bool { return near(float64(a), float64(b)) }),
		cmp.Comparer(func(a, b Flow) bool { return near(float64(a), float64(b)) }),
	}
}
