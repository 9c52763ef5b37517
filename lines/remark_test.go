package lines

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/unit"
)

// codes lists the codes of remarks in their order.
func codes(remarks []Remark) []volume.Code {
	var all []volume.Code
	for _, r := range remarks {
		all = append(all, r.Code)
	}
	return all
}

// said returns the sentence of the remark of that code, "" if there is none.
func said(remarks []Remark, code volume.Code) string {
	i := slices.IndexFunc(remarks, func(r Remark) bool { return r.Code == code })
	if i < 0 {
		return ""
	}
	return remarks[i].Text.String()
}

// Every result with a pressure on it says what to mind: above 30 psi, our
// choice, and above the rating of the weakest part. 30 psi are 206.8 kPa.
func TestOverPressure(t *testing.T) {
	const over = carbonation.OverPressure
	serving := func(g carbonation.Gauge) Serving { return DefaultServing(g, carbonation.Volumes(2.5)) }
	run := threeTubes()
	run.Tubes = []Tube{{Bore: 3 * Inch / 16, Length: 4, Material: "vinyl"}}
	for name, cautions := range map[string]func(*testing.T, Run, carbonation.Gauge) []Remark{
		"Flow": func(t *testing.T, r Run, g carbonation.Gauge) []Remark { return must(r.Flow(g))(t).Cautions() },
		"Length": func(t *testing.T, r Run, g carbonation.Gauge) []Remark {
			return must(r.Length(0, 2*OuncePerSecond, g))(t).Cautions()
		},
		"TradeLength": func(t *testing.T, r Run, g carbonation.Gauge) []Remark {
			return must(r.TradeLength(0, g))(t).Cautions()
		},
		"Calibrate": func(t *testing.T, r Run, g carbonation.Gauge) []Remark {
			glass := unit.Volume(0.4e-3)
			return must(r.Calibrate(g, glass, must(r.Flow(g))(t).TimeFor(glass)))(t).Cautions()
		},
		"Profile": func(t *testing.T, r Run, g carbonation.Gauge) []Remark {
			return must(r.Profile(serving(g), 5))(t).Cautions()
		},
		"Stand": func(t *testing.T, r Run, g carbonation.Gauge) []Remark {
			return must(r.Stand(serving(g)))(t).Cautions()
		},
		"Warm": func(t *testing.T, r Run, g carbonation.Gauge) []Remark { return must(r.Warm(serving(g)))(t).Cautions() },
		"Diagnose": func(t *testing.T, r Run, g carbonation.Gauge) []Remark {
			return must(Observation{Run: r, Serving: serving(g)}.Diagnose())(t).Cautions()
		},
	} {
		t.Run(name, func(t *testing.T) {
			for _, c := range []struct {
				psi, rated float64
				want       []volume.Code
			}{
				{29.9, 0, nil}, {30, 0, nil}, {30.1, 0, []volume.Code{over}},
				{25, 25, nil}, {25.1, 25, []volume.Code{AboveRating}},
				{35, 36, []volume.Code{over}}, {35, 34, []volume.Code{AboveRating, over}},
			} {
				r := run
				r.Rated = unit.Pressure(c.rated) * carbonation.PSI
				got := cautions(t, r, psi(c.psi))
				if diff := cmp.Diff(c.want, codes(got)); diff != "" {
					t.Errorf("%g psi, rated %g: %s", c.psi, c.rated, diff)
				}
				for _, m := range got {
					if danger := m.Code == AboveRating; danger != (m.Severity == volume.Danger) {
						t.Errorf("%s is a %v", m.Code, m.Severity)
					}
				}
			}
		})
	}
}

// 44 psi at 30 °C, the trade's chart continued (from memory): nearer the relief
// valves than a keg should be brought. 2.5 volumes come to 40 psi near 27 °C.
func TestNearRelief(t *testing.T) {
	r, s := warmRun(), warmServing()
	r.Temp = thermal.Celsius(30)
	if c := must(r.Warm(s))(t).Cautions(); !slices.Equal(codes(c), []volume.Code{carbonation.OverPressure, NearRelief}) ||
		!strings.Contains(said(c, NearRelief), "45.0 psi") || !strings.Contains(said(c, NearRelief), "cool the keg") {
		t.Errorf("cautions at 44 psi: %v", c)
	}
	r.Temp = thermal.Celsius(4)
	for p, near := range map[float64]bool{39.9: false, 40: false, 40.1: true} {
		s.Gauge = psi(p)
		if c := codes(must(r.Warm(s))(t).Cautions()); slices.Contains(c, NearRelief) != near {
			t.Errorf("cautions at %g psi: %v", p, c)
		}
	}
	// What the keg needs counts where the gauge shows less.
	r.Temp, s.Gauge = thermal.Celsius(30), psi(20)
	if c := codes(must(r.Warm(s))(t).Cautions()); !slices.Contains(c, NearRelief) {
		t.Errorf("cautions at 20 psi of 44: %v", c)
	}
}

