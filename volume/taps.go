package volume

import (
	"cmp"
	"errors"
	"math"
	"time"
)

// A Bar is where guests ask for beer: how often they come, how long each is
// served, and how long they will wait. Zero means zero; [DefaultBar] gives the
// usual values.
type Bar struct {
	Guests   int           // who come to this bar
	PerHour  float64       // servings each of them asks for in an hour
	PourTime time.Duration // to fill a glass
	Change   time.Duration // between glasses: take the order, take the glass, hand it over
	Wait     time.Duration // a wait that guests accept
	Within   float64       // share of guests to be served within that wait
	Taps     int           // in use, each with somebody at it; 0 for the fewest that keep the wait
	Rush     float64       // rate in the first half hour over the mean of the hour

	ownHands bool // guests pour for themselves
	hurried  bool // it is the first half hour
}

// DefaultBar returns a served bar for so many guests: two servings an hour each
// (common practice, no source), 8 s to pour 16 oz at 2 oz/s, 22 s between
// glasses, nine in ten served within a minute, and 1.3 times the rate in the
// first half hour. All but the first two are our assumptions.
func DefaultBar(guests int) Bar {
	return Bar{
		Guests: guests, PerHour: 2, PourTime: 8 * time.Second, Change: 22 * time.Second,
		Wait: time.Minute, Within: 0.9, Rush: 1.3,
	}
}

// Bar returns the usual served bar for the crowd's first hour.
func (c Crowd) Bar() Bar {
	b := DefaultBar(c.Guests)
	b.PerHour = c.Weather * c.FirstHour * c.Share
	return b
}

// SelfService returns the bar with guests who pour for themselves: half as long
// again at the tap and between glasses. Our assumption; time yours.
func (b Bar) SelfService() Bar {
	b.PourTime += b.PourTime / 2
	b.Change += b.Change / 2
	b.ownHands = true
	return b
}

// FirstHalfHour returns the bar as it is in the first half hour, when everybody
// wants a first glass: the rate is Rush times that of the hour. Its [Queue] is
// that of a rush that goes on.
func (b Bar) FirstHalfHour() Bar {
	b.hurried = true
	return b
}

// Backlog returns how many guests wait at the end of a time in which more come
// than the taps can serve, if none waited at its start: 0 if they can.
//
//	backlog = (λ − c/s) t
//
// It is the fluid limit of the queue and leaves out chance.
func (b Bar) Backlog(taps int, t time.Duration) float64 {
	return math.Max(0, (b.rate()-float64(taps)/b.service().Seconds())*t.Seconds())
}

// A Queue is how guests wait at a bar in a steady hour.
type Queue struct {
	Bar   Bar           // what was asked
	Taps  int           // as given, or the fewest that keep the wait
	Mean  time.Duration // wait of all guests on average, those served at once included
	Least time.Duration // the same if every serving took equally long
	Waits float64       // share of guests who wait at all
	Late  float64       // share of guests who wait longer than the bar's Wait
	Busy  float64       // share of the time that a tap is in use
	Queue float64       // guests waiting, on average

	RushTaps    int           // the fewest that keep the wait in the first half hour
	RushMean    time.Duration // where the mean wait would settle in it, at Taps; 0 if RushGrows
	RushGrows   bool          // in it guests come as fast as Taps can serve, or faster
	RushBacklog float64       // guests waiting at its end if RushGrows, as Bar.Backlog

	load float64
}

// Queue returns how long guests wait, and how many taps keep the wait if Taps
// is 0:
//
//	λ = guests · per hour / 3600 s      s = pour time + change      a = λ s
//	C = c B/(c − a (1 − B)),   1/B(c) = 1 + c/a · 1/B(c − 1),   B(0) = 1
//	mean wait = C s/(c − a),   P(W > t) = C exp(−(c − a) t/s)
//
// Guests come at random (Poisson) and servings vary like the exponential
// distribution, which overstates the wait: pouring takes nearly the same time
// for everyone, and then the wait is about half. Least is that bound; the truth
// lies between. A tap counts only while somebody stands at it.
//
// The recurrence keeps its digits to 10 000 taps and beyond. See the package's
// table for the ranges, which the load of the first half hour must keep too;
// outside them Queue returns a [*RangeError]. If the taps given cannot serve as fast as guests come, the queue grows without end and it
// returns [ErrNever] with the numbers that make it so; so does a queue that would
// take years to settle, with less than a millionth of the taps' time to spare.
//
// Sources: Erlang's delay formula as in R. Bronson, Operations Research
// (Schaum, 1982), chapter 24; constant service: J. F. C. Kingman, Mathematical
// Proceedings of the Cambridge Philosophical Society 57 (1961) 902, the factor
// (1 + cv²)/2.
func (b Bar) Queue() (Queue, error) {
	q, err := b.queue()
	if err != nil {
		return q, err
	}
	rush := b.FirstHalfHour()
	rush.Taps = 0
	fewest, err := rush.queue()
	if err != nil {
		return noQueue(b), err
	}
	q.RushTaps = fewest.Taps
	rush.Taps = q.Taps
	hurried, err := rush.queue()
	switch {
	case err == nil:
		q.RushMean = hurried.Mean
	case errors.Is(err, ErrNever):
		q.RushGrows, q.RushBacklog = true, rush.Backlog(q.Taps, 30*time.Minute)
	default:
		return noQueue(b), err
	}
	return q, nil
}

