package volume

import "math"

// A count is the distribution of how many servings are asked for: a Poisson
// count whose rate is itself gamma-distributed, that is a negative binomial.
//
//	P(k) = Γ(k+r)/(Γ(r) k!) p^r q^k,  r = 1/excess, p = r/(r+mean), q = mean/(r+mean)
//	variance = mean + excess · mean²
//
// With no excess it is Poisson. Source: Johnson, Kemp & Kotz, Univariate
// Discrete Distributions, 3rd ed. (2005), chapter 5; from memory.
type count struct {
	mean, excess float64
}

// shape returns r, with p and q of the definition. An excess that changes the
// variance by less than one part in 1e12 is taken as that part: the Poisson
// count, for which gonum's incomplete gamma function loses its digits at means
// above 1e8.
func (c count) shape() (r, p, q float64) {
	r = 1 / math.Max(c.excess, 1e-12/c.mean)
	return r, r / (r + c.mean), c.mean / (r + c.mean)
}

// atMost returns P(X ≤ k) = I_p(r, k + 1), and more returns P(X > k); each is
// computed apart, so that a small chance keeps its digits.
func (c count) atMost(k float64) float64 {
	switch {
	case k < 0:
		return 0
	case c.mean == 0:
		return 1
	}
	r, p, q := c.shape()
	return incompleteBeta(r, k+1, p, q)
}

func (c count) more(k float64) float64 {
	switch {
	case k < 0:
		return 1
	case c.mean == 0:
		return 0
	}
	r, p, q := c.shape()
	return incompleteBeta(k+1, r, q, p)
}

// quantile returns the least k with P(X ≤ k) ≥ prob.
func (c count) quantile(prob float64) float64 {
	if c.mean == 0 {
		return 0
	}
	sd := math.Sqrt(c.mean + c.excess*c.mean*c.mean)
	step := math.Max(1, math.Ceil(sd/8))
	// Near the answer for all but the smallest counts: a normal quantile, from
	// which steps that double bracket it, and halving finds it.
	high := math.Max(0, math.Floor(c.mean+sd*math.Sqrt2*math.Erfinv(2*prob-1)))
	low := high - step
	for ; c.atMost(high) < prob; step *= 2 {
		low, high = high, high+step
	}
	for ; low >= 0 && c.atMost(low) >= prob; step *= 2 {
		low, high = low-step, low
	}
	for low = math.Max(low, -1); high-low > 1; {
		if mid := math.Floor((low + high) / 2); c.atMost(mid) >= prob {
			high = mid
		} else {
			low = mid
		}
	}
	return high
}

// left returns the expected number of k servings that nobody asks for,
// E[(k − X)⁺] = k P(X ≤ k) − E[X; X ≤ k]. The partial mean is the mean times
// the chance of at most k − 1 in the count whose r is larger by one.
func (c count) left(k float64) float64 {
	if k <= 0 || c.mean == 0 {
		return math.Max(k, 0)
	}
	r, p, q := c.shape()
	below := incompleteBeta(r+1, k, p, q)
	return math.Max(0, k*c.atMost(k)-c.mean*below)
}

// meanFor returns the mean, up to c's own, of the count with c's excess for
// which P(X > k) is chance: P(X > k) rises with the mean. It is c's own if its
// P(X > k) is less.
func (c count) meanFor(k, chance float64) float64 {
	low, high := 0.0, c.mean
	for high-low > 1e-9*high {
		mid := (low + high) / 2
		if (count{mid, c.excess}).more(k) < chance {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// incompleteBeta returns the regularised incomplete beta function I_x(a, b)
// with y = 1 − x given apart, which keeps the digits of whichever is small. It
// holds for a and b up to 1e9 and beyond, where a fixed number of terms of the
// fraction, as gonum's RegIncBeta takes, no longer suffices.
//
//	I_x(a, b) = x^a y^b / B(a, b) · 1/(β0 + α1/(β1 + α2/(β2 + …)))
//
// Source: A. R. DiDonato and A. H. Morris, Algorithm 708, ACM Transactions on
// Mathematical Software 18 (1992) 360, the fraction BFRAC, by Lentz's method;
// x^a y^b / B by Loader as below.
func incompleteBeta(a, b, x, y float64) float64 {
	if (b+1)*x > (a+1)*y { // beyond the mode, where the fraction is slow
		return 1 - incompleteBeta(b, a, y, x)
	}
	const tiny, enough, most = 1e-300, 1e-15, 1e5
	beta := func(n float64) float64 {
		return n + n*(b-n)*x/(a+2*n-1) + (a+n)*(a*y-b*x+1+n*(1+y))/(a+2*n+1)
	}
	h := a * (a*y - b*x + 1) / (a + 1) // β0
	if math.Abs(h) < tiny {
		h = tiny
	}
	c, d := h, 0.0
	for n := 1.0; n < most; n++ {
		alpha := (a + n - 1) / (a + 2*n - 1) * ((a + b + n - 1) / (a + 2*n - 1)) * n * (b - n) * x * x
		bn := beta(n)
		if d = bn + alpha*d; math.Abs(d) < tiny {
			d = tiny
		}
		if c = bn + alpha/c; math.Abs(c) < tiny {
			c = tiny
		}
		d = 1 / d
		h *= c * d
		if math.Abs(c*d-1) < enough {
			break
		}
	}
	return binomialDensity(a, b, x, y) * a * (b / (a + b)) / h
}

// binomialDensity returns Γ(a+b+1)/(Γ(a+1) Γ(b+1)) x^a y^b without the loss of
// digits that logarithms of gamma functions of large numbers bring.
//
// Source: C. Loader, Fast and Accurate Computation of Binomial Probabilities
// (2000), the saddle-point expansion.
func binomialDensity(a, b, x, y float64) float64 {
	n := a + b
	log := stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n*x) - deviance(b, n*y)
	return math.Exp(log) * math.Sqrt(n/(2*math.Pi*a*b))
}

// stirlingError returns ln Γ(n+1) − ln(√(2πn) (n/e)^n).
func stirlingError(n float64) float64 {
	if n < 16 {
		g, _ := math.Lgamma(n + 1)
		return g - (n+0.5)*math.Log(n) + n - 0.5*math.Log(2*math.Pi)
	}
	s := 1 / (n * n)
	return (1./12 - s*(1./360-s*(1./1260-s*(1./1680-s/1188)))) / n
}

// deviance returns m (x/m ln(x/m) + 1 − x/m) for x near or far from m.
func deviance(x, m float64) float64 {
	if math.Abs(x-m) >= 0.1*(x+m) {
		return x*math.Log(x/m) + m - x
	}
	v := (x - m) / (x + m)
	s := (x - m) * v
	e := 2 * x * v
	for j := 1.0; ; j++ {
		e *= v * v
		next := s + e/(2*j+1)
		if next == s {
			return s
		}
		s = next
	}
}
