package sweep

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

func spreadOf(t *testing.T, c *calc.Calculation, key string, pairs ...string) (calc.Spread, *calc.Spreads, *Plan) {
	t.Helper()
	p, err := Read(c, typed(pairs...))
	if err != nil {
		t.Fatal(err)
	}
	var out calc.Result
	if err := c.Run(p.Base, &out); err != nil {
		t.Fatal(err)
	}
	all := p.Spread(&out)
	s, ok := all.Of(key)
	if !ok {
		t.Fatalf("no spread of %s", key)
	}
	return s, all, p
}

// TestToleranceOnTemperatureIsADifference: one degree Fahrenheit at 38 °F and
// 12 psi is worth 0.05 volumes. The trade's chart has 2.67 volumes at 36 °F and
// 2.47 at 40 °F under 12 psi, a quarter of their difference is 0.05; half a unit
// of the last digit of each makes that ± 0.0025.
//
// Source: D. Miller, BrewingTechniques 2(1), 1994, Table I.
func TestToleranceOnTemperatureIsADifference(t *testing.T) {
	const chart = (2.67 - 2.47) / 4
	for _, text := range []string{"38F+-1F", "38F±1F", "38F+/-1F", "38F+-0.5555555556C", "38F +- 1"} {
		s, all, _ := spreadOf(t, balance(), "co2_volumes", "temp", text, "gauge", "12psi")
		if math.Abs(s.PlusMinus-chart) > 0.0025 {
			t.Errorf("%s is worth %.4f volumes, the chart has %.2f", text, s.PlusMinus, chart)
		}
		if in := all.Inputs[0]; in.Key != "temp_k" || math.Abs(in.Size-5.0/9) > 1e-9 {
			t.Errorf("%s is %v %s", text, in.Size, in.Key)
		}
	}
}

// TestToleranceKinds checks how sizes are read: relative, in points, in another
// unit, of a count.
func TestToleranceKinds(t *testing.T) {
	for _, c := range []struct {
		input, text string
		size        float64
	}{
		{"length", "10m+-5%", 0.5},
		{"length", "10m+-50cm", 0.5},
		{"length", "10m+-0.5", 0.5},
		{"waste", "5%+-0.5%", 0.005},
		{"waste", "0.05+-0.005", 0.005},
		{"tiles", "60+-7.5", 7.5},
		{"tiles", "60+-10%", 6},
		{"keg", "5gal+-1L", 0.001},
	} {
		p, err := Read(product(), typed(c.input, c.text))
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if got := p.Tolerances[0].PlusMinus(); math.Abs(got-c.size) > 1e-9 {
			t.Errorf("%s is %v, want %v", c.text, got, c.size)
		}
	}
	for input, text := range map[string]string{
		"length": "10m+-0m", "width": "10m+-1psi", "waste": "5%+-1m", "tiles": "60+-x", "keg": "us-half+-1F", "motion": "still+-1",
	} {
		if _, err := Read(product(), typed(input, text)); err == nil {
			t.Errorf("--%s %s is accepted", input, text)
		}
	}
	for _, text := range []string{"38F+-1e300F", "38F+-84F"} { // from -1.2 to 45 °C are 83.2 °F
		if _, err := Read(balance(), typed("temp", text)); !isUsage(err) || !strings.Contains(err.Error(), "wider than the range") {
			t.Errorf("%s: %v", text, err)
		}
	}
	if _, err := Read(balance(), typed("temp", "38F+-83F")); err != nil {
		t.Error(err)
	}
	if _, err := Read(balance(), typed("temp", "38F+-5%")); !isUsage(err) {
		t.Errorf("a percentage of a temperature: %v", err)
	}
}

// TestSpreadOfProduct compares with the rule of a product, whose relative
// uncertainties add as squares. Its slopes are exact in theory, so that only
// the rounding of the differences is left.
//
// Source: JCGM 100:2008, 5.1.6.
func TestSpreadOfProduct(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		length := rapid.Float64Range(1, 40).Draw(r, "length")
		width := rapid.Float64Range(0.5, 20).Draw(r, "width")
		a := rapid.Float64Range(0.1, 20).Draw(r, "percent of length")
		b := rapid.Float64Range(0.1, 20).Draw(r, "percent of width")
		s, _, _ := spreadOf(t, product(), "area",
			"length", fmt.Sprintf("%.9gm+-%.9g%%", length, a), "width", fmt.Sprintf("%.9gm+-%.9g%%", width, b))
		want := length * width * math.Hypot(a, b) / 100
		if math.Abs(s.PlusMinus-want) > 1e-6*want {
			r.Fatalf("± %v, the rule gives %v", s.PlusMinus, want)
		}
		most := "length"
		if b > a {
			most = "width"
		}
		share := max(a, b) * max(a, b) / (a*a + b*b)
		if math.Abs(a-b) > 1e-6 && (s.Causes[0].Input != most || math.Abs(s.Causes[0].Share-share) > 1e-5) {
			r.Fatalf("most comes from %+v, should be %s with %v", s.Causes[0], most, share)
		}
	})
}

