package lines

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// What the cautions of this package are about, beside over-pressure, which is
// [carbonation.OverPressure].
const (
	AboveRating   volume.Code = "above-rating"      // more pressure than the weakest part is rated for
	NearRelief    volume.Code = "near-relief-valve" // more pressure than relief valves are far above
	Caustic       volume.Code = "caustic-cleaner"   // burns skin and eyes
	MixedCleaners volume.Code = "mixed-cleaners"    // poisonous gas
	CleanerInLine volume.Code = "cleaner-in-line"   // opened under pressure, or served
	LabelFirst    volume.Code = "label-first"       // maker's label and local codes
)

// What the notes of this package are about.
const (
	InTransition   volume.Code = "transition"     // a tube between laminar and turbulent flow
	CutBack        volume.Code = "cut-back"       // how to come to a length
	TradeTable     volume.Code = "trade-table"    // what the table of restriction is worth
	FactorHolds    volume.Code = "factor-holds"   // where a calibration carries over
	LongerGlass    volume.Code = "longer-glass"   // how to time a glass better
	TubesAlone     volume.Code = "tubes-alone"    // what the amounts of a cleaning leave out
	CleanPractice  volume.Code = "clean-practice" // where its amounts and times come from
	PullOnGas      volume.Code = "pull-on-gas"    // what an exposure means
	GasComesOut    volume.Code = "gas-comes-out"  // what to do about it in a flowing line
	CreviceAssumed volume.Code = "crevice"        // what breakout is reckoned from
	CoolerKeg      volume.Code = "cooler-keg"     // what cooling the keg beforehand saves
	GasLeavesKeg   volume.Code = "gas-leaves-keg" // a gauge that does not hold a warm keg's gas
	Choke          volume.Code = "choke"          // tube to add
	WithoutPause   volume.Code = "without-pause"  // the pour that an outlet is reckoned for
	WeightRanks    volume.Code = "weight-ranks"   // what the size of a finding means
)

// Thresholds of the cautions and notes.
const (
	// nearRelief is the gauge pressure above which a keg should be cooled
	// instead: relief valves of CO2 lines open at 45 psi in the UK (practice).
	nearRelief = 40 * carbonation.PSI

	// holdsNearly is the share of the needed pressure below which the gas is
	// said to leave the keg: what gauges are good to.
	holdsNearly = 0.95
)

// overPressure words the cautions that go with a gauge pressure on a run whose
// weakest part is rated for so much, 0 if that is not known.
func overPressure(g carbonation.Gauge, rated unit.Pressure) []Remark {
	high := carbonation.HighPressure(g)
	if rated <= 0 || !quantity.Above(g.Pascals(), float64(rated)) {
		return high
	}
	return append([]Remark{remark(AboveRating, volume.Danger, "{%.5g kpa} is above the rating of {%.5g kpa}: do not apply it. The stamp of the"+
		" weakest part binds: keg, coupler, line, clamp, tap or coil.", g.KPa(), float64(rated/carbonation.KPa))}, high...)
}

// note is a remark of what the answer rests on.
func note(code volume.Code, format string, args ...any) Remark {
	return remark(code, volume.Note, format, args...)
}

func remark(code volume.Code, severity volume.Severity, format string, args ...any) Remark {
	return Remark{Code: code, Severity: severity, Text: say(format, args...)}
}

// Cautions returns what to mind with the pressure of this pour: nothing up to
// [carbonation.HighGauge] and the run's Rated pressure.
func (p Pour) Cautions() []Remark { return overPressure(p.Gauge, p.circuit.rated) }

// Notes returns what the pour rests on.
func (p Pour) Notes() []Remark {
	var notes []Remark
	if p.answer == answerLength {
		notes = append(notes, note(CutBack, "Start longer and cut back: a tube is easily shortened."))
	}
	for i := range p.circuit.n {
		if p.tube(i).Regime == "transition" {
			return append(notes, note(InTransition, "One tube is between laminar and turbulent flow, where it may carry either: the band spans both."))
		}
	}
	return notes
}

// Cautions returns what to mind with the pressure of the balance.
func (b TradeBalance) Cautions() []Remark { return overPressure(b.Gauge, b.rated) }

// Notes returns what the trade's table is worth beside friction.
func (b TradeBalance) Notes() []Remark {
	const differs = "its restriction is 1.5 to 2.5 times the friction of smooth vinyl tube and 0.5 to 0.8 times that of barrier or steel." +
		" One timed glass decides."
	if b.solved >= 0 {
		return []Remark{note(TradeTable, "By the trade's table it would be {%.5g m}, a separate sum: %s", float64(b.Length), differs)}
	}
	vinyl := ""
	if b.unnamed {
		vinyl = ", a tube without a material taken as vinyl"
	}
	return []Remark{note(TradeTable, "The trade's table balances this run at {%.5g kpa}, whatever the flow%s. It is a separate sum: %s",
		b.Gauge.KPa(), vinyl, differs)}
}

// Cautions returns what to mind with the pressure that the glass was timed at.
func (k Calibration) Cautions() []Remark { return overPressure(k.gauge, k.rated) }

// Notes returns how far the factor carries.
func (k Calibration) Notes() []Remark {
	return []Remark{
		note(FactorHolds, "The factor holds for this line as it is. It takes up what is wrong with the assumed losses of fittings and tap,"+
			" so it carries over to another pressure better than to another tube."),
		note(LongerGlass, "The longer the glass takes, the surer the factor: a jug is better than a glass."),
	}
}

