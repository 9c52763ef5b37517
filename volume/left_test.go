package volume

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// A full keg gives the pours of a full keg, and the beer left is the beer that
// was weighed.
func TestLeftInverts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPour(t)
		p.FirstGlass = 0
		gravity := rapid.Float64Range(0.98, 1.2).Draw(t, "gravity")
		fill := rapid.Float64Range(0, 1).Draw(t, "fill")
		mass := unit.Mass(fill * gravity * 998.2012300 * float64(p.Keg.Capacity))
		r, err := p.Left(p.Keg.Tare+mass, gravity)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(r.Share-fill) > 1e-9 || math.Abs(float64(r.Volume/p.Keg.Capacity)-fill) > 1e-9 {
			t.Fatalf("fill %g, found %g", fill, r.Share)
		}
		if b := r.Band(); !(b.Low <= float64(r.Volume/Litre)+1e-9 && float64(r.Volume/Litre) <= b.High+1e-9) {
			t.Fatalf("%g L outside the band %+v", float64(r.Volume/Litre), b)
		}
		y, err := p.PerKeg()
		if err != nil {
			t.Fatal(err)
		}
		if full, err := p.Left(p.Keg.Tare+unit.Mass(gravity*998.2012300*float64(p.Keg.Capacity)), gravity); err != nil || full.Count != y.Pours {
			t.Fatalf("full: %d pours, %d, %v", full.Count, y.Pours, err)
		}
	})
}

// Common practice, no source: a full half barrel weighs 160.5 lb on the scale,
// a sixth 58 lb. At a gravity of 1.010 both are full within 1 %.
func TestLeftPrintedWeights(t *testing.T) {
	for _, row := range checktest.Table(t, "vessels.csv") {
		if row.Text("full_lb") == "" || row.Text("tare_lb") == "" || row.Text("vessel") == "soda-5gal" {
			continue
		}
		keg, _ := VesselNamed(row.Text("vessel"))
		r, err := keg.Into(GlassOf(USPint)).Left(unit.Mass(row.Number("full_lb"))*Pound, 1.010)
		if err != nil || r.Share < 0.99 {
			t.Errorf("%s: %.3f full, %v", keg.Name, r.Share, err)
		}
	}
}

// A 10 kg cylinder with a stamped tare of 18.5 kg.
func TestCylinderLeft(t *testing.T) {
	c := Cylinder{Charge: 10, Tare: 18.5, Weighed: Published}
	r, err := c.Left(22, 0.2)
	if err != nil || r.Mass != 3.5 || r.Share != 0.35 || r.Count != 17 || r.Volume != 0 {
		t.Errorf("%+v, %v", r, err)
	}
	if b := r.Band(); b.Low >= 3.5 || b.High <= 3.5 || b.Suffix != "kg" {
		t.Errorf("band %+v", b)
	}
	if r, err := c.Left(28.4, 0); err != nil || r.Count != 0 || math.Abs(r.Share-0.99) > 1e-12 {
		t.Errorf("no kegs asked for: %+v, %v", r, err)
	}
	var out *RangeError
	if r, err := c.Left(16, 0.2); !errors.As(err, &out) || !math.IsNaN(float64(r.Mass)) {
		t.Errorf("lighter than its tare: %v, %v", r.Mass, err)
	}
	if _, err := c.Left(30, 0.2); !errors.As(err, &out) {
		t.Errorf("overfilled: %v", err)
	}
	if _, err := (Cylinder{}).Left(10, 0.2); !errors.As(err, &out) {
		t.Errorf("no cylinder: %v", err)
	}
}

// Common practice, no source: 9 lb full at 2.5 lb of charge, 17.5 lb at 5 lb.
func TestCylinderUsualTare(t *testing.T) {
	for charge, full := range map[unit.Mass]float64{2.5: 9, 5: 17.5} {
		c := Cylinder{Charge: charge * Pound}.UsualTare()
		if got := float64((c.Charge + c.Tare) / Pound); math.Abs(got-full) > 1e-9 || c.Weighed != Practice {
			t.Errorf("%g lb: full %g lb, want %g (%s)", float64(charge), got, full, c.Weighed)
		}
	}
	if c := (Cylinder{Charge: 6}).UsualTare(); c.Tare != 9 || c.Weighed != Estimate {
		t.Errorf("6 kg: %+v", c)
	}
}

func TestLeftRefuses(t *testing.T) {
	p := VesselOf(19 * Litre).Into(GlassOf(USPint))
	var r *RangeError
	for _, w := range []unit.Mass{0, 100, unit.Mass(math.NaN())} {
		if got, err := p.Left(w, 1.01); !errors.As(err, &r) || !math.IsNaN(float64(got.Volume)) {
			t.Errorf("%g kg: %v, %v", float64(w), got.Volume, err)
		}
	}
	if _, err := p.Left(12, 5); !errors.As(err, &r) || r.Name != "final gravity" {
		t.Errorf("gravity 5: %v", err)
	}
}

func ExamplePour_Left() {
	keg, _ := VesselNamed("sixth barrel")
	r, err := keg.Into(GlassOf(USPint)).Left(30*Pound, 1.010)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3g gal, %d pints\n", float64(r.Volume/USGallon), r.Count)
	// Output: 1.84 gal, 18 pints
}
