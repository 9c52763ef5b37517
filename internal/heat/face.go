package heat

import (
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/solve"
)

// An Ambient is the air around a body.
type Ambient struct {
	T        float64 // K
	P        float64 // Pa
	Ratio    float64 // humidity ratio
	Velocity float64 // past the body, m/s
}

// AmbientOf returns air of t kelvin and a relative humidity from 0 to 1 at a
// height in the standard atmosphere, m, that moves at a velocity, m/s.
func AmbientOf(t, humidity, height, velocity float64) Ambient {
	p := air.Pressure(height)
	return Ambient{t, p, air.HumidityRatio(t, humidity, p), velocity}
}

// A Face is one surface of a body in air, with what its film needs.
type Face struct {
	Kind     Kind
	Length   float64 // height of an upright face, diameter of a level one, m
	Diameter float64 // of the body, m
	Dry, Wet float64 // emissivity without and with a film of dew
	Sun      float64 // absorbed, W per m² of the face
	Ambient
}

// A Kind says how a face stands.
type Kind int

// Kinds of faces.
const (
	Upright Kind = iota
	Up           // looks up
	Down         // looks down
	Lying        // all around a horizontal cylinder
)

// Film returns the coefficient of convection, W/(m² K), at a surface of ts
// kelvin.
func (f *Face) Film(ts float64) float64 {
	tf := (ts + f.T) / 2
	a := Air(tf, f.P)
	length := f.Length
	switch f.Kind {
	case Up, Down:
		length = f.Diameter / 4 // area over perimeter
	case Lying:
		length = f.Diameter
	}
	ra := a.Rayleigh(AirBuoyancy(ts, f.T), length)
	var natural float64
	switch {
	case f.Kind == Upright:
		natural = NusseltPlate(ra, a.Pr)
	case f.Kind == Lying:
		natural = NusseltCylinder(ra, a.Pr)
	case (f.Kind == Up) == (ts > f.T):
		natural = NusseltAssisted(ra)
	default:
		natural = NusseltHindered(ra)
	}
	natural *= a.K / length
	re := f.Velocity * f.Diameter / a.Nu
	if !(re*a.Pr > 0.2) { // below it Churchill & Bernstein does not hold
		return natural
	}
	forced := NusseltFlat(re, a.Pr)
	if f.Kind == Upright || f.Kind == Lying {
		forced = NusseltCross(re, a.Pr)
	}
	return Mixed(forced*a.K/f.Diameter, natural)
}

// Flux returns the heat that enters a surface of ts kelvin, W/m², and the part
// of it that dew sets free:
//
//	q = h_c (T_a − T_s) + h_r (T_a − T_s) + q_dew + α G
//	q_dew = h_c/(c_p Le^⅔) (w_a − w_s) h_fg, not below 0
//
// Source of q_dew: the analogy of heat and mass transfer (Lewis, from memory).
func (f *Face) Flux(ts float64) (q, dew float64) {
	hc := f.Film(ts)
	const lewis = 0.8938 // air.Lewis^(2/3)
	ws := air.HumidityRatio(ts, 1, f.P)
	if ws < f.Ratio {
		dew = hc / (air.HeatCapacity * lewis) * (f.Ratio - ws) * air.CondensationHeat(ts)
	}
	// The emissivity rises with the first beads of dew; a film that 20 W/m² of
	// dew heat feeds counts as closed (judged).
	eps := f.Dry + (f.Wet-f.Dry)*min(1, dew/20)
	return (hc+Radiative(eps, ts, f.T))*(f.T-ts) + dew + f.Sun, dew
}

// Through returns the heat that enters through the face, W/m², and the dew's
// part of it, when a resistance r, m² K/W, lies between the surface and a body
// of tb kelvin.
func (f *Face) Through(tb, r float64) (q, dew float64) {
	q, dew = f.Flux(tb)
	if math.Abs(q)*r < 1e-4 { // the surface is as warm as the body
		return q, dew
	}
	// q falls as the surface warms, so (ts − tb)/r − q(ts) rises: a bracket
	// lies between tb and tb + r q(tb), and well inside the 200 to 400 K where
	// the air's properties hold. Regula falsi (Illinois), to 1e-3 K.
	a, fa := tb, -q
	b := math.Min(math.Max(tb+r*q, 205), 395)
	qb, db := f.Flux(b)
	fb := (b-tb)/r - qb
	for range 50 {
		x := b - fb*(b-a)/(fb-fa)
		qx, dx := f.Flux(x)
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
	// The formulas of ice and of water do not quite meet at 0 °C, and the balance
	// may jump over its root there: as much dew forms as the resistance passes.
	q = (b - tb) / r
	return q, math.Max(0, q-(qb-db))
}

// Settles returns the temperature, K, of a surface through which no heat passes,
// its sol-air temperature: what it takes from the sun it gives to the air.
func (f *Face) Settles() float64 {
	if f.Sun == 0 {
		return f.T
	}
	// Up to where the film's properties end, at a mean of 400 K with the air.
	ts, ok := solve.Root(func(ts float64) float64 { q, _ := f.Flux(ts); return q }, f.T, 799-f.T, 1e-9)
	if !ok {
		return math.NaN()
	}
	return ts
}
