package thermal

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// bowl returns a small glass vessel of water in iced water in a bowl just as
// deep as it.
func bowl(v volume.Vessel, from float64, ice unit.Mass, water unit.Volume) IceBath {
	depth := v.Height * 1.02
	inside := unit.Volume(float64(water) + float64(ice)/1000 + float64(v.Displaced(v.Height)))
	return IceBath{
		Tub:  volume.Tub{Capacity: inside * 1.05, Height: depth * 1.05},
		Wall: 2 * volume.Millimetre, Conductivity: SolidPlastic,
		Kegs: 1, Vessel: v, Beer: Water, Fill: 1, From: Celsius(from),
		Ice: ice, IceFrom: Celsius(0), Water: water, WaterFrom: Celsius(17), Around: Shade(Celsius(24)),
	}
}

func model(t testing.TB, b IceBath) *bathModel {
	t.Helper()
	if err := b.check("test"); err != nil {
		t.Fatal(err)
	}
	m, err := newBathModel(b, "test")
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// A fit, not a check: two published series of bottles in iced water, within 1.5
// K. The ice's film is fitted to them, for a glass bottle of 200 mL (0.2 kg of
// glass, 3 mm thick) and 1 kg of ice to 1.5 kg of water; a bath held at 0 °C
// misses them by 3 K.
func TestBottlesInIce(t *testing.T) {
	// The shell's heat is that of steel in the model: 0.2 kg of glass at 750
	// J/(kg K) weigh as much as 0.314 kg of steel.
	bottle := volume.Vessel{Capacity: 200 * volume.Millilitre, Height: 0.17, Diameter: 0.055, Tare: 0.2 * 750 / steelHeat}
	var m *bathModel
	sum, n := 0.0, 0.0
	for _, row := range checktest.Table(t, "bottles_in_ice.csv") {
		minutes, want := row.Number("minutes"), row.Number("t_degC")
		if minutes == 0 {
			m = model(t, bowl(bottle, want, 1, 1.5*volume.Litre))
			m.wall = 3e-3
			continue
		}
		m.runFor(60 * minutes)
		got := m.temperature()
		checktest.Near(t, row.Text("bottle")+" at "+row.Text("minutes")+" min", got, want, 1.5)
		sum += (got - want) * (got - want)
		n++
	}
	if rms := math.Sqrt(sum / n); !(rms <= 0.8) {
		t.Errorf("rms %.2f K", rms)
	}
}

// A can of 355 mL from 22 °C to 38 °F in an ice chest took about 40 min (Benton
// and Dooley, Journal of Visualized Experiments): the check of the films outside
// the sample that the ice's was fitted to. Amounts of ice and water are not
// stated; half and half, with the band of a bath, 35 %.
func TestCanInIceChest(t *testing.T) {
	can := volume.Vessel{Capacity: 355 * volume.Millilitre, Height: 0.122, Diameter: 0.066, Tare: 0.014 * 900 / steelHeat}
	b := bowl(can, 22, 3, 3*volume.Litre)
	b.WaterFrom = Celsius(5)
	wet, err := b.Reach(Fahrenheit(38))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "minutes", wet.Time.Minutes(), 40, 0.35*40)
}

// Hold times of an ice chest, within 10 %: the water of 20 lb of ice passes 6 °C
// after 91 h and after 56.75 h. One conductance of the chest is fitted to both,
// so that together they are one check, of heat and ice.
func TestIceChest(t *testing.T) {
	probe := volume.Vessel{Capacity: 0.25 * volume.Litre, Height: 0.17, Diameter: 0.055}
	for _, row := range checktest.Table(t, "ice_chest.csv") {
		b := IceBath{
			Tub:  volume.Tub{Capacity: 40 * volume.Litre, Height: 0.3},
			Wall: 0.04, Conductivity: ChestFoam, Lid: true, UA: 0.555,
			Kegs: 1, Vessel: probe, Beer: Water, Fill: 1, From: Celsius(1),
			Ice: unit.Mass(row.Number("ice_lb")) * volume.Pound, IceFrom: Celsius(0),
			Water: unit.Volume(row.Number("water_L")) * volume.Litre, WaterFrom: Celsius(row.Number("water_from_degC")),
			Around: Shade(Celsius(row.Number("air_degC"))),
		}
		m := model(t, b)
		m.runFor(3 * 3600)
		if !m.runTo(6) {
			t.Fatal("never 6 °C")
		}
		want := row.Number("hours")
		checktest.Near(t, "hours", m.t/3600, want, 0.1*want)
	}
}

