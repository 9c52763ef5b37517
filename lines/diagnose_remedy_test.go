package lines

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// carbonated is a keg at temp under gauge, through length of 3/16 in tube, of
// beer that took up its gas at 38 °F and 12 psi: 2.57 volumes by the trade's chart.
func carbonated(length unit.Length, gauge, fahrenheit float64) Observation {
	run := DefaultRun(Tube{Bore: 3 * Inch / 16, Length: length})
	run.Temp = thermal.Fahrenheit(fahrenheit)
	return Observation{
		Run: run, Serving: DefaultServing(psi(gauge), carbonation.Content{}),
		CarbonatedTemp: thermal.Fahrenheit(38), CarbonatedGauge: psi(12), CarbonatedFor: 240 * time.Hour,
	}
}

func causes(d Diagnosis) []string {
	var all []string
	for _, f := range d.Findings {
		all = append(all, f.Cause)
	}
	return all
}

// A keg far too warm under far too little pressure: cooled to where the trade's
// chart has it, it needs what it was carbonated at, and the line is right as it
// is. Nothing is to be shortened.
func TestRemediesAgreeForAWarmKeg(t *testing.T) {
	d := must(carbonated(5*Foot, 5, 60).Diagnose())(t)
	if len(d.Findings) != 1 || d.Findings[0].Cause != "keg too warm for its pressure" {
		t.Fatalf("found %q", causes(d))
	}
	remedy := d.Findings[0].Remedy.String()
	for _, part := range []string{"cool the keg to 38.0 °F", "then set 12.0 psi", "as it is", "25."} {
		if !strings.Contains(remedy, part) {
			t.Errorf("remedy %q lacks %q", remedy, part)
		}
	}
}

// No line is cut for beer that foams in any glass.
func TestNoLineForAHotKeg(t *testing.T) {
	d := must(carbonated(5*Foot, 12, 75).Diagnose())(t)
	if r := d.Findings[0].Remedy.String(); len(d.Findings) != 1 || !strings.Contains(r, "cool the keg to 38.0 °F (3.3 °C); until then 36.") || strings.Contains(r, "tube") {
		t.Errorf("%q: %s", causes(d), r)
	}
}

// A keg served warm through a coil in ice is not to be cooled: its gauge goes up
// to what its gas needs, about 30 psi at 20 °C (common practice, no source).
func TestWarmKegThroughACoil(t *testing.T) {
	o := carbonated(5*Foot, 12, 68)
	o.CarbonatedTemp, o.Serving.Content = thermal.Temperature{}, carbonation.Volumes(2.5)
	o.Run.Tubes = append([]Tube{{Bore: 6.5e-3, Length: 15, Coil: 0.2, Material: "stainless"}}, o.Run.Tubes...)
	o.Serving.Chiller = thermal.DefaultCoil().Packed()
	d := must(o.Diagnose())(t)
	if len(d.Findings) != 1 || d.Findings[0].Cause != "pressure too low for the beer's gas" {
		t.Fatalf("found %q", causes(d))
	}
	checktest.Near(t, "psi to set", d.Needed.PSI(), 30, 1)
}

// No line of 3/8 in is made long enough for 12 psi.
func TestNoEndlessLine(t *testing.T) {
	o := Observation{Run: DefaultRun(Tube{Bore: 3 * Inch / 8, Length: 5 * Foot}), Serving: DefaultServing(psi(12), carbonation.Content{})}
	d := must(o.Diagnose())(t)
	if len(d.Findings) != 1 || !strings.Contains(string(d.Findings[0].Remedy), "a line of narrow tube") {
		t.Errorf("%+v", d.Findings)
	}
}

// The gauge is above what the beer needs: down it goes, the four feet of the
// trade's article are right for 12 psi, and nobody is told not to.
func TestHighGaugeIsTurnedDownFirst(t *testing.T) {
	d := must(carbonated(4*Foot, 20, 38).Diagnose())(t)
	if len(d.Findings) != 1 || d.Findings[0].Cause != "pressure too high for the beer's gas" || !d.Findings[0].Fits {
		t.Fatalf("found %q", causes(d))
	}
	if r := d.Findings[0].Remedy.String(); !strings.Contains(r, "set 12.0 psi") || strings.Contains(r, "do not lower") {
		t.Errorf("remedy %q", r)
	}
	// A line far too short even so: its length is for the lower pressure.
	d = must(carbonated(2*Foot, 20, 38).Diagnose())(t)
	if len(d.Findings) != 2 || d.Findings[1].Cause != "pressure too high for the beer's gas" && d.Findings[0].Cause != "pressure too high for the beer's gas" {
		t.Fatalf("found %q", causes(d))
	}
	at12 := must(DefaultRun(Tube{Bore: 3 * Inch / 16}).Length(0, 2*OuncePerSecond, psi(12)))(t).Length
	for _, f := range d.Findings {
		if strings.Contains(string(f.Remedy), "do not lower") {
			t.Errorf("%s: %q", f.Cause, f.Remedy)
		}
		if f.Cause == "too little restriction" {
			checktest.Near(t, "length for 12 psi", lastNumber(t, f.Remedy, "m"), float64(at12), 0.01)
		}
	}
}

