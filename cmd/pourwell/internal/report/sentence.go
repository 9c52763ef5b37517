package report

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// width is the line length that text keeps to.
const width = 80

// Sentence writes the numbers that s quotes, {key} or {38.5 c}, in the units
// of sys. A key that has no value is left as it stands.
func Sentence(s string, in *calc.Values, out *calc.Result, sys quantity.System) string {
	return quantity.Quoted(s, func(inside string) string { return quoted(inside, in, out, sys) })
}

// quoted returns what {inside} stands for.
func quoted(inside string, in *calc.Values, out *calc.Result, sys quantity.System) string {
	if text, ok := quantity.Quote(inside, sys); ok {
		return text
	}
	if v, ok := out.Get(inside); ok {
		_, suffix := quantity.SplitKey(inside)
		return quantity.Show(suffix, v, sys)
	}
	if in != nil {
		if v, ok := in.ByKey(inside); ok {
			_, suffix := quantity.SplitKey(inside)
			return quantity.Show(suffix, v, sys)
		}
	}
	return "{" + inside + "}"
}

// Wrap breaks s into lines that end within the width of the text. The first
// begins at column start, where the caller has written so far; the others are
// indented by indent blanks. A margin and line breaks in s are kept. A number
// stays with its unit.
func Wrap(s string, start, indent int) string {
	var b strings.Builder
	margin := len(s) - len(strings.TrimLeft(s, " "))
	b.WriteString(s[:margin])
	at := start + margin
	for i, paragraph := range strings.Split(s, "\n") {
		if i > 0 {
			b.WriteString("\n" + strings.Repeat(" ", indent))
			at = indent
		}
		for j, word := range bound(paragraph) {
			n := utf8.RuneCountInString(word)
			switch {
			case j == 0:
			case at+1+n > width:
				b.WriteString("\n" + strings.Repeat(" ", indent))
				at = indent
			default:
				b.WriteByte(' ')
				at++
			}
			b.WriteString(word)
			at += n
		}
	}
	return b.String()
}

// bound splits s into words, keeping a number together with the unit behind
// it.
func bound(s string) []string {
	words := strings.Fields(s)
	var out []string
	for i := 0; i < len(words); i++ {
		w := words[i]
		if i+1 < len(words) && isNumber(w) && unitLike(words[i+1]) {
			w += " " + words[i+1]
			i++
		}
		out = append(out, w)
	}
	return out
}

func isNumber(w string) bool {
	_, err := strconv.ParseFloat(strings.TrimLeft(w, "("), 64)
	return err == nil
}

func unitLike(w string) bool {
	w = strings.TrimRight(w, ".,;:)")
	switch w {
	case "°F", "°C", "F", "C", "psi", "bar", "%", "L", "mL", "gal", "lb", "kg", "oz", "g", "ft", "m", "in", "mm",
		"h", "min", "s", "oz/s", "L/min", "volumes", "g/L", "W", "W/K", "K":
		return true
	}
	return false
}
