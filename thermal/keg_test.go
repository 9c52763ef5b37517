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

// Common practice, no source: a bare 5 gallon keg in dry 30 °C shade gains 10 °F
// in about 2 h, and takes about 16 h back in a refrigerator; that its air is
// still and at 0 to 1 °C is our reading. Within 30 %.
func TestPractice(t *testing.T) {
	keg := vessel(t, "soda-5gal")
	up := reach(t, DefaultKeg(keg, Fahrenheit(38), in30(0.2)), Fahrenheit(48)).Time.Hours()
	checktest.Near(t, "hours up", up, 2, 0.3*2)
	for _, air := range []float64{0, 1} {
		back := reach(t, DefaultKeg(keg, Fahrenheit(48), Shade(Celsius(air))), Fahrenheit(38)).Time.Hours()
		checktest.Near(t, "hours back", back, 16, 0.3*16)
	}
	// In ordinary humid air it warms nearly twice as fast: 1.6 to 2.4 times.
	humid := reach(t, DefaultKeg(keg, Fahrenheit(38), in30(0.55)), Fahrenheit(48)).Time.Hours()
	checktest.Near(t, "dry over humid", up/humid, 2, 0.4)
	// From room temperature a refrigerator of 2 °C with a little motion of air
	// takes a day (common practice, no source); within 30 %.
	fridge := Shade(Celsius(2))
	fridge.Wind = 0.5
	day := reach(t, DefaultKeg(keg, Celsius(24), fridge), Celsius(4)).Time.Hours()
	checktest.Near(t, "hours to chill", day, 24, 0.3*24)
}

// Cengel, Heat and Mass Transfer, 5th ed., chapter 4, review problem: a canned
// drink of 367.6 cm³ and 301.6 cm² in iced water, 120 W/(m² K), from 25 to 5 °C
// in 11.1 min. The book's drink has a density of 977 kg/m³ and 4180 J/(kg K),
// 2 % less heat than water has.
func TestCannedDrink(t *testing.T) {
	can := volume.Vessel{Capacity: 0.3676 * volume.Litre, Height: 0.13, Diameter: 0.06}
	k := DefaultKeg(can, Celsius(25), Shade(Celsius(0)))
	k.Beer, k.UA = Water(), 120*0.03016
	checktest.Near(t, "minutes", reach(t, k, Celsius(5)).Time.Minutes(), 11.1, 0.025*11.1)
}

// A keg in a refrigerator by a measurement on a can of 355 mL, room to 38 °F in
// about 240 min (Benton and Dooley, Journal of Visualized Experiments; air and
// room not stated, taken as 2 °C with a breath of 0.3 m/s and 22 °C). The band
// of a refrigerator, 25 %, and half a kelvin of air make 45 %.
func TestCanInRefrigerator(t *testing.T) {
	can := volume.Vessel{Capacity: 355 * volume.Millilitre, Height: 0.122, Diameter: 0.066, Tare: 0.014 * 900 / 477}
	fridge := Shade(Celsius(2))
	fridge.Wind = 0.3
	k := DefaultKeg(can, Celsius(22), fridge)
	k.Surface = Painted
	checktest.Near(t, "minutes", reach(t, k, Fahrenheit(38)).Time.Minutes(), 240, 0.45*240)
}

// What changes warming does so in the right direction.
func TestKegOrder(t *testing.T) {
	base := DefaultKeg(vessel(t, "us-sixth"), Celsius(3), in30(0.5))
	hours := func(change func(*Keg)) float64 {
		k := base
		change(&k)
		return reach(t, k, Celsius(9)).Time.Hours()
	}
	plain := hours(func(*Keg) {})
	for name, change := range map[string]func(*Keg){
		"sun":     func(k *Keg) { k.Around.Sun = 700 },
		"wind":    func(k *Keg) { k.Around.Wind = 2 },
		"muggy":   func(k *Keg) { k.Around.Humidity = 0.9 },
		"painted": func(k *Keg) { k.Surface = Painted },
		"hotter":  func(k *Keg) { k.Around.Air = Celsius(35) },
		"half":    func(k *Keg) { k.Fill = 0.5 },
	} {
		if h := hours(change); !(h < plain) {
			t.Errorf("%s: %.2f h, plain %.2f h", name, h, plain)
		}
	}
	for name, change := range map[string]func(*Keg){
		"jacket": func(k *Keg) { k.Jacket = 10 * volume.Millimetre },
		"dry":    func(k *Keg) { k.Around.Humidity = 0.1 },
		"larger": func(k *Keg) { k.Vessel = vessel(t, "us-half") },
	} {
		if h := hours(change); !(h > plain) {
			t.Errorf("%s: %.2f h, plain %.2f h", name, h, plain)
		}
	}
	// A thin dark jacket in the sun is worse than bare steel in the shade.
	if h := hours(func(k *Keg) { k.Jacket, k.Around.Sun = 5*volume.Millimetre, 800 }); !(h < plain) {
		t.Errorf("dark jacket in the sun %.2f h, bare in the shade %.2f h", h, plain)
	}
}

