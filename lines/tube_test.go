package lines

import (
	"errors"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/quantity"
	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

func TestTubeText(t *testing.T) {
	for _, c := range []struct {
		text string
		want Tube
	}{
		{"3/16in:5ft", Tube{Bore: 3 * Inch / 16, Length: 5 * Foot}},
		{"3/16in x 5ft", Tube{Bore: 3 * Inch / 16, Length: 5 * Foot}},
		{"3/16in × 5 ft, ", Tube{}},
		{"3/16in×5ft vinyl", Tube{Bore: 3 * Inch / 16, Length: 5 * Foot, Material: "vinyl"}},
		{"3/16in : 5 ft : vinyl", Tube{Bore: 3 * Inch / 16, Length: 5 * Foot, Material: "vinyl"}},
		{"3/16in", Tube{Bore: 3 * Inch / 16}},
		{"3/16in:barrier", Tube{}},
		{"7mm:10m:coil95mm", Tube{Bore: 7e-3, Length: 10, Coil: 95e-3}},
		{"7mm:10m:coil 95 mm:stainless", Tube{Bore: 7e-3, Length: 10, Coil: 95e-3, Material: "stainless"}},
		{"7MM x 10M coil95mm Stainless", Tube{Bore: 7e-3, Length: 10, Coil: 95e-3, Material: "stainless"}},
		{"1/4in-od:20ft:wall0.7mm", Tube{Bore: Inch/4 - 1.4e-3, Length: 20 * Foot, Wall: 0.7e-3}},
		{"5mm:2m:wall1.5mm:rough1.5um", Tube{Bore: 5e-3, Length: 2, Wall: 1.5e-3, Roughness: 1.5e-6}},
	} {
		var got Tube
		err := got.UnmarshalText([]byte(c.text))
		if c.want == (Tube{}) {
			if err == nil && c.text != "3/16in:barrier" {
				t.Errorf("%q accepted as %+v", c.text, got)
			}
			continue
		}
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
		}
		if diff := cmp.Diff(c.want, got, approx(1e-12)); diff != "" {
			t.Errorf("%q: %s", c.text, diff)
		}
	}
}

func TestTubeTextErrors(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"", "is empty"},
		{"3/16:5ft", "needs a unit"},
		{"3/16in:5", "needs a unit"},
		{"3/16in:5lb", "is a mass"},
		{"3/16in:5ft:10ft", "no part of a tube"},
		{"3/16in:5ft:vinil", "did you mean vinyl"},
		{"3/16in:5ft:coil", "no part of a tube"},
		{"3/16in:5ft:coil95", "needs a unit"},
		{"1/4in-od:20ft", "outside diameter without a wall"},
		{"1/4in-od:20ft:wall4mm", "wall 4 mm is outside 0.01 to 3.175 mm"},
	} {
		tube := Tube{Bore: 1}
		err := tube.UnmarshalText([]byte(c.text))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: error %v, want %q", c.text, err, c.says)
		}
		if tube != (Tube{Bore: 1}) {
			t.Errorf("%q: changed the tube to %+v", c.text, tube)
		}
	}
	if _, err := (Tube{}).MarshalText(); err == nil {
		t.Error("marshalled a tube without a bore")
	}
}

func TestTubeTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		maybe := func(name string, low, high float64) unit.Length {
			return unit.Length(rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(low, high)).Draw(t, name))
		}
		in := Tube{
			Bore:      unit.Length(rapid.Float64Range(1e-3, 0.05).Draw(t, "bore")),
			Length:    maybe("length", 0.01, 300),
			Wall:      maybe("wall", 1e-4, 0.02),
			Coil:      maybe("coil", 0.05, 1),
			Roughness: maybe("rough", 1e-7, 1e-5),
			Material:  rapid.SampledFrom(append(tubeWords()[3:], "")).Draw(t, "material"),
		}
		text, err := in.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var out Tube
		if err := out.UnmarshalText(text); err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		if in != out {
			t.Errorf("%s: %+v became %+v", text, in, out)
		}
	})
}

