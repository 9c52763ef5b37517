package thermal

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

func TestCoilLargestFlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := DefaultCoil().in(Celsius(0.5), FilmCoefficient(rapid.Float64Range(200, 4000).Draw(t, "film")), 0.3)
		c.Length = unit.Length(rapid.Float64Range(5, 40).Draw(t, "length"))
		inlet := Celsius(rapid.Float64Range(10, 30).Draw(t, "inlet"))
		target := Celsius(rapid.Float64Range(2, 8).Draw(t, "target"))
		limit, err := c.LargestFlow(inlet, target)
		flow := limit.Flow
		if errors.Is(err, ErrNoSolution) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		at, err := c.Chill(inlet, flow)
		if err != nil {
			t.Fatal(err)
		}
		if d := at.Outlet.Sub(target); math.Abs(float64(d)) > 1e-6 {
			t.Fatalf("at the largest flow the outlet misses the target by %v K", d)
		}
		if d := limit.Chill.Outlet.Sub(at.Outlet); d != 0 {
			t.Fatalf("the chill that comes with it differs by %v K", d)
		}
		if b := limit.Band(); !(b.Low < float64(flow) && float64(flow) < b.High) {
			t.Fatalf("flow %v outside its band %v", flow, b)
		}
		if more, err := c.Chill(inlet, flow*1.05); err == nil && more.Outlet.Sub(target) < 0 {
			t.Fatalf("5 %% more flow still meets the target: %v", more.Outlet)
		}
	})
}

// A coil that meets every target, and one that meets none.
func TestCoilLimitEnds(t *testing.T) {
	long := DefaultCoil().Pumped()
	long.Length, long.Bore, long.Winding = 200, 4e-3, 0.1
	if l, err := long.LargestFlow(Celsius(5.5), Celsius(5)); !errors.Is(err, ErrNoSolution) || !math.IsNaN(float64(l.Flow)) {
		t.Errorf("200 m for half a kelvin: %v, %v", l.Flow, err)
	}
	short := DefaultCoil().in(Celsius(4.9), 25, 0)
	short.Length = 0.1
	if l, err := short.LargestFlow(Celsius(40), Celsius(5)); !errors.Is(err, ErrNoSolution) || !math.IsNaN(float64(l.Flow)) {
		t.Errorf("10 cm for 35 K: %v, %v", l.Flow, err)
	}
}

func BenchmarkCoilLargestFlow(b *testing.B) {
	c := DefaultCoil().Packed()
	for b.Loop() {
		c.LargestFlow(Celsius(20), Celsius(5))
	}
}
