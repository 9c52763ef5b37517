package thermal

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// Quantities that the standard units have no type for.
type (
	Irradiance      float64 // power of radiation on an area, W/m²
	Conductance     float64 // heat that flows per kelvin of difference, W/K: what brewers call the UA of a keg, a box or a coil
	Conductivity    float64 // of a material for heat, W/(m K)
	FilmCoefficient float64 // heat transfer at a surface, W/(m² K)
	Flow            float64 // volume flow, m³/s
)

// LitresPerMinute returns the flow in L/min.
func (f Flow) LitresPerMinute() float64 { return float64(f) * 60e3 }

// seconds returns s seconds as a duration.
func seconds(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }

// percent writes a share, such as "35 %".
func percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

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

// say formats a sentence; a braced verb, as in "{%.5g c}", quotes a number.
func say(format string, args ...any) volume.Sentence {
	return quantity.Sayf[volume.Sentence](format, args...)
}
