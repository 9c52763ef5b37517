package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

func meadowGlass(t testing.TB, around Surroundings) Glassful {
	t.Helper()
	g, ok := volume.GlassNamed("us-pint")
	if !ok {
		t.Fatal("no such glass")
	}
	return DefaultGlassful(g, around)
}

// Two bodies of 81 and 63 kJ/K at 25 and 2 °C meet at 14.9375 °C.
func TestGlassMeets(t *testing.T) {
	r := GlassRun{beer: 81e3, poured: 25, glass: 63e3, from: 2}
	checktest.Near(t, "common temperature", r.meet(1), (81.0*25+63*2)/(81+63), 1e-9)
}

// A warm glass of 400 g costs cold beer 4 K (common practice, no source).
func TestGlassCost(t *testing.T) {
	g := meadowGlass(t, Shade(Celsius(30)))
	g.Glass.Mass = 0.400
	r, err := g.Pour(Celsius(3), 0)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "cost of the glass", float64(r.GlassCost), 4, 0.5)
	heat := r.beer*float64(r.GlassCost) - r.glass*(30-r.Temperature.Celsius())
	checktest.Near(t, "heat balance", heat, 0, 1e-9*r.beer)
	checktest.Near(t, "no wait", r.After.Celsius(), r.Temperature.Celsius(), 1e-9)
}

// A can of 355 mL from 0 °C warms in five minutes of still, humid air by less
// than it did in moving air: 3.3 K by dew alone in New Orleans as Durran &
// Frierson, Physics Today 66(4) (2013) 74, report; with a breath of 1 m/s, by
// that and more, since dew is not all. Their air is assumed to be 31 °C with a
// dew point of 24 °C, 66 % humidity.
func TestGlassInHumidAir(t *testing.T) {
	around := Shade(Celsius(31))
	around.Humidity = 0.66
	can := Glassful{
		Glass: volume.Glass{Bore: 0.060, Mass: 0.013}, From: Celsius(0), Liquid: 355e-6, Beer: Water(), Around: around,
	}
	still, err := can.Pour(Celsius(0), 5*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	can.Around.Wind = 1
	breeze, err := can.Pour(Celsius(0), 5*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	if rise := still.After.Celsius(); !(rise < 3.3) {
		t.Errorf("still air warms the can by %.2f K, more than was measured in moving air", rise)
	}
	if rise := breeze.After.Celsius(); !(rise > 3.3 && rise < 3.3/0.45) {
		t.Errorf("a breath of air warms the can by %.2f K; 3.3 K came from dew alone", rise)
	}
}

func TestGlassProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		around := Shade(Celsius(rapid.Float64Range(-20, 60).Draw(t, "air")))
		around.Humidity = rapid.Float64Range(0, 1).Draw(t, "humidity")
		around.Sun = Irradiance(rapid.SampledFrom([]float64{0, 400, 1200}).Draw(t, "sun"))
		g := Glassful{
			Glass: volume.Glass{Bore: 0.08, Mass: unit.Mass(rapid.Float64Range(0, 1).Draw(t, "mass"))},
			From:  Celsius(rapid.Float64Range(-10, 50).Draw(t, "glass")), Liquid: 4e-4, Solar: 0.5, Around: around,
		}
		beer := rapid.Float64Range(0, 20).Draw(t, "beer")
		wait := time.Duration(rapid.Float64Range(0, 7200).Draw(t, "wait") * 1e9)
		r, err := g.Pour(Celsius(beer), wait)
		if errors.Is(err, ErrNoSolution) && min(g.From.Celsius(), around.Air.Celsius()) < -2 {
			return // it would freeze
		}
		if err != nil {
			t.Fatal(err)
		}
		low, high := math.Min(beer, g.From.Celsius()), math.Max(beer, g.From.Celsius())
		if c := r.Temperature.Celsius(); !(c >= low-1e-9 && c <= high+1e-9) {
			t.Fatalf("beer at %v and glass at %v meet at %v", beer, g.From, c)
		}
		for _, s := range r.Steps() {
			if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
				t.Fatalf("%s is %v", s.Name, s.Value)
			}
		}
		a, s, m := r.After.Celsius(), r.Settles.Celsius(), r.Temperature.Celsius()
		if !(a >= math.Min(m, s)-1e-9 && a <= math.Max(m, s)+1e-9) {
			t.Fatalf("after %v at %v, not between %v and %v", wait, a, m, s)
		}
		if b := r.AfterBand(); !(b.Low <= a+1e-9 && a <= b.High+1e-9) {
			t.Fatalf("%v outside its band %v", a, b)
		}
		if b := r.Band(); !(b.Low <= m+1e-9 && m <= b.High+1e-9) {
			t.Fatalf("%v outside its band %v", m, b)
		}
	})
}

// Beer as warm as the glass and the air, or nearly: the film is that of half a
// kelvin.
func TestGlassAsWarmAsAir(t *testing.T) {
	pour := func(beer float64) GlassRun {
		r, err := meadowGlass(t, Shade(Celsius(20))).Pour(Celsius(beer), time.Minute)
		holdsUp(t, Celsius(beer).String(), tried("Glassful.Pour", r, err))
		return r
	}
	want := float64(pour(19.4).UA)
	for _, off := range []float64{0, 1e-13, 1e-9, 1e-6, 2e-6, 1e-4, 0.01} {
		checktest.Near(t, "UA", float64(pour(20-off).UA), want, 0.01*want)
	}
}

func TestGlassRefuses(t *testing.T) {
	for name, spoil := range map[string]func(*Glassful){
		"mass": func(g *Glassful) { g.Glass.Mass = -1 }, "bore": func(g *Glassful) { g.Glass.Bore = 0 },
		"glass": func(g *Glassful) { g.From = Temperature{} }, "liquid": func(g *Glassful) { g.Liquid = unit.Volume(math.NaN()) },
		"solar": func(g *Glassful) { g.Solar = 2 }, "humidity": func(g *Glassful) { g.Around.Humidity = 50 },
	} {
		g := meadowGlass(t, Shade(Celsius(30)))
		spoil(&g)
		var re *RangeError
		if r, err := g.Pour(Celsius(3), time.Minute); !errors.As(err, &re) || r.Temperature.IsValid() || !math.IsNaN(float64(r.UA)) {
			t.Errorf("%s: %v", name, err)
		}
	}
	var re *RangeError
	if _, err := meadowGlass(t, Shade(Celsius(30))).Pour(Celsius(3), -time.Second); !errors.As(err, &re) {
		t.Errorf("negative wait: %v", err)
	}
}

func BenchmarkGlassPour(b *testing.B) {
	b.ReportAllocs()
	g := meadowGlass(b, Shade(Celsius(30)))
	for b.Loop() {
		g.Pour(Celsius(3), 10*time.Minute)
	}
}
