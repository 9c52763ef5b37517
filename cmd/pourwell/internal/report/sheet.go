package report

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// A Sheet is rows to be laid out for people.
type Sheet struct {
	Heads []Head
	Lines []Line
	Grid  bool   // the rows are all combinations of two inputs
	Lead  string // key of the answer that a grid shows; "" for every one
	Totals
}

// A Head is the head of a column.
type Head struct {
	Key   string
	Label string
	Input bool // its values were typed
}

// A Line is one row, and why it failed.
type Line struct {
	Cells   []calc.Value
	Failure string
}

// Text writes rows as a table, folded where it is wider than the text; those
// over two inputs as a grid.
func (s *Sheet) Text(w io.Writer, in *calc.Values, opt Options) error {
	p := printer{w: bufio.NewWriter(Plain(w, opt.ASCII)), in: in, out: &calc.Result{}, opt: opt}
	p.paragraph("", s.title(in, opt))
	if s.Grid {
		for i, h := range s.Heads {
			if !h.Input && (s.Lead == "" || h.Key == s.Lead) {
				s.grid(&p, i)
			}
		}
	} else {
		p.gap()
		p.fold(s.columns(in, opt.Units))
	}
	s.after(&p)
	return p.w.Flush()
}

// Circumstances says on one line what an answer, or all rows of s, rest on: the
// calculation, what was typed for it, and what is assumed.
func Circumstances(in *calc.Values, s *Sheet, opt Options) string {
	if s == nil {
		s = &Sheet{}
	}
	t := s.title(in, opt)
	if assumed := in.Assumptions(); len(assumed) > 0 {
		t += "; assumed: " + strings.Join(assumed, ", ")
	}
	if s.Failed > 0 {
		t += fmt.Sprintf("; %d of %d points have no answer", s.Failed, s.Rows)
	}
	return Sentence(t, in, &calc.Result{}, opt.Units)
}

// title says what all rows have in common.
func (s *Sheet) title(in *calc.Values, opt Options) string {
	var fixed []string
	for _, g := range in.Typed() {
		if !s.varies(g.Words) {
			fixed = append(fixed, g.Sentence+opt.plusMinus(g.Name))
		}
	}
	t := in.Calculation().Title()
	if len(fixed) > 0 {
		t += ": " + strings.Join(fixed, ", ")
	}
	return t
}

// plusMinus returns the tolerance of an input behind its value, "" if it has
// none.
func (o *Options) plusMinus(input string) string {
	if o.Spreads != nil {
		for _, in := range o.Spreads.Inputs {
			if in.Name == input {
				return fmt.Sprintf(" ± {%v %s}", in.Size, suffixOf(in.Key))
			}
		}
	}
	return ""
}

func (s *Sheet) varies(words string) bool {
	for _, h := range s.Heads {
		if h.Input && h.Label == words {
			return true
		}
	}
	return false
}

// mostFailures is how many different failures text tells.
const mostFailures = 4

// after writes what stands below the rows.
func (s *Sheet) after(p *printer) {
	var told []string
	for _, l := range s.Lines {
		if l.Failure == "" || slices.Contains(told, l.Failure) {
			continue
		}
		if len(told) == mostFailures {
			told = append(told, "others for other reasons; --format csv gives that of each row")
			break
		}
		told = append(told, l.Failure)
	}
	p.list("Failed: ", told)
	p.foot(s.Notes, s.Cautions)
}

// A Curve is a column against the first one.
type Curve struct {
	X, Y  []float64
	Names []string // of the places 0, 1, 2 … if the first column is words
}

// Curve returns column i over the first, of rows k, k+across, k+2 across …: in
// a grid, of the k'th value of the second input.
func (s *Sheet) Curve(i, k, across int) Curve {
	var c Curve
	for n := k; n < len(s.Lines); n += across {
		cells := s.Lines[n].Cells
		x := cells[0].Number
		if cells[0].IsText {
			x = float64(len(c.Names))
			c.Names = append(c.Names, cells[0].Text)
		}
		c.X, c.Y = append(c.X, x), append(c.Y, cells[i].Number)
	}
	return c
}

// Name returns the value of column i in row k as words.
func (s *Sheet) Name(i, k int, opt Options) string {
	c := s.Lines[k].Cells[i]
	if c.IsText {
		return c.Text
	}
	return quantity.Show(suffixOf(s.Heads[i].Key), c.Number, opt.Units)
}
