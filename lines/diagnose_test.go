package lines

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// inOrder is an observation of a run where nothing is off: a balanced keg, a
// glass rinsed cold, a line as cold as the keg.
func inOrder(t *testing.T) Observation {
	t.Helper()
	r, s := balanced(t)
	o := Observation{Run: r, Serving: s, Glass: volume.GlassOf(16 * volume.USFluidOunce)}
	o.Glass.Mass = 0.4
	p := must(r.Flow(s.Gauge))(t)
	o.Time = p.TimeFor(o.Glass.Volume)
	o.BeerTemp, o.GlassWas = thermal.Celsius(3.8), thermal.Celsius(8)
	return o
}

func TestNothingFound(t *testing.T) {
	d := must(inOrder(t).Diagnose())(t)
	for _, f := range d.Findings {
		t.Errorf("found %s: %s", f.Cause, f.Measured)
	}
	if len(d.Checked) < 4 {
		t.Errorf("checked only %q", d.Checked)
	}
	// The glass's part is taken out: 0.4 kg of glass at 8 °C had warmed it.
	if !(d.Tap.Celsius() < 3.8 && d.Tap.Celsius() > 2.5) {
		t.Errorf("beer at the tap %v", d.Tap)
	}
	checktest.Near(t, "needed psi", d.Needed.PSI(), 12, 0.01)
}

// Nothing read, nothing found, and what to read is said.
func TestNothingRead(t *testing.T) {
	o := inOrder(t)
	d := must(Observation{Run: o.Run, Serving: DefaultServing(psi(12), carbonation.Content{})}.Diagnose())(t)
	if len(d.Findings) != 0 || len(d.Unknown) < 4 {
		t.Errorf("%+v", d)
	}
}

