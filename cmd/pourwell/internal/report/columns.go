package report

import (
	"math"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// columns turns the sheet around, each column in the units asked for. An
// answer that only repeats what was typed is left out.
func (s *Sheet) columns(in *calc.Values, opt Options) []column {
	var all []column
	for i, h := range s.Heads {
		if !h.Input && (s.repeats(i) || s.restates(i, in)) {
			continue
		}
		c := column{input: h.Input, parts: s.parts(i, opt), label: []string{h.Label}}
		c.fitLabel()
		all = append(all, c)
	}
	return all
}

// repeats reports whether answer i is the same number as an input of the same
// unit in every row.
func (s *Sheet) repeats(i int) bool {
	_, suffix := quantity.SplitKey(s.Heads[i].Key)
	for k, h := range s.Heads[:i] {
		if _, other := quantity.SplitKey(h.Key); !h.Input || other != suffix {
			continue
		}
		same := true
		for _, l := range s.Lines {
			a, b := l.Cells[i], l.Cells[k]
			same = same && (l.Failure != "" || !a.IsText && alike(a.Number, b.Number))
		}
		if same {
			return true
		}
	}
	return false
}

// restates reports whether answer i is the same number in every row as an input
// that the title has told.
func (s *Sheet) restates(i int, in *calc.Values) bool {
	_, suffix := quantity.SplitKey(s.Heads[i].Key)
	for _, t := range in.Typed() {
		if _, other := quantity.SplitKey(t.Value.Key); suffix == "" || other != suffix || s.varies(t.Words) {
			continue
		}
		same := true
		for _, l := range s.Lines {
			same = same && (l.Failure != "" || alike(l.Cells[i].Number, t.Value.Number))
		}
		if same {
			return true
		}
	}
	return false
}

func alike(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(1, math.Abs(a)) }

// parts writes the numbers of column i.
func (s *Sheet) parts(i int, opt Options) []part {
	us, metric := s.scales(i)
	scales := opt.scales(us, metric)
	parts := make([]part, len(scales))
	for k, scale := range scales {
		parts[k].unit = scale.Unit
		for _, l := range s.Lines {
			c := l.Cells[i]
			switch {
			case c.IsText:
				parts[k].left = true
				parts[k].cells = append(parts[k].cells, c.Text)
			case l.Failure != "" && !s.Heads[i].Input:
				word := "-"
				if i > 0 && s.Heads[i-1].Input { // said once in a row
					word = "failed"
				}
				parts[k].cells = append(parts[k].cells, word)
			default:
				parts[k].cells = append(parts[k].cells, scale.Text(c.Number))
			}
		}
	}
	return parts
}

// scales returns the scales that suit the numbers of column i.
func (s *Sheet) scales(i int) (us, metric quantity.Scale) {
	values := make([]float64, len(s.Lines))
	for n, l := range s.Lines {
		values[n] = l.Cells[i].Number
	}
	_, suffix := quantity.SplitKey(s.Heads[i].Key)
	return quantity.ScalesOf(suffix, values)
}
