package volume

import (
	"errors"
	"strings"
	"testing"
	"time"
)

// TestKegsBand checks the kegs that the guests empty against a Poisson count of
// 360: its 10 % and 90 % quantiles are 336 and 384, by summing its terms, and a
// keg of 60 pours is counted whole.
func TestKegsBand(t *testing.T) {
	keg := pints(t)
	keg.Pours = 60
	c := DefaultCrowd(60, 5*time.Hour)
	c.Share, c.Spread, c.Doubt = 1, 0, 0
	d, err := c.Demand(keg)
	if err != nil {
		t.Fatal(err)
	}
	if b := d.KegsBand(); b.Low != 6 || b.High != 7 || d.Kegs != 7 {
		t.Errorf("%d kegs, and %g to %g are emptied; want 7, 6 to 7", d.Kegs, b.Low, b.High)
	}
	all, err := c.Menu([]Choice{{Share: 1, Keg: keg, Kegs: 12}})
	if err != nil {
		t.Fatal(err)
	}
	if b := all[0].KegsBand(); b.Low != 6 || b.High != 7 {
		t.Errorf("of 12 kegs on hand %g to %g are emptied, want 6 to 7", b.Low, b.High)
	}
	if b := all[0].Plus(d).KegsBand(); b.Low != 12 || b.High != 14 {
		t.Errorf("two such beers empty %g to %g kegs, want 12 to 14", b.Low, b.High)
	}
	mixed, err := c.Mix([]Choice{{Share: 1, Keg: keg, Kegs: 20}})
	if err != nil {
		t.Fatal(err)
	}
	if b := mixed.KegsBand(); b.Low != 6 || b.High != float64(mixed.Kegs) {
		t.Errorf("of %d kegs of a stock %g to %g are emptied, want 6 to 7", mixed.Kegs, b.Low, b.High)
	}
	c.Weather = 0
	if d, err = c.Demand(keg); err != nil || d.KegsBand().High != 0 {
		t.Errorf("guests without thirst empty %+v kegs: %v", d.KegsBand(), err)
	}
}

// TestRefusals checks that a refusal counts one keg as a keg and puts US units
// before metric ones.
func TestRefusals(t *testing.T) {
	keg := VesselOf(USBarrel / 6)
	tub := Tub{Capacity: 80 * Litre, Height: 0.45}
	_, over := tub.Depth(500*Litre, keg, 1)
	_, floor := tub.Fit(keg, 9, 0.6)
	_, tooFew := DefaultCrowd(60, 5*time.Hour).Mix([]Choice{{Keg: pints(t), Kegs: 1}})
	bar := DefaultBar(100)
	bar.Taps = 1
	_, queue := bar.Queue()
	for _, x := range []struct {
		err  error
		kind error
		says string
	}{
		{over, ErrNoSolution, "around 1 keg it takes 1"}, {over, ErrNoSolution, "(500.0 L) were given"},
		{floor, ErrNoSolution, "9 kegs, each 9.250 in (234.9 mm) across"}, {floor, ErrNoSolution, "(80.0 L) that is 17.7 in (0.45 m) high"},
		{tooFew, ErrNoSolution, "hold 51"}, {queue, ErrNever, "1 tap can serve 120 an hour and 200 are asked for"},
	} {
		if !errors.Is(x.err, x.kind) || !strings.Contains(x.err.Error(), x.says) {
			t.Errorf("%q, of %v, does not say %q", x.err, x.kind, x.says)
		}
	}
}
