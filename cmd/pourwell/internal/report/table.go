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
	}
	all[0].input = true
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
	suffix := suffixOf(key)
	numbers, words := make([]float64, len(rows)), false
	for n, r := range rows {
		v, ok := r[i].(float64)
		numbers[n], words = v, words || !ok
	}
	inWords := words || suffix == "s"
	c := newColumn(p.label(key), suffix, numbers, p.opt.Units, func(n int) (string, bool) {
		text, ok := rows[n][i].(string)
		switch {
		case ok:
			return p.sentence(text), true
		case inWords:
			return quantity.Show(suffix, numbers[n], p.opt.Units), true
		}
		return "", false
	})
	if inWords {
		c.parts = c.parts[:1]
		c.parts[0].unit, c.parts[0].left = "", words
	}
	return c
}

// records writes each row as a block of its own.
func (p *printer) records(t calc.Table) {
	const margin = 5 // of the fields; their further lines stand two deeper
	for n, row := range t.Rows {
		lead := fmt.Sprintf("%*d. ", margin-2, n+1)
		for i, cell := range row {
			text, ok := cell.(string)
			if v, number := cell.(float64); number {
				us, metric := quantity.Columns(suffixOf(t.Columns[i]), v)
				text, ok = strings.Join(oneOf(p.opt.Units, us, metric), " / "), true
			}
			if text = p.sentence(text); !ok || text == "" {
				continue
			}
			fmt.Fprintln(p.w, lead+Wrap(p.label(t.Columns[i])+": "+text, margin, margin+2))
			lead = strings.Repeat(" ", margin)
		}
	}
}
