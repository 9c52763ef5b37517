package volume

// A Step is one line of a calculation's working: an intermediate value as a
// reader with pencil and paper would write it down. The Steps method of every
// result lists them in the order of the sum.
type Step struct {
	Name   string  // what it is, for example "Henry coefficient"
	Symbol string  // as in the package's nomenclature, for example "K0"
	Value  float64 // in the unit of Suffix
	Suffix string  // of the unit, as keys end in; empty for a pure number
	Source string  // equation and work, or "given"
}

// A Band is the honest uncertainty of an answer: the interval in which a
// measurement is expected to fall, given the published uncertainty of the
// correlations used. The Band method of every result returns that of its
// leading answer.
type Band struct {
	Name      string  // the answer it belongs to, for example "content"
	Low, High float64 // in the unit of Suffix
	Suffix    string  // as in [Step]
	Source    string  // where the width comes from
}
