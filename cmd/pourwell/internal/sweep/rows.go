package sweep

import (
	"errors"
	"math"
	"slices"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// A Row is one run: the values of its columns, or why it failed. A column
// without a value holds NaN, or no text.
type Row struct {
	Cells []calc.Value
	Err   error
}

// Rows are the runs of a sweep or batch, ready to be streamed.
type Rows struct {
	Columns []Column
	Lead    string // key of the leading answer

	plan   *Plan
	source source
}

// A Column is one column of the rows.
type Column struct {
	Key   string
	Input *calc.Input // nil for an answer

	answer string // key of the answer; of an input "" unless they share the column
	copied int    // in a batch: 1 + the place of a column that is only copied
}

// Copied reports whether the column is only copied from a file.
func (c *Column) Copied() bool { return c.copied > 0 }

// Varies reports whether the input whose key in JSON is key changes from row
// to row.
func (r *Rows) Varies(key string) bool {
	for i := range r.Columns {
		if in := r.Columns[i].Input; in != nil && in.InputKey() == key {
			return true
		}
	}
	return false
}

// A source gives jobs, each some rows to be run by one worker.
type source interface {
	next() (job, error) // nil after the last
}

type job interface {
	len() int
	fill(i int, v *calc.Values) error // puts the i'th row's inputs into v
	text(i, column int) string        // of a column that is only copied
}

// Rows returns the runs of p over all combinations of its axes, the last axis
// changing fastest. Only the answers called show are kept, if any are named;
// one that the calculation does not have is a [*calc.UsageError].
func (p *Plan) Rows(show []string) (*Rows, error) {
	grid, err := newGrid(p.Axes)
	if err != nil {
		return nil, err
	}
	r := &Rows{plan: p, source: grid}
	var inputs []Column
	for _, a := range p.Axes {
		inputs = append(inputs, Column{Input: a.Input})
	}
	return r, r.choose(inputs, &corners{axes: p.Axes}, show)
}

// Len returns the number of rows, −1 if only the end of the file will tell.
func (r *Rows) Len() int {
	if g, ok := r.source.(*grid); ok {
		return g.total
	}
	return -1
}

// choose runs a few rows to see which answers there are, and sets the columns.
// An input whose key is also an answer's shares the column if they are always
// the same number, else it is called input_KEY.
func (r *Rows) choose(inputs []Column, probes job, show []string) error {
	v, run := r.plan.worker()
	var out calc.Result
	var answers []Column
	differs := map[string]bool{}
	var unfit error // what was typed cannot be run at all
	for i := range probes.len() {
		v.Assign(r.plan.Base)
		if probes.fill(i, v) != nil {
			continue
		}
		for c := range inputs {
			if cell, ok := inputs[c].value(v); ok || inputs[c].Key == "" {
				inputs[c].Key = cell.Key
			}
		}
		out.Reset()
		if err := run(v, &out); err != nil {
			if unfit == nil {
				unfit = err
			}
			continue
		}
		r.plan.Base.Share(v)
		if r.Lead == "" {
			r.Lead = out.Lead()
		}
		for _, a := range out.Values {
			answers = appendKey(answers, a.Key)
			for c := range inputs {
				if cell, _ := inputs[c].value(v); inputs[c].Key == a.Key && !near(cell, a) {
					differs[a.Key] = true
				}
			}
		}
	}
	var usage *calc.UsageError
	if _, file := r.source.(*records); !file && len(answers) == 0 && errors.As(unfit, &usage) {
		return usage
	}
	answers, err := shown(answers, show, r.plan.Base.Calculation())
	for c := range inputs {
		for i, a := range answers {
			if a.Key != inputs[c].Key {
				continue
			}
			if differs[a.Key] {
				inputs[c].Key = "input_" + a.Key
			} else {
				inputs[c].answer = a.Key
				answers = append(answers[:i], answers[i+1:]...)
			}
			break
		}
	}
	r.Columns = append(inputs, besideLead(answers, r.Lead)...)
	return err
}

// besideLead moves the ends of the leading answer's spread behind it.
func besideLead(answers []Column, lead string) []Column {
	ends := []Column{}
	rest := slices.DeleteFunc(slices.Clone(answers), func(c Column) bool {
		is := c.Key == "low_"+lead || c.Key == "high_"+lead
		if is {
			ends = append(ends, c)
		}
		return is
	})
	for i, c := range rest {
		if c.Key == lead {
			return slices.Insert(rest, i+1, ends...)
		}
	}
	return answers
}

func appendKey(columns []Column, key string) []Column {
	for _, c := range columns {
		if c.Key == key {
			return columns
		}
	}
	return append(columns, Column{Key: key, answer: key})
}

func near(a, b calc.Value) bool {
	if a.IsText || b.IsText {
		return a.IsText == b.IsText && a.Text == b.Text
	}
	return math.Abs(a.Number-b.Number) <= 1e-9*math.Max(math.Abs(a.Number), 1)
}

// value returns the input's value in v.
func (c *Column) value(v *calc.Values) (calc.Value, bool) {
	if c.Input == nil {
		return calc.Value{Key: c.Key, IsText: true}, false
	}
	return v.Cell(c.Input.Name)
}

// fillRow sets the cells of row from what was run.
func (r *Rows) fillRow(row *Row, v *calc.Values, out *calc.Result) {
	at := 0
	for i := range r.Columns {
		c := &r.Columns[i]
		cell := &row.Cells[i]
		*cell = calc.Value{Key: c.Key, Number: math.NaN()}
		if c.Input != nil {
			*cell, _ = c.value(v)
			cell.Key = c.Key
		}
		if row.Err != nil || c.answer == "" {
			continue
		}
		for n := range out.Values { // answers mostly come in the order of the columns
			if a := &out.Values[(at+n)%len(out.Values)]; a.Key == c.answer {
				*cell = *a
				at += n + 1
				break
			}
		}
	}
}

// worker returns values and a run function for one goroutine. With tolerances
// the run adds the ends of the leading answer's spread, as low_KEY and
// high_KEY.
func (p *Plan) worker() (*calc.Values, func(*calc.Values, *calc.Result) error) {
	v := p.Base.Clone()
	run := v.Calculation().Answer
	if len(p.Tolerances) == 0 {
		return v, run
	}
	trial := p.Base.Clone()
	return v, func(v *calc.Values, out *calc.Result) error {
		if err := run(v, out); err != nil {
			return err
		}
		lead := out.Lead()
		trial.Assign(v)
		s := propagate(trial, p.Tolerances, out, []string{lead})[0]
		out.Set("low_"+lead, s.Low())
		out.Set("high_"+lead, s.High())
		return nil
	}
}
