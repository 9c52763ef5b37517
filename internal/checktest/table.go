package checktest

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// A Row is one row of a check table. A cell that is not what the test asks for
// ends the test that read the table, with its file, line and column.
type Row struct {
	t     testing.TB
	place string            // file:line
	cells map[string]string // by the names in the heading
}

// Table returns the rows of testdata/name.
func Table(t testing.TB, name string) []Row {
	t.Helper()
	file := filepath.Join("testdata", name)
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := parse(file, string(text))
	if err != nil {
		t.Fatal(err)
	}
	for i := range rows {
		rows[i].t = t
	}
	return rows
}

func parse(file, text string) ([]Row, error) {
	lines := strings.SplitN(text, "\n", 3)
	if !slices.Contains([]string{"# kind: published", "# kind: reference", "# kind: practice", "# kind: memory"}, lines[0]) {
		return nil, fmt.Errorf("%s:1: %q does not say what kind of values these are", file, lines[0])
	}
	if len(lines) < 2 || strings.Trim(lines[1], "# ") == "" || lines[1][0] != '#' {
		return nil, fmt.Errorf("%s:2: no source is cited", file)
	}
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	heading, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: no heading: %w", file, err)
	}
	for i, column := range heading {
		if column == "" || slices.Contains(heading[:i], column) {
			return nil, fmt.Errorf("%s: column %d of the heading, %q, is empty or stands twice", file, i+1, column)
		}
	}
	var rows []Row
	for {
		record, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		line, _ := r.FieldPos(0)
		cells := map[string]string{}
		for i, column := range heading {
			cells[column] = record[i]
		}
		rows = append(rows, Row{place: fmt.Sprintf("%s:%d", file, line), cells: cells})
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("%s: no rows", file)
	}
	return rows, nil
}

// Text returns a cell as it is printed.
func (r Row) Text(column string) string {
	r.t.Helper()
	cell, ok := r.cells[column]
	if !ok {
		r.t.Fatalf("%s: no column %q", r.place, column)
	}
	return cell
}

// Number returns a cell that holds a finite number or a fraction such as 1/12.
func (r Row) Number(column string) float64 {
	r.t.Helper()
	v, err := number(r.Text(column))
	if err != nil {
		r.t.Fatalf("%s: column %q: %v", r.place, column, err)
	}
	return v
}

// Optional is as Number, and NaN for an empty cell.
func (r Row) Optional(column string) float64 {
	r.t.Helper()
	if r.Text(column) == "" {
		return math.NaN()
	}
	return r.Number(column)
}

// Printed returns the number in a cell and half a unit of its last digit.
func (r Row) Printed(column string) (value, half float64) {
	r.t.Helper()
	cell := r.Text(column)
	if strings.ContainsAny(cell, "/eE") {
		r.t.Fatalf("%s: column %q: %q is no plain decimal", r.place, column, cell)
	}
	_, decimals, _ := strings.Cut(cell, ".")
	return r.Number(column), 0.5 * math.Pow10(-len(decimals))
}

func number(cell string) (float64, error) {
	top, bottom, isFraction := strings.Cut(cell, "/")
	v, err := strconv.ParseFloat(top, 64)
	if err == nil && isFraction {
		var d float64
		d, err = strconv.ParseFloat(bottom, 64)
		v /= d
	}
	// With a NaN for its want, a comparison by > passes whatever is got.
	if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
		err = fmt.Errorf("%q is not finite", cell)
	}
	return v, err
}

// EveryTableIsRead fails for each table in testdata that no test of the
// package names.
func EveryTableIsRead(t *testing.T) {
	t.Helper()
	tables, err := filepath.Glob("testdata/*.csv")
	if err != nil || len(tables) == 0 {
		t.Fatalf("no tables in testdata, %v", err)
	}
	tests, err := filepath.Glob("*_test.go")
	if err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	for _, name := range tests {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		text.Write(b)
	}
	for _, table := range tables {
		if !strings.Contains(text.String(), strconv.Quote(filepath.Base(table))) {
			t.Errorf("no test reads %s", table)
		}
	}
}

// Near fails the test unless got is within tolerance of want. NaN is near
// nothing.
func Near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.12g, want %.12g within %.2g", what, got, want, tolerance)
	}
}
