package volume

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"
)

// Twelve US fluid ounces at 5 % are one US standard drink of 14 g, and an
// imperial pint at 5 % is 2.84 UK units: the countries' own examples, read in
// secondary sources. An Australian standard drink is 10 g.
func TestDrinks(t *testing.T) {
	d, err := Yield{Liquid: 12 * USFluidOunce}.Drinks(0.05)
	if err != nil || math.Abs(d.US-1) > 0.005 || math.Abs(d.AU-1.4) > 0.005 || math.Abs(float64(d.Ethanol/Gram)-14) > 0.05 {
		t.Errorf("12 oz: %+v, %v", d, err)
	}
	d, err = Yield{Liquid: ImperialPint}.Drinks(0.05)
	if err != nil || math.Abs(d.UK-2.84) > 0.005 {
		t.Errorf("imperial pint: %+v, %v", d, err)
	}
	var r *RangeError
	if d, err := (Yield{Liquid: USPint}).Drinks(5); !errors.As(err, &r) || !math.IsNaN(d.US) {
		t.Errorf("5 for 5 %%: %+v, %v", d, err)
	}
}

func ExampleYield_Drinks() {
	y := Yield{Liquid: 12 * USFluidOunce}
	d, err := y.Drinks(0.05)
	fmt.Printf("%.3g US, %.3g UK, %.3g AU, %v\n", d.US, d.UK, d.AU, err)
	// Output: 1 US, 1.77 UK, 1.4 AU, <nil>
}

// The time classes of The Practical Brewer: minutes, hours, days.
func TestLightStruck(t *testing.T) {
	if s := Sun.Struck(); s < time.Minute || s > 15*time.Minute {
		t.Errorf("sun: %v", s)
	}
	if s := Shade.Struck(); s < time.Hour || s > 12*time.Hour {
		t.Errorf("shade: %v", s)
	}
	if s := Lamps.Struck(); s < 24*time.Hour || s > 7*24*time.Hour {
		t.Errorf("lamps: %v", s)
	}
	if s := Darkness.Struck(); s != 0 {
		t.Errorf("darkness: %v", s)
	}
}

func TestGlassNotes(t *testing.T) {
	glass, _ := GlassNamed("us-pint")
	cup, _ := GlassNamed("us-cup-16oz")
	for _, c := range []struct {
		glass Glass
		abv   float64
		light Light
		says  []string
	}{
		{glass, 0.05, Sun, []string{"opaque cup in the sun", "Any size", "Etched"}},
		{cup, 0.05, Sun, []string{"is right in daylight", "Any size", "Etched"}},
		{glass, 0.08, Shade, []string{"Clear glass will do", "half pints", "Etched"}},
		{glass, 0.069, Darkness, []string{"Any size", "Etched"}},
		{glass, 0.07, Darkness, []string{"half pints", "Etched"}},
		{glass, 0.099, Darkness, []string{"half pints", "Etched"}},
		{glass, 0.10, Darkness, []string{"tasters", "Etched"}},
	} {
		got, err := c.glass.Notes(c.abv, c.light)
		if err != nil || len(got) != len(c.says) {
			t.Errorf("%s, %g: %v, %v", c.glass.Name, c.abv, got, err)
			continue
		}
		for i, a := range got {
			if !strings.Contains(string(a.Text), c.says[i]) || !strings.HasSuffix(string(a.Text), "e)") || a.Code == "" || a.Severity != Note {
				t.Errorf("%s, %g: %+v lacks %q", c.glass.Name, c.abv, a, c.says[i])
			}
		}
	}
	var r *RangeError
	if _, err := glass.Notes(5, Sun); !errors.As(err, &r) {
		t.Errorf("5 for 5 %%: %v", err)
	}
	if _, err := (Glass{}).Notes(0.05, Sun); !errors.As(err, &r) {
		t.Errorf("no glass: %v", err)
	}
}
