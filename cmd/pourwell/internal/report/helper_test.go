package report

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// meadow is a calculation with every kind of answer.
func meadow() *calc.Calculation {
	c := &calc.Calculation{
		Package: "test", Name: "meadow",
		Inputs: []calc.Input{
			{Name: "temp", Kind: quantity.Temperature},
			{Name: "gauge", Kind: quantity.Gauge, Default: "12psi"},
			{Name: "kegs", Kind: quantity.Count, Default: "2"},
			{Name: "keg", Kind: quantity.Volume, Named: "vessel", Default: "30L"},
			{Name: "tube", Kind: quantity.Text, Repeat: true},
			{Name: "lid", Kind: quantity.Switch},
		},
		Results: []calc.Key{{Key: "co2_volumes", Label: "CO2 content"}, {Key: "time_s"}, {Key: "motion", Label: "how it moves"}},
		Run: func(in *calc.Values, out *calc.Result) error {
			out.Answer = "At {temp_c} the beer holds {co2_volumes}, which takes {time_s}."
			out.Set("co2_volumes", 2.5757)
			out.Set("gauge_kpa", in.Number("gauge")/1000)
			out.Set("time_s", 5400)
			out.Set("gone_kg", math.NaN())
			out.SetText("motion", "still")
			out.Band("co2_volumes", func() volume.Band { return volume.Band{Low: 2.54, High: 2.61, Suffix: "volumes", Source: "the chart"} })
			out.Working(func() []volume.Step {
				return []volume.Step{{Name: "sum", Symbol: "Σ", Value: 1.5, Suffix: "m3", Source: "given"}}
			})
			out.Note("It rests on {gauge_kpa} <and> \"words\".")
			out.Caution("Glass bursts.")
			out.Caution("Mind the step.")
			t := calc.Table{Key: "course", Columns: []string{"time_s", "beer_c"}, Curve: true}
			for i := range 100 {
				t.Rows = append(t.Rows, []any{float64(60 * i), float64(i)})
			}
			out.Table(t)
			out.Table(calc.Table{Key: "findings", Columns: []string{"cause", "measured_kpa"}, Rows: [][]any{
				{"the line is warmer than the keg and the beer foams in it", 12.5}, {"", math.NaN()},
			}})
			return nil
		},
	}
	return c.Ready()
}

func answered(t testing.TB, texts ...string) (*calc.Values, *calc.Result) {
	t.Helper()
	in, err := calc.NewValues(meadow())
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(texts); i += 2 {
		if err := in.SetText(texts[i], texts[i+1]); err != nil {
			t.Fatal(err)
		}
	}
	var out calc.Result
	if err := in.Calculation().Run(in, &out); err != nil {
		t.Fatal(err)
	}
	return in, &out
}

// fits checks that every line of text keeps to the width.
func fits(t *testing.T, text string) {
	t.Helper()
	for n, line := range strings.Split(text, "\n") {
		if utf8.RuneCountInString(line) > width {
			t.Errorf("line %d has %d letters: %q", n+1, utf8.RuneCountInString(line), line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("line %d ends in blanks: %q", n+1, line)
		}
	}
}

// sheet has columns enough to fold, rows that failed, and words.
func sheet(rows, answers int) *Sheet {
	s := &Sheet{Heads: []Head{{Key: "temp_c", Label: "temperature", Input: true}}}
	for i := range answers {
		s.Heads = append(s.Heads, Head{Key: fmt.Sprintf("answer%d_kpa", i), Label: fmt.Sprintf("a rather long label %d", i)})
	}
	for n := range rows {
		l := Line{Cells: []calc.Value{{Key: "temp_c", Number: float64(n)}}}
		for i := range answers {
			l.Cells = append(l.Cells, calc.Value{Key: s.Heads[i+1].Key, Number: float64(n*100 + i)})
		}
		if n == 1 {
			l.Failure = "temperature 33.8 °F (1.0 °C) is outside the range of what was measured, which is rather narrow here"
		}
		s.Lines = append(s.Lines, l)
	}
	return s
}

func text(t *testing.T, write func(*bytes.Buffer) error) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}