// Under too little pressure the line is balanced for the pressure that holds the
// gas.
func TestLineIsBalancedForThePressureToSet(t *testing.T) {
	o := carbonated(20*Foot, 5, 38)
	d := must(o.Diagnose())(t)
	need := must(o.Run.Length(0, o.Serving.Target, d.Needed))(t).Length
	for _, f := range d.Findings {
		if f.Cause == "too much restriction for the pressure" {
			checktest.Near(t, "length in the remedy", lastNumber(t, f.Remedy, "m"), float64(need), 0.01)
		}
	}
	if d.Findings[0].Cause != "pressure too low for the beer's gas" || len(d.Findings) != 2 {
		t.Errorf("found %q", causes(d))
	}
}

// lastNumber returns the last number of unit suffix that a sentence quotes.
func lastNumber(t *testing.T, s Sentence, suffix string) float64 {
	t.Helper()
	all := regexp.MustCompile(`\{([-0-9.e+]+) `+suffix+`\}`).FindAllStringSubmatch(string(s), -1)
	if len(all) == 0 {
		t.Fatalf("no %s in %q", suffix, s)
	}
	v, err := strconv.ParseFloat(all[len(all)-1][1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// Beer of 20 °C with 2.5 volumes presses with about 30 psi (common practice, no
// source): it foams in an open glass, whatever the gauge.
func TestBeerTooWarmAtTheTap(t *testing.T) {
	warm := Observation{
		Run:     DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 10 * Foot}),
		Serving: DefaultServing(psi(29), carbonation.Content{}), CarbonatedTemp: thermal.Celsius(20), CarbonatedGauge: psi(29),
		CarbonatedFor: 240 * time.Hour,
	}
	warm.Run.Temp = thermal.Celsius(20)
	d := must(warm.Diagnose())(t)
	if len(d.Findings) != 1 || d.Findings[0].Cause != "beer too warm at the tap" {
		t.Fatalf("found %q", causes(d))
	}
	if r := d.Findings[0].Remedy.String(); !strings.Contains(r, "cool the keg to 38.0 °F (3.3 °C) and then set 1") {
		t.Errorf("remedy %q", r)
	}
	read := warm // a thermometer in the glass knows better
	read.BeerTemp = thermal.Celsius(4)
	if d := must(read.Diagnose())(t); len(d.Findings) != 0 {
		t.Errorf("cold in the glass: found %q", causes(d))
	}
	for _, c := range []struct {
		what  string
		edit  func(*Observation)
		cause string
		says  string
	}{
		{"a short coil", func(o *Observation) {
			o.Run.Tubes = []Tube{{Bore: 6.5e-3, Length: 1, Coil: 0.2, Material: "stainless"}, {Bore: 3 * Inch / 16, Length: 10 * Foot}}
			o.Serving.Chiller = thermal.DefaultCoil().Still()
		}, "beer too warm at the tap", "chill it more"},
		{"a warm line", func(o *Observation) {
			o.Run.Temp, o.CarbonatedTemp, o.CarbonatedGauge = thermal.Celsius(3), thermal.Celsius(3), psi(12)
			o.Serving.Gauge, o.Serving.LineTemp = psi(12), thermal.Celsius(25)
		}, "beer too warm at the tap", "keep the line cold"},
		{"content not known", func(o *Observation) { o.CarbonatedTemp = thermal.Temperature{} }, "beer too warm at the tap", "cool the keg"},
	} {
		o := warm
		c.edit(&o)
		found := false
		for _, f := range must(o.Diagnose())(t).Findings {
			found = found || f.Cause == c.cause && strings.Contains(string(f.Remedy), c.says)
		}
		if !found {
			t.Errorf("%s: found %+v", c.what, must(o.Diagnose())(t).Findings)
		}
	}
}

func TestNoPressureApplied(t *testing.T) {
	o := Observation{Run: DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 5 * Foot}), Serving: DefaultServing(psi(0), carbonation.Content{})}
	d := must(o.Diagnose())(t)
	if len(d.Findings) != 1 || d.Findings[0].Cause != "no pressure is applied" || !(d.Findings[0].Size > 0) {
		t.Errorf("%+v", d.Findings)
	}
	o = carbonated(5*Foot, 0, 38)
	d = must(o.Diagnose())(t)
	if len(d.Findings) != 2 || !strings.Contains(d.Findings[0].Remedy.String()+d.Findings[1].Remedy.String(), "with 12.0 psi (0.83 bar) set, the tap pours") {
		t.Errorf("%+v", d.Findings)
	}
}

