package thermal

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
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

// inBoth returns f for the text of an error, such as "1.69 fl oz/s (3 L/min)".
func (f Flow) inBoth() string {
	return fmt.Sprintf("%.3g fl oz/s (%.3g L/min)", float64(f)/float64(volume.USFluidOunce), f.LitresPerMinute())
}

// onBothScales returns t for the text of an error, such as "41.0 °F (5.0 °C)".
func onBothScales(t Temperature) string {
	return fmt.Sprintf("%.1f °F (%.1f °C)", t.Fahrenheit(), t.Celsius())
}

// massInBoth writes a mass, kg, for the text of an error: US units, then
// metric.
func massInBoth(kg float64) string {
	return fmt.Sprintf("%.1f lb (%.1f kg)", kg/float64(volume.Pound), kg)
}

// volumeInBoth writes a volume for the text of an error: US units, then metric.
func volumeInBoth(v unit.Volume) string {
	return fmt.Sprintf("%.1f gal (%.1f L)", float64(v/volume.USGallon), float64(v/volume.Litre))
}

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
