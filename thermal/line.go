package thermal

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/pipe"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Line is a beer line in air, bare or in foam. [DefaultLine] has usual
// values.
type Line struct {
	Length                 unit.Length
	Bore                   unit.Length  // inside diameter of the tube
	Wall                   unit.Length  // thickness of the tube
	Conductivity           Conductivity // of the tube
	Insulation             unit.Length  // thickness of foam around it, 0 for none
	InsulationConductivity Conductivity
	Solar                  float64 // share of sunshine that the outside absorbs
	Around                 Surroundings
	Beer                   Beer
}

// DefaultLine returns 3 m of bare vinyl line, 3/16 in inside and 7/16 in
// outside, whose outside absorbs 90 % of sunshine, as dark tubes and foam do.
// The foam, if any is put on, conducts 0.040 W/(m K).
//
// Sources: vinyl EN 12524; foam as sold, from memory (EN 12524 designs with
// 0.050).
func DefaultLine(around Surroundings) Line {
	return Line{
		Length: 3, Bore: 3.0 / 16 * volume.Inch, Wall: volume.Inch / 8, Conductivity: 0.14,
		InsulationConductivity: 0.040, Solar: 0.9, Around: around,
	}
}

// A LineRun is what a line does to beer that flows or stands in it.
type LineRun struct {
	Temperature    Temperature   // of the beer at the end of the line, or after standing
	Settles        Temperature   // that standing beer comes to at last: of the air, or above it in the sun
	UA             Conductance   // of the whole line, at the inlet temperature, dew included
	Heat           unit.Power    // into the beer: at the flow, or averaged over the time it stood
	TimeConstant   time.Duration // in which standing beer comes 63 % of the way
	HoldUp         unit.Volume   // beer in the line
	CriticalRadius unit.Length   // of the outer layer: below it, more of that layer lets in more heat

	line            Line
	inlet, settles  float64 // °C
	inside, outside float64 // resistances at the inlet, inside of the outer surface and beyond it, K m/W
	nusselt         float64 // 0 where the beer stands
	capacity        float64 // ṁc in W/K, or ΣC′φ² in J/(m K)
	extent          float64 // length in m, or time in s
	flows           bool
	dewShare        float64
	scale           heat.Relaxation
}

// Carry returns how a steady flow of beer that enters at inlet leaves the line.
//
//	ṁ c dT/dx = U′ (T_s − T)
//	1/U′ = 1/(h π d) + ln(d_o/d)/(2π k) + ln(D/d_o)/(2π k_foam) + 1/(h_o π D)
//
// T_s is the temperature that the line would settle at: the air's, or above it
// in the sun. h_o is natural convection or wind, radiation and dew on a lying
// cylinder, so U′ changes along the line with the beer's temperature.
//
// Valid for the rows of [Limits]; expect U′ within ±15 %. Outside the range
// Carry returns a [*RangeError] and NaN, and where the beer would freeze an
// error that wraps [volume.ErrNoSolution].
//
// Sources: [pipe.NusseltStraight] inside; outside films [1] to [4] of the
// package.
func (l Line) Carry(inlet Temperature, flow Flow) (LineRun, error) {
	const fn = "thermal.Line.Carry"
	if err := cmp.Or(l.check(fn, inlet), limitFlow.Check(fn, flow.LitresPerMinute())); err != nil {
		return noLineRun(), err
	}
	t := inlet.Celsius()
	density, specific := l.Beer.density(t), l.Beer.heatCapacity(t)
	mu, k := l.Beer.viscosity(t), l.Beer.conductivity(t)
	bore := float64(l.Bore)
	re := 4 * density * float64(flow) / (math.Pi * bore * mu)
	nu := pipe.NusseltStraight(re, mu*specific/k, bore/float64(l.Length))
	r := l.run(t, 1/(math.Pi*nu*k)) // h π d = Nu k π
	r.nusselt, r.flows = nu, true
	r.capacity, r.extent = density*float64(flow)*specific, float64(l.Length)
	r.finish(r.scale.After(r.extent/r.capacity), r.capacity)
	if err := r.check(fn); err != nil {
		return noLineRun(), err
	}
	return r, nil
}

// Stand returns how warm beer gets that stands in the line for a while. Wall
// and foam take part with their own heat:
//
//	τ = R′ Σ ∫ φ² dC′
//
// where R′ is the whole resistance of a metre of line, and φ the share of it
// that lies outside a point, 1 for the beer. This is within 1 % of the solution
// of the radial equation; counting the heat of the wall in full and of the foam
// is up to half too long under thick foam.
//
// Valid and banded as [Line.Carry], for 0 to 7 days.
func (l Line) Stand(inlet Temperature, d time.Duration) (LineRun, error) {
	const fn = "thermal.Line.Stand"
	if err := cmp.Or(l.check(fn, inlet), limitStanding.Check(fn, d.Hours())); err != nil {
		return noLineRun(), err
	}
	t := inlet.Celsius()
	r := l.run(t, 0)
	r.extent = d.Seconds()
	beer := l.Beer.density(t) * l.Beer.heatCapacity(t) * float64(r.HoldUp) // J/K
	theta := r.scale.After(r.extent)
	mean := 0.0
	if r.extent > 0 {
		mean = beer / r.extent
	}
	r.finish(theta, mean)
	if err := r.check(fn); err != nil {
		return noLineRun(), err
	}
	return r, nil
}

