package volume

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// Liquid in a glass agrees with the trade table within 3 % for 10 to 16 oz, one
// bore for each glass. The table's own counts are rounded to whole glasses, at
// most half a per cent. The 8 oz rows, which the table gives less evenly, agree
// within 5 %; the 60 oz rows are limited by rounding and left out.
func TestPoursTradeTable(t *testing.T) {
	halfBarrel, _ := VesselNamed("us-half")
	for _, row := range checktest.Table(t, "pours_per_keg.csv") {
		oz, head := row.Number("glass_us_fl_oz"), row.Number("head_in")
		if oz == 60 {
			continue
		}
		tolerance := 0.03
		if oz == 8 {
			tolerance = 0.05
		}
		glass := GlassOf(unit.Volume(oz) * USFluidOunce)
		y, err := Pour{Keg: halfBarrel, Glass: glass, Head: unit.Length(head) * Inch, Foam: 0.25}.PerKeg()
		if err != nil {
			t.Fatal(err)
		}
		glasses := row.Number("glasses_per_half")
		want := 1984 / glasses
		if got := float64(y.Liquid / USFluidOunce); math.Abs(got/want-1) > tolerance {
			t.Errorf("%g oz, %g in: %.3f oz of beer, the table has %.3f", oz, head, got, want)
		}
		if math.Abs(float64(y.Pours)/glasses-1) > tolerance {
			t.Errorf("%g oz, %g in: %d glasses, the table has %g", oz, head, y.Pours, glasses)
		}
	}
}

// The trade's plain ratio of volumes: 124 glasses of 16 oz and 165 of 12 oz in
// a half barrel. Common practice, no source.
func TestPoursWithoutHead(t *testing.T) {
	halfBarrel, _ := VesselNamed("half barrel")
	for oz, want := range map[unit.Volume]int{16: 124, 12: 165} {
		y, err := Pour{Keg: halfBarrel, Glass: GlassOf(oz * USFluidOunce)}.PerKeg()
		if err != nil || y.Pours != want {
			t.Errorf("%g oz: %d pours, %v; want %d", float64(oz), y.Pours, err, want)
		}
	}
}

// drawPour draws a pour within every range.
func drawPour(t *rapid.T) Pour {
	p := Pour{
		Keg:        VesselOf(unit.Volume(rapid.Float64Range(1, 160).Draw(t, "keg")) * Litre),
		Glass:      GlassOf(unit.Volume(rapid.Float64Range(0.15, 2).Draw(t, "glass")) * Litre),
		Foam:       rapid.Float64Range(0, 1).Draw(t, "foam"),
		Line:       unit.Volume(rapid.Float64Range(0, 2).Draw(t, "line")) * Litre,
		FirstGlass: unit.Volume(rapid.Float64Range(0, 1).Draw(t, "first")) * Litre,
		Heel:       rapid.Float64Range(0, 0.5).Draw(t, "heel"),
		Waste:      rapid.Float64Range(0, 0.9).Draw(t, "waste"),
	}
	if rapid.Bool().Draw(t, "share") {
		p.HeadShare = rapid.Float64Range(0, 0.6).Draw(t, "head share")
	} else {
		p.Head = unit.Length(rapid.Float64Range(0, 30).Draw(t, "head")) * Millimetre
	}
	return p
}

func TestPoursConserve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPour(t)
		y, err := p.PerKeg()
		if err != nil {
			t.Fatal(err)
		}
		sum := unit.Volume(y.Pours)*y.Liquid + y.Lost + y.Rest
		if math.Abs(float64(sum/p.Keg.Capacity)-1) > 1e-12 {
			t.Fatalf("%v of %v accounted for", sum, p.Keg.Capacity)
		}
		if y.Rest < 0 || y.Rest > y.Liquid*(1+1e-9) || y.Lost < -1e-12*p.Keg.Capacity {
			t.Fatalf("rest %v, lost %v, of a pour of %v", y.Rest, y.Lost, y.Liquid)
		}
		b := y.Band()
		if !(b.Low <= float64(y.Pours) && float64(y.Pours) <= b.High) {
			t.Fatalf("%d pours outside the band %v", y.Pours, b)
		}
		more := p
		more.Head, more.HeadShare = p.Head/2, p.HeadShare/2
		if z, err := more.PerKeg(); err != nil || z.Pours > y.Pours {
			t.Fatalf("half the head gives %d pours for %d, %v", z.Pours, y.Pours, err)
		}
	})
}

