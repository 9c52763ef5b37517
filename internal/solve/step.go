package solve

import "math"

// An Integrator advances a system of ordinary differential equations, one
// accepted step at a time, with the step chosen so that the error of each
// component stays within its tolerance.
//
// Every sum of components whose derivatives add up to zero is kept to rounding,
// whatever the step, so heats and masses that are carried as components close
// exactly.
//
// Source: J. R. Dormand and P. J. Prince, J. Comp. Appl. Math. 6 (1980) 19, the
// pair of orders 5 and 4.
type Integrator struct {
	Derivative func(t float64, y, dydt []float64)
	Tolerance  []float64 // error per step allowed in each component; +Inf to leave one unchecked
	MaxStep    float64   // no step is longer

	next   float64 // step to try next, 0 at the start
	t0, t1 float64 // ends of the last step
	y0, f0 []float64
	y1, f1 []float64
	k      [7][]float64
	y      []float64
	fresh  bool // f1 is the derivative at t1, y1
	forced int  // steps taken without meeting the tolerance
}

// Coefficients of the pair: nodes, the lower triangle, and the difference of
// the two orders' weights. Source: as above, table 2.
var (
	dpC = [7]float64{0, 1. / 5, 3. / 10, 4. / 5, 8. / 9, 1, 1}
	dpA = [7][6]float64{
		{},
		{1. / 5},
		{3. / 40, 9. / 40},
		{44. / 45, -56. / 15, 32. / 9},
		{19372. / 6561, -25360. / 2187, 64448. / 6561, -212. / 729},
		{9017. / 3168, -355. / 33, 46732. / 5247, 49. / 176, -5103. / 18656},
		{35. / 384, 0, 500. / 1113, 125. / 192, -2187. / 6784, 11. / 84},
	}
	dpE = [7]float64{71. / 57600, 0, -71. / 16695, 71. / 1920, -17253. / 339200, 22. / 525, -1. / 40}
)

// NewIntegrator returns an integrator for a system of as many components as
// tolerance has.
func NewIntegrator(derivative func(t float64, y, dydt []float64), tolerance []float64, maxStep float64) *Integrator {
	n := len(tolerance)
	s := &Integrator{Derivative: derivative, Tolerance: tolerance, MaxStep: maxStep}
	room := make([]float64, 12*n)
	cut := func() []float64 {
		part := room[:n:n]
		room = room[n:]
		return part
	}
	s.y0, s.f0, s.y1, s.f1, s.y = cut(), cut(), cut(), cut(), cut()
	for i := range s.k {
		s.k[i] = cut()
	}
	return s
}

// Restart tells the integrator that the derivative or y was changed from
// outside since its last step.
func (s *Integrator) Restart() { s.fresh = false }

// Step advances y from t by one accepted step that does not pass end, and
// returns the time reached. Where no step above 1e-9 of what is left meets the
// tolerance, as at a jump, it takes that one; after 1000 of them, or
// where y or its derivative is not finite, y comes back as NaN at end.
func (s *Integrator) Step(t, end float64, y []float64) float64 {
	copy(s.y0, y)
	s.t0 = t
	if s.fresh {
		copy(s.f0, s.f1)
	} else {
		s.Derivative(t, y, s.f0)
	}
	h := s.next
	if h == 0 {
		h = s.MaxStep / 100
	}
	for {
		h = math.Min(h, s.MaxStep)
		last := t+h >= end
		try := h
		if last {
			try = end - t
		}
		worst := s.attempt(t, try)
		if math.IsNaN(worst) || math.IsInf(worst, 0) {
			if try > 1e-9*(end-t) {
				h = try / 10
				continue
			}
			return s.fail(end, y)
		}
		grow := 0.9 / math.Pow(math.Max(worst, 1e-8), 0.2)
		if worst > 1 && try > 1e-9*(end-t) {
			h = try * math.Max(0.2, grow)
			continue
		}
		if worst > 1 {
			if s.forced++; s.forced > 1000 {
				return s.fail(end, y)
			}
		}
		if !last || grow < 1 {
			s.next = try * math.Min(5, math.Max(0.2, grow))
		} else {
			s.next = math.Max(h, try*math.Min(5, grow))
		}
		s.t1 = t + try
		if last {
			s.t1 = end
		}
		copy(y, s.y1)
		copy(s.f1, s.k[6])
		s.fresh = true
		return s.t1
	}
}

// fail gives up.
func (s *Integrator) fail(end float64, y []float64) float64 {
	for i := range y {
		y[i] = math.NaN()
	}
	s.t1 = end
	return end
}

// attempt computes y1 and the derivative there, k[6], and returns the largest
// ratio of error to tolerance.
func (s *Integrator) attempt(t, h float64) float64 {
	copy(s.k[0], s.f0)
	for stage := 1; stage < 7; stage++ {
		target := s.y
		if stage == 6 {
			target = s.y1
		}
		for i := range target {
			sum := 0.0
			for j := range stage {
				sum += dpA[stage][j] * s.k[j][i]
			}
			target[i] = s.y0[i] + h*sum
		}
		s.Derivative(t+dpC[stage]*h, target, s.k[stage])
	}
	worst := 0.0
	for i, tol := range s.Tolerance {
		if math.IsInf(tol, 1) {
			continue
		}
		e := 0.0
		for j := range dpE {
			e += dpE[j] * s.k[j][i]
		}
		worst = math.Max(worst, math.Abs(h*e)/tol) // NaN stays
	}
	return worst
}

// At returns component i at a time within the last step, by the cubic through
// the values and slopes at its ends.
func (s *Integrator) At(t float64, i int) float64 {
	h := s.t1 - s.t0
	x := (t - s.t0) / h
	a, b := s.y0[i], s.y1[i]
	return a + x*(h*s.f0[i]+x*(3*(b-a)-h*(2*s.f0[i]+s.f1[i])+x*(2*(a-b)+h*(s.f0[i]+s.f1[i]))))
}

// Start returns the time at which the last step began.
func (s *Integrator) Start() float64 { return s.t0 }

// Undo sets y back to the start of the last step and returns that time.
func (s *Integrator) Undo(y []float64) float64 {
	copy(y, s.y0)
	s.fresh = false
	return s.t0
}
