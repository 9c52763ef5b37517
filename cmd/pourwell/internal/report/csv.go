package report

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// CSV writes the answers as a header of keys and one row. Lists of rows, such
// as the tubes of a line, have a table of their own: see [TableCSV]. With
// tolerances the ends of the leading answer's spread follow.
func CSV(w io.Writer, out *calc.Result, opt Options) error {
	var head, row []string
	for _, v := range out.Values {
		head = append(head, v.Key)
		if v.IsText {
			row = append(row, v.Text)
		} else {
			row = append(row, number(v.Number))
		}
	}
	if lead, ok := opt.Spreads.Of(out.Lead()); ok {
		head = append(head, "low_"+lead.Key, "high_"+lead.Key)
		row = append(row, number(lead.Low()), number(lead.High()))
	}
	return WriteCSV(w, [][]string{head, row})
}

// TableCSV writes the list of rows under key.
func TableCSV(w io.Writer, out *calc.Result, key string) error {
	var keys []string
	for _, t := range out.Tables {
		keys = append(keys, t.Key)
		if t.Key != key {
			continue
		}
		rows := [][]string{t.Columns}
		for _, r := range t.Rows {
			row := make([]string, len(r))
			for i, c := range r {
				switch c := c.(type) {
				case float64:
					row[i] = number(c)
				case string:
					row[i] = Sentence(c, nil, out, quantity.Both)
				}
			}
			rows = append(rows, row)
		}
		return WriteCSV(w, rows)
	}
	if len(keys) == 0 {
		return &calc.UsageError{What: fmt.Sprintf("--rows %s: this calculation has no list of rows", key), Hint: "leave --rows out"}
	}
	return &calc.UsageError{What: fmt.Sprintf("--rows %s: no such list of rows", key), Hint: fmt.Sprintf("there are %v", keys)}
}

// WriteCSV writes rows as CSV, the header first.
func WriteCSV(w io.Writer, rows [][]string) error {
	var buf []byte
	for _, row := range rows {
		for i, cell := range row {
			if i > 0 {
				buf = append(buf, ',')
			}
			buf = appendField(buf, cell)
		}
		buf = append(buf, '\n')
	}
	_, err := w.Write(buf)
	return err
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

// number writes v in full precision, empty if it is not finite.
func number(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}
