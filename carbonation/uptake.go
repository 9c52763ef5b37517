package carbonation

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Uptake is a still keg on its way to an [Equilibrium]: the answer of
// [Equilibrium.After] and [Equilibrium.Reach]. It is an estimate: moving,
// shaking or a carbonating stone make it minutes instead of days.
type Uptake struct {
	Time    time.Duration
	Content Content // after that time, averaged over the keg
	Way     float64 // share of the way from the beginning to the equilibrium, 0 to 1
	Losing  bool    // the beer holds more than the equilibrium, and loses by diffusion alone

	end         Equilibrium
	from        Content
	depth       unit.Length
	diffusivity float64
	viscosity   float64
	transfer    float64 // m/s at the beginning; 0 when losing
}

// After returns what a still keg of beer, from wall to wall depth deep, holds
// after some time under the pressure and at the temperature of e, when it held
// from at first.
//
//	taking up:  Δ/Δ0 = (1 + k0 t / 3h)^−3,  k0 = 0.15 (g Δρ/(μ D))^(1/3) D
//	losing:     diffusion into a layer closed below, no convection
//
// Beer that takes up CO2 grows denser at the top and sinks; beer that loses it
// grows lighter at the top and stays, so that loss is far slower.
//
// Valid to 40 °C, the range of the viscosity, for depths from 0.02 m to 2 m and
// to 1000 days. Outside it, or for an invalid argument, After returns a
// [*RangeError] and an Uptake of NaN.
//
// Source: [10] for the transfer, [8] for diffusion. No measurement of a keg was
// found; common practice, no source, says one to two weeks.
func (e Equilibrium) After(from Content, depth unit.Length, elapsed time.Duration) (Uptake, error) {
	const fn = "carbonation.Equilibrium.After"
	u, err := e.uptake(fn, from, depth)
	if err != nil {
		return noUptake(), err
	}
	if err := limitTime.Check(fn, elapsed.Hours()/24); err != nil {
		return noUptake(), err
	}
	return u.at(elapsed.Seconds()), nil
}

// Reach returns how long the keg of [Equilibrium.After] takes for a share of
// the way from what it held at first to the equilibrium: 0.9 for nine tenths.
//
// Valid as After, for shares from 0 to 0.999. For the whole way the error wraps
// [volume.ErrNever]: the end is approached, not reached. So does an answer
// beyond 1000 days.
func (e Equilibrium) Reach(from Content, depth unit.Length, share float64) (Uptake, error) {
	const fn = "carbonation.Equilibrium.Reach"
	u, err := e.uptake(fn, from, depth)
	if err != nil {
		return noUptake(), err
	}
	if share == 1 {
		return noUptake(), &NeverError{
			Func: fn, Why: say("the content approaches {%v volumes} and does not arrive", e.Content.Volumes()),
			Key: "co2_volumes", Settles: e.Content.Volumes(), Asked: e.Content.Volumes(),
		}
	}
	if err := limitReach.Check(fn, share); err != nil {
		return noUptake(), err
	}
	seconds := u.time(share, u.transfer)
	if !(seconds <= limitTime.Max*86400) {
		how := "by its own currents"
		if u.Losing {
			how = "by diffusion"
		}
		return noUptake(), &volume.NeverError{Func: fn, Why: say("a still layer {%v m} deep needs %.3g years %s", float64(depth), seconds/(365.25*86400), how)}
	}
	return u.at(seconds), nil
}

func (e Equilibrium) uptake(fn string, from Content, depth unit.Length) (Uptake, error) {
	err := cmp.Or(limitContent.Check(fn, from.Volumes()), limitDepth.Check(fn, float64(depth)), limitStill.Check(fn, e.Temperature.Celsius()))
	if err != nil {
		return Uptake{}, err
	}
	viscosity, err := e.beer.Viscosity(e.Temperature)
	if err != nil {
		return Uptake{}, err
	}
	u := Uptake{end: e, from: from, depth: depth, viscosity: float64(viscosity), diffusivity: co2Diffusivity(e.law.kelvin)}
	over := e.Content.gramsPerLitre - from.gramsPerLitre
	if u.Losing = over < 0; !u.Losing {
		u.transfer = sinking(over, u.viscosity, u.diffusivity, likelySherwood)
	}
	return u, nil
}