// check returns a [*volume.RangeError] in the name of fn if the line or the
// inlet temperature lies outside its range.
func (l *Line) check(fn string, inlet Temperature) error {
	return cmp.Or(
		limitTubeLength.Check(fn, float64(l.Length)),
		limitBore.Check(fn, float64(l.Bore)*1e3),
		limitTubeWall.Check(fn, float64(l.Wall)*1e3),
		limitWallLambda.Check(fn, float64(l.Conductivity)),
		limitInsulation.Check(fn, float64(l.Insulation)*1e3),
		limitWallLambda.Check(fn, float64(l.InsulationConductivity)),
		limitSolar.Check(fn, l.Solar),
		limitLiquid.Check(fn, inlet.Celsius()),
		l.Around.check(fn),
	)
}

// check returns an error in the name of fn if the answer is not finite or the
// beer would freeze.
func (r *LineRun) check(fn string) error {
	return cmp.Or(
		finite(fn, r.Temperature.Celsius(), r.settles, float64(r.UA), float64(r.Heat), float64(r.CriticalRadius), r.TimeConstant.Seconds()),
		r.line.Beer.freezes(fn, r.Temperature),
	)
}

// noLineRun is what a calculation of a line returns beside an error.
func noLineRun() LineRun {
	n := math.NaN()
	return LineRun{UA: Conductance(n), Heat: unit.Power(n), HoldUp: unit.Volume(n), CriticalRadius: unit.Length(n)}
}

// Course returns the temperature of the standing beer at n evenly spaced times
// from the start to the end, both included. It is nil for flowing beer and for a
// result that came with an error, and panics for an n below 2.
func (r LineRun) Course(n int) []Sample {
	samples := newCourse(n)
	if r.flows || !r.Temperature.IsValid() {
		return nil
	}
	return fill(samples, r.extent, func(s float64) float64 {
		return r.settles - (r.settles-r.inlet)*r.scale.After(s)
	})
}

// lineBand is the uncertainty of a line's conductance and of its time constant.
// Source: bands of the outside films where the weather is known, combined.
const lineBand = 0.15

// Band returns the interval of the temperature, in °C, that ±15 % of the line's
// conductance spans.
func (r LineRun) Band() volume.Band {
	at := func(f float64) float64 {
		s := r.extent * f
		if r.flows {
			s /= r.capacity
		}
		return r.inlet + (r.settles-r.inlet)*(1-r.scale.After(s))
	}
	a, b := at(1-lineBand), at(1+lineBand)
	return volume.Band{Name: "temperature", Low: math.Min(a, b), High: math.Max(a, b), Suffix: "c", Source: "conductance of the line ±" + percent(lineBand)}
}

// Steps returns the working, from the resistances to the temperature.
func (r LineRun) Steps() []volume.Step {
	steps := []volume.Step{
		{Name: "length", Symbol: "L", Value: float64(r.line.Length), Suffix: "m", Source: "given"},
		{Name: "bore", Symbol: "d", Value: float64(r.line.Bore), Suffix: "m", Source: "given"},
		{Name: "outside of the tube", Symbol: "d_o", Value: float64(r.line.Bore + 2*r.line.Wall), Suffix: "m", Source: "bore and twice the wall"},
		{Name: "outside of the foam", Symbol: "D", Value: float64(r.line.Bore + 2*r.line.Wall + 2*r.line.Insulation), Suffix: "m", Source: "and twice the insulation"},
		{Name: "inlet", Symbol: "T_in", Value: r.inlet, Suffix: "c", Source: "given"},
		{Name: "settling temperature", Symbol: "T_s", Value: r.settles, Suffix: "c", Source: "the outside takes up no heat: air, or above it in the sun"},
	}
	if r.flows {
		steps = append(steps, volume.Step{Name: "Nusselt number inside", Symbol: "Nu", Value: r.nusselt, Source: "Hausen or Gnielinski, straight tube"})
	}
	steps = append(steps,
		volume.Step{Name: "resistance up to the outer surface", Symbol: "R_i", Value: r.inside, Suffix: "k_m_per_w", Source: "film inside where it flows, ln(d_o/d)/(2π k) of tube and foam"},
		volume.Step{Name: "resistance beyond it", Symbol: "R_o", Value: r.outside, Suffix: "k_m_per_w", Source: "convection, radiation and dew, at the inlet temperature"},
		volume.Step{Name: "share of the heat that dew brings", Symbol: "q_dew/q", Value: r.dewShare, Source: "heat and mass transfer analogy"},
		volume.Step{Name: "conductance of the line", Symbol: "UA", Value: float64(r.UA), Suffix: "w_per_k", Source: "L/(R_i + R_o)"},
	)
	if r.flows {
		steps = append(steps,
			volume.Step{Name: "capacity rate of the flow", Symbol: "ṁc", Value: r.capacity, Suffix: "w_per_k", Source: "density × flow × specific heat of the beer"},
			volume.Step{Name: "temperature at the end", Symbol: "T", Value: r.Temperature.Celsius(), Suffix: "c", Source: "T_s + (T_in − T_s) e^(−UA/ṁc), UA following the temperature"})
	} else {
		steps = append(steps,
			volume.Step{Name: "heat capacity that takes part", Symbol: "C′", Value: r.capacity, Suffix: "j_per_m_k", Source: "∫ φ² dC′ of beer, wall and foam"},
			volume.Step{Name: "time constant", Symbol: "τ", Value: r.TimeConstant.Seconds(), Suffix: "s", Source: "(R_i + R_o) C′, R_o following the temperature"},
			volume.Step{Name: "time", Symbol: "t", Value: r.extent, Suffix: "s", Source: "given"},
			volume.Step{Name: "temperature after it", Symbol: "T", Value: r.Temperature.Celsius(), Suffix: "c", Source: "T_s + (T_in − T_s) e^(−t/τ), τ following the temperature"})
	}
	return append(steps, volume.Step{Name: "critical radius of the outer layer", Symbol: "r_c", Value: float64(r.CriticalRadius), Suffix: "m", Source: "k/h_o"})
}
