package carbonation

import "example.com/pourwell/volume"

// When a growler or bottle deserves the stronger warning. Our choice, no
// source: no rating of growlers was found, and the maker's rating binds.
const (
	overCarbonated = 2.7  // volumes
	warm           = 25.0 // °C
	tight          = 0.01 // share of the vessel left to gas
	roomy          = 0.03 // share of the vessel that it should have had
)

// Verdict says first of all not to do what can burst the vessel; it is empty
// where nothing speaks against it.
func (p Package) Verdict() volume.Sentence {
	vessel := p.sealed.Vessel
	switch glass := vessel.IsGlass(); {
	case p.OverRating:
		return say("Do not: the %v comes above its rating of {%v kpa}.", vessel, p.sealed.Rating.KPa())
	case p.Tight:
		return say("Do not: the beer all but fills the %v as it warms, and then bursts it.", vessel)
	case glass && p.OverCarbonated && p.Warm:
		return "Do not: beer with so much CO2, and so warm, can burst the glass."
	case glass && p.OverCarbonated:
		return "Do not: beer with so much CO2 can burst the glass."
	case glass && p.Warm:
		return "Do not let it get so warm: the glass can burst."
	}
	return ""
}

// Cautions says what can hurt someone, the worst first.
func (p Package) Cautions() []volume.Remark {
	var all []volume.Remark
	if p.OverRating {
		all = append(all, danger(OverPressure, "{%v kpa} is above the rating of {%v kpa}, which binds.", p.Gauge.KPa(), p.sealed.Rating.KPa()))
	}
	if p.Tight {
		all = append(all, danger(Bursting, "The beer has grown to leave only {%v share} for gas. Once it fills the vessel nothing gives way and the vessel bursts:"+
			" leave more headspace, at least {%v share}, our choice.", p.Headspace, roomy))
	}
	all = append(all, p.ofVessel()...)
	if p.Hot {
		all = append(all, caution(HotCar, "A closed car in the sun gets as hot as this: never leave closed beer in one."))
	}
	if p.sealed.Vessel.IsGlass() {
		all = append(all, caution(UnratedGlass, "Growlers and most bottles carry no pressure rating: take the glass as unrated. Keep it full of cold beer,"+
			" upright, out of sun and car, and never let beer ferment or prime in it."))
	}
	if p.PushBack > 0 {
		all = append(all, caution(PushBack, "Connected now, the %v pushes gas and beer back towards the regulator: {%v kpa} is enough to lift beer {%v m}."+
			" Fit a check valve in the gas line, and cool the %[1]v or raise the regulator first.", p.sealed.Vessel, float64(p.PushBack/KPa), float64(p.Lift)))
	}
	return append(all, caution(Venting, "Let the pressure off slowly, away from faces, and cold. The rating of the maker binds; nothing here is one."))
}

// ofVessel returns the cautions that depend on what the beer is closed in.
func (p Package) ofVessel() []volume.Remark {
	risky := p.OverCarbonated || p.Warm
	switch vessel := p.sealed.Vessel; {
	case vessel == Keg && p.Warm:
		return append([]volume.Remark{caution(OverPressure, "A warm keg may stand above its rating: read the stamp, and see that its relief valve is there and free.")}, HighPressure(p.Gauge)...)
	case vessel == Keg:
		return HighPressure(p.Gauge)
	case vessel == Can && risky:
		return []volume.Remark{caution(Bursting, "A can bulges, leaks or bursts: keep it cold, and below the pressure its maker states.")}
	case vessel.IsGlass() && risky:
		return []volume.Remark{danger(Bursting, "Above {%v volumes} or {%v c} (our choice of limits, no source) glass can burst and throw splinters."+
			" Do not close it so, do not let it warm; if it has warmed, cover it, leave it to cool and stay away.", overCarbonated, warm)}
	}
	return nil
}

// Notes says what the answer rests on.
func (p Package) Notes() []volume.Remark {
	var all []volume.Remark
	if p.Hot {
		all = append(all, note(Method, "Above {%v c} the solubility is that of Carroll, Slupsky and Mather 1991, within 3 %%.", limitTemperature.Max))
	}
	return append(all, note(Method, "The vessel is taken as rigid and at rest: after a change of temperature that takes hours, or a shake."+
		" Air in the headspace is taken as undissolved, on the safe side."))
}
