package main

import (
	"slices"

	"example.com/pourwell/internal/calc"
)

// packages names the four packages in the order of the help, with what they
// are about.
var packages = []struct{ name, about string }{
	{"carbonation", "gas in beer: content, pressure, sealed vessels, blends, supply"},
	{"thermal", "keeping it cold: keg, ice, coil, plate, line, glass"},
	{"lines", "from keg to glass: flow, balance, breakout, diagnosis"},
	{"volume", "how much: pours, guests, taps, what fits, what is left"},
}

// catalogue lists every calculation, in the order of the help.
func catalogue() []*calc.Calculation {
	return slices.Concat(carbonationCalculations, thermalCalculations, linesCalculations, volumeCalculations)
}

// lookup returns the calculation called name of the package, nil if there is
// none.
func lookup(pkg, name string) *calc.Calculation {
	for _, c := range catalogue() {
		if c.Package == pkg && c.Name == name {
			return c.Ready()
		}
	}
	return nil
}
