package report

import (
	"strings"

	"example.com/pourwell/internal/quantity"
)

// A column is a quantity under its label, in one unit or in two side by side.
type column struct {
	label string
	parts []part
	input bool

	head  []string // the label in lines; set by fit, as width
	width int
}

// A part is the numbers of a column in one unit.
type part struct {
	unit  string
	cells []string
	left  bool // words stand to the left
	width int  // set by fit
}

// newColumn returns a column of numbers with the unit suffix given, in the
// units of sys. Where word knows one, it stands instead of the number.
func newColumn(label, suffix string, numbers []float64, sys quantity.System, word func(row int) (string, bool)) column {
	c := column{label: label}
	us, metric := quantity.ScalesOf(suffix, numbers)
	for _, scale := range oneOf(sys, us, metric) {
		p := part{unit: scale.Unit, cells: make([]string, len(numbers))}
		for i, v := range numbers {
			var ok bool
			if p.cells[i], ok = word(i); !ok {
				p.cells[i] = scale.Text(v)
			}
		}
		c.parts = append(c.parts, p)
	}
	return c
}

// fit spells the column for the reader's terminal, measures it, and breaks the
// label into lines about as wide as the numbers.
func (c *column) fit(p *printer) {
	c.width = -2
	for i := range c.parts {
		part := &c.parts[i]
		part.unit = p.letters(part.unit)
		part.width = letters(part.unit)
		for k, cell := range part.cells {
			part.cells[k] = p.letters(cell)
			part.width = max(part.width, letters(part.cells[k]))
		}
		c.width += part.width + 2
	}
	c.head = strings.Split(wrap(p.letters(strings.TrimSpace(c.label)), 0, 0, max(c.width, 13)), "\n")
	for _, line := range c.head {
		c.width = max(c.width, letters(line))
	}
}

// fold writes columns side by side, three blanks apart; those that do not fit
// the line follow in a block of their own, beside the inputs once more.
func (p *printer) fold(all []column) {
	var inputs, answers []column
	margin := 0
	for _, c := range all {
		if c.fit(p); c.input {
			inputs = append(inputs, c)
			margin += c.width + 3
		} else {
			answers = append(answers, c)
		}
	}
	for first := true; first || len(answers) > 0; first = false {
		n, used := 0, margin
		for n < len(answers) && (n == 0 || used+answers[n].width+2 <= width) {
			used += answers[n].width + 3
			n++
		}
		if !first {
			p.gap()
		}
		p.block(append(inputs[:len(inputs):len(inputs)], answers[:n]...))
		answers = answers[n:]
	}
}

// block writes labels, units and rows.
func (p *printer) block(columns []column) {
	lines := 0
	for i := range columns {
		lines = max(lines, len(columns[i].head))
	}
	rows := make([][]string, lines+1+len(columns[0].parts[0].cells))
	for i := range rows {
		row := make([]string, len(columns))
		for k := range columns {
			row[k] = columns[k].line(i - lines)
		}
		rows[i] = row
	}
	p.rows(layout{gap: 3}, rows)
}

// line returns the n'th row below the units, which are row 0; the label ends
// above it. The two units of one column stand two blanks apart.
func (c *column) line(n int) string {
	left := c.parts[0].left
	if n < 0 {
		if n += len(c.head); n < 0 {
			return ""
		}
		return pad(c.head[n], c.width, left)
	}
	text := ""
	for i := range c.parts {
		part := &c.parts[i]
		cell := part.unit
		if n > 0 {
			cell = part.cells[n-1]
		}
		if i > 0 {
			text += "  "
		}
		text += pad(cell, part.width, part.left)
	}
	return pad(text, c.width, left)
}
