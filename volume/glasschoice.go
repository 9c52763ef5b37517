package volume

import (
	"cmp"
	"time"
)

// A Light is what falls on beer in a glass. Light turns hop bitter compounds
// into one that smells of skunk at a few nanograms a litre.
type Light int

// The lights, from the worst to the best.
const (
	Sun   Light = iota // direct
	Shade              // daylight under a roof or tree
	Lamps              // indoors, or after dark
	Darkness
)

// Struck returns about how long beer in clear glass stands it before the smell
// is noticed, 0 if it stands it for good. It is a class and no more: minutes in
// sun, hours in diffuse daylight, days under fluorescent lamps. No rate law with
// constants was found.
//
// Source: The Practical Brewer (Master Brewers Association, editions of 1946
// and 1977), for bottles, as quoted in secondary sources. Sensitiser and
// threshold: Pozdrik et al., J. Agric. Food Chem. 54 (2006) 6123; Goldstein,
// Rader & Murakami, J. ASBC 51 (1993) 70; abstracts.
func (l Light) Struck() time.Duration {
	switch l {
	case Sun:
		return 5 * time.Minute
	case Shade:
		return 3 * time.Hour
	case Lamps:
		return 3 * 24 * time.Hour
	}
	return 0
}

// Sizes by strength: our reading of custom, half-size glasses from 7 % and
// tasters from 10 %.
const strong, veryStrong = 0.07, 0.10

// Notes returns what to think of the glass for a beer of alcohol content abv
// (0.05, not 5) in that light: whether it should be opaque, how large, and
// whether its bottom should be etched. What concerns the light comes first. Each
// says what to do, why, and the [Status] of the reason in brackets.
//
// Valid for abv from 0 to 0.20; outside it Notes returns a [*RangeError].
func (g Glass) Notes(abv float64, light Light) ([]Remark, error) {
	const fn = "volume.Glass.Notes"
	if err := cmp.Or(limitABV.Check(fn, abv), g.check(fn)); err != nil {
		return nil, err
	}
	var all []Remark
	note := func(c Code, s Status, text Sentence) { all = append(all, Remark{c, Note, say("%s (%s)", text, s)}) }
	switch {
	case light == Sun && !g.Opaque:
		note(LightStruck, Secondary, "Use an opaque cup in the sun, or pour in the shade. In direct sun, beer in clear glass smells of skunk within minutes.")
	case light == Shade && !g.Opaque:
		note(LightStruck, Secondary, "Clear glass will do in the shade. Diffuse daylight takes a few hours to spoil beer; a glass is drunk before.")
	case g.Opaque && light <= Shade:
		note(LightStruck, Secondary, "An opaque cup is right in daylight. It keeps out the light that makes beer smell of skunk.")
	}
	switch {
	case abv >= veryStrong:
		note(ServingSize, Practice, "Pour tasters, about a third of a pint. A small glass of beer this strong holds a standard drink or more.")
	case abv >= strong:
		note(ServingSize, Practice, "Pour half pints. A pint of beer this strong holds nearly two standard drinks or more.")
	default:
		note(ServingSize, Practice, "Any size up to a pint is usual for this strength. A full glass stays cold long enough to be drunk.")
	}
	note(EtchedBottom, Practice, "Etched glasses keep their head; plain ones keep their fizz. Scratches at the bottom let bubbles form, which feeds the head"+
		" and flattens the beer sooner.")
	return all, nil
}
