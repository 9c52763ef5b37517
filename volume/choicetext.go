package volume

import (
	"strings"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/unit"
)

// ReadBeer reads one of several beers from text as people type it: its name, its
// share of the drinkers and, if they are on hand already, its kegs, such as
// "Pale:60%" or "Pale:60%:2". Each keg gives y.
func (y Yield) ReadBeer(text string) (Choice, error) {
	c := Choice{Keg: y}
	name, rest, _ := strings.Cut(text, ":")
	share, kegs, counted := strings.Cut(rest, ":")
	c.Name = strings.TrimSpace(name)
	var err error
	if c.Share, err = quantity.Parse(quantity.Share, share); err != nil || c.Name == "" {
		return Choice{}, misread(text, "is not a beer and its share", "for example Pale:60% or Pale:60%:2 with the kegs on hand")
	}
	if counted {
		if c.Kegs, err = readKegs(kegs); err != nil {
			return Choice{}, misread(text, "does not end in a number of kegs", "for example Pale:60%:2")
		}
	}
	return c, nil
}

// ReadStock reads one size of keg among those on hand: its trade name or
// capacity, how many there are and, if it matters, the price of each, such as
// "us-half:2", "50L:3" or "us-half:2:90". Each is poured as p.
func (p Pour) ReadStock(text string) (Choice, error) {
	const example = "for example us-half:2, 50L:3 or us-half:2:90 with a price"
	name, rest, _ := strings.Cut(text, ":")
	kegs, price, priced := strings.Cut(rest, ":")
	c := Choice{Name: strings.TrimSpace(name), Share: 1}
	var known bool
	if p.Keg, known = VesselNamed(name); !known {
		capacity, err := quantity.Parse(quantity.Volume, name)
		if err != nil {
			return Choice{}, misread(text, "does not begin with a keg by name or size", example)
		}
		p.Keg = VesselOf(unit.Volume(capacity))
	}
	var err error
	if c.Kegs, err = readKegs(kegs); err != nil {
		return Choice{}, misread(text, "does not say how many kegs", example)
	}
	if priced {
		if c.Price, err = quantity.Parse(quantity.Number, price); err != nil {
			return Choice{}, misread(text, "does not end in a price", example)
		}
	}
	c.Keg, err = p.PerKeg()
	return c, err
}

// readKegs reads a number of kegs, large ones cut off far outside the range.
func readKegs(text string) (int, error) {
	n, err := quantity.Parse(quantity.Count, text)
	return int(max(-1e9, min(n, 1e9))), err
}

func misread(text, what, hint string) error {
	return &quantity.Error{Text: text, Kind: quantity.Text, What: what, Hint: hint}
}
