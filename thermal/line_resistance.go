package thermal

import "math"

// radialResistance returns the resistance of the wall of a tube to heat, for a
// metre of it in K m/W, from its inside and outside diameter in m and its
// conductivity in W/(m K).
//
//	R′ = ln(d_o/d_i) / (2π k)
//
// Source: Fourier's law in cylinder coordinates, any textbook.
func radialResistance(inside, outside, k float64) float64 {
	return math.Log(outside/inside) / (2 * math.Pi * k)
}

// filmResistance returns the resistance of a film of coefficient h, W/(m² K),
// on a tube of diameter d, m: 1/(h π d) for a metre of it, K m/W.
func filmResistance(d, h float64) float64 { return 1 / (h * math.Pi * d) }

// approach returns the temperature to which a stream that enters at in comes,
// past a body that stays at end, on a conductance ua over a capacity rate.
//
//	T = T_end + (T_in − T_end) e^(−NTU),  NTU = UA/ṁc
//
// Source: effectiveness of a heat exchanger one of whose sides does not change
// its temperature, any textbook.
func approach(in, end, ntu float64) float64 { return end + (in-end)*math.Exp(-ntu) }

// criticalRadius returns k/h, the outside radius in m of a layer of
// conductivity k at which a tube exchanges the most heat; beyond is the
// resistance 1/(h π d) outside it, K m/W, at the outside diameter d, m.
//
// Source: any textbook of heat conduction.
func criticalRadius(k, beyond, d float64) float64 { return k * beyond * math.Pi * d }
