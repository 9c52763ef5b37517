package carbonation

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// Units. Source: NIST SP 811 (2008), appendix B: 1 psi is 6.894757 kPa.
func TestUnits(t *testing.T) {
	p, g := AbsoluteOf(14.7*PSI), GaugeOf(12*PSI)
	checktest.Near(t, "kPa", p.KPa(), 14.7*6.894757, 1e-5)
	checktest.Near(t, "bar", p.Bar(), 14.7*0.06894757, 1e-7)
	checktest.Near(t, "psi", p.PSI(), 14.7, 1e-12)
	checktest.Near(t, "Pa", g.Pascals(), 12*6894.757, 1e-2)
	checktest.Near(t, "bar", g.Bar(), 12*0.06894757, 1e-7)
	checktest.Near(t, "kPa", g.KPa(), 12*6.894757, 1e-5)
	checktest.Near(t, "psi", g.Absolute(AbsoluteOf(Atmosphere)).PSI(), 12+14.69595, 1e-5)
	checktest.Near(t, "psi", g.Absolute(p).Gauge(p).PSI(), 12, 1e-9)
}

func TestInvalidQuantities(t *testing.T) {
	air := AbsoluteOf(Atmosphere)
	for _, p := range []Pressure{{}, AbsoluteOf(-1), AbsoluteOf(unit.Pressure(math.NaN())), AbsoluteOf(unit.Pressure(math.Inf(1))), GaugeOf(-2 * Atmosphere).Absolute(air), Gauge{}.Absolute(air), GaugeOf(1).Absolute(Pressure{})} {
		if _, err := p.MarshalText(); p.IsValid() || !math.IsNaN(p.Pascals()) || err == nil || p.String() != "invalid pressure" {
			t.Errorf("%v is valid", p)
		}
	}
	for _, g := range []Gauge{{}, GaugeOf(unit.Pressure(math.NaN())), GaugeOf(unit.Pressure(math.Inf(-1))), Pressure{}.Gauge(air), air.Gauge(Pressure{})} {
		if _, err := g.MarshalText(); g.IsValid() || !math.IsNaN(g.Pascals()) || err == nil || g.String() != "invalid gauge pressure" {
			t.Errorf("%v is valid", g)
		}
	}
	for _, c := range []Content{{}, Volumes(-1), Volumes(math.NaN()), GramsPerLitre(math.Inf(1))} {
		if _, err := c.MarshalText(); c.IsValid() || !math.IsNaN(c.Volumes()) || err == nil || c.String() != "invalid content" {
			t.Errorf("%v is valid", c)
		}
	}
}

func TestText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(0, 1e7).Draw(t, "value")
		p, g, c := AbsoluteOf(unit.Pressure(v)), GaugeOf(unit.Pressure(-v)), GramsPerLitre(v)
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
	var p Pressure
	var g Gauge
	var c Content
	if p.UnmarshalText([]byte("12")) == nil || g.UnmarshalText([]byte("12C")) == nil || c.UnmarshalText([]byte("2.5")) == nil {
		t.Error("a bare number or a wrong unit passes")
	}
	if got := GaugeOf(12 * PSI).String(); got != "82.74 kPa gauge" {
		t.Error(got)
	}
	if got := AbsoluteOf(Atmosphere).String(); got != "101.33 kPa abs" && got != "101.32 kPa abs" {
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
	e, err := d.SolveShare(thermal.Celsius(4), Volumes(0), GaugeOf(-Atmosphere))
	if err != nil || e.CO2Share != 0 {
		t.Errorf("share %v, %v; want 0", e.CO2Share, err)
	}
}

// TestHighPressure speaks up above 30 psi, 206.8427 kPa, and not at it.
func TestHighPressure(t *testing.T) {
	for g, want := range map[Gauge]int{GaugeOf(30 * PSI): 0, GaugeOf(207e3): 1, GaugeOf(-50e3): 0, {}: 0} {
		if got := HighPressure(g); len(got) != want || want > 0 && got[0].Code != OverPressure {
			t.Errorf("%v: %v", g, got)
		}
	}
}
