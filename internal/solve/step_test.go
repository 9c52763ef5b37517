package solve

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// run advances y to end and returns the steps taken.
func run(s *Integrator, y []float64, end float64) (steps int) {
	for t := 0.0; t < end; steps++ {
		t = s.Step(t, end, y)
	}
	return steps
}

// A warming body and an oscillator, in closed form.
func TestStepClosedForms(t *testing.T) {
	s := NewIntegrator(func(_ float64, y, d []float64) {
		d[0] = -0.3 * (y[0] - 30)
		d[1], d[2] = y[2], -y[1]
	}, []float64{1e-9, 1e-9, 1e-9}, 1)
	y := []float64{3, 0, 1}
	run(s, y, 7)
	for i, want := range []float64{30 - 27*math.Exp(-0.3*7), math.Sin(7), math.Cos(7)} {
		if !(math.Abs(y[i]-want) <= 1e-7) {
			t.Errorf("component %d = %.12g, want %.12g", i, y[i], want)
		}
	}
}

// The order shows: without error control, half the step leaves about 1/32 of
// the error.
func TestStepOrder(t *testing.T) {
	miss := func(step float64) float64 {
		s := NewIntegrator(func(t float64, y, d []float64) { d[0] = y[0] * math.Cos(t) }, []float64{math.Inf(1)}, step)
		s.next = step
		y := []float64{1}
		run(s, y, 4)
		return math.Abs(y[0] - math.Exp(math.Sin(4)))
	}
	if ratio := miss(0.25) / miss(0.125); !(20 < ratio && ratio < 60) {
		t.Errorf("half the step divides the error by %.1f, want about 32", ratio)
	}
}

// Robertson-like stiffness is met with more steps, not with a wrong answer.
func TestStepStiff(t *testing.T) {
	s := NewIntegrator(func(tm float64, y, d []float64) { d[0] = -1000 * (y[0] - math.Cos(tm)) }, []float64{1e-6}, 1)
	y := []float64{0}
	run(s, y, 2)
	// y follows (1000² cos t + 1000 sin t)/(1000² + 1) once the start has died.
	want := (1e6*math.Cos(2) + 1e3*math.Sin(2)) / (1e6 + 1)
	if !(math.Abs(y[0]-want) <= 1e-5) {
		t.Errorf("%v, want %v", y[0], want)
	}
}

// A sum whose derivatives cancel is kept to rounding, whatever the tolerance.
func TestStepConserves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.01, 20).Draw(t, "k")
		a, b := rapid.Float64Range(-100, 100).Draw(t, "a"), rapid.Float64Range(-100, 100).Draw(t, "b")
		s := NewIntegrator(func(_ float64, y, d []float64) {
			q := k * (y[0] - y[1]) * (1 + 0.5*math.Sin(y[0]))
			d[0], d[1] = -q, q
		}, []float64{1, 1}, 0.5)
		y := []float64{a, b}
		run(s, y, 3)
		if d := math.Abs(y[0] + y[1] - a - b); !(d <= 1e-12*(math.Abs(y[0])+math.Abs(y[1])+200)) {
			t.Fatalf("the sum is off by %g", d)
		}
	})
}

func TestStepInterpolatesAndUndoes(t *testing.T) {
	s := NewIntegrator(func(tm float64, _, d []float64) { d[0] = 3 * tm * tm }, []float64{1e-9}, 0.4)
	y := []float64{0}
	t1 := s.Step(0, 2, y)
	t2 := s.Step(t1, 2, y)
	for _, x := range []float64{t1, (t1 + t2) / 2, t2} { // a cubic is interpolated exactly
		if got := s.At(x, 0); !(math.Abs(got-x*x*x) <= 1e-12) {
			t.Errorf("At(%g) = %g, want %g", x, got, x*x*x)
		}
	}
	if s.Start() != t1 {
		t.Errorf("Start = %g, want %g", s.Start(), t1)
	}
	if back := s.Undo(y); back != t1 || !(math.Abs(y[0]-t1*t1*t1) <= 1e-12) {
		t.Errorf("Undo gave %g at %g", y[0], back)
	}
	y[0] = 5 // changed from outside
	s.Restart()
	end := s.Step(t1, t1+0.1, y)
	if want := 5 + end*end*end - t1*t1*t1; !(math.Abs(y[0]-want) <= 1e-9) {
		t.Errorf("after Restart %g, want %g", y[0], want)
	}
}

// A derivative that is not finite ends in NaN and does not loop for ever.
func TestStepNaN(t *testing.T) {
	s := NewIntegrator(func(tm float64, y, d []float64) { d[0], d[1] = math.Sqrt(1-tm), 1 }, []float64{1e-9, 1e-9}, 1)
	y := []float64{0, 0}
	steps := run(s, y, 2)
	if !math.IsNaN(y[0]) || steps > 1000 {
		t.Errorf("%v after %d steps, want NaN", y, steps)
	}
}

func TestStepDoesNotAllocate(t *testing.T) {
	s := NewIntegrator(func(_ float64, y, d []float64) { d[0] = -y[0] }, []float64{1e-6}, 1)
	y := []float64{1}
	now := 0.0
	if n := testing.AllocsPerRun(100, func() { now = s.Step(now, 1e9, y) }); n != 0 {
		t.Errorf("%v allocations a step", n)
	}
}

func BenchmarkStep(b *testing.B) {
	s := NewIntegrator(func(_ float64, y, d []float64) { d[0], d[1] = -y[0], y[0] }, []float64{1e-6, 1e-6}, 1)
	y := []float64{1, 0}
	now := 0.0
	for b.Loop() {
		now = s.Step(now, math.MaxFloat64, y)
	}
}