// Ice alone: m L/(UA Ta), 24.70 h for 40 kg, 5 W/K and 30 °C, in closed form.
// What the top of the small probe lets in makes less than 1 %.
func TestIceHoldClosedForm(t *testing.T) {
	probe := volume.Vessel{Capacity: 0.25 * volume.Litre, Height: 0.17, Diameter: 0.055}
	b := DefaultIceBath(probe, Celsius(0), Shade(Celsius(30)))
	b.Ice, b.UA, b.Lid = 40, 5, true
	b.Tub.Capacity *= 2
	c, err := b.Dry().After(0)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "hours", c.Hold.Hours(), 40*333430/(5*30.0)/3600, 0.01*24.7)
}

// heat returns what the balance must keep: heat in beer, steel and water, less
// the cold in ice, less what came in, plus what was drawn.
func (m *bathModel) balance(y [bathStates]float64) float64 {
	return m.n*(y[inLower]+y[inUpper]) + y[inWater] - m.cold*y[inIce] - y[inGain] + y[inDrawn]
}

// day returns three kegs in a trough with pours and top-ups.
func day(t testing.TB) IceBath {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(18), Shade(Celsius(31)))
	b.Kegs = 3
	b.Tub.Capacity *= 3
	b.Ice, b.Water = 54, 45*volume.Litre
	b.Pours = []Pour{{2 * time.Hour, 7 * time.Hour, 40 * volume.Litre}}
	b.TopUps = []TopUp{{4 * time.Hour, 10}, {8 * time.Hour, 5}}
	return b
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

// Nothing but beer and melting: beer that ends at 0 °C has melted C T/L of ice
// (5.1016 kg for 81 kJ/K from 25 to 4 °C, closed form).
func TestIceForBeer(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(20), Shade(Celsius(0)))
	b.Tub = volume.Tub{Capacity: 150 * volume.Litre, Height: 0.75}
	b.Ice, b.Water, b.WaterFrom, b.Lid, b.UA = 40, 60*volume.Litre, Celsius(0), true, 1e-9
	m := model(t, b)
	m.runFor(20 * 3600)
	y := m.y
	warm := m.n*(y[inLower]+y[inUpper]) + y[inWater]
	lower, upper := m.capacities(y[inBeer])
	got := float64(b.Ice) - y[inIce]
	checktest.Near(t, "melted", got, (20*(lower+upper)-warm+y[inGain])/m.cold, 1e-6)
	checktest.Near(t, "melted for the beer", got, 81000*20/333430.0, 0.15*81000*20/333430)
}

// What people ask: ice with water chills faster than ice alone, about twice as
// fast (a demonstration with cans found 15 and 30 min, secondary source).
func TestWaterHelps(t *testing.T) {
	can := volume.Vessel{Capacity: 355 * volume.Millilitre, Height: 0.122, Diameter: 0.066, Tare: 0.014 * 900 / steelHeat}
	b := bowl(can, 22, 3, 3*volume.Litre)
	b.WaterFrom = Celsius(2)
	wet, err := b.Reach(Celsius(8))
	if err != nil {
		t.Fatal(err)
	}
	dry, err := b.Dry().Reach(Celsius(8))
	if err != nil {
		t.Fatal(err)
	}
	if ratio := dry.Time.Seconds() / wet.Time.Seconds(); !(1.4 <= ratio && ratio <= 3) {
		t.Errorf("ice alone takes %.2f times as long (%v, %v)", ratio, dry.Time, wet.Time)
	}
}

