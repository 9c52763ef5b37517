package thermal

import (
	"math"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// What beer is made of, and how warm it is.
func (on setter) beerRows() map[string]trier {
	return map[string]trier{
		"alcohol by volume": func(v float64) []trial {
			b, err := BeerOf(v, 1.010)
			strong, errStrong := BeerFromOriginal(v, 1.160)
			return append(beerTrials(on.t, b, err), beerTrials(on.t, strong, errStrong)...)
		},
		"final gravity": func(v float64) []trial {
			b, err := BeerOf(0.08, v)
			light, errLight := BeerOf(0, v)
			return append(beerTrials(on.t, b, err), beerTrials(on.t, light, errLight)...)
		},
		"original gravity": func(v float64) []trial {
			light, err := BeerFromOriginal(0, v)
			strong, errStrong := BeerFromOriginal(0.2, v)
			return append(beerTrials(on.t, light, err), beerTrials(on.t, strong, errStrong)...)
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
			return beerTrials(on.t, b, err)
		},
		"beer temperature": joined(
			on.keg(func(k *Keg, v float64) { k.From = Celsius(v) }),
			on.bath(func(b *IceBath, v float64) { b.From = Celsius(v) }),
			func(v float64) []trial {
				return coilTrials(func(_ *Coil, in *Temperature, _ *Pours) { *in = Celsius(v) })
			},
			func(v float64) []trial {
				return lineTrials(func(_ *Line, in *Temperature, _ *Flow, _ *time.Duration) { *in = Celsius(v) })
			},
			func(v float64) []trial {
				return glassTrials(on.t, func(_ *Glassful, beer *Temperature, _ *time.Duration) { *beer = Celsius(v) })
			},
			func(v float64) []trial {
				return glassTrials(on.t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.From = Celsius(v) })
			},
			func(v float64) []trial {
				k := DefaultKeg(vessel(on.t, "soda-5gal"), Celsius(5), weathers()[1])
				w, err := k.Reach(Celsius(v))
				b := DefaultIceBath(vessel(on.t, "soda-5gal"), Celsius(15), weathers()[1])
				c, errBath := b.Reach(Celsius(v))
				l, errCoil := DefaultCoil().LargestFlow(Celsius(20), Celsius(v))
				return []trial{tried("Keg.Reach", w, err), tried("IceBath.Reach", c, errBath), tried("Coil.LargestFlow", l, errCoil)}
			},
		),
	}
}

// The air around, and the sun.
func (on setter) surroundingsRows() map[string]trier {
	return map[string]trier{
		"air temperature": joined(on.around(func(s *Surroundings, v float64) { s.Air = Celsius(v) }),
			melts(func(v float64) (Conductance, Temperature, time.Duration) { return 1, Celsius(v), time.Hour })),
		"relative humidity": on.around(func(s *Surroundings, v float64) { s.Humidity = v }),
		"pressure altitude": on.around(func(s *Surroundings, v float64) { s.Altitude = unit.Length(v) }),
		"sun":               on.around(func(s *Surroundings, v float64) { s.Sun = Irradiance(v) }),
		"wind":              on.around(func(s *Surroundings, v float64) { s.Wind = unit.Velocity(v) }),
		"latitude":          sky(func(v float64) (lat, day, hour float64) { return v, 172, 12 }),
		"day of the year":   sky(func(v float64) (lat, day, hour float64) { return 50, v, 12 }),
		"hour by the sun":   sky(func(v float64) (lat, day, hour float64) { return 50, 172, v }),
	}
}

// A keg, and how long it stands.
func (on setter) kegRows() map[string]trier {
	return map[string]trier{
		"keg":          on.vessels(func(b *volume.Vessel, v float64) { b.Capacity = unit.Volume(v) * volume.Litre }),
		"keg diameter": on.vessels(func(b *volume.Vessel, v float64) { b.Diameter = unit.Length(v) }),
		"keg height":   on.vessels(func(b *volume.Vessel, v float64) { b.Height = unit.Length(v) }),
		"tare":         on.vessels(func(b *volume.Vessel, v float64) { b.Tare = unit.Mass(v) }),
		"fill":         joined(on.keg(func(k *Keg, v float64) { k.Fill = v }), on.bath(func(b *IceBath, v float64) { b.Fill = v })),
		"jacket":       on.keg(func(k *Keg, v float64) { k.Jacket = unit.Length(v) }),
		"measured UA":  joined(on.keg(func(k *Keg, v float64) { k.UA = Conductance(v) }), on.bath(func(b *IceBath, v float64) { b.UA = Conductance(v) })),
		"surface":      on.keg(func(k *Keg, v float64) { k.Surface = Surface(v) }),
		"time": joined(
			func(v float64) (all []trial) {
				for _, s := range weathers() {
					k := DefaultKeg(vessel(on.t, "soda-5gal"), Celsius(5), s)
					w, err := k.After(hours(v))
					all = append(all, tried("Keg.After", w, err))
					b := DefaultIceBath(vessel(on.t, "soda-5gal"), Celsius(5), s)
					c, err := b.After(hours(v))
					all = append(all, tried("IceBath.After", c, err))
					c, err = b.Dry().After(hours(v))
					all = append(all, tried("IceBath.After, dry", c, err))
					kept, err := b.KeptCold(hours(v), Upkeep{Bag: 50, Reserve: UsualReserve})
					all = append(all, tried("IceBath.KeptCold", float64(len(kept.TopUps)), err))
				}
				return all
			},
			on.bath(func(b *IceBath, v float64) { b.TopUps = []TopUp{{hours(v), 5}} }),
			on.bath(func(b *IceBath, v float64) { b.Pours = []Pour{{0, hours(v), 5 * volume.Litre}} }),
			melts(func(v float64) (Conductance, Temperature, time.Duration) { return 1, Celsius(30), hours(v) }),
			melted(func(v float64) (unit.Mass, Temperature, time.Duration) { return 5, Celsius(30), hours(v) }),
		),
	}
}

// Kegs in ice and water.
func (on setter) bathRows() map[string]trier {
	return map[string]trier{
		"air temperature around a bath": on.bath(func(b *IceBath, v float64) { b.Around.Air = Celsius(v) }),
		"kegs in a tub": on.bath(func(b *IceBath, v float64) {
			b.Kegs, b.Tub, b.Ice = int(v), volume.Tub{Capacity: 4, Height: 0.7}, unit.Mass(100)
		}),
		"ice": on.bath(func(b *IceBath, v float64) { b.Ice, b.Tub = unit.Mass(v), volume.Tub{Capacity: 10, Height: 1} }),
		"water": on.bath(func(b *IceBath, v float64) {
			b.Water, b.Tub = unit.Volume(v)*volume.Litre, volume.Tub{Capacity: 10, Height: 1}
		}),
		"ice temperature":   on.bath(func(b *IceBath, v float64) { b.IceFrom = Celsius(v) }),
		"water temperature": on.bath(func(b *IceBath, v float64) { b.WaterFrom = Celsius(v) }),
		"salt in the water": on.bath(func(b *IceBath, v float64) { b.Salt = v }),
		"tub wall":          on.bath(func(b *IceBath, v float64) { b.Wall = unit.Length(v) }),
		"wall conductivity": on.bath(func(b *IceBath, v float64) { b.Conductivity = Conductivity(v) }),
		"ice and water together": on.bath(func(b *IceBath, v float64) {
			b.Ice, b.Water, b.Tub = unit.Mass(v/2), unit.Volume(v/2)*volume.Litre, volume.Tub{Capacity: 10, Height: 1}
			if b.Drained {
				b.Ice, b.Water = unit.Mass(min(v, limitIce.Max)), 0
			}
		}),
		"volume of a pour": on.bath(func(b *IceBath, v float64) { b.Pours = []Pour{{0, time.Hour, unit.Volume(v) * volume.Litre}} }),
		"bag of ice": func(v float64) []trial {
			b := DefaultIceBath(vessel(on.t, "soda-5gal"), Celsius(5), weathers()[1])
			kept, err := b.KeptCold(8*time.Hour, Upkeep{Bag: unit.Mass(v), Reserve: UsualReserve})
			return []trial{tried("IceBath.KeptCold", float64(len(kept.TopUps)), err)}
		},
		"reserve of ice": func(v float64) []trial {
			b := DefaultIceBath(vessel(on.t, "soda-5gal"), Celsius(5), weathers()[1])
			kept, err := b.KeptCold(8*time.Hour, Upkeep{Bag: 5, Reserve: v})
			return []trial{tried("IceBath.KeptCold", float64(len(kept.TopUps)), err)}
		},
	}
}

