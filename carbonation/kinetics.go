package carbonation

import (
	"math"

	"example.com/pourwell/internal/solve"
)

// co2Diffusivity returns the diffusivity of CO2 in water, m²/s. Source: Jähne,
// Heinz & Dietrich, J. Geophys. Res. 92 (1987) 10767, from memory, confirmed
// within 0.7 % by the column of the CRC Handbook of Chemistry and Physics, p.
// 6-193, from 10 to 35 °C.
func co2Diffusivity(kelvin float64) float64 {
	return 5.019e-6 * math.Exp(-19510/(gasConstant*kelvin))
}

// oxygenDiffusivity returns the diffusivity of oxygen in water, m²/s: through
// the values of the CRC Handbook of Chemistry and Physics, p. 6-193, 1.67e-9 at
// 10 °C and 2.42e-9 at 30 °C, with the temperature law of Arrhenius; carried on
// below.
func oxygenDiffusivity(kelvin float64) float64 {
	const activation = 1592 // K
	return 1.67e-9 * math.Exp(activation*(1/283.15-1/kelvin))
}

// slabUptake returns how far a still layer, closed at the bottom, has come
// towards the concentration kept at its surface, 0 to 1, at the dimensionless
// time τ = D t / h². Source: Crank, The Mathematics of Diffusion, 2nd ed.
// (1975), eqs. 4.18 and 4.20; in soil mechanics the degree of consolidation.
func slabUptake(tau float64) float64 {
	if tau < 0.1 {
		return 2 * math.Sqrt(tau/math.Pi) // eq. 4.20, first term: within 2e-5 here
	}
	sum := 0.0
	for _, n := range [...]float64{1, 3, 5, 7} {
		sum += math.Exp(-n*n*math.Pi*math.Pi*tau/4) / (n * n)
	}
	return 1 - 8/(math.Pi*math.Pi)*sum // eq. 4.18
}

// slabTime returns the dimensionless time at which slabUptake is reached, the
// inverse for shares below 1.
func slabTime(share float64) float64 {
	if share <= slabUptake(0.0999) {
		return math.Pi / 4 * share * share
	}
	tau, _ := solve.Root(func(tau float64) float64 { return slabUptake(tau) - share }, 0.0999, 20, 1e-12)
	return tau
}

// sinking returns the mass-transfer coefficient, m/s, by which CO2 enters still
// beer through its surface while the top is richer by over g/L: rich beer is
// denser and sinks.
//
//	Sh = 0.15 Ra^(1/3),  Ra = g Δρ h³ / (μ D),  so that k = Sh D / h has no h
//
// Source: Lloyd & Moran, J. Heat Transfer 96 (1974) 443, a horizontal plate
// facing upwards, turbulent, with mass for heat; from memory. A mole of CO2
// takes up 33 cm³ of solution (Weiss 1974), so that each g/L adds 0.25 kg/m³.
func sinking(over, viscosity, diffusivity, coefficient float64) float64 {
	const gravity = 9.80665
	density := over * (1 - waterLikeDensity*partialMolar/(molarMassCO2*1e-3))
	return coefficient * math.Cbrt(gravity*density/(viscosity*diffusivity)) * diffusivity
}

const (
	waterLikeDensity = 1000.0  // kg/m³
	partialMolar     = 33.0e-6 // m³/mol
)

// Coefficients of natural convection: the likely one and the ends of its band.
// The band is ours, wide enough for wall effects and for foam on the surface.
const (
	likelySherwood = 0.15
	slowSherwood   = 0.10
	fastSherwood   = 0.20
)

// convected returns the share of the difference left after t seconds when the
// coefficient falls with the cube root of the difference:
//
//	Δ/Δ0 = (1 + k0 t / 3h)^−3
func convected(k0, depth, t float64) float64 { return math.Pow(1+k0*t/(3*depth), -3) }

// convectedTime returns the time in seconds at which left is left.
func convectedTime(k0, depth, left float64) float64 { return 3 * depth / k0 * (1/math.Cbrt(left) - 1) }
