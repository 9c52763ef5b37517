package thermal

import (
	"example.com/pourwell/internal/heat"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Irradiance is the power of radiation on an area, in W/m².
type Irradiance float64

// Conductance is the heat that flows per kelvin of difference, in W/K: what
// brewers call the UA of a keg, a box or a coil.
type Conductance float64

// Surroundings are the air around a keg, a tub, a line or a glass. The zero
// value is invalid, since it has no air temperature; [Shade] gives ordinary
// ones, to be changed field by field.
type Surroundings struct {
	Air      Temperature   // of the air and of the objects in sight
	Humidity float64       // relative, 0 to 1
	Altitude unit.Length   // pressure altitude: the height of the standard atmosphere with this air pressure
	Sun      Irradiance    // on level ground, as weather services report it; 0 is shade
	Wind     unit.Velocity // of the air past the surface, m/s; a fan counts too
}

// Shade returns still, shaded surroundings at sea level with a relative
// humidity of 50 %.
func Shade(air Temperature) Surroundings {
	return Surroundings{Air: air, Humidity: 0.5}
}

var (
	limitAir      = volume.Range{Name: "air temperature", Min: -20, Max: 60, Suffix: "c", Source: "air properties checked from -20 to 60 °C"}
	limitHumidity = volume.Range{Name: "relative humidity", Min: 0, Max: 1, Source: "a share: 0.5 is 50 %"}
	limitAltitude = volume.Range{Name: "pressure altitude", Min: -500, Max: 6000, Suffix: "m", Source: "inhabited places; the standard atmosphere holds to 11 km"}
	limitSun      = volume.Range{Name: "sun", Min: 0, Max: 1200, Suffix: "w_per_m2", Source: "clear sky at the zenith gives about 1040"}
	limitWind     = volume.Range{Name: "wind", Min: 0, Max: 20, Suffix: "m_per_s", Source: "a gale; nobody serves beer in more"}
)

// check returns a [*volume.RangeError] in the name of fn if a field lies
// outside its range.
func (s Surroundings) check(fn string) error {
	for _, c := range [...]struct {
		limit volume.Range
		value float64
	}{
		{limitAir, s.Air.Celsius()},
		{limitHumidity, s.Humidity},
		{limitAltitude, float64(s.Altitude)},
		{limitSun, float64(s.Sun)},
		{limitWind, float64(s.Wind)},
	} {
		if err := c.limit.Check(fn, c.value); err != nil {
			return err
		}
	}
	return nil
}

// ambient returns the air as films need it.
func (s Surroundings) ambient() heat.Ambient {
	return heat.AmbientOf(s.Air.Kelvin(), s.Humidity, float64(s.Altitude), float64(s.Wind))
}
