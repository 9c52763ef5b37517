package lines

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/unit"
)

// A Sentence is text that quotes numbers in braces, each with a suffix for its
// unit: {3.4 c}, {82.7 kpa}, {1.5 m}, {9 s}, {3.5 l_per_min}, {2.5 volumes} and
// the like. String writes them for a reader; a program may take them apart.
type Sentence string

// String returns the sentence with its numbers in US units and the metric ones
// in brackets.
func (s Sentence) String() string {
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(string(s), "{")
		b.WriteString(before)
		inside, after, closed := strings.Cut(rest, "}")
		if !found || !closed {
			return b.String()
		}
		number, suffix, _ := strings.Cut(inside, " ")
		v, err := strconv.ParseFloat(number, 64)
		if err != nil {
			b.WriteString("{" + inside + "}")
		} else {
			b.WriteString(quantity.Show(suffix, v, quantity.Both))
		}
		s = Sentence(after)
	}
}

// say formats a sentence; a braced verb, as in "{%.5g c}", quotes a number. A
// sentence among args keeps its quotes, rather than the units String gives them.
func say(format string, args ...any) Sentence {
	for i := range args {
		if part, ok := args[i].(Sentence); ok {
			args[i] = string(part)
		}
	}
	return Sentence(fmt.Sprintf(format, args...))
}

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
