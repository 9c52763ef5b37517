package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// curveRows is how many rows of a course text shows; JSON and CSV have all.
const curveRows = 13

// longWords is the width beyond which a column of words is told row by row.
const longWords = 24

// table writes a list of rows under its key: in columns, or as records if it
// tells in sentences.
func (p *printer) table(t calc.Table) {
	if len(t.Rows) == 0 {
		return
	}
	p.gap()
	fmt.Fprintf(p.w, "%s\n", Capital(p.label(t.Key)))
	rows := t.Rows
	if t.Curve {
		rows = thinned(rows)
	}
	for _, r := range rows {
		for _, c := range r {
			if s, ok := c.(string); ok && utf8.RuneCountInString(p.sentence(s)) > longWords {
				p.records(t)
				return
			}
		}
	}
	all := make([]column, len(t.Columns))
	for i, key := range t.Columns {
		all[i] = p.tableColumn(key, i, rows)
		all[i].input = i == 0
	}
	p.started = false // the rows follow their title without a gap
	p.fold(all)
}

// thinned keeps about curveRows rows, the last among them.
func thinned(rows [][]any) [][]any {
	if len(rows) <= curveRows {
		return rows
	}
	every := (len(rows) + curveRows - 2) / (curveRows - 1)
	var kept [][]any
	for i, r := range rows {
		if i%every == 0 || i == len(rows)-1 {
			kept = append(kept, r)
		}
	}
	return kept
}

// tableColumn turns column i of rows into a column of text. Times are written
// out, each in its own units.
func (p *printer) tableColumn(key string, i int, rows [][]any) column {
	_, suffix := quantity.SplitKey(key)
	var numbers []float64
	words := false
	for _, r := range rows {
		v, ok := r[i].(float64)
		words = words || !ok
		numbers = append(numbers, v)
	}
	c := column{label: []string{p.label(key)}}
	if words || suffix == "s" {
		c.parts = []part{{left: words}}
		for k, r := range rows {
			text, ok := r[i].(string)
			if !ok {
				text = quantity.Show(suffix, numbers[k], p.opt.Units)
			}
			c.parts[0].cells = append(c.parts[0].cells, p.sentence(text))
		}
	} else {
		us, metric := quantity.ScalesOf(suffix, numbers)
		for _, scale := range p.opt.scales(us, metric) {
			col := part{unit: scale.Unit}
			for _, v := range numbers {
				col.cells = append(col.cells, scale.Text(v))
			}
			c.parts = append(c.parts, col)
		}
	}
	c.fitLabel()
	return c
}

func (p *printer) cells(columns []string, row []any) []string {
	cells := make([]string, len(row))
	for i, c := range row {
		switch c := c.(type) {
		case float64:
			_, suffix := quantity.SplitKey(columns[i])
			us, metric := quantity.Columns(suffix, c)
			cells[i] = us
			if p.opt.Units == quantity.Metric {
				cells[i] = metric
			} else if p.opt.Units == quantity.Both && us != metric {
				cells[i] = us + " / " + metric
			}
		case string:
			cells[i] = p.sentence(c)
		}
	}
	return cells
}

// records writes each row as a block of its own.
func (p *printer) records(t calc.Table) {
	const margin = 5 // of the fields; their further lines stand two deeper
	for n, row := range t.Rows {
		lead := fmt.Sprintf("%*d. ", margin-2, n+1)
		for i, cell := range p.cells(t.Columns, row) {
			if cell == "" {
				continue
			}
			field := p.label(t.Columns[i]) + ": " + cell
			fmt.Fprintln(p.w, lead+Wrap(field, margin, margin+2))
			lead = strings.Repeat(" ", margin)
		}
	}
}
