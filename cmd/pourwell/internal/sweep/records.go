package sweep

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// mostLine is how long a row of a file may be, in bytes: what is longer is a
// slip, or no file of rows.
const mostLine = 1 << 20

// A fileRow is a row of a file, or what is wrong with it.
type fileRow struct {
	cells []string
	err   error
}

// A reader reads CSV one row at a time, so that a row with a stray quote costs
// itself alone: a quote that is never closed would make one cell of all that
// follows. A row with a line break in quotes is several lines.
type reader struct {
	from  *bufio.Reader
	comma rune
	back  [][]byte // lines given back, to be read again
	csv   *csv.Reader
	feed  bytes.Reader // what csv reads
	ended error        // why nothing follows
}

func newReader(from io.Reader) *reader {
	r := &reader{from: bufio.NewReaderSize(from, 1<<16), comma: ','}
	if mark, _ := r.from.Peek(3); bytes.Equal(mark, []byte("\ufeff")) { // spreadsheets begin with it
		_, _ = r.from.Discard(3)
	}
	if head, _ := r.from.Peek(512); semicolons(head) {
		r.comma = ';'
	}
	return r
}

// semicolons reports whether the cells of the header are parted by semicolons.
func semicolons(head []byte) bool {
	line, _, _ := bytes.Cut(head, []byte("\n"))
	return bytes.Count(line, []byte(";")) > bytes.Count(line, []byte(","))
}

// read returns the next row, or the error that ends the file, [io.EOF] at its
// end.
func (r *reader) read() (fileRow, error) {
	line, err := r.line()
	for err == nil && (line[0] == '#' || len(bytes.TrimRight(line, "\r\n")) == 0) {
		line, err = r.line()
	}
	if err != nil {
		return fileRow{}, err
	}
	if balanced(line) {
		return r.parse(line), nil
	}
	return r.joined(bytes.Clone(line)), nil
}

// joined returns the row that begins with a line whose quote stays open: the
// lines up to the one that closes it. If that makes no row, the quote is a
// stray one, which costs the first line; what follows is given back.
func (r *reader) joined(first []byte) fileRow {
	lines, all := [][]byte{first}, bytes.Clone(first)
	for len(all) <= mostLine {
		line, err := r.line()
		if err != nil {
			break // the file ends; so it does for the next row
		}
		lines, all = append(lines, bytes.Clone(line)), append(all, line...)
		if !balanced(line) {
			if row := r.parse(all); row.err == nil {
				return row
			}
			break
		}
	}
	r.back = append(lines[1:], r.back...)
	return r.parse(first)
}

// balanced reports whether each quote of a line is closed within it.
func balanced(line []byte) bool { return bytes.Count(line, []byte(`"`))%2 == 0 }

// line returns the next line with its end, valid until the next call.
func (r *reader) line() ([]byte, error) {
	if len(r.back) > 0 {
		line := r.back[0]
		r.back = r.back[1:]
		return line, nil
	}
	if r.ended != nil {
		return nil, r.ended
	}
	line, err := r.from.ReadSlice('\n')
	for errors.Is(err, bufio.ErrBufferFull) && len(line) <= mostLine {
		var more []byte
		line = bytes.Clone(line)
		more, err = r.from.ReadSlice('\n')
		line = append(line, more...)
	}
	if r.ended = err; len(line) > mostLine {
		r.ended = &calc.UsageError{
			What: fmt.Sprintf("the row is longer than %d MB", mostLine>>20),
			Hint: "it is no row, and nothing behind it is read; each row stands on a line of its own",
		}
		return nil, r.ended
	}
	if errors.Is(err, io.EOF) && len(line) > 0 {
		line, err = append(bytes.Clone(line), '\n'), nil
	}
	return line, err
}

// parse splits text, one row, into its cells.
func (r *reader) parse(text []byte) fileRow {
	if r.csv == nil {
		r.csv = csv.NewReader(&r.feed)
		r.csv.Comma, r.csv.FieldsPerRecord, r.csv.TrimLeadingSpace = r.comma, -1, true
	}
	r.feed.Reset(text)
	cells, err := r.csv.Read()
	if err != nil {
		r.csv = nil // it may hold the rest of the row
		err = &calc.UsageError{What: "the row has a stray quote", Hint: `a cell with a quote stands in quotes, and has "" for it`}
	}
	return fileRow{cells, err}
}