// Each fault is set into the run where nothing is off; its cause comes first,
// and its number says what to do.
func TestEachCauseIsFound(t *testing.T) {
	for _, c := range []struct {
		cause  string
		remedy string // part of it
		edit   func(*testing.T, *Observation)
	}{
		{"keg too warm for its pressure", "cool the keg to 38", func(t *testing.T, o *Observation) {
			o.Run.Temp = thermal.Celsius(8)
			o.BeerTemp, o.GlassWas = thermal.Celsius(8.2), thermal.Celsius(8)
		}},
		{"keg too warm for its pressure", "cool the keg to 4", func(t *testing.T, o *Observation) {
			o.Serving.Content = carbonation.Content{}
			o.CarbonatedTemp, o.CarbonatedGauge, o.CarbonatedFor = thermal.Fahrenheit(40), psi(12), 240*time.Hour
			o.Run.Temp, o.BeerTemp = thermal.Celsius(10), thermal.Celsius(10)
		}},
		{"pressure too low for the beer's gas", "set 1", func(t *testing.T, o *Observation) {
			o.Serving.Gauge = psi(8)
			o.Time = 0
		}},
		{"pressure too low for the beer's gas", "set 1", func(t *testing.T, o *Observation) {
			o.Serving.Gauge, o.Time = psi(4), 0
			o.Serving.Around = thermal.Shade(thermal.Celsius(30))
			o.FirstOnly = true // beer at rest foams from the start: the keg's fault, not the line's
		}},
		{"over-carbonated", "vent the head space", func(t *testing.T, o *Observation) {
			o.Serving.Content = carbonation.Volumes(3.4)
		}},
		{"under-carbonated for its pressure", "for today set", func(t *testing.T, o *Observation) {
			o.Serving.Content = carbonation.Volumes(2.0)
		}},
		{"elevation forgotten", "set 1", func(t *testing.T, o *Observation) {
			o.Serving.Air = must(carbonation.AirAt(1600))(t)
		}},
		{"too little restriction", "lengthen the last tube from 19.7 in (0.50 m) to", func(t *testing.T, o *Observation) {
			o.Run.Tubes[0].Length = 0.5
			o.Time = must(o.Run.Flow(o.Serving.Gauge))(t).TimeFor(o.Glass.Volume)
		}},
		{"gauge or line not as described", "measure bores", func(t *testing.T, o *Observation) {
			o.Run.Tubes[0].Length = 6
			o.Time = 4 * time.Second
		}},
		{"tap part open, or a kinked or blocked line", "open the tap", func(t *testing.T, o *Observation) {
			o.Time *= 2
		}},
		{"rise not allowed for", "with mixed gas", func(t *testing.T, o *Observation) {
			o.Run.Rise = 5 // shortened to what flows well, the tube would not reach up
			o.Time = must(o.Run.Flow(o.Serving.Gauge))(t).TimeFor(o.Glass.Volume)
		}},
		{"too much restriction for the pressure", "shorten the last tube", func(t *testing.T, o *Observation) {
			o.Run.Tubes[0].Length = 6
			o.Time = must(o.Run.Flow(o.Serving.Gauge))(t).TimeFor(o.Glass.Volume)
		}},
		{"rise takes all the pressure", "raise the keg", func(t *testing.T, o *Observation) {
			o.Run.Rise = 12
		}},
		{"beer warms on its way", "insulate the line", func(t *testing.T, o *Observation) {
			o.BeerTemp = thermal.Celsius(9)
		}},
		{"warm line", "(23 mL) that the line holds", func(t *testing.T, o *Observation) {
			o.Serving.Around = thermal.Shade(thermal.Celsius(30))
			o.FirstOnly = true
		}},
		{"warm line", "that the line holds", func(t *testing.T, o *Observation) {
			o.Serving.LineTemp = thermal.Celsius(15)
			o.BeerTemp = thermal.Temperature{}
		}},
		{"keg carried within the hour", "let it stand for 45 min more", func(t *testing.T, o *Observation) {
			o.Carried, o.Since = true, 15*time.Minute
		}},
		{"warm or dirty glass", "rinse the glass", func(t *testing.T, o *Observation) {
			o.GlassWas = thermal.Celsius(31)
			o.BeerTemp = thermal.Temperature{}
		}},
	} {
		o := inOrder(t)
		o.Run.Tubes = append([]Tube(nil), o.Run.Tubes...)
		c.edit(t, &o)
		d := must(o.Diagnose())(t)
		if len(d.Findings) == 0 {
			t.Errorf("%s: not found", c.cause)
			continue
		}
		f := d.Findings[0]
		if f.Cause != c.cause {
			t.Errorf("%s: found %s first", c.cause, f.Cause)
		}
		if !strings.Contains(f.Remedy.String(), c.remedy) {
			t.Errorf("%s: remedy %q lacks %q", c.cause, f.Remedy, c.remedy)
		}
		for _, s := range []Sentence{f.Measured, f.Expected, f.Remedy, f.Confirm} {
			if text := s.String(); text == "" || strings.ContainsAny(text, "{}%") && !strings.Contains(text, " %") || strings.Contains(text, "NaN") || strings.Contains(text, "unknown") {
				t.Errorf("%s: sentence %q", c.cause, text)
			}
		}
		if f.Cause != "keg carried within the hour" && !(f.Size > 0) {
			t.Errorf("%s: size %v", f.Cause, f.Size)
		}
		if b := d.Band(); !(b.Low <= float64(f.Size) && float64(f.Size) < b.High) {
			t.Errorf("%s: size %v outside %+v", f.Cause, f.Size, b)
		}
		want := 8 + len(d.Findings)
		if !d.Tap.IsValid() {
			want-- // nothing was read there
		}
		if steps := d.Steps(); len(steps) != want {
			t.Errorf("%s: %d steps, want %d", f.Cause, len(steps), want)
		}
	}
}

// A warm line beside a keg in order, flowing all afternoon.
func TestGasLeavesInTheFlowingLine(t *testing.T) {
	o := inOrder(t)
	o.BeerTemp = thermal.Temperature{}
	o.Serving.LineTemp = thermal.Celsius(12)
	d := must(o.Diagnose())(t)
	found := false
	for _, f := range d.Findings {
		found = found || f.Cause == "gas leaves in the flowing line"
	}
	if !found {
		t.Errorf("findings %+v", d.Findings)
	}
}