func TestHardwareAndFlowText(t *testing.T) {
	var h Hardware
	for _, text := range []string{"2psi at 2oz/s", "2psi@2oz/s", "2 psi at 2 oz/s"} {
		if err := h.UnmarshalText([]byte(text)); err != nil {
			t.Errorf("%q: %v", text, err)
		}
		if want := DefaultRun().Hardware; !cmp.Equal(h, want, approx(1e-12)) {
			t.Errorf("%q: %+v, want %+v", text, h, want)
		}
	}
	for _, text := range []string{"2psi", "2oz/s at 2psi", "2psi at 2ft", "at", ""} {
		var e *quantity.Error
		if err := h.UnmarshalText([]byte(text)); !errors.As(err, &e) {
			t.Errorf("%q: %v", text, err)
		}
	}
	var q Flow
	if err := q.UnmarshalText([]byte("2oz/s")); err != nil || q != 2*OuncePerSecond {
		t.Errorf("2oz/s is %v, %v", float64(q), err)
	}
	if err := q.UnmarshalText([]byte("3L")); err == nil {
		t.Error("3L is a flow")
	}
	rapid.Check(t, func(t *rapid.T) {
		in := Hardware{unit.Pressure(rapid.Float64Range(0, 5e5).Draw(t, "loss")), Flow(rapid.Float64Range(1e-6, 1e-3).Draw(t, "flow"))}
		text, _ := in.MarshalText()
		var out Hardware
		if err := out.UnmarshalText(text); err != nil || !cmp.Equal(in, out, approx(1e-12)) {
			t.Errorf("%s: %+v, %v", text, out, err)
		}
		text, _ = in.At.MarshalText()
		var q Flow
		if err := q.UnmarshalText(text); err != nil || !cmp.Equal(in.At, q, approx(1e-12)) {
			t.Errorf("%s: %v, %v", text, q, err)
		}
	})
	// 1 US gal/min is 3.785412 L/min and 2.1333 US fl oz/s.
	checktest.Near(t, "1 gal/min in L/min", USGallonPerMinute.LitresPerMinute(), 3.785412, 5e-7)
	checktest.Near(t, "1 gal/min in oz/s", USGallonPerMinute.OuncesPerSecond(), 2.1333, 5e-5)
	if s := (2 * OuncePerSecond).String(); s != "3.55 L/min" {
		t.Errorf("2 oz/s prints as %q", s)
	}
}

func TestTubeOfOD(t *testing.T) {
	// 1/4 in tube of 1/32 in wall has the bore of the trade's table, 3/16 in.
	tube := must(TubeOfOD(Inch/4, Inch/32, 20*Foot))(t)
	checktest.Near(t, "bore, in", float64(tube.Bore/Inch), 0.1875, 1e-12)
	_, err := TubeOfOD(Inch/4, 0, 20*Foot)
	wantRange(t, "no wall", err, "wall")
	_, err = TubeOfOD(Inch/4, Inch/8, 20*Foot)
	wantRange(t, "no bore", err, "bore")
	_, err = TubeOfOD(-1, Inch/8, 20*Foot)
	wantRange(t, "negative", err, "outside diameter")
	_, err = TubeOfOD(unit.Length(nan), Inch/8, 20*Foot)
	wantRange(t, "not a number", err, "outside diameter")
	_, err = TubeOfOD(Inch/4, Inch/32, -1)
	wantRange(t, "negative length", err, "length")
}

// What a foot of tubing holds, by the trade's table, which rounds to nice
// fractions: 3/16 in is printed 10 % low, the rest within 2 %.
func TestTubeVolume(t *testing.T) {
	printed := map[string]float64{"1/6": 1.0 / 6, "1/3": 1.0 / 3, "1/2": 0.5, "3/4": 0.75, "1 1/3": 4.0 / 3}
	checked := 0
	for _, r := range checktest.Table(t, "trade_restriction.csv") {
		want, ok := printed[r.Text("printed_volume_oz_per_ft")]
		if !ok {
			continue
		}
		tube := Tube{Bore: unit.Length(r.Number("bore_in")) * Inch, Length: Foot}
		tolerance := 0.025
		if r.Text("bore_in") == "0.1875" {
			tolerance = 0.11
		}
		checktest.Near(t, r.Text("nominal_size")+", oz per foot", float64(tube.Volume())/float64(OuncePerSecond), want, tolerance*want)
		checked++
	}
	if checked != 11 {
		t.Errorf("checked %d rows", checked)
	}
}
