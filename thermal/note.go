package thermal

import "example.com/pourwell/volume"

// Notes returns what the warming rests on.
func (w Warming) Notes() []Remark {
	k := &w.keg
	var all []Remark
	if w.DewHeatShare > dewCounts {
		all = append(all, note(DewHeats, "Dew brings {%.6g share} of the heat and {%.6g g_per_h} of water drips off. A dry towel or jacket around the keg keeps it away.",
			w.DewHeatShare, float64(w.DewPerHour()/volume.Gram)))
	}
	if k.Around.InCar {
		all = append(all, note(ClosedCar, "A closed car in the sun warms by up to {22 k} within the hour, and a window ajar changes little: carry kegs in the cabin with"+
			" the cooling on, wrapped, and load them last."))
	}
	if k.Around.Sun == 0 && k.Around.Wind == 0 && k.Jacket == 0 && k.UA == 0 && !k.Around.InCar {
		all = append(all, note(KegPractice, "Common practice, no source: a bare 5 gal keg gains {5.5556 k} in about 2 h in dry shade at {30 c}, and takes about 16 h back"+
			" in still refrigerator air just above freezing. This model agrees within 30 %%."))
	}
	if k.UA > 0 && k.Around.Sun > 0 {
		all = append(all, note(UAInSun, "A UA is measured in the shade. The sun counts as warmer air, {%.6g c}: what a keg of that finish comes to.", w.Settles.Celsius()))
	}
	return all
}

// Notes returns what to do about what was found in the tub.
func (c Chilling) Notes() []Remark {
	b := &c.bath
	var all []Remark
	if c.Layered {
		cools := "the water"
		if b.Drained {
			cools = "the ice"
		}
		all = append(all, note(Uncovered, "Only {%.6g share} of the keg stands in %s. The beer above it stays on top of the cold and pours last, as it sinks.%s Keep the top of the keg covered.",
			c.Covered, cools, b.takes()))
	}
	all = append(all, c.late()...)
	if b.Around.Sun > 0 && !b.Lid {
		all = append(all, note(TubInSun, "The tub stands in sun of {%.6g w_per_m2}: shade and a lid save ice.", float64(b.Around.Sun)))
	}
	if b.Salt > 0 {
		all = append(all, note(SaltedBath, "The salted bath freezes at {%.6g c}, and less cold as ice melts into it.", c.BathFreezes.Celsius()))
	}
	return all
}

// takes says what fills the tub, and whether that is enough.
func (b *IceBath) takes() volume.Sentence {
	f, err := b.Tub.Fit(b.Vessel, b.Kegs, volume.BaggedIce)
	if err != nil {
		return say(" What fills this tub is not known: %s.", why(err))
	}
	with, covered := say(" and {%.4g l} of water", float64(f.Water/volume.Litre)), f.Covered
	if b.Drained {
		with, covered = "", min(float64(f.Top/b.Vessel.Height), 1)
	}
	enough := say("covers %.0f %%: fill it, or use a narrower tub.", 100*covered)
	if covered < enoughCovered*b.Fill {
		enough = say("even that covers only %.0f %%: use a deeper tub.", 100*covered)
	}
	return say(" Filled around the kegs this tub takes {%.4g kg} of ice%s, and %s", float64(f.Ice), with, enough)
}

// late tells of top-ups and pours that come after the end.
func (c Chilling) late() []Remark {
	var all []Remark
	for _, u := range c.bath.TopUps {
		if u.At > c.Time {
			all = append(all, note(LateTopUp, "A top-up after {%.6g s} comes too late for this answer: only the time that the ice lasts counts it.", c.Time.Seconds()))
			break
		}
	}
	for _, p := range c.bath.Pours {
		if p.End > c.Time {
			all = append(all, note(LatePour, "A pour that runs past {%.6g s} counts in this answer only as far as it has run by then; the time that the ice lasts counts all of it.",
				c.Time.Seconds()))
			break
		}
	}
	return all
}

// Notes returns what the chill rests on.
func (r CoilChill) Notes() []Remark {
	var all []Remark
	if r.inlet < r.risk.bath {
		all = append(all, note(WarmBath, "The bath is warmer than the beer and warms it."))
	}
	return append(all,
		note(CoilPractice, "Common practice, no source: {15.24 m} of coil for glasses now and then, {36.6 m} for a queue. The model agrees for a packed bath."),
		note(IceForBeer, "Ice is counted for the beer alone; what the box itself melts comes on top."))
}

// Notes returns those of the coil at the largest flow.
func (l CoilLimit) Notes() []Remark { return l.Chill.Notes() }

