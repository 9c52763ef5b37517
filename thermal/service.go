package thermal

import (
	"cmp"
	"math"
	"time"

	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Pours are glasses drawn one after another through a coil or a plate.
// [DefaultPours] has usual ones.
type Pours struct {
	Glass  unit.Volume   // of beer in each
	Flow   Flow          // while the tap is open
	Every  time.Duration // from the start of one glass to the start of the next
	Number int           // how many, one after another, from a rested chiller
}

// DefaultPours returns ten glasses of 16 US fluid ounces at 2 fl oz per
// second, one every two minutes.
func DefaultPours() Pours {
	return Pours{
		Glass: 16 * volume.USFluidOunce, Flow: Flow(2 * volume.USFluidOunce),
		Every: 2 * time.Minute, Number: 10,
	}
}

// check returns a [*volume.RangeError] in the name of fn if the pours lie
// outside their ranges.
func (p Pours) check(fn string) error {
	if err := cmp.Or(
		limitGlassVolume.Check(fn, float64(p.Glass)*1e3),
		limitFlow.Check(fn, p.Flow.LitresPerMinute()),
		limitNumber.Check(fn, float64(p.Number)),
	); err != nil {
		return err
	}
	every := limitEvery
	if fill := float64(p.Glass) / float64(p.Flow); p.pause() < 0 {
		every.Min, every.Source = fill, string(say("a glass takes {%.3g s} to fill at this flow", fill))
	}
	return every.Check(fn, p.Every.Seconds())
}

// pause returns the rest between two glasses, s. A microsecond's shortfall is
// rounding: Every holds whole nanoseconds.
func (p Pours) pause() float64 {
	pause := p.Every.Seconds() - float64(p.Glass)/float64(p.Flow)
	if -1e-6 < pause && pause < 0 {
		return 0
	}
	return pause
}

// Service is what a coil or a plate does to pours.
type Service struct {
	First       Temperature   // mean of the first glass
	Last        Temperature   // mean of glass Number
	Settled     Temperature   // mean of every glass once the row is long
	Sustained   Temperature   // of beer that runs without a pause: the last drop of a long pour
	IcePerGlass unit.Mass     // melted for each glass of a long row, apart from what the box itself melts
	IcePerLitre unit.Mass     // the same for each litre
	IcePerHour  unit.Mass     // the same in an hour of such glasses
	Recovery    time.Duration // rest after a long pour until the chiller is within 1 K of its first glass

	row     row
	risk    coilRisk // of a coil
	low     float64  // end of the band of the last glass, °C
	high    float64
	because string  // where the band comes from
	pause   float64 // s
	tau     float64 // time constant at rest, s
	chilled float64 // K above the cold end with which a drop that never rested leaves
}

// A row gives the temperature of the n-th glass. Through a coil, the share once
// of the drops of a glass has rested whole+1 times and the others whole times;
// through a plate the first glass decays to the settled one.
type row struct {
	cold, warm float64 // °C at full rest, K above it without rest
	rested     float64 // factor of one pause
	whole      float64 // glasses that the coil holds, whole ones
	once       float64 // part of a glass that it holds beyond them
	plate      bool    // glass n is at cold + warm (1 − rested^(n−1)) instead
}

func (r *row) at(n float64) float64 {
	if r.plate {
		return r.cold + r.warm*(1-math.Pow(r.rested, n-1))
	}
	var mean float64
	if n > r.whole {
		mean = (1 - r.once) * r.warm * math.Pow(r.rested, r.whole)
	}
	if n > r.whole+1 {
		mean += r.once * r.warm * math.Pow(r.rested, r.whole+1)
	}
	return r.cold + mean
}

// Glass returns the mean temperature of glass n, counted from 1, or the
// invalid zero value for an n below 1.
func (s Service) Glass(n int) Temperature {
	if n < 1 || !s.First.IsValid() {
		return Temperature{}
	}
	return Celsius(s.row.at(float64(n)))
}

// settle fills the temperatures of the glasses from the row.
func (s *Service) settle(number int) {
	s.First = Celsius(s.row.at(1))
	s.Last = Celsius(s.row.at(float64(number)))
	s.Settled = Celsius(s.row.at(math.Inf(1)))
}

// melt fills the ice of a long row from the heat in W that a glass gives up
// while it fills.
func (s *Service) melt(p Pours, heat float64) {
	fill := float64(p.Glass) / float64(p.Flow)
	s.IcePerGlass = unit.Mass(math.Max(0, heat) * fill / water.LatentHeat) // beer colder than the ice melts none
	s.IcePerLitre = s.IcePerGlass / unit.Mass(p.Glass/volume.Litre)
	s.IcePerHour = s.IcePerGlass * unit.Mass(3600/(fill+s.pause))
}

// recovery returns how long a difference of theta K takes to fall to 1 K with
// the time constant tau, s.
func recovery(theta, tau float64) time.Duration {
	theta = math.Abs(theta)
	if theta <= 1 {
		return 0
	}
	return seconds(tau * math.Log(theta))
}

// noService is what Serve returns beside an error.
func noService() Service {
	n := unit.Mass(math.NaN())
	return Service{IcePerGlass: n, IcePerLitre: n, IcePerHour: n}
}

// Band returns the interval of the last glass, in °C.
func (s Service) Band() volume.Band {
	return volume.Band{Name: "last glass", Low: s.low, High: s.high, Suffix: "c", Source: s.because}
}

// Steps returns the working of the service.
func (s Service) Steps() []volume.Step {
	r := &s.row
	steps := []volume.Step{
		{Name: "rest between two glasses", Symbol: "t", Value: s.pause, Suffix: "s", Source: "interval less the time of a pour"},
		{Name: "time constant at rest", Symbol: "τ", Value: s.tau, Suffix: "s", Source: "heat capacity over conductance"},
	}
	if r.plate {
		return append(steps,
			volume.Step{Name: "factor of a pour and a rest", Symbol: "x", Value: r.rested, Source: "e^(−t_p (G + ṁc ε)/C − t/τ), t_p the time of a pour"},
			volume.Step{Name: "first glass", Symbol: "T_1", Value: s.First.Celsius(), Suffix: "c", Source: "block at 0 °C at the start, its mean over the pour"},
			volume.Step{Name: "settled glass", Symbol: "T_∞", Value: s.Settled.Celsius(), Suffix: "c", Source: "the block begins each pour as it began the one before"},
			volume.Step{Name: "last glass", Symbol: "T_n", Value: s.Last.Celsius(), Suffix: "c", Source: "T_∞ − (T_∞ − T_1) x^(n−1)"})
	}
	return append(steps,
		volume.Step{Name: "bath", Symbol: "T_b", Value: r.cold, Suffix: "c", Source: "of content that has rested long"},
		volume.Step{Name: "above it after passing without a rest", Symbol: "θ", Value: r.warm, Suffix: "k", Source: "(T_in − T_b) e^(−NTU)"},
		volume.Step{Name: "factor of a rest", Symbol: "x", Value: r.rested, Source: "e^(−t/τ)"},
		volume.Step{Name: "rests of every drop", Symbol: "k", Value: r.whole, Source: "whole glasses that the coil holds, ⌊V_h/V⌋"},
		volume.Step{Name: "share that rests once more", Symbol: "f", Value: r.once, Source: "V_h/V − k"},
		volume.Step{Name: "first glass", Symbol: "T_1", Value: s.First.Celsius(), Suffix: "c", Source: "T_b + θ (1 − f) if k = 0, else T_b"},
		volume.Step{Name: "last glass", Symbol: "T_n", Value: s.Last.Celsius(), Suffix: "c", Source: "T_b + θ x^k [(1 − f) + f x] from n = k + 2 on"})
}
