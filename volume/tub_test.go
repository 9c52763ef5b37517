package volume

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// A closed form: a can of 10 L, 0.5 m high and weightless, in a tub with a
// floor of 0.1 m² leaves 0.08 m² around it.
func TestTubClosedForm(t *testing.T) {
	tub := Tub{80 * Litre, 0.8}
	can := Vessel{Capacity: 10 * Litre, Height: 0.5, Diameter: 0.15}
	for _, c := range []struct{ depth, litres float64 }{{0, 0}, {0.25, 20}, {0.5, 40}, {0.8, 70}} {
		v, err := tub.Holds(unit.Length(c.depth), can, 1)
		if err != nil || math.Abs(float64(v/Litre)-c.litres) > 1e-9 {
			t.Errorf("Holds(%g m) = %g L, %v; want %g", c.depth, v/Litre, err, c.litres)
		}
		d, err := tub.Depth(unit.Volume(c.litres)*Litre, can, 1)
		if err != nil || math.Abs(float64(d)-c.depth) > 1e-12 {
			t.Errorf("Depth(%g L) = %g m, %v; want %g", c.litres, float64(d), err, c.depth)
		}
	}
	// Archimedes: half covered it carries 5 L of water, 4.999 kg.
	if got, want := can.FloatsBelow(0.25), 5*0.9998/(10*1.008); math.Abs(got-want) > 1e-12 {
		t.Errorf("FloatsBelow = %g, want %g", got, want)
	}
}

func TestTubRefuses(t *testing.T) {
	tub := Tub{80 * Litre, 0.35}
	keg := Vessel{Capacity: 19 * Litre, Height: 0.6, Diameter: 0.23, Tare: 6}
	if d, err := tub.Depth(79*Litre, keg, 1); !errors.Is(err, ErrNoSolution) || !math.IsNaN(float64(d)) {
		t.Errorf("overfull tub: %v, %v", d, err)
	}
	if d, err := tub.Depth(1*Litre, keg, 6); !errors.Is(err, ErrNoSolution) || !math.IsNaN(float64(d)) {
		t.Errorf("six kegs on the floor: %v, %v", d, err)
	}
	var r *RangeError
	nan := unit.Volume(math.NaN())
	if _, err := tub.Depth(nan, keg, 1); !errors.As(err, &r) {
		t.Errorf("NaN bath: %v", err)
	}
	if _, err := (Tub{nan, 1}).Depth(0, keg, 1); !errors.As(err, &r) {
		t.Errorf("NaN tub: %v", err)
	}
	if _, err := tub.Holds(0.36, keg, 1); !errors.As(err, &r) {
		t.Errorf("above the brim: %v", err)
	}
	if _, err := tub.Depth(1*Litre, Vessel{}, 1); !errors.As(err, &r) {
		t.Errorf("keg without size: %v", err)
	}
	if _, err := tub.Depth(1*Litre, keg, -1); !errors.As(err, &r) {
		t.Errorf("negative kegs: %v", err)
	}
}

func TestTubDepthInvertsHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tub := Tub{unit.Volume(rapid.Float64Range(0.02, 1).Draw(t, "tub")), unit.Length(rapid.Float64Range(0.1, 1).Draw(t, "height"))}
		keg := Vessel{
			Capacity: unit.Volume(rapid.Float64Range(0.005, 0.06).Draw(t, "keg")),
			Height:   unit.Length(rapid.Float64Range(0.2, 0.7).Draw(t, "keg height")),
			Diameter: unit.Length(rapid.Float64Range(0.1, 0.4).Draw(t, "keg diameter")),
			Tare:     unit.Mass(rapid.Float64Range(0, 15).Draw(t, "tare")),
		}
		kegs := rapid.IntRange(0, 6).Draw(t, "kegs")
		depth := unit.Length(rapid.Float64Range(0, 1).Draw(t, "share")) * tub.Height
		v, err := tub.Holds(depth, keg, kegs)
		if errors.Is(err, ErrNoSolution) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		d, err := tub.Depth(v, keg, kegs)
		if err != nil || math.Abs(float64(d-depth)) > 1e-9 {
			t.Fatalf("Depth(Holds(%g)) = %g, %v", float64(depth), float64(d), err)
		}
		deeper := keg.FloatsBelow(depth + 0.01)
		if f := keg.FloatsBelow(depth); f < 0 || f > 1 || deeper < f {
			t.Fatalf("FloatsBelow(%g) = %g, %g a centimetre deeper", float64(depth), f, deeper)
		}
	})
}
