package calc

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"github.com/google/go-cmp/cmp"
)

// meadow has an input of each sort.
func meadow() *Calculation {
	c := &Calculation{
		Package: "test", Name: "meadow",
		Inputs: append([]Input{
			{Name: "temp", Kind: quantity.Temperature, Help: "beer temperature"},
			{Name: "gauge", Kind: quantity.Gauge, Help: "pressure set"},
			{Name: "co2", Kind: quantity.Content, Help: "dissolved CO2"},
			{Name: "co2-share", Kind: quantity.Share, Default: "70%", Help: "of the gas"},
			{Name: "for", Kind: quantity.Time, Help: "time"},
			{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "the keg"},
			{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "us-pint", Help: "the glass"},
			{Name: "motion", Kind: quantity.Text, Choices: []string{"still", "carried"}, Default: "still", Help: "how"},
			{Name: "tube", Kind: quantity.Text, Repeat: true, Help: "a tube"},
			{Name: "lid", Kind: quantity.Switch, Help: "with a lid"},
			{Name: "gravity-k", Kind: quantity.Number, Key: "k", Help: "a number"},
		}, BeerInputs()...),
	}
	return c.Ready()
}

func valuesOf(t *testing.T, texts ...string) *Values {
	t.Helper()
	v, err := NewValues(meadow())
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(texts); i += 2 {
		if err := v.SetText(texts[i], texts[i+1]); err != nil {
			t.Fatal(err)
		}
	}
	return v
}

// TestInputKeys checks that each key ends in its unit, once.
func TestInputKeys(t *testing.T) {
	want := map[string]string{
		"temp": "temp_c", "gauge": "gauge_kpa", "co2": "co2_volumes", "co2-share": "co2_share", "for": "for_s", "keg": "keg",
		"motion": "motion", "tube": "tube", "lid": "lid", "gravity-k": "k", "abv": "abv_share", "fg": "fg",
		"elevation": "elevation_m", "station-pressure": "station_pressure_kpa",
	}
	for name, key := range want {
		if got := meadow().Input(name).InputKey(); got != key {
			t.Errorf("--%s has the key %q, want %q", name, got, key)
		}
	}
	if meadow().Input("nothing") != nil {
		t.Error("an input that is not there is found")
	}
}

// TestValues reads back what was typed.
func TestValues(t *testing.T) {
	v := valuesOf(t, "temp", "50F", "gauge", "1bar", "co2", "5g/L", "for", "90min", "keg", "30L", "lid", "true", "gravity-k", "2.5")
	if err := v.SetText("tube", "3/16in:5ft", "7mm:1m"); err != nil {
		t.Fatal(err)
	}
	if got := v.Temperature("temp").Celsius(); math.Abs(got-10) > 1e-9 {
		t.Errorf("50 °F are %v °C", got)
	}
	if got := v.Gauge("gauge").KPa(); math.Abs(got-100) > 1e-9 {
		t.Errorf("1 bar is %v kPa", got)
	}
	if got := v.Content("co2").GramsPerLitre(); got != 5 {
		t.Errorf("5 g/L are %v", got)
	}
	if v.Duration("for") != 90*time.Minute || v.Number("gravity-k") != 2.5 || !v.On("lid") || v.Text("motion") != "still" {
		t.Error("time, number, switch or word is lost")
	}
	if got := v.Vessel("keg").Capacity; math.Abs(float64(got)-0.03) > 0.001 {
		t.Errorf("the keg holds %v", got)
	}
	if diff := cmp.Diff([]string{"3/16in:5ft", "7mm:1m"}, v.Texts("tube")); diff != "" {
		t.Error(diff)
	}
	if v.Given("co2-share") || !v.Has("co2-share") || v.Number("co2-share") != 0.7 {
		t.Error("the default passes for typed")
	}
	if v.Has("elevation") || !math.IsNaN(v.Number("elevation")) || v.Or("elevation", 3) != 3 || v.Temperature("temp") == (valuesOf(t)).Temperature("temp") {
		t.Error("what was not typed has a value")
	}
	if valuesOf(t).Temperature("temp").IsValid() || valuesOf(t).Duration("for") != 0 {
		t.Error("what was not typed is valid")
	}
	each := map[string]any{}
	for key, value := range v.Each() {
		each[key] = value
	}
	for key, want := range map[string]any{"keg": "30L", "lid": true, "k": 2.5, "tube": []string{"3/16in:5ft", "7mm:1m"}, "for_s": 5400.0, "co2_share": 0.7} {
		if diff := cmp.Diff(want, each[key]); diff != "" {
			t.Errorf("%s: %s", key, diff)
		}
	}
	if got, ok := v.ByKey("for_s"); !ok || got != 5400 {
		t.Errorf("for_s is %v", got)
	}
	if _, ok := v.ByKey("motion"); ok {
		t.Error("a word has a number")
	}
}