// Notes returns what a plate asks of beer and ice.
func (r PlateChill) Notes() []Remark {
	var all []Remark
	if r.plate.Contact == 0 {
		all = append(all, note(FloodedPlate, "Let the water off now. Water that is warmed from below lies still until it is above {4 c}, and the ice floats off the plate:"+
			" drained, the same plate does several times as much."))
	}
	if r.inlet > plateBeer {
		all = append(all, note(WarmForPlate, "Common practice, no source: a plate wants beer at {10 c} to {%g c} or colder, and glasses with a rest between them. The model agrees:"+
			" warmer beer is work for a coil.", plateBeer))
	}
	return all
}

// Notes returns what foam and shade would do, from the line without and with
// them.
func (r LineRun) Notes() []Remark {
	l, air := &r.line, r.line.Around.Air.Celsius()
	all := []Remark{r.foam()}
	if l.Around.Sun > 0 {
		all = append(all, note(AbsorbedSun, "The outside is assumed to absorb {%.4g share} of the sunshine on it, as dark tubes and foam do; a light one takes up less.", l.Solar))
	}
	if r.settles-air > sunCounts {
		all = append(all, note(LineInSun, "In the sun the line settles at {%.6g c}, above the air's {%.6g c}: shade comes before foam.", r.settles, air))
	}
	if !r.flows && r.Temperature.Celsius() > foamsAtTap {
		all = append(all, note(WarmInLine, "Beer this warm foams when it meets the tap: pour it into a jug first, or keep the line short and cold."))
	}
	return all
}

// foam compares with the line in foam, or with the bare one where it is in foam.
func (r LineRun) foam() Remark {
	other, format := r.line, "In {12.7 mm} of foam the line would take {%.5g s} for the same way. Foam delays, it does not keep beer cold overnight."
	other.Insulation = volume.Inch / 2
	if r.line.Insulation > 0 {
		other.Insulation, format = 0, "Bare, the line would take {%.5g s} for the same way."
	}
	o, err := other.Stand(Celsius(r.inlet), 0)
	if err != nil {
		return note(FoamDelays, "What foam does to this line is not known: %s.", why(err))
	}
	return note(FoamDelays, format, o.TimeConstant.Seconds())
}

// Notes compares with a rinsed glass where the glass costs much, and says what
// the sun does.
func (r GlassRun) Notes() []Remark {
	var all []Remark
	if b := r.Band(); b.High-b.Low > bandShows {
		all = append(all, note(OneSided, "The band lies to one side: at {%.6g c} all of the glass has come to the beer's temperature, at the other end"+
			" {%g share} of it, its foot and rim, has not when the beer is drunk.", r.common, glassFoot))
	}
	if r.GlassCost > glassCounts {
		all = append(all, r.rinsed())
	}
	if g := &r.glassful; g.Around.Sun > 0 {
		all = append(all,
			note(AbsorbedSun, "Glass and beer are assumed to absorb {%.4g share} of the sunshine on them.", g.Solar),
			note(volume.LightStruck, "Sunlight also spoils the taste of hopped beer within minutes (common practice, no source): serve in the shade."))
	}
	return all
}

func (r GlassRun) rinsed() Remark {
	g := r.glassful
	g.From = Celsius(rinse)
	cool, err := g.Pour(Celsius(r.poured), seconds(r.wait))
	if err != nil {
		return note(RinsedGlass, "Rinsed with water of {%g c} just before: %s.", rinse, why(err))
	}
	return note(RinsedGlass, "Rinsed with water of {%g c} just before, the same glass gives {%.4g c} and after {%.6g s} {%.4g c}. Thin cups cost least.",
		rinse, cool.Temperature.Celsius(), r.wait, cool.After.Celsius())
}

// Notes returns how far the conductance is to be trusted.
func (r Calibrated) Notes() []Remark {
	if r.melted > 0 {
		return []Remark{note(ClosedBox, "The box must have been closed and its inside at {0 c} throughout, with ice left at the end.")}
	}
	var all []Remark
	if r.Scatter > 2*r.thermometer {
		all = append(all, note(Scattered, "The readings scatter by {%.6g k}, more than the thermometer: was the air steady, the beer mixed, the sun away?", float64(r.Scatter)))
	}
	if r.Uncertainty > r.UA/4 {
		all = append(all, note(WideReadings, "The readings leave it this wide: take another a few hours later, when the beer has moved further."))
	}
	return append(all, note(LikeTheDay, "A keg takes more heat per kelvin on a humid day and in wind: calibrate in weather like that of the day."))
}
