package thermal

import (
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/solve"
	"gonum.org/v1/gonum/unit"
)

// lineNodes are the shares of the difference between the line's settling
// temperature and the beer at which the outside film is worked out.
var lineNodes = [...]float64{1, 0.95, 0.9, 0.85, 0.8, 0.75, 0.7, 0.65, 0.6, 0.55, 0.5, 0.4, 0.3, 0.2, 0.1, 0.05, 0.02}

// leastDrive is the least difference, K, for which a film is worked out. A
// surface is known to 1e-4 K, so that of a smaller one nothing but noise would
// be left at the last of the nodes.
const leastDrive = 0.5

// drive returns the difference of temperature, K, for which the films are worked
// out where they pass theta.
func drive(theta float64) float64 {
	if math.Abs(theta) < leastDrive {
		return math.Copysign(leastDrive, theta)
	}
	return theta
}

// A relaxation is the way of a difference to zero, dθ/ds = −θ/τ(θ), with τ
// linear in θ between nodes. The difference at the start counts as 1.
type relaxation [len(lineNodes)]float64

// after returns what is left of the difference when s has passed, in the unit
// of τ: within a segment τ = a + bθ and
//
//	s = a ln(θ₁/θ) + b (θ₁ − θ)
func (r *relaxation) after(s float64) float64 {
	for i := 1; i < len(lineNodes); i++ {
		a, b := r.segment(i)
		whole := a*math.Log(lineNodes[i-1]/lineNodes[i]) + b*(lineNodes[i-1]-lineNodes[i])
		if s > whole {
			s -= whole
			continue
		}
		// Newton's method on ln θ; the slope a + bθ is τ, which never changes
		// sign, and a few steps reach rounding.
		theta := lineNodes[i-1] * math.Exp(-s/r[i-1])
		for range 20 {
			miss := a*math.Log(lineNodes[i-1]/theta) + b*(lineNodes[i-1]-theta) - s
			step := math.Exp(miss / (a + b*theta))
			theta *= step
			if math.Abs(step-1) < 1e-15 {
				break
			}
		}
		return theta
	}
	last := len(lineNodes) - 1
	return lineNodes[last] * math.Exp(-s/r[last])
}

// until returns when theta of the difference is left; for a theta not below the
// last node.
func (r *relaxation) until(theta float64) float64 {
	s := 0.0
	for i := 1; i < len(lineNodes); i++ {
		a, b := r.segment(i)
		low := math.Max(theta, lineNodes[i])
		s += a*math.Log(lineNodes[i-1]/low) + b*(lineNodes[i-1]-low)
		if low == theta {
			break
		}
	}
	return s
}

// segment returns a and b of τ = a + bθ between the nodes i−1 and i.
func (r *relaxation) segment(i int) (a, b float64) {
	b = (r[i-1] - r[i]) / (lineNodes[i-1] - lineNodes[i])
	return r[i] - b*lineNodes[i], b
}

// run works out everything that beer of t °C meets in the line. inner is the
// resistance of the film inside, K m/W; where the beer stands it is 0, and the
// scale of the result is a time in s instead of the product of length and
// resistance.
func (l *Line) run(t, inner float64) LineRun {
	bore := float64(l.Bore)
	tube := bore + 2*float64(l.Wall)
	outer := tube + 2*float64(l.Insulation)
	wall := radialResistance(bore, tube, float64(l.Conductivity))
	foam := radialResistance(tube, outer, float64(l.InsulationConductivity))
	inside := inner + wall + foam

	sun := sunOn(l.Around.Sun)
	skin := face{
		kind: lying, diameter: outer, length: outer, dry: lineEmits, wet: lineWet,
		sun: l.Solar * sun.onLying(),
		t:   l.Around.Air.Kelvin(), p: air.Pressure(float64(l.Around.Altitude)), velocity: float64(l.Around.Wind),
	}
	skin.ratio = air.HumidityRatio(skin.t, l.Around.Humidity, skin.p)
	settles := skin.settles()

	r := LineRun{
		Settles: Kelvin(settles), line: *l, inlet: t, settles: settles - zeroCelsius, inside: inside,
		HoldUp: unit.Volume(math.Pi / 4 * bore * bore * float64(l.Length)),
	}
	beer := math.Pi / 4 * bore * bore * l.Beer.density(t) * l.Beer.heatCapacity(t) // J/(m K)
	still := relaxation{}
	difference := drive(r.settles - t)
	for i, node := range lineNodes {
		theta := difference * node
		q, dew := skin.through(settles-theta, inside*math.Pi*outer)
		whole := theta / (q * math.Pi * outer) // K m/W
		capacity := beer + layerHeat(bore, tube, float64(l.Conductivity), lineWallHeat, whole-inner-wall, whole) +
			layerHeat(tube, outer, float64(l.InsulationConductivity), lineFoamHeat, whole-inside, whole)
		still[i] = whole * capacity
		r.scale[i] = whole
		if i == 0 {
			r.outside, r.capacity, r.dewShare = whole-inside, capacity, dew/q
			r.UA = Conductance(float64(l.Length) / whole)
		}
	}
	if inner == 0 {
		r.scale = still
	}
	r.TimeConstant = seconds(still.until(math.Exp(-1)))
	k := float64(l.Conductivity)
	if l.Insulation > 0 {
		k = float64(l.InsulationConductivity)
	}
	r.CriticalRadius = unit.Length(criticalRadius(k, r.outside, outer))
	return r
}

// layerHeat returns ∫ φ² dC′ in J/(m K) over a layer between the diameters
// inside and outside, of conductivity k and volumetric heat capacity c, where
// beyond is the resistance outside the layer and whole that of the line. With
// u = ln(b/r), φ = A + Bu:
//
//	∫ φ² 2π r c dr = π b² c [(φ² + Bφ + B²/2) e^(−2u)] from u = U to 0
func layerHeat(inside, outside, k, c, beyond, whole float64) float64 {
	b := outside / 2
	full := math.Log(outside / inside)
	slope := 1 / (2 * math.Pi * k * whole)
	part := func(u float64) float64 {
		phi := beyond/whole + slope*u
		return (phi*phi + slope*phi + slope*slope/2) * math.Exp(-2*u)
	}
	return math.Pi * b * b * c * (part(0) - part(full))
}

// settles returns the temperature in K at which the surface takes up no heat:
// the air's, or above it in the sun.
func (f *face) settles() float64 {
	if f.sun == 0 {
		return f.t
	}
	t, _ := solve.Root(func(ts float64) float64 { q, _ := f.flux(ts); return q }, f.t, f.t+60, 1e-9)
	return t
}

// onLying returns the mean irradiance of the outside of a lying cylinder,
// W/m²: the beam on its shadow, a diameter wide of the π around, half the sky
// and half of what the ground throws back. The line is taken to lie across the
// beam, which is the most it can get.
func (l light) onLying() float64 {
	return l.beam/math.Pi + l.diffuse/2 + grass*l.global/2
}