// TestLongTimes checks that a time no Duration can hold stays out of range.
func TestLongTimes(t *testing.T) {
	if got := valuesOf(t, "for", "1e30s").Duration("for"); got != math.MaxInt64 {
		t.Errorf("1e30 s are %v", got)
	}
	if got := valuesOf(t, "for", "-1e30s").Duration("for"); got != math.MinInt64 {
		t.Errorf("-1e30 s are %v", got)
	}
}

// TestUsage checks messages and hints of what is typed wrong.
func TestUsage(t *testing.T) {
	v := valuesOf(t, "temp", "38F")
	for _, c := range []struct {
		err        error
		what, hint string
	}{
		{v.SetText("tmp", "38F"), `test meadow has no input "tmp"`, "did you mean temp?"},
		{v.SetText("temp", "38"), `--temp: "38" needs a unit`, "for example 38F or 3.3C"},
		{v.SetText("motion", "stil"), `--motion: "stil" is not one of still, carried`, "did you mean still?"},
		{v.SetText("glass", "us-pnt"), `--glass: "us-pnt" is neither a glass by name nor a volume`, "did you mean us-pint?"},
		{v.Exactly(2, "temp", "gauge", "co2"), "test meadow needs two of --temp, --gauge and --co2", "add --gauge or --co2"},
		{v.Exactly(1, "gauge", "co2"), "test meadow needs one of --gauge and --co2", "add --gauge or --co2"},
		{valuesOf(t, "temp", "38F", "gauge", "1bar").Exactly(1, "temp", "gauge", "co2"), "test meadow needs one of --temp, --gauge and --co2, not --temp and --gauge", "drop --temp or --gauge"},
		{valuesOf(t, "gauge", "1bar", "co2", "5g/L").Exactly(1, "gauge", "co2"), "test meadow needs one of --gauge and --co2, not all", "drop --gauge or --co2"},
		{v.Require("temp", "gauge"), "test meadow needs --gauge", "add --gauge, pressure set, for example 12psi or 0.8bar"},
	} {
		var usage *UsageError
		if !errors.As(c.err, &usage) || usage.What != c.what || usage.Hint != c.hint {
			t.Errorf("%v, want %q and %q", c.err, c.what, c.hint)
		}
	}
	if err := v.Exactly(1, "temp", "gauge"); err != nil {
		t.Error(err)
	}
	if err := v.Require("temp", "co2-share"); err != nil {
		t.Error(err)
	}
	if got := (&UsageError{What: "wrong"}).Error(); got != "wrong" {
		t.Errorf("an error without a hint reads %q", got)
	}
}

