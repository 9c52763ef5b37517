package thermal

import "fmt"

// Quantities that the standard units have no type for.
type (
	Flow            float64 // volume flow, m³/s
	FilmCoefficient float64 // heat transfer at a surface, W/(m² K)
)

// LitresPerMinute returns the flow in L/min.
func (f Flow) LitresPerMinute() float64 { return float64(f) * 60e3 }

// onBothScales returns t for the text of an error, such as "5.0 °C (41.0 °F)".
func onBothScales(t Temperature) string {
	return fmt.Sprintf("%.1f °C (%.1f °F)", t.Celsius(), t.Fahrenheit())
}