// What beer flows through.
func (on setter) tubeRows() map[string]trier {
	return map[string]trier{
		"tube length": joined(on.coil(func(c *Coil, v float64) { c.Length = unit.Length(v) }), on.line(func(l *Line, v float64) { l.Length = unit.Length(v) }),
			on.plate(func(p *Plate, v float64) { p.Passage = unit.Length(v) })),
		"bore": joined(on.coil(func(c *Coil, v float64) { c.Bore = unit.Length(v / 1e3) }), on.line(func(l *Line, v float64) { l.Bore = unit.Length(v / 1e3) }),
			on.plate(func(p *Plate, v float64) { p.Bore = unit.Length(v / 1e3) })),
		"tube wall": joined(on.coil(func(c *Coil, v float64) { c.Wall = unit.Length(v / 1e3) }), on.line(func(l *Line, v float64) { l.Wall = unit.Length(v / 1e3) })),
		"conductivity of the tube": joined(on.coil(func(c *Coil, v float64) { c.Conductivity = Conductivity(v) }), on.line(func(l *Line, v float64) { l.Conductivity = Conductivity(v) }),
			on.line(func(l *Line, v float64) { l.Insulation, l.InsulationConductivity = 0.01, Conductivity(v) })),
		"winding": joined(on.coil(func(c *Coil, v float64) { c.Winding = unit.Length(v) }),
			on.coil(func(c *Coil, v float64) { c.Bore, c.Winding = 0.025, unit.Length(v) })),
		"bore over winding":            on.coil(func(c *Coil, v float64) { c.Winding = c.Bore / unit.Length(v) }),
		"bath temperature":             on.coil(func(c *Coil, v float64) { c.Bath = Celsius(v) }),
		"film coefficient":             joined(on.coil(func(c *Coil, v float64) { c.Film = FilmCoefficient(v) }), on.plate(func(p *Plate, v float64) { p.Film = FilmCoefficient(v) })),
		"band of the film coefficient": on.coil(func(c *Coil, v float64) { c.FilmBand = v }),
		"flow": joined(on.pours(func(p *Pours, v float64) { p.Flow = Flow(v / 60e3); p.Every = time.Hour }),
			func(v float64) []trial {
				return lineTrials(func(_ *Line, _ *Temperature, f *Flow, _ *time.Duration) { *f = Flow(v / 60e3) })
			}),
		"Reynolds number": func(v float64) []trial {
			return coilTrials(func(c *Coil, inlet *Temperature, p *Pours) {
				p.Every = time.Hour
				p.Flow = Flow(limitFlow.Min / 60e3 * 1.0001)
				for range 60 { // the flow that has it
					if r := c.chill(inlet.Celsius(), float64(p.Flow), coilStations); v > 1000 {
						p.Flow *= Flow(v / r.Reynolds)
					}
				}
			})
		},
	}
}

