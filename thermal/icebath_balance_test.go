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

// heat returns what the balance must keep: heat in beer, steel and water, less
// the cold in ice, less what came in, plus what was drawn.
func (m *bathModel) balance(y [bathStates]float64) float64 {
	return m.n*(y[inLower]+y[inUpper]) + y[inWater] - m.cold*y[inIce] - y[inGain] + y[inDrawn]
}

// Heat and ice close to 1e-9 in any bath, whatever happens in it.
func TestBathCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.SampledFrom(volume.Vessels()[2:]).Draw(t, "vessel")
		b := DefaultIceBath(v, Celsius(rapid.Float64Range(0, 30).Draw(t, "from")), Shade(Celsius(rapid.Float64Range(0, 40).Draw(t, "air"))))
		b.Kegs = rapid.IntRange(1, 3).Draw(t, "kegs")
		b.Tub = volume.Tub{Capacity: 500 * volume.Litre, Height: 0.6}
		b.Ice = unit.Mass(rapid.Float64Range(0, 60).Draw(t, "ice"))
		b.IceFrom = Celsius(rapid.Float64Range(-20, 0).Draw(t, "ice from"))
		b.Water = unit.Volume(rapid.Float64Range(0, 60).Draw(t, "water")) * volume.Litre
		b.Salt = rapid.SampledFrom([]float64{0, 0, 0.01}).Draw(t, "salt")
		b.Lid = rapid.Bool().Draw(t, "lid")
		if rapid.Bool().Draw(t, "drained") {
			b = b.Dry()
		}
		half := unit.Volume(b.Kegs) * v.Capacity / 2
		b.Pours = []Pour{{time.Hour, 3 * time.Hour, half}, {2 * time.Hour, 5 * time.Hour, half * 0.8}}
		b.TopUps = []TopUp{{90 * time.Minute, 10}, {20 * time.Hour, 3}}
		if b.check("test") != nil {
			return // neither ice nor water
		}
		m, err := newBathModel(b, "test")
		if errors.Is(err, ErrNoSolution) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		before := m.balance(m.y)
		m.runFor(30 * 3600)
		added := 13.0
		whole := m.cold*(float64(b.Ice)+added) + math.Abs(m.y[inGain]) + 1e4
		if d := m.balance(m.y) - (before - m.cold*added); !(math.Abs(d) <= 1e-9*whole) {
			t.Fatalf("off by %g J of %g", d, whole)
		}
		left := float64(v.Capacity) - float64(half)*1.8/float64(b.Kegs)
		if d := m.y[inBeer] - left; !(math.Abs(d) <= 1e-9*float64(v.Capacity)) {
			t.Fatalf("beer off by %g m³", d)
		}
		if ice := m.y[inIce]; !(0 <= ice && ice <= (float64(b.Ice)+added)*(1+1e-5)+1e-4) {
			t.Fatalf("%g kg of ice", ice)
		}
		s := m.sample()
		for _, temp := range []Temperature{s.Beer, s.Upper, s.Bath} {
			if c := temp.Celsius(); !(-3 < c && c < 60) {
				t.Fatalf("%+v", s)
			}
		}
	})
}

// Halving steps and tolerances moves no temperature by 0.02 K and no time by
// 0.5 %.
func TestBathConverges(t *testing.T) {
	for name, b := range map[string]IceBath{"wet": day(t), "dry": day(t).Dry()} {
		a, fine := model(t, b), model(t, b)
		fine.integrate(2)
		for h := 1.0; h <= 24; h++ {
			a.runFor(h * 3600)
			fine.runFor(h * 3600)
			x, y := a.sample(), fine.sample()
			for what, d := range map[string]Difference{"beer": x.Beer.Sub(y.Beer), "upper": x.Upper.Sub(y.Upper), "bath": x.Bath.Sub(y.Bath)} {
				if !(math.Abs(float64(d)) <= 0.02) {
					t.Errorf("%s, %g h: %s moves by %.3g K", name, h, what, float64(d))
				}
			}
		}
		a, fine = model(t, b), model(t, b)
		fine.integrate(2)
		if !a.runTo(8) || !fine.runTo(8) {
			t.Fatal("never 8 °C")
		}
		checktest.Near(t, name+" time", fine.t, a.t, 0.005*a.t)
		checktest.Near(t, name+" hold", fine.holds(), a.holds(), 0.005*a.holds())
	}
}

// The table of films is within 0.5 % of the films on the mean, and within 20 % at
// the corners where one side is at the density maximum and little heat flows:
// well inside their band of 35 to 50 %.
func TestFilmTable(t *testing.T) {
	m := model(t, DefaultIceBath(vessel(t, "soda-5gal"), Celsius(20), Shade(Celsius(30))))
	worst, mean, n := 0.0, 0.0, 0.0
	for t1 := 0.1; t1 < 30; t1 += 0.37 {
		for tw := 0.05; tw < 12; tw += 0.31 {
			if math.Abs(t1-tw) < 1 {
				continue // the films themselves have a corner there, and no heat flows
			}
			exact, _ := m.kegFilms(t1, tw)
			quick, _ := m.keg.at(t1, tw)
			worst = math.Max(worst, math.Abs(quick/exact-1))
			mean += math.Abs(quick/exact - 1)
			n++
		}
	}
	if !(worst <= 0.20 && mean/n <= 0.005) {
		t.Errorf("off by %.3g, on the mean %.3g", worst, mean/n)
	}
}

// A pound of ice under a barrel in a wide tray in the desert: the puddle gets
// warmer than any bath, and the beer has a temperature and a band all the same.
func TestPuddle(t *testing.T) {
	b := DefaultIceBath(vessel(t, "uk-barrel"), Celsius(1), Shade(Celsius(60)))
	b.Around.Humidity, b.Fill = 0, 0.01
	b.Tub = volume.Tub{Capacity: 1, Height: 0.125}
	b.Ice, b.IceFrom, b.Water, b.Wall, b.Conductivity = 0.5, Celsius(-25), 0, 0.3, 0.01
	c, err := b.After(5 * time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	trial{"IceBath.After", c, err}.holdsUp(t, "puddle")
	if band := c.Band(); !(band.Low < c.Temperature.Celsius() && c.Temperature.Celsius() < band.High) {
		t.Errorf("%v in a bath of %v, band %+v", c.Temperature, c.Bath, band)
	}
}

// Ice heaped over the brim of a tub that holds no water yet has none to spill.
func TestHeapOverTheBrim(t *testing.T) {
	b := DefaultIceBath(vessel(t, "uk-barrel"), Celsius(20), Shade(Celsius(30)))
	b.Tub, b.Fill, b.Ice, b.Water = volume.Tub{Capacity: 0.0625, Height: 0.1}, 0.01, 1, 0
	b.TopUps = []TopUp{{0, 50}}
	for _, d := range []time.Duration{0, time.Hour} {
		c, err := b.After(d)
		trial{"IceBath.After", c, err}.holdsUp(t, d.String())
		if err != nil || !c.Bath.IsValid() {
			t.Errorf("%v: %+v, %v", d, c, err)
		}
	}
}

// A day of three kegs stays under 2 ms and 50 allocations.
func BenchmarkIceBathDay(b *testing.B) {
	bath := day(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bath.After(24 * time.Hour); err != nil {
			b.Fatal(err)
		}
	}
}

func TestIceBathAllocations(t *testing.T) {
	bath := day(t)
	if n := testing.AllocsPerRun(5, func() { _, _ = bath.After(24 * time.Hour) }); n > 50 {
		t.Errorf("%v allocations, want 50 at most", n)
	}
}
