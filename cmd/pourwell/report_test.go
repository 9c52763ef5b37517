package main

import (
	"encoding/csv"
	"encoding/json"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"github.com/google/go-cmp/cmp"
)

// unquoted is a number that a sentence quotes and nobody wrote out.
var unquoted = regexp.MustCompile(`\{[a-z0-9_.+-]*( [a-z_0-9]+)?\}`)

// otherUnits are units that a reader of one system is not shown. Tubes are typed
// without a blank before the unit, and shown as typed; inches have decimals, unlike
// the 2 of "CO2 in", and no noun behind them.
var otherUnits = map[string]*regexp.Regexp{
	"both":   regexp.MustCompile(`$^`),
	"us":     regexp.MustCompile(`[0-9] (°C|bar|kPa|MPa|mm|cm|m|mL|L|kg|L/min|m/s)\b|[0-9] g\b[^/]`),
	"metric": regexp.MustCompile(`[0-9] (°F|psi|ft|fl oz|oz|gal|lb|mph)\b|[.][0-9]+ in( [0-9]|[,.)]| to )`),
}

// tradeNames are sizes by which the trade calls a thing.
var tradeNames = strings.NewReplacer("a bare 5 gal keg", "a bare keg")

func before(text, end string) string {
	text, _, _ = strings.Cut(text, end)
	return text
}

// TestExamplesText checks the layout of every answer in every unit system,
// with its working, and in ASCII.
func TestExamplesText(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		for _, units := range []string{"both", "us", "metric"} {
			text := pourwell(t, exitDone, with(args, "--units", units, "--explain")...)
			fits80(t, units, text)
			if unquoted.MatchString(text) || strings.Contains(text, "%!") || strings.Contains(text, "NaN") {
				t.Errorf("a number is not written out:\n%s", text)
			}
			if found := otherUnits[units].FindString(tradeNames.Replace(strings.Join(strings.Fields(before(text, "\nWorking\n")), " "))); found != "" {
				t.Errorf("--units %s: %q\n%s", units, found, text)
			}
			if !strings.Contains(text, "\nWorking\n") {
				t.Errorf("no working:\n%s", text)
			}
		}
		letters := pourwell(t, exitDone, with(args, "--explain")...)
		t.Setenv("LC_ALL", "C")
		plain := pourwell(t, exitDone, with(args, "--explain")...)
		if strings.Count(plain, "?") > strings.Count(letters, "?") {
			t.Errorf("a letter has no spelling in ASCII:\n%s", plain)
		}
		if i := strings.IndexFunc(plain, func(r rune) bool { return r > 126 }); i >= 0 {
			t.Errorf("%q is not ASCII", plain[i:i+4])
		}
		fits80(t, "ASCII", plain)
	})
}

// An answerOf is the JSON of one answer, and nothing else.
type answerOf struct {
	Schema      int            `json:"schema"`
	Calculation string         `json:"calculation"`
	Inputs      map[string]any `json:"inputs"`
	Answer      string         `json:"answer"`
	Results     map[string]any `json:"results"`
	Steps       []struct {
		Name   string   `json:"name"`
		Symbol string   `json:"symbol"`
		Value  *float64 `json:"value"`
		Unit   string   `json:"unit"`
		Source string   `json:"source"`
	} `json:"steps"`
	Bands map[string]struct {
		Low    *float64 `json:"low"`
		High   *float64 `json:"high"`
		Source string   `json:"source"`
	} `json:"bands"`
	Tolerances  map[string]any `json:"tolerances,omitempty"`
	Assumptions []string       `json:"assumptions"`
	Notes       []string       `json:"notes"`
	Cautions    []string       `json:"cautions"`
}

func decodeStrictly(t *testing.T, text string, into any) {
	t.Helper()
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(into); err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	if d.More() {
		t.Fatal("more than one value")
	}
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	if wrong := readSchema(t).check(v); wrong != "" {
		t.Errorf("against the schema: %s", wrong)
	}
}

// TestExamplesJSON decodes every answer strictly and against the schema. Units
// of display change nothing; every result is described; every band holds its
// answer.
func TestExamplesJSON(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		var a, b answerOf
		decodeStrictly(t, pourwell(t, exitDone, with(args, "--format", "json")...), &a)
		decodeStrictly(t, pourwell(t, exitDone, with(args, "--format", "json", "--units", "us")...), &b)
		if a.Calculation != c.Title() || a.Answer == "" || len(a.Steps) == 0 {
			t.Errorf("calculation %q, answer %q, %d steps", a.Calculation, a.Answer, len(a.Steps))
		}
		if diff := cmp.Diff(a.Results, b.Results); diff != "" {
			t.Error("units of display change the results:", diff)
		}
		for key := range a.Results {
			if !slices.ContainsFunc(c.Results, func(k calc.Key) bool { return k.Key == key }) {
				if _, list := a.Results[key].([]any); !list {
					t.Errorf("the result %s is not described", key)
				}
			}
		}
		for key, band := range a.Bands {
			v, ok := a.Results[key].(float64)
			if band.Low == nil { // open: any time, for ever
				band.Low = &v
			}
			if band.High == nil {
				band.High = &v
			}
			if !ok || !holds(*band.Low, v, *band.High) || band.Source == "" {
				t.Errorf("the band of %s does not hold its answer %v", key, a.Results[key])
			}
		}
		for _, s := range a.Steps {
			if s.Name == "" || s.Symbol == "" {
				t.Errorf("a step without name or symbol: %+v", s)
			}
		}
	})
}

// holds reports whether v lies between low and high, but for rounding on the
// way between units.
func holds(low, v, high float64) bool {
	slack := 1e-9 * max(1, v, -v)
	return low-slack <= v && v <= high+slack
}

// TestExamplesCSV compares the table with the JSON, cell by cell, and each list
// of rows.
func TestExamplesCSV(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		var a answerOf
		decodeStrictly(t, pourwell(t, exitDone, with(args, "--format", "json")...), &a)
		rows := readCSV(t, pourwell(t, exitDone, with(args, "--format", "csv")...))
		if len(rows) != 2 {
			t.Fatalf("%d lines", len(rows))
		}
		for i, key := range rows[0] {
			same(t, key, rows[1][i], a.Results[key])
		}
		for key, v := range a.Results {
			list, ok := v.([]any)
			if !ok {
				if !slices.Contains(rows[0], key) {
					t.Errorf("%s is not in the table", key)
				}
				continue
			}
			rows := readCSV(t, pourwell(t, exitDone, with(args, "--format", "csv", "--rows", key)...))
			if len(rows) != len(list)+1 {
				t.Errorf("%s has %d lines, %d rows", key, len(rows), len(list))
				continue
			}
			for n, row := range rows[1:] {
				for i, column := range rows[0] {
					same(t, key+"."+column, row[i], list[n].(map[string]any)[column])
				}
			}
		}
	})
}

func readCSV(t *testing.T, text string) [][]string {
	t.Helper()
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return rows
}

// same compares a cell of CSV with a value of JSON.
func same(t *testing.T, key, cell string, v any) {
	t.Helper()
	switch v := v.(type) {
	case float64:
		if got, err := strconv.ParseFloat(cell, 64); err != nil || got != v {
			t.Errorf("%s is %q as CSV and %v as JSON", key, cell, v)
		}
	case string:
		if cell != v {
			t.Errorf("%s is %q as CSV and %q as JSON", key, cell, v)
		}
	case nil:
		if cell != "" {
			t.Errorf("%s is %q as CSV and null as JSON", key, cell)
		}
	}
}
