package report

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestSentence checks the numbers that sentences quote.
func TestSentence(t *testing.T) {
	in, out := answered(t, "temp", "38F")
	for s, want := range map[string]string{
		"plain":                    "plain",
		"at {temp_c}":              "at 38.0 °F (3.3 °C)",
		"{co2_volumes} of CO2":     "2.58 volumes of CO2",
		"set {gauge_kpa}, {kegs}":  "set 12.0 psi (0.83 bar), 2",
		"{38.5 c}":                 "101.3 °F (38.5 °C)",
		"{unknown_key} stays":      "{unknown_key} stays",
		"{open":                    "{open",
		"{gone_kg}":                "unknown",
		"a share of {0.4 share}":   "a share of 40 %",
		"{3} pure":                 "3 pure",
		"{time_s} and {5400 s}":    "90 min and 90 min",
		"brackets } alone and { }": "brackets } alone and { }",
	} {
		if got := Sentence(s, in, out, quantity.Both); got != want {
			t.Errorf("%q reads %q, want %q", s, got, want)
		}
	}
}

// TestText checks the order of an answer: plain words first, cautions last.
func TestText(t *testing.T) {
	in, out := answered(t, "temp", "38F")
	got := text(t, func(b *bytes.Buffer) error { return Text(b, in, out, Options{Explain: true}) })
	fits(t, got)
	at := -1
	for _, part := range []string{
		"At 38.0 °F (3.3 °C) the beer holds 2.58 volumes, which takes 90 min.",
		"CO2 content", "likely within  2.54 to 2.61 volumes", "how it moves", "Course", "99 min", "Findings", "1. cause: the line is warmer",
		"Working", "Σ = 1.5 m³  sum; given", "Assumed: gauge 12.0 psi (0.83 bar), kegs 2, keg 30L.",
		"Note: It rests on", "Caution: Glass bursts.", "Caution: Mind the step.",
	} {
		i := strings.Index(got, part)
		if i < 0 || i < at {
			t.Errorf("%q is missing or out of order in\n%s", part, got)
			return
		}
		at = i
	}
	if n := strings.Count(got, " min "); n > curveRows+3 {
		t.Errorf("the course has %d lines", n)
	}
}

// TestASCII checks that a plain terminal gets plain letters.
func TestASCII(t *testing.T) {
	in, out := answered(t, "temp", "38F")
	got := text(t, func(b *bytes.Buffer) error { return Text(b, in, out, Options{Explain: true, ASCII: true}) })
	for _, r := range got {
		if r > 127 {
			t.Errorf("%q is left in\n%s", r, got)
		}
	}
	if !strings.Contains(got, "38.0 F (3.3 C)") {
		t.Error(got)
	}
}

// TestJSON decodes the object and checks what is in it, NaN as null.
func TestJSON(t *testing.T) {
	in, out := answered(t, "temp", "38F", "lid", "true", "tube", "7mm:1m")
	for _, units := range []quantity.System{quantity.Both, quantity.US, quantity.Metric} {
		raw := text(t, func(b *bytes.Buffer) error { return JSON(b, in, out, Options{Units: units}) })
		var got struct {
			Schema      int
			Calculation string
			Inputs      map[string]any
			Results     map[string]any
			Steps       []map[string]any
			Bands       map[string]map[string]any
			Notes       []string
			Cautions    []string
		}
		if err := json.Unmarshal([]byte(raw), &got); err != nil {
			t.Fatal(err)
		}
		inputs := map[string]any{
			"temp_c": in.Number("temp") - 273.15, "gauge_kpa": 82.73708751802035, "kegs": 2.0, "keg": "30L",
			"tube": []any{"7mm:1m"}, "lid": true,
		}
		if diff := cmp.Diff(inputs, got.Inputs); diff != "" {
			t.Error(diff)
		}
		if v, there := got.Results["gone_kg"]; !there || v != nil {
			t.Errorf("NaN is %v", v)
		}
		course, _ := got.Results["course"].([]any)
		if len(course) != 100 || got.Results["co2_volumes"] != 2.5757 || got.Results["motion"] != "still" {
			t.Errorf("results %v", got.Results)
		}
		if len(got.Steps) != 1 || len(got.Bands) != 1 || len(got.Notes) != 1 || len(got.Cautions) != 2 {
			t.Errorf("%+v", got)
		}
		if !strings.Contains(got.Notes[0], `<and> "words"`) {
			t.Errorf("note %q", got.Notes[0])
		}
	}
}

