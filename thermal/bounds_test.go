package thermal

import (
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

type trial = checktest.Trial

var tried = checktest.Tried

// bounds says with which errors a calculation may end, and beyond which bounds no
// setter gets.
var bounds = checktest.Bounds{
	Fine: []error{ErrNoSolution, ErrNever},
	Shut: map[string]string{
		"real extract below":                  "follows from alcohol and final gravity: the setter stops at the bound",
		"real extract above":                  "likewise",
		"air temperature around a bath above": "the row of any air ends there too",
		"ice and water together above":        "the rows of ice and of water end there together",
		"Reynolds number below":               "flow is above 0",
		"time from glass to glass below":      "a glass takes time to fill",
		"fill of the glass below":             "the row of the beer in it begins above 0",
	},
}

// holdsUp demands of a trial a finite result or one of the errors of the
// package.
func holdsUp(t checktest.Complainer, where string, tr trial) {
	t.Helper()
	checktest.HoldsUp[RangeError](t, where, tr, bounds)
}

// weathers are the surroundings that the calculations are tried in.
func weathers() []Surroundings {
	hot := Shade(Celsius(33))
	hot.Humidity, hot.Sun, hot.Wind = 0.9, 900, 3
	return []Surroundings{Shade(Celsius(25)), hot}
}

func kegTrials(t testing.TB, change func(*Keg)) (all []trial) {
	for _, around := range weathers() {
		for _, ua := range []Conductance{0, 0.8} {
			k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(5), around)
			k.UA = ua
			change(&k)
			for _, to := range []Temperature{Celsius(3), Celsius(12)} {
				w, err := k.Reach(to)
				all = append(all, tried("Keg.Reach", w, err))
			}
			w, err := k.After(time.Hour)
			all = append(all, tried("Keg.After", w, err))
		}
	}
	return all
}

func bathTrials(t testing.TB, change func(*IceBath)) (all []trial) {
	for _, around := range weathers() {
		for _, dry := range []bool{false, true} {
			b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(15), around)
			if dry {
				b = b.Dry()
			}
			change(&b)
			c, err := b.After(2 * time.Hour)
			all = append(all, tried("IceBath.After", c, err))
			c, err = b.Reach(Celsius(8))
			all = append(all, tried("IceBath.Reach", c, err))
			kept, err := b.KeptCold(6*time.Hour, Upkeep{Bag: 5, Reserve: UsualReserve})
			all = append(all, tried("IceBath.KeptCold", float64(len(kept.TopUps)), err))
		}
	}
	return all
}

func coilTrials(change func(*Coil, *Temperature, *Pours)) (all []trial) {
	for _, c := range []Coil{DefaultCoil().Still(), DefaultCoil().Packed(), DefaultCoil().Pumped()} {
		inlet, p := Celsius(20), DefaultPours()
		change(&c, &inlet, &p)
		chill, err := c.Chill(inlet, p.Flow)
		all = append(all, tried("Coil.Chill", chill, err))
		limit, err := c.LargestFlow(inlet, Celsius(6))
		all = append(all, tried("Coil.LargestFlow", limit, err))
		s, err := c.Serve(inlet, p)
		all = append(all, tried("Coil.Serve", s, err))
	}
	return all
}

func plateTrials(change func(*Plate, *Temperature, *Pours, *unit.Mass)) (all []trial) {
	for _, p := range []Plate{DefaultPlate().Pressed(), DefaultPlate().Loose(), DefaultPlate().Flooded()} {
		inlet, pours, ice := Celsius(15), DefaultPours(), unit.Mass(10)
		change(&p, &inlet, &pours, &ice)
		chill, err := p.Chill(inlet, pours.Flow)
		all = append(all, tried("Plate.Chill", chill, err))
		s, err := p.Serve(inlet, pours)
		all = append(all, tried("Plate.Serve", s, err))
		d, err := p.DrainDue(inlet, pours, ice)
		all = append(all, tried("Plate.DrainDue", d.Seconds(), err))
	}
	return all
}