// When only the first glass foams, what foams always does not fit and stands
// last, whatever its size.
func TestFirstGlassOnlyRanksTheLineFirst(t *testing.T) {
	o := inOrder(t)
	o.FirstOnly = true
	o.Serving.Around = thermal.Shade(thermal.Celsius(30))
	// Over-carbonated, but not so that beer at rest foams.
	o.Serving.Content, o.Serving.Crevice = carbonation.Volumes(2.82), 3e-6
	d := must(o.Diagnose())(t)
	if len(d.Findings) < 2 || d.Findings[0].Cause != "warm line" || d.Findings[len(d.Findings)-1].Fits {
		t.Errorf("findings %+v", d.Findings)
	}
}

func TestFindingsAreRanked(t *testing.T) {
	o := inOrder(t)
	o.Run.Temp, o.BeerTemp = thermal.Celsius(9), thermal.Celsius(9)
	o.GlassWas = thermal.Celsius(31)
	o.Carried = true
	d := must(o.Diagnose())(t)
	if len(d.Findings) < 3 {
		t.Fatalf("findings %+v", d.Findings)
	}
	for i := 1; i < len(d.Findings); i++ {
		if d.Findings[i].Size > d.Findings[i-1].Size {
			t.Errorf("%s (%v) stands behind %s (%v)", d.Findings[i].Cause, d.Findings[i].Size, d.Findings[i-1].Cause, d.Findings[i-1].Size)
		}
	}
	if last := d.Findings[len(d.Findings)-1]; last.Cause != "keg carried within the hour" {
		t.Errorf("last is %s", last.Cause)
	}
}

// A tap straight on the keg has no line to judge.
func TestDiagnoseWithoutALine(t *testing.T) {
	o := inOrder(t)
	o.Run = DefaultRun()
	o.Time = 0
	d := must(o.Diagnose())(t)
	if len(d.Findings) != 1 || d.Findings[0].Cause != "too little restriction" || !strings.Contains(string(d.Findings[0].Remedy), "flow control") {
		t.Errorf("%+v", d.Findings)
	}
}

func TestDiagnoseErrors(t *testing.T) {
	for _, c := range []struct {
		name string
		edit func(*Observation)
	}{
		{"gauge pressure", func(o *Observation) { o.Serving.Gauge = carbonation.Gauge{} }},
		{"temperature", func(o *Observation) { o.Run.Temp = thermal.Celsius(60) }},
		{"time for a glass", func(o *Observation) { o.Time = 2 * time.Hour }},
		{"mass of the glass", func(o *Observation) { o.Glass.Mass = 50 }},
		{"crevice radius", func(o *Observation) { o.Serving.Crevice = -1 }},
		{"air temperature", func(o *Observation) { o.Serving.Around = thermal.Shade(thermal.Celsius(90)) }},
		{"temperature", func(o *Observation) {
			o.Serving.Content, o.CarbonatedTemp, o.CarbonatedGauge = carbonation.Content{}, thermal.Celsius(60), psi(12)
		}},
		{"bore", func(o *Observation) { o.Run.Tubes[0].Bore = 0 }},
	} {
		o := inOrder(t)
		c.edit(&o)
		d, err := o.Diagnose()
		wantRange(t, c.name, err, c.name)
		if !math.IsNaN(float64(d.Flow)) || d.Findings != nil || d.Steps() != nil {
			t.Errorf("%s: result beside an error: %+v", c.name, d)
		}
	}
	if b := (Diagnosis{}).Band(); b.High != 0 {
		t.Errorf("%+v", b)
	}
}

func TestSentence(t *testing.T) {
	if got := say("set {%.5g kpa}%s", 80.0, say("; {%.4g m} more", 1.5)); got != "set {80 kpa}; {1.5 m} more" {
		t.Errorf("a sentence in a sentence: %q", string(got))
	}
	for _, c := range []struct{ in, want string }{
		{"plain", "plain"},
		{"at {3.3333 c}, now", "at 38.0 °F (3.3 °C), now"},
		{"{word} and {1.5 m", "{word} and {1.5 m"},
	} {
		if got := Sentence(c.in).String(); got != c.want {
			t.Errorf("%q reads %q, want %q", c.in, got, c.want)
		}
	}
}
