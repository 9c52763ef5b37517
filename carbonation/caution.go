package carbonation

import (
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// What the cautions of this package are about.
const (
	OverPressure volume.Code = "over-pressure" // gas above what serving gear is used at, or above a rating
)

// HighGauge is the gauge pressure above which every answer carries the caution
// of over-pressure: 30 psi, our choice, no source.
const HighGauge = 30 * PSI

// HighPressure returns the caution of over-pressure if g, above the air around,
// is above [HighGauge]; none otherwise, or if g is invalid.
func HighPressure(g Gauge) []volume.Remark {
	const roundTrip = 1 + 1e-9 // 30 psi that has been through kPa is 30 psi
	if !(g.Pascals() > float64(HighGauge)*roundTrip) {
		return nil
	}
	return []volume.Remark{{Code: OverPressure, Severity: volume.Caution, Text: say("{%.5g kpa} is high for serving gear. Stay below the stamp on the keg, the line's and tap's ratings"+
		" and the relief valve; never defeat a relief valve.", g.KPa())}}
}

// say formats a sentence; a braced verb, as in "{%.5g c}", quotes a number.
func say(format string, args ...any) volume.Sentence {
	return quantity.Sayf[volume.Sentence](format, args...)
}
