package volume

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/unit"
)

// A Crowd is a number of guests and their thirst. Zero means zero: a Weather of
// 0 is a crowd that drinks nothing. [DefaultCrowd] gives the usual values.
type Crowd struct {
	Guests     int
	Duration   time.Duration // from the first pour to the last
	FirstHour  float64       // servings for each beer drinker in the first hour
	Later      float64       // servings for each beer drinker in each later hour
	Share      float64       // of the guests who drink beer
	Weather    float64       // factor on both rates: 1 for an ordinary day
	Spread     float64       // between people: standard deviation of their thirst over its mean
	Doubt      float64       // in the rates themselves, the same for all: standard deviation over mean
	Confidence float64       // chance with which the beer is to last, such as 0.9
}

// DefaultCrowd returns so many guests for so long with the usual thirst: two
// servings in the first hour and one in each later hour, half of the guests
// drinking beer, to last with a confidence of 90 %. Rates and share are common
// practice, no source. Spread (0.5) and doubt (0.1) are our assumptions: most
// people drink between half and one and a half times the mean, and nobody knows
// the mean within a tenth.
func DefaultCrowd(guests int, duration time.Duration) Crowd {
	return Crowd{
		Guests: guests, Duration: duration, FirstHour: 2, Later: 1, Share: 0.5, Weather: 1,
		Spread: 0.5, Doubt: 0.1, Confidence: 0.9,
	}
}

// A Demand is what a crowd asks of one beer, and how the kegs meet it.
type Demand struct {
	Choice   Choice      // what was asked
	Expected float64     // servings on average
	Planned  int         // servings that suffice with the confidence asked
	Kegs     int         // as given, or the fewest that hold the planned servings
	Volume   unit.Volume // of those kegs, full
	RunOut   float64     // probability that more is asked for than the kegs hold
	Leftover unit.Volume // poured beer that nobody asks for, on average

	LastsFor  time.Duration // until then the kegs last with the confidence asked; at most the whole event
	RunsOutAt time.Duration // if they run out, it is as likely before this time as after it
	GlassCost float64       // price of all kegs over the servings drunk on average

	Mix []Choice // the kegs chosen by [Crowd.Mix]; nil otherwise

	crowd    Crowd
	count    count
	servings float64  // that the kegs hold
	drunk    float64  // of them, on average
	parts    []Demand // of a sum
	priced   bool     // the kegs of Mix were chosen by price
}

// Demand returns how many servings and kegs of one beer the crowd asks for.
//
//	expected = guests · share · weather · (first hour · min(t, 1 h) + later · max(t − 1 h, 0))
//	excess = (spread² + 1 − share) / (guests · share) + doubt²
//	variance = expected + excess · expected²
//
// The model: each guest drinks beer or does not, independently and with the
// probability share; a drinker orders at random (Poisson) at a rate of their
// own, spread by a gamma distribution about a mean that is itself in doubt, the
// same for all. The count of servings is taken as the negative binomial with
// that mean and variance. Planned is its least quantile at the confidence, and
// every probability is that distribution's, exactly. People who drink in rounds
// or wait for one another are not in the model.
//
// See the package's table for the ranges; outside them Demand returns a
// [*RangeError]. A keg that gives no whole pour gives [ErrNoSolution]. With an
// error every number is NaN or 0.
//
// Source: moments of a compound Poisson count, Johnson, Kemp & Kotz, Univariate
// Discrete Distributions, 3rd ed. (2005), chapter 5, from memory. Rates: common
// practice, no source, as is a reserve of 10 to 15 % instead of a confidence.
func (c Crowd) Demand(keg Yield) (Demand, error) {
	choice := Choice{Share: 1, Keg: keg}
	if err := c.check("volume.Crowd.Demand"); err != nil {
		return noDemand(choice), err
	}
	return c.demand("volume.Crowd.Demand", choice)
}

func (c Crowd) demand(fn string, choice Choice) (Demand, error) {
	if err := choice.check(fn); err != nil {
		return noDemand(choice), err
	}
	d := c.ask(choice)
	d.Kegs = choice.Kegs
	if d.Kegs == 0 {
		d.Kegs = (d.Planned + choice.Keg.Pours - 1) / choice.Keg.Pours
	}
	d.Volume = unit.Volume(d.Kegs) * choice.Keg.Pour.Keg.Capacity
	d.meet(d.Kegs*choice.Keg.Pours, float64(d.Kegs)*choice.Price)
	return d, nil
}

// nobody is a number of drinkers or servings too small to count: nothing is
// asked for.
const nobody = 1e-9

// ask counts what is asked for, before any kegs.
func (c Crowd) ask(choice Choice) Demand {
	d := Demand{Choice: choice, crowd: c}
	share := c.Share * choice.Share
	drinkers := float64(c.Guests) * share
	d.Expected = drinkers * c.thirst(c.Duration)
	if d.Expected > nobody && drinkers > nobody {
		d.count = count{d.Expected, (c.Spread*c.Spread+1-share)/drinkers + c.Doubt*c.Doubt}
	}
	d.Planned = int(d.count.quantile(c.Confidence))
	return d
}

// meet fills in how so many servings meet the demand.
func (d *Demand) meet(servings int, price float64) {
	d.servings = float64(servings)
	d.RunOut = d.count.more(d.servings)
	left := d.count.left(d.servings)
	d.Leftover = unit.Volume(left) * d.Choice.Keg.Liquid
	d.LastsFor = d.moment(1 - d.crowd.Confidence)
	d.RunsOutAt = d.moment(d.RunOut / 2)
	if d.drunk = d.servings - left; d.drunk > 0 {
		d.GlassCost = price / d.drunk
	}
}

