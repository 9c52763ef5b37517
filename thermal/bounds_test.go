package thermal

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// A trial is one calculation and what came of it.
type trial struct {
	name   string
	result any
	err    error
}

// lost returns where in v a number is NaN or infinite or a temperature invalid,
// looking at exported fields, working and band. may lists the fields that may
// be invalid.
func lost(v any) []string {
	var found []string
	var look func(path string, v reflect.Value)
	look = func(path string, v reflect.Value) {
		if temp, ok := v.Interface().(Temperature); ok {
			if !temp.IsValid() {
				found = append(found, path)
			}
			return
		}
		switch v.Kind() {
		case reflect.Float64:
			if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
				found = append(found, fmt.Sprintf("%s is %g", path, f))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if f := v.Type().Field(i); f.IsExported() {
					look(path+"."+f.Name, v.Field(i))
				}
			}
		case reflect.Slice:
			for i := range v.Len() {
				look(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
			}
		}
	}
	look("", reflect.ValueOf(v))
	if w, ok := v.(interface{ Steps() []volume.Step }); ok {
		for _, s := range w.Steps() {
			if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
				found = append(found, fmt.Sprintf("step %q is %g", s.Name, s.Value))
			}
		}
	}
	if w, ok := v.(interface{ Band() volume.Band }); ok {
		// The upper end may be infinite: a time that may never come.
		if b := w.Band(); math.IsNaN(b.Low) || math.IsInf(b.Low, 0) || math.IsNaN(b.High) || math.IsInf(b.High, -1) {
			found = append(found, fmt.Sprintf("band %+v", b))
		}
	}
	return found
}

// A complainer is a test, of the testing package or of rapid.
type complainer interface {
	Helper()
	Errorf(format string, args ...any)
}

// holdsUp demands of a trial a finite result or one of the errors of the
// package.
func (tr trial) holdsUp(t complainer, where string) {
	t.Helper()
	var r *RangeError
	switch {
	case tr.err == nil:
		for _, l := range lost(tr.result) {
			t.Errorf("%s, %s: %s without an error", where, tr.name, l)
		}
	case !errors.As(tr.err, &r) && !errors.Is(tr.err, ErrNoSolution) && !errors.Is(tr.err, ErrNever):
		t.Errorf("%s, %s: %v", where, tr.name, tr.err)
	case r != nil && r.Min <= r.Value && r.Value <= r.Max:
		t.Errorf("%s, %s: refused within its range: %v", where, tr.name, tr.err)
	}
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
				all = append(all, trial{"Keg.Reach", w, err})
			}
			w, err := k.After(time.Hour)
			all = append(all, trial{"Keg.After", w, err})
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
			all = append(all, trial{"IceBath.After", c, err})
			c, err = b.Reach(Celsius(8))
			all = append(all, trial{"IceBath.Reach", c, err})
			kept, err := b.KeptCold(6*time.Hour, DefaultUpkeep(5))
			all = append(all, trial{"IceBath.KeptCold", float64(len(kept.TopUps)), err})
		}
	}
	return all
}

func coilTrials(change func(*Coil, *Temperature, *Pours)) (all []trial) {
	for _, c := range []Coil{DefaultCoil().Still(), DefaultCoil().Packed(), DefaultCoil().Pumped()} {
		inlet, p := Celsius(20), DefaultPours()
		change(&c, &inlet, &p)
		chill, err := c.Chill(inlet, p.Flow)
		all = append(all, trial{"Coil.Chill", chill, err})
		limit, err := c.LargestFlow(inlet, Celsius(6))
		all = append(all, trial{"Coil.LargestFlow", limit, err})
		s, err := c.Serve(inlet, p)
		all = append(all, trial{"Coil.Serve", s, err})
	}
	return all
}

func plateTrials(change func(*Plate, *Temperature, *Pours, *unit.Mass)) (all []trial) {
	for _, p := range []Plate{DefaultPlate().Pressed(), DefaultPlate().Loose(), DefaultPlate().Flooded()} {
		inlet, pours, ice := Celsius(15), DefaultPours(), unit.Mass(10)
		change(&p, &inlet, &pours, &ice)
		chill, err := p.Chill(inlet, pours.Flow)
		all = append(all, trial{"Plate.Chill", chill, err})
		s, err := p.Serve(inlet, pours)
		all = append(all, trial{"Plate.Serve", s, err})
		d, err := p.DrainDue(inlet, pours, ice)
		all = append(all, trial{"Plate.DrainDue", d.Seconds(), err})
	}
	return all
}