func lineTrials(change func(*Line, *Temperature, *Flow, *time.Duration)) (all []trial) {
	for _, around := range weathers() {
		l, inlet, flow, d := DefaultLine(around), Celsius(4), Flow(2/60e3), 10*time.Minute
		change(&l, &inlet, &flow, &d)
		r, err := l.Carry(inlet, flow)
		all = append(all, tried("Line.Carry", r, err))
		r, err = l.Stand(inlet, d)
		all = append(all, tried("Line.Stand", r, err))
	}
	return all
}

func glassTrials(t testing.TB, change func(*Glassful, *Temperature, *time.Duration)) (all []trial) {
	for _, around := range weathers() {
		g := DefaultGlassful(volume.Glasses()[0], around)
		beer, wait := Celsius(4), 10*time.Minute
		change(&g, &beer, &wait)
		r, err := g.Pour(beer, wait)
		all = append(all, tried("Glassful.Pour", r, err))
	}
	return all
}

func calibrationTrials(t testing.TB, change func(*Calibration)) []trial {
	c := DefaultCalibration(vessel(t, "soda-5gal"), Celsius(25), Reading{0, Celsius(4)}, Reading{5 * time.Hour, Celsius(8)})
	change(&c)
	r, err := c.Solve()
	return []trial{tried("Calibration.Solve", r, err)}
}

func beerTrials(t testing.TB, b Beer, err error) []trial {
	all := []trial{tried("a beer", float64(0), err)}
	if err != nil {
		return all
	}
	for _, c := range []float64{-5, 0, 20, 40} {
		d, err := b.Density(Celsius(c))
		all = append(all, tried("Beer.Density", d, err))
		v, err := b.Viscosity(Celsius(c))
		all = append(all, tried("Beer.Viscosity", v, err))
		h, err := b.HeatCapacity(Celsius(c))
		all = append(all, tried("Beer.HeatCapacity", h, err))
		k, err := b.Conductivity(Celsius(c))
		all = append(all, tried("Beer.Conductivity", k, err))
	}
	all = append(all, tried("Beer", struct{ A, B, C, D, E float64 }{b.ABV(), b.ABW(), b.FinalGravity(), b.RealExtract(), b.OriginalExtract()}, nil),
		tried("Beer.FreezingPoint", b.FreezingPoint(), nil))
	all = append(all, kegTrials(t, func(k *Keg) { k.Beer = b })...)
	all = append(all, bathTrials(t, func(k *IceBath) { k.Beer = b })...)
	all = append(all, coilTrials(func(c *Coil, _ *Temperature, _ *Pours) { c.Beer = b })...)
	all = append(all, plateTrials(func(p *Plate, _ *Temperature, _ *Pours, _ *unit.Mass) { p.Beer = b })...)
	all = append(all, lineTrials(func(l *Line, _ *Temperature, _ *Flow, _ *time.Duration) { l.Beer = b })...)
	return append(all, glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Beer = b })...)
}

// aroundTrials tries everything that stands in air.
func aroundTrials(t testing.TB, change func(*Surroundings)) []trial {
	all := kegTrials(t, func(k *Keg) { change(&k.Around) })
	all = append(all, bathTrials(t, func(b *IceBath) { change(&b.Around) })...)
	all = append(all, lineTrials(func(l *Line, _ *Temperature, _ *Flow, _ *time.Duration) { change(&l.Around) })...)
	all = append(all, glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { change(&g.Around) })...)
	s := weathers()[1]
	change(&s)
	return append(all, tried("Surroundings.InClosedCar", s.InClosedCar(), nil))
}

func vesselTrials(t testing.TB, change func(*volume.Vessel)) []trial {
	all := kegTrials(t, func(k *Keg) { change(&k.Vessel) })
	return append(all, bathTrials(t, func(b *IceBath) {
		b.Tub = volume.Tub{Capacity: 2, Height: 1}
		b.Ice *= 10
		change(&b.Vessel)
	})...)
}

// Each calculation with each row of the validity table at its bounds and beyond.
func TestEveryBound(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of baths")
	}
	b := bounds
	b.Setters = setters(t)
	checktest.EveryBound[RangeError](t, Limits(), b)
}
