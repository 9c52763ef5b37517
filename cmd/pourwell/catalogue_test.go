package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
	"github.com/google/go-cmp/cmp"
)

// These tests run every calculation by its own examples, so that whoever adds
// one need not think of the mechanisms.

// pourwell runs the command in this process.
func pourwell(t *testing.T, want int, args ...string) string {
	t.Helper()
	out, errs, code := commandCode(args...)
	if code != want {
		t.Fatalf("pourwell %s: exit code %d, want %d: %s", strings.Join(args, " "), code, want, errs)
	}
	return out
}

func commandCode(args ...string) (out, errs string, code int) {
	var o, e bytes.Buffer
	code = run(args, strings.NewReader(""), &o, &e)
	return o.String(), e.String(), code
}

// everyExample calls test for each example of each calculation.
func everyExample(t *testing.T, test func(t *testing.T, c *calc.Calculation, args []string)) {
	t.Setenv("LC_ALL", "C.UTF-8")
	t.Setenv("POURWELL_UNITS", "")
	os.Unsetenv("POURWELL_UNITS")
	for _, c := range catalog.All() {
		for i, example := range c.Ready().Examples {
			t.Run(fmt.Sprintf("%s %d", c.Title(), i+1), func(t *testing.T) { test(t, c, split(example)) })
		}
	}
}

// with adds flags to args, in place of those that the example has.
func with(args []string, more ...string) []string {
	for i := len(args) - 2; i > 0; i-- {
		if strings.HasPrefix(args[i], "--") && slices.Contains(more, args[i]) {
			args = slices.Concat(args[:i], args[i+2:])
		}
	}
	return slices.Concat(args, more)
}

// fits80 checks that every line fits 80 columns.
func fits80(t *testing.T, what, text string) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("%s has a line of %d columns: %s", what, utf8.RuneCountInString(line), line)
		}
	}
}

// TestDescriptions checks what every description must have.
func TestDescriptions(t *testing.T) {
	key := regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
	seen := map[string]bool{}
	for _, c := range catalog.All() {
		c.Ready()
		if seen[c.Title()] {
			t.Errorf("%s is there twice", c.Title())
		}
		seen[c.Title()] = true
		if len(c.Examples) < 2 {
			t.Errorf("%s has %d examples", c.Title(), len(c.Examples))
		}
		if c.Summary == "" || strings.HasSuffix(c.Summary, ".") || strings.Contains(c.Summary, "{") {
			t.Errorf("%s: summary %q", c.Title(), c.Summary)
		}
		names := map[string]bool{}
		for _, in := range c.AllInputs() {
			if names[in.Name] || slices.Contains(globalNames, in.Name) || in.Name == "help" {
				t.Errorf("%s: the flag --%s has two meanings", c.Title(), in.Name)
			}
			names[in.Name] = true
			if in.Help == "" || strings.HasSuffix(in.Help, ".") {
				t.Errorf("%s --%s: help %q", c.Title(), in.Name, in.Help)
			}
			if !key.MatchString(in.InputKey()) {
				t.Errorf("%s --%s: key %q", c.Title(), in.Name, in.InputKey())
			}
		}
		results := map[string]bool{}
		for _, k := range c.Results {
			if results[k.Key] || !key.MatchString(k.Key) {
				t.Errorf("%s: result %q is there twice or misspelt", c.Title(), k.Key)
			}
			results[k.Key] = true
		}
		if _, err := calc.NewValues(c); err != nil {
			t.Errorf("%s: %v", c.Title(), err)
		}
	}
	for _, p := range catalog.Packages {
		if !slices.ContainsFunc(catalog.All(), func(c *calc.Calculation) bool { return c.Package == p.Name }) {
			t.Errorf("%s has no calculation", p.Name)
		}
	}
}

// TestHelp checks that help fits, starts with two examples and names every
// flag; and the same for the manual page.
func TestHelp(t *testing.T) {
	page := pourwell(t, exitDone, "help", "man")
	for _, c := range catalog.All() {
		text := pourwell(t, exitDone, c.Package, c.Name, "--help")
		fits80(t, "help of "+c.Title(), text)
		if strings.Count(strings.SplitN(text, "\n\n", 2)[0], "  pourwell "+c.Title()) < 2 {
			t.Errorf("help of %s does not start with two examples:\n%s", c.Title(), text)
		}
		for _, in := range c.AllInputs() {
			if !strings.Contains(text, "--"+in.Name+" ") {
				t.Errorf("help of %s is silent on --%s", c.Title(), in.Name)
			}
		}
		for _, in := range c.Inputs {
			if !strings.Contains(page, roff("--"+in.Name)) {
				t.Errorf("the manual page is silent on %s --%s", c.Title(), in.Name)
			}
		}
		if text != pourwell(t, exitDone, "help", c.Package, c.Name) {
			t.Errorf("help %s and %s --help differ", c.Title(), c.Title())
		}
	}
	for _, topic := range append([]string{"", "event"}, topicNames()...) {
		if topic != "man" {
			fits80(t, "help "+topic, pourwell(t, exitDone, strings.Fields("help "+topic)...))
		}
	}
	for _, p := range catalog.Packages {
		fits80(t, p.Name, pourwell(t, exitDone, p.Name, "--help"))
	}
	for i, line := range strings.Split(page, "\n") {
		for _, r := range line {
			if r > 126 {
				t.Fatalf("line %d of the manual page has %q", i+1, r)
			}
		}
	}
}

