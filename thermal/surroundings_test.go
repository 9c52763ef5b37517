package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

func TestSurroundingsRefuse(t *testing.T) {
	nan := math.NaN()
	for i, change := range []func(*Surroundings){
		func(s *Surroundings) { s.Air = Temperature{} },
		func(s *Surroundings) { s.Air = Celsius(61) },
		func(s *Surroundings) { s.Humidity = 50 },
		func(s *Surroundings) { s.Humidity = nan },
		func(s *Surroundings) { s.Altitude = 9000 },
		func(s *Surroundings) { s.Sun = -1 },
		func(s *Surroundings) { s.Sun = Irradiance(math.Inf(1)) },
		func(s *Surroundings) { s.Wind = 40 },
	} {
		s := Shade(Celsius(30))
		change(&s)
		var r *RangeError
		if err := s.check("test"); !errors.As(err, &r) {
			t.Errorf("case %d: %v", i, err)
		}
	}
}

// From the shore of the Dead Sea to the highest mines, both bounds included, as
// in package carbonation; a metre beyond is refused.
func TestAltitudeBounds(t *testing.T) {
	for h, ok := range map[float64]bool{-501: false, -500: true, 0: true, 6000: true, 6001: false} {
		s := Shade(Celsius(20))
		s.Altitude = unit.Length(h)
		if err := s.check("test"); (err == nil) != ok {
			t.Errorf("%g m: %v", h, err)
		}
	}
}

func TestClearSky(t *testing.T) {
	// With the sun 50° up, pvlib prints 778.77 W/m²; at 63.45° north on the 21st
	// of June (declination 23.45°) it stands there at noon.
	g, err := ClearSky(63.45, 172, 12)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "noon", float64(g), 778.77, 0.1)
	if g, err := ClearSky(50, 172, 0); err != nil || g != 0 {
		t.Errorf("midnight: %v, %v", float64(g), err)
	}
	var r *RangeError
	for _, c := range [][3]float64{{91, 1, 1}, {0, 0, 1}, {0, 1, 25}, {math.NaN(), 1, 1}, {0, math.NaN(), 1}, {0, 1, math.Inf(1)}} {
		if g, err := ClearSky(c[0], c[1], c[2]); !errors.As(err, &r) || !math.IsNaN(float64(g)) {
			t.Errorf("%v: %v, %v", c, float64(g), err)
		}
	}
	// The morning mirrors the afternoon, and noon is never surpassed.
	rapid.Check(t, func(t *rapid.T) {
		lat, day := rapid.Float64Range(-60, 60).Draw(t, "lat"), rapid.Float64Range(1, 365).Draw(t, "day")
		h := rapid.Float64Range(0, 12).Draw(t, "h")
		am, err1 := ClearSky(lat, day, 12-h)
		pm, err2 := ClearSky(lat, day, 12+h)
		noon, err3 := ClearSky(lat, day, 12)
		if errors.Join(err1, err2, err3) != nil || math.Abs(float64(am-pm)) > 1e-9 || am > noon+1e-9 || noon > 1040 {
			t.Fatalf("%g, %g, noon %g", float64(am), float64(pm), float64(noon))
		}
	})
}

// 40 °F on a sunny day (McLaren et al. 2005, from memory), none in the shade;
// the water in the air stays.
func TestClosedCar(t *testing.T) {
	s := in30(0.5)
	if c := s.InClosedCar(); c.Air != s.Air || c.Humidity != s.Humidity {
		t.Errorf("in the shade: %+v", c)
	}
	s.Sun, s.Wind = 800, 3
	c := s.InClosedCar()
	checktest.Near(t, "rise", c.Air.Fahrenheit()-s.Air.Fahrenheit(), 40, 1)
	checktest.Near(t, "dew point stays", c.ambient().Ratio, in30(0.5).ambient().Ratio, 1e-9)
	if c.Sun != 0 || c.Wind != 0 {
		t.Errorf("%+v", c)
	}
	keg := DefaultKeg(vessel(t, "soda-5gal"), Celsius(3), s)
	keg.Around = c
	if w, err := keg.After(time.Hour); err != nil || !(w.Temperature.Celsius() > 6) {
		t.Errorf("%v, %v", w.Temperature, err)
	}
}
