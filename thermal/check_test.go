package thermal

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"example.com/pourwell/volume"
)

// table returns the rows of a file in testdata, by the names in its heading.
func table(t testing.TB, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil || len(lines) < 2 {
		t.Fatalf("%s: %d lines, %v", name, len(lines), err)
	}
	var rows []map[string]string
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, key := range lines[0] {
			row[key] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// vessel returns a vessel of the trade.
func vessel(t testing.TB, name string) volume.Vessel {
	t.Helper()
	v, ok := volume.VesselNamed(name)
	if !ok {
		t.Fatalf("no vessel %q", name)
	}
	return v
}
