package volume

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
)

// readTable reads a check table from testdata: its first line names its kind,
// comment lines its source, and the first row the columns.
func readTable(t *testing.T, name string) []map[string]string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(string(text), "# kind: ") {
		t.Fatalf("%s does not begin with its kind", name)
	}
	r := csv.NewReader(strings.NewReader(string(text)))
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatalf("%s: %d records, %v", name, len(records), err)
	}
	rows := make([]map[string]string, len(records)-1)
	for i, rec := range records[1:] {
		rows[i] = map[string]string{}
		for j, column := range records[0] {
			rows[i][column] = rec[j]
		}
	}
	return rows
}

// number reads a cell as a number or a fraction.
func number(t *testing.T, cell string) float64 {
	t.Helper()
	top, bottom, isFraction := strings.Cut(cell, "/")
	v, err := strconv.ParseFloat(top, 64)
	if err == nil && isFraction {
		var d float64
		d, err = strconv.ParseFloat(bottom, 64)
		v /= d
	}
	if err != nil {
		t.Fatalf("cell %q: %v", cell, err)
	}
	return v
}

// splitNames splits the aliases of a row.
func splitNames(aliases string) []string { return strings.Fields(aliases) }
