package thermal

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/unit"
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
