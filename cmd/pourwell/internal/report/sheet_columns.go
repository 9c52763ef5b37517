package report

import (
	"fmt"
	"math"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// columns turns the sheet around, each column in the units asked for. An
// answer that only repeats what was typed is left out.
func (s *Sheet) columns(in *calc.Values, sys quantity.System) []column {
	var all []column
	for i, h := range s.Heads {
		if h.Input || !s.repeats(i) && !s.restates(i, in) {
			failed := "-"
			if i > 0 && s.Heads[i-1].Input { // said once in a row
				failed = "failed"
			}
			all = append(all, s.column(i, s.Lines, sys, failed))
		}
	}
	return all
}

// repeats reports whether answer i is the same number as an input of the same
// unit in every row.
func (s *Sheet) repeats(i int) bool {
	for k, h := range s.Heads[:i] {
		if h.Input && suffixOf(h.Key) == suffixOf(s.Heads[i].Key) &&
			s.every(i, func(l *Line) float64 { return l.Cells[k].Number }) {
			return true
		}
	}
	return false
}

// restates reports whether answer i is the same number in every row as an input
// that the title has told.
func (s *Sheet) restates(i int, in *calc.Values) bool {
	suffix := suffixOf(s.Heads[i].Key)
	for _, t := range in.Typed() {
		if suffix != "" && suffixOf(t.Value.Key) == suffix && !s.varies(t.Words) &&
			s.every(i, func(*Line) float64 { return t.Value.Number }) {
			return true
		}
	}
	return false
}

// every reports whether column i is the number given in every row that has an
// answer.
func (s *Sheet) every(i int, number func(*Line) float64) bool {
	for n := range s.Lines {
		l := &s.Lines[n]
		if c := l.Cells[i]; l.Failure == "" && (c.IsText || !alike(c.Number, number(l))) {
			return false
		}
	}
	return true
}

func alike(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(a)) }

func suffixOf(key string) string {
	_, suffix := quantity.SplitKey(key)
	return suffix
}

// column writes the cells that lines have in column i; failed stands for an
// answer that a row does not have.
func (s *Sheet) column(i int, lines []Line, sys quantity.System, failed string) column {
	h := s.Heads[i]
	numbers, words := make([]float64, len(lines)), false
	for n := range lines {
		numbers[n] = lines[n].Cells[i].Number
		words = words || lines[n].Cells[i].IsText
	}
	c := newColumn(h.Label, suffixOf(h.Key), numbers, sys, func(n int) (string, bool) {
		if cell := &lines[n].Cells[i]; cell.IsText {
			return cell.Text, true
		}
		return failed, lines[n].Failure != "" && !h.Input
	})
	c.input = h.Input
	for k := range c.parts {
		c.parts[k].left = words
	}
	return c
}

// grid writes one answer over two inputs: the first down, the second across,
// each of its values over a column.
func (s *Sheet) grid(p *printer, answer int) {
	across := 1
	for across < len(s.Lines) && same(s.Lines[across].Cells[0], s.Lines[0].Cells[0]) {
		across++
	}
	var down []Line
	for i := 0; i < len(s.Lines); i += across {
		down = append(down, s.Lines[i])
	}
	sys := p.opt.Units
	first, values := s.column(0, down, sys, ""), s.column(1, s.Lines[:across], sys, "")
	var units []string
	for _, v := range values.parts {
		if v.unit != "" {
			units = append(units, v.unit+" across")
		}
	}
	first.label = strings.Join(units, "\n")
	for _, all := range s.column(answer, s.Lines, sys, "-").parts {
		title := s.Heads[answer].Label
		if all.unit != "" {
			title += ", " + all.unit
		}
		p.paragraph("", fmt.Sprintf("%s (down: %s; across: %s)", title, s.Heads[0].Label, s.Heads[1].Label))
		columns := []column{first}
		for k := range across {
			var label, cells []string
			for _, v := range values.parts {
				label = append(label, v.cells[k])
			}
			for i := k; i < len(s.Lines); i += across {
				cells = append(cells, all.cells[i])
			}
			columns = append(columns, column{label: strings.Join(label, "\n"), parts: []part{{cells: cells}}})
		}
		p.gap()
		p.fold(columns)
	}
}

func same(a, b calc.Value) bool {
	return a.IsText == b.IsText && a.Text == b.Text && (a.IsText || a.Number == b.Number)
}