// TestHelpExamples runs every command line of the pages that belong to no
// calculation, but for those about the reader's own files.
func TestHelpExamples(t *testing.T) {
	ran := 0
	for _, page := range []string{overview, helpRanges, helpOutput} {
		text := strings.ReplaceAll(page, "\\\n", "")
		for _, line := range strings.Split(text, "\n") {
			args, ok := strings.CutPrefix(line, "  pourwell ")
			if !ok || strings.Contains(args, "my-day") || strings.Contains(args, "kegs.csv") {
				continue
			}
			pourwell(t, exitDone, split(args)...)
			ran++
		}
	}
	if ran < 5 {
		t.Errorf("%d command lines", ran)
	}
}

// rangeless lists inputs whose help states no range, because none of the
// packages' tables has one for them.
var rangeless = map[string]string{
	"regulator": "above the keg's own pressure it changes nothing", "rating": "any stamp", "gauge": "as the cylinder",
	"winding": "wider than the tube, as a ratio of bores",
}

func ranged(in *calc.Input) bool { _, ok := in.Range(); return ok }

// TestHelpStatesRanges checks that help states a range for every number, and
// that the list of exceptions has none too many.
func TestHelpStatesRanges(t *testing.T) {
	used := map[string]bool{}
	for _, c := range catalog.All() {
		for _, in := range c.Ready().AllInputs() {
			if !in.Kind.Sizeable() || ranged(&in) || in.Named != "" || in.Repeat {
				continue
			}
			used[in.Name] = true
			if rangeless[in.Name] == "" {
				t.Errorf("help of %s states no range for --%s", c.Title(), in.Name)
			}
		}
	}
	for name := range rangeless {
		if !used[name] {
			t.Errorf("--%s has a range by now", name)
		}
	}
}

// TestLimitsHold types a number just beyond the range that help states: there
// is no answer then.
func TestLimitsHold(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		for _, i := range numberFlags(c, args) {
			in := c.Input(strings.TrimPrefix(args[i], "--"))
			limit, _ := in.Range()
			for _, beyond := range []float64{limit.Max + (limit.Max-limit.Min)/1000, limit.Min - (limit.Max-limit.Min)/1000} {
				far := slices.Clone(args)
				far[i+1] = beyondText(in, limit, beyond)
				if far[i+1] == "" || limit.Name == "" {
					continue
				}
				if out, errs, code := commandCode(far...); code == exitDone || out != "" {
					t.Errorf("%s %s: exit code %d beyond %v to %v %s: %s%.80s", args[i], far[i+1], code, limit.Min, limit.Max, limit.Unit(), errs, out)
				}
			}
		}
	})
}

// beyondText writes v, in the unit of limit, as it is typed, "" if it cannot
// be.
func beyondText(in *calc.Input, limit volume.Range, v float64) string {
	unit := strings.TrimSuffix(limit.Unit(), " abs")
	switch {
	case in.Kind == quantity.Count:
		v = math.Round(v + math.Copysign(0.5, v-limit.Min))
	case in.Kind == quantity.Share && unit == "":
		v, unit = 100*v, "%"
	case in.Kind == quantity.Gauge && unit != limit.Unit(): // of absolute pressures
		v -= 101.325
	}
	text := strconv.FormatFloat(v, 'f', 9, 64) + unit
	if in.Kind == quantity.Count {
		text = strconv.FormatFloat(v, 'f', 0, 64)
	}
	if _, err := quantity.Parse(in.Kind, text); err != nil {
		return ""
	}
	return text
}

// withoutWorking lists calculations that show no working, with the reason.
var withoutWorking = map[string]string{}

// unquoted is a number that a sentence quotes and nobody wrote out.
var unquoted = regexp.MustCompile(`\{[a-z0-9_.+-]*( [a-z_0-9]+)?\}`)

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
			if !strings.Contains(text, "\nWorking\n") && withoutWorking[c.Title()] == "" {
				t.Errorf("no working:\n%s", text)
			}
			for _, caution := range c.Cautions {
				if first := strings.Fields(caution)[0]; !strings.Contains(text, "Caution: "+first) {
					t.Errorf("the caution %q is missing", caution)
				}
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
		if a.Calculation != c.Title() || a.Answer == "" || len(a.Steps) == 0 && withoutWorking[c.Title()] == "" {
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

// anySize lists inputs that may be of any size, with the reason.
var anySize = map[string]string{
	"carbonation sealed --regulator": "above the keg's own pressure it changes nothing",
}

// TestErrorsOnNonsense checks that what is no quantity, or far too large, ends in
// a message of two lines on standard error alone.
func TestErrorsOnNonsense(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		for _, i := range numberFlags(c, args) {
			for _, text := range []string{"NaN", "Inf", "1e400", "", "--", "x", "12parsec"} {
				bad := slices.Clone(args)
				bad[i+1] = text
				out, errs, code := commandCode(bad...)
				if code != exitUsage || out != "" || strings.Count(errs, "\n") != 2 || !strings.HasPrefix(errs, "pourwell: ") || !strings.Contains(errs, "\nhint: ") {
					t.Errorf("%s %q: exit code %d, output %q, message %q", args[i], text, code, out, errs)
				}
			}
			huge := slices.Clone(args)
			huge[i+1] = "1e30" + quantity.UnitOf(args[i+1])
			if c.Input(strings.TrimPrefix(args[i], "--")).Kind == quantity.Share {
				huge[i+1] = "1e30%"
			}
			out, errs, code := commandCode(huge...)
			if anySize[c.Title()+" "+args[i]] == "" && (code != exitNoAnswer && code != exitUsage || out != "") {
				t.Errorf("%s %s: exit code %d: %s%s", args[i], huge[i+1], code, out, errs)
			}
		}
	})
}
