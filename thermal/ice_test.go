package thermal

import (
	"testing"

	"example.com/pourwell/internal/checktest"
)

func TestBrine(t *testing.T) {
	for _, row := range checktest.Table(t, "nacl_freezing.csv") {
		s := row.Number("NaCl_mass_pct")
		if s > 20 {
			continue
		}
		checktest.Near(t, "brine of "+row.Text("NaCl_mass_pct")+" %", brineFreezes(s), row.Number("lange_degC"), 0.035)
	}
	// Water of 2.47 % salt is densest where it freezes, and stronger never
	// before (oceanography, from memory).
	m := model(t, DefaultIceBath(vessel(t, "soda-5gal"), Celsius(10), Shade(Celsius(30))))
	m.salt = 0.0247 / (1 - 0.0247)
	freezes, densest := m.bathPoints(1)
	checktest.Near(t, "densest", densest, freezes, 1e-9)
	m.salt = 0.01
	if freezes, densest = m.bathPoints(1); !(densest > freezes && freezes < 0) {
		t.Errorf("1 %%: %g, %g", freezes, densest)
	}
}
