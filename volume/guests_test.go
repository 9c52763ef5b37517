package volume

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// pints is a sixth barrel poured into pint glasses.
func pints(t testing.TB) Yield {
	t.Helper()
	y, err := VesselOf(USBarrel / 6).Into(GlassOf(USPint)).PerKeg()
	if err != nil {
		t.Fatal(err)
	}
	return y
}

// Common practice, no source: two drinks in the first hour, one in each later
// hour, two for a reception of one hour. The usual crowd drinks that.
func TestGuestsPractice(t *testing.T) {
	rules := map[string]float64{}
	for _, row := range checktest.Table(t, "guest_practice.csv") {
		if row.Text("rule") == "drinks per guest, first hour" || row.Text("rule") == "drinks per guest, each later hour" || row.Text("rule") == "one-hour reception, drinks per guest" {
			rules[row.Text("rule")] = row.Number("value")
		}
	}
	hour := DefaultCrowd(100, time.Hour)
	hour.Share = 1
	three := hour
	three.Duration = 3 * time.Hour
	for _, c := range []struct {
		crowd Crowd
		want  float64
	}{
		{hour, 100 * rules["one-hour reception, drinks per guest"]},
		{three, 100 * (rules["drinks per guest, first hour"] + 2*rules["drinks per guest, each later hour"])},
	} {
		d, err := c.crowd.Demand(pints(t))
		if err != nil || d.Expected != c.want {
			t.Errorf("%g servings expected, %v; want %g", d.Expected, err, c.want)
		}
	}
}

// Without spread and doubt, and with everyone drinking, the count is Poisson:
// distuv gives every answer.
func TestGuestsPoisson(t *testing.T) {
	c := DefaultCrowd(60, 5*time.Hour)
	c.Share, c.Spread, c.Doubt = 1, 0, 0
	d, err := c.Demand(pints(t))
	if err != nil {
		t.Fatal(err)
	}
	p := distuv.Poisson{Lambda: 360}
	if n := float64(d.Planned); d.Expected != 360 || p.CDF(n) < 0.9 || p.CDF(n-1) >= 0.9 {
		t.Errorf("%g servings expected, %d planned: P = %g", d.Expected, d.Planned, p.CDF(n))
	}
	stock := float64(d.Kegs * d.Choice.Keg.Pours)
	if want := p.Survival(stock); math.Abs(d.RunOut-want) > 1e-9 {
		t.Errorf("run-out probability %g, distuv %g", d.RunOut, want)
	}
	left := 0.0
	for k := 0.0; k < stock; k++ {
		left += (stock - k) * p.Prob(k)
	}
	if got := float64(d.Leftover / d.Choice.Keg.Liquid); math.Abs(got-left) > 1e-6 {
		t.Errorf("%g servings left, distuv %g", got, left)
	}
}

// The stated model, simulated guest by guest: each drinks with the probability
// share, at a rate of their own about a doubtful mean. The negative binomial
// has its mean and variance; quantiles agree within 2 %, of which 0.3 % is the
// scatter of 20 000 parties.
func TestGuestsSimulated(t *testing.T) {
	c := DefaultCrowd(60, 5*time.Hour)
	d, err := c.Demand(pints(t))
	if err != nil {
		t.Fatal(err)
	}
	const parties = 20000
	src := rand.New(rand.NewPCG(1, 2))
	within, sum, squares := 0, 0.0, 0.0
	common := distuv.Gamma{Alpha: 1 / (c.Doubt * c.Doubt), Beta: 1 / (c.Doubt * c.Doubt), Src: src}
	own := distuv.Gamma{Alpha: 1 / (c.Spread * c.Spread), Beta: 1 / (c.Spread * c.Spread), Src: src}
	for range parties {
		rate := 0.0
		for range c.Guests {
			if src.Float64() < c.Share {
				rate += own.Rand()
			}
		}
		n := 0.0
		if mean := 6 * rate * common.Rand(); mean > 0 {
			n = distuv.Poisson{Lambda: mean, Src: src}.Rand()
		}
		sum += n
		squares += n * n
		if n <= float64(d.Planned) {
			within++
		}
	}
	mean := sum / parties
	sd := math.Sqrt(squares/parties - mean*mean)
	wantSD := math.Sqrt(d.Expected + d.count.excess*d.Expected*d.Expected)
	if math.Abs(mean/d.Expected-1) > 0.01 || math.Abs(sd/wantSD-1) > 0.02 {
		t.Errorf("simulated %g ± %g, model %g ± %g", mean, sd, d.Expected, wantSD)
	}
	if got := float64(within) / parties; math.Abs(got-0.9) > 0.02 {
		t.Errorf("the planned servings last in %g of the parties, want 0.9", got)
	}
}

