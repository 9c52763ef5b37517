package quantity

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// kindOf finds the kind that a noun without its article names.
func kindOf(t *testing.T, noun string) Kind {
	t.Helper()
	for k := range kinds {
		if _, name, _ := strings.Cut(kinds[k].noun, " "); name == noun {
			return Kind(k)
		}
	}
	t.Fatalf("no kind called %q", noun)
	return 0
}

// TestUnitsAgainstReference checks every factor against GNU Units; the file
// says how.
func TestUnitsAgainstReference(t *testing.T) {
	for _, row := range checktest.Table(t, "units.csv") {
		kind, text, want := row.Text("kind"), row.Text("text"), row.Number("si")
		got, err := Parse(kindOf(t, kind), text)
		if err != nil || !(math.Abs(got-want) <= 1e-14*math.Abs(want)) {
			t.Errorf("%s %q is %.16g %s, %v; GNU Units has %.15g", kind, text, got, row.Text("si_unit"), err, want)
		}
	}
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }

// TestContentUnit holds the volume of CO2 against the definition that the
// trade uses: the density of the gas at 0 °C and 1 atm, 1.9768 g/L (NIST
// Chemistry WebBook: 0.044918 mol/L at 273.15 K and 101.325 kPa, times 44.0095
// g/mol; from memory).
func TestContentUnit(t *testing.T) {
	got, err := Parse(Content, "1vol")
	if err != nil || math.Abs(got-0.044918*44.0095) > 0.0001 {
		t.Errorf("1 volume is %v g/L, %v", got, err)
	}
}

// TestSpellings reads the same quantity in the ways that people write it.
func TestSpellings(t *testing.T) {
	for _, same := range []struct {
		kind  Kind
		texts []string
	}{
		{Temperature, []string{"38F", "38 F", "38°F", " 38degF ", "38.0f", "+38F", "3.8e1F"}},
		{Gauge, []string{"12psi", "12 PSI", "12.0Psi"}},
		{Share, []string{"40%", "0.4", "40 %", ".4"}},
		{Length, []string{"1.5in", "1 1/2in", "3/2 in", "1 1/2 IN"}},
		{Volume, []string{"19L", "19 l", "19000mL", "1.9e1L"}},
		{Time, []string{"90min", "1.5h", "5400s", "1.5 hours"}},
		{Content, []string{"2.5vol", "2.5 volumes", "2.5vols"}},
		{Irradiance, []string{"800W/m2", "800 W/m²"}},
		{Count, []string{"60", "60.0", "6e1"}},
	} {
		want, err := Parse(same.kind, same.texts[0])
		if err != nil {
			t.Fatal(err)
		}
		for _, text := range same.texts[1:] {
			if got, err := Parse(same.kind, text); err != nil || math.Abs(got-want) > 1e-12*math.Abs(want) {
				t.Errorf("%q is %v, %v; %q is %v", text, got, err, same.texts[0], want)
			}
		}
	}
}

// TestRefused lists text that is no quantity, and what the error must say.
func TestRefused(t *testing.T) {
	for _, c := range []struct {
		kind       Kind
		text, says string
	}{
		{Temperature, "38", "needs a unit, for example 38F"},
		{Temperature, "", "is empty"},
		{Temperature, "NaN", "is not a temperature"},
		{Temperature, "Inf", "is not a temperature"},
		{Temperature, "-InfC", "is not a temperature"},
		{Temperature, "4,5C", "a decimal is written with a point"},
		{Temperature, "12psi", "is a gauge pressure, not a temperature"},
		{Temperature, "38Q", `has the unknown unit "Q"`},
		{Gauge, "12pis", "did you mean psi?"},
		{Gauge, "1e308MPa", "is too large"},
		{Gauge, "1e999psi", "is not a gauge pressure"},
		{Gauge, "3mPa", "unknown unit"},
		{Length, "1/0in", "is not a length"},
		{Length, "1/2/3in", "is not a length"},
		{Length, "1 2in", "is not a length"},
		{Length, "0x10in", "unknown unit"},
		{Length, "1_000in", "unknown unit"},
		{Volume, "1pint", "a US pint is pt, an imperial pint is imppt"},
		{Volume, "1bbl", "bbl-us"},
		{Volume, "5 gallons", "impgal"},
		{Share, "40", "write 40% or a share from 0 to 1"},
		{Count, "7.5", "is not a whole number"},
		{Count, "sixty", "is not a whole number"},
		{Mass, "20lb extra", "unknown unit"},
		{Number, "1.010 sg", "unknown unit"},
	} {
		v, err := Parse(c.kind, c.text)
		var text *Error
		if !errors.As(err, &text) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("Parse(%v, %q): %v, want an error with %q", c.kind, c.text, err, c.says)
		}
		if !math.IsNaN(v) {
			t.Errorf("Parse(%v, %q) is %v beside its error", c.kind, c.text, v)
		}
	}
}

