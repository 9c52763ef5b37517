package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/unit"
)

// Fewest: with one bag less the ice is gone too soon; and the number is what
// the heat asks for, all ice melted over the bag, rounded up.
func TestKeptCold(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(4), Shade(Celsius(31)))
	for _, hours := range []time.Duration{5, 12, 24} {
		kept, err := b.KeptCold(hours*time.Hour, 4)
		if err != nil {
			t.Fatal(err)
		}
		c, err := kept.After(hours * time.Hour)
		if err != nil || !(c.Hold >= hours*time.Hour) {
			t.Errorf("%d h: ice lasts %v, %v", hours, c.Hold, err)
		}
		n := len(kept.TopUps)
		if n == 0 {
			if hours != 5 {
				t.Errorf("%d h without a top-up", hours)
			}
			continue
		}
		short := kept
		short.TopUps = kept.TopUps[:n-1]
		if c, err := short.After(hours * time.Hour); err != nil || !(c.Hold < hours*time.Hour) {
			t.Errorf("%d h: a bag less lasts %v, %v", hours, c.Hold, err)
		}
		most := math.Ceil((float64(c.IceMelted) + float64(b.Ice)/4 - float64(b.Ice)) / 4)
		if float64(n) > most+1 {
			t.Errorf("%d h: %d bags, %.0f would do", hours, n, most)
		}
	}
	if b.TopUps != nil {
		t.Error("the bath itself was changed")
	}
	trickle := b
	trickle.Around.Sun, trickle.Around.Air = 1000, Celsius(40)
	if _, err := trickle.KeptCold(700*time.Hour, 0.1); !errors.Is(err, ErrNoSolution) {
		t.Errorf("handfuls for a month: %v", err)
	}
	var r *RangeError
	if _, err := b.KeptCold(time.Hour, unit.Mass(math.NaN())); !errors.As(err, &r) {
		t.Errorf("NaN bag: %v", err)
	}
	if _, err := b.KeptCold(-time.Hour, 1); !errors.As(err, &r) {
		t.Errorf("negative time: %v", err)
	}
}
