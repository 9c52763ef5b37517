package thermal

import (
	"cmp"
	"fmt"
	"math"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Coil is a tube wound into a coil, laid in ice water, through which beer
// runs on its way to the tap. [DefaultCoil] has the usual values; the methods
// [Coil.Still], [Coil.Packed] and [Coil.Pumped] set the bath around it.
type Coil struct {
	Length       unit.Length     // of the tube in the bath
	Bore         unit.Length     // inside diameter of the tube
	Wall         unit.Length     // thickness of the tube
	Conductivity Conductivity    // of the wall
	Winding      unit.Length     // mean diameter of the winding, tube centre to tube centre
	Bath         Temperature     // of the water beside the coil
	Film         FilmCoefficient // between bath and tube, on the outside of the tube
	FilmBand     float64         // uncertainty of Film as a share of it, 0 where it was measured
	Beer         Beer

	ByPump bool // a pump drives the water past the coil, and its plug lies near; set by Pumped
}

// DefaultCoil returns 50 ft of stainless steel tube of a quarter inch outside
// and 4.93 mm inside, wound 20 cm wide, in a still bath.
func DefaultCoil() Coil {
	return Coil{
		Length: 50 * 12 * volume.Inch, Bore: 4.93e-3, Wall: 0.71e-3,
		Conductivity: 14.9, // AISI 304; Bergman et al., table A.1, from memory
		Winding:      0.2,
	}.Still()
}

// Still returns the coil in ice water that nobody stirs: 2 °C beside the coil
// and 450 W/(m² K), with ±45 %.
//
// Source: assumed; still ice-water baths were measured 2 to 4 °C beside
// bottles. Natural convection by Churchill & Chu gives 450 to 500 on a tube of
// 16 to 18 °C but only 240 to 260 on one of 4 to 8 °C, where water is densest,
// so beer that enters below 10 °C leaves nearer the warm end of the band.
func (c Coil) Still() Coil { return c.in(Celsius(2), 450, 0.45) }

// Packed returns the coil in ice packed tight around it with the gaps full of
// water, or stirred by hand now and then: 0.5 °C and 1500 W/(m² K), with ±25 %.
//
// Source: assumed; by Churchill & Bernstein water gives it at 0.05 m/s.
func (c Coil) Packed() Coil { return c.in(Celsius(0.5), 1500, 0.25) }

// Pumped returns the coil in ice water that a pump drives past it: 0 °C and
// 3000 W/(m² K), with ±25 %.
//
// Source: assumed; by Churchill & Bernstein water gives it at 0.2 m/s.
func (c Coil) Pumped() Coil {
	c = c.in(Celsius(0), 3000, 0.25)
	c.ByPump = true
	return c
}

func (c Coil) in(bath Temperature, film FilmCoefficient, band float64) Coil {
	c.Bath, c.Film, c.FilmBand, c.ByPump = bath, film, band, false
	return c
}

// A CoilChill is what a coil does to a steady flow.
type CoilChill struct {
	Outlet           Temperature // of the beer that leaves while the tap stays open
	Effectiveness    float64     // share of the way from inlet to bath that the beer goes
	NTU              float64     // number of transfer units, UA over the capacity rate of the flow
	Reynolds         float64     // of the beer at the mean of inlet and outlet
	CriticalReynolds float64     // at which flow in this coil ceases to be laminar
	UA               Conductance // of the whole coil, mean over its length
	Heat             unit.Power  // taken from the beer
	IcePerLitre      unit.Mass   // melted for each litre of beer, apart from what the box itself melts
	IcePerHour       unit.Mass   // melted in an hour of steady flow
	HoldUp           unit.Volume // beer in the coil
	FreezeMargin     Difference  // bath above the freezing point of the beer
	Blocks           bool        // bath is colder than that: beer that stands in the coil freezes in about a minute

	coil         Coil
	risk         coilRisk
	inlet        float64 // °C
	capacityRate float64 // W/K
	inner        float64 // mean resistance of the inside film, K m/W
	wall, outer  float64 // K m/W
	standing     float64 // time constant of beer at rest, s
}

// Chill returns how a steady flow of beer that enters at inlet leaves the
// coil. The tube is marched from end to end, at each station
//
//	1/U′ = 1/(h_i π d) + ln(d_o/d)/(2π k) + 1/(h_o π d_o)
//	ṁ c dT/dx = −U′ (T − T_bath)
//
// with h_i by the VDI Heat Atlas for coils, laminar below the critical
// Reynolds number of the winding, and h_o that of the bath.
//
// Valid from −5 °C to 40 °C, for a bore of at most 0.14 of the winding and
// Reynolds numbers to 1e5. Expect the outside film within ±45 % in a still bath
// and ±25 % in a moved one, see [CoilChill.Band]. Outside the range Chill
// returns a [*RangeError] and NaN, and where the beer would leave frozen an
// error that wraps [volume.ErrNoSolution].
//
// Special cases: a bath warmer than the beer warms it; its heat comes out
// negative, and it melts no ice.
//
// Sources: [pipe.NusseltCoiled]; latent heat of ice IAPWS-06.
func (c Coil) Chill(inlet Temperature, flow Flow) (CoilChill, error) {
	const fn = "thermal.Coil.Chill"
	if err := c.check(fn, inlet, flow); err != nil {
		return noCoilChill(), err
	}
	r := c.chill(inlet.Celsius(), float64(flow), coilStations)
	if err := limitCoilReynolds.Check(fn, r.Reynolds); err != nil {
		return noCoilChill(), err
	}
	if err := c.Beer.freezes(fn, r.Outlet); err != nil {
		return noCoilChill(), err
	}
	return r, nil
}

// Serve returns the temperatures of glasses drawn one after another through
// the coil, which has stood long enough to begin with the bath's temperature.
//
// Beer goes through as a plug. A drop that enters θ_in above the bath leaves
// at
//
//	θ = θ_in e^(−NTU) e^(−k t/τ)
//
// after resting k times for the pause t; the content of the coil at the
// beginning leaves at θ = 0. With the hold-up V_h and the glass V the drops of
// a glass have rested ⌊V_h/V⌋ times or once more, so the mean is exact. That
// is why a short coil serves a party and fails a queue.
//
// Valid as [Coil.Chill], for glasses from 20 mL to 20 L; outside it, or if a
// glass is not full before the next begins, Serve returns a [*RangeError]. In a
// bath below the freezing point of the beer the content freezes, and Serve
// returns an error that wraps [volume.ErrNoSolution].
func (c Coil) Serve(inlet Temperature, p Pours) (Service, error) {
	const fn = "thermal.Coil.Serve"
	if err := p.check(fn); err != nil {
		return noService(), err
	}
	r, err := c.Chill(inlet, p.Flow)
	if err != nil {
		return noService(), err
	}
	if r.Blocks {
		return noService(), noSolution(fn, "the bath at {%.6g c} freezes beer that stands in the coil; it freezes at {%.6g c}",
			c.Bath.Celsius(), c.Beer.FreezingPoint().Celsius())
	}
	return r.serve(p), nil
}

// check returns a [*volume.RangeError] in the name of fn if the coil, the
// inlet temperature or the flow lies outside its range.
func (c *Coil) check(fn string, inlet Temperature, flow Flow) error {
	return cmp.Or(
		limitTubeLength.Check(fn, float64(c.Length)),
		limitBore.Check(fn, float64(c.Bore)*1e3),
		limitTubeWall.Check(fn, float64(c.Wall)*1e3),
		limitWallLambda.Check(fn, float64(c.Conductivity)),
		limitWinding.Check(fn, float64(c.Winding)),
		limitCurvature.Check(fn, float64(c.Bore/c.Winding)),
		limitBath.Check(fn, c.Bath.Celsius()),
		limitFilm.Check(fn, float64(c.Film)),
		limitFilmBand.Check(fn, c.FilmBand),
		limitLiquid.Check(fn, inlet.Celsius()),
		limitFlow.Check(fn, flow.LitresPerMinute()),
	)
}

// noCoilChill is what Chill returns beside an error.
func noCoilChill() CoilChill {
	n := math.NaN()
	return CoilChill{
		Effectiveness: n, NTU: n, Reynolds: n, CriticalReynolds: n, UA: Conductance(n), Heat: unit.Power(n),
		IcePerLitre: unit.Mass(n), IcePerHour: unit.Mass(n), HoldUp: unit.Volume(n), FreezeMargin: Difference(n),
	}
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
	a, b := heat.Approach(r.inlet, bath, r.NTU*most), heat.Approach(r.inlet, bath, r.NTU*least)
	return math.Min(a, b), math.Max(a, b)
}

// Steps returns the working of the chill, from flow to ice.
func (r CoilChill) Steps() []volume.Step {
	c := &r.coil
	ice := "ρ c (T_in − T_out)/L_f for 1 L"
	if r.Heat < 0 {
		ice = "none: the beer is colder than the bath"
	}
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
		{Name: "ice per litre", Symbol: "m", Value: float64(r.IcePerLitre), Suffix: "kg", Source: ice},
	}
}
