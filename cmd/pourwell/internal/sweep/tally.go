package sweep

import (
	"fmt"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// A Tally says how a stream went.
type Tally struct {
	Rows, Failed int
	First        error // of the first row that failed
	FirstRow     int   // its place, from 1

	notes, cautions []said
}

// said is a sentence of a row, kept the first time that its wording comes up.
type said struct {
	wording string
	text    string // with the row's numbers
	row     int
}

// Notes returns each wording once, with the numbers of the first row that says
// it.
func (t *Tally) Notes() []string { return sentences(t.notes) }

// Cautions returns each wording once, with the numbers of the first row that
// says it.
func (t *Tally) Cautions() []string { return sentences(t.cautions) }

func sentences(all []said) []string {
	var texts []string
	for _, s := range all {
		if strings.Contains(s.text, "{") {
			s.text = fmt.Sprintf("Row %d: %s", s.row, s.text)
		}
		texts = append(texts, s.text)
	}
	return texts
}

// count adds one row.
func (t *Tally) count(err error, v *calc.Values, out *calc.Result) {
	t.Rows++
	if err != nil {
		if t.Failed == 0 {
			t.First, t.FirstRow = err, t.Rows
		}
		t.Failed++
		return
	}
	t.notes = t.say(t.notes, out.Notes, v, out)
	t.cautions = t.say(t.cautions, out.Cautions, v, out)
}

func (t *Tally) say(all []said, sentences []string, v *calc.Values, out *calc.Result) []said {
	for _, s := range sentences {
		if !known(all, s) {
			all = append(all, said{s, out.Quote(s, v), t.Rows})
		}
	}
	return all
}

// add adds the rows that follow those of t.
func (t *Tally) add(o *Tally) {
	if t.Failed == 0 && o.Failed > 0 {
		t.First, t.FirstRow = o.First, t.Rows+o.FirstRow
	}
	t.notes = t.merge(t.notes, o.notes)
	t.cautions = t.merge(t.cautions, o.cautions)
	t.Rows += o.Rows
	t.Failed += o.Failed
}

func (t *Tally) merge(all, more []said) []said {
	for _, s := range more {
		if !known(all, s.wording) {
			s.row += t.Rows
			all = append(all, s)
		}
	}
	return all
}

func known(all []said, wording string) bool {
	for i := range all {
		if sameWording(all[i].wording, wording) {
			return true
		}
	}
	return false
}

// sameWording compares a and b but for what is between braces.
func sameWording(a, b string) bool {
	for {
		beforeA, restA, quotesA := strings.Cut(a, "{")
		beforeB, restB, quotesB := strings.Cut(b, "{")
		if beforeA != beforeB || quotesA != quotesB {
			return false
		}
		if !quotesA {
			return true
		}
		_, a, _ = strings.Cut(restA, "}")
		_, b, _ = strings.Cut(restB, "}")
	}
}
