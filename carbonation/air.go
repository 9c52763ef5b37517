package carbonation

import (
	"cmp"

	"example.com/pourwell/internal/air"
	"gonum.org/v1/gonum/unit"
)

// AirAt returns the pressure of the air at an elevation above the sea by the
// standard atmosphere. Weather moves the true pressure by about 3 kPa.
//
//	p = 101.325 kPa (1 − 0.0065 h / 288.15)^5.2559
//
// Valid from -500 m to 6000 m; outside it AirAt returns a [*RangeError] and an
// invalid pressure.
//
// Source: [12] ICAO Doc 7488, troposphere.
func AirAt(elevation unit.Length) (Pressure, error) {
	if err := limitElevation.Check("carbonation.AirAt", float64(elevation)); err != nil {
		return Pressure{}, err
	}
	return Pressure{air.Pressure(float64(elevation)), true}, nil
}

// StationAt returns the pressure of the air at an elevation when p is the
// pressure that a weather report gives for the place. Weather reports reduce
// to sea level, so that a hill station reads about 1013 hPa like any other;
// such a figure must not stand for the air around a gauge.
//
// Valid from -500 m to 6000 m and from 87 kPa to 110 kPa at sea level; outside
// it StationAt returns a [*RangeError] and an invalid pressure.
//
// Source: [12] ICAO Doc 7488: the reduction by the standard atmosphere.
func (p Pressure) StationAt(elevation unit.Length) (Pressure, error) {
	const fn = "carbonation.Pressure.StationAt"
	if err := cmp.Or(limitSeaLevel.Check(fn, p.KPa()), limitElevation.Check(fn, float64(elevation))); err != nil {
		return Pressure{}, err
	}
	return Pressure{air.StationPressure(p.pascal, float64(elevation)), true}, nil
}
