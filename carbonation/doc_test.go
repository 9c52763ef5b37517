package carbonation

import (
	"testing"

	"example.com/pourwell/internal/checktest"
)

// The validity table of the documentation is the table that the checks read.
func TestValidityTable(t *testing.T) {
	checktest.Validity(t, "%-28s %g to %g %s", Limits())
}

// Each exported function and method, and the outside value it is checked
// against. What has none says why.
var outsideChecks = map[string]string{
	"ContentAt":      "chart of D. Miller; Murray & Riley and five more for water (solubility_test.go)",
	"PressureFor":    "chart of D. Miller within 0.5 psi; metric table",
	"TemperatureFor": "chart of D. Miller within 1 °F",
	"AirAt":          "ICAO Doc 7488",
	"HighPressure":   "our choice, no outside value exists",
	"Limits":         "the documentation's table",
	"Volumes":        "EU wine method, 1.9767 g/L",
	"GramsPerLitre":  "EU wine method, 1.9767 g/L",
	"PSIA":           "NIST SP 811 psi", "BarA": "NIST SP 811", "KPaA": "NIST SP 811", "PaA": "the SI unit",
	"PSIG": "NIST SP 811 psi", "BarG": "NIST SP 811", "KPaG": "NIST SP 811", "PaG": "the SI unit",
	"DefaultDraught": "12 psi at 38 °F, the chart",

	"Pressure.StationAt":       "ICAO Doc 7488",
	"Draught.SolveContent":     "12 psi at 38 °F, the chart; blend table of the trade",
	"Draught.SolveGauge":       "metric table; Draught Beer Quality Manual, 23.4 psi",
	"Draught.SolveTemperature": "chart of D. Miller, through TemperatureFor",
	"Draught.SolveShare":       "Draught Beer Quality Manual",
	"Draught.Sealed":           "published bottle pressures",
	"Draught.AirPump":          "EN 25814; 1.46 volumes by hand",
	"Draught.Supply":           "practice, half a pound a half barrel",
	"Equilibrium.After":        "practice, one to two weeks; CRC diffusivity",
	"Equilibrium.Reach":        "practice, one to two weeks",
	"Sealed.At":                "published bottle pressures; density of water at 40 °C; practice, 2.31 ft a psi",
	"AirPump.After":            "EN 25814; Terzaghi's time factors",
	"Supply.Plan":              "practice; density of Span & Wagner at 280 K",
	"Supply.CylinderAt":        "Span & Wagner table 34; filling ratios of P200",
	"Supply.LeakTest":          "ideal gas by hand",
	"Supply.IntoRoom":          "dilution by hand; OSHA, ACGIH, NIOSH",
	"Wine.ContentAt":           "Regulation 2676/90; champagne at 11.5 g/L",
	"Wine.PressureFor":         "inverse of Wine.ContentAt",

	"Gauge.Absolute": "the elevation test", "Pressure.Gauge": "the elevation test",
	"Pressure.Pascals": "NIST SP 811 psi", "Pressure.KPa": "NIST SP 811 psi", "Pressure.Bar": "NIST SP 811 psi", "Pressure.PSI": "NIST SP 811 psi",
	"Gauge.Pascals": "NIST SP 811 psi", "Gauge.KPa": "NIST SP 811 psi", "Gauge.Bar": "NIST SP 811 psi", "Gauge.PSI": "NIST SP 811 psi",
	"Content.Volumes": "EU wine method", "Content.GramsPerLitre": "EU wine method",
}

// Methods that carry no number of their own: presentation, text and working.
var plainMethods = []string{"String", "IsValid", "MarshalText", "UnmarshalText", "Steps", "Band", "Cautions", "Notes", "Verdict", "IsGlass"}

func TestEveryExportIsChecked(t *testing.T) {
	checktest.EveryExportIsChecked(t, checktest.Exports{Checks: outsideChecks, Plain: plainMethods, Most: 35})
}

// What no row bounds, and the rows that bound no single field.
var unbounded = map[string]string{
	"absolute pressure":          "what a gauge pressure comes to in the air around",
	"CO2 pressure in the vessel": "what the content comes to",
	"Sealed.Vessel":              "one of a list",
}

func TestFields(t *testing.T) { checktest.Fields(t, Limits(), unbounded) }

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }
