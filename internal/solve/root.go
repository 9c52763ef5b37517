package solve

import "math"

// Root returns an x in [a, b] with f(x) = 0, to within tol or the spacing of
// floating-point numbers at x, whichever is wider. f must change sign between
// a and b and be continuous there; ok is false, and x NaN, if it does not
// change sign or returns NaN.
//
// Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973),
// chapter 4: inverse quadratic interpolation guarded by bisection.
func Root(f func(float64) float64, a, b, tol float64) (x float64, ok bool) {
	const steps = 200 // bisection alone needs about 60 for any bracket of float64
	fa, fb := f(a), f(b)
	if !(fa*fb <= 0) || math.IsNaN(fa) || math.IsNaN(fb) {
		return math.NaN(), false
	}
	c, fc := a, fa
	d := b - a
	e := d
	for range steps {
		if (fb > 0) == (fc > 0) {
			c, fc = a, fa
			d = b - a
			e = d
		}
		if math.Abs(fc) < math.Abs(fb) {
			a, b, c = b, c, b
			fa, fb, fc = fb, fc, fb
		}
		wide := 2*math.SmallestNonzeroFloat64 + 2.220446049250313e-16*2*math.Abs(b) + tol/2
		half := (c - b) / 2
		if math.Abs(half) <= wide || fb == 0 {
			return b, true
		}
		if math.Abs(e) >= wide && math.Abs(fa) > math.Abs(fb) {
			d, e = interpolate(a, b, c, fa, fb, fc, half, wide, d, e)
		} else {
			d, e = half, half
		}
		a, fa = b, fb
		if math.Abs(d) > wide {
			b += d
		} else {
			b += math.Copysign(wide, half)
		}
		fb = f(b)
		if math.IsNaN(fb) {
			return math.NaN(), false
		}
	}
	return b, true
}

// interpolate returns the next step d and the step before it e: the secant or
// inverse quadratic step where it stays inside the bracket and shrinks it fast
// enough, half the bracket otherwise.
func interpolate(a, b, c, fa, fb, fc, half, wide, d, e float64) (float64, float64) {
	s := fb / fa
	var p, q float64
	if a == c {
		p = 2 * half * s
		q = 1 - s
	} else {
		q = fa / fc
		r := fb / fc
		p = s * (2*half*q*(q-r) - (b-a)*(r-1))
		q = (q - 1) * (r - 1) * (s - 1)
	}
	if p > 0 {
		q = -q
	} else {
		p = -p
	}
	if 2*p < math.Min(3*half*q-math.Abs(wide*q), math.Abs(e*q)) {
		return p / q, d
	}
	return half, half
}