// A keg whose needed pressure is above 30 psi says so, whatever the gauge shows.
func TestDiagnosisCautions(t *testing.T) {
	o := Observation{Run: DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 5 * Foot}), Serving: DefaultServing(psi(12), carbonation.Volumes(2.5))}
	if c := must(o.Diagnose())(t).Cautions(); c != nil {
		t.Errorf("a cold keg: %v", c)
	}
	o.Run.Temp = thermal.Celsius(24) // 2.5 volumes need about 35 psi
	if c := codes(must(o.Diagnose())(t).Cautions()); !slices.Equal(c, []volume.Code{carbonation.OverPressure}) {
		t.Errorf("a warm keg: %v", c)
	}
	if c := (Diagnosis{}).Cautions(); c != nil {
		t.Errorf("no diagnosis: %v", c)
	}
}

func TestCleaningRemarks(t *testing.T) {
	c := must(DefaultRun(Tube{Bore: 7e-3, Length: 10}).Clean())(t)
	for code, words := range map[volume.Code][]string{
		Caustic: {"caustic", "eyes", "goggles", "running water"}, MixedCleaners: {"Never mix", "poisonous gas"},
		CleanerInLine: {"pressure off", "test the rinse"}, LabelFirst: {"maker's label", "local codes"},
	} {
		for _, word := range words {
			if !strings.Contains(said(c.Cautions(), code), word) {
				t.Errorf("%s does not speak of %q", code, word)
			}
		}
	}
	// Ten metres of 7 mm hold π/4 0.7² × 1000 = 385 mL.
	if note := said(c.Notes(), TubesAlone); !strings.Contains(note, "385 mL") || !strings.Contains(note, "coupler, tap") || !strings.Contains(note, "gloves") {
		t.Errorf("note: %s", note)
	}
}

// What the notes hang on, on either side.
func TestNotes(t *testing.T) {
	has := func(what string, notes []Remark, code volume.Code, want bool) {
		t.Helper()
		if got := slices.Contains(codes(notes), code); got != want {
			t.Errorf("%s: note %s is %t, want %t", what, code, got, want)
		}
		for _, n := range notes {
			if n.Severity != volume.Note {
				t.Errorf("%s: %s is a %v", what, n.Code, n.Severity)
			}
		}
	}
	// In 10 mm beer at 3 °C, of some 2.2 mPa s, has Re near 1000 times the flow in
	// L/min: the transition counts from 2100 to 3100 (see
	// internal/pipe).
	wide := bare(Tube{Bore: 0.01, Length: 20})
	for q, want := range map[Flow]bool{0.5 * LitrePerMinute: false, 3 * LitrePerMinute: true, 20 * LitrePerMinute: false} {
		has(q.String(), must(wide.Gauge(q))(t).Notes(), InTransition, want)
	}
	five := DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 5 * Foot})
	has("length", must(five.Length(0, 2*OuncePerSecond, psi(12)))(t).Notes(), CutBack, true)
	has("flow", must(five.Flow(psi(12)))(t).Notes(), CutBack, false)

	for _, material := range []string{"", "vinyl"} {
		five.Tubes[0].Material = material
		if got := said(must(five.TradeGauge())(t).Notes(), TradeTable); strings.Contains(got, "taken as vinyl") != (material == "") {
			t.Errorf("material %q: %s", material, got)
		}
	}
	if got := said(must(five.TradeLength(0, psi(12)))(t).Notes(), TradeTable); !strings.Contains(got, "it would be") {
		t.Error(got)
	}

	s := DefaultServing(psi(12), carbonation.Volumes(2.57)) // the trade chart's balance at 38 °F
	has("cold line", must(five.Profile(s, 12))(t).Notes(), GasComesOut, false)
	s.LineTemp = thermal.Fahrenheit(60)
	has("warm line", must(five.Profile(s, 12))(t).Notes(), GasComesOut, true)
	// 2γ/r of 5 µm: 18 kPa.
	if got := said(must(five.Stand(s))(t).Notes(), CreviceAssumed); !strings.Contains(got, "0.18 bar") || !strings.Contains(got, "from 1.0 psi (0.069 bar) to 3.0 psi (0.21 bar)") {
		t.Error(got)
	}

	r, warm := warmRun(), warmServing()
	w := must(r.Warm(warm))(t)
	has("held", w.Notes(), GasLeavesKeg, false)
	for share, want := range map[float64]bool{0.96: false, 0.94: true} {
		warm.Gauge = carbonation.PaG(share * w.Needed.Pascals())
		has("held in part", must(r.Warm(warm))(t).Notes(), GasLeavesKeg, want)
	}
	warm.Gauge, warm.Target = carbonation.Gauge{}, w.Pour.Flow
	has("slow enough", must(r.Warm(warm))(t).Notes(), Choke, false)
	warm.Target = w.Pour.Flow / 2
	has("too fast", must(r.Warm(warm))(t).Notes(), Choke, true)

	o := Observation{Run: five, Serving: DefaultServing(psi(12), carbonation.Volumes(2.57))}
	has("nothing off", must(o.Diagnose())(t).Notes(), WeightRanks, false)
	o.Carried, o.Since = true, time.Minute
	has("carried", must(o.Diagnose())(t).Notes(), WeightRanks, true)
}