// TestCSV reads the table back.
func TestCSV(t *testing.T) {
	in, out := answered(t, "temp", "38F")
	_ = in
	rows, err := csv.NewReader(strings.NewReader(text(t, func(b *bytes.Buffer) error { return CSV(b, out, Options{}) }))).ReadAll()
	want := [][]string{{"co2_volumes", "gauge_kpa", "time_s", "gone_kg", "motion"}, {"2.5757", "82.73708751802035", "5400", "", "still"}}
	if diff := cmp.Diff(want, rows); diff != "" || err != nil {
		t.Error(diff, err)
	}
	rows, err = csv.NewReader(strings.NewReader(text(t, func(b *bytes.Buffer) error { return TableCSV(b, out, "findings", Options{}) }))).ReadAll()
	want = [][]string{{"cause", "measured_kpa"}, {"the line is warmer than the keg and the beer foams in it", "12.5"}, {"", ""}}
	if diff := cmp.Diff(want, rows); diff != "" || err != nil {
		t.Error(diff, err)
	}
	if err := TableCSV(&bytes.Buffer{}, out, "tubes", Options{}); err == nil || !strings.Contains(err.Error(), "course") {
		t.Errorf("an unknown list: %v", err)
	}
}

// TestSafeCells: no text begins a formula, and numbers stay numbers.
func TestSafeCells(t *testing.T) {
	cells := []calc.Value{{Key: "a", Text: `=HYPERLINK("x")`, IsText: true}, {Key: "b", Number: -1}, {Key: "c", Text: "+1", IsText: true}, {Key: "d", Text: "a=1", IsText: true}, {Key: "e", IsText: true}}
	for safe, want := range map[bool]string{
		true:  `"'=HYPERLINK(""x"")",-1,'+1,a=1,,'@x` + "\n",
		false: `"=HYPERLINK(""x"")",-1,+1,a=1,,@x` + "\n",
	} {
		if got := string(AppendCSV(nil, cells, "@x", &Options{SafeCells: safe})); got != want {
			t.Errorf("safe %v: %s want %s", safe, got, want)
		}
	}
	var out calc.Result
	out.SetText("name", "-x")
	out.Table(calc.Table{Key: "beers", Columns: []string{"name", "share"}, Rows: [][]any{{"@pale", -0.5}}})
	opt := Options{SafeCells: true}
	one := text(t, func(b *bytes.Buffer) error { return CSV(b, &out, opt) })
	many := text(t, func(b *bytes.Buffer) error { return TableCSV(b, &out, "beers", opt) })
	page := text(t, func(b *bytes.Buffer) error {
		return WriteCSV(b, []string{"beer", "temperature_c"}, [][]any{{"=b", -1.5}, {"b", math.NaN()}}, opt)
	})
	if one != "name\n'-x\n" || many != "name,share\n'@pale,-0.5\n" || page != "beer,temperature_c\n'=b,-1.5\nb,\n" {
		t.Errorf("%q, %q, %q", one, many, page)
	}
}

// TestRowsReadBack writes rows of any values and reads them back exactly, as
// CSV and as JSON.
func TestRowsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.Float64().Draw(t, "number")
		word := rapid.String().Filter(utf8.ValidString).Draw(t, "word")
		word = strings.ReplaceAll(word, "\r", "") // CSV readers turn line ends into one form
		failure := rapid.SampledFrom([]string{"", "a, b\n\"c\""}).Draw(t, "failure")
		cells := []calc.Value{{Key: "a_c", Number: number}, {Key: "gone", Number: math.NaN()}, {Key: "w", Text: word, IsText: true}}

		rows, err := csv.NewReader(bytes.NewReader(AppendCSV(AppendCSVHeader(nil, []string{"a_c", "gone", "w"}), cells, failure, &Options{}))).ReadAll()
		if err != nil || len(rows) != 2 {
			t.Fatal(rows, err)
		}
		if rows[1][1] != "" || rows[1][2] != word || rows[1][3] != failure || rows[0][3] != "error" {
			t.Fatalf("%q", rows)
		}
		var object map[string]any
		if err := json.Unmarshal(AppendJSON(nil, cells, failure), &object); err != nil {
			t.Fatal(err)
		}
		if object["a_c"] != number || object["gone"] != nil || object["w"] != word {
			t.Fatalf("%v", object)
		}
		if said, there := object["error"]; there != (failure != "") || there && said != failure {
			t.Fatalf("%v", object)
		}
	})
}

