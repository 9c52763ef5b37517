package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// CSV writes the answers as a header of keys and one row. Lists of rows, such
// as the tubes of a line, have a table of their own: see [TableCSV]. With
// tolerances the ends of the leading answer's spread follow.
func CSV(w io.Writer, out *calc.Result, opt Options) error {
	var head []string
	var row []any
	for _, v := range out.Values {
		head = append(head, v.Key)
		if v.IsText {
			row = append(row, v.Text)
		} else {
			row = append(row, v.Number)
		}
	}
	if lead, ok := opt.Spreads.Of(out.Lead()); ok {
		head = append(head, "low_"+lead.Key, "high_"+lead.Key)
		row = append(row, lead.Low(), lead.High())
	}
	return WriteCSV(w, head, [][]any{row}, opt)
}

// TableCSV writes the list of rows under key.
func TableCSV(w io.Writer, out *calc.Result, key string, opt Options) error {
	var keys []string
	for _, t := range out.Tables {
		keys = append(keys, t.Key)
		if t.Key != key {
			continue
		}
		rows := make([][]any, len(t.Rows))
		for i, r := range t.Rows {
			rows[i] = slices.Clone(r)
			for k, c := range r {
				if s, ok := c.(string); ok {
					rows[i][k] = Sentence(s, nil, out, quantity.Both)
				}
			}
		}
		return WriteCSV(w, t.Columns, rows, opt)
	}
	if len(keys) == 0 {
		return &calc.UsageError{What: fmt.Sprintf("--rows: %q: this calculation has no list of rows", key), Hint: "leave --rows out"}
	}
	return &calc.UsageError{What: fmt.Sprintf("--rows: %q: no such list of rows", key), Hint: "there are " + strings.Join(keys, ", ")}
}

// WriteCSV writes a header of keys, and rows of texts and of numbers, float64,
// in full precision; one that is not finite is an empty cell.
func WriteCSV(w io.Writer, head []string, rows [][]any, opt Options) error {
	buf := appendCells(nil, head, appendField)
	for _, row := range rows {
		buf = appendCells(buf, row, opt.appendCell)
	}
	_, err := w.Write(buf)
	return err
}

// appendCells appends a line.
func appendCells[T any](buf []byte, cells []T, appendCell func([]byte, T) []byte) []byte {
	for i, c := range cells {
		if i > 0 {
			buf = append(buf, ',')
		}
		buf = appendCell(buf, c)
	}
	return append(buf, '\n')
}

func (o *Options) appendCell(buf []byte, cell any) []byte {
	switch c := cell.(type) {
	case float64:
		return appendNumber(buf, c)
	case string:
		return o.appendText(buf, c)
	}
	return buf
}

// appendNumber appends v in full precision, nothing if it is not finite.
func appendNumber(buf []byte, v float64) []byte {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return buf
	}
	return strconv.AppendFloat(buf, v, 'g', -1, 64)
}

// appendText appends a text. A spreadsheet takes one that begins with a sign of
// these for a formula; with SafeCells an apostrophe before it makes it text.
func (o *Options) appendText(buf []byte, text string) []byte {
	if o.SafeCells && text != "" && strings.ContainsRune("=+-@", rune(text[0])) {
		text = "'" + text
	}
	return appendField(buf, text)
}

// appendField quotes s where CSV needs it (RFC 4180), and where it begins with
// a blank, which many readers drop.
func appendField(buf []byte, s string) []byte {
	if !strings.ContainsAny(s, ",\"\r\n") && !strings.HasPrefix(s, " ") {
		return append(buf, s...)
	}
	buf = append(buf, '"')
	buf = append(buf, strings.ReplaceAll(s, `"`, `""`)...)
	return append(buf, '"')
}