// TestAir checks the three ways to give the air pressure. 84.556 kPa stand at
// 1500 m in the standard atmosphere (ISO 2533, from memory).
func TestAir(t *testing.T) {
	for _, c := range []struct {
		texts []string
		kPa   float64
	}{
		{nil, 101.325}, {[]string{"elevation", "1500m"}, 84.556}, {[]string{"station-pressure", "845hPa"}, 84.5},
	} {
		air, err := valuesOf(t, c.texts...).Air()
		if err != nil || math.Abs(air.KPa()-c.kPa) > 0.001 {
			t.Errorf("%v: %v kPa, %v, want %v", c.texts, air.KPa(), err, c.kPa)
		}
	}
	for _, texts := range [][]string{
		{"elevation", "1500m", "station-pressure", "845hPa"}, {"sea-level-pressure", "1018hPa"},
		{"station-pressure", "845hPa", "sea-level-pressure", "1018hPa"},
	} {
		var usage *UsageError
		if _, err := valuesOf(t, texts...).Air(); !errors.As(err, &usage) {
			t.Errorf("%v: %v", texts, err)
		}
	}
	// What the environment supposes gives way to what is typed, and is told.
	v := valuesOf(t)
	if err := v.Suppose("elevation", "1500m"); err != nil {
		t.Fatal(err)
	}
	if air, err := v.Air(); err != nil || math.Abs(air.KPa()-84.556) > 0.001 || v.Given("elevation") {
		t.Errorf("supposed 1500 m: %v, %v", air, err)
	}
	if told := strings.Join(v.Assumptions(), ", "); !strings.Contains(told, "elevation {1500 m}") || strings.Contains(told, "sea level") {
		t.Errorf("assumed: %s", told)
	}
	if err := v.Suppose("elevation", "high"); err == nil {
		t.Error("a height of words is accepted")
	}
	// What one run of a range supposes, the whole range tells.
	base := valuesOf(t)
	base.Share(v)
	if told := strings.Join(base.Assumptions(), ", "); !strings.Contains(told, "elevation {1500 m}") || base.Given("elevation") {
		t.Errorf("a range assumes: %s", told)
	}
}

// TestBeer checks the ways to describe a beer.
func TestBeer(t *testing.T) {
	ordinary, err := valuesOf(t).Beer()
	if err != nil || ordinary.ABV() != 0.05 {
		t.Errorf("ordinary beer has %v, %v", ordinary.ABV(), err)
	}
	water, err := valuesOf(t, "abv", "0%", "fg", "1.000").Beer()
	if err != nil || water.ABV() != 0 || water.FinalGravity() != 1 {
		t.Errorf("water is %v, %v", water, err)
	}
	if strong, err := valuesOf(t, "abv", "8%", "og", "1.080").Beer(); err != nil || strong.FinalGravity() >= 1.08 {
		t.Errorf("a strong beer is %v, %v", strong, err)
	}
	var usage *UsageError
	if _, err := valuesOf(t, "og", "1.050", "fg", "1.010").Beer(); !errors.As(err, &usage) {
		t.Errorf("both gravities: %v", err)
	}
}

// TestAssumptions lists defaults, and what is taken where nothing is typed.
func TestAssumptions(t *testing.T) {
	v := valuesOf(t, "temp", "38F")
	if _, err := v.Air(); err != nil {
		t.Fatal(err)
	}
	want := []string{"CO2 share {0.7 share}", "glass us-pint", "motion still", "alcohol {0.05 share}", "final gravity 1.010", "sea level"}
	if diff := cmp.Diff(want, v.Assumptions()); diff != "" {
		t.Error(diff)
	}
	if typed := valuesOf(t, "co2-share", "70%", "glass", "16oz", "motion", "carried", "abv", "5%", "fg", "1.010").Assumptions(); len(typed) != 0 {
		t.Errorf("what was typed is assumed: %v", typed)
	}
}

// TestCloneAndAssign: copies do not touch each other.
func TestCloneAndAssign(t *testing.T) {
	v := valuesOf(t, "temp", "38F")
	w := v.Clone()
	w.SetNumber("temp", 300)
	if v.Number("temp") == 300 {
		t.Error("a clone changes its original")
	}
	w.Assign(v)
	if w.Number("temp") != v.Number("temp") || w.Given("gauge") {
		t.Error("an assigned copy differs")
	}
	w.SetNumber("temp", 300)
	if v.Number("temp") == 300 {
		t.Error("an assigned copy changes its original")
	}
	if n := testing.AllocsPerRun(100, func() { w.Assign(v); w.SetNumber("temp", 300) }); n != 0 {
		t.Errorf("assigning allocates %v times", n)
	}
}

