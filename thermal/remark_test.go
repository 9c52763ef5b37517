package thermal

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// says reports whether a remark of that code and severity says the words.
func says(all []Remark, code volume.Code, severity volume.Severity, words string) bool {
	return slices.ContainsFunc(all, func(r Remark) bool {
		return r.Code == code && r.Severity == severity && strings.Contains(r.Text.Metric(), words)
	})
}

// cautions demands that a result cautions of something, or does not.
func cautions(t *testing.T, of interface{ Cautions() []Remark }, code volume.Code, words string, want bool) {
	t.Helper()
	if all := of.Cautions(); says(all, code, volume.Caution, words) != want {
		t.Errorf("%s, %q is %t in %+v", code, words, !want, all)
	}
}

// notes demands that a result notes something, or does not.
func notes(t *testing.T, of interface{ Notes() []Remark }, code volume.Code, words string, want bool) {
	t.Helper()
	if all := of.Notes(); says(all, code, volume.Note, words) != want {
		t.Errorf("%s, %q is %t in %+v", code, words, !want, all)
	}
}

// A keg cautions from 25 °C on, and where it goes on past 40 °C. With a measured
// UA in the shade it settles at the air's temperature.
func TestWarmKegIsCautioned(t *testing.T) {
	for _, c := range []struct {
		to, air   float64
		warm, sun bool
	}{{25, 39, false, false}, {25.1, 39, true, false}, {20, 39.9, false, false}, {20, 40.1, false, true}, {25.1, 41, true, false}} {
		k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(5), Shade(Celsius(c.air)))
		k.UA = 1
		w, err := k.Reach(Celsius(c.to))
		if err != nil {
			t.Fatal(err)
		}
		cautions(t, w, WarmKeg, "never defeat the valve", c.warm)
		cautions(t, w, KegInSun, "get the keg into the shade", c.sun)
		cautions(t, w, GasInCar, "", false)
	}
}

func TestWarmingNotes(t *testing.T) {
	warms := func(change func(*Keg)) Warming {
		k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(5), Shade(Celsius(30)))
		change(&k)
		w, err := k.After(time.Hour)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	// Air of 50 % at 30 °C has its dew point at 18 °C; of 5 % below 0 °C.
	moist, dry := warms(func(*Keg) {}), warms(func(k *Keg) { k.Around.Humidity = 0.05 })
	notes(t, moist, DewHeats, "of water drips off", true)
	notes(t, dry, DewHeats, "", false)
	notes(t, moist, KegPractice, "a bare 5 gal keg gains 5.6 K", true)
	for name, change := range map[string]func(*Keg){
		"sun": func(k *Keg) { k.Around.Sun = 500 }, "wind": func(k *Keg) { k.Around.Wind = 1 },
		"jacket": func(k *Keg) { k.Jacket = 0.01 }, "measured": func(k *Keg) { k.UA = 1 },
		"car": func(k *Keg) { k.Around = k.Around.InClosedCar() },
	} {
		if says(warms(change).Notes(), KegPractice, volume.Note, "") {
			t.Errorf("%s: the practice is of a bare keg in the shade", name)
		}
	}
	car := warms(func(k *Keg) { k.Around.Sun = 400; k.Around = k.Around.InClosedCar() })
	notes(t, car, ClosedCar, "by up to 22", true)
	notes(t, moist, ClosedCar, "", false)
	cautions(t, car, GasInCar, "keep cylinders upright", true)
	notes(t, warms(func(k *Keg) { k.UA, k.Around.Sun = 1, 500 }), UAInSun, "measured in the shade", true)
	notes(t, warms(func(k *Keg) { k.UA = 1 }), UAInSun, "", false)
	notes(t, warms(func(k *Keg) { k.Around.Sun = 500 }), UAInSun, "", false)
}

