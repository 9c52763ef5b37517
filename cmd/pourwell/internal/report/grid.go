package report

import (
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// grid writes one answer over two inputs: the first down, the second across.
func (s *Sheet) grid(p *printer, answer int) {
	us, metric := s.scales(answer)
	for _, scale := range p.opt.scales(us, metric) {
		title := s.Heads[answer].Label
		if scale.Unit != "" {
			title += ", " + scale.Unit
		}
		p.paragraph("", fmt.Sprintf("%s (down: %s; across: %s)", title, s.Heads[0].Label, s.Heads[1].Label))
		p.fold(s.gridColumns(answer, scale, p.opt))
	}
}

// gridColumns returns the first input's column and one for each value of the
// second, under that value.
func (s *Sheet) gridColumns(answer int, scale quantity.Scale, opt Options) []column {
	across := 1
	for across < len(s.Lines) && same(s.Lines[across].Cells[0], s.Lines[0].Cells[0]) {
		across++
	}
	down, head := *s, *s
	down.Lines, head.Lines = nil, s.Lines[:across]
	for i := 0; i < len(s.Lines); i += across {
		down.Lines = append(down.Lines, s.Lines[i])
	}
	first := column{parts: down.parts(0, opt), input: true}
	values := head.parts(1, opt)
	for _, v := range values {
		if v.unit != "" {
			first.label = append(first.label, v.unit+" across")
		}
	}
	all := []column{first}
	for k := range across {
		c := column{parts: []part{{}}}
		for _, v := range values {
			c.label = append(c.label, v.cells[k])
		}
		for i := k; i < len(s.Lines); i += across {
			text := scale.Text(s.Lines[i].Cells[answer].Number)
			if s.Lines[i].Failure != "" {
				text = "-"
			}
			c.parts[0].cells = append(c.parts[0].cells, text)
		}
		all = append(all, c)
	}
	return all
}

func same(a, b calc.Value) bool {
	return a.IsText == b.IsText && a.Text == b.Text && (a.IsText || a.Number == b.Number)
}
