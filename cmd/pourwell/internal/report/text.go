package report

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// Options say how a person wants to read an answer.
type Options struct {
	Units     quantity.System
	Explain   bool          // show the working
	ASCII     bool          // the terminal shows no other letters
	SafeCells bool          // keep a spreadsheet from taking a text for a formula
	Spreads   *calc.Spreads // what tolerances make of the answers, nil if none were typed
}

// Text writes the answer first, in plain words; then its numbers, what it
// rests on, and what can hurt someone.
func Text(w io.Writer, in *calc.Values, out *calc.Result, opt Options) error {
	p := printer{w: bufio.NewWriter(Plain(w, opt.ASCII)), in: in, out: out, opt: opt}
	p.paragraph("", out.Answer)
	p.answers()
	for _, t := range out.Tables {
		p.table(t)
	}
	if opt.Explain {
		p.working(out.Steps())
	}
	p.spreads()
	p.foot(out.Notes, out.Cautions)
	return p.w.Flush()
}

type printer struct {
	w       *bufio.Writer
	in      *calc.Values
	out     *calc.Result
	opt     Options
	started bool
}

// gap separates two blocks by a blank line.
func (p *printer) gap() {
	if p.started {
		fmt.Fprintln(p.w)
	}
	p.started = true
}

func (p *printer) sentence(s string) string {
	return p.letters(Sentence(s, p.in, p.out, p.opt.Units))
}

func (p *printer) paragraph(label, s string) {
	if s == "" {
		return
	}
	p.gap()
	fmt.Fprintln(p.w, Wrap(label+p.sentence(s), 0, len(label)))
}

func (p *printer) list(label string, sentences []string) {
	for i, s := range sentences {
		if i == 0 {
			p.gap()
		}
		fmt.Fprintln(p.w, Wrap(label+p.sentence(s), 0, len(label)))
	}
}

// foot writes what an answer, or all rows, rest on, and what can hurt someone.
func (p *printer) foot(notes, cautions []string) {
	if assumed := p.in.Assumptions(); len(assumed) > 0 {
		p.paragraph("Assumed: ", strings.Join(assumed, ", ")+".")
	}
	p.list("Note: ", notes)
	p.list("Caution: ", cautions)
}

// answers writes the numbers in columns: label, US units, metric units. Metric
// numbers that do not fit the line stand below.
func (p *printer) answers() {
	bands := map[string]*calc.Band{}
	for _, b := range p.out.Bands() {
		if !math.IsNaN(b.Low) && !math.IsNaN(b.High) {
			bands[b.Key] = &b
		}
	}
	var rows [][]string
	for _, v := range p.out.Values {
		row := []string{p.label(v.Key), v.Text}
		if v.IsText {
			rows = append(rows, row)
			continue
		}
		suffix := suffixOf(v.Key)
		us, metric := quantity.Columns(suffix, v.Number)
		rows = append(rows, append(row[:1], oneOf(p.opt.Units, us, metric)...))
		rows = append(rows, p.bounds(v.Key, suffix, bands[v.Key])...)
	}
	if len(rows) == 0 {
		return
	}
	var widths [3]int
	for _, row := range rows {
		for i := range row {
			if row[i] = p.letters(row[i]); i == 0 || len(row) == 3 {
				widths[i] = max(widths[i], letters(row[i]))
			}
		}
	}
	l := layout{margin: 2, gap: 2, wrap: true}
	if l.margin+widths[0]+l.gap+widths[1]+l.gap+widths[2] > width {
		for i, row := range rows {
			rows[i] = []string{row[0], strings.Join(row[1:], "\n")}
		}
	}
	p.gap()
	p.rows(l, rows)
}

func (p *printer) label(key string) string {
	return p.letters(Label(p.in.Calculation(), key))
}

// Label returns the words for a key of c.
func Label(c *calc.Calculation, key string) string {
	for _, k := range c.Results {
		if k.Key == key && k.Label != "" {
			return k.Label
		}
	}
	for _, end := range []string{"low", "high"} { // of a spread
		if rest, ok := strings.CutPrefix(key, end+"_"); ok {
			return Label(c, rest) + ", " + end
		}
	}
	return Words(key)
}

// Words turns a key into words: "ice_left_kg" into "ice left".
func Words(key string) string {
	name, _ := quantity.SplitKey(key)
	return strings.ReplaceAll(strings.ReplaceAll(name, "_", " "), "co2", "CO2")
}

// Capital returns s with its first letter large.
func Capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// widestStep is the width beyond which the equation of a step takes a line of
// its own.
const widestStep = 30

// working writes the steps so that a reader can redo the sum: at the left what
// is computed, at the right what it is and where the rule comes from.
func (p *printer) working(steps []volume.Step) {
	if len(steps) == 0 {
		return
	}
	p.gap()
	fmt.Fprintln(p.w, "Working")
	rows := make([][]string, len(steps))
	for i, s := range steps {
		sum := fmt.Sprintf("%s = %.6g %s", s.Symbol, s.Value, quantity.Symbol(s.Suffix))
		if math.IsNaN(s.Value) {
			sum = s.Symbol + " unknown"
		}
		what := s.Name
		if s.Source != "" {
			what += "; " + s.Source
		}
		rows[i] = []string{strings.TrimRight(p.letters(sum), " "), p.letters(what)}
	}
	p.rows(layout{margin: 2, gap: 2, wrap: true, widest: widestStep}, rows)
}
