package thermal

import (
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/water"
)

// Density returns the density of the beer at t, kg/m³, without dissolved gas:
//
//	ρ(t) = FG ρ_w(20) ρ_OIML(w, t) / ρ_OIML(w, 20)
//
// so that its gravity is exact at 20 °C and it expands like a mixture of
// ethanol and water of the same mass fraction w of alcohol.
//
// Valid from −5 °C to 40 °C; outside it, or for an invalid t, Density returns
// a [*RangeError] and NaN. Water agrees with IAPWS SR6-08 within 0.004 %, and
// mixtures with the printed densities of OIML R 22 within half a digit; extract
// adds an uncertainty of 0.05 %.
//
// Special cases: [Water] has its maximum at 4 °C; the more alcohol, the colder
// the maximum.
//
// Source: OIML R 22 (1975), general formula.
func (b Beer) Density(t Temperature) (float64, error) {
	c := t.Celsius()
	if err := limitLiquid.Check("thermal.Beer.Density", c); err != nil {
		return math.NaN(), err
	}
	return b.density(c), nil
}

// density returns the density in kg/m³ at c °C.
func (b Beer) density(c float64) float64 {
	w := b.ABW() / 100
	return b.FinalGravity() * waterDensity20 * ethanolWaterDensity(w, c) / ethanolWaterDensity(w, 20)
}

// Viscosity returns the dynamic viscosity of the beer at t, Pa s, without
// dissolved gas:
//
//	ln(μ/μ_w) = (6.8751 − 0.13241 t + 0.0012851 t²) w + (−7.2284 + 0.12291 t) w²
//	          + 2.2 (2.476 E + 4.203 E²) (1 + 0.0062 (20 − t))
//
// with t in °C and w and E the mass fractions of alcohol and real extract. The
// first line is ours, fitted to Bingham & Jackson; the second is that of
// sucrose, raised to the power 2.2 because beer's extract is dextrin.
//
// Valid from −5 °C to 40 °C (the mixture was measured from 0 °C up; the fit is
// carried on for the 5 K below); outside it, or for an invalid t, Viscosity
// returns a [*RangeError] and NaN. Without extract it agrees with [1] within
// 2 % to 20 % alcohol by mass from 0 to 30 °C; for beer expect ±15 %.
//
// Source: [1] E. C. Bingham and R. F. Jackson, Bull. Bur. Standards 14 (1918)
// 59; sucrose at 20 °C as in the NBS circular C440, from memory.
func (b Beer) Viscosity(t Temperature) (float64, error) {
	c := t.Celsius()
	if err := limitLiquid.Check("thermal.Beer.Viscosity", c); err != nil {
		return math.NaN(), err
	}
	return b.viscosity(c), nil
}

// dextrin is the power to which sucrose's factor is raised for beer extract:
// 1 would be sucrose, 3 the stiffest extract; judged, not measured.
const dextrin = 2.2

// viscosity returns the dynamic viscosity in Pa s at c °C.
func (b Beer) viscosity(c float64) float64 {
	w := b.ABW() / 100
	ethanol := (6.8751+(-0.13241+0.0012851*c)*c)*w + (-7.2284+0.12291*c)*w*w
	return water.Viscosity(c+water.ZeroCelsius) * math.Exp(ethanol+dextrin*sucrose(b.extract(), c))
}

// sucrose returns ln(μ/μ_w) of a sucrose solution of mass fraction e at c °C.
func sucrose(e, c float64) float64 { return (2.476*e + 4.203*e*e) * (1 + 0.0062*(20-c)) }

// extract returns the real extract as a mass fraction, 0 for water and for
// the rounding below it that BeerOf lets pass.
func (b Beer) extract() float64 { return max(b.RealExtract(), 0) / 100 }