// noQueue is what comes with an error.
func noQueue(b Bar) Queue {
	nan := math.NaN()
	return Queue{Bar: b, Taps: b.Taps, Waits: nan, Late: nan, Busy: nan, Queue: nan}
}

// queue is Queue without the first half hour.
func (b Bar) queue() (Queue, error) {
	const fn = "volume.Bar.Queue"
	q := noQueue(b)
	if err := b.check(fn); err != nil {
		return q, err
	}
	q.load = b.rate() * b.service().Seconds()
	if err := limitLoad.Check(fn, q.load); err != nil {
		return q, err
	}
	swamped := q.load * (1 + 1e-6)
	if b.Taps > 0 && float64(b.Taps) <= swamped {
		return q, &NeverError{Func: fn, Why: say("%s can serve %.0f an hour and %.0f are asked for, so the queue grows",
			several(b.Taps, "tap"), 3600*float64(b.Taps)/b.service().Seconds(), 3600*b.rate())}
	}
	inverse := 1.0 // 1/B, Erlang's loss formula
	for c := 1; ; c++ {
		n := float64(c)
		if q.load > 0 {
			inverse = 1 + n/q.load*inverse
		} else {
			inverse = math.Inf(1)
		}
		if n <= swamped || c < b.Taps {
			continue
		}
		q.Taps = c
		q.Waits = n / (n*inverse - q.load*(inverse-1)) // C, multiplied through by 1/B
		if math.IsInf(inverse, 1) {
			q.Waits = 0
		}
		q.Late = q.Waits * math.Exp(-(n-q.load)*b.Wait.Seconds()/b.service().Seconds())
		if c == b.Taps || b.Taps == 0 && q.Late <= 1-b.Within {
			break
		}
	}
	spare := float64(q.Taps) - q.load
	mean := q.Waits / spare * b.service().Seconds()
	q.Mean = time.Duration(mean * float64(time.Second))
	q.Least = q.Mean / 2
	q.Busy = q.load / float64(q.Taps)
	q.Queue = q.Waits * q.load / spare
	return q, nil
}

// rate returns the arrivals per second.
func (b Bar) rate() float64 {
	perHour := b.PerHour
	if b.hurried {
		perHour *= b.Rush
	}
	return float64(b.Guests) * perHour / 3600
}

func (b Bar) service() time.Duration { return b.PourTime + b.Change }

func (b Bar) check(fn string) error {
	return cmp.Or(
		limitGuests.Check(fn, float64(b.Guests)),
		limitPerHour.Check(fn, b.PerHour),
		limitPourTime.Check(fn, b.PourTime.Seconds()),
		limitPourTime.Check(fn, b.Change.Seconds()),
		limitService.Check(fn, b.service().Seconds()),
		limitWait.Check(fn, b.Wait.Seconds()),
		limitWithin.Check(fn, b.Within),
		limitRush.Check(fn, b.Rush),
		limitTaps.Check(fn, float64(b.Taps)),
	)
}

// Steps returns the working.
func (q Queue) Steps() []Step {
	b, c := q.Bar, float64(q.Taps)
	logFactorial, _ := math.Lgamma(c + 1)
	idle := math.Exp(math.Log(q.Waits*(c-q.load)/c) + logFactorial - c*math.Log(q.load))
	if q.Waits == 0 || q.load == 0 {
		idle = math.Exp(-q.load)
	}
	const erlang = "Bronson, Operations Research (1982), chapter 24"
	return []Step{
		{"servings asked for", "λ", 3600 * b.rate(), "per_h", "guests × servings an hour"},
		{"time for each serving", "s", b.service().Seconds(), "s", "pour time + change"},
		{"offered load", "a", q.load, "", "λ s"},
		{"taps", "c", c, "", "given, or the fewest with P(W > t) within the limit"},
		{"probability that nobody is at the bar", "P0", idle, "", erlang},
		{"probability of waiting", "C", q.Waits, "", "Erlang's delay formula, " + erlang},
		{"guests waiting on average", "Lq", q.Queue, "", "C a/(c − a)"},
		{"mean wait", "Wq", q.Mean.Seconds(), "s", "C s/(c − a)"},
		{"wait accepted", "t", b.Wait.Seconds(), "s", "given"},
		{"share who wait longer", "P(W > t)", q.Late, "", "C exp(−(c − a) t/s)"},
		{"mean wait if every serving took s", "Wq/2", q.Least.Seconds(), "s", "Kingman (1961)"},
		{"servings an hour at each tap", "λ/c", 3600 * b.rate() / c, "per_h", "common practice: 60 to 90 for each server, no source"},
	}
}

// Band returns the mean wait between constant servings and servings that vary
// like the exponential distribution.
func (q Queue) Band() Band {
	return Band{"mean wait", q.Least.Seconds(), q.Mean.Seconds(), "s", "servings all alike, to servings that vary as much as their mean"}
}