// A coil cautions below the freezing point of the beer, and up to 0.4 K above.
func TestCoilIsCautioned(t *testing.T) {
	freezes := Beer{}.FreezingPoint()
	for above, want := range map[Difference]volume.Code{-0.01: FrozenBeer, 0.01: NearFreezing, 0.39: NearFreezing, 0.41: ""} {
		c := DefaultCoil().Packed()
		c.Length, c.Bath = 3, freezes.Add(above)
		r, err := c.Chill(Celsius(20), DefaultPours().Flow)
		if err != nil {
			t.Fatal(err)
		}
		for _, code := range []volume.Code{FrozenBeer, NearFreezing} {
			cautions(t, r, code, "freezing point", code == want)
		}
		if (want == FrozenBeer) != r.Blocks {
			t.Errorf("%g K above: blocks %t", float64(above), r.Blocks)
		}
		cautions(t, r, NotForDrinks, "not for drinks or food", true)
		cautions(t, r, Electricity, "", false)
		if s, err := c.Serve(Celsius(20), DefaultPours()); err == nil {
			cautions(t, s, NearFreezing, "standing beer may freeze", want == NearFreezing)
		}
	}
	pumped, err := DefaultCoil().Pumped().LargestFlow(Celsius(20), Celsius(5))
	if err != nil {
		t.Fatal(err)
	}
	cautions(t, pumped, Electricity, "ground-fault breaker", true)
	notes(t, pumped, CoilPractice, "15.24 m", true)
	notes(t, pumped, IceForBeer, "what the box itself melts", true)
	for inlet, want := range map[float64]bool{1.9: true, 2.1: false} { // a still bath is at 2 °C
		r, err := DefaultCoil().Still().Chill(Celsius(inlet), DefaultPours().Flow)
		if err != nil {
			t.Fatal(err)
		}
		notes(t, r, WarmBath, "warmer than the beer", want)
	}
}

func TestPlateRemarks(t *testing.T) {
	for inlet, want := range map[float64]bool{13: false, 13.1: true} {
		for _, p := range []Plate{DefaultPlate().Pressed(), DefaultPlate().Flooded()} {
			r, err := p.Chill(Celsius(inlet), DefaultPours().Flow)
			if err != nil {
				t.Fatal(err)
			}
			notes(t, r, WarmForPlate, "work for a coil", want)
			notes(t, r, FloodedPlate, "Let the water off now", p.Contact == 0)
			cautions(t, r, NotForDrinks, "not for drinks", true)
			s, err := p.Serve(Celsius(inlet), DefaultPours())
			if err != nil {
				t.Fatal(err)
			}
			cautions(t, s, NotForDrinks, "not for drinks", true)
		}
	}
}

