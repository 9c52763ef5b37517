package carbonation

import (
	"math"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"pgregory.net/rapid"
)

// Units. Source: NIST SP 811 (2008), appendix B: 1 psi is 6.894757 kPa.
func TestUnits(t *testing.T) {
	p, g := PSIA(14.7), PSIG(12)
	checktest.Near(t, "kPa", p.KPa(), 14.7*6.894757, 1e-5)
	checktest.Near(t, "bar", p.Bar(), 14.7*0.06894757, 1e-7)
	checktest.Near(t, "psi", p.PSI(), 14.7, 1e-12)
	checktest.Near(t, "Pa", g.Pascals(), 12*6894.757, 1e-2)
	checktest.Near(t, "bar", g.Bar(), 12*0.06894757, 1e-7)
	checktest.Near(t, "kPa", g.KPa(), 12*6.894757, 1e-5)
	checktest.Near(t, "psi", g.Absolute(PaA(101325)).PSI(), 12+14.69595, 1e-5)
	checktest.Near(t, "psi", g.Absolute(p).Gauge(p).PSI(), 12, 1e-9)
}

func TestInvalidQuantities(t *testing.T) {
	air := PaA(101325)
	for _, p := range []Pressure{{}, PaA(-1), PaA(math.NaN()), PaA(math.Inf(1)), PaG(float64(-2 * Atmosphere)).Absolute(air), Gauge{}.Absolute(air), PaG(1).Absolute(Pressure{})} {
		if text, err := p.MarshalText(); p.IsValid() || !math.IsNaN(p.Pascals()) || err != nil || len(text) != 0 || p.String() != "invalid pressure" {
			t.Errorf("%v is valid", p)
		}
	}
	for _, g := range []Gauge{{}, PaG(math.NaN()), PaG(math.Inf(-1)), Pressure{}.Gauge(air), air.Gauge(Pressure{})} {
		if text, err := g.MarshalText(); g.IsValid() || !math.IsNaN(g.Pascals()) || err != nil || len(text) != 0 || g.String() != "invalid gauge pressure" {
			t.Errorf("%v is valid", g)
		}
	}
	for _, c := range []Content{{}, Volumes(-1), Volumes(math.NaN()), GramsPerLitre(math.Inf(1))} {
		if text, err := c.MarshalText(); c.IsValid() || !math.IsNaN(c.Volumes()) || err != nil || len(text) != 0 || c.String() != "invalid content" {
			t.Errorf("%v is valid", c)
		}
	}
}

func TestText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(0, 1e7).Draw(t, "value")
		p, g, c := PaA(v), PaG(-v), GramsPerLitre(v)
		var p2 Pressure
		var g2 Gauge
		var c2 Content
		pt, errP := p.MarshalText()
		gt, errG := g.MarshalText()
		ct, errC := c.MarshalText()
		if errP != nil || errG != nil || errC != nil {
			t.Fatal(errP, errG, errC)
		}
		if err := p2.UnmarshalText(pt); err != nil || p2 != p {
			t.Fatalf("%s gives %v, want %v (%v)", pt, p2, p, err)
		}
		if err := g2.UnmarshalText(gt); err != nil || g2 != g {
			t.Fatalf("%s gives %v, want %v (%v)", gt, g2, g, err)
		}
		if err := c2.UnmarshalText(ct); err != nil || c2 != c {
			t.Fatalf("%s gives %v, want %v (%v)", ct, c2, c, err)
		}
	})
	for text, want := range map[string]any{
		"12psig": PSIG(12), "0.8barg": BarG(0.8), "12psi gauge": PSIG(12), "12psi": PSIG(12), "80 kPa gauge": KPaG(80), "": Gauge{},
		"26.7psia": PSIA(26.7), "184kPa abs": KPaA(184), "1.84bara": BarA(1.84), "845hPa": PaA(84500), "845mbar": PaA(84500), "25inHg": PaA(25 * 13595.1 * 9.80665 * 0.0254),
	} {
		switch want := want.(type) {
		case Gauge:
			var g Gauge
			if err := g.UnmarshalText([]byte(text)); err != nil || math.Abs(g.Pascals()-want.Pascals()) > 1e-9*math.Abs(want.Pascals()) || g.IsValid() != want.IsValid() {
				t.Errorf("%q is %v, want %v (%v)", text, g, want, err)
			}
		case Pressure:
			var p Pressure
			if err := p.UnmarshalText([]byte(text)); err != nil || math.Abs(p.Pascals()-want.Pascals()) > 1e-9*want.Pascals() {
				t.Errorf("%q is %v, want %v (%v)", text, p, want, err)
			}
		}
	}
	for text, hint := range map[string]string{"12psi": "above vacuum write 12psia", "12psig": "add the pressure of the air", "0.8bar": "write 0.8bara", "1bar gauge": "add the pressure"} {
		var p Pressure
		if err := p.UnmarshalText([]byte(text)); err == nil || !strings.Contains(err.Error(), hint) {
			t.Errorf("an absolute pressure of %s: %v", text, err)
		}
	}
	for _, text := range []string{"26.7psia", "184 kPa abs", "1.8bara"} {
		var g Gauge
		if err := g.UnmarshalText([]byte(text)); err == nil || !strings.Contains(err.Error(), "less that of the air") {
			t.Errorf("a gauge reading of %s: %v", text, err)
		}
	}
	var p Pressure
	var g Gauge
	var c Content
	if p.UnmarshalText([]byte("12")) == nil || g.UnmarshalText([]byte("12C")) == nil || c.UnmarshalText([]byte("2.5")) == nil {
		t.Error("a bare number or a wrong unit passes")
	}
	if got := PSIG(12).String(); got != "82.74 kPa gauge" {
		t.Error(got)
	}
	if got := PaA(101325).String(); got != "101.33 kPa abs" && got != "101.32 kPa abs" {
		t.Error(got)
	}
	if got := Volumes(2.5).String(); got != "2.50 volumes" {
		t.Error(got)
	}
}

// Text that is a number of the right kind, but no pressure or content.
func TestTextBelowNothing(t *testing.T) {
	var c Content
	if err := c.UnmarshalText([]byte("-2vol")); err == nil || c.IsValid() {
		t.Errorf("-2vol reads as %v, %v; want an error", c, err)
	}
	var p Pressure
	if err := p.UnmarshalText([]byte("-5psi")); err == nil || p.IsValid() {
		t.Errorf("-5psi of absolute pressure reads as %v, %v; want an error", p, err)
	}
	var g Gauge
	if err := g.UnmarshalText([]byte("-5psi")); err != nil || !g.IsValid() {
		t.Errorf("a gauge may read -5psi: %v, %v", g, err)
	}
}

// Flat beer in a vacuum needs no CO2 in the gas.
func TestShareInAVacuum(t *testing.T) {
	d := DefaultDraught()
	e, err := d.SolveShare(thermal.Celsius(4), Volumes(0), PaG(float64(-Atmosphere)))
	if err != nil || e.CO2Share != 0 {
		t.Errorf("share %v, %v; want 0", e.CO2Share, err)
	}
}

// TestHighPressure speaks up above 30 psi, 206.8427 kPa, and not at it.
func TestHighPressure(t *testing.T) {
	for g, want := range map[Gauge]int{PSIG(30): 0, PaG(207e3): 1, PaG(-50e3): 0, {}: 0} {
		if got := HighPressure(g); len(got) != want || want > 0 && got[0].Code != OverPressure {
			t.Errorf("%v: %v", g, got)
		}
	}
}
