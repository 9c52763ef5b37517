package report

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/pourwell/internal/quantity"
)

// width is the line length that text keeps to.
const width = 80

// A layout says how cells stand side by side. All text in columns goes through
// it: the numbers of an answer, tables, the rows of a page, the working.
type layout struct {
	margin int  // blanks before each line
	gap    int  // blanks between two columns
	wrap   bool // the last cell of a row breaks within what is left of the line
	widest int  // a wider cell takes a line of its own; 0 for none
}

// rows writes each row on a line of its own, or on several if its last cell
// breaks. A column is as wide as its widest cell; the last cell of a row ends
// the line and takes no width. A row of blanks is left out.
func (p *printer) rows(l layout, rows [][]string) {
	widths := l.widths(rows)
	blanks := strings.Repeat(" ", l.margin)
	for _, row := range rows {
		line, at := blanks, l.margin
		for i, cell := range row {
			switch n := letters(cell); {
			case i == len(row)-1 && l.wrap:
				line += Wrap(cell, at, at)
			case i == len(row)-1:
				line += cell
			case l.widest > 0 && n > widths[i]:
				at += widths[i] + l.gap
				line += cell + "\n" + strings.Repeat(" ", at)
			default:
				at += widths[i] + l.gap
				line += cell + strings.Repeat(" ", widths[i]-n+l.gap)
			}
		}
		if line = strings.TrimRight(line, " "); line != "" {
			fmt.Fprintln(p.w, line)
		}
	}
}

// widths measures each cell once.
func (l layout) widths(rows [][]string) []int {
	var widths []int
	for _, row := range rows {
		for i := range len(row) - 1 {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			if n := letters(row[i]); l.widest == 0 || n <= l.widest {
				widths[i] = max(widths[i], n)
			}
		}
	}
	return widths
}

// letters is how wide text measures a cell; a test counts how often it does.
var letters = utf8.RuneCountInString

// pad fills s up to w letters.
func pad(s string, w int, left bool) string {
	blanks := strings.Repeat(" ", max(0, w-letters(s)))
	if left {
		return s + blanks
	}
	return blanks + s
}

// oneOf returns those of the units asked for, the metric one beside the US one
// where they differ.
func oneOf[T comparable](sys quantity.System, us, metric T) []T {
	switch {
	case us == metric || sys == quantity.US:
		return []T{us}
	case sys == quantity.Metric:
		return []T{metric}
	}
	return []T{us, metric}
}

// Wrap breaks s into lines that end within the width of the text. The first
// begins at column start, where the caller has written so far; the others are
// indented by indent blanks. A margin and line breaks in s are kept. A number
// stays with its unit.
func Wrap(s string, start, indent int) string { return wrap(s, start, indent, width) }

func wrap(s string, start, indent, width int) string {
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
		if i+1 < len(words) && isNumber(w) && quantity.IsUnit(strings.TrimRight(words[i+1], ".,;:)")) {
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
