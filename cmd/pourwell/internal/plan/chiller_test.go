package plan

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

// The change that the verdict names is tried here on the file itself.
func TestTheMendMends(t *testing.T) {
	p := meadow(t, `ice    = "30kg"`, `ice    = "7.5kg"`)
	if p.Verdict.Holds {
		t.Fatal("7.5 kg of ice should not keep a warm keg cold")
	}
	var kilos, water float64
	if n, _ := fmt.Sscanf(p.Verdict.Change, "put {%g kg} of ice and {%g l}", &kilos, &water); n == 1 {
		water = 20
	} else if n == 0 {
		t.Fatalf("the change is %q, want one that names the ice", p.Verdict.Change)
	}
	mended := meadow(t, `ice    = "30kg"`, fmt.Sprintf(`ice    = "%gkg"`, kilos), `water  = "20L"`, fmt.Sprintf(`water  = "%gL"`, water))
	if c := mended.Cooling[0]; !c.Holds {
		t.Errorf("with %g kg of ice and %g L of water the beer still comes at %.2f °C", kilos, water, c.Warmest)
	}
}

func TestPlate(t *testing.T) {
	coil := meadow(t)
	p := meadow(t, `kind   = "coil"`, `kind   = "plate"`, `tube   = "5/16in-od:50ft:wall0.7mm:coil20cm:stainless"`, "",
		`bath   = "packed"`, `contact = "pressed"`)
	x := p.Cooling[1].Chiller
	if x == nil || x.Kind != "plate" || x.DrainDue <= 0 {
		t.Fatalf("no plate in the plan: %+v", x)
	}
	// Practice: a plate wants beer that is cool already, a coil takes a warm keg.
	if !(x.Tenth > coil.Cooling[1].Chiller.Tenth) {
		t.Errorf("from a warm keg the plate's tenth glass is at %.1f °C, the coil's at %.1f °C", x.Tenth, coil.Cooling[1].Chiller.Tenth)
	}
}

// All ice of a box melts for the beer or for the box.
func TestBoxIceBalances(t *testing.T) {
	c := meadow(t).Cooling[1]
	if sum := c.Chiller.BeerIce + c.Chiller.BoxIce + c.Left; math.Abs(sum-c.Ice-c.TopUp) > 1e-9 {
		t.Errorf("melted and left make %.3f kg, brought are %.3f kg", sum, c.Ice+c.TopUp)
	}
}

func TestUnknownWordsAreShown(t *testing.T) {
	for from, to := range map[string]string{
		`kind   = "coil"`:   `kind   = "coll"`,
		`bath   = "packed"`: `bath   = "pcked"`,
		`"3/16in:10ft"`:     `"3/16inch"`,
	} {
		day, err := Read("f.toml", []byte(strings.Replace(Sample, from, to, 1)))
		if err != nil {
			t.Fatal(err)
		}
		_, err = Compute("f.toml", day)
		var fe *FileError
		if !errors.As(err, &fe) || fe.Hint == "" {
			t.Errorf("%s: error %v, want a FileError with a hint", to, err)
		}
	}
}

// A party past midnight tells its times in order.
func TestPastMidnight(t *testing.T) {
	p := meadow(t, `"15:00"`, `"21:00"`)
	last := p.Timeline[len(p.Timeline)-1]
	if last.At != "next day, 02:00" {
		t.Errorf("the last moment is at %q, want next day, 02:00", last.At)
	}
}

// TestBathsCaution: what the results of tub and chiller caution of, the day
// says.
func TestBathsCaution(t *testing.T) {
	all := strings.Join(meadow(t, `"packed"`, `"pumped"`).Cautions, "\n")
	for _, part := range []string{"that kegs have stood in are not for drinks", "cooled a coil or a plate, and its water, are not for drinks", "A pump in ice water"} {
		if strings.Count(all, part) != 1 {
			t.Errorf("%q stands %d times in\n%s", part, strings.Count(all, part), all)
		}
	}
}