func TestGuestsProperties(t *testing.T) {
	keg := pints(t)
	rapid.Check(t, func(t *rapid.T) {
		c := Crowd{
			Guests:     rapid.IntRange(1, 1e6).Draw(t, "guests"),
			Duration:   time.Duration(rapid.Int64Range(0, int64(24*time.Hour)).Draw(t, "for")),
			FirstHour:  rapid.Float64Range(0, 10).Draw(t, "first"),
			Later:      rapid.Float64Range(0, 5).Draw(t, "later"),
			Share:      rapid.Float64Range(0, 1).Draw(t, "share"),
			Weather:    rapid.Float64Range(0, 3).Draw(t, "weather"),
			Spread:     rapid.Float64Range(0, 3).Draw(t, "spread"),
			Doubt:      rapid.Float64Range(0, 0.5).Draw(t, "doubt"),
			Confidence: rapid.Float64Range(0.5, 0.999).Draw(t, "confidence"),
		}
		d, err := c.Demand(keg)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range d.Steps() {
			if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
				t.Fatalf("%s is %g", s.Name, s.Value)
			}
		}
		if d.RunOut > 1-c.Confidence+1e-9 {
			t.Fatalf("run-out probability %g at a confidence of %g", d.RunOut, c.Confidence)
		}
		if d.LastsFor != c.Duration || d.RunsOutAt > c.Duration || d.RunsOutAt < 0 {
			t.Fatalf("lasts %v, runs out at %v, of %v", d.LastsFor, d.RunsOutAt, c.Duration)
		}
		if (d.Kegs-1)*keg.Pours >= d.Planned && d.Kegs > 0 || d.Kegs*keg.Pours < d.Planned {
			t.Fatalf("%d kegs of %d pours for %d servings", d.Kegs, keg.Pours, d.Planned)
		}
		surer := c
		surer.Confidence = (1 + c.Confidence) / 2
		if s, err := surer.Demand(keg); surer.Confidence <= 0.999 && (err != nil || s.Planned < d.Planned) {
			t.Fatalf("surer: %d servings for %d, %v", s.Planned, d.Planned, err)
		}
	})
}

// A keg too few: the chance of having run out grows through the event to the
// chance at its end, and stands at the times reported where they say.
func TestGuestsRunOutTimes(t *testing.T) {
	c := DefaultCrowd(60, 5*time.Hour)
	d, err := c.Menu([]Choice{{Name: "Meadow Pale", Share: 1, Keg: pints(t), Kegs: 3}})
	if err != nil {
		t.Fatal(err)
	}
	chanceAt := func(at time.Duration) float64 {
		_, chance := d[0].At(at)
		return chance
	}
	for at, want := range map[time.Duration]float64{-time.Hour: 0, 0: 0, 30 * time.Minute: 30, time.Hour: 60, 3 * time.Hour: 120, 5 * time.Hour: 180, 9 * time.Hour: 180} {
		if got, _ := d[0].At(at); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g servings asked for until %v, want %g", got, at, want)
		}
	}
	if got := chanceAt(c.Duration); got != d[0].RunOut {
		t.Errorf("chance at the end %g, run-out probability %g", got, d[0].RunOut)
	}
	if got := chanceAt(d[0].LastsFor); math.Abs(got-0.1) > 1e-6 {
		t.Errorf("lasts %v: chance of having run out %g, want 0.1", d[0].LastsFor, got)
	}
	if got := chanceAt(d[0].RunsOutAt); math.Abs(got-d[0].RunOut/2) > 1e-6 {
		t.Errorf("runs out at %v: chance %g, want half of %g", d[0].RunsOutAt, got, d[0].RunOut)
	}
	if d[0].LastsFor < 2*time.Hour || d[0].LastsFor > 5*time.Hour || d[0].RunOut < 0.5 {
		t.Errorf("%d pours of %g lasted %v, run-out probability %g", d[0].Kegs*d[0].Choice.Keg.Pours, d[0].Expected, d[0].LastsFor, d[0].RunOut)
	}
}

