package thermal

import (
	"testing"

	"example.com/pourwell/internal/checktest"
)

func TestFreezingPoint(t *testing.T) {
	for _, row := range checktest.Table(t, "ethanol_freezing.csv") {
		a := row.Number("ethanol_mass_pct")
		if a > 12 {
			continue // stronger than beer
		}
		checktest.Near(t, "ethanol alone", -ethanolDepression*a, row.Number("lange_degC"), 0.3)
	}
	checktest.Near(t, "water", Water().FreezingPoint().Celsius(), 0, 1e-9)
	// 5 % beer of 12 °P: -2.08 °C by adding up what lowers it (ethanol as in
	// Lange, extract, gas, salts); the rule is good to 0.4 K.
	checktest.Near(t, "beer", Beer{}.FreezingPoint().Celsius(), -2.08, 0.4)
}
