package volume

import "time"

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

// An Advice is one thing to choose a glass by.
type Advice struct {
	What   string // what to do, a sentence
	Why    string // the reason, a sentence
	Status Status // how far the reason can be trusted
}

// Sizes by strength: our reading of custom, half-size glasses from 7 % and
// tasters from 10 %.
const strong, veryStrong = 0.07, 0.10

// Advice returns what to think of the glass for a beer of alcohol content abv
// (0.05, not 5) in that light: whether it should be opaque, how large, and
// whether its bottom should be etched. What concerns the light comes first.
//
// Valid for abv from 0 to 0.20; outside it Advice returns a [*RangeError].
func (g Glass) Advice(abv float64, light Light) ([]Advice, error) {
	const fn = "volume.Glass.Advice"
	if err := limitABV.Check(fn, abv); err != nil {
		return nil, err
	}
	if err := g.check(fn); err != nil {
		return nil, err
	}
	var all []Advice
	switch {
	case light == Sun && !g.Opaque:
		all = append(all, Advice{
			"Use an opaque cup in the sun, or pour in the shade.",
			"In direct sun, beer in clear glass smells of skunk within minutes.",
			Secondary,
		})
	case light == Shade && !g.Opaque:
		all = append(all, Advice{
			"Clear glass will do in the shade.",
			"Diffuse daylight takes a few hours to spoil beer; a glass is drunk before.",
			Secondary,
		})
	case g.Opaque && light <= Shade:
		all = append(all, Advice{"An opaque cup is right in daylight.", "It keeps out the light that makes beer smell of skunk.", Secondary})
	}
	size := Advice{"Any size up to a pint is usual for this strength.", "A full glass stays cold long enough to be drunk.", Practice}
	switch {
	case abv >= veryStrong:
		size = Advice{"Pour tasters, about a third of a pint.", "A small glass of beer this strong holds a standard drink or more.", Practice}
	case abv >= strong:
		size = Advice{"Pour half pints.", "A pint of beer this strong holds nearly two standard drinks or more.", Practice}
	}
	return append(all, size, Advice{
		"Etched glasses keep their head; plain ones keep their fizz.",
		"Scratches at the bottom let bubbles form, which feeds the head and flattens the beer sooner.",
		Practice,
	}), nil
}
