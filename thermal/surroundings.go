package thermal

import (
	"cmp"
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/heat"
	"gonum.org/v1/gonum/unit"
)

// Surroundings are the air around a keg, a tub, a line or a glass. The zero
// value is invalid, since it has no air temperature; [Shade] gives ordinary
// ones, to be changed field by field.
type Surroundings struct {
	Air      Temperature   // of the air and of the objects in sight
	Humidity float64       // relative, 0 to 1
	Altitude unit.Length   // pressure altitude: the height of the standard atmosphere with this air pressure
	Sun      Irradiance    // on level ground, as weather services report it; 0 is shade
	Wind     unit.Velocity // of the air past the surface, m/s; a fan counts too

	InCar bool // in the boot of a closed car; set by InClosedCar, which says how warm that is
}

// Shade returns still, shaded surroundings at sea level with a relative
// humidity of 50 %.
func Shade(air Temperature) Surroundings {
	return Surroundings{Air: air, Humidity: 0.5}
}

// ClearSky returns the sun on level ground under a clear sky at a latitude in
// degrees north, on a day of the year (172 is the 21st of June) and an hour by
// the sun, 12 being noon. Clocks in summer run up to two hours ahead of it.
//
//	δ = 23.45° sin(360° (284 + day)/365)
//	cos z = sin φ sin δ + cos φ cos δ cos(15° (hour − 12))
//	G = 1098 cos z exp(−0.059/cos z) W/m²
//
// within 10 % under a truly clear sky; clouds take half or more. It is 0 when
// the sun is down. Outside its ranges, and for NaN, ClearSky returns a
// [*RangeError] and NaN.
//
// Sources: P. I. Cooper, Solar Energy 12 (1969) 333, as eq. 1.6.1 in Duffie &
// Beckman, Solar Engineering of Thermal Processes; B. Haurwitz, J. Meteorology
// 2 (1945) 154.
func ClearSky(latitude, day, hour float64) (Irradiance, error) {
	const fn = "thermal.ClearSky"
	if err := cmp.Or(limitLatitude.Check(fn, latitude), limitDay.Check(fn, day), limitHour.Check(fn, hour)); err != nil {
		return Irradiance(math.NaN()), err
	}
	return Irradiance(heat.ClearSky(heat.SunHeight(latitude, day, hour))), nil
}

// InClosedCar returns the surroundings in the boot of a closed car that has
// stood in s for an hour: out of the sun, out of the wind, and warmer by
//
//	22 K · G / 800 W/m²
//
// where G is the sun outside. Four fifths of that are there after half an hour,
// whatever the air outside, and a window left ajar changes little. The water in
// the air stays what it was, so its relative humidity falls.
//
// A car warmer than 60 °C is outside the range of [Surroundings] and refused by
// what is asked of it.
//
// Source: C. McLaren, J. Null and J. Quinn, Pediatrics 116 (2005) e109: 40 °F
// (22 K) on sunny days of 72 to 96 °F (from memory); in proportion to the sun,
// judged.
func (s Surroundings) InClosedCar() Surroundings {
	boot := s
	boot.Air = s.Air.Add(Difference(22 * s.Sun / 800))
	boot.Sun, boot.Wind, boot.InCar = 0, 0, true
	vapour := s.Humidity * air.SaturationPressure(s.Air.Kelvin())
	boot.Humidity = vapour / air.SaturationPressure(boot.Air.Kelvin())
	return boot
}

// check returns a [*volume.RangeError] in the name of fn if a field lies
// outside its range.
func (s Surroundings) check(fn string) error {
	return cmp.Or(
		limitAir.Check(fn, s.Air.Celsius()),
		limitHumidity.Check(fn, s.Humidity),
		limitAltitude.Check(fn, float64(s.Altitude)),
		limitSun.Check(fn, float64(s.Sun)),
		limitWind.Check(fn, float64(s.Wind)),
	)
}

// ambient returns the air as films need it.
func (s Surroundings) ambient() heat.Ambient {
	return heat.AmbientOf(s.Air.Kelvin(), s.Humidity, float64(s.Altitude), float64(s.Wind))
}
