package thermal

import (
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/volume"
)

var (
	limitLatitude = volume.Range{Name: "latitude", Min: -90, Max: 90, Suffix: "degree", Source: "degrees north of the equator, south below 0"}
	limitDay      = volume.Range{Name: "day of the year", Min: 1, Max: 366, Source: "1 is the first of January"}
	limitHour     = volume.Range{Name: "hour by the sun", Min: 0, Max: 24, Suffix: "h", Source: "12 is when the sun stands highest"}
)

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
	for _, c := range [...]struct {
		limit volume.Range
		value float64
	}{{limitLatitude, latitude}, {limitDay, day}, {limitHour, hour}} {
		if err := c.limit.Check(fn, c.value); err != nil {
			return Irradiance(math.NaN()), err
		}
	}
	return Irradiance(clearSky(sunHeight(latitude, day, hour))), nil
}

// sunHeight returns the cosine of the sun's distance from the zenith.
func sunHeight(latitude, day, hour float64) float64 {
	const degree = math.Pi / 180
	declination := 23.45 * degree * math.Sin(360*degree*(284+day)/365)
	lat := latitude * degree
	return math.Sin(lat)*math.Sin(declination) + math.Cos(lat)*math.Cos(declination)*math.Cos(15*degree*(hour-12))
}

// InClosedCar returns the surroundings in the boot of a closed car that has
// stood in outside for an hour: out of the sun, out of the wind, and warmer by
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
func (outside Surroundings) InClosedCar() Surroundings {
	s := outside
	s.Air = outside.Air.Add(Difference(22 * outside.Sun / 800))
	s.Sun, s.Wind = 0, 0
	vapour := outside.Humidity * air.SaturationPressure(outside.Air.Kelvin())
	s.Humidity = vapour / air.SaturationPressure(s.Air.Kelvin())
	return s
}