// HeatCapacity returns the specific heat of the beer at t, J/(kg K), by mass
// fractions of water, alcohol w and real extract E:
//
//	c = (1 − w − E) c_w + w c_A + E c_E
//	c_A = 6500 − 85 t + 1.2 t²    (apparent, of ethanol in dilute solution)
//	c_E = 1548.8 + 1.9625 t       (carbohydrate)
//
// with t in °C. Ordinary beer comes within 1 % of water,
// because alcohol raises the heat capacity by as much as extract lowers it.
//
// Valid from −5 °C to 40 °C within 1.5 %; outside it, or for an invalid t,
// HeatCapacity returns a [*RangeError] and NaN.
//
// Sources: water IAPWS SR6-08; c_A ours, fitted to the specific heats of
// aqueous ethanol in Perry's Chemical Engineers' Handbook (from memory); c_E
// Choi & Okos (1986), as in the ASHRAE Handbook of Refrigeration (from memory).
func (b Beer) HeatCapacity(t Temperature) (float64, error) {
	c := t.Celsius()
	if err := limitLiquid.Check("thermal.Beer.HeatCapacity", c); err != nil {
		return math.NaN(), err
	}
	return b.heatCapacity(c), nil
}

// heatCapacity returns the specific heat in J/(kg K) at c °C.
func (b Beer) heatCapacity(c float64) float64 {
	w, e := b.ABW()/100, b.extract()
	alcohol := 6500 + (-85+1.2*c)*c
	carbohydrate := 1548.8 + 1.9625*c
	return (1-w-e)*water.HeatCapacity(c+water.ZeroCelsius) + w*alcohol + e*carbohydrate
}

// Conductivity returns the thermal conductivity of the beer at t:
//
//	λ = [(1 − w) λ_w + w λ_A − 0.72 w (1 − w) (λ_w − λ_A)] (1 − 0.54 E)
//
// with w and E the mass fractions of alcohol and real extract and
// λ_A = 0.174 − 0.00026 t W/(m K) that of ethanol at t °C.
//
// Valid from −5 °C to 40 °C within 4 %; outside it, or for an invalid t,
// Conductivity returns a [*RangeError] and NaN.
//
// Sources: water IAPWS SR6-08; the mixture Filippov (1955), as in Reid,
// Prausnitz & Poling, The Properties of Gases and Liquids, eq. 10-12.1; extract
// as sugar, Riedel (1949); constants from memory.
func (b Beer) Conductivity(t Temperature) (Conductivity, error) {
	c := t.Celsius()
	if err := limitLiquid.Check("thermal.Beer.Conductivity", c); err != nil {
		return Conductivity(math.NaN()), err
	}
	return Conductivity(b.conductivity(c)), nil
}

// conductivity returns the thermal conductivity in W/(m K) at c °C.
func (b Beer) conductivity(c float64) float64 {
	w := b.ABW() / 100
	kw := water.Conductivity(c + water.ZeroCelsius)
	ka := 0.174 - 0.00026*c
	return ((1-w)*kw + w*ka - 0.72*w*(1-w)*(kw-ka)) * (1 - 0.54*b.extract())
}

// fluidAt returns what films need of the beer at c °C.
func (b Beer) fluidAt(c float64) heat.Fluid {
	mu, k := b.viscosity(c), b.conductivity(c)
	return heat.Fluid{K: k, Nu: mu / b.density(c), Pr: mu * b.heatCapacity(c) / k}
}

// film returns the coefficient between beer of c °C and an upright wall of tw
// °C and that height, W/(m² K). Beyond −5 and 40 °C the properties at those
// bounds stand in: above, the film is a twentieth of the resistance or less;
// below, only a wall or a keg that is left in frost gets there.
func (b Beer) film(c, tw, height, densest float64) float64 {
	f := b.fluidAt(math.Max(limitLiquid.Min, math.Min((c+tw)/2, limitLiquid.Max)))
	ra := f.Rayleigh(heat.WaterBuoyancy(tw, c, densest), height)
	return heat.NusseltPlate(ra, f.Pr) * f.K / height
}
