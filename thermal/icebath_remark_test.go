package thermal

import (
	"math"
	"testing"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

func bathed(t *testing.T, change func(*IceBath)) Chilling {
	t.Helper()
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(15), Shade(Celsius(25)))
	change(&b)
	c, err := b.After(time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Every tub: what was in it is not for drinking, and it is heavy and wet.
func TestTubIsCautioned(t *testing.T) {
	usual := bathed(t, func(*IceBath) {})
	cautions(t, usual, NotForDrinks, "not for drinks or food", true)
	cautions(t, usual, volume.FullTub, "Melt water and electricity do not mix", true)

	// A full keg above 23 kg, the load constant of DHHS (NIOSH) 94-110 as recalled:
	// 20 L of 1008 kg/m³ and 2.8 or 2.9 kg of keg are 22.96 and 23.06 kg.
	for tare, want := range map[unit.Mass]bool{2.8: false, 2.9: true} {
		c := bathed(t, func(b *IceBath) { b.Vessel = volume.VesselOf(20 * volume.Litre); b.Vessel.Tare = tare })
		cautions(t, c, volume.Lifting, "more than one person", want)
	}
	// 3 L of water in a tub of 80 L and 0.45 m stand 3 mm/0.1778 = 17 mm deep and
	// less than 0.03 m around any keg: 0.03 m over 0.23 m across is 1.2 kg, less
	// than the keg's 4 kg. The 33 kg of the usual bath are 0.25 m: 11 kg.
	shallow := bathed(t, func(b *IceBath) { b.Ice, b.Water = 0.5, 3*volume.Litre })
	cautions(t, shallow, volume.Floating, "", false)
	cautions(t, usual, volume.Floating, "floats and tips in this depth", true)

	// Brine freezes at -2.37 °C with 4 %, at -1.77 °C with 3 % (Lange's Handbook of
	// Chemistry, table 5.13, in a straight line); this beer at -2.3 °C.
	for salt, want := range map[float64]bool{0.03: false, 0.045: true} {
		c := bathed(t, func(b *IceBath) { b.Salt = salt })
		cautions(t, c, FrozenBeer, "can burst its fittings: use less salt", want)
		notes(t, c, SaltedBath, "less cold as ice melts", true)
	}
	notes(t, usual, SaltedBath, "", false)
}

// A keg in water up to four fifths of its beer, or with its upper beer 4 K
// warmer, is not told of as one.
func TestUncoveredIsNoted(t *testing.T) {
	// The keg is 0.22 m across, 0.0387 m². A floor of 0.1778 m² leaves 0.139 m²:
	// so many litres of ice, as water, and water for a share of its height.
	keg := vessel(t, "soda-5gal")
	foot := float64(keg.Displaced(keg.Height)) / float64(keg.Height)
	for covered, want := range map[float64]bool{0.79: true, 0.81: false} {
		c := bathed(t, func(b *IceBath) {
			b.Tub = volume.Tub{Capacity: 0.7 * 0.1778, Height: 0.7}
			litres := 1e3 * covered * float64(keg.Height) * (0.1778 - foot)
			b.Ice, b.Water, b.From = 20, unit.Volume(litres-20)*volume.Litre, Celsius(2)
			b.WaterFrom, b.Around.Air = Celsius(2), Celsius(3) // so that the beer above stays as cold
		})
		if math.Abs(c.Covered-covered) > 1e-6 || c.Layered != want {
			t.Errorf("covered %g, layered %t, upper %v, %v", c.Covered, c.Layered, c.Upper, c.Temperature)
		}
		notes(t, c, Uncovered, "fill it, or use a narrower tub", want)
	}
	// 0.48 of a keg six tenths full: four fifths of the beer, which part as the
	// lower cools, by 3 K in ten minutes and 12 K in an hour.
	b := DefaultIceBath(keg, Celsius(15), Shade(Celsius(35)))
	b.Fill, b.Ice, b.Water = 0.6, 20, 25*volume.Litre
	for after, want := range map[time.Duration]bool{10 * time.Minute: false, time.Hour: true} {
		c, err := b.After(after)
		if apart := float64(c.Upper.Sub(c.Temperature)); err != nil || (apart > 4) != want || c.Covered < 0.48 || c.Layered != want {
			t.Errorf("%v: %g K apart, covered %g, layered %t, %v", after, apart, c.Covered, c.Layered, err)
		}
	}
	dry := bathed(t, func(b *IceBath) { *b = b.Dry(); b.Ice = 9 })
	notes(t, dry, Uncovered, "stands in the ice", true)
	notes(t, dry, Uncovered, "use a deeper tub", true)
}

func TestBathNotes(t *testing.T) {
	for late, want := range map[time.Duration]bool{time.Hour: false, 61 * time.Minute: true} {
		c := bathed(t, func(b *IceBath) {
			b.TopUps = []TopUp{{late, 1}}
			b.Pours = []Pour{{0, late, volume.Litre}}
		})
		notes(t, c, LateTopUp, "comes too late", want)
		notes(t, c, LatePour, "counts in this answer only as far", want)
	}
	notes(t, bathed(t, func(b *IceBath) { b.Around.Sun = 600 }), TubInSun, "sun of 600 W/m²", true)
	notes(t, bathed(t, func(b *IceBath) { b.Around.Sun, b.Lid = 600, true }), TubInSun, "", false)
	notes(t, bathed(t, func(*IceBath) {}), TubInSun, "", false)
}