// at returns u after so many seconds.
func (u Uptake) at(seconds float64) Uptake {
	u.Time = time.Duration(math.Round(seconds * float64(time.Second)))
	u.Way = u.way(seconds, u.transfer)
	u.Content = Content{u.contentAt(u.Way), true}
	return u
}

func (u Uptake) contentAt(way float64) float64 {
	return u.from.gramsPerLitre + way*(u.end.Content.gramsPerLitre-u.from.gramsPerLitre)
}

func (u Uptake) way(seconds, transfer float64) float64 {
	h := float64(u.depth)
	if u.Losing {
		return slabUptake(u.diffusivity * seconds / (h * h))
	}
	return 1 - convected(transfer, h, seconds)
}

func (u Uptake) time(way, transfer float64) float64 {
	h := float64(u.depth)
	switch {
	case way == 0 || u.from == u.end.Content:
		return 0
	case u.Losing:
		return slabTime(way) * h * h / u.diffusivity
	default:
		return convectedTime(transfer, h, 1-way)
	}
}

// Steps returns the working: enough to redo the sum by hand.
func (u Uptake) Steps() []volume.Step {
	steps := u.end.Steps()
	steps = append(steps,
		volume.Step{Name: "content at first", Symbol: "c0", Value: u.from.GramsPerLitre(), Suffix: "g_per_l", Source: "given"},
		volume.Step{Name: "depth of the beer", Symbol: "h", Value: float64(u.depth), Suffix: "m", Source: "given"},
		volume.Step{Name: "diffusivity of CO2", Symbol: "D", Value: u.diffusivity, Suffix: "m2_per_s", Source: "5.019e-6 exp(−19510/R T), Jähne 1987, in water"},
	)
	if !u.Losing {
		steps = append(steps,
			volume.Step{Name: "viscosity", Symbol: "μ", Value: u.viscosity, Suffix: "pa_s", Source: "thermal.Beer.Viscosity"},
			volume.Step{Name: "transfer at first", Symbol: "k0", Value: u.transfer, Suffix: "m_per_s", Source: "0.15 (g Δρ/(μ D))^(1/3) D, Δρ = 0.25 (c − c0)"},
		)
	}
	return append(steps,
		volume.Step{Name: "time", Symbol: "t", Value: u.Time.Seconds(), Suffix: "s", Source: "given, or from the share of the way"},
		volume.Step{Name: "share of the way", Symbol: "w", Value: u.Way, Source: u.wayLaw()},
		volume.Step{Name: "content then", Symbol: "c_t", Value: u.Content.GramsPerLitre(), Suffix: "g_per_l", Source: "c0 + w (c − c0)"},
	)
}

func (u Uptake) wayLaw() string {
	if u.Losing {
		return "diffusion, τ = D t/h², Crank eqs. 4.18 and 4.20"
	}
	return "1 − (1 + k0 t/3h)^−3"
}

// Band returns the interval of the time: for uptake that of a coefficient from
// 0.10 to 0.20, for loss a factor of 3 to shorter times, since any movement of
// the keg mixes it.
func (u Uptake) Band() volume.Band {
	t := u.Time.Seconds()
	b := volume.Band{
		Name: "time", Suffix: "s", Low: t * likelySherwood / fastSherwood, High: t * likelySherwood / slowSherwood,
		Source: "estimate: transfer coefficient 0.10 to 0.20; movement shortens it without limit",
	}
	if u.Losing {
		b.Low, b.High = t/3, t
		b.Source = "estimate: diffusion alone is the slowest case, any movement shortens it"
	}
	return b
}

func noUptake() Uptake { return Uptake{Way: math.NaN()} }

// Cautions says what can hurt someone: a high pressure on the keg.
func (u Uptake) Cautions() []volume.Remark { return HighPressure(u.end.Gauge) }

// Notes says what the answer rests on.
func (u Uptake) Notes() []volume.Remark {
	slow := note(AtRest, "The content does not follow the regulator during an afternoon: pressure moves the beer now and carbonates it next week.")
	if u.Losing {
		return []volume.Remark{slow, note(Estimate, "The beer loses CO2 by diffusion alone: what is lost at the top stays at the top. Moving the keg is faster, without limit.")}
	}
	return []volume.Remark{slow, note(Estimate, "Estimate: free convection, no measurement of a keg found. Common practice, no source: one to two weeks at rest, minutes by shaking or a stone.")}
}