func TestLineNotes(t *testing.T) {
	stands := func(inlet, sun, foam float64) LineRun {
		around := Shade(Celsius(25))
		around.Sun = Irradiance(sun)
		l := DefaultLine(around)
		l.Insulation = unit.Length(foam)
		r, err := l.Stand(Celsius(inlet), 0)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	notes(t, stands(9.9, 0, 0), WarmInLine, "", false)
	notes(t, stands(10.1, 0, 0), WarmInLine, "foams when it meets the tap", true)
	running, err := stands(15, 0, 0).line.Carry(Celsius(15), DefaultPours().Flow)
	if err != nil {
		t.Fatal(err)
	}
	notes(t, running, WarmInLine, "", false)
	notes(t, stands(5, 0, 0), FoamDelays, "In 12.7 mm of foam the line would take", true)
	notes(t, stands(5, 0, 0.01), FoamDelays, "Bare, the line would take", true)
	notes(t, stands(5, 0, 0), AbsorbedSun, "", false)
	notes(t, stands(5, 1, 0), AbsorbedSun, "absorb 90 % of the sunshine", true)
	warmer := map[bool]int{}
	for _, sun := range []float64{1, 5, 10, 20, 40, 500} {
		r := stands(5, sun, 0)
		notes(t, r, LineInSun, "above the air's 25.0 °C", r.Settles.Celsius() > 26)
		warmer[r.Settles.Celsius() > 26]++
	}
	if len(warmer) != 2 {
		t.Errorf("in all suns alike: %v", warmer)
	}
}

func TestGlassRemarks(t *testing.T) {
	filled := func(glass, mass, sun float64) GlassRun {
		around := Shade(Celsius(25))
		around.Sun = Irradiance(sun)
		g := DefaultGlassful(volume.GlassOf(0.5*volume.Litre), around)
		g.From, g.Glass.Mass = Celsius(glass), unit.Mass(mass)
		r, err := g.Pour(Celsius(4), time.Minute)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	cautions(t, filled(43.9, 0.3, 0), ThermalShock, "", false)
	cautions(t, filled(44.1, 0.3, 0), ThermalShock, "can crack", true)
	// 0.45 L of beer take up 1.89 kJ/K, 100 g of glass 0.075 kJ/K: 26 K above the
	// beer cost 0.99 K, 27 K cost 1.03 K. Without 30 % of the glass they cost 0.70 of
	// that: the band is 0.095 K wide for 8.5 K and 0.106 K for 9.5 K.
	notes(t, filled(30, 0.1, 0), RinsedGlass, "", false)
	notes(t, filled(31, 0.1, 0), RinsedGlass, "Rinsed with water of 10.0 °C", true)
	notes(t, filled(12.5, 0.1, 0), OneSided, "", false)
	notes(t, filled(13.5, 0.1, 0), OneSided, "30 % of it, its foot and rim", true)
	notes(t, filled(25, 0.1, 0), AbsorbedSun, "", false)
	notes(t, filled(25, 0.1, 1), AbsorbedSun, "absorb 50 % of the sunshine", true)
	notes(t, filled(25, 0.1, 1), volume.LightStruck, "within minutes", true)
	notes(t, filled(25, 0.1, 0), volume.LightStruck, "", false)
}

func TestCalibrationNotes(t *testing.T) {
	solved := func(thermometer Difference, readings ...Reading) Calibrated {
		c := DefaultCalibration(vessel(t, "soda-5gal"), Celsius(25), readings...)
		c.Thermometer = thermometer
		r, err := c.Solve()
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	// Three readings of which the middle one is off: the scatter is a few tenths.
	bent := []Reading{{0, Celsius(5)}, {2 * time.Hour, Celsius(9)}, {4 * time.Hour, Celsius(11)}}
	scatter := solved(0.3, bent...).Scatter
	notes(t, solved(scatter*0.49, bent...), Scattered, "was the air steady", true)
	notes(t, solved(scatter*0.51, bent...), Scattered, "", false)
	// Two deviations of two readings good to 0.1 K are 0.283 K: over a quarter of
	// 1 K, under a quarter of 1.3 K.
	notes(t, solved(0.1, Reading{0, Celsius(5)}, Reading{time.Hour, Celsius(6.3)}), WideReadings, "", false)
	notes(t, solved(0.1, Reading{0, Celsius(5)}, Reading{time.Hour, Celsius(6)}), WideReadings, "take another", true)
	notes(t, solved(0.1, bent...), LikeTheDay, "weather like that of the day", true)
	melted, err := MeltedIce(4, Celsius(25), 24*time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	notes(t, melted, ClosedBox, "inside at 0.0 °C throughout", true)
	notes(t, melted, LikeTheDay, "", false)
}

// The reason of an error is told without the function that has it.
func TestWhy(t *testing.T) {
	for want, err := range map[string]error{
		"sun 1300 W/m² is outside": limitSun.Check("f", 1300),
		"no finite answer":         finite("f", math.NaN()),
		"settles at 9.0 °C":        never("f", "settles at", 5, 9),
		"else":                     errors.New("else"),
	} {
		if got := why(err).Metric(); !strings.Contains(got, want) || strings.Contains(got, "f:") {
			t.Errorf("%v: %q, want %q", err, got, want)
		}
	}
}