func lineTrials(change func(*Line, *Temperature, *Flow, *time.Duration)) (all []trial) {
	for _, around := range weathers() {
		l, inlet, flow, d := DefaultLine(around), Celsius(4), Flow(2/60e3), 10*time.Minute
		change(&l, &inlet, &flow, &d)
		r, err := l.Carry(inlet, flow)
		all = append(all, trial{"Line.Carry", r, err})
		r, err = l.Stand(inlet, d)
		all = append(all, trial{"Line.Stand", r, err})
	}
	return all
}

func glassTrials(t testing.TB, change func(*Glassful, *Temperature, *time.Duration)) (all []trial) {
	for _, around := range weathers() {
		g := DefaultGlassful(volume.Glasses()[0], around)
		beer, wait := Celsius(4), 10*time.Minute
		change(&g, &beer, &wait)
		r, err := g.Pour(beer, wait)
		all = append(all, trial{"Glassful.Pour", r, err})
	}
	return all
}

func calibrationTrials(t testing.TB, change func(*Calibration)) []trial {
	c := DefaultCalibration(vessel(t, "soda-5gal"), Celsius(25), Reading{0, Celsius(4)}, Reading{5 * time.Hour, Celsius(8)})
	change(&c)
	r, err := c.Solve()
	return []trial{{"Calibration.Solve", r, err}}
}

func beerTrials(t testing.TB, b Beer, err error) []trial {
	all := []trial{{"a beer", float64(0), err}}
	if err != nil {
		return all
	}
	for _, c := range []float64{-5, 0, 20, 40} {
		d, err := b.Density(Celsius(c))
		all = append(all, trial{"Beer.Density", d, err})
		v, err := b.Viscosity(Celsius(c))
		all = append(all, trial{"Beer.Viscosity", v, err})
		h, err := b.HeatCapacity(Celsius(c))
		all = append(all, trial{"Beer.HeatCapacity", h, err})
		k, err := b.Conductivity(Celsius(c))
		all = append(all, trial{"Beer.Conductivity", k, err})
	}
	all = append(all, trial{"Beer", struct{ A, B, C, D, E float64 }{b.ABV(), b.ABW(), b.FinalGravity(), b.RealExtract(), b.OriginalExtract()}, nil},
		trial{"Beer.FreezingPoint", b.FreezingPoint(), nil})
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
	return append(all, trial{"Surroundings.InClosedCar", s.InClosedCar(), nil})
}

func vesselTrials(t testing.TB, change func(*volume.Vessel)) []trial {
	all := kegTrials(t, func(k *Keg) { change(&k.Vessel) })
	return append(all, bathTrials(t, func(b *IceBath) {
		b.Tub = volume.Tub{Capacity: 2, Height: 1}
		b.Ice *= 10
		change(&b.Vessel)
	})...)
}

func hours(v float64) time.Duration { return time.Duration(v * float64(time.Hour)) }

