package volume

import (
	"math"
	"math/big"
	"testing"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// With r = 1 the count is geometric: P(X > k) = q^(k+1). Closed form.
func TestCountGeometric(t *testing.T) {
	for _, mean := range []float64{0.1, 1, 7, 300, 1e6} {
		c := count{mean, 1}
		for _, k := range []float64{0, 1, 5, 50, 1000} {
			want := math.Exp((k + 1) * math.Log(mean/(1+mean)))
			if got := c.more(k); math.Abs(got-want) > 1e-12*want {
				t.Errorf("mean %g: P(X > %g) = %.15g, want %.15g", mean, k, got, want)
			}
		}
	}
}

// Sums of the definition in exact arithmetic: r = 5/2, p = 1/3, so the mean is
// 5; P(k+1)/P(k) = (k + r) q/(k+1).
func TestCountByDefinition(t *testing.T) {
	const prec = 200
	q := new(big.Float).SetPrec(prec).Quo(big.NewFloat(2), new(big.Float).SetPrec(prec).SetInt64(3))
	p0, _ := new(big.Float).SetString("0.06415002990995841827800165586529294671") // (1/3)^2.5 = √3/27
	p := new(big.Float).SetPrec(prec).Copy(p0)
	sum := new(big.Float).SetPrec(prec)
	c := count{5, 0.4}
	for k := 0; k < 60; k++ {
		sum.Add(sum, p)
		want, _ := sum.Float64()
		if got := c.atMost(float64(k)); math.Abs(got-want) > 1e-13 {
			t.Errorf("P(X ≤ %d) = %.16g, want %.16g", k, got, want)
		}
		f := new(big.Float).SetPrec(prec).SetFloat64((float64(k) + 2.5) / 1)
		f.Mul(f, q).Quo(f, big.NewFloat(float64(k+1)))
		p.Mul(p, f)
	}
}

// As the excess vanishes the count becomes Poisson; distuv is the reference. An
// excess that adds 1e-11 to the variance moves no chance by more than 1e-11; the
// tolerance of 1e-10 is ten times that.
func TestCountPoissonLimit(t *testing.T) {
	for _, mean := range []float64{0.3, 4, 60, 1250, 1e5} {
		poisson := distuv.Poisson{Lambda: mean}
		for _, z := range []float64{-3, -1, 0, 1, 2, 5} {
			k := math.Max(0, math.Floor(mean+z*math.Sqrt(mean)))
			want := poisson.CDF(k)
			if got := (count{mean, 0}).atMost(k); math.Abs(got-want) > 1e-11 {
				t.Errorf("Poisson %g: P(X ≤ %g) = %.15g, want %.15g", mean, k, got, want)
			}
			excess := 1e-11 / mean
			if got := (count{mean, excess}).atMost(k); math.Abs(got-want) > 1e-10 {
				t.Errorf("excess %g, mean %g: P(X ≤ %g) = %.15g, Poisson %.15g", excess, mean, k, got, want)
			}
		}
	}
}

// At large means the Poisson count is normal with a term for its skewness, by
// Edgeworth's expansion, whose next term is of the order of 1/mean. gonum's
// incomplete gamma function is 1.7e-7 off here.
func TestCountLargePoisson(t *testing.T) {
	const mean = 4e8
	for _, z := range []float64{-5, -1, 0, 1, 2, 5} {
		k := math.Floor(mean + z*math.Sqrt(mean))
		x := (k + 0.5 - mean) / math.Sqrt(mean)
		want := distuv.UnitNormal.CDF(x) - distuv.UnitNormal.Prob(x)*(x*x-1)/(6*math.Sqrt(mean))
		if got := (count{mean, 0}).atMost(k); math.Abs(got-want) > 1/mean {
			t.Errorf("P(X ≤ %g) = %.12g, want %.12g", k, got, want)
		}
	}
}

// Against gonum's incomplete beta function where its fraction converges.
func TestIncompleteBetaReference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := math.Exp(rapid.Float64Range(-2, 7).Draw(t, "ln a"))
		b := math.Exp(rapid.Float64Range(-2, 7).Draw(t, "ln b"))
		x := rapid.Float64Range(0.001, 0.999).Draw(t, "x")
		got, want := incompleteBeta(a, b, x, 1-x), mathext.RegIncBeta(a, b, x)
		if math.Abs(got-want) > 1e-11 {
			t.Fatalf("I_%g(%g, %g) = %.15g, gonum %.15g", x, a, b, got, want)
		}
	})
}

// Symmetry at the centre, I_½(a, a) = ½, holds at any size.
func TestIncompleteBetaLarge(t *testing.T) {
	for _, a := range []float64{0.5, 3, 1e3, 1e6, 1e8} {
		if got := incompleteBeta(a, a, 0.5, 0.5); math.Abs(got-0.5) > 1e-9 {
			t.Errorf("I_½(%g, %g) = %.12g", a, a, got)
		}
	}
}

func TestCountEdges(t *testing.T) {
	for _, c := range []count{{}, {5, 0.4}} {
		if c.atMost(-1) != 0 || c.more(-1) != 1 || c.left(-3) != 0 {
			t.Errorf("%v: less than nothing is asked for", c)
		}
	}
	if none := (count{}); none.atMost(0) != 1 || none.more(0) != 0 || none.quantile(0.9) != 0 || none.left(7) != 7 {
		t.Error("something is asked for by nobody")
	}
}

func TestCountQuantile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := count{math.Exp(rapid.Float64Range(-3, 19).Draw(t, "ln mean")), 0}
		if rapid.Bool().Draw(t, "spread") {
			c.excess = math.Exp(rapid.Float64Range(-15, 1).Draw(t, "ln excess"))
		}
		prob := rapid.Float64Range(0.01, 0.9999).Draw(t, "prob")
		k := c.quantile(prob)
		if c.atMost(k) < prob || k > 0 && c.atMost(k-1) >= prob {
			t.Fatalf("%v: quantile(%g) = %g, P = %g, one less %g", c, prob, k, c.atMost(k), c.atMost(k-1))
		}
		if both := c.atMost(k) + c.more(k); math.Abs(both-1) > 1e-9 {
			t.Fatalf("%v: chances sum to %.12g", c, both)
		}
		if left := c.left(k); !(left >= math.Max(0, k-c.mean)*(1-1e-9) && left <= k) {
			t.Fatalf("%v: %g of %g left", c, left, k)
		}
	})
}

// What is left over, by the definition: the sum of (k − x) P(x).
func TestCountLeft(t *testing.T) {
	for _, c := range []count{{5, 0.4}, {5, 0}, {60, 0.1}} {
		for _, k := range []float64{0, 3, 10, 80} {
			want := 0.0
			for x := 0.0; x < k; x++ {
				want += c.atMost(x) // E[(k−X)⁺] is the sum of P(X ≤ x) below k
			}
			if got := c.left(k); math.Abs(got-want) > 1e-10*(1+want) {
				t.Errorf("%v: %g left of %g, want %g", c, got, k, want)
			}
		}
	}
}

func BenchmarkQuantile(b *testing.B) {
	c := count{500, 0.02}
	for b.Loop() {
		_ = c.quantile(0.9)
	}
}
