package sweep

import (
	"cmp"
	"math"
	"slices"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/diff/fd"
	"gonum.org/v1/gonum/mat"
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
	n := len(tolerances)
	slopes := mat.NewDense(len(keys), n, nil)
	column := mat.NewDense(len(keys), 1, nil)
	for j := range tolerances {
		t := &tolerances[j]
		along := func(y, z []float64) {
			t.displace(v, z[0])
			trial.Reset()
			err := v.Calculation().Answer(v, &trial)
			for k, key := range keys {
				y[k] = math.NaN()
				if err == nil {
					y[k], _ = trial.Get(key)
				}
			}
		}
		t.slope(column, along)
		t.displace(v, 0)
		for k := range keys {
			slopes.Set(k, j, column.At(k, 0))
		}
	}
	spreads := make([]calc.Spread, len(keys))
	for k, key := range keys {
		value, _ := out.Get(key)
		spreads[k] = combine(key, value, tolerances, slopes.RawRowView(k))
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

// slope differentiates along by the input in units of its tolerance: centrally,
// or to the one side where the other has no answer.
func (t *Tolerance) slope(dst *mat.Dense, along func(y, z []float64)) {
	step := slopeStep
	if t.Input.Kind == quantity.Count { // whole things
		step = math.Max(1, math.Round(t.PlusMinus())) / t.PlusMinus()
	}
	for _, formula := range []fd.Formula{fd.Central, fd.Forward, fd.Backward} {
		fd.Jacobian(dst, along, []float64{0}, &fd.JacobianSettings{Formula: formula, Step: step})
		if finite(dst) {
			return
		}
	}
}

func finite(m *mat.Dense) bool {
	for _, x := range m.RawMatrix().Data {
		if !math.IsNaN(x) && !math.IsInf(x, 0) {
			return true // an answer that is not a number anywhere must not hide the others
		}
	}
	return false
}

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
