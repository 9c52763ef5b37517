package plan

import (
	"encoding/json"
	"errors"
	"os"
	"strings"
	"testing"

	"example.com/pourwell/internal/quantity"
)

// meadow plans the meadow party with lines of the file replaced.
func meadow(t *testing.T, replace ...string) Plan {
	t.Helper()
	data, err := os.ReadFile("../../../../testdata/meadow-party.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(replace); i += 2 {
		if !strings.Contains(text, replace[i]) {
			t.Fatalf("the file has no %q", replace[i])
		}
		text = strings.ReplaceAll(text, replace[i], replace[i+1])
	}
	day, err := Read("meadow", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	plan, err := Compute("meadow", day)
	if err != nil {
		t.Fatal(err)
	}
	return plan
}

func totalIce(p Plan) (total float64) {
	for _, c := range p.Cooling {
		total += c.Ice + c.TopUp
	}
	return total
}

func iceMelted(p Plan) float64 {
	melted := totalIce(p)
	for _, c := range p.Cooling {
		melted -= c.Left
	}
	return melted
}

func TestTheMeadowPartyHolds(t *testing.T) {
	p := meadow(t)
	if !p.Verdict.Holds {
		t.Errorf("the sample day does not hold: %+v", p.Verdict)
	}
	for _, c := range p.Cooling {
		if c.Warmest > c.ServeAt {
			t.Errorf("%s: drawn at %.1f °C, above %.1f °C", c.Beer, c.Warmest, c.ServeAt)
		}
	}
}

func TestSampleIsTheMeadowParty(t *testing.T) {
	data, err := os.ReadFile("../../../../testdata/meadow-party.toml")
	if err != nil {
		t.Fatal(err)
	}
	if string(data) != Sample {
		t.Error("sample.toml and testdata/meadow-party.toml differ; copy one to the other")
	}
}

// TestDocument: a list of the plan that is empty is [] in JSON, neither null nor
// absent; what the day has none of is not promised.
func TestDocument(t *testing.T) {
	p := meadow(t, `"30kg"`, `"60kg"`, `"90L"`, `"160L"`) // ice enough for no top-up
	p.Cautions, p.Assumptions = nil, nil
	data, err := json.Marshal(Document("meadow", &p, quantity.Both))
	if err != nil {
		t.Fatal(err)
	}
	if text := string(data); strings.Contains(text, "null") || strings.Contains(text, `"steps"`) || strings.Contains(text, `"bands"`) {
		t.Errorf("%s", text)
	}
	for _, list := range []string{"top_ups", "hours", "cautions", "assumptions", "notes"} {
		if !strings.Contains(string(data), `"`+list+`":[]`) {
			t.Errorf("%s is not an empty list", list)
		}
	}
}

func TestHeatMeltsMoreIce(t *testing.T) {
	cool, hot := meadow(t), meadow(t, `"31C"`, `"36C"`)
	if !(iceMelted(hot) > iceMelted(cool)) {
		t.Errorf("at 36 °C %.1f kg of ice melt, at 31 °C %.1f kg", iceMelted(hot), iceMelted(cool))
	}
}

func TestMoreGuestsDrinkMore(t *testing.T) {
	few, many := meadow(t), meadow(t, "count      = 60", "count      = 120")
	for i := range few.Beers {
		if r := many.Beers[i].Expected / few.Beers[i].Expected; r < 1.999 || r > 2.001 {
			t.Errorf("twice the guests ask for %.3f times the beer", r)
		}
		if !(many.Beers[i].Needed > few.Beers[i].Needed) {
			t.Errorf("twice the guests need %d kegs, half of them %d", many.Beers[i].Needed, few.Beers[i].Needed)
		}
	}
	if many.Verdict.Holds {
		t.Error("one keg each for 120 guests should not hold")
	}
}

func TestNoIceFails(t *testing.T) {
	p := meadow(t, `ice    = "30kg"`, `ice    = "0kg"`)
	if p.Verdict.Holds {
		t.Fatal("without ice the plan should not hold")
	}
	if p.Verdict.Change == "" || !strings.Contains(p.Verdict.Change, "ice") {
		t.Errorf("the change that would mend it should be about ice, got %q", p.Verdict.Change)
	}
}

func TestWrongRegulatorIsCautioned(t *testing.T) {
	for setting, word := range map[string]string{`"6psi"`: "too low", `"28psi"`: "too high"} {
		p := meadow(t, regulator(t), "regulator = "+setting)
		found := false
		for _, c := range p.Cautions {
			found = found || strings.Contains(c, word)
		}
		if !found {
			t.Errorf("regulator at %s: no caution says %q", setting, word)
		}
	}
}

// regulator returns the line of the file that sets the first beer's regulator.
func regulator(t *testing.T) string {
	t.Helper()
	for line := range strings.Lines(Sample) {
		if strings.HasPrefix(line, "regulator") {
			return strings.TrimSpace(line)
		}
	}
	t.Fatal("the sample sets no regulator")
	return ""
}

func TestUnderScoredKeysAreShown(t *testing.T) {
	for text, want := range map[string][2]string{
		"date = 2027-07-17\n":                  {"f.toml:1: date takes no local date", `a date is text in quotes, for example date = "2027-07-17"`},
		"title = 'a'\ntitle = 'b'\n":           {"f.toml:2: key title is already defined", "drop one of the two lines"},
		"\ufefftitle = 5\n":                    {"f.toml:1: title takes no integer", "a line reads key = value, text in quotes"},
		"guests = 60\n":                        {"f.toml:1: guests takes no integer", "it is a table: write [guests] and below it count, share, first_hour, later, weather, spread, confidence"},
		"[guests]\ncount = [60]\n":             {"f.toml:2: count takes no array", "write one value"},
		"[gests]\ncount = 60\n":                {`f.toml:1: unknown key "gests"`, "did you mean guests?"},
		"\n[guests]\ncoutn = 60\n":             {`f.toml:3: unknown key "guests.coutn"`, "did you mean count?"},
		"[[beer]]\n[beer.tub]\nsise = '80L'\n": {`f.toml:3: unknown key "beer.tub.sise"`, "did you mean size?"},
		"air = 31\n":                           {`f.toml:1: "31" needs a unit`, "for example 38F or 3.3C"},
		"# a\nhours = '5 parsecs'\n":           {`f.toml:2: "5 parsecs" has the unknown unit "parsecs"`, "for example 90min or 5h"},
		"[guests]\ncount = 1.5\n":              {`f.toml:2: "1.5" is not a whole number`, "for example 60"},
		"":                                     {"f.toml: is empty", "pourwell event --sample prints a file to start from"},
		"\x00\x01\x02":                         {"f.toml: is not a text file", "pourwell event --sample prints a file to start from"},
		"x = = 1":                              {"f.toml:1: ", ""},
	} {
		_, err := Read("f.toml", []byte(text))
		var fe *FileError
		if !errors.As(err, &fe) {
			t.Errorf("%q: error %v, want a FileError", text, err)
			continue
		}
		if !strings.HasPrefix(fe.Error(), want[0]) {
			t.Errorf("%q: error %q, want %q", text, fe, want[0])
		}
		if want[1] != "" && fe.Hint != want[1] {
			t.Errorf("%q: hint %q, want %q", text, fe.Hint, want[1])
		}
	}
}

func TestMissingIsSaid(t *testing.T) {
	for text, key := range map[string]string{
		"air='31C'\nhours='5h'\n":                     "guests.count",
		"air='31C'\n[guests]\ncount=10\n":             "hours",
		"hours='5h'\n[guests]\ncount=10\n":            "air",
		"air='31C'\nhours='5h'\n[guests]\ncount=10\n": "beer",
	} {
		day, err := Read("f.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		_, err = Compute("f.toml", day)
		if err == nil || !strings.Contains(err.Error(), "has no "+key) {
			t.Errorf("%q: error %v, want one that says there is no %s", text, err, key)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add([]byte(Sample))
	f.Add([]byte("[[beer]]\nname='x'\n"))
	f.Add([]byte("air = 31\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		day, err := Read("f.toml", data)
		var fe *FileError
		if err != nil && !errors.As(err, &fe) {
			t.Fatalf("error %v is not a FileError", err)
		}
		if err == nil {
			_ = day.Beers
		}
	})
}

func BenchmarkEvent(b *testing.B) {
	day, err := Read("meadow", []byte(Sample))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Compute("meadow", day); err != nil {
			b.Fatal(err)
		}
	}
}

// A line is judged at the pressure that is set once the regulator is mended: a
// line cut to fit the wrong pressure would be wrong ever after.
func TestNoLineIsCutForAWrongRegulator(t *testing.T) {
	p := meadow(t, regulator(t), `regulator = "5psi"`)
	for _, point := range p.Verdict.Points {
		if !point.Holds && strings.Contains(point.Mend, "tube") {
			t.Errorf("with the wrong pressure set the plan says %q", point.Mend)
		}
	}
}

// Two beers of one name, and a beer without a keg, cannot be planned.
func TestBeersAreToldApart(t *testing.T) {
	for _, text := range []string{
		strings.ReplaceAll(Sample, "Lime Tree Pale Ale", "Haymaker Lager"),
		strings.Replace(Sample, "kegs      = 1", "kegs      = 0", 1),
	} {
		day, err := Read("f.toml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		var fe *FileError
		if _, err := Compute("f.toml", day); !errors.As(err, &fe) {
			t.Errorf("error %v, want a FileError", err)
		}
	}
}
