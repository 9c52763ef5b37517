package lines

import (
	"testing"

	"example.com/pourwell/internal/checktest"
)

// The table in the package comment and the table in the code are the same.
func TestValidityTable(t *testing.T) {
	checktest.Validity(t, "%-26s %g to %g %s", Limits())
}

// Each exported function and method with a number of its own, and the outside
// value it is checked against. What has none says why.
var outsideChecks = map[string]string{
	"Limits":         "the documentation's table",
	"DefaultRun":     "entrance and jet of handbooks, Munson, Potter, Carvill; the barb is estimated",
	"DefaultServing": "thresholds of 1 to 3 psi, practice",
	"TubeOfOD":       "1/4 in tube of 1/32 in wall has the trade table's bore",

	"Run.Flow":        "inverse of Run.Gauge; five feet of 3/16 in at 12 psi, practice (the command's script)",
	"Run.Gauge":       "a German table of 15 straight and 8 coiled cells and its two examples; Cengel & Cimbala example 8-1",
	"Run.Length":      "inverse of Run.Gauge",
	"Run.TradeGauge":  "Draught Beer Quality Manual's example; four of trade texts",
	"Run.TradeLength": "the same examples",
	"Run.InKeg":       "a half barrel's volume over its diameter",
	"Run.Open":        "counts",
	"Run.Calibrate":   "inverse of Run.Flow with a known factor, and with a known bore",
	"Run.Profile":     "closed form of an even fall; nothing to report at the trade chart's balance",
	"Run.Stand":       "thermal.Line.Stand and carbonation.PressureFor, which have theirs; 2γ/r of 13 µm is 1 psi",
	"Run.Warm":        "30 psi at 20 °C, practice; thermal.Coil.Chill at the flow",
	"Run.Clean":       "volumes per foot of the trade's table; amounts and times are practice",

	"Observation.Diagnose": "each cause set into a run that is in order; balance of the trade's chart",

	"Tube.Restriction": "Draught Beer Quality Manual's table",
	"Tube.Volume":      "volumes per foot of the trade's table",
	"Tube.Turns":       "one turn of π D",
	"Tube.Check":       "the validity table",

	"Flow.LitresPerMinute": "1 gal/min is 3.785412 L/min", "Flow.OuncesPerSecond": "1 gal/min is 2.1333 oz/s",
	"Flow.TimeFor": "16 oz at 2 oz/s in 8 s", "Pour.TimeFor": "16 oz at 2 oz/s in 8 s",
	"Pour.Tubes": "Cengel & Cimbala example 8-1", "Pour.Fittings": "K ρV²/2 by hand", "Pour.Hardware": "2 psi at 2 oz/s, 8 psi at twice the flow",
}

// Methods that carry no number of their own: text, working and words.
var plainMethods = []string{"String", "MarshalText", "UnmarshalText", "Steps", "Band", "Cautions", "Notes"}

func TestEveryExportIsChecked(t *testing.T) {
	checktest.EveryExportIsChecked(t, checktest.Exports{Checks: outsideChecks, Plain: plainMethods, Most: 35})
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }
