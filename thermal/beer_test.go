package thermal

import (
	"errors"
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
)

// A 12 °P wort (1.0484) fermented to 5.0 % ABV leaves beer near 1.010: the
// ordinary pairing of brewing texts (common practice, no source). Balling's
// rule and the attenuation rule of thumb, ABV = (OG − FG) × 131.25, agree
// within 0.002 there.
func TestBeerFromOriginal(t *testing.T) {
	b, err := BeerFromOriginal(0.05, 1.0484)
	if err != nil {
		t.Fatal(err)
	}
	if want := 1.0484 - 0.05*100/131.25; math.Abs(b.FinalGravity()-want) > 0.002 {
		t.Errorf("final gravity %.4f, want %.4f within 0.002", b.FinalGravity(), want)
	}
	if got := b.OriginalExtract(); math.Abs(got-12) > 0.05 {
		t.Errorf("original extract %.3f °P, want 12", got)
	}
	var re *RangeError
	for _, og := range []float64{math.NaN(), 1.0, 1.5, math.Inf(1)} {
		if _, err := BeerFromOriginal(0.05, og); !errors.As(err, &re) {
			t.Errorf("original gravity %v: error %v, want a RangeError", og, err)
		}
	}
}

// Balling's rule on ordinary beer gives the 12 °P that texts pair with it; a
// wort is its own original.
func TestOriginalExtract(t *testing.T) {
	checktest.Near(t, "ordinary beer", Beer{}.OriginalExtract(), 12, 0.5)
	wort, err := BeerOf(0, 1.0484)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "wort of 1.0484", wort.OriginalExtract(), 12, 0.05)
}
