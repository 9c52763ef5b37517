package carbonation

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// A tableRow is one line of a table of outside values.
type tableRow struct {
	t      *testing.T
	fields map[string]string
}

// table reads testdata/name: comment lines first, then a header, then rows.
// The first comment says what kind of truth it is; our own output is none.
func table(t *testing.T, name string) []tableRow {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	kind, _, _ := strings.Cut(string(data), "\n")
	switch strings.TrimPrefix(kind, "# kind: ") {
	case "published", "reference", "practice", "memory":
	default:
		t.Fatalf("%s: first line %q does not say what kind of values these are", name, kind)
	}
	r := csv.NewReader(strings.NewReader(string(data)))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(lines) < 2 {
		t.Fatalf("%s is empty", name)
	}
	var rows []tableRow
	for _, line := range lines[1:] {
		fields := map[string]string{}
		for i, column := range lines[0] {
			fields[column] = line[i]
		}
		rows = append(rows, tableRow{t, fields})
	}
	return rows
}

func (r tableRow) text(column string) string {
	r.t.Helper()
	s, ok := r.fields[column]
	if !ok {
		r.t.Fatalf("no column %q", column)
	}
	return s
}

func (r tableRow) number(column string) float64 {
	r.t.Helper()
	v, err := strconv.ParseFloat(r.text(column), 64)
	if err != nil {
		r.t.Fatal(err)
	}
	return v
}

// printed returns the number in a column and half a unit of its last digit.
func (r tableRow) printed(column string) (value, tolerance float64) {
	s := r.text(column)
	digits := 0
	if _, after, ok := strings.Cut(s, "."); ok {
		digits = len(after)
	}
	return r.number(column), 0.5 * math.Pow10(-digits)
}

// near fails the test unless got is within tolerance of want. NaN is near
// nothing.
func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g ± %.2g", what, got, want, tolerance)
	}
}

// must returns v and fails the test on an error.
func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
