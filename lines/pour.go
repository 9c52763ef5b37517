package lines

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/pipe"
	"gonum.org/v1/gonum/unit"
)

// A Pour is a run at work: a flow, the pressure that drives it, and where the
// pressure goes.
type Pour struct {
	Flow   Flow              // at the tap, of liquid
	Gauge  carbonation.Gauge // applied to the beer in the keg
	Length unit.Length       // of the tube [Run.Length] solved for, 0 otherwise
	Static unit.Pressure     // taken by the rise at the run's fullness; negative if the tap is lower
	Loss   unit.Pressure     // friction, fittings and hardware together

	answer  answer
	solved  int // index of the tube whose length was asked for
	circuit circuit
	factor  [maxTubes]float64 // friction factor of each tube
}

// answer says which of a pour's numbers was asked for.
type answer uint8

const (
	answerFlow answer = iota
	answerGauge
	answerLength
)

var invalidPour = Pour{Flow: Flow(nan), Length: unit.Length(nan), Static: unit.Pressure(nan), Loss: unit.Pressure(nan)}

// pour is the result of the circuit at flow q under the applied pressure.
func (c *circuit) pour(a answer, q, applied float64) Pour {
	p := Pour{
		Flow: Flow(q), Gauge: carbonation.PaG(applied),
		Static: unit.Pressure(c.lift), answer: a, circuit: *c,
	}
	if q == 0 {
		return p // nothing flows and nothing is lost
	}
	sum := c.fittings + c.hardware
	for i := range c.n {
		p.factor[i] = c.tubes[i].friction(q)
		sum += c.tubes[i].loss * p.factor[i]
	}
	p.Loss = unit.Pressure(sum * q * q)
	return p
}

// TimeFor returns how long the pour takes to deliver v of liquid; a glass with
// a head holds less liquid than its brim.
func (p Pour) TimeFor(v unit.Volume) time.Duration { return p.Flow.TimeFor(v) }

// Fittings returns the part of the loss in the fittings.
func (p Pour) Fittings() unit.Pressure {
	return unit.Pressure(p.circuit.fittings * float64(p.Flow*p.Flow))
}

// Hardware returns the part of the loss in coupler, shank and tap.
func (p Pour) Hardware() unit.Pressure {
	return unit.Pressure(p.circuit.hardware * float64(p.Flow*p.Flow))
}

// A TubeFlow is the flow through one tube of a run.
type TubeFlow struct {
	Tube     Tube
	Speed    float64       // mean, m/s
	Reynolds float64       // ρ V d / μ
	Critical float64       // Reynolds number below which the flow is laminar
	Friction float64       // Darcy friction factor, before the calibration factor; 0 where nothing flows
	Loss     unit.Pressure // friction, with the calibration factor
	Regime   string        // "laminar", "transition" or "turbulent"
}

// Tubes returns the flow through each tube, from the keg on, the dip tube
// first if there is one.
func (p Pour) Tubes() []TubeFlow {
	out := make([]TubeFlow, p.circuit.n)
	for i := range out {
		out[i] = p.tube(i)
	}
	return out
}

func (p *Pour) tube(i int) TubeFlow {
	s := &p.circuit.tubes[i]
	q := float64(p.Flow)
	t := TubeFlow{
		Tube:     s.tube,
		Speed:    q / (math.Pi / 4 * float64(s.tube.Bore*s.tube.Bore)),
		Reynolds: s.reynolds * q,
		Critical: pipe.TransitionLow,
		Friction: p.factor[i],
	}
	t.Loss = unit.Pressure(s.loss * t.Friction * q * q)
	highest := float64(pipe.TransitionHigh)
	if s.curvature > 0 {
		t.Critical = pipe.CriticalIto(s.curvature)
		highest = t.Critical
	}
	switch {
	case t.Reynolds < t.Critical:
		t.Regime = "laminar"
	case t.Reynolds <= highest:
		t.Regime = "transition"
	default:
		t.Regime = "turbulent"
	}
	return t
}

// Steps returns the working: the liquid, the rise, the loss of each tube with
// what it follows from, and the sum.
func (p Pour) Steps() []Step {
	c := &p.circuit
	steps := []Step{
		{Name: "density of the beer", Symbol: "ρ", Value: c.density, Suffix: "kg_per_m3", Source: "OIML R 22 and the gravity (thermal.Beer)"},
		{Name: "viscosity of the beer", Symbol: "μ", Value: c.viscosity, Suffix: "pa_s", Source: "water, ethanol and extract (thermal.Beer)"},
		{Name: "pressure of the rise", Symbol: "ρ g h", Value: c.lift, Suffix: "pa", Source: "hydrostatics, g = 9.80665 m/s²"},
	}
	if c.calibration != 1 {
		steps = append(steps, Step{Name: "calibration factor", Symbol: "c", Value: c.calibration, Source: "given"})
	}
	for i, t := range p.Tubes() {
		n := fmt.Sprint(i + 1)
		law := "Churchill 1977"
		if t.Tube.Coil != 0 {
			law = "White 1929, Ito 1959, Churchill 1977: the largest"
		}
		if t.Regime == "transition" {
			law += "; transition, see the band"
		}
		steps = append(steps,
			step("bore of tube "+n, "d"+n, float64(t.Tube.Bore), "m", "given"),
			step("length of tube "+n, "L"+n, float64(t.Tube.Length), "m", lengthSource(p.answer, p.solved == i)),
			step("speed in tube "+n, "V"+n, t.Speed, "m_per_s", "Q / (π d²/4)"),
			step("Reynolds number of tube "+n, "Re"+n, t.Reynolds, "", "ρ V d / μ"),
			step("friction factor of tube "+n, "f"+n, t.Friction, "", law),
			step("friction of tube "+n, "Δp"+n, float64(t.Loss), "pa", "c f (L/d) ρ V²/2"))
	}
	steps = append(steps,
		step("fittings", "Δp_K", float64(p.Fittings()), "pa", "Σ K ρ V²/2"),
		step("coupler, shank and tap", "Δp_hw", float64(p.Hardware()), "pa", "loss at the stated flow × (Q/Q_hw)²"),
		step("all losses", "Δp", float64(p.Loss), "pa", "sum"),
		step("applied pressure, gauge", "p", p.Gauge.Pascals(), "pa", "ρ g h + Δp"),
		step("flow", "Q", float64(p.Flow), "m3_per_s", "at which p is used up"))
	return steps
}

func lengthSource(a answer, solved bool) string {
	if a == answerLength && solved {
		return "what the applied pressure leaves, over the loss per metre"
	}
	return "given"
}
