package report

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// Options say how a person wants to read an answer.
type Options struct {
	Units   quantity.System
	Explain bool          // show the working
	ASCII   bool          // the terminal shows no other letters
	Spreads *calc.Spreads // what tolerances make of the answers, nil if none were typed
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
	if assumed := in.Assumptions(); len(assumed) > 0 {
		p.paragraph("Assumed: ", strings.Join(assumed, ", ")+".")
	}
	p.list("Note: ", out.Notes)
	p.list("Caution: ", slices.Concat(out.Cautions, in.Calculation().Cautions))
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

// answers writes the numbers in columns: label, US units, metric units.
func (p *printer) answers() {
	bands := map[string]*calc.Band{}
	for _, b := range p.out.Bands() {
		bands[b.Key] = &b
	}
	var rows [][]string
	for _, v := range p.out.Values {
		label := p.label(v.Key)
		if v.IsText {
			rows = append(rows, []string{label, v.Text})
			continue
		}
		_, suffix := quantity.SplitKey(v.Key)
		rows = append(rows, p.columns(label, suffix, v.Number))
		rows = append(rows, p.bounds(v.Key, suffix, bands[v.Key])...)
	}
	if len(rows) > 0 {
		p.gap()
		p.grid(rows, 2)
	}
}

// columns returns a row of the answers in the units asked for.
func (p *printer) columns(label, suffix string, v float64) []string {
	us, metric := quantity.Columns(suffix, v)
	switch {
	case us == metric || p.opt.Units == quantity.US:
		return []string{label, us}
	case p.opt.Units == quantity.Metric:
		return []string{label, metric}
	}
	return []string{label, us, metric}
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

// grid writes rows in aligned columns with a margin of indent blanks. What
// does not fit the line beside the second column goes below it.
func (p *printer) grid(rows [][]string, indent int) {
	var widths []int
	for _, row := range rows {
		for i := range row {
			row[i] = p.letters(row[i])
		}
	}
	for _, row := range rows {
		for i, cell := range row {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			if i < len(row)-1 || len(row) > 2 {
				widths[i] = max(widths[i], utf8.RuneCountInString(cell))
			}
		}
	}
	folded := indent-2 > width-sum(widths)-2*len(widths)
	for _, row := range rows {
		line := strings.Repeat(" ", indent)
		for i, cell := range row {
			if i > 1 && folded {
				line += "\n" + strings.Repeat(" ", indent+widths[0]+2)
			}
			line += cell
			if i < len(row)-1 && !(i > 0 && folded) {
				line += strings.Repeat(" ", max(0, widths[i]-utf8.RuneCountInString(cell))+2)
			}
		}
		fmt.Fprintln(p.w, strings.TrimRight(line, " "))
	}
}

func sum(all []int) int {
	total := 0
	for _, n := range all {
		total += n
	}
	return total
}

// widestStep is the width beyond which the equation of a step takes a line of
// its own.
const widestStep = 32

// working writes the steps so that a reader can redo the sum: at the left what
// is computed, at the right what it is and where the rule comes from.
func (p *printer) working(steps []volume.Step) {
	if len(steps) == 0 {
		return
	}
	p.gap()
	fmt.Fprintln(p.w, "Working")
	sums, margin := make([]string, len(steps)), 0
	for i, s := range steps {
		sums[i] = strings.TrimRight(p.letters(fmt.Sprintf("  %s = %.6g %s", s.Symbol, s.Value, quantity.Symbol(s.Suffix))), " ")
		if math.IsNaN(s.Value) {
			sums[i] = p.letters(fmt.Sprintf("  %s unknown", s.Symbol))
		}
		if n := utf8.RuneCountInString(sums[i]); n <= widestStep {
			margin = max(margin, n+2)
		}
	}
	for i, s := range steps {
		what := s.Name
		if s.Source != "" {
			what += "; " + s.Source
		}
		fmt.Fprint(p.w, sums[i])
		n := utf8.RuneCountInString(sums[i])
		if n+2 > margin {
			fmt.Fprintln(p.w)
			n = 0
		}
		fmt.Fprintln(p.w, strings.Repeat(" ", margin-n)+Wrap(p.letters(what), margin, margin))
	}
}
