package thermal

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A Keg is a keg of beer that stands in air: in the shade of a meadow, in the
// sun, in a refrigerator or in a car. [DefaultKeg] gives an ordinary one.
type Keg struct {
	Vessel  volume.Vessel
	Beer    Beer
	Fill    float64     // share of the capacity that holds beer, above 0 to 1
	From    Temperature // of the beer at the start, the same throughout
	Around  Surroundings
	Surface Surface
	Jacket  unit.Length // thickness of a foam jacket around the side, 0 for none
	UA      Conductance // measured in the shade; 0 leaves it to the model
}

// A Surface is the finish of a keg's outside.
type Surface int

// Finishes of kegs. A dull or dirty one is nearer to Painted than to Bare.
const (
	Bare    Surface = iota // clean stainless steel
	Painted                // painted, rubber or dull: radiates three to five times as much
)

// DefaultKeg returns a full keg of ordinary beer, of bare steel and without a
// jacket.
func DefaultKeg(v volume.Vessel, from Temperature, around Surroundings) Keg {
	return Keg{Vessel: v, Fill: 1, From: from, Around: around}
}

// A Warming is what a keg in air does, warming or cooling.
type Warming struct {
	Time         time.Duration
	Temperature  Temperature // of the beer after Time
	Settles      Temperature // where the beer ends if it is left for ever
	UA           Conductance // heat per kelvin between air and beer, dew included and sun left out, half-way between the temperatures
	Heat         unit.Power  // into the beer, averaged over Time; below 0 when it cools
	Dew          unit.Mass   // that condensed on the keg in Time
	DewHeatShare float64     // part of the heat that came from it, 0 to 1

	keg      Keg
	timeAsks bool // the time was asked for, not the temperature
}

// DewPerHour returns how much water drips from the keg in an hour.
func (w Warming) DewPerHour() unit.Mass {
	if w.Time <= 0 {
		return 0
	}
	return w.Dew / unit.Mass(w.Time.Hours())
}

// Reach returns how long the keg takes until its beer has the temperature to,
// warming to it or cooling.
//
//	C dT/dt = q_side + q_top + q_bottom + q_sun
//
// C is the heat capacity of beer and steel. Each face passes heat through the
// beer's own convection, the jacket, and convection, radiation and dew outside,
// at a surface temperature that balances them. The beer is one well-mixed body.
//
// Valid for the rows of [Limits]; outside them it returns a [*RangeError]. A to
// below the beer's freezing point is such an error. If the beer settles before
// it gets there, it returns [ErrNever] with the temperature where it settles.
//
// The time of a bare keg in the shade is good to 20 %, to 35 % where dew or wind
// rule, to 25 % in a refrigerator; see Band.
//
// With a measured UA the balance is C dT/dt = UA (T_sa − T), where T_sa is the
// air's temperature, or in the sun its sol-air temperature: what a surface of
// the keg's finish comes to that no heat passes.
//
// Special cases: Reach(From) takes no time. A to above From asks how long the
// keg takes to warm, one below it how long it takes to cool; both are answered.
// Where the beer settles above 40 °C the time to any temperature up to that is
// answered too, and Settles says where it would end.
//
// Source: films [1] to [4] of the package; emissivities, the gas space and the
// foot of the keg as in the working, judged.
func (k Keg) Reach(to Temperature) (Warming, error) {
	const fn = "thermal.Keg.Reach"
	if err := cmp.Or(k.check(fn), k.Beer.checkLiquid(fn, "target temperature", to)); err != nil {
		return invalidWarming(), err
	}
	m := newKegModel(k)
	settles := m.settles()
	from, target := k.From.Celsius(), to.Celsius()
	if target != from && !(math.Min(from, settles) < target && target < math.Max(from, settles)) {
		return invalidWarming(), never(fn, "settles at", target, settles)
	}
	seconds, state := m.run(math.Inf(1), target)
	w := k.warming(m, seconds, state)
	w.Temperature, w.timeAsks = to, true
	return w, nil
}

// After returns the temperature of the keg's beer after d, from 0 to 30 days.
// Model, ranges and errors are those of [Keg.Reach]; beer that would freeze or
// pass 40 °C on the way is a [*RangeError].
func (k Keg) After(d time.Duration) (Warming, error) {
	const fn = "thermal.Keg.After"
	if err := cmp.Or(k.check(fn), limitDuration.Check(fn, d.Hours())); err != nil {
		return invalidWarming(), err
	}
	m := newKegModel(k)
	seconds, state := m.run(d.Seconds(), math.NaN())
	w := k.warming(m, seconds, state)
	if err := k.Beer.checkLiquid(fn, "temperature that the beer comes to", w.Temperature); err != nil {
		return invalidWarming(), err
	}
	return w, nil
}

// check returns a [*RangeError] in the name of fn if a field lies outside its
// range.
func (k Keg) check(fn string) error {
	return cmp.Or(
		k.Around.check(fn),
		checkVessel(fn, k.Vessel),
		limitFill.Check(fn, k.Fill),
		limitJacket.Check(fn, float64(k.Jacket)),
		limitUA.Check(fn, float64(k.UA)),
		limitSurface.Check(fn, float64(k.Surface)),
		k.Beer.checkLiquid(fn, "temperature of this beer", k.From),
	)
}

func invalidWarming() Warming {
	nan := math.NaN()
	return Warming{UA: Conductance(nan), Heat: unit.Power(nan), Dew: unit.Mass(nan), DewHeatShare: nan}
}

