package volume

import (
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"gonum.org/v1/gonum/unit"
)

type trial = checktest.Trial

var tried = checktest.Tried

// usualPour is from a sixth barrel into US pints.
func usualPour() Pour { return VesselOf(USBarrel / 6).Into(GlassOf(USPint)) }

func pourTrials(change func(*Pour)) []trial {
	p := usualPour()
	change(&p)
	y, err := p.PerKeg()
	all := []trial{tried("Pour.PerKeg", y, err)}
	r, err := p.Left(p.Keg.Tare+8, 1.01)
	return append(all, tried("Pour.Left", r, err))
}

func tubTrials(change func(t *Tub, keg *Vessel, kegs *int)) (all []trial) {
	for _, kegs := range []int{0, 1} {
		t, keg := Tub{100 * Litre, 0.5}, VesselOf(USBarrel/6)
		change(&t, &keg, &kegs)
		held, err := t.Holds(0.05, keg, kegs)
		all = append(all, tried("Tub.Holds", held, err))
		deep, err := t.Depth(1*Litre, keg, kegs)
		all = append(all, tried("Tub.Depth", deep, err))
		f, err := t.Fit(keg, kegs, 0.6)
		all = append(all, tried("Tub.Fit", f, err))
	}
	return all
}

func vesselTrials(change func(*Vessel)) []trial {
	all := tubTrials(func(t *Tub, keg *Vessel, _ *int) { t.Capacity, t.Height = 10000*Litre, 2.5; change(keg) })
	return append(all, pourTrials(func(p *Pour) { change(&p.Keg) })...)
}

func crowdTrials(change func(c *Crowd, beer *Choice)) []trial {
	y, err := usualPour().PerKeg()
	if err != nil {
		panic(err)
	}
	c, beer := DefaultCrowd(60, 5*time.Hour), Choice{Name: "Pale", Share: 1, Keg: y, Kegs: 4, Price: 100}
	change(&c, &beer)
	d, err := c.Demand(beer.Keg)
	all := []trial{tried("Crowd.Demand", d, err)}
	menu, err := c.Menu([]Choice{beer})
	all = append(all, tried("Crowd.Menu", menu, err))
	if err == nil {
		all = append(all, trial{Name: "Demand.KegsBand", Result: menu[0].KegsBand()})
	}
	m, err := c.Mix([]Choice{beer, beer})
	return append(all, tried("Crowd.Mix", m, err))
}

func barTrials(change func(*Bar)) (all []trial) {
	for _, b := range []Bar{DefaultBar(100), DefaultBar(100).SelfService()} {
		change(&b)
		q, err := b.Queue()
		all = append(all, tried("Bar.Queue", q, err))
	}
	return all
}

func cylinderTrials(change func(c *Cylinder, weight, perKeg *unit.Mass)) []trial {
	c, perKeg := Cylinder{Charge: 5 * Pound}.UsualTare(), 60*Gram
	weight := c.Tare + 1
	change(&c, &weight, &perKeg)
	r, err := c.Left(weight, perKeg)
	return []trial{tried("Cylinder.Left", r, err)}
}

func seconds(v float64) time.Duration { return time.Duration(v * float64(time.Second)) }

// A trier tries all that reads a value.
type trier = func(v float64) []trial

func vesselSetters() map[string]trier {
	vessel := func(set func(k *Vessel, v float64)) trier {
		return func(v float64) []trial { return vesselTrials(func(k *Vessel) { set(k, v) }) }
	}
	tub := func(set func(t *Tub, v float64)) trier {
		return func(v float64) []trial { return tubTrials(func(t *Tub, _ *Vessel, _ *int) { set(t, v) }) }
	}
	return map[string]trier{
		"capacity of the vessel": vessel(func(k *Vessel, v float64) { k.Capacity = unit.Volume(v) * Litre }),
		"height of the vessel":   vessel(func(k *Vessel, v float64) { k.Height = unit.Length(v) }),
		"diameter of the vessel": vessel(func(k *Vessel, v float64) { k.Diameter = unit.Length(v) }),
		"tare of the vessel":     vessel(func(k *Vessel, v float64) { k.Tare = unit.Mass(v) }),
		"capacity of the tub":    tub(func(t *Tub, v float64) { t.Capacity = unit.Volume(v) * Litre }),
		"height of the tub":      tub(func(t *Tub, v float64) { t.Height = unit.Length(v) }),
		"kegs in the tub": func(v float64) []trial {
			return tubTrials(func(t *Tub, _ *Vessel, kegs *int) { t.Capacity, *kegs = 10000*Litre, int(v) })
		},
		"depth of the bath": func(v float64) []trial {
			held, err := Tub{1000 * Litre, 3}.Holds(unit.Length(v), VesselOf(USBarrel/6), 1)
			return []trial{tried("Tub.Holds", held, err)}
		},
		"water and ice": func(v float64) []trial {
			deep, err := Tub{10000 * Litre, 2}.Depth(unit.Volume(v)*Litre, Vessel{}, 0)
			return []trial{tried("Tub.Depth", deep, err)}
		},
		"packing of the ice": func(v float64) []trial {
			f, err := Tub{100 * Litre, 0.5}.Fit(VesselOf(USBarrel/6), 1, v)
			return []trial{tried("Tub.Fit", f, err)}
		},
	}
}