// setters put a value where each row of Limits is checked, and try all that
// reads it.
func setters(t testing.TB) map[string]func(v float64) []trial {
	coil := func(set func(c *Coil, v float64)) func(v float64) []trial {
		return func(v float64) []trial { return coilTrials(func(c *Coil, _ *Temperature, _ *Pours) { set(c, v) }) }
	}
	line := func(set func(l *Line, v float64)) func(v float64) []trial {
		return func(v float64) []trial {
			return lineTrials(func(l *Line, _ *Temperature, _ *Flow, _ *time.Duration) { set(l, v) })
		}
	}
	plate := func(set func(p *Plate, v float64)) func(v float64) []trial {
		return func(v float64) []trial {
			return plateTrials(func(p *Plate, _ *Temperature, _ *Pours, _ *unit.Mass) { set(p, v) })
		}
	}
	bath := func(set func(b *IceBath, v float64)) func(v float64) []trial {
		return func(v float64) []trial { return bathTrials(t, func(b *IceBath) { set(b, v) }) }
	}
	keg := func(set func(k *Keg, v float64)) func(v float64) []trial {
		return func(v float64) []trial { return kegTrials(t, func(k *Keg) { set(k, v) }) }
	}
	around := func(set func(s *Surroundings, v float64)) func(v float64) []trial {
		return func(v float64) []trial { return aroundTrials(t, func(s *Surroundings) { set(s, v) }) }
	}
	vessels := func(set func(b *volume.Vessel, v float64)) func(v float64) []trial {
		return func(v float64) []trial { return vesselTrials(t, func(b *volume.Vessel) { set(b, v) }) }
	}
	calibration := func(set func(c *Calibration, v float64)) func(v float64) []trial {
		return func(v float64) []trial { return calibrationTrials(t, func(c *Calibration) { set(c, v) }) }
	}
	pours := func(set func(p *Pours, v float64)) func(v float64) []trial {
		return func(v float64) []trial {
			all := coilTrials(func(_ *Coil, _ *Temperature, p *Pours) { set(p, v) })
			return append(all, plateTrials(func(_ *Plate, _ *Temperature, p *Pours, _ *unit.Mass) { set(p, v) })...)
		}
	}
	joined := func(fs ...func(v float64) []trial) func(v float64) []trial {
		return func(v float64) (all []trial) {
			for _, f := range fs {
				all = append(all, f(v)...)
			}
			return all
		}
	}
	melts := func(air func(v float64) (Conductance, Temperature, time.Duration)) func(v float64) []trial {
		return func(v float64) []trial {
			u, a, d := air(v)
			m, err := u.Melts(a, d)
			return []trial{{"Conductance.Melts", m, err}}
		}
	}
	melted := func(of func(v float64) (unit.Mass, Temperature, time.Duration)) func(v float64) []trial {
		return func(v float64) []trial {
			r, err := MeltedIce(of(v))
			return []trial{{"MeltedIce", r, err}}
		}
	}
	sky := func(of func(v float64) (lat, day, hour float64)) func(v float64) []trial {
		return func(v float64) []trial {
			g, err := ClearSky(of(v))
			return []trial{{"ClearSky", g, err}}
		}
	}
	return map[string]func(v float64) []trial{
		"alcohol by volume": func(v float64) []trial {
			b, err := BeerOf(v, 1.010)
			strong, errStrong := BeerFromOriginal(v, 1.160)
			return append(beerTrials(t, b, err), beerTrials(t, strong, errStrong)...)
		},
		"final gravity": func(v float64) []trial {
			b, err := BeerOf(0.08, v)
			light, errLight := BeerOf(0, v)
			return append(beerTrials(t, b, err), beerTrials(t, light, errLight)...)
		},
		"original gravity": func(v float64) []trial {
			b, err := BeerFromOriginal(0, v)
			strong, errStrong := BeerFromOriginal(0.08, v)
			return append(beerTrials(t, b, err), beerTrials(t, strong, errStrong)...)
		},
		"real extract": func(v float64) []trial { // the gravity without alcohol nearest to the bound
			inside, outside := 1.01, 1.25
			if v < 1 {
				outside = 0.98
			}
			for range 60 {
				if mid := (inside + outside) / 2; func() error { _, err := BeerOf(0, mid); return err }() == nil {
					inside = mid
				} else {
					outside = mid
				}
			}
			b, err := BeerOf(0, inside)
			return beerTrials(t, b, err)
		},
		"beer temperature": joined(
			keg(func(k *Keg, v float64) { k.From = Celsius(v) }),
			bath(func(b *IceBath, v float64) { b.From = Celsius(v) }),
			func(v float64) []trial {
				return coilTrials(func(_ *Coil, in *Temperature, _ *Pours) { *in = Celsius(v) })
			},
			func(v float64) []trial {
				return lineTrials(func(_ *Line, in *Temperature, _ *Flow, _ *time.Duration) { *in = Celsius(v) })
			},
			func(v float64) []trial {
				return glassTrials(t, func(_ *Glassful, beer *Temperature, _ *time.Duration) { *beer = Celsius(v) })
			},
			func(v float64) []trial {
				return glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.From = Celsius(v) })
			},
			func(v float64) []trial {
				k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(5), weathers()[1])
				w, err := k.Reach(Celsius(v))
				b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(15), weathers()[1])
				c, errBath := b.Reach(Celsius(v))
				l, errCoil := DefaultCoil().LargestFlow(Celsius(20), Celsius(v))
				return []trial{{"Keg.Reach", w, err}, {"IceBath.Reach", c, errBath}, {"Coil.LargestFlow", l, errCoil}}
			},
		),
		"air temperature": joined(around(func(s *Surroundings, v float64) { s.Air = Celsius(v) }),
			melts(func(v float64) (Conductance, Temperature, time.Duration) { return 1, Celsius(v), time.Hour })),
		"relative humidity": around(func(s *Surroundings, v float64) { s.Humidity = v }),
		"pressure altitude": around(func(s *Surroundings, v float64) { s.Altitude = unit.Length(v) }),
		"sun":               around(func(s *Surroundings, v float64) { s.Sun = Irradiance(v) }),
		"wind":              around(func(s *Surroundings, v float64) { s.Wind = unit.Velocity(v) }),
		"latitude":          sky(func(v float64) (lat, day, hour float64) { return v, 172, 12 }),
		"day of the year":   sky(func(v float64) (lat, day, hour float64) { return 50, v, 12 }),
		"hour by the sun":   sky(func(v float64) (lat, day, hour float64) { return 50, 172, v }),
		"keg":               vessels(func(b *volume.Vessel, v float64) { b.Capacity = unit.Volume(v) * volume.Litre }),
		"keg diameter":      vessels(func(b *volume.Vessel, v float64) { b.Diameter = unit.Length(v) }),
		"keg height":        vessels(func(b *volume.Vessel, v float64) { b.Height = unit.Length(v) }),
		"tare":              vessels(func(b *volume.Vessel, v float64) { b.Tare = unit.Mass(v) }),
		"fill":              joined(keg(func(k *Keg, v float64) { k.Fill = v }), bath(func(b *IceBath, v float64) { b.Fill = v })),
		"jacket":            keg(func(k *Keg, v float64) { k.Jacket = unit.Length(v) }),
		"measured UA":       joined(keg(func(k *Keg, v float64) { k.UA = Conductance(v) }), bath(func(b *IceBath, v float64) { b.UA = Conductance(v) })),
		"surface":           keg(func(k *Keg, v float64) { k.Surface = Surface(v) }),
		"time": joined(
			func(v float64) (all []trial) {
				for _, s := range weathers() {
					k := DefaultKeg(vessel(t, "soda-5gal"), Celsius(5), s)
					w, err := k.After(hours(v))
					all = append(all, trial{"Keg.After", w, err})
					b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(5), s)
					c, err := b.After(hours(v))
					all = append(all, trial{"IceBath.After", c, err})
					c, err = b.Dry().After(hours(v))
					all = append(all, trial{"IceBath.After, dry", c, err})
					kept, err := b.KeptCold(hours(v), DefaultUpkeep(50))
					all = append(all, trial{"IceBath.KeptCold", float64(len(kept.TopUps)), err})
				}
				return all
			},
			bath(func(b *IceBath, v float64) { b.TopUps = []TopUp{{hours(v), 5}} }),
			bath(func(b *IceBath, v float64) { b.Pours = []Pour{{0, hours(v), 5 * volume.Litre}} }),
			melts(func(v float64) (Conductance, Temperature, time.Duration) { return 1, Celsius(30), hours(v) }),
			melted(func(v float64) (unit.Mass, Temperature, time.Duration) { return 5, Celsius(30), hours(v) }),
		),
		"air temperature around a bath": bath(func(b *IceBath, v float64) { b.Around.Air = Celsius(v) }),
		"kegs in a tub": bath(func(b *IceBath, v float64) {
			b.Kegs, b.Tub, b.Ice = int(v), volume.Tub{Capacity: 4, Height: 0.7}, unit.Mass(100)
		}),
		"ice": bath(func(b *IceBath, v float64) { b.Ice, b.Tub = unit.Mass(v), volume.Tub{Capacity: 10, Height: 1} }),
		"water": bath(func(b *IceBath, v float64) {
			b.Water, b.Tub = unit.Volume(v)*volume.Litre, volume.Tub{Capacity: 10, Height: 1}
		}),
		"ice temperature":   bath(func(b *IceBath, v float64) { b.IceFrom = Celsius(v) }),
		"water temperature": bath(func(b *IceBath, v float64) { b.WaterFrom = Celsius(v) }),
		"salt in the water": bath(func(b *IceBath, v float64) { b.Salt = v }),
		"tub wall":          bath(func(b *IceBath, v float64) { b.Wall = unit.Length(v) }),
		"wall conductivity": bath(func(b *IceBath, v float64) { b.Conductivity = Conductivity(v) }),
		"ice and water together": bath(func(b *IceBath, v float64) {
			b.Ice, b.Water, b.Tub = unit.Mass(v/2), unit.Volume(v/2)*volume.Litre, volume.Tub{Capacity: 10, Height: 1}
			if b.Drained {
				b.Ice, b.Water = unit.Mass(min(v, limitIce.Max)), 0
			}
		}),
		"volume of a pour": bath(func(b *IceBath, v float64) { b.Pours = []Pour{{0, time.Hour, unit.Volume(v) * volume.Litre}} }),
		"bag of ice": func(v float64) []trial {
			b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(5), weathers()[1])
			kept, err := b.KeptCold(8*time.Hour, DefaultUpkeep(unit.Mass(v)))
			return []trial{{"IceBath.KeptCold", float64(len(kept.TopUps)), err}}
		},
		"reserve of ice": func(v float64) []trial {
			b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(5), weathers()[1])
			kept, err := b.KeptCold(8*time.Hour, Upkeep{Bag: 5, Reserve: v})
			return []trial{{"IceBath.KeptCold", float64(len(kept.TopUps)), err}}
		},
		"tube length": joined(coil(func(c *Coil, v float64) { c.Length = unit.Length(v) }), line(func(l *Line, v float64) { l.Length = unit.Length(v) }),
			plate(func(p *Plate, v float64) { p.Passage = unit.Length(v) })),
		"bore": joined(coil(func(c *Coil, v float64) { c.Bore = unit.Length(v / 1e3) }), line(func(l *Line, v float64) { l.Bore = unit.Length(v / 1e3) }),
			plate(func(p *Plate, v float64) { p.Bore = unit.Length(v / 1e3) })),
		"tube wall": joined(coil(func(c *Coil, v float64) { c.Wall = unit.Length(v / 1e3) }), line(func(l *Line, v float64) { l.Wall = unit.Length(v / 1e3) })),
		"conductivity of the tube": joined(coil(func(c *Coil, v float64) { c.Conductivity = Conductivity(v) }), line(func(l *Line, v float64) { l.Conductivity = Conductivity(v) }),
			line(func(l *Line, v float64) { l.Insulation, l.InsulationConductivity = 0.01, Conductivity(v) })),
		"bore over winding":            coil(func(c *Coil, v float64) { c.Winding = c.Bore / unit.Length(v) }),
		"bath temperature":             coil(func(c *Coil, v float64) { c.Bath = Celsius(v) }),
		"film coefficient":             joined(coil(func(c *Coil, v float64) { c.Film = FilmCoefficient(v) }), plate(func(p *Plate, v float64) { p.Film = FilmCoefficient(v) })),
		"band of the film coefficient": coil(func(c *Coil, v float64) { c.FilmBand = v }),
		"flow": joined(pours(func(p *Pours, v float64) { p.Flow = Flow(v / 60e3); p.Every = time.Hour }),
			func(v float64) []trial {
				return lineTrials(func(_ *Line, _ *Temperature, f *Flow, _ *time.Duration) { *f = Flow(v / 60e3) })
			}),
		"Reynolds number": func(v float64) []trial { // of the order of the bound: 4 q/(π d ν), ν 1.5 mm²/s
			return coilTrials(func(c *Coil, _ *Temperature, p *Pours) {
				p.Flow, p.Every = Flow(max(1.0001e-2/60e3, v*math.Pi/4*float64(c.Bore)*1.5e-6)), time.Hour
			})
		},
		"glass": joined(pours(func(p *Pours, v float64) { p.Glass = unit.Volume(v) * volume.Litre; p.Every = time.Hour }),
			func(v float64) []trial {
				return glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Liquid = unit.Volume(v) * volume.Litre })
			}),
		"time from glass to glass": pours(func(p *Pours, v float64) { p.Every = time.Duration(v * float64(time.Second)) }),
		"number of glasses":        pours(func(p *Pours, v float64) { p.Number = int(v) }),
		"size of the plate":        joined(plate(func(p *Plate, v float64) { p.Width = unit.Length(v) }), plate(func(p *Plate, v float64) { p.Depth = unit.Length(v) })),
		"mass of the plate":        plate(func(p *Plate, v float64) { p.Mass = unit.Mass(v) }),
		"contact share":            plate(func(p *Plate, v float64) { p.Contact = v }),
		"beer temperature at a plate": func(v float64) []trial {
			return plateTrials(func(_ *Plate, in *Temperature, _ *Pours, _ *unit.Mass) { *in = Celsius(v) })
		},
		"ice on the plate": func(v float64) []trial {
			return plateTrials(func(_ *Plate, _ *Temperature, _ *Pours, ice *unit.Mass) { *ice = unit.Mass(v) })
		},
		"insulation": line(func(l *Line, v float64) { l.Insulation = unit.Length(v / 1e3) }),
		"absorbed share of sunshine": joined(line(func(l *Line, v float64) { l.Solar = v }), func(v float64) []trial {
			return glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Solar = v })
		}),
		"standing time": func(v float64) []trial {
			return lineTrials(func(_ *Line, _ *Temperature, _ *Flow, d *time.Duration) { *d = hours(v) })
		},
		"mass of the glass": func(v float64) []trial {
			return glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Glass.Mass = unit.Mass(v) })
		},
		"bore of the glass": func(v float64) []trial {
			return glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Glass.Bore = unit.Length(v / 1e3) })
		},
		"fill of the glass": func(v float64) []trial {
			return glassTrials(t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Liquid = unit.Volume(v) * g.Glass.Volume })
		},
		"wait": func(v float64) []trial {
			return glassTrials(t, func(_ *Glassful, _ *Temperature, wait *time.Duration) { *wait = hours(v) })
		},
		"number of readings": calibration(func(c *Calibration, v float64) {
			c.Readings = nil
			for i := range int(v) {
				f := float64(i) / (v - 1)
				c.Readings = append(c.Readings, Reading{hours(10 * f), Celsius(25 - 20*math.Exp(-f))})
			}
		}),
		"time between first and last": calibration(func(c *Calibration, v float64) { c.Readings[1].Time = time.Duration(v * float64(time.Second)) }),
		"distance of a reading from the air": calibration(func(c *Calibration, v float64) {
			far := max(v, 10) // one reading lies v from the air, the other nearer or farther
			near := min(v, 10)
			c.Air, c.Readings[0].Temperature, c.Readings[1].Temperature = Celsius(59), Celsius(59-far), Celsius(30)
			if v < 10 {
				c.Air, c.Readings[0].Temperature, c.Readings[1].Temperature = Celsius(30), Celsius(30-far), Celsius(30-near)
			}
		}),
		"content":                  calibration(func(c *Calibration, v float64) { c.Content = unit.Volume(v) * volume.Litre }),
		"mass of metal":            calibration(func(c *Calibration, v float64) { c.Metal = unit.Mass(v) }),
		"error of the thermometer": calibration(func(c *Calibration, v float64) { c.Thermometer = Difference(v) }),
		"melted ice": melted(func(v float64) (unit.Mass, Temperature, time.Duration) {
			return unit.Mass(v), Celsius(30), 5 * time.Hour
		}),
		"air around the ice": melted(func(v float64) (unit.Mass, Temperature, time.Duration) { return 5, Celsius(v), 5 * time.Hour }),
		"UA of a box": melts(func(v float64) (Conductance, Temperature, time.Duration) {
			return Conductance(v), Celsius(30), time.Hour
		}),
	}
}

// Each calculation with each row of the validity table at both of its bounds
// gives finite numbers or one of the errors of the package, never NaN without
// an error; and the bounds belong to their ranges.
func TestEveryBound(t *testing.T) {
	table := setters(t)
	for _, r := range Limits() {
		set := table[r.Name]
		if set == nil {
			t.Errorf("%s has no setter", r.Name)
			continue
		}
		for _, v := range []float64{r.Min, r.Max} {
			answered := 0
			for _, tr := range set(v) {
				tr.holdsUp(t, fmt.Sprintf("%s at %g %s", r.Name, v, r.Suffix))
				var own *RangeError
				if errors.As(tr.err, &own) && own.Name == r.Name && own.Value == v && own.Min <= r.Min && own.Max >= r.Max {
					t.Errorf("%s: its bound %g is refused: %v", r.Name, v, tr.err)
				}
				if tr.err == nil {
					answered++
				}
			}
			if testing.Verbose() && answered == 0 {
				t.Logf("%s at %g: nothing answers: %v", r.Name, v, set(v)[0].err)
			}
		}
	}
	if len(table) != len(Limits()) {
		t.Errorf("%d setters for %d rows", len(table), len(Limits()))
	}
}