// Twice the guests ask for twice the servings; four beers ask together for what
// one beer is asked for, and need more kegs.
func TestGuestsMenu(t *testing.T) {
	c := DefaultCrowd(500, 4*time.Hour)
	one, err := c.Demand(pints(t))
	if err != nil {
		t.Fatal(err)
	}
	same, err := c.Menu([]Choice{{Share: 1, Keg: pints(t)}})
	if err != nil || !cmp.Equal(one, same[0], cmp.AllowUnexported(Demand{}, Yield{}, count{})) {
		t.Errorf("a menu of one beer differs: %v, %v", cmp.Diff(one, same[0], cmp.AllowUnexported(Demand{}, Yield{}, count{})), err)
	}
	four, err := c.Menu(menu(t))
	if err != nil {
		t.Fatal(err)
	}
	sum, kegs := 0.0, 0
	for _, d := range four {
		sum += d.Expected
		kegs += d.Kegs
	}
	all := four[0].Plus(four[1]).Plus(four[2]).Plus(four[3])
	if math.Abs(all.Expected-sum) > 1e-9 || all.Kegs != kegs || len(all.Steps()) != 4*len(one.Steps()) {
		t.Errorf("together: %g servings and %d kegs, want %g and %d", all.Expected, all.Kegs, sum, kegs)
	}
	if b := all.Band(); !(b.Low < all.Expected && all.Expected < b.High) || all.RunOut < four[3].RunOut {
		t.Errorf("together: %+v, run-out probability %g", b, all.RunOut)
	}
	cost := 0.0
	for _, d := range four {
		cost += float64(d.Kegs) * d.Choice.Price
	}
	if got := all.GlassCost * all.drunk; math.Abs(got/cost-1) > 1e-12 {
		t.Errorf("all kegs cost %g, by the glass %g", cost, got)
	}
	if math.Abs(sum-one.Expected) > 1e-9 || kegs < one.Kegs {
		t.Errorf("four beers: %g servings and %d kegs, one beer %g and %d", sum, kegs, one.Expected, one.Kegs)
	}
}

func menu(t testing.TB) []Choice {
	keg := pints(t)
	return []Choice{
		{Name: "Meadow Pale", Share: 0.4, Keg: keg, Price: 90},
		{Name: "Hay Wheat", Share: 0.3, Keg: keg, Price: 85},
		{Name: "Barn Porter", Share: 0.2, Keg: keg, Price: 95},
		{Name: "Stile Bitter", Share: 0.1, Keg: keg, Price: 80},
	}
}