// Cautions returns what to mind with the pressure on the flowing beer.
func (p Profile) Cautions() []Remark { return p.Pour.Cautions() }

// Notes returns what the exposure means, and what to do where gas comes out.
func (p Profile) Notes() []Remark {
	notes := []Remark{note(PullOnGas, "The pull on the gas is the pressure lacking to hold it times the seconds that lasts, in kPa s. Every line has"+
		" some: what counts is how much more it is than in the same line cold and balanced. Below zero it is less.")}
	if p.GasComesOut {
		notes = append(notes, note(GasComesOut, "Cool or insulate the line, or raise pressure and restriction together by {%.5g kpa}.",
			float64(p.Excess/carbonation.KPa)))
	}
	return notes
}

// Cautions returns what to mind with the pressure on the standing beer.
func (s Standing) Cautions() []Remark { return overPressure(s.serving.Gauge, s.rated) }

// Notes returns what the breakout temperature is reckoned from.
func (s Standing) Notes() []Remark {
	return []Remark{note(CreviceAssumed, "Standing beer is taken to foam when {%.5g kpa} are lacking to hold its gas, the pressure across a bubble as wide as"+
		" the crevice it grows from. Nobody measures crevices at a bar: thresholds from {%.4g kpa} to {%.4g kpa} give the band.",
		float64(s.Threshold/carbonation.KPa), float64(leastThreshold/carbonation.KPa), float64(mostThreshold/carbonation.KPa))}
}

// Cautions returns what to mind with the pressure that the warm keg needs, or
// that is applied to it if that is more.
func (w Warm) Cautions() []Remark {
	g := w.Pour.Gauge
	if w.Needed.Pascals() > g.Pascals() {
		g = w.Needed
	}
	out := overPressure(g, w.Pour.circuit.rated)
	if quantity.Above(g.Pascals(), float64(nearRelief)) {
		out = append(out, remark(NearRelief, volume.Caution, "A pressure this high is near the relief valves of kegs and lines ({%.5g kpa} is"+
			" common for CO2 lines in the UK, practice): cool the keg before serving, in ice or in the shade, rather than raise the pressure.",
			float64(45*carbonation.PSI/carbonation.KPa)))
	}
	return out
}

// Notes returns what the pressure rests on and how to slow the pour.
func (w Warm) Notes() []Remark {
	var notes []Remark
	if w.ColdOnly.IsValid() {
		notes = append(notes, note(CoolerKeg, "The gas in the warm keg needs {%.5g kpa}; as cold as it leaves the tap the beer would need {%.5g kpa}."+
			" A keg cooled beforehand needs less pressure, less coil and less ice.", w.Needed.KPa(), w.ColdOnly.KPa()))
	}
	if w.Pour.Gauge.Pascals() < holdsNearly*w.Needed.Pascals() {
		notes = append(notes, note(GasLeavesKeg, "At the pressure that is set the gas leaves the warm beer in the keg."))
	}
	if w.Choker > 0 {
		notes = append(notes, note(Choke, "Add {%.5g m} of tube like the last to slow the pour to {%.5g l_per_min}, or close a flow-control tap a little.",
			float64(w.Choker), w.serving.Target.LitresPerMinute()))
	}
	return append(notes, note(WithoutPause, "This is beer that flows without a pause. The first glasses are colder, since the coil holds cold beer."))
}

// Cautions returns what to mind with the pressure on the gauge, or with the one
// that the keg needs if that is more.
func (d Diagnosis) Cautions() []Remark {
	if d.seen == nil {
		return nil
	}
	g := d.seen.Serving.Gauge
	if d.Needed.Pascals() > g.Pascals() {
		g = d.Needed
	}
	return overPressure(g, d.seen.Run.Rated)
}

// Notes returns what the size of a finding means, if there is one.
func (d Diagnosis) Notes() []Remark {
	if len(d.Findings) == 0 {
		return nil
	}
	return []Remark{note(WeightRanks, "The weight ranks the causes and is no gauge reading: the pressure by which the gas is not held,"+
		" or that is left over or missing, wherever in the line.")}
}

// Cautions returns what can hurt someone when lines are cleaned.
func (c Cleaning) Cautions() []Remark {
	return []Remark{
		remark(Caustic, volume.Caution, "Line cleaner is caustic: it burns skin and blinds eyes. Wear goggles and gloves, add cleaner to water and never water to cleaner, and keep running water at hand."),
		remark(MixedCleaners, volume.Caution, "Never mix cleaners: acid or ammonia with chlorine sets free poisonous gas. Rinse to neutral before another cleaner follows."),
		remark(CleanerInLine, volume.Caution, "Take the pressure off before a line is opened, mark the line while cleaner stands in it, and test the rinse with paper: nobody may be served cleaner."),
		remark(LabelFirst, volume.Caution, "The maker's label and local codes set strength, contact time and disposal."),
	}
}

// Notes returns what the amounts count, and where they come from.
func (c Cleaning) Notes() []Remark {
	return []Remark{
		note(TubesAlone, "The amounts are for what the tubes hold, {%.5g l}, and for nothing else: coupler, tap, fittings, the bucket they are washed in"+
			" and gloves need more of both. Caustic cleaner is rinsed off under running water, or with buckets of it.", float64(c.Fill/volume.Litre)),
		note(CleanPractice, "Amounts and contact times are common practice; the label of the cleaner goes first. Rinse the lines the same day they were"+
			" used: beer left in them is harder to remove."),
	}
}