// Pressure that is not there is not left over.
func TestSurplus(t *testing.T) {
	for _, p := range []float64{-9e3, 0, math.NaN()} {
		if s := surplus(p, "left over at the tap"); s != "" {
			t.Errorf("%g Pa: %q", p, s)
		}
	}
	if s := surplus(9e3, "left over at the tap"); s != "; {9 kpa} are left over at the tap" {
		t.Errorf("9 kPa: %q", s)
	}
}

// Beer that holds less than the air alone would: there is no gauge to set.
func TestFlatBeer(t *testing.T) {
	o := carbonated(5*Foot, 12, 38)
	o.Serving.Content = carbonation.Volumes(0.8)
	d := must(o.Diagnose())(t)
	if d.Findings[0].Cause != "under-carbonated for its pressure" || !strings.Contains(string(d.Findings[0].Remedy), "for about a week") {
		t.Errorf("%+v", d.Findings)
	}
}

// A line that no cold helps is said to be one.
func TestStandingTooCold(t *testing.T) {
	run, s := balanced(t)
	if st := must(run.Stand(s))(t); st.TooCold {
		t.Errorf("a balanced line breaks out at %v", st.Breakout)
	}
	s.Gauge = psi(5)
	if st := must(run.Stand(s))(t); !st.TooCold {
		t.Errorf("5 psi: breaks out at %v", st.Breakout)
	}
}

// Whatever is read, no remedy cools below 34 °F, no sentence has a pressure,
// length, flow or time below zero but what a gauge shows, nobody is told both to
// lower and not to lower the pressure, nor to lengthen and to shorten; and the
// shares of the findings make a whole.
func TestAnyDiagnosis(t *testing.T) {
	quoted := regexp.MustCompile(`([a-z]+ )?\{([^ }]+) ([a-z_]+)\}`)
	rapid.Check(t, func(t *rapid.T) {
		in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		maybe := func(name string) bool { return rapid.Bool().Draw(t, name) }
		o := carbonated(unit.Length(in("length", 0.2, 6)), in("gauge", 0, 40), in("keg", 34, 85))
		o.Run.Rise = unit.Length(in("rise", -2, 4))
		o.CarbonatedGauge = psi(in("carbonated", 3, 35))
		o.CarbonatedTemp = thermal.Fahrenheit(in("where", 34, 75))
		if maybe("known") {
			o.Serving.Content = carbonation.Volumes(in("content", 0.5, 4))
		}
		o.FirstOnly = maybe("first only")
		if maybe("timed") {
			o.Glass, o.Time = volume.GlassOf(16*volume.USFluidOunce), time.Duration(in("time", 3, 40)*1e9)
		}
		if maybe("read") {
			o.BeerTemp = thermal.Fahrenheit(in("beer", 34, 85))
		}
		if maybe("air") {
			o.Serving.Around = thermal.Shade(thermal.Celsius(in("air", 10, 38)))
		}
		if maybe("line") {
			o.Serving.LineTemp = thermal.Celsius(in("line", 0, 30))
		}
		if maybe("chiller") {
			o.Run.Tubes = append([]Tube{{Bore: 6.5e-3, Length: 8, Coil: 0.2, Material: "stainless"}}, o.Run.Tubes...)
			o.Serving.Chiller = thermal.DefaultCoil().Packed()
		}
		if maybe("high") {
			o.Serving.Air = carbonation.PaA(in("air pressure", 80e3, 103e3))
		}
		d, err := o.Diagnose()
		if err != nil {
			t.Skip(err)
		}
		sum, words := 0.0, ""
		for _, f := range d.Findings {
			sum += f.Share
			words += string(f.Remedy) + "\n"
			for _, s := range []Sentence{f.Measured, f.Expected, f.Remedy, f.Confirm} {
				for _, q := range quoted.FindAllStringSubmatch(string(s), -1) {
					v, err := strconv.ParseFloat(q[2], 64)
					if err != nil || math.IsNaN(v) || v < 0 && q[3] != "c" && q[1] != "shows " {
						t.Errorf("%s: %q", f.Cause, s)
					}
				}
			}
			advice := f.Remedy
			if f.Cause != "beer warms on its way" { // there it is what an iced line leads to
				advice += f.Expected
			}
			for _, q := range quoted.FindAllStringSubmatch(string(advice), -1) {
				if v, _ := strconv.ParseFloat(q[2], 64); q[3] == "c" && v < 1.05 {
					t.Errorf("%s: %q, %q", f.Cause, f.Remedy, f.Expected)
				}
			}
		}
		if len(d.Findings) > 0 && math.Abs(sum-1) > 1e-9 {
			t.Errorf("shares make %g", sum)
		}
		high := d.Needed.IsValid() && o.Serving.Gauge.Pascals() > d.Needed.Pascals()+pressureSlack
		if high && strings.Contains(words, "do not lower") || strings.Contains(words, "lengthen") && strings.Contains(words, "shorten") {
			t.Errorf("needed %v, gauge %v: %s", d.Needed, o.Serving.Gauge, words)
		}
	})
}
