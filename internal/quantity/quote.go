package quantity

import (
	"fmt"
	"strconv"
	"strings"
)

// Quoted replaces each {inside} of s by what replace makes of it. A bracket
// that is never closed stays as it stands.
func Quoted(s string, replace func(inside string) string) string {
	if !strings.Contains(s, "{") {
		return s
	}
	var b strings.Builder
	for {
		before, rest, found := strings.Cut(s, "{")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		inside, after, found := strings.Cut(rest, "}")
		if !found {
			b.WriteString("{" + rest)
			return b.String()
		}
		b.WriteString(replace(inside))
		s = after
	}
}

// Quote writes the number that a sentence quotes, such as "38.5 c", or the
// range, such as "-1.2..45 c", for a reader of the given units. It reports
// whether inside is one.
func Quote(inside string, sys System) (text string, ok bool) {
	number, suffix, _ := strings.Cut(inside, " ")
	if v, err := strconv.ParseFloat(number, 64); err == nil {
		return Show(suffix, v, sys), true
	}
	first, last, ranges := strings.Cut(number, "..")
	low, errLow := strconv.ParseFloat(first, 64)
	high, errHigh := strconv.ParseFloat(last, 64)
	if !ranges || errLow != nil || errHigh != nil {
		return "", false
	}
	us, metric := Ends(suffix, low, high)
	return choose(us, metric, sys), true
}

// Say writes the numbers and ranges that s quotes for a reader of the given
// units. What is neither stays as it stands.
func Say(s string, sys System) string {
	return Quoted(s, func(inside string) string {
		if text, ok := Quote(inside, sys); ok {
			return text
		}
		return "{" + inside + "}"
	})
}

// Sayf formats a sentence as [fmt.Sprintf] does. A sentence among args keeps
// its quotes, rather than the units that its String gives them.
func Sayf[S ~string](format string, args ...any) S {
	for i := range args {
		if part, ok := args[i].(S); ok {
			args[i] = string(part)
		}
	}
	return S(fmt.Sprintf(format, args...))
}

// choose returns the text of one system of units, or the metric behind the
// other in brackets.
func choose(us, metric string, sys System) string {
	switch {
	case us == metric || sys == US:
		return us
	case sys == Metric:
		return metric
	}
	return us + " (" + metric + ")"
}
