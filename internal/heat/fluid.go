package heat

import (
	"math"

	"example.com/pourwell/internal/air"
	"example.com/pourwell/internal/water"
)

// Gravity is standard gravity, m/s².
const Gravity = 9.80665

// A Fluid holds what a film coefficient needs of a fluid at one temperature.
type Fluid struct {
	K  float64 // conductivity, W/(m K)
	Nu float64 // kinematic viscosity, m²/s
	Pr float64 // Prandtl number
}

// Air returns the properties of air at t kelvin and p Pa.
func Air(t, p float64) Fluid {
	mu, k := air.Viscosity(t), air.Conductivity(t)
	return Fluid{k, mu / air.Density(t, p), mu * air.HeatCapacity / k}
}

// Water returns the properties of liquid water at t kelvin.
func Water(t float64) Fluid {
	mu, k := water.Viscosity(t), water.Conductivity(t)
	return Fluid{k, mu / water.Density(t), mu * water.HeatCapacity(t) / k}
}

// Rayleigh returns g B L³ Pr/ν² for the relative density difference B that
// drives the flow and the length L.
func (f Fluid) Rayleigh(buoyancy, length float64) float64 {
	return Gravity * buoyancy * length * length * length * f.Pr / (f.Nu * f.Nu)
}

// AirBuoyancy is the relative density difference between air at a surface of
// ts kelvin and air at ta kelvin.
func AirBuoyancy(ts, ta float64) float64 { return 2 * math.Abs(ts-ta) / (ts + ta) }

// Density of water near its maximum: ρ = ρ_m (1 − a |t − t_m|^q), t in °C;
// within 2 % of the density difference from 0 to 25 °C. Source: B. Gebhart and
// J. C. Mollendorf, Deep-Sea Research 24 (1977) 831, pure water at 1 atm.
const (
	Densest      = 4.029325 // t_m, °C
	DensityCoeff = 9.297173e-6
	DensityPower = 1.894816 // q
)

// WaterBuoyancy returns twice the mean of |ρ − ρ_bulk|/ρ over the film between
// a wall at tw °C and bulk water at tb °C, whose density is greatest at tm °C:
//
//	B = (2/|tw − tb|) ∫ |ρ(t) − ρ(tb)| dt / ρ,  from tb to tw
//
// It is the density difference itself where density is linear, and stays above
// zero where wall and bulk straddle the maximum and have equal densities: there
// the film rises on one side and sinks on the other. The mean is our own
// construction, checked by the temperature of least heat transfer at a wall of
// 0 °C.
func WaterBuoyancy(tw, tb, tm float64) float64 {
	x, y := math.Abs(tb-tm), math.Abs(tw-tm)
	fx := math.Pow(x, DensityPower)
	fy := math.Pow(y, DensityPower)
	d := math.Abs(tw - tb)
	if d < 1e-9 {
		return 0
	}
	// primitive of |s|^q − x^q over s, the distance from the maximum
	prim := func(s, fs float64) float64 { return s * (fs/(DensityPower+1) - fx) }
	var area float64
	switch {
	case (tb-tm)*(tw-tm) >= 0: // same side: the sign does not change
		area = math.Abs(prim(y, fy) - prim(x, fx))
	case y <= x: // across the maximum, not yet as far as the conjugate temperature
		area = -(prim(x, fx) + prim(y, fy))
	default: // beyond it, where the film is lighter than the bulk
		area = -2*prim(x, fx) + prim(y, fy) - prim(x, fx)
	}
	return 2 * DensityCoeff * area / d
}