func pourSetters() map[string]trier {
	pour := func(set func(p *Pour, v float64)) trier {
		return func(v float64) []trial { return pourTrials(func(p *Pour) { set(p, v) }) }
	}
	advised := func(g Glass, abv float64) trial {
		all, err := g.Notes(abv, Sun)
		return tried("Glass.Notes", all, err)
	}
	return map[string]trier{
		"volume of the glass": func(v float64) []trial {
			all := pourTrials(func(p *Pour) { p.Glass.Volume = unit.Volume(v) * Litre })
			return append(all, advised(GlassOf(unit.Volume(v)*Litre), 0.05))
		},
		"bore of the glass": pour(func(p *Pour, v float64) { p.Glass = GlassOf(20 * Litre); p.Glass.Bore = unit.Length(v) * Millimetre }),
		"height of the head": pour(func(p *Pour, v float64) {
			p.Glass = GlassOf(20 * Litre)
			p.Glass.Bore, p.Head = 200*Millimetre, unit.Length(v)*Millimetre
		}),
		"head share":               pour(func(p *Pour, v float64) { p.Head, p.HeadShare = 0, v }),
		"liquid share of the head": pour(func(p *Pour, v float64) { p.Foam = v }),
		"first glass":              pour(func(p *Pour, v float64) { p.FirstGlass = unit.Volume(v) * Litre }),
		"contents of the line":     pour(func(p *Pour, v float64) { p.Line = unit.Volume(v) * Litre }),
		"heel":                     pour(func(p *Pour, v float64) { p.Heel = v }),
		"waste":                    pour(func(p *Pour, v float64) { p.Waste = v }),
		"alcohol by volume": func(v float64) []trial {
			y, err := usualPour().PerKeg()
			if err != nil {
				return []trial{{Name: "Pour.PerKeg", Err: err}}
			}
			d, err := y.Drinks(v)
			return []trial{tried("Yield.Drinks", d, err), advised(usualPour().Glass, v)}
		},
	}
}

func crowdSetters() map[string]trier {
	crowd := func(set func(c *Crowd, v float64)) trier {
		return func(v float64) []trial { return crowdTrials(func(c *Crowd, _ *Choice) { set(c, v) }) }
	}
	beer := func(set func(b *Choice, v float64)) trier {
		return func(v float64) []trial { return crowdTrials(func(_ *Crowd, b *Choice) { set(b, v) }) }
	}
	listed := func(n float64) (all []Choice) {
		y, err := usualPour().PerKeg()
		for range int(n) {
			all = append(all, Choice{Share: 1 / float64(int(n)), Keg: y, Kegs: 1})
		}
		if err != nil {
			panic(err)
		}
		return all
	}
	return map[string]trier{
		"guests": func(v float64) []trial {
			all := crowdTrials(func(c *Crowd, _ *Choice) { c.Guests = int(v) })
			return append(all, barTrials(func(b *Bar) { b.Guests = int(v) })...)
		},
		"duration":                    crowd(func(c *Crowd, v float64) { c.Duration = seconds(3600 * v) }),
		"servings in the first hour":  crowd(func(c *Crowd, v float64) { c.FirstHour = v }),
		"servings in each later hour": crowd(func(c *Crowd, v float64) { c.Later = v }),
		"share who drink beer":        crowd(func(c *Crowd, v float64) { c.Share = v }),
		"weather factor":              crowd(func(c *Crowd, v float64) { c.Weather = v }),
		"spread between people":       crowd(func(c *Crowd, v float64) { c.Spread = v }),
		"doubt in the rates":          crowd(func(c *Crowd, v float64) { c.Doubt = v }),
		"confidence":                  crowd(func(c *Crowd, v float64) { c.Confidence = v }),
		"beers": func(v float64) []trial {
			all, err := DefaultCrowd(60, 5*time.Hour).Menu(listed(v))
			return []trial{tried("Crowd.Menu", all, err)}
		},
		"sum of the shares": beer(func(b *Choice, v float64) { b.Share = min(v, 1) - max(0, v-1) }),
		"share of a beer": func(v float64) []trial {
			all := listed(2)
			all[0].Share, all[1].Share = v, 1-v
			menu, err := DefaultCrowd(60, 5*time.Hour).Menu(all)
			return []trial{tried("Crowd.Menu", menu, err)}
		},
		"kegs on hand":   beer(func(b *Choice, v float64) { b.Kegs = int(v) }),
		"pours in a keg": beer(func(b *Choice, v float64) { b.Keg.Pours = int(v) }),
		"price of a keg": beer(func(b *Choice, v float64) { b.Price = v }),
		"sizes of keg": func(v float64) []trial {
			d, err := DefaultCrowd(1, time.Hour).Mix(listed(v))
			return []trial{tried("Crowd.Mix", d, err)}
		},
		"servings of a mix": func(v float64) []trial { // one hour, one serving each
			all := listed(1)
			all[0].Kegs, all[0].Keg.Pours = 10000, 50000
			d, err := Crowd{Guests: max(1, int(v)), Duration: time.Hour, FirstHour: min(v, 1), Share: 1, Weather: 1, Confidence: 0.5}.Mix(all)
			return []trial{tried("Crowd.Mix", d, err)}
		},
	}
}