// TestResult checks what a result holds, and what leads it.
func TestResult(t *testing.T) {
	var r Result
	if r.Lead() != "" {
		t.Error("nothing leads")
	}
	r.SetText("motion", "still")
	r.Set("time_s", 60)
	r.Set("level_kpa", 100)
	if r.Lead() != "time_s" {
		t.Errorf("%q leads", r.Lead())
	}
	called := 0
	r.Band("level_kpa", func() volume.Band {
		called++
		return volume.Band{Low: 99000, High: 101000, Suffix: "pa", Source: "a gauge"}
	})
	r.Working(func() []volume.Step { called++; return make([]volume.Step, 2) })
	r.Working(func() []volume.Step { return make([]volume.Step, 1) })
	if r.Lead() != "level_kpa" || called != 0 {
		t.Errorf("%q leads, %d calls", r.Lead(), called)
	}
	if diff := cmp.Diff([]Band{{"level_kpa", 99, 101, "a gauge"}}, r.Bands()); diff != "" {
		t.Error(diff)
	}
	if len(r.Steps()) != 3 {
		t.Errorf("%d steps", len(r.Steps()))
	}
	if _, ok := r.Get("motion"); ok {
		t.Error("a word is a number")
	}
	if got := r.Quote("at {level_kpa}, {temp_c}, {for_s} and {nothing}", valuesOf(t, "for", "2s")); got != "at {100 kpa}, {temp_c}, {2 s} and {nothing}" {
		t.Errorf("quoted %q", got)
	}
	r.Reset()
	if len(r.Values)+len(r.Notes)+len(r.Steps())+len(r.Bands())+len(r.Tables) != 0 || r.Answer != "" || r.Lead() != "" {
		t.Error("something is left after Reset")
	}
}

// TestPut holds the type of an answer against the unit of its key.
func TestPut(t *testing.T) {
	for _, c := range []struct {
		key  string
		q    any
		want float64
	}{
		{"time_s", 90 * time.Minute, 5400}, {"wall_mm", quantity.Metres(0.005), 5}, {"length_m", quantity.Metres(2), 2},
		{"glass_l", quantity.CubicMetres(0.5e-3), 0.5}, {"dew_kg", quantity.Kilograms(0.2), 0.2}, {"loss_kpa", quantity.Pascals(1500), 1.5},
		{"gauge_kpa", carbonation.PaG(80e3), 80}, {"temperature_c", thermal.Celsius(5), 5}, {"kegs", 3, 3}, {"full_share", 0.5, 0.5},
		{"fall_k", thermal.Difference(2), 2}, {"flow_l_per_min", lines.Flow(1e-3 / 60), 1}, {"co2_volumes", carbonation.Volumes(2.5), 2.5},
	} {
		var r Result
		r.Put(c.key, c.q)
		if got, _ := r.Get(c.key); math.Abs(got-c.want) > 1e-12*c.want {
			t.Errorf("%v under %s: %v, want %v", c.q, c.key, got, c.want)
		}
	}
}