// TestExamples holds every example of a message against the parser, and every
// unit in the help.
func TestExamples(t *testing.T) {
	for k := range kinds {
		for _, word := range strings.FieldsFunc(Kind(k).Example(), func(r rune) bool { return r == ' ' || r == ',' }) {
			if word == "or" {
				continue
			}
			if _, err := Parse(Kind(k), word); err != nil {
				t.Errorf("example %q of %v: %v", word, Kind(k), err)
			}
		}
		for _, u := range Kind(k).Units() {
			if _, err := Parse(Kind(k), "1"+u); err != nil {
				t.Errorf("unit %q of %v: %v", u, Kind(k), err)
			}
		}
	}
}

// numbers draws ordinary numbers as people type them.
func numbers() *rapid.Generator[float64] {
	return rapid.Custom(func(t *rapid.T) float64 { return float64(rapid.IntRange(-999999, 999999).Draw(t, "milli")) / 1000 })
}

// TestUnitsAgree checks that a quantity reads the same in any two of its units:
// converting by hand from one to the other changes nothing.
func TestUnitsAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom([]Kind{Temperature, Difference, Gauge, Content, Length, Volume, Mass, Flow, Time, Speed}).Draw(t, "kind")
		units := kinds[k].units
		a := rapid.SampledFrom(units).Draw(t, "from")
		b := rapid.SampledFrom(units).Draw(t, "to")
		v := numbers().Draw(t, "number")
		inA, err := Parse(k, strconv.FormatFloat(v, 'g', -1, 64)+a.name)
		if err != nil {
			t.Fatal(err)
		}
		inB, err := Parse(k, strconv.FormatFloat(inA/b.factor-b.shift, 'g', -1, 64)+b.name)
		if err != nil {
			t.Fatal(err)
		}
		scale := math.Abs(inA) + math.Abs(a.shift*a.factor) + math.Abs(b.shift*b.factor)
		if math.Abs(inA-inB) > 1e-12*scale {
			t.Fatalf("%v %s is %v, by way of %s %v", v, a.name, inA, b.name, inB)
		}
	})
}

// TestLargerIsLarger checks that a larger number in the same unit is a larger
// quantity.
func TestLargerIsLarger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Kind(rapid.IntRange(int(Temperature), int(Conductance)).Draw(t, "kind"))
		u := rapid.SampledFrom(kinds[k].units).Draw(t, "unit")
		a, b := numbers().Draw(t, "a"), numbers().Draw(t, "b")
		inA, errA := Parse(k, strconv.FormatFloat(a, 'g', -1, 64)+u.name)
		inB, errB := Parse(k, strconv.FormatFloat(b, 'g', -1, 64)+u.name)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		if (a < b) != (inA < inB) {
			t.Fatalf("%v and %v %s are %v and %v", a, b, u.name, inA, inB)
		}
	})
}

// FuzzParse checks that any text either gives a finite number or an *Error
// with NaN, and that blanks around it do not matter.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"38F", "12psi", "3/16in", "1 1/2in", "40%", "0.4", "1e400", "1/0", "-2C", "NaN", "±", "4,5C", "1bbl", "µm", "°", "1/1e-320in"} {
		for k := range kinds {
			f.Add(uint8(k), text)
		}
	}
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		k := Kind(int(kind) % len(kinds))
		v, err := Parse(k, text)
		var known *Error
		switch {
		case err != nil && !errors.As(err, &known):
			t.Fatalf("Parse(%v, %q): an error of another type: %v", k, text, err)
		case err != nil && !math.IsNaN(v):
			t.Fatalf("Parse(%v, %q) is %v beside its error", k, text, v)
		case err == nil && (math.IsNaN(v) || math.IsInf(v, 0)):
			t.Fatalf("Parse(%v, %q) is %v", k, text, v)
		}
		w, again := Parse(k, " "+text+"\t")
		if (err == nil) != (again == nil) || err == nil && v != w {
			t.Fatalf("Parse(%v, %q) is %v, %v; with blanks around it %v, %v", k, text, v, err, w, again)
		}
	})
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse(Gauge, "12.5psi"); err != nil {
			b.Fatal(err)
		}
	}
}