func TestKegNever(t *testing.T) {
	k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(20), Shade(Celsius(5)))
	_, err := k.Reach(Celsius(4))
	if !errors.Is(err, ErrNever) || !strings.Contains(err.Error(), "settles at 41.0 °F (5.0 °C), so it does not get to 39.2 °F (4.0 °C)") {
		t.Errorf("below the air: %v", err)
	}
	if _, err := k.Reach(Celsius(25)); !errors.Is(err, ErrNever) {
		t.Errorf("away from the air: %v", err)
	}
	w := reach(t, k, Celsius(20))
	if w.Time != 0 || w.Temperature != k.From {
		t.Errorf("to where it is: %v, %v", w.Time, w.Temperature)
	}
	k.Around.Air = k.From // no heat flows, and none of it is dew's
	w, err = k.Reach(k.From)
	holdsUp(t, "air as warm as the beer", tried("Keg.Reach", w, err))
}

func TestKegRefuses(t *testing.T) {
	base := DefaultKeg(vessel(t, "soda-5gal"), Celsius(3), in30(0.5))
	nan := math.NaN()
	for name, change := range map[string]func(*Keg){
		"no vessel":     func(k *Keg) { k.Vessel = volume.Vessel{} },
		"NaN vessel":    func(k *Keg) { k.Vessel.Diameter = unit.Length(nan) },
		"no height":     func(k *Keg) { k.Vessel.Height = 0 },
		"negative tare": func(k *Keg) { k.Vessel.Tare = -1 },
		"empty":         func(k *Keg) { k.Fill = 0 },
		"overfull":      func(k *Keg) { k.Fill = 1.1 },
		"NaN fill":      func(k *Keg) { k.Fill = nan },
		"frozen":        func(k *Keg) { k.From = Celsius(-3) },
		"hot":           func(k *Keg) { k.From = Celsius(71) },
		"no start":      func(k *Keg) { k.From = Temperature{} },
		"no air":        func(k *Keg) { k.Around = Surroundings{} },
		"jacket":        func(k *Keg) { k.Jacket = -1 },
		"UA":            func(k *Keg) { k.UA = Conductance(nan) },
		"surface":       func(k *Keg) { k.Surface = 7 },
	} {
		k := base
		change(&k)
		var r *RangeError
		w, err := k.Reach(Celsius(9))
		if !errors.As(err, &r) || !math.IsNaN(float64(w.UA)) || w.Temperature.IsValid() {
			t.Errorf("%s: %v, %+v", name, err, w)
		}
		if _, err := k.After(time.Hour); !errors.As(err, &r) {
			t.Errorf("%s, After: %v", name, err)
		}
	}
	var r *RangeError
	if _, err := base.Reach(Celsius(-4)); !errors.As(err, &r) || r.Min > -2 || r.Min < -3 {
		t.Errorf("below freezing: %v", err)
	}
	if _, err := base.Reach(Temperature{}); !errors.As(err, &r) {
		t.Errorf("invalid target: %v", err)
	}
	if _, err := base.After(-time.Hour); !errors.As(err, &r) {
		t.Errorf("negative time: %v", err)
	}
	frost := base
	frost.Around.Air = Celsius(-15)
	if _, err := frost.After(24 * time.Hour); !errors.As(err, &r) {
		t.Errorf("a night of frost: %v", err)
	}
	oven := base
	oven.Around = in30(0.3)
	oven.Around.Air, oven.Around.Sun = Celsius(45), 900
	if _, err := oven.After(72 * time.Hour); !errors.As(err, &r) {
		t.Errorf("three days of desert sun: %v", err)
	}
}

func TestWarmingCourseAndSteps(t *testing.T) {
	k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(3), in30(0.5))
	w := reach(t, k, Celsius(10))
	course := w.Course(8)
	if len(course) != 8 || course[0].Beer != k.From || course[7].At.Round(time.Second) != w.Time.Round(time.Second) {
		t.Fatalf("%+v", course)
	}
	checktest.Near(t, "end of the course", course[7].Beer.Celsius(), 10, 1e-3)
	for i := 1; i < 8; i++ {
		if !(course[i].Beer.Celsius() > course[i-1].Beer.Celsius()) {
			t.Errorf("sample %d is not warmer", i)
		}
	}
	// The steps' parts add up to the UA they give.
	sum, air, middle, ua := 0.0, 0.0, 0.0, 0.0
	for _, s := range w.Steps() {
		switch s.Symbol {
		case "q":
			sum += s.Value
		case "Ta":
			air = s.Value
		case "Tm":
			middle = s.Value
		case "UA":
			ua = s.Value
		}
	}
	checktest.Near(t, "UA from the steps", sum/(air-middle), ua, 1e-9)
	band := w.Band()
	checktest.Near(t, "band", band.High/band.Low, 1.35/0.65, 1e-9)
}

func BenchmarkKegReach(b *testing.B) {
	k := DefaultKeg(vessel(b, "soda-5gal"), Celsius(3), in30(0.5))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := k.Reach(Celsius(10)); err != nil {
			b.Fatal(err)
		}
	}
}

// A temperature that never comes is told with where it settles instead, as a
// number: the keg in the shade comes to its air.
func TestNeverCarriesWhereItSettles(t *testing.T) {
	_, err := DefaultKeg(vessel(t, "soda-5gal"), Celsius(4), Shade(Celsius(20))).Reach(Celsius(25))
	var never *NeverError
	if !errors.As(err, &never) || !errors.Is(err, ErrNever) || never.Key != "temperature_c" || never.Asked != 25 {
		t.Fatalf("%v: %+v", err, never)
	}
	checktest.Near(t, "the air, °C", never.Settles, 20, 0.5)
}