// Pours, plates and glasses.
func (on setter) glassRows() map[string]trier {
	return map[string]trier{
		"beer in the glass": joined(on.pours(func(p *Pours, v float64) { p.Glass = unit.Volume(v) * volume.Litre; p.Every = time.Hour }),
			func(v float64) []trial {
				return glassTrials(on.t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Liquid = unit.Volume(v) * volume.Litre })
			}),
		"time from glass to glass": on.pours(func(p *Pours, v float64) { p.Every = time.Duration(v * float64(time.Second)) }),
		"number of glasses":        on.pours(func(p *Pours, v float64) { p.Number = int(v) }),
		"size of the plate":        joined(on.plate(func(p *Plate, v float64) { p.Width = unit.Length(v) }), on.plate(func(p *Plate, v float64) { p.Depth = unit.Length(v) })),
		"mass of the plate":        on.plate(func(p *Plate, v float64) { p.Mass = unit.Mass(v) }),
		"contact share":            on.plate(func(p *Plate, v float64) { p.Contact = v }),
		"beer temperature at a plate": func(v float64) []trial {
			return plateTrials(func(_ *Plate, in *Temperature, _ *Pours, _ *unit.Mass) { *in = Celsius(v) })
		},
		"ice on the plate": func(v float64) []trial {
			return plateTrials(func(_ *Plate, _ *Temperature, _ *Pours, ice *unit.Mass) { *ice = unit.Mass(v) })
		},
		"insulation": on.line(func(l *Line, v float64) { l.Insulation = unit.Length(v / 1e3) }),
		"absorbed share of sunshine": joined(on.line(func(l *Line, v float64) { l.Solar = v }), func(v float64) []trial {
			return glassTrials(on.t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Solar = v })
		}),
		"standing time": func(v float64) []trial {
			return lineTrials(func(_ *Line, _ *Temperature, _ *Flow, d *time.Duration) { *d = hours(v) })
		},
		"mass of the glass": func(v float64) []trial {
			return glassTrials(on.t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Glass.Mass = unit.Mass(v) })
		},
		"bore of the glass": func(v float64) []trial {
			return glassTrials(on.t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Glass.Bore = unit.Length(v / 1e3) })
		},
		"fill of the glass": func(v float64) []trial {
			return glassTrials(on.t, func(g *Glassful, _ *Temperature, _ *time.Duration) { g.Liquid = unit.Volume(v) * g.Glass.Volume })
		},
		"wait": func(v float64) []trial {
			return glassTrials(on.t, func(_ *Glassful, _ *Temperature, wait *time.Duration) { *wait = hours(v) })
		},
	}
}

// What is measured of a keg or a box.
func (on setter) readingRows() map[string]trier {
	return map[string]trier{
		"number of readings": on.calibration(func(c *Calibration, v float64) {
			c.Readings = nil
			for i := range int(v) {
				f := float64(i) / (v - 1)
				c.Readings = append(c.Readings, Reading{hours(10 * f), Celsius(25 - 20*math.Exp(-f))})
			}
		}),
		"time between first and last": on.calibration(func(c *Calibration, v float64) { c.Readings[1].Time = time.Duration(v * float64(time.Second)) }),
		"distance of a reading from the air": on.calibration(func(c *Calibration, v float64) {
			far := max(v, 10) // one reading lies v from the air, the other nearer or farther
			near := min(v, 10)
			c.Air, c.Readings[0].Temperature, c.Readings[1].Temperature = Celsius(59), Celsius(59-far), Celsius(30)
			if v < 10 {
				c.Air, c.Readings[0].Temperature, c.Readings[1].Temperature = Celsius(30), Celsius(30-far), Celsius(30-near)
			}
		}),
		"content":                  on.calibration(func(c *Calibration, v float64) { c.Content = unit.Volume(v) * volume.Litre }),
		"mass of metal":            on.calibration(func(c *Calibration, v float64) { c.Metal = unit.Mass(v) }),
		"error of the thermometer": on.calibration(func(c *Calibration, v float64) { c.Thermometer = Difference(v) }),
		"melted ice": melted(func(v float64) (unit.Mass, Temperature, time.Duration) {
			return unit.Mass(v), Celsius(30), 5 * time.Hour
		}),
		"air around the ice": melted(func(v float64) (unit.Mass, Temperature, time.Duration) { return 5, Celsius(v), 5 * time.Hour }),
		"UA of a box": melts(func(v float64) (Conductance, Temperature, time.Duration) {
			return Conductance(v), Celsius(30), time.Hour
		}),
	}
}