// TestFold checks that a sheet of any width fits the line, keeps its inputs in
// every block, and loses no number.
func TestFold(t *testing.T) {
	in, _ := answered(t)
	for _, units := range []quantity.System{quantity.Both, quantity.US, quantity.Metric} {
		for answers := range 12 {
			s := sheet(4, answers)
			got := text(t, func(b *bytes.Buffer) error { return s.Text(b, in, Options{Units: units}) })
			fits(t, got)
			for i := range answers {
				scale, metric := quantity.ScalesOf("kpa", []float64{float64(300 + i)})
				if units == quantity.Metric {
					scale = metric
				}
				if want := scale.Text(float64(300 + i)); !strings.Contains(got, want) {
					t.Fatalf("%s is lost in\n%s", want, got)
				}
			}
			if answers > 0 && (!strings.Contains(got, "failed") || !strings.Contains(got, "Failed: temperature")) {
				t.Errorf("the failed row is not told:\n%s", got)
			}
		}
	}
}

// TestGridFolds checks a grid wider than the line.
func TestGridFolds(t *testing.T) {
	in, _ := answered(t)
	s := &Sheet{Grid: true, Lead: "co2_volumes", Heads: []Head{
		{Key: "temp_c", Label: "temperature", Input: true}, {Key: "gauge_kpa", Label: "gauge", Input: true}, {Key: "co2_volumes", Label: "CO2 content"},
	}}
	for down := range 3 {
		for across := range 30 {
			l := Line{Cells: []calc.Value{{Number: float64(down)}, {Number: float64(10 * across)}, {Number: float64(down) + float64(across)/100}}}
			if down == 1 && across == 2 {
				l.Failure = "no"
			}
			s.Lines = append(s.Lines, l)
		}
	}
	got := text(t, func(b *bytes.Buffer) error { return s.Text(b, in, Options{}) })
	fits(t, got)
	if n := strings.Count(got, "psi across"); n < 2 {
		t.Errorf("30 columns are in %d blocks", n)
	}
	for _, want := range []string{"2.29", "2.00", "CO2 content, volumes (down: temperature; across: gauge)", " - "} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
}

// TestSheetLeavesOutWhatIsKnown: an answer that repeats a swept input or one
// that the title names has no column of its own.
func TestSheetLeavesOutWhatIsKnown(t *testing.T) {
	in, _ := answered(t, "gauge", "12psi")
	s := &Sheet{Heads: []Head{
		{Key: "temp_c", Label: "temperature", Input: true}, {Key: "temperature_c", Label: "echo"}, {Key: "set_kpa", Label: "restated"}, {Key: "other_c", Label: "different"},
	}}
	for n := range 3 {
		s.Lines = append(s.Lines, Line{Cells: []calc.Value{
			{Number: float64(n)}, {Number: float64(n)}, {Number: in.Number("gauge") / 1000}, {Number: float64(n) + 1},
		}})
	}
	got := text(t, func(b *bytes.Buffer) error { return s.Text(b, in, Options{}) })
	if strings.Contains(got, "echo") || strings.Contains(got, "restated") || !strings.Contains(got, "different") {
		t.Error(got)
	}
	if !strings.HasPrefix(got, "test meadow: gauge 12.0 psi (0.83 bar)\n") {
		t.Error(got)
	}
}

// TestSpreads checks model and tolerances apart and together, in text and JSON.
func TestSpreads(t *testing.T) {
	in, out := answered(t, "temp", "38F")
	spreads := &calc.Spreads{
		Inputs: []calc.InputSpread{{Name: "temp", Text: "1F", Key: "temp_k", Size: 5.0 / 9}, {Name: "gauge", Key: "gauge_kpa", Size: 1}},
		Results: []calc.Spread{{Key: "co2_volumes", Value: 2.5757, PlusMinus: 0.05, Sampled: &calc.Sampled{Low: 2.52, Mean: 2.58, High: 2.63},
			Causes: []calc.Cause{{Input: "temp", PlusMinus: 0.04, Share: 0.64}, {Input: "gauge", PlusMinus: 0.03, Share: 0.36}}}},
		Samples: 1000, Seed: 4, Failed: 2,
	}
	got := text(t, func(b *bytes.Buffer) error { return Text(b, in, out, Options{Spreads: spreads}) })
	fits(t, got)
	words := strings.Join(strings.Fields(got), " ")
	for _, want := range []string{
		"by the model alone 2.54 to 2.61 volumes", "by the tolerances alone 2.53 to 2.63 volumes", "by both together 2.51 to 2.64 volumes",
		"by random samples 2.52 to 2.63 volumes", "temperature ± 1.0 °F (0.56 K)", "comes from temperature, 64 % of the variance; gauge 36 %",
		"1000 random samples, seed 4; 2 had no answer",
	} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is missing in\n%s", want, got)
		}
	}
	var decoded struct {
		Tolerances struct {
			Inputs  map[string]float64
			Results map[string]struct {
				Low, High float64
				Most      string
				WithBand  struct{ Low, High float64 } `json:"with_band"`
			}
		}
	}
	raw := text(t, func(b *bytes.Buffer) error { return JSON(b, in, out, Options{Spreads: spreads}) })
	if err := json.Unmarshal([]byte(raw), &decoded); err != nil {
		t.Fatal(err)
	}
	r := decoded.Tolerances.Results["co2_volumes"]
	// by hand: 2.5757 − √(0.05² + 0.0357²) = 2.5143, 2.5757 + √(0.05² + 0.0343²) = 2.6363
	if math.Abs(r.WithBand.Low-2.5143) > 5e-5 || math.Abs(r.WithBand.High-2.6363) > 5e-5 || r.Most != "temp" {
		t.Errorf("%+v", r)
	}
}

