package lines

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/unit"
)

func TestTradeTableAsPublished(t *testing.T) {
	published := checktest.Table(t, "trade_restriction.csv")
	for _, row := range tradeTable {
		found := false
		for _, r := range published {
			material := r.Text("material")
			if material == "supply line" {
				material = "supply"
			}
			if r.Text("list") != row.List || material != row.Material || math.Abs(r.Number("bore_in")-float64(row.Bore/Inch)) > 1e-9 {
				continue
			}
			found = true
			checktest.Near(t, row.List+" "+row.Material+" "+r.Text("nominal_size"), float64(row.Loss/PSIPerFoot), r.Number("loss_psi_per_ft"), 1e-12)
			checktest.Near(t, "the same in bar/m", float64(row.Loss/BarPerMetre), r.Number("loss_bar_per_m"), 0.5e-4)
			status := map[string]string{"published": "published", "memory": "from memory", "practice": "practice"}[r.Text("status")]
			if status != row.Source {
				t.Errorf("%s %s: source %q, listed as %q", row.Material, r.Text("nominal_size"), row.Source, r.Text("status"))
			}
		}
		if !found {
			t.Errorf("no published row for %+v", row)
		}
		if row.Other == 0 {
			continue
		}
		found = false
		for _, r := range published {
			if math.Abs(r.Number("loss_psi_per_ft")-float64(row.Other/PSIPerFoot)) < 1e-12 && math.Abs(r.Number("bore_in")-float64(row.Bore/Inch)) < 1e-9 {
				found = true
			}
		}
		if !found {
			t.Errorf("no list gives %g psi/ft for %s %v", float64(row.Other/PSIPerFoot), row.Material, row.Bore)
		}
	}
}

func TestBalanceExamples(t *testing.T) {
	for _, r := range checktest.Table(t, "balance_examples.csv") {
		var run Run
		for text := range strings.SplitSeq(r.Text("tubes"), ";") {
			var tube Tube
			if err := tube.UnmarshalText([]byte(strings.TrimSpace(text))); err != nil {
				t.Fatal(err)
			}
			run.Tubes = append(run.Tubes, tube)
		}
		run.Rise = unit.Length(r.Number("rise_ft")) * Foot
		b := must(run.TradeGauge())(t)
		checktest.Near(t, r.Text("example")+", psi", b.Gauge.PSI(), r.Number("trade_total_psi"), 0.1)
		checktest.Near(t, r.Text("example")+", applied psi", b.Gauge.PSI(), r.Number("applied_psi"), 0.1+1e-9)

		// The length of the last tube from the pressure is the same sum.
		last := len(run.Tubes) - 1
		back := must(run.TradeLength(last, b.Gauge))(t)
		checktest.Near(t, r.Text("example")+", length", float64(back.Length), float64(run.Tubes[last].Length), 1e-9)
		checktest.Near(t, r.Text("example")+", restriction", float64(back.Restriction), float64(b.Restriction), 1e-6)
		for _, x := range []TradeBalance{b, back} {
			value := map[string]float64{"applied pressure": x.Gauge.Pascals(), "length": float64(x.Length)}
			if band := x.Band(); !(band.Low <= value[band.Name]*(1+1e-12) && value[band.Name] <= band.High*(1+1e-12)) {
				t.Errorf("%s: %+v outside %+v", r.Text("example"), value, band)
			}
			steps := x.Steps()
			if s := steps[len(steps)-1]; math.Abs(s.Value-x.Gauge.PSI()) > 1e-9 {
				t.Errorf("%s: last step %+v", r.Text("example"), s)
			}
		}
	}
}

// The trade's figures against a smooth tube at 1 gal/min: 1.4 to 2.6 times for
// vinyl, 0.5 to 0.8 times for barrier and stainless; the two older lists agree
// with physics within 8 %. This is why the modes stand side by side.
func TestTradeAgainstPhysics(t *testing.T) {
	for _, row := range tradeTable {
		p := must(bare(Tube{Bore: row.Bore, Length: Foot}).Gauge(USGallonPerMinute))(t)
		ratio := float64(row.Loss) * float64(Foot) / float64(p.Loss)
		low, high := 0.5, 0.8
		switch row.Material {
		case "vinyl":
			low, high = 1.4, 2.6
		case "polyethylene":
			low, high = 0.92, 1.08
		case "supply":
			low, high = 0.8, 1
		}
		if !(low <= ratio && ratio <= high) {
			t.Errorf("%s %.4g in: trade over physics is %.3f, expected %g to %g", row.Material, float64(row.Bore/Inch), ratio, low, high)
		}
	}
}

func TestTradeFindsTheTube(t *testing.T) {
	tube := must(TubeOfOD(Inch/4, 0.7e-3, 20*Foot))(t)
	tube.Material = "stainless"
	b := must(Run{Tubes: []Tube{tube}}.TradeGauge())(t)
	checktest.Near(t, "20 ft of 1/4 in OD stainless, psi", b.Gauge.PSI(), 24, 1e-9)
	checktest.Near(t, "its band, psi", b.Band().High/float64(carbonation.PSI), 40, 1e-9)

	r := must(tube.Restriction())(t)
	checktest.Near(t, "its restriction, psi/ft", float64(r/PSIPerFoot), 1.2, 1e-12)

	// The handbook measures the rise from the middle of the keg.
	b = must(Run{Tubes: []Tube{{Bore: 3 * Inch / 16, Length: 4 * Foot}}, Rise: 4 * Foot, KegHeight: 2 * Foot}.TradeGauge())(t)
	checktest.Near(t, "rise from the middle, psi", float64(b.Rise/carbonation.PSI), 2.5, 1e-9)
}

func TestTradeErrors(t *testing.T) {
	r := Run{Tubes: []Tube{{Bore: 7e-3, Length: 10}}}
	b, err := r.TradeGauge()
	if !errors.Is(err, ErrNoSolution) || !strings.Contains(err.Error(), "no row for vinyl of 0.276 in (7.0 mm) bore") {
		t.Errorf("7 mm: %v", err)
	}
	if r, err := (Tube{Bore: 7e-3}).Restriction(); !errors.Is(err, ErrNoSolution) || !math.IsNaN(float64(r)) {
		t.Errorf("restriction of 7 mm: %v, %v", r, err)
	}
	if b.Gauge.IsValid() || !math.IsNaN(float64(b.Restriction)) {
		t.Errorf("result beside an error: %+v", b)
	}
	good := Tube{Bore: 3 * Inch / 16, Length: 4 * Foot}
	if _, err = (Run{Tubes: []Tube{good, good}}).TradeLength(1, psi(11)); !errors.Is(err, ErrNoSolution) {
		t.Errorf("rest takes more: %v", err)
	}
	_, err = Run{Tubes: []Tube{good}}.TradeLength(0, carbonation.Gauge{})
	wantRange(t, "gauge", err, "gauge pressure")
	_, err = Run{Tubes: []Tube{good}, Rise: 50}.TradeGauge()
	wantRange(t, "rise", err, "rise")
	_, err = Run{Tubes: []Tube{good}, KegHeight: 5}.TradeGauge()
	wantRange(t, "keg height", err, "keg height")
	_, err = Run{Tubes: []Tube{{}}}.TradeGauge()
	wantRange(t, "bore", err, "bore")
	_, err = Run{Tubes: make([]Tube, 9)}.TradeGauge()
	wantRange(t, "tubes", err, "number of tubes")
	defer func() {
		if recover() == nil {
			t.Error("TradeLength of no tube does not panic")
		}
	}()
	_, _ = Run{}.TradeLength(0, psi(12))
}
