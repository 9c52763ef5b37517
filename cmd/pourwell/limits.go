package main

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// limitRows names the rows of the packages' tables that bound inputs whose
// description names none: those that many calculations share. Help alone reads
// them, so that nothing is looked up at the start.
func limitRows(pkg string) (table func() []volume.Range, rows map[string]string) {
	switch pkg {
	case "carbonation":
		return carbonation.Limits, map[string]string{
			"gauge": "absolute pressure", "for": "time", "room": "room",
			"elevation": "elevation", "station-pressure": "air pressure", "sea-level-pressure": "sea-level pressure",
		}
	case "thermal":
		return thermal.Limits, map[string]string{
			"from": "beer temperature", "to": "beer temperature", "target": "beer temperature", "fan": "wind", "ua": "measured UA",
			"ice": "ice", "water": "water", "every": "time from glass to glass", "fill": "fill", "content": "content", "bath-temp": "bath temperature",
			"abv": "alcohol by volume", "fg": "final gravity", "og": "final gravity",
		}
	case "lines":
		return lines.Limits, map[string]string{"full": "fullness"}
	}
	return volume.Limits, map[string]string{}
}

// limitOf returns the range of an input of c, the zero Range if none is its
// own.
func limitOf(c *calc.Calculation, in *calc.Input) volume.Range {
	if in.Limit.Name != "" {
		return in.Limit
	}
	for _, pkg := range []string{c.Package, "carbonation", "thermal"} { // air and beer belong to the latter two
		table, rows := limitRows(pkg)
		shared := pkg != c.Package
		if row := rows[in.Name]; row != "" && (!shared || airOrBeer(in.Name)) {
			for _, r := range table() {
				if r.Name == row {
					return r
				}
			}
		}
	}
	return volume.Range{}
}

func airOrBeer(name string) bool {
	switch name {
	case "elevation", "station-pressure", "sea-level-pressure", "abv", "fg", "og":
		return true
	}
	return false
}