func barSetters() map[string]trier {
	bar := func(set func(b *Bar, v float64)) trier {
		return func(v float64) []trial { return barTrials(func(b *Bar) { set(b, v) }) }
	}
	return map[string]trier{
		"servings an hour":             bar(func(b *Bar, v float64) { b.PerHour = v }),
		"time for each serving":        bar(func(b *Bar, v float64) { b.PourTime, b.Change = seconds(v/2), seconds(v/2) }),
		"pour time or change":          bar(func(b *Bar, v float64) { b.PourTime, b.Change = seconds(v), 0 }),
		"wait":                         bar(func(b *Bar, v float64) { b.Wait = seconds(v) }),
		"share served within the wait": bar(func(b *Bar, v float64) { b.Within = v }),
		"rush of the first half hour":  bar(func(b *Bar, v float64) { b.Rush = v }),
		"taps":                         bar(func(b *Bar, v float64) { b.Taps = int(v) }),
		"taps kept busy":               bar(func(b *Bar, v float64) { b.Guests, b.PerHour = 1e6, v*3.6e-3/(b.PourTime+b.Change).Seconds() }),
	}
}

func weighingSetters() map[string]trier {
	return map[string]trier{
		"weight on the scale": func(v float64) []trial {
			r, err := usualPour().Left(unit.Mass(v), 1.01)
			all := cylinderTrials(func(_ *Cylinder, w, _ *unit.Mass) { *w = unit.Mass(v) })
			return append(all, tried("Pour.Left", r, err))
		},
		"final gravity": func(v float64) []trial {
			r, err := usualPour().Left(15, v)
			return []trial{tried("Pour.Left", r, err)}
		},
		"charge of the cylinder": func(v float64) []trial {
			return cylinderTrials(func(c *Cylinder, w, _ *unit.Mass) { c.Charge, *w = unit.Mass(v), c.Tare })
		},
		"tare of the cylinder": func(v float64) []trial {
			return cylinderTrials(func(c *Cylinder, w, _ *unit.Mass) { c.Tare, *w = unit.Mass(v), unit.Mass(v)+1 })
		},
		"gas for each keg": func(v float64) []trial {
			return cylinderTrials(func(_ *Cylinder, _, k *unit.Mass) { *k = unit.Mass(v) })
		},
	}
}

// Each calculation with each row of the validity table at its bounds and beyond.
func TestEveryBound(t *testing.T) {
	setters := map[string]trier{}
	for _, some := range []map[string]trier{vesselSetters(), pourSetters(), crowdSetters(), barSetters(), weighingSetters()} {
		for name, set := range some {
			setters[name] = set
		}
	}
	checktest.EveryBound[RangeError](t, Limits(), checktest.Bounds{
		Setters: setters,
		Fine:    []error{ErrNoSolution, ErrNever},
		Shut: map[string]string{
			"pours in a keg below":    "a keg without a whole pour has no solution",
			"servings of a mix below": "guests and rates are not negative",
			"taps kept busy below":    "guests and rates are not negative",
		},
	})
}