func TestPoursRefuse(t *testing.T) {
	ok := VesselOf(19 * Litre).Into(GlassOf(USPint))
	for name, change := range map[string]func(*Pour){
		"no keg":          func(p *Pour) { p.Keg = Vessel{} },
		"no glass":        func(p *Pour) { p.Glass = Glass{} },
		"negative head":   func(p *Pour) { p.Head = -Inch },
		"head not finite": func(p *Pour) { p.Head = unit.Length(math.Inf(1)) },
		"all head":        func(p *Pour) { p.Head = 100 * Millimetre },
		"two heads":       func(p *Pour) { p.HeadShare = 0.05 },
		"no bore":         func(p *Pour) { p.Glass.Bore = 0 },
		"foam":            func(p *Pour) { p.Foam = 1.1 },
		"heel":            func(p *Pour) { p.Heel = math.NaN() },
		"waste":           func(p *Pour) { p.Waste = 5 },
		"line":            func(p *Pour) { p.Line = -1 },
	} {
		p := ok
		change(&p)
		y, err := p.PerKeg()
		var r *RangeError
		if !errors.As(err, &r) || r.Func != "volume.Pour.PerKeg" || !math.IsNaN(float64(y.Liquid)) {
			t.Errorf("%s: %v, %v", name, y.Liquid, err)
		}
	}
	// A line that holds the whole keg leaves no pours, and no error.
	ok.Keg, ok.Line = VesselOf(5*Litre), 6*Litre
	if y, err := ok.PerKeg(); err != nil || y.Pours != 0 {
		t.Errorf("keg smaller than the line: %d pours, %v", y.Pours, err)
	}
}

func TestEveryGlassIsUsable(t *testing.T) {
	names := map[string]bool{}
	for _, g := range glasses {
		y, err := VesselOf(19 * Litre).Into(g.Glass).PerKeg()
		if err != nil || y.Pours < 1 || g.Source == "" || g.Defined == "" || g.Sized == "" || g.Weighed == "" {
			t.Errorf("%s: %d pours, %v", g.Name, y.Pours, err)
		}
		for _, name := range append([]string{g.Name}, strings.Fields(g.aliases)...) {
			if got, ok := GlassNamed(name); names[name] || !ok || got != g.Glass {
				t.Errorf("GlassNamed(%q) = %q, %v", name, got.Name, ok)
			}
			names[name] = true
		}
	}
	if g, ok := GlassNamed("pint"); ok {
		t.Errorf("a bare pint is %s", g.Name)
	}
	if g := GlassOf(unit.Volume(math.NaN())); g != (Glass{}) {
		t.Errorf("GlassOf(NaN) = %+v", g)
	}
	if g := GlassOf(330 * Millilitre); g.Name != "glass" || g.Bore < 70*Millimetre || g.Bore > 80*Millimetre {
		t.Errorf("GlassOf(330 mL) = %+v", g)
	}
}

func TestReadHead(t *testing.T) {
	p := VesselOf(19 * Litre).Into(GlassOf(USPint))
	for text, want := range map[string][2]float64{"1in": {0.0254, 0}, "2 cm": {0.02, 0}, "5%": {0, 0.05}, "0mm": {0, 0}} {
		if err := p.ReadHead(text); err != nil || math.Abs(float64(p.Head)-want[0]) > 1e-15 || p.HeadShare != want[1] {
			t.Errorf("%q: %g m, %g, %v", text, float64(p.Head), p.HeadShare, err)
		}
	}
	before := p
	for _, text := range []string{"", "1", "0.05", "5oz", "NaN%", "inch"} {
		if err := p.ReadHead(text); err == nil || p != before {
			t.Errorf("%q is read as %g m, %g", text, float64(p.Head), p.HeadShare)
		}
	}
}

// Half-gallon growlers from a half barrel, filled to a twentieth: 31 gallons
// hold 62 of them, so 15.5 hold 31 to the brim and 32 so filled.
func TestGrowlers(t *testing.T) {
	keg, _ := VesselNamed("us-half")
	growler, _ := GlassNamed("growler")
	if y, err := (Pour{Keg: keg, Glass: growler}).PerKeg(); err != nil || y.Pours != 31 {
		t.Errorf("%d growlers to the brim, %v", y.Pours, err)
	}
	if y, err := (Pour{Keg: keg, Glass: growler, HeadShare: 0.05}).PerKeg(); err != nil || y.Pours != 32 {
		t.Errorf("%d growlers with headspace, %v", y.Pours, err)
	}
}

func TestPoursAllocateNothing(t *testing.T) {
	p := VesselOf(19 * Litre).Into(GlassOf(USPint))
	if n := testing.AllocsPerRun(100, func() { _, _ = p.PerKeg() }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

func BenchmarkPerKeg(b *testing.B) {
	p := VesselOf(19 * Litre).Into(GlassOf(USPint))
	for b.Loop() {
		_, _ = p.PerKeg()
	}
}

// A sixth barrel for the meadow party, in pint glasses with an inch of head.
func ExamplePour_PerKeg() {
	keg, _ := VesselNamed("sixth barrel")
	glass, _ := GlassNamed("us-pint")
	y, err := keg.Into(glass).PerKeg()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d pints, %.4g oz of beer in each\n", y.Pours, float64(y.Liquid/USFluidOunce))
	// Output: 51 pints, 12 oz of beer in each
}
