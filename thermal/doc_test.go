package thermal

import (
	"go/ast"
	"go/token"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
)

// The validity table of the documentation is the table that the checks read.
func TestValidityTable(t *testing.T) {
	checktest.Validity(t, "%-38s %.6g to %.6g %s", Limits())
}

// Every range that a check reads stands in Limits: as many variables called
// limit... as rows.
func TestLimitsAreComplete(t *testing.T) {
	_, files := checktest.Source(t)
	n := 0
	for _, f := range files {
		for _, d := range f.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, s := range g.Specs {
				if v := s.(*ast.ValueSpec); strings.HasPrefix(v.Names[0].Name, "limit") {
					n++
				}
			}
		}
	}
	if n != len(Limits()) {
		t.Errorf("%d ranges are checked, %d are listed", n, len(Limits()))
	}
}

// Each parameter has a row, and what the rows say they bound exists.
func TestFields(t *testing.T) {
	checktest.Fields(t, Limits(), map[string]string{
		"real extract":                       "follows from alcohol and final gravity",
		"ice and water together":             "a sum",
		"bore over winding":                  "of two lengths, which have rows of their own",
		"Reynolds number":                    "follows from flow and bore",
		"distance of a reading from the air": "of two temperatures, which have rows of their own",
	})
}

// Each exported function and method that computes, and the outside value it is
// checked against. What has none says why.
var outsideChecks = map[string]string{
	"BeerOf": "OIML R 22 densities, through a spirit", "BeerFromOriginal": "practice, 12 °P to 1.010",
	"Beer.ABV": "what was given", "Beer.FinalGravity": "what was given", "Beer.ABW": "OIML R 22, through a spirit",
	"Beer.RealExtract": "OIML R 22: none in a spirit; 10 and 12 °P worts", "Beer.OriginalExtract": "12 °P to 1.010 of texts",
	"Beer.Density": "OIML R 22; IAPWS for water", "Beer.Viscosity": "Bingham & Jackson; sucrose of NBS C440",
	"Beer.HeatCapacity": "Perry (memory)", "Beer.Conductivity": "International Critical Tables (memory); IAPWS for water",
	"Beer.FreezingPoint": "Lange, ethanol; sum of parts",
	"Kelvin":             "definition", "Celsius": "definition", "Fahrenheit": "definition",
	"Temperature.Kelvin": "definition", "Temperature.Celsius": "definition", "Temperature.Fahrenheit": "definition",
	"Temperature.Sub": "definition", "Temperature.Add": "definition",
	"Shade": "what was given", "ClearSky": "pvlib's Haurwitz; Duffie & Beckman", "Surroundings.InClosedCar": "McLaren et al. (memory)",
	"DefaultKeg": "practice, 2 h and 16 h", "Keg.Reach": "practice, 2 h and 16 h; closed form", "Keg.After": "closed form with a measured UA",
	"Warming.DewPerHour": "dew times its heat; closed form of the flux", "Warming.Course": "its ends are the answer",
	// The film of the ice was fitted to the bottles of bottles_in_ice.csv, so they
	// do not check it. The can checks it outside that sample. The two hold times of
	// ice_chest.csv share one fitted conductance of the chest: one check of heat and
	// ice, not two.
	"Water":          "no alcohol, no extract",
	"DefaultIceBath": "see IceBath.Reach", "IceBath.Reach": "a can in an ice chest, outside the fit; two hold times with one conductance; the bottles are fitted",
	"IceBath.After": "closed forms of hold time and of ice for beer", "IceBath.Dry": "cans take twice as long (secondary source)",
	"IceBath.KeptCold": "none: a count, its property is that one bag less fails", "Flow.Between": "flow times time",
	"Chilling.Course": "its ends are the answer", "Limits": "the documentation's table",

	"DefaultCoil": "Chill", "Coil.Still": "assumption, stated", "Coil.Packed": "assumption, stated", "Coil.Pumped": "assumption, stated",
	"Coil.Chill": "Cengel example 8-1; printed correlations in internal/pipe", "Coil.LargestFlow": "inverse of Chill",
	"Coil.Serve": "first glass by hand; a model drop by drop", "Service.Glass": "Serve", "DefaultPours": "Serve", "Flow.LitresPerMinute": "definition",
	"DefaultPlate": "Chill", "Plate.Pressed": "assumption, stated", "Plate.Loose": "assumption, stated", "Plate.Flooded": "assumption, stated",
	"Plate.Chill": "textbook tables of effectiveness; squeezed film by hand", "Plate.Serve": "none outside: the block stepped by Runge-Kutta", "Plate.DrainDue": "by hand for 10 kg",
	"DefaultLine": "Carry", "Line.Carry": "Cengel example 3-9; the line in pieces", "Line.Stand": "the radial equation", "LineRun.Course": "its ends are the answer",
	"DefaultGlassful": "Pour", "Glassful.Filled": "Pour", "Glassful.Pour": "two bodies in closed form; Durran & Frierson", "GlassRun.Course": "its ends are the answer",
	"GlassRun.AfterBand": "band",
	"DefaultCalibration": "Solve", "Calibration.Solve": "by hand", "MeltedIce": "by hand; FAO's method", "Conductance.Melts": "inverse of MeltedIce",
}

// Methods that carry no number of their own: presentation, text and working.
var plainMethods = []string{"String", "IsValid", "MarshalText", "UnmarshalText", "Steps", "Band", "Regime", "Cautions", "Notes"}

func TestEveryExportIsChecked(t *testing.T) {
	checktest.EveryExportIsChecked(t, checktest.Exports{Checks: outsideChecks, Plain: plainMethods, Most: 50})
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }
