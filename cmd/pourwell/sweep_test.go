package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"github.com/google/go-cmp/cmp"
)

// numberFlags returns the positions in args of flags that a range suits.
func numberFlags(c *calc.Calculation, args []string) []int {
	var at []int
	for i := 2; i < len(args)-1; i++ {
		in := c.Input(strings.TrimPrefix(args[i], "--"))
		if in != nil && in.Kind.Sizeable() && in.Named == "" && !in.Repeat {
			at = append(at, i)
		}
	}
	return at
}

// rowsOf is the JSON of rows.
type rowsOf struct {
	Schema      int              `json:"schema"`
	Calculation string           `json:"calculation"`
	Inputs      map[string]any   `json:"inputs"`
	Rows        []map[string]any `json:"rows"`
	Failed      int              `json:"failed"`
	Assumptions []string         `json:"assumptions"`
	Notes       []string         `json:"notes"`
	Cautions    []string         `json:"cautions"`
}

// TestExamplesSwept lists each number twice: both rows are the single answer,
// as JSON, CSV and a file, and text fits.
func TestExamplesSwept(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		var single answerOf
		decodeStrictly(t, pourwell(t, exitDone, with(args, "--format", "json")...), &single)
		flags := numberFlags(c, args)
		if len(flags) == 0 {
			t.Skip("takes no number")
		}
		for _, i := range flags {
			swept := slices.Clone(args)
			swept[i+1] += "," + swept[i+1]
			var rows rowsOf
			decodeStrictly(t, pourwell(t, exitDone, with(swept, "--format", "json")...), &rows)
			if len(rows.Rows) != 2 || rows.Failed != 0 {
				t.Fatalf("%s %s: %d rows, %d failed", args[i], swept[i+1], len(rows.Rows), rows.Failed)
			}
			for _, row := range rows.Rows {
				for key, v := range single.Results {
					if _, list := v.([]any); !list && row[key] != v {
						t.Errorf("%s %s: %s is %v, alone %v", args[i], swept[i+1], key, row[key], v)
					}
				}
			}
			table := readCSV(t, pourwell(t, exitDone, with(swept, "--format", "csv")...))
			for k, key := range table[0][:len(table[0])-1] {
				same(t, key, table[1][k], rows.Rows[0][key])
			}
			fits80(t, args[i], pourwell(t, exitDone, swept...))
		}
	})
}

// TestExamplesFromFile puts each example into a file of one row.
func TestExamplesFromFile(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		var single answerOf
		decodeStrictly(t, pourwell(t, exitDone, with(args, "--format", "json")...), &single)
		var head, row []string
		command := []string{c.Package, c.Name, "--input", filepath.Join(t.TempDir(), "rows.csv"), "--format", "json"}
		for i := 2; i < len(args); i++ {
			if slices.Contains(globalNames, strings.TrimPrefix(args[i], "--")) {
				command = append(command, args[i], args[i+1])
				i++
				continue
			}
			head = append(head, strings.TrimPrefix(args[i], "--"))
			if in := c.Input(head[len(head)-1]); in != nil && in.Kind == quantity.Switch {
				row = append(row, "yes")
				continue
			}
			i++
			row = append(row, args[i])
		}
		var file bytes.Buffer
		w := csv.NewWriter(&file)
		if err := w.WriteAll([][]string{head, row, row}); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(command[3], file.Bytes(), 0o600); err != nil {
			t.Fatal(err)
		}
		var rows rowsOf
		decodeStrictly(t, pourwell(t, exitDone, command...), &rows)
		if len(rows.Rows) != 2 {
			t.Fatalf("%d rows", len(rows.Rows))
		}
		for key, v := range single.Results {
			if _, list := v.([]any); !list && rows.Rows[1][key] != v {
				t.Errorf("%s is %v from the file, %v alone", key, rows.Rows[1][key], v)
			}
		}
	})
}

// TestExamplesWithTolerance gives each number a tolerance of one hundredth: the
// answer stays, and lies within its spread.
func TestExamplesWithTolerance(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		var single answerOf
		decodeStrictly(t, pourwell(t, exitDone, with(args, "--format", "json")...), &single)
		for _, i := range numberFlags(c, args) {
			size := "1%"
			if c.Input(strings.TrimPrefix(args[i], "--")).Kind == quantity.Temperature {
				size = "0.5C"
			}
			loose := slices.Clone(args)
			loose[i+1] += "+-" + size
			var got answerOf
			decodeStrictly(t, pourwell(t, exitDone, with(loose, "--format", "json")...), &got)
			if diff := cmp.Diff(single.Results, got.Results); diff != "" {
				t.Errorf("a tolerance changes the answer: %s", diff)
			}
			spreads, _ := got.Tolerances["results"].(map[string]any)
			for key, s := range spreads {
				v, _ := single.Results[key].(float64)
				low, okLow := s.(map[string]any)["low"].(float64)
				high, okHigh := s.(map[string]any)["high"].(float64)
				if okLow && okHigh && !holds(low, v, high) {
					t.Errorf("%s %s: %s = %v spreads from %v to %v", args[i], loose[i+1], key, v, low, high)
				}
			}
			fits80(t, loose[i+1], pourwell(t, exitDone, loose...))
		}
	})
}

// TestExamplesPlotted draws each course, and each first number as a curve.
func TestExamplesPlotted(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		name := filepath.Join(t.TempDir(), "curve.svg")
		_, errs, code := commandCode(with(args, "--plot", name)...)
		switch {
		case code == exitDone:
			svg, err := os.ReadFile(name)
			if err != nil || !bytes.Contains(svg, []byte("</svg>")) || bytes.Contains(svg, []byte("NaN")) {
				t.Errorf("a bad file: %v", err)
			}
		case code != exitUsage || !strings.Contains(errs, "give an input a range, for example --"):
			t.Errorf("exit code %d: %s", code, errs)
		}
		for _, i := range numberFlags(c, args)[:min(1, len(numberFlags(c, args)))] {
			swept := slices.Clone(args)
			swept[i+1] += "," + swept[i+1]
			pourwell(t, exitDone, with(swept, "--plot", name)...)
		}
	})
}
