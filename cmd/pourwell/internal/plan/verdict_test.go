package plan

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// Beer that comes cold is not left in the ice until it is warm.
func TestColdDelivery(t *testing.T) {
	for _, arrives := range []string{`"4C"`, `"6C"`} {
		c := meadow(t, `arrives   = "20C"`, "arrives   = "+arrives).Cooling[0]
		if c.Chill != 0 || c.BedAt != "14:45" {
			t.Errorf("arriving at %s: bedded at %s for %.0f s, want 14:45 and no time at all", arrives, c.BedAt, c.Chill)
		}
	}
	if c := meadow(t, `arrives   = "20C"`, `arrives   = "8C"`).Cooling[0]; !(c.Chill > 0) {
		t.Error("beer of 8 °C must be chilled to 6 °C")
	}
}

// What the verdict says to change is changed in the file here, and then holds.
func TestChangesHold(t *testing.T) {
	for name, c := range map[string]struct {
		spoil []string
		apply func(t *testing.T, change string) []string
	}{
		"hot day": {
			[]string{`"31C"`, `"38C"`, `ice    = "30kg"`, `ice    = "15kg"`},
			func(t *testing.T, change string) []string {
				return append([]string{`"31C"`, `"38C"`}, filledAs(t, change)...)
			},
		},
		"tub overfull": {
			[]string{`ice    = "30kg"`, `ice    = "70kg"`},
			filledAs,
		},
	} {
		spoilt := meadow(t, c.spoil...)
		if spoilt.Verdict.Holds || spoilt.Cooling[0].Holds {
			t.Fatalf("%s: should not hold", name)
		}
		change := ""
		for _, point := range spoilt.Verdict.Points {
			if !point.Holds && strings.Contains(point.Mend, "Haymaker") {
				change = point.Mend
			}
		}
		if strings.HasPrefix(change, "chill ") {
			continue // nothing tried would do, and it says so
		}
		mended := meadow(t, c.apply(t, change)...)
		if !mended.Cooling[0].Holds {
			t.Errorf("%s: after %q the beer comes at %.2f °C", name, change, mended.Cooling[0].Warmest)
		}
	}
}

// filledAs returns the replacements that a change to a tub's filling asks for.
func filledAs(t *testing.T, change string) []string {
	t.Helper()
	var ice float64
	water := 20.0
	if _, err := fmt.Sscanf(change, "put {%g kg} of ice", &ice); err != nil {
		t.Fatalf("the change is %q, want one that names the ice", change)
	}
	if _, rest, ok := strings.Cut(change, " and {"); ok {
		if _, err := fmt.Sscanf(rest, "%g l}", &water); err != nil {
			t.Fatal(err)
		}
	}
	to := fmt.Sprintf("ice    = \"%gkg\"", ice)
	if strings.Contains(change, "lid") {
		to += "\nlid = true"
	}
	return []string{`ice    = "30kg"`, to, `water  = "20L"`, fmt.Sprintf("water  = \"%gL\"", water)}
}

// A change is not named if there is not ice enough for it.
func TestChangesUseTheIceThereIs(t *testing.T) {
	p := meadow(t, `available = "100kg"`, `available = "25kg"`, `ice    = "30kg"`, `ice    = "5kg"`)
	var ice float64
	for _, point := range p.Verdict.Points {
		if n, _ := fmt.Sscanf(point.Mend, "put {%g kg} of ice", &ice); n == 1 && ice > 25 {
			t.Errorf("25 kg of ice are available, and the plan says %q", point.Mend)
		}
	}
}

// An ice box that is filled with too little is topped up in time or fails.
func TestIceBoxRunsOut(t *testing.T) {
	c := meadow(t, `bath   = "packed"`, "bath   = \"packed\"\nice    = \"0kg\"").Cooling[1]
	if c.Holds || c.Chiller.Iced {
		t.Error("a box without ice should not hold")
	}
	c = meadow(t, `bath   = "packed"`, "bath   = \"packed\"\nice    = \"4kg\"").Cooling[1]
	if !c.Chiller.Iced || len(c.TopUps) == 0 {
		t.Errorf("4 kg should last with top-ups: %+v", c)
	}
}

// A tap pours one beer: two beers at a tap each are two queues.
func TestEachBeerHasItsQueue(t *testing.T) {
	p := meadow(t)
	if len(p.Taps.Beers) != 2 {
		t.Fatalf("%d queues, want 2", len(p.Taps.Beers))
	}
	// One server, M/M/1: mean wait = a s/(1 − a), a = λ s (any textbook on queues).
	for i, b := range p.Taps.Beers {
		s := p.Lines[i].PourTime + 20
		a := b.Utilisation
		if want := a * s / (1 - a); math.Abs(b.Wait-want) > 0.01*want {
			t.Errorf("%s: mean wait %.3f s, the formula gives %.3f s", b.Beer, b.Wait, want)
		}
	}
}

func FuzzCompute(f *testing.F) {
	f.Add([]byte(Sample))
	f.Add([]byte("hours = '5h'\nair = '31C'\n[guests]\ncount = 20\n[[beer]]\nkeg = '5gal'\n"))
	f.Add([]byte("hours = '9h'\nair = '-5C'\n[guests]\ncount = 2000\n[[beer]]\nkeg = 'us-half'\nkegs = 9\n[beer.chiller]\nkind = 'plate'\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		day, err := Read("f.toml", data)
		if err != nil || len(day.Beers) > 3 {
			return
		}
		plan, err := Compute("f.toml", day)
		if err != nil {
			return
		}
		for _, c := range plan.Cooling {
			if math.IsNaN(c.Warmest) || math.IsNaN(c.Left) || c.Left < 0 {
				t.Fatalf("no error, but the tub is %+v", c)
			}
		}
	})
}
