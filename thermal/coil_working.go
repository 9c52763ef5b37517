package thermal

import (
	"fmt"
	"math"

	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// innerBand returns by which shares the inside film may be worse and better.
//
// Source: bands customary for coils; the laminar one from the spread between
// authors, see [pipe.NusseltCoiled].
func (r CoilChill) innerBand() (worse, better float64) {
	switch {
	case r.Reynolds <= r.CriticalReynolds:
		return 0.40, 0.10
	case r.Reynolds < pipe.TurbulentCoil:
		return 0.20, 0.20
	}
	return 0.15, 0.15
}

// Regime returns the kind of flow in the coil: "laminar", "transition" or
// "turbulent".
func (r CoilChill) Regime() string {
	switch {
	case r.Reynolds <= r.CriticalReynolds:
		return "laminar"
	case r.Reynolds < pipe.TurbulentCoil:
		return "transition"
	}
	return "turbulent"
}

// Band returns the interval of the outlet temperature, in °C, that the
// uncertainties of the outside and the inside film span together.
func (r CoilChill) Band() volume.Band {
	worse, better := r.innerBand()
	low, high := r.outletBand()
	return volume.Band{
		Name: "outlet", Low: low, High: high, Suffix: "c",
		Source: fmt.Sprintf("outside film ±%.0f %%, inside film −%.0f to +%.0f %%", 100*r.coil.FilmBand, 100*worse, 100*better),
	}
}

// outletBand returns the ends of the band, °C.
func (r *CoilChill) outletBand() (low, high float64) {
	worse, better := r.innerBand()
	total := r.inner + r.wall + r.outer
	least := total / (r.inner/(1-worse) + r.wall + r.outer/(1-r.coil.FilmBand))
	most := total / (r.inner/(1+better) + r.wall + r.outer/(1+r.coil.FilmBand))
	bath := r.coil.Bath.Celsius()
	a, b := approach(r.inlet, bath, r.NTU*most), approach(r.inlet, bath, r.NTU*least)
	return math.Min(a, b), math.Max(a, b)
}

// Steps returns the working of the chill, from flow to ice.
func (r CoilChill) Steps() []volume.Step {
	c := &r.coil
	return []volume.Step{
		{Name: "inlet", Symbol: "T_in", Value: r.inlet, Suffix: "c", Source: "given"},
		{Name: "bore", Symbol: "d", Value: float64(c.Bore), Suffix: "m", Source: "given"},
		{Name: "outside diameter", Symbol: "d_o", Value: float64(c.Bore + 2*c.Wall), Suffix: "m", Source: "bore and twice the wall"},
		{Name: "length", Symbol: "L", Value: float64(c.Length), Suffix: "m", Source: "given"},
		{Name: "winding", Symbol: "D", Value: float64(c.Winding), Suffix: "m", Source: "given"},
		{Name: "conductivity of the wall", Symbol: "k", Value: float64(c.Conductivity), Suffix: "w_per_m_k", Source: "stainless steel AISI 304, or given"},
		{Name: "film of the bath", Symbol: "h_o", Value: float64(c.Film), Suffix: "w_per_m2_k", Source: "assumed for the kind of bath, or given"},
		{Name: "bath", Symbol: "T_bath", Value: c.Bath.Celsius(), Suffix: "c", Source: "given or assumed"},
		{Name: "capacity rate of the flow", Symbol: "ṁc", Value: r.capacityRate, Suffix: "w_per_k", Source: "density × flow × specific heat of the beer"},
		{Name: "Reynolds number at mean temperature", Symbol: "Re", Value: r.Reynolds, Source: "4 ṁ/(π d μ)"},
		{Name: "critical Reynolds number of the winding", Symbol: "Re_c", Value: r.CriticalReynolds, Source: "2300 [1 + 8.6 (d/D)^0.45], Schmidt 1967"},
		{Name: "resistance of the inside film", Symbol: "R_i", Value: r.inner, Suffix: "k_m_per_w", Source: "1/(h_i π d), VDI Heat Atlas Gc, mean over the length"},
		{Name: "resistance of the wall", Symbol: "R_w", Value: r.wall, Suffix: "k_m_per_w", Source: "ln(d_o/d)/(2π k)"},
		{Name: "resistance of the outside film", Symbol: "R_o", Value: r.outer, Suffix: "k_m_per_w", Source: "1/(h_o π d_o)"},
		{Name: "conductance of the coil", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "L/(R_i + R_w + R_o)"},
		{Name: "transfer units", Symbol: "NTU", Value: r.NTU, Source: "UA/ṁc"},
		{Name: "effectiveness", Symbol: "ε", Value: r.Effectiveness, Source: "1 − e^(−NTU)"},
		{Name: "outlet", Symbol: "T_out", Value: r.Outlet.Celsius(), Suffix: "c", Source: "T_bath + (T_in − T_bath) (1 − ε)"},
		{Name: "heat", Symbol: "q", Value: float64(r.Heat), Suffix: "w", Source: "ṁc (T_in − T_out)"},
		{Name: "latent heat of ice", Symbol: "L_f", Value: water.LatentHeat, Suffix: "j_per_kg", Source: "IAPWS-06"},
		{Name: "ice per litre", Symbol: "m", Value: float64(r.IcePerLitre), Suffix: "kg", Source: "ρ c (T_in − T_out)/L_f for 1 L"},
	}
}

// noCoilChill is what Chill returns beside an error.
func noCoilChill() CoilChill {
	n := math.NaN()
	return CoilChill{
		Effectiveness: n, NTU: n, Reynolds: n, CriticalReynolds: n, UA: Conductance(n), Heat: unit.Power(n),
		IcePerLitre: unit.Mass(n), IcePerHour: unit.Mass(n), HoldUp: unit.Volume(n), FreezeMargin: Difference(n),
	}
}
