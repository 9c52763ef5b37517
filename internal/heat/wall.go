package heat

import "math"

// RadialResistance returns the resistance of the wall of a tube to heat, for a
// metre of it in K m/W, from its inside and outside diameter in m and its
// conductivity in W/(m K).
//
//	R′ = ln(d_o/d_i) / (2π k)
//
// Source: Fourier's law in cylinder coordinates, any textbook.
func RadialResistance(inside, outside, k float64) float64 {
	return math.Log(outside/inside) / (2 * math.Pi * k)
}

// FilmResistance returns the resistance of a film of coefficient h, W/(m² K),
// on a tube of diameter d, m: 1/(h π d) for a metre of it, K m/W.
func FilmResistance(d, h float64) float64 { return 1 / (h * math.Pi * d) }

// Approach returns the temperature to which a stream that enters at in comes,
// past a body that stays at end, on a conductance ua over a capacity rate.
//
//	T = T_end + (T_in − T_end) e^(−NTU),  NTU = UA/ṁc
//
// Source: effectiveness of a heat exchanger one of whose sides does not change
// its temperature, any textbook.
func Approach(in, end, ntu float64) float64 { return end + (in-end)*math.Exp(-ntu) }

// CriticalRadius returns k/h, the outside radius in m of a layer of
// conductivity k at which a tube exchanges the most heat; beyond is the
// resistance 1/(h π d) outside it, K m/W, at the outside diameter d, m.
//
// Source: any textbook of heat conduction.
func CriticalRadius(k, beyond, d float64) float64 { return k * beyond * math.Pi * d }

// LayerHeat returns ∫ φ² dC′ in J/(m K) over a layer between the diameters
// inside and outside, of conductivity k and volumetric heat capacity c, where
// beyond is the resistance outside the layer and whole that of the tube. With
// u = ln(b/r), φ = A + Bu:
//
//	∫ φ² 2π r c dr = π b² c [(φ² + Bφ + B²/2) e^(−2u)] from u = U to 0
func LayerHeat(inside, outside, k, c, beyond, whole float64) float64 {
	b := outside / 2
	full := math.Log(outside / inside)
	slope := 1 / (2 * math.Pi * k * whole)
	part := func(u float64) float64 {
		phi := beyond/whole + slope*u
		return (phi*phi + slope*phi + slope*slope/2) * math.Exp(-2*u)
	}
	return math.Pi * b * b * c * (part(0) - part(full))
}