// More of what warms makes warmer beer and less ice; more ice keeps it longer.
func TestBathOrder(t *testing.T) {
	run := func(change func(*IceBath)) Chilling {
		b := day(t)
		b.TopUps = nil
		change(&b)
		c, err := b.After(5 * time.Hour)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	plain := run(func(*IceBath) {})
	for name, change := range map[string]func(*IceBath){
		"hotter": func(b *IceBath) { b.Around.Air = Celsius(36) },
		"sun":    func(b *IceBath) { b.Around.Sun = 800 },
		"windy":  func(b *IceBath) { b.Around.Wind = 4 },
		"muggy":  func(b *IceBath) { b.Around.Humidity = 0.9 },
	} {
		if c := run(change); !(c.IceLeft < plain.IceLeft && c.Hold < plain.Hold) {
			t.Errorf("%s: %.2f kg left, plain %.2f", name, float64(c.IceLeft), float64(plain.IceLeft))
		}
	}
	for name, change := range map[string]func(*IceBath){
		"lid":        func(b *IceBath) { b.Lid = true },
		"foam":       func(b *IceBath) { b.Conductivity, b.Wall = ChestFoam, 40*volume.Millimetre },
		"more ice":   func(b *IceBath) { b.Ice *= 1.3 },
		"colder ice": func(b *IceBath) { b.IceFrom = Celsius(-15) },
		"measured":   func(b *IceBath) { b.UA = 2 },
		"top-up":     func(b *IceBath) { b.TopUps = []TopUp{{2 * time.Hour, 10}} },
	} {
		if c := run(change); !(c.IceLeft > plain.IceLeft && c.Hold > plain.Hold) {
			t.Errorf("%s: %.2f kg left, plain %.2f", name, float64(c.IceLeft), float64(plain.IceLeft))
		}
	}
	if c := run(func(b *IceBath) { b.Salt = 0.02 }); !(c.Bath.Sub(plain.Bath) < 0 && c.BathFreezes.Celsius() < -1) {
		t.Errorf("salted bath %v, fresh %v", c.Bath, plain.Bath)
	}
	if c := run(func(b *IceBath) { b.Stirred = true }); !(c.Bath.Sub(plain.Bath) < -0.5 && c.Temperature.Sub(plain.Temperature) < -0.5) {
		t.Errorf("stirred %v in %v, still %v in %v", c.Temperature, c.Bath, plain.Temperature, plain.Bath)
	}
	deeper := run(func(b *IceBath) { b.Tub.Capacity *= 0.75 })
	if !(deeper.Covered > plain.Covered && deeper.Temperature.Sub(plain.Temperature) < 0.5) {
		t.Errorf("deeper %v, plain %v", deeper, plain)
	}
}

func TestBrine(t *testing.T) {
	for _, row := range checktest.Table(t, "nacl_freezing.csv") {
		s := row.Number("NaCl_mass_pct")
		if s > 20 {
			continue
		}
		checktest.Near(t, "brine of "+row.Text("NaCl_mass_pct")+" %", brineFreezes(s), row.Number("lange_degC"), 0.035)
	}
	// Water of 2.47 % salt is densest where it freezes, and stronger never
	// before (oceanography, from memory).
	m := model(t, DefaultIceBath(vessel(t, "soda-5gal"), Celsius(10), Shade(Celsius(30))))
	m.salt = 0.0247 / (1 - 0.0247)
	freezes, densest := m.bathPoints(1)
	checktest.Near(t, "densest", densest, freezes, 1e-9)
	m.salt = 0.01
	if freezes, densest = m.bathPoints(1); !(densest > freezes && freezes < 0) {
		t.Errorf("1 %%: %g, %g", freezes, densest)
	}
}

// Beer in a strong brine freezes and is refused, a weak one is flagged.
func TestBrineFreezesBeer(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(10), Shade(Celsius(25)))
	b.Ice, b.Salt = 40, 0.2
	b.Tub.Capacity *= 2
	var r *RangeError
	if c, err := b.After(12 * time.Hour); !errors.As(err, &r) || !math.IsNaN(float64(c.IceLeft)) {
		t.Errorf("%v, %v", c, err)
	}
	b.Salt = 0.04
	c, err := b.After(time.Hour)
	if err != nil || !c.FreezesBeer || !(c.BathFreezes.Sub(b.Beer.FreezingPoint()) < 0) {
		t.Errorf("4 %%: %v, %v", c, err)
	}
	b.Salt = 0.02
	if c, err := b.After(time.Hour); err != nil || c.FreezesBeer {
		t.Errorf("2 %%: %v, %v", c, err)
	}
}

