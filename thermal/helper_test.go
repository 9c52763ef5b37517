package thermal

import (
	"math"
	"testing"
	"time"

	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// vessel returns a vessel of the trade.
func vessel(t testing.TB, name string) volume.Vessel {
	t.Helper()
	v, ok := volume.VesselNamed(name)
	if !ok {
		t.Fatalf("no vessel %q", name)
	}
	return v
}

// in30 returns shade of 30 °C at that humidity.
func in30(rh float64) Surroundings {
	s := Shade(Celsius(30))
	s.Humidity = rh
	return s
}

func dryShade(celsius float64) Surroundings {
	s := Shade(Celsius(celsius))
	s.Humidity = 0
	return s
}

func reach(t testing.TB, k Keg, to Temperature) Warming {
	t.Helper()
	w, err := k.Reach(to)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func model(t testing.TB, b IceBath) *bathModel {
	t.Helper()
	if err := b.check("test"); err != nil {
		t.Fatal(err)
	}
	m, err := newBathModel(b, "test")
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// day returns three kegs in a trough with pours and top-ups.
func day(t testing.TB) IceBath {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(18), Shade(Celsius(31)))
	b.Kegs = 3
	b.Tub.Capacity *= 3
	b.Ice, b.Water = 54, 45*volume.Litre
	b.Pours = []Pour{{2 * time.Hour, 7 * time.Hour, 40 * volume.Litre}}
	b.TopUps = []TopUp{{4 * time.Hour, 10}, {8 * time.Hour, 5}}
	return b
}

// bowl returns a small glass vessel of water in iced water in a bowl just as
// deep as it.
func bowl(v volume.Vessel, from float64, ice unit.Mass, water unit.Volume) IceBath {
	depth := v.Height * 1.02
	inside := unit.Volume(float64(water) + float64(ice)/1000 + float64(v.Displaced(v.Height)))
	return IceBath{
		Tub:  volume.Tub{Capacity: inside * 1.05, Height: depth * 1.05},
		Wall: 2 * volume.Millimetre, Conductivity: SolidPlastic,
		Kegs: 1, Vessel: v, Beer: Water(), Fill: 1, From: Celsius(from),
		Ice: ice, IceFrom: Celsius(0), Water: water, WaterFrom: Celsius(17), Around: Shade(Celsius(24)),
	}
}

// symbols returns the steps by symbol, after checking that each can be read:
// finite, named and with a source.
func symbols(t *testing.T, steps []volume.Step) map[string]float64 {
	t.Helper()
	out := map[string]float64{}
	for _, s := range steps {
		if s.Name == "" || s.Symbol == "" || s.Source == "" || math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
			t.Errorf("step %+v", s)
		}
		if old, ok := out[s.Symbol]; ok && old != s.Value {
			t.Errorf("%s stands for %v and %v", s.Symbol, old, s.Value)
		}
		out[s.Symbol] = s.Value
	}
	return out
}
