package sweep

import (
	"cmp"
	"math"
	"slices"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// slopeStep is the step of the differences, in tolerances: small enough for a
// slope, large enough to rise above the steps of a simulation in time.
const slopeStep = 0.1

// Spread returns what the tolerances make of each answer that is a number, to
// first order: each slope is taken by differences, and the causes, which are
// independent, add up as squares.
//
//	u² = Σ (∂f/∂x_i u_i)²
//
// out must be the result of p.Base.
//
// Source: JCGM 100:2008, eq. 10.
func (p *Plan) Spread(out *calc.Result) *calc.Spreads {
	s := p.InputSpreads()
	s.Results = propagate(p.Base.Clone(), p.Tolerances, out, numberKeys(out))
	return s
}

// InputSpreads returns the tolerances alone, nil if there are none.
func (p *Plan) InputSpreads() *calc.Spreads {
	if len(p.Tolerances) == 0 {
		return nil
	}
	s := &calc.Spreads{}
	for i := range p.Tolerances {
		s.Inputs = append(s.Inputs, p.Tolerances[i].spread())
	}
	return s
}

func numberKeys(out *calc.Result) []string {
	var keys []string
	for i := range out.Values {
		if !out.Values[i].IsText {
			keys = append(keys, out.Values[i].Key)
		}
	}
	return keys
}

// propagate works on v, whose inputs it changes.
func propagate(v *calc.Values, tolerances []Tolerance, out *calc.Result, keys []string) []calc.Spread {
	var trial calc.Result
	answers := func(t *Tolerance, tolerances float64, into []float64) {
		t.displace(v, tolerances)
		trial.Reset()
		err := v.Calculation().Answer(v, &trial)
		for k, key := range keys {
			into[k] = math.NaN()
			if err == nil {
				into[k], _ = trial.Get(key)
			}
		}
	}
	n := len(tolerances)
	slopes, up, down := make([]float64, len(keys)*n), make([]float64, len(keys)), make([]float64, len(keys))
	for j := range tolerances {
		t := &tolerances[j]
		step := t.step()
		answers(t, step, up)
		answers(t, -step, down)
		t.displace(v, 0)
		for k, key := range keys {
			at, _ := out.Get(key)
			slopes[k*n+j] = slope(at, up[k], down[k], step)
		}
	}
	spreads := make([]calc.Spread, len(keys))
	for k, key := range keys {
		value, _ := out.Get(key)
		spreads[k] = combine(key, value, tolerances, slopes[k*n:(k+1)*n])
	}
	return spreads
}

// displace sets the input to its middle and so many tolerances more.
func (t *Tolerance) displace(v *calc.Values, tolerances float64) {
	if tolerances == 0 {
		// The text comes back with it, which a vessel's name needs.
		_ = v.SetText(t.Input.Name, t.middle)
		return
	}
	x := t.value + tolerances*t.PlusMinus()
	if t.Input.Kind == quantity.Count {
		x = math.Round(x)
	}
	v.SetNumber(t.Input.Name, x)
}

// step is how far to go to either side for a slope, in tolerances.
func (t *Tolerance) step() float64 {
	if t.Input.Kind == quantity.Count { // whole things
		return math.Max(1, math.Round(t.PlusMinus())) / t.PlusMinus()
	}
	return slopeStep
}

// slope returns the slope at a point from the answers there and a step to
// either side: centrally, or to the one side where the other has no answer.
func slope(at, up, down, step float64) float64 {
	switch {
	case finite(up) && finite(down):
		return (up - down) / (2 * step)
	case finite(up):
		return (up - at) / step
	}
	return (at - down) / step // not a number where there is none
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// combine adds the causes up as squares.
func combine(key string, value float64, tolerances []Tolerance, slopes []float64) calc.Spread {
	s := calc.Spread{Key: key, Value: value}
	for j := range tolerances {
		s.PlusMinus = math.Hypot(s.PlusMinus, slopes[j])
		s.Causes = append(s.Causes, calc.Cause{Input: tolerances[j].Input.Name, PlusMinus: math.Abs(slopes[j])})
	}
	for j := range s.Causes {
		if s.PlusMinus > 0 {
			s.Causes[j].Share = (s.Causes[j].PlusMinus / s.PlusMinus) * (s.Causes[j].PlusMinus / s.PlusMinus)
		}
	}
	slices.SortStableFunc(s.Causes, func(a, b calc.Cause) int { return cmp.Compare(b.Share, a.Share) })
	return s
}
