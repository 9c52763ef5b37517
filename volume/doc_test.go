package volume

import (
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
)

// The validity table of the documentation is the table that the checks read.
func TestValidityTable(t *testing.T) {
	checktest.Validity(t, "%-28s %g to %g %s", Limits())
}

// Each parameter has a row, and what the rows say they bound exists.
func TestFields(t *testing.T) {
	checktest.Fields(t, Limits(), map[string]string{
		"Glass.Mass":            "heat alone reads it, package thermal",
		"Vessel.Rated":          "the stamp binds; nothing here is computed from it",
		"sum of the shares":     "of all beers of a menu",
		"servings of a mix":     "follow from the crowd",
		"time for each serving": "pour time and change together",
		"taps kept busy":        "follow from guests and servings",
	})
}

// Each exported function and method, and the outside value it is checked
// against. What has none says why.
var outsideChecks = map[string]string{
	"Limits":       "the documentation's table",
	"Vessels":      "trade size charts, SP 811 and Handbook 44 (vessel_test.go)",
	"VesselNamed":  "trade size charts, SP 811 and Handbook 44",
	"VesselOf":     "trade size charts",
	"Glasses":      "as GlassNamed; masses from memory have no outside check",
	"GlassNamed":   "SP 811 volumes; bores by the trade table of glasses per keg",
	"GlassOf":      "the trade table of glasses per keg",
	"DefaultCrowd": "practice, two drinks and one",
	"DefaultBar":   "the example of a hundred guests, worked by hand",

	"Vessel.Displaced":   "closed form of a cylinder in a trough",
	"Vessel.FloatsBelow": "Archimedes",
	"Vessel.Into":        "practice, an inch of head",
	"Pour.PerKeg":        "the trade table of glasses per keg; 124 pints a half barrel",
	"Pour.Left":          "printed full weights of kegs",
	"Yield.Drinks":       "NIAAA, 12 oz at 5 %; UK pint 2.84 units",
	"Crowd.Demand":       "practice; distuv.Poisson; simulation",
	"Crowd.Menu":         "as Demand, of which it is a sum",
	"Crowd.Mix":          "every combination compared",
	"Demand.At":          "practice, two drinks in the first hour and one in each later",
	"Demand.Plus":        "sums, by hand",
	"Demand.KegsBand":    "quantiles of a Poisson count, by summing its terms",
	"Crowd.Bar":          "practice, two drinks in the first hour",
	"Bar.SelfService":    "our assumption, no outside value exists",
	"Bar.FirstHalfHour":  "our assumption, no outside value exists",
	"Bar.Backlog":        "arrivals less servings, by hand",
	"Bar.Queue":          "Bronson; Render, Stair & Hanna; distuv.Poisson to 10 000 taps",
	"Tub.Floor":          "closed form",
	"Tub.Holds":          "closed form of a cylinder in a trough",
	"Tub.Depth":          "closed form of a cylinder in a trough",
	"Tub.Fit":            "closed form; Archimedes",
	"Cylinder.UsualTare": "practice, full weights of 2.5 and 5 lb cylinders",
	"Cylinder.Left":      "subtraction by hand",
	"Light.Struck":       "The Practical Brewer, minutes, hours and days",
	"Fit.Notes":          "the floor that two round kegs cover, by hand (caution_test.go)",
	"Demand.Notes":       "no numbers of its own",
	"Queue.Notes":        "arrivals less servings, by hand",
	"Remains.Notes":      "no numbers",
	"Glass.Notes":        "The Practical Brewer and practice; no numbers",
	"Range.Check":        "comparison, every refusing test",
}

// Methods that carry no number of their own: presentation, text and working.
var plainMethods = []string{"Error", "Is", "Why", "String", "US", "Metric", "Unit", "Steps", "Band", "Cautions", "ReadHead", "ReadBeer", "ReadStock"}

func TestEveryExportIsChecked(t *testing.T) {
	checktest.EveryExportIsChecked(t, checktest.Exports{Checks: outsideChecks, Plain: plainMethods, Most: 35})
}

func TestEveryTableIsRead(t *testing.T) { checktest.EveryTableIsRead(t) }

// What the documentation says of the practice of adding 10 to 15 %.
func TestReserveOfPractice(t *testing.T) {
	for guests, want := range map[int][2]float64{60: {0.2, 0.3}, 1000: {0.12, 0.18}} {
		d, err := DefaultCrowd(guests, 5*time.Hour).Demand(pints(t))
		if reserve := float64(d.Planned)/d.Expected - 1; err != nil || reserve < want[0] || reserve > want[1] {
			t.Errorf("%d guests: a reserve of %.3f, want %g to %g, %v", guests, reserve, want[0], want[1], err)
		}
	}
}

// A result's steps, in order, name every input and end at the answers; values
// agree with the fields, and bands hold the answer.
func TestStepsAndBands(t *testing.T) {
	y := pints(t)
	d, err := DefaultCrowd(60, 5*time.Hour).Demand(y)
	if err != nil {
		t.Fatal(err)
	}
	q, err := DefaultBar(100).Queue()
	if err != nil {
		t.Fatal(err)
	}
	f, err := Tub{100 * Litre, 0.5}.Fit(y.Pour.Keg, 1, 0.6)
	if err != nil {
		t.Fatal(err)
	}
	r, err := y.Pour.Left(15, 1.01)
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		steps []Step
		band  Band
		lead  float64
	}{
		"pours":  {y.Steps(), y.Band(), float64(y.Pours)},
		"guests": {d.Steps(), d.Band(), d.Expected},
		"taps":   {q.Steps(), q.Band(), q.Mean.Seconds()},
		"fit":    {f.Steps(), f.Band(), float64(f.Ice)},
		"left":   {r.Steps(), r.Band(), float64(r.Volume / Litre)},
	} {
		if !(c.band.Low <= c.lead && c.lead <= c.band.High) || c.band.Source == "" {
			t.Errorf("%s: %g outside %+v", name, c.lead, c.band)
		}
		found := false
		for _, s := range c.steps {
			if s.Name == "" || s.Symbol == "" || s.Source == "" {
				t.Errorf("%s: %+v", name, s)
			}
			found = found || math.Abs(s.Value-c.lead) <= 1e-12*math.Abs(c.lead)
		}
		if !found {
			t.Errorf("%s: no step holds the answer %g", name, c.lead)
		}
	}
}
