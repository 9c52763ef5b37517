package thermal

import (
	"math"
	"time"

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

// Heat that a volume of the line's materials takes up, J/(m³ K).
const (
	lineWallHeat = 1200 * 1000 // flexible PVC, EN 12524; polyethylene takes 2.0e6
	lineFoamHeat = 70 * 1500   // elastomeric foam, EN 12524
	lineEmits    = 0.9         // emissivity of plastics and rubber, Mechanical Engineers' Handbook
	lineWet      = 0.96        // of a film of water, from memory
)

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
	scale           relaxation
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
	if err := l.check(fn, inlet); err != nil {
		return noLineRun(), err
	}
	if err := limitFlow.Check(fn, flow.LitresPerMinute()); err != nil {
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
	r.finish(r.scale.after(r.extent/r.capacity), r.capacity)
	if err := l.Beer.freezes(fn, r.Temperature); err != nil {
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
	if err := l.check(fn, inlet); err != nil {
		return noLineRun(), err
	}
	if err := limitStanding.Check(fn, d.Hours()); err != nil {
		return noLineRun(), err
	}
	t := inlet.Celsius()
	r := l.run(t, 0)
	r.extent = d.Seconds()
	beer := l.Beer.density(t) * l.Beer.heatCapacity(t) * float64(r.HoldUp) // J/K
	theta := r.scale.after(r.extent)
	mean := 0.0
	if r.extent > 0 {
		mean = beer / r.extent
	}
	r.finish(theta, mean)
	if err := l.Beer.freezes(fn, r.Temperature); err != nil {
		return noLineRun(), err
	}
	return r, nil
}

// finish fills what follows from the share of the difference that is left, and
// the heat rate that a kelvin of warming stands for, W/K.
func (r *LineRun) finish(left, rate float64) {
	change := (r.settles - r.inlet) * (1 - left)
	r.Temperature = Celsius(r.inlet + change)
	r.Heat = unit.Power(rate * change)
}

var (
	limitInsulation = volume.Range{Name: "insulation", Min: 0, Max: 200, Suffix: "mm", Source: "foam on a beer line"}
	limitSolar      = volume.Range{Name: "absorbed share of sunshine", Min: 0, Max: 1, Source: "a share: 0.9 is 90 %"}
	limitStanding   = volume.Range{Name: "standing time", Min: 0, Max: 168, Suffix: "h", Source: "a week; beer in a line spoils long before"}
)

// check returns a [*volume.RangeError] in the name of fn if the line or the
// inlet temperature lies outside its range.
func (l *Line) check(fn string, inlet Temperature) error {
	for _, x := range [...]struct {
		limit *volume.Range
		value float64
	}{
		{&limitTubeLength, float64(l.Length)},
		{&limitBore, float64(l.Bore) * 1e3},
		{&limitTubeWall, float64(l.Wall) * 1e3},
		{&limitWallLambda, float64(l.Conductivity)},
		{&limitInsulation, float64(l.Insulation) * 1e3},
		{&limitWallLambda, float64(l.InsulationConductivity)},
		{&limitSolar, l.Solar},
		{&limitLiquid, inlet.Celsius()},
	} {
		if err := x.limit.Check(fn, x.value); err != nil {
			return err
		}
	}
	return l.Around.check(fn)
}