// moment returns when the probability of having run out reaches chance, or the
// end of the event if it does not by then. A drinker's thirst is drawn once for
// the event, so the excess is the same at all times and only the mean grows.
func (d *Demand) moment(chance float64) time.Duration {
	c := d.crowd
	if d.RunOut <= chance || d.RunOut < 1e-12 {
		return c.Duration
	}
	drinkers := float64(c.Guests) * c.Share * d.Choice.Share
	thirst := d.count.meanFor(d.servings, chance) / drinkers
	first := c.Weather * c.FirstHour
	hours := thirst / first
	if !(hours <= 1) {
		hours = 1 + (thirst-first)/(c.Weather*c.Later)
	}
	return time.Duration(math.Min(hours, c.Duration.Hours()) * float64(time.Hour))
}

// At returns how many servings are asked for on average until t from the start,
// and the probability that the kegs have run out by then; of a sum, the largest
// of its parts. Times outside the event count as its start or end.
func (d Demand) At(t time.Duration) (expected, runOut float64) {
	t = max(0, min(t, d.crowd.Duration))
	for _, p := range d.all() {
		if p.Expected == 0 {
			continue
		}
		mean := p.Expected * p.crowd.thirst(t) / p.crowd.thirst(p.crowd.Duration)
		expected += mean
		if p.count.mean > 0 {
			runOut = math.Max(runOut, count{mean, p.count.excess}.more(p.servings))
		}
	}
	return expected, runOut
}

// thirst returns the servings that each drinker asks for until t, on average.
func (c Crowd) thirst(t time.Duration) float64 {
	h := t.Hours()
	return c.Weather * (c.FirstHour*math.Min(h, 1) + c.Later*math.Max(h-1, 0))
}

// noDemand is what comes with an error.
func noDemand(c Choice) Demand {
	nan := math.NaN()
	return Demand{Choice: c, Expected: nan, Volume: unit.Volume(nan), RunOut: nan, Leftover: unit.Volume(nan), GlassCost: nan}
}

func (c Crowd) check(fn string) error {
	return cmp.Or(
		limitGuests.Check(fn, float64(c.Guests)),
		limitDuration.Check(fn, c.Duration.Hours()),
		limitFirstHour.Check(fn, c.FirstHour),
		limitLater.Check(fn, c.Later),
		limitDrinkers.Check(fn, c.Share),
		limitWeather.Check(fn, c.Weather),
		limitSpread.Check(fn, c.Spread),
		limitDoubt.Check(fn, c.Doubt),
		limitConfidence.Check(fn, c.Confidence),
	)
}

// Steps returns the working, of one beer after the other for a sum.
func (d Demand) Steps() []Step {
	if d.parts != nil {
		var steps []Step
		for _, p := range d.parts {
			steps = append(steps, p.Steps()...)
		}
		return steps
	}
	c := d.crowd
	const given, counted = "given", "negative binomial, Johnson, Kemp & Kotz chapter 5"
	steps := []Step{
		{"guests", "N", float64(c.Guests), "", given},
		{"share who drink this beer", "s", c.Share * d.Choice.Share, "", given},
		{"weather factor", "f", c.Weather, "", given},
		{"servings for each drinker", "m", c.thirst(c.Duration), "", "f (first hour · min(t, 1 h) + later · max(t − 1 h, 0))"},
		{"servings expected", "μ", d.Expected, "", "N s m"},
		{"excess of the variance", "κ", d.count.excess, "", "(spread² + 1 − s)/(N s) + doubt²"},
		{"standard deviation", "σ", math.Sqrt(d.Expected + d.count.excess*d.Expected*d.Expected), "", "√(μ + κ μ²)"},
		{"confidence", "p", c.Confidence, "", given},
		{"servings planned", "n", float64(d.Planned), "", "least n with P(X ≤ n) ≥ p, " + counted},
	}
	if d.Expected > 0 {
		steps = append(steps, Step{"reserve on the expected", "n/μ − 1", float64(d.Planned)/d.Expected - 1, "", "common practice adds 0.10 to 0.15, no source"})
	}
	if d.Mix == nil {
		steps = append(steps, Step{"pours in a keg", "k", float64(d.Choice.Keg.Pours), "", given})
	}
	return append(steps,
		Step{"kegs", "K", float64(d.Kegs), "", "given, or the fewest that hold n"},
		Step{"servings that the kegs hold", "C", d.servings, "", "kegs × pours"},
		Step{"probability of running out", "P(X > C)", d.RunOut, "", counted},
		Step{"servings left on average", "E max(C − X, 0)", d.count.left(d.servings), "", counted},
	)
}

// Band returns the servings asked for, from the quantile as far below as the
// confidence is above to the planned number; the sums of both for a sum. The
// number expected lies within: near even odds it can be outside both quantiles.
func (d Demand) Band() Band {
	low := 0.0
	for _, p := range d.all() {
		low += p.count.quantile(1 - d.crowd.Confidence)
	}
	return Band{"servings", min(low, d.Expected), max(float64(d.Planned), d.Expected), "",
		fmt.Sprintf("each end is passed with a probability of %.3g", 1-d.crowd.Confidence)}
}

// KegsBand returns the kegs that the guests come to tap: those that the
// servings at the ends of Band take, each beer from kegs of its own. The upper
// end is Kegs where that is the fewest that suffice. A stock of several sizes
// counts kegs of the mean size of those chosen.
func (d Demand) KegsBand() Band {
	low, high := 0.0, 0.0
	for _, p := range d.all() {
		if p.Kegs == 0 {
			continue // nothing is asked for
		}
		each := p.servings / float64(p.Kegs)
		low += math.Ceil(p.count.quantile(1-d.crowd.Confidence) / each)
		high += math.Ceil(float64(p.Planned) / each)
	}
	return Band{"kegs", low, high, "", "whole kegs for the servings at both ends of their band"}
}
