package heat

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"pgregory.net/rapid"
)

// The parts add up to the whole, the beam never exceeds the sun's own, and the
// light on level ground is what was given. Meinel's beam at 50° is 888 W/m²
// (equation and constants from a secondary source).
func TestSunOn(t *testing.T) {
	checktest.Near(t, "beam at 50°", clearBeam(math.Sin(50*math.Pi/180)), 888, 1)
	checktest.Near(t, "night", ClearSky(-0.1)+clearBeam(0), 0, 0)
	rapid.Check(t, func(t *rapid.T) {
		g := rapid.Float64Range(0, 1200).Draw(t, "sun")
		l := SunOn(g)
		if !(math.Abs(l.Beam*l.Up+l.Diffuse-g) <= 1e-6 && l.Diffuse >= -1e-9 && l.Beam <= 1361 && l.OnLevel() == l.Global) {
			t.Fatalf("%+v from %g", l, g)
		}
		if s := l.OnUpright(); !(0 <= s && s <= g+500) {
			t.Fatalf("side %g from %g", s, g)
		}
	})
	// A low sun falls on the side more than on the ground.
	if l := SunOn(ClearSky(math.Sin(10 * math.Pi / 180))); !(l.Beam > 2*l.Global) {
		t.Errorf("%+v", l)
	}
}

// A brighter sun never gives a face less, up to the range of what is asked; and
// the most that the side gets is where the clear sky gives it the most.
func TestMoreSun(t *testing.T) {
	before, most := SunOn(0), 0.0
	for g := 1.0; g <= 1200; g++ {
		l := SunOn(g)
		if l.OnUpright() < before.OnUpright() || l.OnLying() < before.OnLying() || l.OnLevel() < before.OnLevel() {
			t.Errorf("%g W/m² gives %.2f on a side, %.2f on a line, one less %.2f and %.2f", g, l.OnUpright(), l.OnLying(), before.OnUpright(), before.OnLying())
		}
		before = l
		across := math.Sqrt(1 - l.Up*l.Up)
		most = math.Max(most, l.Beam*across/math.Pi+l.Diffuse/2+grass*g/2)
	}
	checktest.Near(t, "most on a side", before.OnUpright(), most, 0.01)
}

// Duffie & Beckman, Solar Engineering of Thermal Processes, example 1.6.2 (from
// memory): at 43° north the sun stands 66.5° from the zenith at 9:30 on the
// 13th of February, 79.6° at 18:30 on the 1st of July.
func TestSunHeight(t *testing.T) {
	for _, c := range []struct{ day, hour, zenith float64 }{{44, 9.5, 66.5}, {182, 18.5, 79.6}} {
		z := math.Acos(SunHeight(43, c.day, c.hour)) * 180 / math.Pi
		checktest.Near(t, "zenith angle", z, c.zenith, 0.1)
	}
}
