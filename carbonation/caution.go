package carbonation

import (
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// What the remarks of this package are about: its cautions, then its notes.
const (
	OverPressure  volume.Code = "over-pressure"    // gas above what serving gear is used at, or above a rating
	Bursting                  = volume.Bursting    // a closed vessel that can burst: glass, a can, beer without room to grow
	UnratedGlass  volume.Code = "unrated-glass"    // glass whose maker states no pressure, or none that is known here
	HotCar        volume.Code = "hot-car"          // closed beer or a cylinder in a car in the sun
	PushBack      volume.Code = "push-back"        // a keg above the regulator that it is connected to
	Venting       volume.Code = "venting"          // how to let pressure off
	HandPump      volume.Code = "hand-pump"        // what a hand pump must not do to a keg
	CylinderCare              = volume.GasCylinder // how a cylinder stands, travels and is filled
	LiquidFull    volume.Code = "liquid-full"      // a cylinder so warm that its liquid fills it
	Suffocation   volume.Code = "suffocation"      // CO2 and nitrogen in the air that people breathe
	ExposureLimit volume.Code = "exposure-limit"   // what that air may hold
	Leaking       volume.Code = "leaking"          // how a leak is looked for

	AtRest     volume.Code = "at-rest"         // an equilibrium, which a keg at rest comes to in a week or more
	BelowAir   volume.Code = "below-air"       // a gauge pressure below zero, which no regulator sets
	Foaming    volume.Code = "foaming"         // a pressure below the balance of the beer
	Staling    volume.Code = "staling"         // oxygen
	GaugeTells             = volume.GaugeTells // what a cylinder's gauge shows
	Practice   volume.Code = "practice"        // a rule of the trade, without a source
	Estimate   volume.Code = "estimate"        // physics without a measurement to hold it against
	Method     volume.Code = "method"          // the relation used and what it leaves out
	Cooling    volume.Code = "cooling"         // gas that cools looks like a leak
	Nitrogen   volume.Code = "nitrogen"        // of a blend, in the beer
)

// HighGauge is the gauge pressure above which every answer carries the caution
// of over-pressure: 30 psi, our choice, no source.
const HighGauge = 30 * PSI

// HighPressure returns the caution of over-pressure if g, above the air around,
// is above [HighGauge]; none otherwise, or if g is invalid.
func HighPressure(g Gauge) []volume.Remark {
	if !quantity.Above(g.Pascals(), float64(HighGauge)) {
		return nil
	}
	return []volume.Remark{{Code: OverPressure, Severity: volume.Caution, Text: say("{%.5g kpa} is high for serving gear. Stay below the stamp on the keg, the line's and tap's ratings"+
		" and the relief valve; never defeat a relief valve.", g.KPa())}}
}

// caution, danger and note make the remarks of results; their text is as of say.
func caution(code volume.Code, format string, args ...any) volume.Remark {
	return volume.Remark{Code: code, Severity: volume.Caution, Text: say(format, args...)}
}

func danger(code volume.Code, format string, args ...any) volume.Remark {
	return volume.Remark{Code: code, Severity: volume.Danger, Text: say(format, args...)}
}

func note(code volume.Code, format string, args ...any) volume.Remark {
	return volume.Remark{Code: code, Severity: volume.Note, Text: say(format, args...)}
}

// belowAir returns the note on a gauge pressure that no regulator can be set
// to; none above zero.
func belowAir(g Gauge, drink string) []volume.Remark {
	if !(g.Pascals() < 0) {
		return nil
	}
	return []volume.Remark{note(BelowAir, "Below zero means that the %s holds more than this in the open: no regulator can be set to it.", drink)}
}

// say formats a sentence; a braced verb, as in "{%.5g c}", quotes a number.
func say(format string, args ...any) volume.Sentence {
	return quantity.Sayf[volume.Sentence](format, args...)
}
