package solve

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Roots known in closed form.
func TestRoot(t *testing.T) {
	for _, c := range []struct {
		name string
		f    func(float64) float64
		a, b float64
		want float64
	}{
		{"square root of two", func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2},
		{"cosine", math.Cos, 1, 2, math.Pi / 2},
		{"steep", func(x float64) float64 { return math.Exp(50*x) - 1 }, -1, 0.7, 0},
		{"flat cube", func(x float64) float64 { return (x - 0.3) * (x - 0.3) * (x - 0.3) }, -1, 2, 0.3},
		{"at the left end", func(x float64) float64 { return x }, 0, 1, 0},
		{"at the right end", func(x float64) float64 { return x - 1 }, 0, 1, 1},
		{"falling", func(x float64) float64 { return 1 - x*x*x }, 0, 3, 1},
		{"jump", func(x float64) float64 { return math.Copysign(1, x-0.25) }, 0, 1, 0.25},
	} {
		x, ok := Root(c.f, c.a, c.b, 1e-12)
		if !ok || !(math.Abs(x-c.want) <= 1e-9) {
			t.Errorf("%s: %v, %v; want %v", c.name, x, ok, c.want)
		}
	}
}

func TestRootRefuses(t *testing.T) {
	for name, f := range map[string]func(float64) float64{
		"no change of sign": func(x float64) float64 { return x*x + 1 },
		"NaN":               func(float64) float64 { return math.NaN() },
		"NaN inside": func(x float64) float64 {
			if x > 0.1 && x < 0.9 {
				return math.NaN()
			}
			return x - 0.5
		},
	} {
		if x, ok := Root(f, 0, 1, 1e-9); ok || !math.IsNaN(x) {
			t.Errorf("%s: %v, %v; want NaN, false", name, x, ok)
		}
	}
}

// The root of any cubic with one real root in the bracket is found to the
// tolerance, and the bracket's order does not matter.
func TestRootFinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(-5, 5).Draw(t, "root")
		c := rapid.Float64Range(0.1, 10).Draw(t, "curvature")
		f := func(x float64) float64 { return (x - r) * ((x-r)*(x-r) + c) }
		for _, ends := range [][2]float64{{-10, 10}, {10, -10}} {
			x, ok := Root(f, ends[0], ends[1], 1e-10)
			if !ok || !(math.Abs(x-r) <= 1e-10) {
				t.Fatalf("root %v of %v: %v, %v", r, c, x, ok)
			}
		}
	})
}

func BenchmarkRoot(b *testing.B) {
	for b.Loop() {
		Root(math.Cos, 1, 2, 1e-12)
	}
}
