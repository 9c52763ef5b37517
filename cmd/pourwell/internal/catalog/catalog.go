// Package catalog describes every calculation that the command offers: one
// file for each, with its inputs, its help and the one call it makes.
package catalog

import (
	"slices"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// A Package is one of the four packages, with what it is about.
type Package struct{ Name, About string }

// Packages lists the four packages in the order of the help.
var Packages = [...]Package{
	{"carbonation", "gas in beer: content, pressure, sealed vessels, blends, supply"},
	{"thermal", "keeping it cold: keg, ice, coil, plate, line, glass"},
	{"lines", "from keg to glass: flow, balance, breakout, diagnosis"},
	{"volume", "how much: pours, guests, taps, what fits, what is left"},
}

// all lists the calculations in the order of the help.
var all = [...]*calc.Calculation{
	&equilibrium, &sealed, &blend, &airPump, &supply, &leakTest, &room, &uptake, &wine,
	&kegInAir, &iceBath, &coil, &plate, &warmingLine, &warmGlass, &calibrateKeg,
	&flow, &balance, &profile, &calibrateLine, &diagnose, &clean,
	&pours, &guests, &taps, &fit, &left,
}

// All returns every calculation, in the order of the help.
func All() []*calc.Calculation { return all[:] }

// In returns the calculations of one package, none if there is no such package.
func In(pkg string) []*calc.Calculation {
	var in []*calc.Calculation
	for _, c := range all {
		if c.Package == pkg {
			in = append(in, c)
		}
	}
	return in
}

// IsPackage reports whether name is that of one of the four packages.
func IsPackage(name string) bool {
	return slices.ContainsFunc(Packages[:], func(p Package) bool { return p.Name == name })
}

// Find returns the calculation called name of the package, ready for use; nil
// if there is none.
func Find(pkg, name string) *calc.Calculation {
	for _, c := range all {
		if c.Package == pkg && c.Name == name {
			return c.Ready()
		}
	}
	return nil
}