// TestSpreadAtTheEdge: where one side has no answer the slope is taken on the
// other, and an answer that is no number hides no other.
func TestSpreadAtTheEdge(t *testing.T) {
	s, _, _ := spreadOf(t, product(), "area", "length", "100m+-1m")
	if math.Abs(s.PlusMinus-2) > 1e-9 {
		t.Errorf("± %v at the end of the range, want 2", s.PlusMinus)
	}
	tiles, _, _ := spreadOf(t, product(), "tiles_left", "length", "10m+-1m")
	if !math.IsNaN(tiles.PlusMinus) {
		t.Errorf("an answer that is no number spreads by %v", tiles.PlusMinus)
	}
	count, _, _ := spreadOf(t, product(), "tiles_left", "length", "10m", "tiles", "60+-7")
	if math.Abs(count.PlusMinus-7) > 1e-9 {
		t.Errorf("60 ± 7 whole tiles spread by %v", count.PlusMinus)
	}
}

// TestSlope takes the slope of x² at 3 centrally, where it is exact, and to one
// side, where it is off by the step.
func TestSlope(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct{ at, up, down, want float64 }{
		{9, 9.61, 8.41, 6}, {9, 9.61, nan, 6.1}, {9, nan, 8.41, 5.9}, {9, math.Inf(1), 8.41, 5.9}, {9, nan, nan, nan},
	} {
		if got := slope(c.at, c.up, c.down, 0.1); math.Abs(got-c.want) > 1e-12 || math.IsNaN(got) != math.IsNaN(c.want) {
			t.Errorf("slope between %v and %v is %v, want %v", c.down, c.up, got, c.want)
		}
	}
}

// TestPartsStayWithin: a part of a whole spreads no further than from nothing
// to all of it.
func TestPartsStayWithin(t *testing.T) {
	for key, want := range map[string][2]float64{"a_share": {0, 0.3}, "a_probability": {0, 0.3}, "a_kpa": {-0.1, 0.3}} {
		s := calc.Spread{Key: key, Value: 0.1, PlusMinus: 0.2}
		if math.Abs(s.Low()-want[0]) > 1e-12 || math.Abs(s.High()-want[1]) > 1e-12 {
			t.Errorf("%s spreads from %v to %v", key, s.Low(), s.High())
		}
	}
}

// TestSamples checks the samples of a linear answer against the normal
// distribution that they are drawn from: 20 ± 2 m². The ends are quantiles of
// 40 000 samples, whose standard error is 1.4 % of the tolerance, taken four
// times.
func TestSamples(t *testing.T) {
	_, all, p := spreadOf(t, product(), "area", "length", "10m+-1m")
	p.Sample(all, 40000, 7, nil)
	s, _ := all.Of("area")
	if got := s.Sampled; math.Abs(got.Mean-20) > 0.02 || math.Abs(got.Low-18) > 0.1 || math.Abs(got.High-22) > 0.1 {
		t.Errorf("samples of 20 ± 2 are %+v", *got)
	}
	if all.Failed != 0 || all.Samples != 40000 {
		t.Errorf("%d of %d failed", all.Failed, all.Samples)
	}
}

// TestQuantile compares with a general-purpose library, gonum's stat: the
// command leaves it out, since with it a sixth of the binary is linear algebra.
func TestQuantile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := rapid.SliceOfN(rapid.Float64Range(-1e6, 1e6), 1, 300).Draw(t, "samples")
		p := rapid.Float64Range(0, 1).Draw(t, "p")
		slices.Sort(samples)
		if got, want := quantile(samples, p), stat.Quantile(p, stat.LinInterp, samples, nil); math.Abs(got-want) > 1e-9 {
			t.Fatalf("the %v-quantile of %v is %v, want %v", p, samples, got, want)
		}
	})
}

// TestSamplesRepeat: the same seed gives the same samples on any number of
// processors, another seed others; samples without an answer are counted.
func TestSamplesRepeat(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	sample := func(seed uint64) *calc.Sampled {
		_, all, p := spreadOf(t, product(), "area", "length", "99.5m+-1m")
		p.Sample(all, 500, seed, nil)
		if all.Failed == 0 || all.Failed == 500 {
			t.Errorf("%d samples of 500 near the end of the range failed", all.Failed)
		}
		s, _ := all.Of("area")
		return s.Sampled
	}
	first := sample(1)
	for _, processors := range []int{1, 3} {
		runtime.GOMAXPROCS(processors)
		if diff := cmp.Diff(first, sample(1)); diff != "" {
			t.Errorf("on %d processors: %s", processors, diff)
		}
	}
	if cmp.Equal(first, sample(2)) {
		t.Error("another seed gives the same samples")
	}
}

// TestSpreadInRows puts the ends of the spread beside the answer of each row.
func TestSpreadInRows(t *testing.T) {
	rows, err := plan(t, "length", "10m,20m", "width", "2m+-10%").Rows([]string{"area", "low_area", "high_area"})
	if err != nil {
		t.Fatal(err)
	}
	got, _ := stream(t, rows)
	if diff := cmp.Diff("length_m=10 area=20 low_area=18 high_area=22 \nlength_m=20 area=40 low_area=36 high_area=44 \n", got); diff != "" {
		t.Error(diff)
	}
}

func BenchmarkSpread(b *testing.B) {
	p, err := Read(balance(), typed("temp", "38F+-1F", "gauge", "12psi+-5%"))
	if err != nil {
		b.Fatal(err)
	}
	var out calc.Result
	if err := p.Base.Calculation().Run(p.Base, &out); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		p.Spread(&out)
	}
}
