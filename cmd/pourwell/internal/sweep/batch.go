package sweep

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// copiedNames are columns that a file may have for its reader's sake. They are
// copied to the answer.
var copiedNames = []string{"name", "note", "id"}

// Batch returns the runs of p over the rows of a CSV file. Its header names
// inputs as the flags do; a unit may stand in the header, "temp (F)", or in
// each cell. An empty cell leaves the input to the flag or its default. A
// column of an input that repeats may itself be repeated. Columns called name,
// note or id are copied.
//
// A header that cannot be read is a [*calc.UsageError]; a cell that cannot
// fails its row.
func (p *Plan) Batch(file io.Reader, show []string) (*Rows, error) {
	if len(p.Axes) > 0 || len(p.Tolerances) > 0 {
		return nil, &calc.UsageError{What: "a file of rows goes with neither ranges nor tolerances", Hint: "put the values into the file"}
	}
	f := &records{calculation: p.Base.Calculation()}
	if err := f.open(file); err != nil {
		return nil, err
	}
	var columns []Column
	for i, c := range f.columns {
		switch {
		case c.input == nil:
			columns = append(columns, Column{Key: c.name, copied: i + 1})
		case !slices.ContainsFunc(columns, func(have Column) bool { return have.Input == c.input }):
			columns = append(columns, Column{Input: c.input})
		}
	}
	first, err := f.take(64)
	if err != nil {
		return nil, err
	}
	f.ahead = first
	r := &Rows{plan: p, source: f}
	if err := r.choose(columns, &cells{f.columns, first}, show); err != nil {
		return nil, err
	}
	for i := range r.Columns { // an input that no row gives still has its column
		if c := &r.Columns[i]; c.Key == "" {
			c.Key = c.Input.CellKey(false)
		}
	}
	return r, nil
}

// records are the rows of a CSV file.
type records struct {
	calculation *calc.Calculation
	reader      *reader
	columns     []fileColumn
	ahead       []fileRow // read, not yet handed out
	done        int
	ended       error
}

type fileColumn struct {
	name  string
	unit  string
	input *calc.Input // nil for one that is copied
}

// mostColumns is more than any header has.
const mostColumns = 1000

func (f *records) open(file io.Reader) error {
	f.reader = newReader(file)
	header, err := f.reader.read()
	var usage *calc.UsageError
	switch {
	case errors.Is(err, io.EOF):
		return &calc.UsageError{What: "the file has no header", Hint: "its first line names the inputs, for example " + f.exampleHeader()}
	case errors.As(cmp.Or(err, header.err), &usage):
		return &calc.UsageError{What: "the header cannot be read: " + usage.What, Hint: usage.Hint}
	case err != nil:
		return &calc.UsageError{What: fmt.Sprintf("the header cannot be read: %v", err), Hint: "check the name of the file"}
	case len(header.cells) > mostColumns:
		return &calc.UsageError{What: fmt.Sprintf("the header has %d columns", len(header.cells)), Hint: fmt.Sprintf("%d are read", mostColumns)}
	}
	for _, h := range header.cells {
		c, err := f.column(h)
		if err != nil {
			return err
		}
		for _, have := range f.columns {
			if have.name == c.name && (c.input == nil || !c.input.Repeat) {
				return &calc.UsageError{What: fmt.Sprintf("the header has %q twice", c.name), Hint: "keep one"}
			}
		}
		f.columns = append(f.columns, c)
	}
	return nil
}

// column reads one cell of the header: "temp", "temp F", "temp (F)", "temp [F]".
func (f *records) column(text string) (fileColumn, error) {
	cut := func(r rune) bool { return strings.ContainsRune(" ()[]", r) }
	words := strings.FieldsFunc(strings.TrimLeft(strings.TrimSpace(text), "-"), cut)
	if len(words) == 0 || len(words) > 2 {
		return fileColumn{}, f.unknown(text)
	}
	c := fileColumn{name: strings.ToLower(strings.ReplaceAll(words[0], "_", "-"))}
	c.input = f.calculation.Input(c.name)
	if c.input == nil {
		if !slices.Contains(copiedNames, c.name) || len(words) > 1 {
			return c, f.unknown(words[0])
		}
		return c, nil
	}
	if len(words) == 2 {
		c.unit = words[1]
		if _, err := quantity.Parse(c.input.Kind, "1"+c.unit); err != nil {
			return c, &calc.UsageError{What: fmt.Sprintf("column %q: %v", text, err)}
		}
	}
	return c, nil
}

func (f *records) unknown(name string) error {
	names := f.calculation.InputNames()
	hint := cmp.Or(calc.Suggest(name, names), "columns are named as the flags: "+strings.Join(names, ", ")+"; name, note and id are copied")
	return &calc.UsageError{What: fmt.Sprintf("column %q is no input of %s", name, f.calculation.Title()), Hint: hint}
}

func (f *records) exampleHeader() string {
	names := f.calculation.InputNames()
	return strings.Join(names[:min(3, len(names))], ",")
}

// take reads up to n rows. One that cannot be read is a row that fails; if the
// file cannot be read on, the error comes once the rows before it are taken.
func (f *records) take(n int) ([]fileRow, error) {
	var all []fileRow
	for len(all) < n && f.ended == nil {
		row, err := f.reader.read()
		var usage *calc.UsageError
		if f.ended = err; errors.As(err, &usage) {
			row, f.ended = fileRow{err: usage}, io.EOF
		} else if err != nil {
			break
		}
		all = append(all, row)
	}
	if len(all) == 0 && f.ended != nil && !errors.Is(f.ended, io.EOF) {
		return nil, fmt.Errorf("the file cannot be read: %w", f.ended)
	}
	return all, nil
}

func (f *records) next() (job, error) {
	n := piece(f.done)
	rows := f.ahead[:min(n, len(f.ahead))]
	f.ahead = f.ahead[len(rows):]
	if len(rows) == 0 {
		var err error
		if rows, err = f.take(n); err != nil || len(rows) == 0 {
			return nil, err
		}
	}
	f.done += len(rows)
	return &cells{f.columns, rows}, nil
}
