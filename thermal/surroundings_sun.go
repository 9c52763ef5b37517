package thermal

import (
	"math"

	"example.com/pourwell/internal/solve"
)

// A light is sunlight split by where it comes from, W/m².
type light struct {
	global  float64 // on level ground
	beam    float64 // on a plane facing the sun
	diffuse float64 // from the sky, on level ground
	up      float64 // cosine of the angle between sun and zenith
}

// grass is the share of sunlight that dry grass or gravel throws back; judged.
const grass = 0.2

// sunOn splits the irradiance of level ground as a clear sky would: it finds
// the height of the sun that gives it and the beam at that height. The same
// irradiance from a high sun behind haze falls less on upright sides, so the
// split errs to the warm side.
func sunOn(g Irradiance) light {
	global := float64(g)
	if global <= 0 {
		return light{}
	}
	up := 1.0 // the strongest sun stands at the zenith
	if global < clearSky(1) {
		var ok bool
		up, ok = solve.Root(func(x float64) float64 { return clearSky(x) - global }, 1e-3, 1, 1e-9)
		if !ok { // dusk: less than the sun on the horizon gives
			return light{global: global, diffuse: global}
		}
	}
	beam := clearBeam(up)
	beam = math.Min(beam, 0.92*global/up) // at least 8 % comes from the sky
	return light{global, beam, global - beam*up, up}
}

// clearSky returns the irradiance of level ground under a clear sky, W/m², by
// the cosine of the sun's distance from the zenith; ±10 %.
//
// Source: B. Haurwitz, J. Meteorology 2 (1945) 154.
func clearSky(up float64) float64 {
	if up <= 0 {
		return 0
	}
	return 1098 * up * math.Exp(-0.059/up)
}

// clearBeam returns the irradiance of a plane that faces the sun, W/m²; ±15 %.
//
// Source: A. B. Meinel and M. P. Meinel, Applied Solar Energy (1976); constants
// from a secondary source.
func clearBeam(up float64) float64 {
	if up <= 0 {
		return 0
	}
	return 1361 * math.Pow(0.7, math.Pow(1/up, 0.678))
}

// onLevel returns the irradiance of a face that looks up, W/m².
func (l light) onLevel() float64 { return l.global }

// onUpright returns the mean irradiance of the side of an upright cylinder,
// W/m²: the beam on its shadow, diameter times height of the π it has, half the
// sky and half of what the ground throws back.
func (l light) onUpright() float64 {
	across := math.Sqrt(1 - l.up*l.up)
	return l.beam*across/math.Pi + l.diffuse/2 + grass*l.global/2
}
