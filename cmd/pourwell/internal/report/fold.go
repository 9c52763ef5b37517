package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/pourwell/internal/quantity"
)

// A column is one column of text under its head: a quantity of one unit, or of
// two side by side.
type column struct {
	label []string // lines
	parts []part
	input bool
}

// A part is the numbers of a column in one unit.
type part struct {
	unit  string
	cells []string
	left  bool // words stand to the left
}

func (c *column) width() int {
	w := 0
	for i := range c.parts {
		w += c.parts[i].width() + 2
	}
	return max(w-2, linesWidth(c.label))
}

func (p *part) width() int {
	w := utf8.RuneCountInString(p.unit)
	for _, c := range p.cells {
		w = max(w, utf8.RuneCountInString(c))
	}
	return w
}

func linesWidth(lines []string) int {
	w := 0
	for _, l := range lines {
		w = max(w, utf8.RuneCountInString(l))
	}
	return w
}

// fitLabel breaks the label into lines about as wide as the numbers.
func (c *column) fitLabel() {
	w := -2
	for k := range c.parts {
		w += c.parts[k].width() + 2
	}
	c.label = strings.Split(wrapAt(c.label[0], max(w, 13)), "\n")
}

// scales returns those of the units asked for.
func (o *Options) scales(us, metric quantity.Scale) []quantity.Scale {
	switch {
	case us == metric || o.Units == quantity.US:
		return []quantity.Scale{us}
	case o.Units == quantity.Metric:
		return []quantity.Scale{metric}
	}
	return []quantity.Scale{us, metric}
}

// fold writes columns side by side; those that do not fit the line follow in a
// block of their own, beside the inputs once more.
func (p *printer) fold(all []column) {
	for i := range all {
		all[i].respell(p)
	}
	var inputs, answers []column
	for _, c := range all {
		if c.input {
			inputs = append(inputs, c)
		} else {
			answers = append(answers, c)
		}
	}
	for first := true; first || len(answers) > 0; first = false {
		block, used := append([]column{}, inputs...), 0
		for i := range inputs {
			used += inputs[i].width() + 3
		}
		for len(answers) > 0 && (len(block) == len(inputs) || used+answers[0].width()+2 <= width) {
			used += answers[0].width() + 3
			block = append(block, answers[0])
			answers = answers[1:]
		}
		p.gap()
		p.block(block)
	}
}

// respell spells everything in c for the reader's terminal.
func (c *column) respell(p *printer) {
	for _, lines := range append([][]string{c.label}, c.cells()...) {
		for i := range lines {
			lines[i] = p.letters(lines[i])
		}
	}
	for i := range c.parts {
		c.parts[i].unit = p.letters(c.parts[i].unit)
	}
}

func (c *column) cells() [][]string {
	var all [][]string
	for i := range c.parts {
		all = append(all, c.parts[i].cells)
	}
	return all
}

// block writes labels, units and rows. Columns stand three blanks apart, the
// two units of one column two.
func (p *printer) block(columns []column) {
	lines, rows := 0, 0
	for _, c := range columns {
		lines = max(lines, len(c.label))
		rows = max(rows, len(c.parts[0].cells))
	}
	for n := range lines {
		p.across(columns, func(c *column, w int) string {
			if k := n - (lines - len(c.label)); k >= 0 {
				return pad(c.label[k], w, c.parts[0].left)
			}
			return pad("", w, true)
		})
	}
	p.across(columns, func(c *column, w int) string {
		return c.line(w, func(p *part) string { return p.unit })
	})
	for n := range rows {
		p.across(columns, func(c *column, w int) string {
			return c.line(w, func(p *part) string { return p.cells[n] })
		})
	}
}

func (p *printer) across(columns []column, cell func(c *column, w int) string) {
	var b strings.Builder
	for i := range columns {
		if i > 0 {
			b.WriteString("   ")
		}
		b.WriteString(cell(&columns[i], columns[i].width()))
	}
	if line := strings.TrimRight(b.String(), " "); line != "" {
		fmt.Fprintln(p.w, line)
	}
}

// line writes one cell of each part, in all w letters wide.
func (c *column) line(w int, cell func(*part) string) string {
	var b strings.Builder
	for i := range c.parts {
		if i > 0 {
			b.WriteString("  ")
		}
		b.WriteString(pad(cell(&c.parts[i]), c.parts[i].width(), c.parts[i].left))
	}
	return pad(b.String(), w, c.parts[0].left)
}

// pad fills s up to w letters.
func pad(s string, w int, left bool) string {
	blanks := strings.Repeat(" ", max(0, w-utf8.RuneCountInString(s)))
	if left {
		return s + blanks
	}
	return blanks + s
}

// wrapAt breaks s between words into lines of at most w letters.
func wrapAt(s string, w int) string {
	var b strings.Builder
	at := 0
	for i, word := range strings.Fields(s) {
		n := utf8.RuneCountInString(word)
		switch {
		case i == 0:
		case at+1+n > w:
			b.WriteByte('\n')
			at = 0
		default:
			b.WriteByte(' ')
			at++
		}
		b.WriteString(word)
		at += n
	}
	return b.String()
}
