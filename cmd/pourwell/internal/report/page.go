package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// A Page is a document of several blocks, such as the plan of a day. Its
// sentences and cells quote numbers as {38.5 c}; see [Sentence].
type Page struct {
	Title  string
	Blocks []Block
}

// A Block is a heading with sentences under it, then rows in columns.
type Block struct {
	Heading string
	Lines   []string   // sentences, each a paragraph
	Bullets []string   // sentences, each an item
	Columns []string   // heads of Rows; none for rows without heads
	Rows    [][]string // cells
}

// PageText writes p as text that fits 80 columns.
func PageText(w io.Writer, p Page, opt Options) error {
	t := printer{w: bufio.NewWriter(Plain(w, opt.ASCII)), out: &calc.Result{}, opt: opt}
	t.started = true
	fmt.Fprintln(t.w, Wrap(t.sentence(p.Title), 0, 0))
	for _, b := range p.Blocks {
		t.gap()
		if b.Heading != "" {
			fmt.Fprintln(t.w, strings.ToUpper(b.Heading))
		}
		for _, s := range b.Lines {
			fmt.Fprintln(t.w, Wrap("  "+t.sentence(s), 0, 2))
		}
		for _, s := range b.Bullets {
			fmt.Fprintln(t.w, Wrap("  - "+t.sentence(s), 0, 4))
		}
		t.rows(layout{margin: 2, gap: 2, wrap: true}, t.pageRows(b))
	}
	return t.w.Flush()
}

// pageRows returns the rows of b with their heads, numbers written out.
func (p *printer) pageRows(b Block) [][]string {
	var rows [][]string
	if len(b.Columns) > 0 && len(b.Rows) > 0 {
		rows = append(rows, b.Columns)
	}
	for _, r := range b.Rows {
		row := make([]string, len(r))
		for i, c := range r {
			row[i] = p.sentence(c)
		}
		rows = append(rows, row)
	}
	return rows
}

// Written returns s with the numbers it quotes written in the units of sys.
func Written(s string, sys quantity.System) string { return Sentence(s, nil, &calc.Result{}, sys) }
