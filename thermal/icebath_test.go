package thermal

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

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
			Kegs: 1, Vessel: probe, Beer: Water(), Fill: 1, From: Celsius(1),
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
	tells(much, "10.57 gal (40.0 L)", "1 keg holds 5.00 gal (18.9 L)")
	heap := b.Dry()
	heap.Ice = 100
	tells(heap, "around 1 keg ", "220.5 lb (100.0 kg) were given")
	heap.Kegs = 5
	tells(heap, "5 kegs", "cannot stand") // before the ice is asked for room
	b.Around.Sun, b.Around.Air, b.Ice = 1000, Celsius(40), 0.5
	_, err := b.KeptCold(700*time.Hour, Upkeep{Bag: 0.1, Reserve: UsualReserve})
	if !errors.Is(err, ErrNoSolution) || !strings.Contains(err.Error(), "200 top-ups do not last for ") {
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
