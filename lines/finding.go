package lines

import "gonum.org/v1/gonum/unit"

// A Finding is one cause of foam, or of a slow or flat pour.
type Finding struct {
	Cause    string        // in a few words, such as "keg too warm for its pressure"
	Size     unit.Pressure // what it comes to as a pressure, to rank it by
	Share    float64       // of the sizes of all findings
	Fits     bool          // it explains when the beer foams
	Measured Sentence      // what was seen
	Expected Sentence      // what should be
	Remedy   Sentence      // with its number
	Confirm  Sentence      // what would show that this was it
}
