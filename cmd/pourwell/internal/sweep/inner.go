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
var looksInner = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[0-9][^\s:/.]*\.\.-?[0-9]`) })

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
		return nil, usage(in, fmt.Sprintf("%q has a range that cannot be read", text), "write it with a step, for example 3ft..10ft:1ft")
	}
	unit := part(4)
	if a, b := part(2), part(6); a != "" && a != unit || b != "" && b != unit {
		return nil, usage(in, fmt.Sprintf("%q has a range of several units", text), "write it with one, for example 3ft..10ft:1ft")
	}
	from, errFrom := quantity.Parse(quantity.Number, part(1))
	to, errTo := quantity.Parse(quantity.Number, part(3))
	step, errStep := quantity.Parse(quantity.Number, part(5))
	n := math.Floor(math.Abs(to-from)/math.Abs(step) + 1e-9)
	if errFrom != nil || errTo != nil || errStep != nil || !(n <= mostInner) {
		return nil, usage(in, fmt.Sprintf("%q has a range that never arrives", text), "write it with a step, for example 3ft..10ft:1ft")
	}
	a := &Axis{Input: in}
	for i := range int(n) + 1 {
		v := from + math.Copysign(float64(i)*math.Abs(step), to-from)
		all := slices.Clone(texts)
		all[at] = text[:m[0]] + strconv.FormatFloat(v, 'g', 12, 64) + unit + text[m[1]:]
		a.sets = append(a.sets, all)
	}
	return a, nil
}

// mostInner is how many texts a range within a text may make.
const mostInner = 100_000
