package thermal

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/volume"
)

// More of what warms makes warmer beer and less ice; more ice keeps it longer.
func TestBathOrder(t *testing.T) {
	run := func(change func(*IceBath)) Chilling {
		b := day(t)
		b.TopUps = nil
		change(&b)
		c, err := b.After(5 * time.Hour)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	plain := run(func(*IceBath) {})
	for name, change := range map[string]func(*IceBath){
		"hotter": func(b *IceBath) { b.Around.Air = Celsius(36) },
		"sun":    func(b *IceBath) { b.Around.Sun = 800 },
		"windy":  func(b *IceBath) { b.Around.Wind = 4 },
		"muggy":  func(b *IceBath) { b.Around.Humidity = 0.9 },
	} {
		if c := run(change); !(c.IceLeft < plain.IceLeft && c.Hold < plain.Hold) {
			t.Errorf("%s: %.2f kg left, plain %.2f", name, float64(c.IceLeft), float64(plain.IceLeft))
		}
	}
	for name, change := range map[string]func(*IceBath){
		"lid":        func(b *IceBath) { b.Lid = true },
		"foam":       func(b *IceBath) { b.Conductivity, b.Wall = ChestFoam, 40*volume.Millimetre },
		"more ice":   func(b *IceBath) { b.Ice *= 1.3 },
		"colder ice": func(b *IceBath) { b.IceFrom = Celsius(-15) },
		"measured":   func(b *IceBath) { b.UA = 2 },
		"top-up":     func(b *IceBath) { b.TopUps = []TopUp{{2 * time.Hour, 10}} },
	} {
		if c := run(change); !(c.IceLeft > plain.IceLeft && c.Hold > plain.Hold) {
			t.Errorf("%s: %.2f kg left, plain %.2f", name, float64(c.IceLeft), float64(plain.IceLeft))
		}
	}
	if c := run(func(b *IceBath) { b.Salt = 0.02 }); !(c.Bath.Sub(plain.Bath) < 0 && c.BathFreezes.Celsius() < -1) {
		t.Errorf("salted bath %v, fresh %v", c.Bath, plain.Bath)
	}
	if c := run(func(b *IceBath) { b.Stirred = true }); !(c.Bath.Sub(plain.Bath) < -0.5 && c.Temperature.Sub(plain.Temperature) < -0.5) {
		t.Errorf("stirred %v in %v, still %v in %v", c.Temperature, c.Bath, plain.Temperature, plain.Bath)
	}
	deeper := run(func(b *IceBath) { b.Tub.Capacity *= 0.75 })
	if !(deeper.Covered > plain.Covered && deeper.Temperature.Sub(plain.Temperature) < 0.5) {
		t.Errorf("deeper %v, plain %v", deeper, plain)
	}
}

func TestBathNever(t *testing.T) {
	b := DefaultIceBath(vessel(t, "us-half"), Celsius(25), Shade(Celsius(35)))
	b.Tub.Capacity *= 3
	b.Ice = 5
	_, err := b.Reach(Celsius(3))
	if !errors.Is(err, ErrNever) || !strings.Contains(err.Error(), "°F") {
		t.Errorf("%v", err)
	}
	if _, err := b.Reach(Celsius(39)); !errors.Is(err, ErrNever) {
		t.Errorf("warmer than the air: %v", err)
	}
	c, err := b.Reach(b.From)
	if err != nil || c.Time != 0 {
		t.Errorf("to where it is: %v, %v", c.Time, err)
	}
	none := b
	none.Ice = 0
	if c, err := none.After(time.Hour); err != nil || c.Hold != 0 || !(c.Temperature.Sub(b.From) < 0) {
		t.Errorf("cold water alone: %v, %v", c, err)
	}
}

// Beer in a strong brine freezes and is refused, a weak one is flagged.
func TestBrineFreezesBeer(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(10), Shade(Celsius(25)))
	b.Ice, b.Salt = 40, 0.2
	b.Tub.Capacity *= 2
	var r *RangeError
	if c, err := b.After(12 * time.Hour); !errors.As(err, &r) || !math.IsNaN(float64(c.IceLeft)) {
		t.Errorf("%v, %v", c, err)
	}
	b.Salt = 0.04
	c, err := b.After(time.Hour)
	if err != nil || !c.FreezesBeer || !(c.BathFreezes.Sub(b.Beer.FreezingPoint()) < 0) {
		t.Errorf("4 %%: %v, %v", c, err)
	}
	b.Salt = 0.02
	if c, err := b.After(time.Hour); err != nil || c.FreezesBeer {
		t.Errorf("2 %%: %v, %v", c, err)
	}
}