// A keg floats when it weighs less than the water it displaces: Archimedes,
// with the shell's own volume counted.
func TestFloat(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(3), Shade(Celsius(25)))
	b.Tub = volume.Tub{Capacity: 120 * volume.Litre, Height: 0.7}
	b.Ice, b.Water = 30, 50*volume.Litre
	c, err := b.After(time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	lift := 999.84 * float64(b.Vessel.Displaced(c.Depth))
	checktest.Near(t, "floats below", c.FloatsBelow, (lift-4.536)/(1008*18.927e-3), 0.01)
	b.Fill = c.FloatsBelow * 0.8
	low, err := b.After(time.Hour)
	if err != nil || !(low.Covered < c.Covered) {
		t.Errorf("floating keg covered %.3f, standing %.3f, %v", low.Covered, c.Covered, err)
	}
}

func TestBathNever(t *testing.T) {
	b := DefaultIceBath(vessel(t, "us-half"), Celsius(25), Shade(Celsius(35)))
	b.Tub.Capacity *= 3
	b.Ice = 5
	_, err := b.Reach(Celsius(3))
	if !errors.Is(err, ErrNever) || !strings.Contains(err.Error(), "°F") {
		t.Errorf("%v", err)
	}
	if _, err := b.Reach(Celsius(39)); !errors.Is(err, ErrNever) {
		t.Errorf("warmer than the air: %v", err)
	}
	c, err := b.Reach(b.From)
	if err != nil || c.Time != 0 {
		t.Errorf("to where it is: %v, %v", c.Time, err)
	}
	none := b
	none.Ice = 0
	if c, err := none.After(time.Hour); err != nil || c.Hold != 0 || !(c.Temperature.Sub(b.From) < 0) {
		t.Errorf("cold water alone: %v, %v", c, err)
	}
}

// Beer mixed: the mean by volume, by hand for a keg that stands to 19 % in ice.
func TestMixed(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(24), Shade(Celsius(30))).Dry()
	c, err := b.After(time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	want := c.Covered*c.Temperature.Celsius() + (1-c.Covered)*c.Upper.Celsius()
	if checktest.Near(t, "mixed", c.Mixed.Celsius(), want, 1e-9); !(c.Covered < 0.5 && c.Upper.Sub(c.Temperature) > 4) {
		t.Errorf("%+v", c)
	}
	b = DefaultIceBath(b.Vessel, Celsius(24), b.Around)
	b.Tub.Height, b.Tub.Capacity, b.Ice, b.Water = 0.8, 70*volume.Litre, 20, 28*volume.Litre
	if c, err = b.After(time.Hour); err != nil || c.Mixed != c.Temperature {
		t.Errorf("covered to %.3f: %v mixed, %v, %v", c.Covered, c.Mixed, c.Temperature, err)
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

// What has no answer is told in US units first, with one keg as one keg.
func TestBathTells(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(4), Shade(Celsius(30)))
	tells := func(b IceBath, want ...string) {
		t.Helper()
		_, err := b.After(time.Hour)
		if !errors.Is(err, ErrNoSolution) {
			t.Fatalf("%v, want ErrNoSolution", err)
		}
		for _, w := range want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%q does not say %q", err, w)
			}
		}
	}
	much := b
	much.Pours = []Pour{{0, time.Hour, 40 * volume.Litre}}
	tells(much, "10.6 gal (40.0 L)", "1 keg holds 5.0 gal (18.9 L)")
	heap := b.Dry()
	heap.Ice = 100
	tells(heap, "around 1 keg ", "220.5 lb (100.0 kg) were given")
	_, err := b.KeptCold(720*time.Hour, DefaultUpkeep(0.1))
	if !errors.Is(err, ErrNoSolution) || !strings.Contains(err.Error(), "200 bags of 0.2 lb (0.1 kg)") {
		t.Errorf("%v", err)
	}
}

