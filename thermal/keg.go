package thermal

import (
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
	if err := k.check(fn); err != nil {
		return invalidWarming(), err
	}
	if err := k.Beer.checkLiquid(fn, "target temperature", to); err != nil {
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
	if err := k.check(fn); err != nil {
		return invalidWarming(), err
	}
	if err := limitDuration.Check(fn, d.Hours()); err != nil {
		return invalidWarming(), err
	}
	m := newKegModel(k)
	seconds, state := m.run(d.Seconds(), math.NaN())
	w := k.warming(m, seconds, state)
	if err := k.Beer.checkLiquid(fn, "beer temperature reached", w.Temperature); err != nil {
		return invalidWarming(), err
	}
	return w, nil
}

// Course returns the temperature of the beer at n evenly spaced times from the
// start to Time, both included; n is at least 2. It panics for a Warming that
// came with an error.
func (w Warming) Course(n int) []Sample {
	samples := make([]Sample, max(n, 2))
	for i := range samples {
		at := w.Time.Seconds() * float64(i) / float64(len(samples)-1)
		samples[i].At = time.Duration(at * float64(time.Second))
	}
	newKegModel(w.keg).sample(samples)
	return samples
}

// A Sample is one moment of a time course.
type Sample struct {
	At    time.Duration
	Beer  Temperature // as it is drawn, from the bottom
	Upper Temperature // at the top of the beer
	Bath  Temperature // of the water around; invalid where there is none
	Ice   unit.Mass   // left
	Left  unit.Volume // of beer in each keg
}

func invalidWarming() Warming {
	nan := math.NaN()
	return Warming{UA: Conductance(nan), Heat: unit.Power(nan), Dew: unit.Mass(nan), DewHeatShare: nan}
}

// warming gathers the answer after a run.
func (k Keg) warming(m *kegModel, seconds float64, s kegState) Warming {
	heat := m.capacity * (s.t - k.From.Celsius())
	w := Warming{
		Time:        time.Duration(seconds * float64(time.Second)),
		Temperature: Celsius(s.t),
		Settles:     Celsius(m.settles()),
		UA:          m.conductance((k.From.Celsius() + s.t) / 2),
		Heat:        unit.Power(heat / seconds),
		Dew:         unit.Mass(s.dew / m.latent),
		keg:         k,
	}
	if heat > 0 {
		w.DewHeatShare = math.Min(s.dew/heat, 1)
	}
	if seconds == 0 {
		q, dew := m.heat(s.t)
		w.Heat = unit.Power(q)
		if q > 0 {
			w.DewHeatShare = math.Min(dew/q, 1)
		}
	}
	return w
}
