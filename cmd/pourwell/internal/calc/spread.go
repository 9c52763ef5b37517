package calc

import "example.com/pourwell/internal/quantity"

// A Spread is what the tolerances of the inputs make of one answer, in the
// unit of the key's suffix.
type Spread struct {
	Key       string
	PlusMinus float64 // linear: root of the sum of squares of the causes
	Value     float64 // the answer itself
	Causes    []Cause // largest first
	Sampled   *Sampled
}

// A Cause is the part of a spread that one input is to blame for.
type Cause struct {
	Input     string  // its name
	PlusMinus float64 // what its tolerance alone makes of the answer
	Share     float64 // of the variance, 0 to 1
}

// A Sampled is a spread as random samples of the inputs show it.
type Sampled struct {
	Low, Mean, High float64 // 2.5 %, mean and 97.5 %
}

// Low returns the lower end of the linear spread. That of a share or
// probability ends at 0.
func (s Spread) Low() float64 { return s.Within(s.Value - s.PlusMinus) }

// High returns the upper end of the linear spread. That of a share or
// probability ends at 1.
func (s Spread) High() float64 { return s.Within(s.Value + s.PlusMinus) }

// Within keeps a part of a whole within the whole, which a straight line does
// not know of.
func (s Spread) Within(v float64) float64 {
	_, suffix := quantity.SplitKey(s.Key)
	if part := suffix == "share" || suffix == "probability"; part && s.Value >= 0 && s.Value <= 1 {
		return min(max(v, 0), 1)
	}
	return v
}

// Spreads holds the spreads of all answers and what they rest on.
type Spreads struct {
	Inputs  []InputSpread
	Results []Spread
	Samples int    // 0 if none were drawn
	Seed    uint64 // of the samples
	Failed  int    // samples that had no answer
}

// An InputSpread is the tolerance typed for one input.
type InputSpread struct {
	Name string
	Text string  // as typed, for example "1F" or "5%"
	Key  string  // "temp_k": the name with the unit of the tolerance
	Size float64 // in the unit of the key
}

// Of returns the spread of the answer under key.
func (s *Spreads) Of(key string) (Spread, bool) {
	if s != nil {
		for _, r := range s.Results {
			if r.Key == key {
				return r, true
			}
		}
	}
	return Spread{}, false
}
