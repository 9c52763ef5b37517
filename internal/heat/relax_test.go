package heat

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// With one time constant the relaxation is the exponential; with one that
// changes linearly it solves its equation.
func TestRelaxation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tau := rapid.Float64Range(1, 1e5).Draw(t, "tau")
		s := rapid.Float64Range(0, 8).Draw(t, "s") * tau
		var r Relaxation
		for i := range r {
			r[i] = tau
		}
		if got, want := r.After(s), math.Exp(-s/tau); math.Abs(got-want) > 1e-9*want {
			t.Fatalf("after %v of %v: %v, want %v", s, tau, got, want)
		}
		if got := r.Until(math.Exp(-1)); math.Abs(got-tau) > 1e-9*tau {
			t.Fatalf("until 1/e: %v, want %v", got, tau)
		}
		for i := range r {
			r[i] = tau * rapid.Float64Range(0.3, 3).Draw(t, "node")
		}
		theta := rapid.Float64Range(0.051, 1).Draw(t, "theta")
		if got := r.After(r.Until(theta)); math.Abs(got-theta) > 1e-9 {
			t.Fatalf("there and back: %v, want %v", got, theta)
		}
	})
	// τ = 100 + 50 θ by the midpoint rule in ln θ from 1 to 0.1
	var r Relaxation
	for i, node := range Nodes {
		r[i] = 100 + 50*node
	}
	sum, n := 0.0, 20000
	for i := range n {
		theta := math.Exp(math.Log(0.1) * (float64(i) + 0.5) / float64(n))
		sum += (100 + 50*theta) * -math.Log(0.1) / float64(n)
	}
	checktest.Near(t, "until 0.1", r.Until(0.1), sum, 1e-5)
}
