package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/unit"
)

// least returns the least ice in the tub until d, as a share of the first, from
// a fine course.
func least(t *testing.T, b IceBath, d time.Duration) float64 {
	t.Helper()
	c, err := b.After(d)
	if err != nil {
		t.Fatal(err)
	}
	least := 1.0
	for _, s := range c.Course(int(d/time.Minute) + 1) {
		least = math.Min(least, float64(s.Ice/b.Ice))
	}
	return least
}

// Fewest: the reserve is kept at every moment, and with one bag less it is not;
// and the number is what the heat asks for, all ice melted over the bag,
// rounded up.
func TestKeptCold(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(4), Shade(Celsius(31)))
	for _, hours := range []time.Duration{5, 12, 24} {
		d, u := hours*time.Hour, Upkeep{Bag: 4, Reserve: UsualReserve}
		kept, err := b.KeptCold(d, u)
		if err != nil {
			t.Fatal(err)
		}
		if left := least(t, kept, d); left < u.Reserve-0.01 { // a top-up in whole minutes
			t.Errorf("%d h: %.3f of the ice is left, want %.3f", hours, left, u.Reserve)
		}
		n := len(kept.TopUps)
		if n == 0 {
			if hours != 5 {
				t.Errorf("%d h without a top-up", hours)
			}
			continue
		}
		short := kept
		short.TopUps = append([]TopUp(nil), kept.TopUps...)
		if short.TopUps[n-1].Ice -= u.Bag; short.TopUps[n-1].Ice == 0 {
			short.TopUps = short.TopUps[:n-1]
		}
		if left := least(t, short, d); left >= u.Reserve {
			t.Errorf("%d h: a bag less leaves %.3f", hours, left)
		}
		c, err := kept.After(d)
		if err != nil {
			t.Fatal(err)
		}
		bags := 0.0
		for _, u := range kept.TopUps {
			bags += float64(u.Ice) / 4
		}
		if most := math.Ceil((float64(c.IceMelted) + (u.Reserve-1)*float64(b.Ice)) / 4); bags > most {
			t.Errorf("%d h: %.0f bags, %.0f would do", hours, bags, most)
		}
	}
	if b.TopUps != nil {
		t.Error("the bath itself was changed")
	}
}

// A temperature to hold keeps more ice in reserve where the usual reserve lets
// the beer warm, and is refused where no ice holds it.
func TestKeptColdHolds(t *testing.T) {
	b := DefaultIceBath(vessel(t, "us-half"), Celsius(4), Shade(Celsius(35)))
	b.Tub.Capacity, b.Tub.Height = 0.15, 0.5
	b.Pours = []Pour{{Start: time.Hour, End: 9 * time.Hour, Volume: 0.05}}
	const d = 9 * time.Hour
	plain, err := b.KeptCold(d, Upkeep{Bag: 2.5, Reserve: UsualReserve})
	if err != nil {
		t.Fatal(err)
	}
	warm, err := plain.warmest(d, Celsius(30))
	if err != nil {
		t.Fatal(err)
	}
	u := Upkeep{Bag: 2.5, Reserve: UsualReserve}
	u.Hold = Celsius(warm - 0.3)
	held, err := b.KeptCold(d, u)
	if err != nil {
		t.Fatalf("0.3 K colder than the %.2f °C of the usual reserve: %v", warm, err)
	}
	if got, _ := held.warmest(d, u.Hold); got > u.Hold.Celsius() {
		t.Errorf("held at %.2f °C, asked for %v", got, u.Hold)
	}
	u.Hold = Celsius(0.5)
	if _, err := b.KeptCold(d, u); !errors.Is(err, ErrNoSolution) {
		t.Errorf("beer at the melting point: %v", err)
	}
}

func TestKeptColdRefuses(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(4), Shade(Celsius(31)))
	trickle := b
	trickle.Around.Sun, trickle.Around.Air, trickle.Ice = 1000, Celsius(40), 0.5
	if _, err := trickle.KeptCold(700*time.Hour, Upkeep{Bag: 0.1, Reserve: UsualReserve}); !errors.Is(err, ErrNoSolution) {
		t.Errorf("handfuls for a month: %v", err)
	}
	var r *RangeError
	if _, err := b.KeptCold(time.Hour, Upkeep{Bag: unit.Mass(math.NaN()), Reserve: UsualReserve}); !errors.As(err, &r) {
		t.Errorf("NaN bag: %v", err)
	}
	if _, err := b.KeptCold(-time.Hour, Upkeep{Bag: 1, Reserve: UsualReserve}); !errors.As(err, &r) {
		t.Errorf("negative time: %v", err)
	}
	if _, err := b.KeptCold(time.Hour, Upkeep{Bag: 1, Reserve: 1}); !errors.As(err, &r) {
		t.Errorf("all of the ice in reserve: %v", err)
	}
}
