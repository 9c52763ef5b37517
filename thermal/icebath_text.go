package thermal

import (
	"fmt"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// massInBoth writes a mass, kg, for the text of an error: US units, then
// metric.
func massInBoth(kg float64) string {
	return fmt.Sprintf("%.1f lb (%.1f kg)", kg/float64(volume.Pound), kg)
}

// volumeInBoth writes a volume for the text of an error: US units, then metric.
func volumeInBoth(v unit.Volume) string {
	return fmt.Sprintf("%.1f gal (%.1f L)", float64(v/volume.USGallon), float64(v/volume.Litre))
}

// countOf writes a number of things: "1 keg", "2 kegs".
func countOf(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// holding writes that so many kegs hold what follows: "1 keg holds".
func holding(kegs int) string {
	if kegs == 1 {
		return "1 keg holds"
	}
	return countOf(kegs, "keg") + " hold"
}