// Course returns the temperature of the beer at n evenly spaced times from the
// start to Time, both included. It is nil for a result that came with an error,
// and panics for an n below 2.
func (w Warming) Course(n int) []Sample {
	samples := newCourse(n)
	if !w.Temperature.IsValid() {
		return nil
	}
	for i := range samples {
		at := w.Time.Seconds() * float64(i) / float64(len(samples)-1)
		samples[i].At = time.Duration(at * float64(time.Second))
	}
	newKegModel(w.keg).sample(samples)
	return samples
}

// spread returns the share by which the keg's UA may be off, and why.
func (w Warming) spread() (share float64, why string) {
	k := w.keg
	switch {
	case k.UA > 0:
		share = 0.05
		return share, "a measured UA, taken as good to " + percent(share) + "; its calibration gives its own band"
	case k.Jacket > 0:
		share, why = 0.15, "a jacket whose conductivity is a design value"
	case k.Around.Wind > 0:
		share, why = 0.35, "moving air that was not measured at the keg"
	case w.DewHeatShare > 0.05:
		share, why = 0.35, "a keg wet with dew"
	case w.Heat < 0:
		share = 0.25
		return share, "a keg cooling in air, ±" + percent(share) + "; half a kelvin of air temperature counts as much again near the end"
	default:
		share, why = 0.20, "a dry keg in still air: correlations, emissivity and build"
	}
	return share, why + ", ±" + percent(share)
}

// Band returns how far the answer may be off: of the time for [Keg.Reach], of
// the temperature for [Keg.After]. The correlations' scatter is carried to the
// answer by making all heat flows larger or smaller together.
func (w Warming) Band() volume.Band {
	b, why := w.spread()
	if w.timeAsks {
		h := w.Time.Hours()
		return volume.Band{Name: "time", Low: h / (1 + b), High: h / (1 - b), Suffix: "h", Source: why}
	}
	// With all heat b larger the beer is where it would else be b later.
	m := newKegModel(w.keg)
	_, slow := m.run(w.Time.Seconds()*(1-b), math.NaN())
	_, fast := m.run(w.Time.Seconds()*(1+b), math.NaN())
	return volume.Band{
		Name: "temperature", Low: math.Min(slow.t, fast.t), High: math.Max(slow.t, fast.t), Suffix: "c", Source: why,
	}
}

// Steps returns the working: the heat balance at the temperature half-way, from
// which the time follows as C ΔT over the mean heat.
func (w Warming) Steps() []volume.Step {
	k, m := w.keg, newKegModel(w.keg)
	middle := (k.From.Celsius() + w.Temperature.Celsius()) / 2
	steps := []volume.Step{
		{Name: "heat capacity of beer and steel", Symbol: "C", Value: m.capacity, Suffix: "j_per_k", Source: fmt.Sprintf("ρ V c + m_steel %g J/(kg K)", steelHeat)},
		{Name: "beer at the start", Symbol: "T0", Value: k.From.Celsius(), Suffix: "c", Source: "given"},
		{Name: "air", Symbol: "Ta", Value: k.Around.Air.Celsius(), Suffix: "c", Source: "given"},
		{Name: "beer half-way", Symbol: "Tm", Value: middle, Suffix: "c", Source: "(T0 + T1)/2"},
	}
	names := [...]string{"wetted side", "side above the beer", "top", "bottom"}
	if m.ua == 0 {
		for i := range m.parts {
			p := &m.parts[i]
			if p.area == 0 {
				continue
			}
			q, dew := p.heat(m.beer, m.densest, middle)
			steps = append(steps,
				volume.Step{Name: names[i] + ", area", Symbol: "A", Value: p.area, Suffix: "m2", Source: "vessel, as a cylinder as wide as it; ends dished"},
				volume.Step{Name: names[i] + ", heat half-way", Symbol: "q", Value: q, Suffix: "w", Source: "convection (Churchill & Chu, McAdams) in series, radiation, dew, sun"},
				volume.Step{Name: names[i] + ", of it dew", Symbol: "q_dew", Value: dew, Suffix: "w", Source: "h_c/(c_p Le^⅔) (w_a − w_s) h_fg"},
			)
		}
	}
	how := "q/(Ta − Tm)"
	if m.ua > 0 {
		how = "measured"
		steps = append(steps, volume.Step{Name: "air and sun as one temperature", Symbol: "Tsa", Value: m.solAir, Suffix: "c", Source: "sol-air temperature, mean of the faces by area; Ta in shade"})
	}
	return append(steps,
		volume.Step{Name: "conductance half-way, without sun", Symbol: "UA", Value: float64(w.UA), Suffix: "w_per_k", Source: how},
		volume.Step{Name: "mean heat", Symbol: "Q", Value: float64(w.Heat), Suffix: "w", Source: "C (T1 − T0)/t"},
		volume.Step{Name: "time", Symbol: "t", Value: w.Time.Seconds(), Suffix: "s", Source: "∫ C dT/q(T)"},
		volume.Step{Name: "beer at the end", Symbol: "T1", Value: w.Temperature.Celsius(), Suffix: "c", Source: "∫ q dt/C"},
		volume.Step{Name: "settles at", Symbol: "T∞", Value: w.Settles.Celsius(), Suffix: "c", Source: "q(T∞) = 0"},
	)
}
