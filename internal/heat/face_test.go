package heat

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/water"
	"pgregory.net/rapid"
)

// meadow returns an upright steel face in air.
func meadow(c, rh float64) Face {
	return Face{Length: 0.5, Diameter: 0.22, Dry: 0.2, Wet: 0.7, Ambient: AmbientOf(c+water.ZeroCelsius, rh, 0, 0)}
}

// The heat of dew at a film of 4.4 W/(m² K), surface 6.5 °C, air of 30 °C and
// 50 %, in closed form with saturation by Magnus: 88.92 W/m². Magnus and the
// heat of condensation leave 1 %.
func TestDewHeat(t *testing.T) {
	f := meadow(30, 0.5)
	ts := 6.5 + water.ZeroCelsius
	_, dew := f.Flux(ts)
	checktest.Near(t, "dew", dew*4.4/f.Film(ts), 88.92, 0.9)
}

// Above the dew point, 18.4 °C, there is none.
func TestDewPointParts(t *testing.T) {
	f := meadow(30, 0.5)
	if _, dew := f.Flux(18.5 + water.ZeroCelsius); dew != 0 {
		t.Errorf("dew %g W/m² above the dew point", dew)
	}
	if _, dew := f.Flux(18.3 + water.ZeroCelsius); !(dew > 0) {
		t.Error("no dew below the dew point")
	}
}

// Still air: 3 to 5 W/(m² K) beside a keg 25 K colder, and wind of 2 m/s some
// 7 to 15 more, as texts give for free and forced convection of gases (2 to 25
// and 25 to 250 W/(m² K), Bergman et al., table 1.1; from memory).
func TestAirFilm(t *testing.T) {
	f := meadow(30, 0)
	still := f.Film(278)
	f.Velocity = 2
	windy := f.Film(278)
	if !(3 <= still && still <= 5.5 && still+7 <= windy && windy <= 25) {
		t.Errorf("still %.1f, windy %.1f W/(m² K)", still, windy)
	}
	f.Kind = Up // cold and facing up: hindered
	f.Velocity = 0
	up := f.Film(278)
	f.Kind = Down
	if down := f.Film(278); !(up < down) {
		t.Errorf("cold face up %.2f, down %.2f", up, down)
	}
}

// The surface temperature balances: what passes the resistance is what the
// outside gives, for any air, body and resistance.
func TestThroughBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := meadow(rapid.Float64Range(-10, 45).Draw(t, "air"), rapid.Float64Range(0, 1).Draw(t, "rh"))
		f.Kind = Kind(rapid.IntRange(0, 2).Draw(t, "kind"))
		f.Sun = rapid.Float64Range(0, 400).Draw(t, "sun")
		f.Velocity = rapid.Float64Range(0, 10).Draw(t, "wind")
		tb := rapid.Float64Range(-2, 40).Draw(t, "body") + water.ZeroCelsius
		r := rapid.Float64Range(1e-3, 1).Draw(t, "r")
		q, _ := f.Through(tb, r)
		ts := tb + q*r
		out, _ := f.Flux(ts)
		// 1e-4 K at the surface, to which Through solves, times what the outside
		// gives per kelvin there; twice that, since a film curves and dew sets in.
		warmer, _ := f.Flux(ts + 1e-3)
		colder, _ := f.Flux(ts - 1e-3)
		perKelvin := math.Max(math.Abs(warmer-out), math.Abs(out-colder)) / 1e-3
		tolerance := 2e-4 * perKelvin
		if math.Abs(ts-water.ZeroCelsius) < 0.05 {
			// Hyland & Wexler's formulas for ice and for water do not quite meet at
			// 0 °C, and there the balance jumps over its root: 0.02 K at the most.
			tolerance += 0.02 * perKelvin
		}
		if !(math.Abs(q-out) <= tolerance) {
			t.Fatalf("%g W/m² through, %g from outside at %g °C", q, out, ts-water.ZeroCelsius)
		}
	})
}

// Sol-air temperatures of ASHRAE's tables rise over the air by 0.052 K per W/m²
// on dark surfaces in a wind of 3.4 m/s, whose film is 17 W/(m² K) (from
// memory). A cylinder as wide as a keg has a film of some 20.
func TestSolAir(t *testing.T) {
	f := Face{Length: 0.5, Diameter: 0.23, Dry: 0.9, Wet: 0.95, Sun: 0.88 * 800, Ambient: Ambient{T: 303.15, P: 101325, Velocity: 3.4}}
	checktest.Near(t, "rise", f.Settles()-f.T, 0.052*800, 0.25*0.052*800)
	f.Sun = 0
	checktest.Near(t, "in shade", f.Settles(), f.T, 0)
}
