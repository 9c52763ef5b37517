package thermal

import (
	"fmt"
	"math"

	"example.com/pourwell/volume"
)

// Quantities that the standard units have no type for.
type (
	Flow            float64 // volume flow, m³/s
	FilmCoefficient float64 // heat transfer at a surface, W/(m² K)
)

// LitresPerMinute returns the flow in L/min.
func (f Flow) LitresPerMinute() float64 { return float64(f) * 60e3 }

// inBoth returns f for the text of an error, such as "1.69 fl oz/s (3 L/min)".
func (f Flow) inBoth() string {
	return fmt.Sprintf("%.3g fl oz/s (%.3g L/min)", float64(f)/float64(volume.USFluidOunce), f.LitresPerMinute())
}

// finite returns an error in the name of fn if a value of its answer is not a
// finite number.
func finite(fn string, values ...float64) error {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Errorf("%s: %w: the heat balance has no finite answer", fn, volume.ErrNoSolution)
		}
	}
	return nil
}

// freezes returns an error in the name of fn if beer would come to t, below its
// freezing point.
func (b Beer) freezes(fn string, t Temperature) error {
	freezing := b.FreezingPoint()
	if t.Sub(freezing) >= 0 {
		return nil
	}
	return fmt.Errorf("%s: %w: the beer would come to %s, below its freezing point of %s",
		fn, volume.ErrNoSolution, onBothScales(t), onBothScales(freezing))
}

// onBothScales returns t for the text of an error, such as "41.0 °F (5.0 °C)".
func onBothScales(t Temperature) string {
	return fmt.Sprintf("%.1f °F (%.1f °C)", t.Fahrenheit(), t.Celsius())
}
