package volume

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// A closed form: one weightless can of 10 L, 0.5 m high, in a tub with a floor
// of 0.1 m² and a height of 0.5 m. The ice stands to 0.475 m, so the space is
// 47.5 L less 9.5 L.
func TestFitClosedForm(t *testing.T) {
	can := Vessel{Capacity: 10 * Litre, Height: 0.5, Diameter: 0.17}
	f, err := Tub{50 * Litre, 0.5}.Fit(can, 1, 0.6)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string][2]float64{
		"ice":     {float64(f.Ice), 0.6 * 0.9167 * 38},
		"water":   {float64(f.Water / Litre), 0.4 * 916.7 / 999.8 * 38},
		"level":   {float64(f.Level), 0.475 * 916.7 / 999.8},
		"covered": {f.Covered, 0.95 * 916.7 / 999.8},
		"floats":  {f.Floats, 0.95 * 916.7 / 1008},
		"lift":    {float64(f.Lift), 10.08},
	} {
		if math.Abs(c[0]/c[1]-1) > 1e-12 {
			t.Errorf("%s = %g, want %g", name, c[0], c[1])
		}
	}
	if f.TwoLift {
		t.Error("a can of 10 kg is not for two")
	}
}

// The bath stands at the level given, whether the ice floats or has melted, and
// the keg floats there below the share of fill given.
func TestFitLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tub := Tub{unit.Volume(rapid.Float64Range(0.06, 1).Draw(t, "tub")), unit.Length(rapid.Float64Range(0.2, 0.8).Draw(t, "height"))}
		keg := VesselOf(unit.Volume(rapid.Float64Range(5, 60).Draw(t, "keg")) * Litre)
		kegs := rapid.IntRange(1, 4).Draw(t, "kegs")
		f, err := tub.Fit(keg, kegs, rapid.Float64Range(0.3, 0.9).Draw(t, "packing"))
		if errors.Is(err, ErrNoSolution) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		bath := f.Water + unit.Volume(f.Ice/waterDensity)
		depth, err := tub.Depth(bath, keg, kegs)
		if err != nil || math.Abs(float64(depth-f.Level)) > 1e-9 {
			t.Fatalf("the bath stands at %g m, want %g; %v", float64(depth), float64(f.Level), err)
		}
		// Archimedes: at that fill the keg weighs as much as the water it displaces.
		if f.Floats > 0 && f.Floats < 1 {
			weight := float64(keg.Tare) + f.Floats*beerDensity*float64(keg.Capacity)
			if push := waterDensity * float64(keg.Displaced(f.Level)); math.Abs(weight/push-1) > 1e-12 {
				t.Fatalf("weight %g kg, push %g kg", weight, push)
			}
		}
	})
}

func TestFitLifts(t *testing.T) {
	for name, two := range map[string]bool{"us-half": true, "us-sixth": true, "soda-5gal": true, "soda-2.5gal": false, "mini-5l": false} {
		keg, _ := VesselNamed(name)
		f, err := Tub{300 * Litre, 0.5}.Fit(keg, 1, 0.6)
		if err != nil || f.TwoLift != two {
			t.Errorf("%s: %.1f kg, two people %v, %v", name, float64(f.Lift), f.TwoLift, err)
		}
	}
}

// Two circles side by side in a round tub cover exactly half of it.
func TestFitTight(t *testing.T) {
	keg := VesselOf(USBarrel / 6)
	round := func(diameter unit.Length) Tub {
		return Tub{unit.Volume(math.Pi / 4 * float64(diameter*diameter) * 0.5), 0.5}
	}
	for _, c := range []struct {
		across unit.Length
		tight  bool
	}{{1.99 * keg.Diameter, true}, {2.01 * keg.Diameter, false}} {
		if f, err := round(c.across).Fit(keg, 2, 0.6); err != nil || f.Tight != c.tight {
			t.Errorf("two kegs in %g m: tight %v, covered %g, %v", float64(c.across), f.Tight, f.Feet, err)
		}
	}
	if f, err := round(1.1*keg.Diameter).Fit(keg, 1, 0.6); err != nil || !f.Tight {
		t.Errorf("one keg in a pail: %+v, %v", f, err)
	}
}

func TestFitRefuses(t *testing.T) {
	keg := VesselOf(19 * Litre)
	f, err := Tub{80 * Litre, 0.4}.Fit(keg, 9, 0.6)
	if !errors.Is(err, ErrNoSolution) || !math.IsNaN(float64(f.Ice)) || !math.IsNaN(f.Floats) {
		t.Errorf("nine kegs: %v, %v", f.Ice, err)
	}
	var r *RangeError
	if _, err := (Tub{80 * Litre, 0.4}).Fit(keg, 1, 1); !errors.As(err, &r) {
		t.Errorf("solid ice: %v", err)
	}
	if _, err := (Tub{80 * Litre, 0.4}).Fit(Vessel{}, 1, 0.6); !errors.As(err, &r) {
		t.Errorf("no keg: %v", err)
	}
}

// A soda keg in an 80 L tub.
func ExampleTub_Fit() {
	keg, _ := VesselNamed("ball lock")
	f, err := Tub{Capacity: 80 * Litre, Height: 45 * 10 * Millimetre}.Fit(keg, 1, 0.6)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3g kg of ice and %.3g L of water\n", float64(f.Ice), float64(f.Water/Litre))
	fmt.Printf("it floats when less than %.2g full\n", f.Floats)
	// Output:
	// 34.6 kg of ice and 23.1 L of water
	// it floats when less than 0.39 full
}
