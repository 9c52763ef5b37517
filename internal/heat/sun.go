package heat

import (
	"math"

	"example.com/pourwell/internal/solve"
)

// A Light is sunlight split by where it comes from, W/m².
type Light struct {
	Global  float64 // on level ground
	Beam    float64 // on a plane facing the sun
	Diffuse float64 // from the sky, on level ground
	Up      float64 // cosine of the angle between sun and zenith
}

// grass is the share of sunlight that dry grass or gravel throws back; judged.
const grass = 0.2

// SunOn splits the irradiance of level ground, W/m², as a clear sky would: it
// finds the height of the sun that gives it and the beam at that height. The
// same irradiance from a high sun behind haze falls less on upright sides.
func SunOn(global float64) Light {
	if global <= 0 {
		return Light{}
	}
	up := 1.0 // the strongest sun stands at the zenith
	if global < ClearSky(1) {
		var ok bool
		up, ok = solve.Root(func(x float64) float64 { return ClearSky(x) - global }, 1e-3, 1, 1e-9)
		if !ok { // dusk: less than the sun on the horizon gives
			return Light{Global: global, Diffuse: global}
		}
	}
	beam := clearBeam(up)
	beam = math.Min(beam, 0.92*global/up) // at least 8 % comes from the sky
	return Light{global, beam, global - beam*up, up}
}

// ClearSky returns the irradiance of level ground under a clear sky, W/m², by
// the cosine of the sun's distance from the zenith; ±10 %.
//
// Source: B. Haurwitz, J. Meteorology 2 (1945) 154.
func ClearSky(up float64) float64 {
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

// OnLevel returns the irradiance of a face that looks up, W/m².
func (l Light) OnLevel() float64 { return l.Global }

// broadside is the cosine of the distance from the zenith at which a clear sky
// gives the side of an upright cylinder the most.
const broadside = 0.6237

// OnUpright returns the mean irradiance of the side of an upright cylinder,
// W/m²: the beam on its shadow, diameter times height of the π it has, half the
// sky and half of what the ground throws back.
//
// A sun above 39° gives it ever less under a clear sky. But a reading does not
// tell how high the sun stood, and a brighter one must not warm a keg more
// slowly: from there on it is the most that a dimmer sun gives.
func (l Light) OnUpright() float64 {
	if l.Up > broadside {
		l = SunOn(ClearSky(broadside))
	}
	across := math.Sqrt(1 - l.Up*l.Up)
	return l.Beam*across/math.Pi + l.Diffuse/2 + grass*l.Global/2
}

// OnLying returns the mean irradiance of the outside of a lying cylinder,
// W/m²: the beam on its shadow, a diameter wide of the π around, half the sky
// and half of what the ground throws back. It is taken to lie across the beam,
// which is the most it can get.
func (l Light) OnLying() float64 {
	return l.Beam/math.Pi + l.Diffuse/2 + grass*l.Global/2
}

// SunHeight returns the cosine of the sun's distance from the zenith at a
// latitude in degrees north, a day of the year and an hour by the sun.
func SunHeight(latitude, day, hour float64) float64 {
	const degree = math.Pi / 180
	declination := 23.45 * degree * math.Sin(360*degree*(284+day)/365)
	lat := latitude * degree
	return math.Sin(lat)*math.Sin(declination) + math.Cos(lat)*math.Cos(declination)*math.Cos(15*degree*(hour-12))
}