func TestGuestsRefuse(t *testing.T) {
	keg := pints(t)
	var r *RangeError
	for name, change := range map[string]func(*Crowd){
		"a billion guests": func(c *Crowd) { c.Guests = 1e9 },
		"no guests":        func(c *Crowd) { c.Guests = 0 },
		"a week":           func(c *Crowd) { c.Duration = 168 * time.Hour },
		"NaN":              func(c *Crowd) { c.Share = math.NaN() },
		"certainty":        func(c *Crowd) { c.Confidence = 1 },
		"negative spread":  func(c *Crowd) { c.Spread = -0.1 },
		"weather":          func(c *Crowd) { c.Weather = math.Inf(1) },
	} {
		c := DefaultCrowd(60, 5*time.Hour)
		change(&c)
		d, err := c.Demand(keg)
		if !errors.As(err, &r) || !math.IsNaN(d.Expected) || !math.IsNaN(float64(d.Leftover)) {
			t.Errorf("%s: %g, %v", name, d.Expected, err)
		}
	}
	c := DefaultCrowd(60, 5*time.Hour)
	if _, err := c.Menu([]Choice{{Share: 0.5, Keg: keg}}); !errors.As(err, &r) || r.Name != "sum of the shares" {
		t.Errorf("half a menu: %v", err)
	}
	if _, err := c.Menu(nil); !errors.As(err, &r) {
		t.Errorf("no beer: %v", err)
	}
	tall := keg
	tall.Pour.Keg.Capacity = 0
	for name, bad := range map[string]Choice{
		"negative kegs":  {Share: 1, Keg: keg, Kegs: -1},
		"negative share": {Share: -1, Keg: keg},
		"price":          {Share: 1, Keg: keg, Price: math.NaN()},
		"no capacity":    {Share: 1, Keg: tall},
	} {
		other := Choice{Share: 1 - bad.Share, Keg: keg}
		if got, err := c.Menu([]Choice{bad, other}); !errors.As(err, &r) || got != nil {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
	empty := keg
	empty.Pours = 0
	if _, err := c.Demand(empty); !errors.Is(err, ErrNoSolution) {
		t.Errorf("keg without pours: %v", err)
	}
	if _, err := c.Demand(Yield{}); !errors.As(err, &r) {
		t.Errorf("no keg: %v", err)
	}
}

// An expectation alone stays bare of allocations, as does the whole demand.
func TestDemandAllocatesNothing(t *testing.T) {
	c, keg := DefaultCrowd(60, 5*time.Hour), pints(t)
	if n := testing.AllocsPerRun(100, func() { _, _ = c.Demand(keg) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// Nobody drinks: nothing is asked for and nothing runs out.
func TestGuestsNobodyDrinks(t *testing.T) {
	c := DefaultCrowd(60, 5*time.Hour)
	c.Share = 0
	d, err := c.Menu([]Choice{{Share: 1, Keg: pints(t), Kegs: 1}})
	if err != nil {
		t.Fatal(err)
	}
	left := float64(d[0].Leftover / d[0].Choice.Keg.Liquid)
	if d[0].Planned != 0 || d[0].RunOut != 0 || math.Abs(left-51) > 1e-9 || d[0].GlassCost != 0 || d[0].LastsFor != c.Duration {
		t.Errorf("%+v", d[0])
	}
}

func BenchmarkMenu(b *testing.B) {
	c, beers := DefaultCrowd(500, 4*time.Hour), menu(b)
	for b.Loop() {
		if _, err := c.Menu(beers); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDemandMillion(b *testing.B) {
	c, keg := DefaultCrowd(1e6, 5*time.Hour), pints(b)
	for b.Loop() {
		if _, err := c.Demand(keg); err != nil {
			b.Fatal(err)
		}
	}
}

// Sixty guests at the meadow party for five hours, half of them drinking beer.
func ExampleCrowd_Demand() {
	keg, err := VesselOf(USBarrel / 6).Into(GlassOf(12 * USFluidOunce)).PerKeg()
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := DefaultCrowd(60, 5*time.Hour).Demand(keg)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.4g glasses expected, %d to be sure of 90 %%\n", d.Expected, d.Planned)
	fmt.Printf("%d kegs; they run out with a probability of %.2f\n", d.Kegs, d.RunOut)
	// Output:
	// 180 glasses expected, 228 to be sure of 90 %
	// 4 kegs; they run out with a probability of 0.01
}
