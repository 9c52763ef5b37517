package report

import (
	"io"
	"math"
	"strconv"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// AppendCSV appends the line of a row whose run gave cells, or failed for the
// reason given.
func AppendCSV(buf []byte, cells []calc.Value, failure string, opt *Options) []byte {
	for i := range cells {
		if c := &cells[i]; c.IsText {
			buf = opt.appendText(buf, c.Text)
		} else {
			buf = appendNumber(buf, c.Number)
		}
		buf = append(buf, ',')
	}
	return append(opt.appendText(buf, failure), '\n')
}

// AppendCSVHeader appends the line that names the columns; the last says why a
// row has no answer.
func AppendCSVHeader(buf []byte, keys []string) []byte {
	for _, k := range keys {
		buf = append(appendField(buf, k), ',')
	}
	return append(buf, "error\n"...)
}

// AppendJSON appends a row as an object. A row that failed has null for each answer and an "error" that says why.
func AppendJSON(buf []byte, cells []calc.Value, failure string) []byte {
	buf = append(buf, '{')
	for i := range cells {
		c := &cells[i]
		buf = appendName(buf, c.Key)
		switch {
		case c.IsText:
			buf = appendString(buf, c.Text)
		case math.IsNaN(c.Number) || math.IsInf(c.Number, 0):
			buf = append(buf, "null"...)
		default:
			buf = strconv.AppendFloat(buf, c.Number, 'g', -1, 64)
		}
	}
	if failure != "" {
		buf = appendString(appendName(buf, "error"), failure)
	}
	return append(buf, '}')
}

// RowsHead writes what stands before the rows of a sweep in JSON. Inputs whose
// key skip knows change from row to row and are left out; tolerances, if any,
// are told.
func RowsHead(w io.Writer, in *calc.Values, skip func(key string) bool, opt Options) error {
	var o object
	o.add("schema", schema)
	o.add("calculation", in.Calculation().Title())
	o.add("inputs", inputsObject(in, skip))
	if opt.Spreads != nil {
		o.add("tolerances", spreadsObject(opt.Spreads, nil))
	}
	b, err := marshal(o)
	if err != nil {
		return err
	}
	b = append(b[:len(b)-1], `,"rows":[`...)
	_, err = w.Write(b)
	return err
}

// RowsTail writes what stands behind the rows of a sweep in JSON.
func RowsTail(w io.Writer, in *calc.Values, t Totals, opt Options) error {
	var o object
	o.add("failed", t.Failed)
	o.foot(in, &calc.Result{}, t.Notes, t.Cautions, opt.Units)
	b, err := marshal(o)
	if err != nil {
		return err
	}
	b[0] = ',' // goes on with the object that RowsHead began
	_, err = w.Write(append(append([]byte("\n]"), b...), '\n'))
	return err
}

// Totals is what the rows of a sweep have said together.
type Totals struct {
	Rows, Failed    int
	Notes, Cautions []string
}
