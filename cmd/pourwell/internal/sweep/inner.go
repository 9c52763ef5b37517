package sweep

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// inner finds a range within a longer text, such as the length in
// "3/16in:3ft..10ft:1ft:vinyl".
var inner = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(-?[0-9][0-9./]*)([^\s:.0-9]*)\.\.(-?[0-9][0-9./]*)([^\s:.]*):(-?[0-9][0-9./]*)([^\s:]*)`)
})

// looksInner tells a range from a path such as ../log.csv.
var looksInner = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[0-9][^\s:/.]*\.\.\.*-?[0-9]`) })

// readInner reads a range within one of the texts of an input that is words,
// such as a tube. All numbers of the range have the same unit; the first and
// the step may leave it to the second. It returns nil if there is none.
func readInner(in *calc.Input, texts []string) (*Axis, error) {
	if in.Kind != quantity.Text || len(in.Choices) > 0 {
		return nil, nil
	}
	at := slices.IndexFunc(texts, func(s string) bool { return strings.Contains(s, "..") && looksInner().MatchString(s) })
	if at < 0 {
		return nil, nil
	}
	text := texts[at]
	m := inner().FindStringSubmatchIndex(text)
	part := func(n int) string { return text[m[2*n]:m[2*n+1]] }
	if m == nil || strings.Contains(text[m[1]:], "..") {
		return nil, usage(in, fmt.Sprintf("%q has a range that cannot be read", text), "write it with two points and a step, for example "+RangeExample(in.Kind))
	}
	unit := part(4)
	if a, b := part(2), part(6); a != "" && a != unit || b != "" && b != unit {
		return nil, usage(in, fmt.Sprintf("%q has a range of several units", text), "write it with one, for example "+RangeExample(in.Kind))
	}
	from, errFrom := quantity.Parse(quantity.Number, part(1))
	to, errTo := quantity.Parse(quantity.Number, part(3))
	step, errStep := quantity.Parse(quantity.Number, part(5))
	if errFrom != nil || errTo != nil || errStep != nil {
		return nil, usage(in, fmt.Sprintf("%q has a range that cannot be read", text), "write it with a step, for example "+RangeExample(in.Kind))
	}
	n, err := stepsOf(in, text[m[0]:m[1]], to-from, step, mostInner)
	if err != nil {
		return nil, err
	}
	w := &within{texts: texts, text: at, before: text[:m[0]], after: unit + text[m[1]:], from: from, by: math.Copysign(step, to-from)}
	return &Axis{Input: in, within: w, steps: n}, nil
}

// mostInner is how many rows a range within a text may make.
const mostInner = 100_000

// A within is a range within one of the texts of an input.
type within struct {
	texts         []string
	text          int // place of the one with the range
	before, after string
	from, by      float64
}

// at returns the texts with the i'th number of the range in place.
func (w *within) at(i int) []string {
	all := slices.Clone(w.texts)
	all[w.text] = w.before + strconv.FormatFloat(w.from+float64(i)*w.by, 'g', 12, 64) + w.after
	return all
}