func TestBathRefuses(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*IceBath){
		"no kegs":      func(b *IceBath) { b.Kegs = 0 },
		"many kegs":    func(b *IceBath) { b.Kegs = 1e9 },
		"NaN ice":      func(b *IceBath) { b.Ice = unit.Mass(nan) },
		"negative ice": func(b *IceBath) { b.Ice = -1 },
		"empty tub":    func(b *IceBath) { b.Ice, b.Water = 0, 0 },
		"warm ice":     func(b *IceBath) { b.IceFrom = Celsius(1) },
		"hot water":    func(b *IceBath) { b.WaterFrom = Celsius(60) },
		"salt":         func(b *IceBath) { b.Salt = 5 },
		"wall":         func(b *IceBath) { b.Wall = -1 },
		"conductivity": func(b *IceBath) { b.Conductivity = 0 },
		"frost":        func(b *IceBath) { b.Around.Air = Celsius(-5) },
		"fill":         func(b *IceBath) { b.Fill = 0 },
		"frozen beer":  func(b *IceBath) { b.From = Celsius(-4) },
		"wet drained":  func(b *IceBath) { b.Drained = true },
		"no tub":       func(b *IceBath) { b.Tub = volume.Tub{} },
		"no vessel":    func(b *IceBath) { b.Vessel = volume.Vessel{} },
		"UA":           func(b *IceBath) { b.UA = Conductance(math.Inf(1)) },
		"early pour":   func(b *IceBath) { b.Pours = []Pour{{-time.Hour, time.Hour, 1}} },
		"backward":     func(b *IceBath) { b.Pours = []Pour{{2 * time.Hour, time.Hour, 1e-3}} },
		"at once":      func(b *IceBath) { b.Pours = []Pour{{time.Hour, time.Hour, 1e-3}} },
		"NaN pour":     func(b *IceBath) { b.Pours = []Pour{{0, time.Hour, unit.Volume(nan)}} },
		"early top-up": func(b *IceBath) { b.TopUps = []TopUp{{-1, 1}} },
		"NaN top-up":   func(b *IceBath) { b.TopUps = []TopUp{{1, unit.Mass(nan)}} },
	} {
		b := day(t)
		change(&b)
		var r *RangeError
		c, err := b.Reach(Celsius(8))
		if !errors.As(err, &r) || !math.IsNaN(float64(c.UA)) || c.Bath.IsValid() {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := b.After(time.Hour); !errors.As(err, &r) {
			t.Errorf("%s, After: %v", name, err)
		}
	}
	for name, change := range map[string]func(*IceBath){
		"runs over":   func(b *IceBath) { b.Water = 300 * volume.Litre },
		"no room":     func(b *IceBath) { b.Kegs = 12 },
		"heap of ice": func(b *IceBath) { b.Drained, b.Water, b.Ice = true, 0, 200 },
		"too thirsty": func(b *IceBath) { b.Pours = []Pour{{0, time.Hour, 100 * volume.Litre}} },
	} {
		b := day(t)
		change(&b)
		if _, err := b.Reach(Celsius(8)); !errors.Is(err, ErrNoSolution) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestChillingCourse(t *testing.T) {
	c, err := day(t).After(9 * time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	course := c.Course(10)
	last := course[9]
	got := []float64{last.Beer.Celsius(), last.Upper.Celsius(), last.Bath.Celsius(), float64(last.Ice)}
	want := []float64{c.Temperature.Celsius(), c.Upper.Celsius(), c.Bath.Celsius(), float64(c.IceLeft)}
	if d := cmp.Diff(want, got, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 0.02 })); d != "" {
		t.Error(d)
	}
	if course[0].Beer != Celsius(18) || len(course) != 10 || course[3].At != 3*time.Hour {
		t.Errorf("%+v", course[0])
	}
	checktest.Near(t, "melted and left", float64(c.IceMelted+c.IceLeft), 54+15, 1e-9)
	if b := c.Band(); !(b.Low < c.Temperature.Celsius() && c.Temperature.Celsius() < b.High) {
		t.Errorf("band %+v", b)
	}
	r, err := day(t).Reach(Celsius(6))
	if err != nil {
		t.Fatal(err)
	}
	if b := r.Band(); !(b.Low < r.Time.Hours() && r.Time.Hours() < b.High && b.Suffix == "h") {
		t.Errorf("band %+v", b)
	}
	for _, s := range r.Steps() {
		if s.Symbol == "" || s.Name == "" || s.Source == "" || math.IsNaN(s.Value) {
			t.Errorf("step %+v", s)
		}
	}
	if dry, err := day(t).Dry().After(time.Hour); err != nil || len(dry.Steps()) >= len(r.Steps()) || dry.Band().Low >= dry.Band().High {
		t.Errorf("dry: %v", err)
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