// TestWrap checks that wrapping keeps every word and the width, and a number
// beside its unit.
func TestWrap(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{"beer", "at", "38.0", "°F", "(3.3", "°C)", "a", "rather-long-word-that-takes-room"})).Draw(t, "words"), " ")
		indent := rapid.IntRange(0, 12).Draw(t, "indent")
		got := Wrap(s, 0, indent)
		if strings.Join(strings.Fields(got), " ") != strings.Join(strings.Fields(s), " ") {
			t.Fatalf("%q became %q", s, got)
		}
		lines := strings.Split(got, "\n")
		for i, line := range lines {
			if utf8.RuneCountInString(line) > width {
				t.Fatalf("%q is too long", line)
			}
			if i+1 < len(lines) && strings.HasSuffix(line, "38.0") && strings.HasPrefix(strings.TrimSpace(lines[i+1]), "°F") {
				t.Fatalf("a number stands apart from its unit:\n%s", got)
			}
		}
	})
}

// TestTogether adds model and tolerances as squares on each side, and keeps a
// part of a whole within it.
func TestTogether(t *testing.T) {
	s := calc.Spread{Value: 10, PlusMinus: 3}
	low, high := together(s, calc.Band{Low: 6, High: 14})
	if low != 5 || high != 15 {
		t.Errorf("3 and 4 together are %v to %v", low, high)
	}
	s = calc.Spread{Key: "a_share", Value: 0.9, PlusMinus: 0.2}
	if low, high := together(s, calc.Band{Low: 0.8, High: 1}); low < 0.6 || high != 1 {
		t.Errorf("a part of a whole: %v to %v", low, high)
	}
}

// TestMarkdownShowsLetters: what is written in a name is read in a page, and
// makes nothing of it.
//
// Source: CommonMark 0.31.2, backslash escapes; GitHub Flavored Markdown for
// tables and strikethrough.
func TestMarkdownShowsLetters(t *testing.T) {
	p := printer{out: &calc.Result{}}
	for name, want := range map[string]string{
		"Haymaker Lager, 4.9 % (new)": "Haymaker Lager, 4.9 % (new)",
		"[x](javascript:1)":           `\[x\](javascript:1)`,
		"<script>a</script>":          `\<script\>a\</script\>`,
		"a|b":                         `a\|b`,
		"`code` *bold* ~~gone~~":      "\\`code\\` \\*bold\\* \\~\\~gone\\~\\~",
		"_em_ gauge_kpa":              `\_em\_ gauge_kpa`,
		"&lt; \\":                     `\&lt; \\`,
		"# x":                         `\# x`,
		"### x":                       `\### x`,
		"- x":                         `\- x`,
		"-2.0 °C":                     "-2.0 °C",
		"12. x":                       `12\. x`,
		"1) x":                        `1\) x`,
		"2.5 x":                       "2.5 x",
		"#1":                          "#1",
		"{38.5 c}":                    "101.3 °F (38.5 °C)",
	} {
		if got := p.markdown(name); got != want {
			t.Errorf("%s is written %s, want %s", name, got, want)
		}
	}
	page := Page{Title: "*a*", Blocks: []Block{{Heading: "<b>", Lines: []string{"a|b"}, Bullets: []string{"- c"}, Rows: [][]string{{"|", "d"}}}}}
	got := text(t, func(b *bytes.Buffer) error { return PageMarkdown(b, page, Options{}) })
	if want := "# \\*a\\*\n\n## \\<b\\>\n\na\\|b\n\n- \\- c\n\n|  |  |\n| --- | --- |\n| \\| | d |\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
