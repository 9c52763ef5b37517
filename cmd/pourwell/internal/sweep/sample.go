package sweep

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// Bounds on the number of samples: fewer say nothing about the tails, more
// need memory for nothing.
const (
	FewestSamples = 100
	MostSamples   = 1_000_000
)

// sigmas is how many standard deviations the tolerance of an input spans: the
// 97.5 % quantile of the normal distribution.
const sigmas = 1.959963984540054

// Sample checks s by drawing the inputs at random, normally within their
// tolerances, and running the calculation for each draw. The same seed gives
// the same samples on any number of processors. Progress, if not nil, is told
// how many are done.
//
// Source: JCGM 101:2008, clause 7.
func (p *Plan) Sample(s *calc.Spreads, samples int, seed uint64, progress func(done int)) {
	s.Samples, s.Seed = samples, seed
	drawn := make([][]float64, len(s.Results)) // NaN where there is no answer
	for k := range drawn {
		drawn[k] = make([]float64, samples)
	}
	var failed, done atomic.Int64
	var group sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for worker := range workers {
		group.Add(1)
		go func() {
			defer group.Done()
			d := drawer{v: p.Base.Clone(), tolerances: p.Tolerances}
			for i := worker; i < samples; i += workers {
				if !d.draw(seed, i) {
					failed.Add(1)
				}
				for k := range s.Results {
					drawn[k][i] = d.get(s.Results[k].Key)
				}
				if n := done.Add(1); progress != nil && n%64 == 0 {
					progress(int(n))
				}
			}
		}()
	}
	group.Wait()
	s.Failed = int(failed.Load())
	for k := range s.Results {
		s.Results[k].Sampled = sampled(drawn[k])
	}
}

// A drawer draws inputs and runs the calculation.
type drawer struct {
	v          *calc.Values
	tolerances []Tolerance
	source     rand.PCG
	out        calc.Result
	ok         bool
}

// draw reports whether the i'th sample has an answer.
func (d *drawer) draw(seed uint64, i int) bool {
	d.source.Seed(seed, uint64(i))
	random := rand.New(&d.source)
	for j := range d.tolerances {
		t := &d.tolerances[j]
		x := t.value + t.PlusMinus()/sigmas*random.NormFloat64()
		if t.Input.Kind == quantity.Count {
			x = math.Round(x)
		}
		d.v.SetNumber(t.Input.Name, x)
	}
	d.out.Reset()
	d.ok = d.v.Calculation().Answer(d.v, &d.out) == nil
	return d.ok
}

func (d *drawer) get(key string) float64 {
	if v, ok := d.out.Get(key); ok && d.ok {
		return v
	}
	return math.NaN()
}

// sampled returns the middle 95 % of the samples that are numbers, nil if none
// are.
func sampled(all []float64) *calc.Sampled {
	all = slices.DeleteFunc(all, math.IsNaN)
	if len(all) == 0 {
		return nil
	}
	slices.Sort(all)
	sum := 0.0
	for _, x := range all {
		sum += x
	}
	return &calc.Sampled{Low: quantile(all, 0.025), Mean: sum / float64(len(all)), High: quantile(all, 0.975)}
}

// quantile returns the p-quantile of samples in ascending order. The share of
// samples up to each, k/n, is taken to rise straight between two.
//
// Source: Hyndman and Fan, The American Statistician 50 (1996) 361, definition
// 4.
func quantile(samples []float64, p float64) float64 {
	at := p * float64(len(samples)) // counted from 1
	k := int(math.Ceil(at)) - 1
	if k <= 0 {
		return samples[0]
	}
	t := float64(k+1) - at
	return t*samples[k-1] + (1-t)*samples[k]
}