// TestTyped puts what was typed into words.
func TestTyped(t *testing.T) {
	var got []string
	for _, in := range valuesOf(t, "temp", "10C", "keg", "30L", "lid", "true", "co2-share", "50%").Typed() {
		got = append(got, in.Sentence)
	}
	want := []string{"temperature {10 c}", "CO2 share {0.5 share}", "keg 30L", "lid"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestAnswerTellsOfUnusedAir: an air pressure that was typed and does not matter
// is told of; one that was not typed, or was read, is not.
func TestAnswerTellsOfUnusedAir(t *testing.T) {
	for name, want := range map[string]int{"unused": 1, "not typed": 0, "read": 0} {
		in := valuesOf(t)
		if name != "not typed" {
			in = valuesOf(t, "elevation", "100m")
		}
		in.calc.Run = func(v *Values, _ *Result) error {
			if name != "read" {
				return nil
			}
			_, err := v.Air()
			return err
		}
		var r Result
		if err := in.calc.Answer(in, &r); err != nil || len(r.Notes) != want {
			t.Errorf("%s: notes %v, %v", name, r.Notes, err)
		}
	}
}

// TestAnswerHoldsRanges: a value beyond the range that the help states has no
// answer, though the calculation pays no heed to it; the bounds themselves do.
func TestAnswerHoldsRanges(t *testing.T) {
	own := errors.New("its own words")
	c := &Calculation{
		Package: "test", Name: "bounds",
		Inputs: []Input{
			{Name: "temp", Kind: quantity.Temperature, limit: volume.Range{Name: "temperature", Min: -1, Max: 40, Suffix: "c"}},
			{Name: "bore", Kind: quantity.Length, limit: volume.Range{Name: "bore", Min: 1, Max: 50, Suffix: "mm"}},
			{Name: "for", Kind: quantity.Time, limit: volume.Range{Name: "time", Min: 0, Max: 1000, Suffix: "d"}},
			{Name: "share", Kind: quantity.Share, Default: "300%", limit: volume.Range{Name: "share", Min: 0, Max: 1, Suffix: "share"}},
		},
		Run: func(in *Values, _ *Result) error {
			if in.Number("bore") > 0.03 {
				return own
			}
			return nil
		},
	}
	c.Ready()
	for text, want := range map[string]string{
		"temp -1C": "", "temp 40C": "", "temp 104F": "", "temp 40.01C": "temperature", "temp -2C": "temperature",
		"bore 1mm": "", "bore 50mm": "own", "bore 51mm": "bore", "bore 0.03in": "bore", "bore 40mm": "own",
		"for 1000d": "", "for 1001d": "time", "share 1": "", "share 101%": "share",
	} {
		v, err := NewValues(c)
		if err != nil {
			t.Fatal(err)
		}
		name, typed, _ := strings.Cut(text, " ")
		if err := v.SetText(name, typed); err != nil {
			t.Fatal(err)
		}
		err = c.Answer(v, &Result{})
		var beyond *volume.RangeError
		switch {
		case want == "" && err != nil, want == "own" && !errors.Is(err, own):
			t.Errorf("%s: %v", text, err)
		case want != "" && want != "own" && (!errors.As(err, &beyond) || beyond.Name != want):
			t.Errorf("%s: %v, want a range error on the %s", text, err, want)
		}
	}
}

// TestMistakesInDescriptions panic: they are the programmer's.
func TestMistakesInDescriptions(t *testing.T) {
	for name, f := range map[string]func(){
		"an input that is not there": func() { valuesOf(t).Number("nothing") },
		"a limit that is not there":  func() { Limit("volume.Tub.Colour") },
		"a key of another measure":   func() { new(Result).Put("time_s", thermal.Celsius(5)) },
		"a type without a measure":   func() { new(Result).Put("time_s", "soon") },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s passes", name)
				}
			}()
			f()
		}()
	}
	bad := &Calculation{Package: "test", Name: "bad", Inputs: []Input{{Name: "temp", Kind: quantity.Temperature, Default: "38"}}}
	if _, err := NewValues(bad.Ready()); err == nil {
		t.Error("a default that cannot be read passes")
	}
}

// TestMeant knows slips of the finger and the other words for a thing.
func TestMeant(t *testing.T) {
	for word, want := range map[string]string{
		"guage": "gauge", "regulator": "gauge", "arrives": "from", "inlet": "from", "serve_at": "to", "gravity": "fg",
		"tubes": "tube", "hose": "tube", "barometer": "station-pressure", "colour": "", "box-ua": "ua",
	} {
		if got := Meant(word, []string{"gauge", "from", "to", "fg", "tube", "station-pressure", "ua"}); got != want {
			t.Errorf("%s: %q, want %q", word, got, want)
		}
	}
	for word, want := range map[string]string{
		"inlet":    "temp", // not --input, which has more of its letters
		"regulatr": "gauge",
		"to":       "", // not --fg
		"hours":    "",
	} {
		if got := Meant(word, []string{"temp", "gauge", "co2", "fg", "og", "input"}); got != want {
			t.Errorf("%s is taken for %q, want %q", word, got, want)
		}
	}
	if got := Meant("from", []string{"name", "arrives", "serve_at"}); got != "arrives" {
		t.Errorf("a key of a file: %q", got)
	}
}
