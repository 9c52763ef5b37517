package thermal

import (
	"math"

	"example.com/pourwell/internal/air"
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

// A face is one surface of a body in air, with what its film needs.
type face struct {
	kind     faceKind
	length   float64 // height of an upright face, diameter of a level one, m
	diameter float64 // of the body, m
	dry, wet float64 // emissivity without and with a film of dew
	sun      float64 // absorbed, W per m² of the face

	t        float64 // air, K
	p        float64 // Pa
	ratio    float64 // humidity ratio of the air
	velocity float64 // m/s
}

type faceKind int

const (
	upright faceKind = iota
	faceUp
	faceDown
	lying // all around a horizontal cylinder
)

// film returns the coefficient of convection, W/(m² K), at a surface of ts
// kelvin.
func (f *face) film(ts float64) float64 {
	tf := (ts + f.t) / 2
	a := airAt(tf, f.p)
	length := f.length
	switch f.kind {
	case faceUp, faceDown:
		length = f.diameter / 4 // area over perimeter
	case lying:
		length = f.diameter
	}
	ra := a.rayleigh(airBuoyancy(ts, f.t), length)
	var natural float64
	switch {
	case f.kind == upright:
		natural = nusseltPlate(ra, a.pr)
	case f.kind == lying:
		natural = nusseltCylinder(ra, a.pr)
	case (f.kind == faceUp) == (ts > f.t):
		natural = nusseltAssisted(ra)
	default:
		natural = nusseltHindered(ra)
	}
	natural *= a.k / length
	re := f.velocity * f.diameter / a.nu
	if !(re*a.pr > 0.2) { // below it Churchill & Bernstein does not hold
		return natural
	}
	forced := nusseltFlat(re, a.pr)
	if f.kind == upright || f.kind == lying {
		forced = nusseltCross(re, a.pr)
	}
	return mixed(forced*a.k/f.diameter, natural)
}

// flux returns the heat that enters a surface of ts kelvin, W/m², and the part
// of it that dew sets free:
//
//	q = h_c (T_a − T_s) + h_r (T_a − T_s) + q_dew + α G
//	q_dew = h_c/(c_p Le^⅔) (w_a − w_s) h_fg, not below 0
//
// Source of q_dew: the analogy of heat and mass transfer (Lewis, from memory).
func (f *face) flux(ts float64) (q, dew float64) {
	hc := f.film(ts)
	const lewis = 0.8938 // air.Lewis^(2/3)
	ws := air.HumidityRatio(ts, 1, f.p)
	if ws < f.ratio {
		dew = hc / (air.HeatCapacity * lewis) * (f.ratio - ws) * air.CondensationHeat(ts)
	}
	// The emissivity rises with the first beads of dew; a film that 20 W/m² of
	// dew heat feeds counts as closed (judged).
	eps := f.dry + (f.wet-f.dry)*min(1, dew/20)
	return (hc+radiative(eps, ts, f.t))*(f.t-ts) + dew + f.sun, dew
}

// through returns the heat that enters through the face, W/m², and the dew's
// part of it, when a resistance r, m² K/W, lies between the surface and a body
// of tb kelvin.
func (f *face) through(tb, r float64) (q, dew float64) {
	q, dew = f.flux(tb)
	if math.Abs(q)*r < 1e-4 { // the surface is as warm as the body
		return q, dew
	}
	// q falls as the surface warms, so (ts − tb)/r − q(ts) rises: a bracket
	// lies between tb and tb + r q(tb), and well inside the 200 to 400 K where
	// the air's properties hold. Regula falsi (Illinois), to 1e-3 K.
	a, fa := tb, -q
	b := math.Min(math.Max(tb+r*q, 205), 395)
	qb, db := f.flux(b)
	fb := (b-tb)/r - qb
	for range 50 {
		x := b - fb*(b-a)/(fb-fa)
		qx, dx := f.flux(x)
		fx := (x-tb)/r - qx
		if math.Abs(fx)*r < 1e-4 {
			return qx, dx
		}
		if fx*fb < 0 {
			a, fa = b, fb
		} else {
			fa /= 2
		}
		b, fb, qb, db = x, fx, qx, dx
	}
	return qb, db
}
