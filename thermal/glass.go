package thermal

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Glassful is a glass about to be filled, and where it will stand. A
// [DefaultGlassful] has usual values.
type Glassful struct {
	Glass  volume.Glass // of which bore and mass count, and the volume as an upper end
	From   Temperature  // of the glass before
	Liquid unit.Volume  // of beer poured, without its head
	Beer   Beer
	Solar  float64 // share of sunshine on it that glass and beer absorb
	Around Surroundings
}

// DefaultGlassful returns the glass as warm as the air, filled to 90 % with
// ordinary beer, that absorbs half the sunshine on it. The two shares are
// assumed.
func DefaultGlassful(g volume.Glass, around Surroundings) Glassful {
	return Glassful{Glass: g, From: around.Air, Solar: 0.5, Around: around}.Filled(0.9)
}

// Filled returns the glassful with beer up to a share of the glass's volume.
func (g Glassful) Filled(share float64) Glassful {
	g.Liquid = unit.Volume(share) * g.Glass.Volume
	return g
}

// A GlassRun is what a glass does to beer.
type GlassRun struct {
	Temperature Temperature // that beer and glass have in common once the glass has cooled
	After       Temperature // after the wait
	Settles     Temperature // that the beer comes to at last
	GlassCost   Difference  // by which the glass warmed the beer
	UA          Conductance // heat from the surroundings per kelvin, at the common temperature, dew included

	beer, glass      float64 // heat capacities, J/K
	poured, from     float64 // °C
	common, settles  float64 // °C
	side, wait, heat float64 // m², s, W
	scale            heat.Relaxation
	glassful         Glassful
}

// Pour returns what becomes of beer poured at the temperature beer that waits
// in the glass.
//
//	T = (C_beer T_beer + C_glass T_glass)/(C_beer + C_glass)
//
// Then beer and glass together warm in the air: through the wetted side by
// convection, radiation and dew, through the surface by the same, as if it had
// no head. The foot and hands are left out.
//
// Valid for the rows of [Limits], a wait of up to 24 hours and 20 mL to 20 L of
// beer; expect the warming within ±30 %. Outside the range Pour returns a
// [*RangeError] and NaN, and where the beer would freeze an error that wraps
// [volume.ErrNoSolution].
//
// Sources: heat balance; heat capacity of glass EN 12524; films [1] to [4] of
// the package.
func (g Glassful) Pour(beer Temperature, wait time.Duration) (GlassRun, error) {
	const fn = "thermal.Glassful.Pour"
	none := GlassRun{GlassCost: Difference(math.NaN()), UA: Conductance(math.NaN())}
	if err := g.check(fn, beer, wait); err != nil {
		return none, err
	}
	r := g.run(beer.Celsius(), wait.Seconds())
	if err := cmp.Or(
		finite(fn, r.common, r.settles, r.After.Celsius(), float64(r.UA)),
		g.Beer.freezes(fn, r.Temperature),
		g.Beer.freezes(fn, r.After),
	); err != nil {
		return none, err
	}
	return r, nil
}

// fill returns the share of the glass that the beer fills, 0 if its volume is
// not known.
func (g *Glassful) fill() float64 {
	if g.Glass.Volume == 0 {
		return 0
	}
	return float64(g.Liquid / g.Glass.Volume)
}

// check returns a [*volume.RangeError] in the name of fn if something lies
// outside its range.
func (g *Glassful) check(fn string, beer Temperature, wait time.Duration) error {
	return cmp.Or(
		limitGlassMass.Check(fn, float64(g.Glass.Mass)),
		limitGlassBore.Check(fn, float64(g.Glass.Bore)*1e3),
		limitGlassVolume.Check(fn, float64(g.Liquid)*1e3),
		limitGlassFill.Check(fn, g.fill()),
		limitAir.Check(fn, g.From.Celsius()),
		limitSolar.Check(fn, g.Solar),
		limitLiquid.Check(fn, beer.Celsius()),
		limitWait.Check(fn, wait.Hours()),
		g.Around.check(fn),
	)
}

// Course returns the temperature of the beer at n evenly spaced times of the
// wait, both ends included, from the moment that it has cooled the glass. It is
// nil for a result that came with an error, and panics for an n below 2.
func (r GlassRun) Course(n int) []Sample {
	samples := newCourse(n)
	if !r.Temperature.IsValid() {
		return nil
	}
	return fill(samples, r.wait, func(s float64) float64 {
		return r.settles - (r.settles-r.common)*r.scale.After(s)
	})
}

// Band returns the interval of the common temperature, in °C: from where 30 %
// of the glass, its foot and rim, have not cooled yet to where all has.
func (r GlassRun) Band() volume.Band {
	a, b := r.meet(1-glassFoot), r.common
	return volume.Band{
		Name: "temperature", Low: math.Min(a, b), High: math.Max(a, b), Suffix: "c",
		Source: fmt.Sprintf("%.0f to 100 %% of the glass takes part when the beer is drunk", 100*(1-glassFoot)),
	}
}

// AfterBand returns the interval of the temperature after the wait, in °C.
func (r GlassRun) AfterBand() volume.Band {
	a, b := r.at(1-glassBand), r.at(1+glassBand)
	return volume.Band{Name: "after", Low: math.Min(a, b), High: math.Max(a, b), Suffix: "c", Source: "conductance to still air ±" + percent(glassBand)}
}

// Steps returns the working, from heat capacities to the temperature after the
// wait.
func (r GlassRun) Steps() []volume.Step {
	return []volume.Step{
		{Name: "beer as poured", Symbol: "T_b", Value: r.poured, Suffix: "c", Source: "given"},
		{Name: "glass before", Symbol: "T_g", Value: r.from, Suffix: "c", Source: "given"},
		{Name: "heat capacity of the beer", Symbol: "C_b", Value: r.beer, Suffix: "j_per_k", Source: "ρ V c"},
		{Name: "heat capacity of the glass", Symbol: "C_g", Value: r.glass, Suffix: "j_per_k", Source: fmt.Sprintf("m × %g J/(kg K), EN 12524", glassHeat)},
		{Name: "common temperature", Symbol: "T", Value: r.common, Suffix: "c", Source: "(C_b T_b + C_g T_g)/(C_b + C_g)"},
		{Name: "wetted side", Symbol: "A", Value: r.side, Suffix: "m2", Source: "π D h"},
		{Name: "settling temperature", Symbol: "T_s", Value: r.settles, Suffix: "c", Source: "of the air, or above it in the sun"},
		{Name: "heat from outside at the start", Symbol: "q", Value: r.heat, Suffix: "w", Source: "convection, radiation, dew and sun on side and surface"},
		{Name: "conductance at the start", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "q/(T_s − T)"},
		{Name: "time constant at the start", Symbol: "τ", Value: r.scale[0], Suffix: "s", Source: "(C_b + C_g)/UA"},
		{Name: "wait", Symbol: "t", Value: r.wait, Suffix: "s", Source: "given"},
		{Name: "temperature after the wait", Symbol: "T_w", Value: r.After.Celsius(), Suffix: "c", Source: "T_s − (T_s − T) e^(−t/τ), τ following the temperature"},
	}
}
