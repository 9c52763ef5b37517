package volume

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"
)

// The choice is the best there is: compared with every combination.
func TestMixIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock := make([]Choice, 3)
		held := 0
		priced := rapid.Bool().Draw(t, "priced")
		for i := range stock {
			stock[i].Kegs = rapid.IntRange(0, 5).Draw(t, "kegs")
			stock[i].Keg.Pours = rapid.IntRange(1, 40).Draw(t, "pours")
			if priced {
				stock[i].Price = float64(rapid.IntRange(1, 50).Draw(t, "price"))
			}
			held += stock[i].Kegs * stock[i].Keg.Pours
		}
		need := rapid.IntRange(0, held).Draw(t, "need")
		type score struct {
			price      float64
			pours, all int
		}
		less := func(a, b score) bool {
			switch {
			case a.price != b.price:
				return a.price < b.price
			case a.pours != b.pours:
				return a.pours < b.pours
			}
			return a.all < b.all
		}
		rate := func(n [3]int) (s score) {
			for i := range n {
				s.price += float64(n[i]) * stock[i].Price
				s.pours += n[i] * stock[i].Keg.Pours
				s.all += n[i]
			}
			return s
		}
		best := rate([3]int{stock[0].Kegs, stock[1].Kegs, stock[2].Kegs})
		for a := range stock[0].Kegs + 1 {
			for b := range stock[1].Kegs + 1 {
				for c := range stock[2].Kegs + 1 {
					if s := rate([3]int{a, b, c}); s.pours >= need && less(s, best) {
						best = s
					}
				}
			}
		}
		got := cover(stock, need, priced)
		s := rate([3]int{got[0].Kegs, got[1].Kegs, got[2].Kegs})
		for i := range got {
			if got[i].Kegs > stock[i].Kegs || got[i].Kegs < 0 {
				t.Fatalf("%d kegs of size %d, %d on hand", got[i].Kegs, i, stock[i].Kegs)
			}
		}
		if s != best {
			t.Fatalf("chose %+v, best %+v", s, best)
		}
	})
}

func TestMix(t *testing.T) {
	c := DefaultCrowd(60, 5*time.Hour)
	glass := GlassOf(12 * USFluidOunce)
	half, err := VesselOf(USBarrel / 2).Into(glass).PerKeg()
	if err != nil {
		t.Fatal(err)
	}
	sixth, err := VesselOf(USBarrel / 6).Into(glass).PerKeg()
	if err != nil {
		t.Fatal(err)
	}
	d, err := c.Mix([]Choice{{Keg: half, Kegs: 2}, {Keg: sixth, Kegs: 4}})
	if err != nil {
		t.Fatal(err)
	}
	pours := d.Mix[0].Kegs*half.Pours + d.Mix[1].Kegs*sixth.Pours
	if pours < d.Planned || d.RunOut > 0.1 || d.Kegs != d.Mix[0].Kegs+d.Mix[1].Kegs {
		t.Errorf("%d pours for %d servings, %+v", pours, d.Planned, d)
	}
	if _, err := c.Mix([]Choice{{Keg: sixth, Kegs: 1}}); !errors.Is(err, ErrNoSolution) {
		t.Errorf("one small keg: %v", err)
	}
	var r *RangeError
	if _, err := c.Mix(nil); !errors.As(err, &r) {
		t.Errorf("no stock: %v", err)
	}
	c.Guests = 1e6
	if _, err := c.Mix([]Choice{{Keg: half, Kegs: 10000}}); !errors.As(err, &r) {
		t.Errorf("a million guests: %v", err)
	}
}

func BenchmarkMix(b *testing.B) {
	c := DefaultCrowd(500, 4*time.Hour)
	big, _ := VesselOf(USBarrel / 2).Into(GlassOf(USPint)).PerKeg()
	stock := []Choice{{Keg: big, Kegs: 12}, {Keg: pints(b), Kegs: 30}}
	for b.Loop() {
		if _, err := c.Mix(stock); err != nil {
			b.Fatal(err)
		}
	}
}

// Two half barrels and three sixths are in the barn.
func ExampleCrowd_Mix() {
	glass := GlassOf(12 * USFluidOunce)
	var stock []Choice
	for _, s := range []struct {
		name string
		kegs int
	}{{"us-half", 2}, {"us-sixth", 3}} {
		keg, _ := VesselNamed(s.name)
		y, err := keg.Into(glass).PerKeg()
		if err != nil {
			fmt.Println(err)
			return
		}
		stock = append(stock, Choice{Name: s.name, Keg: y, Kegs: s.kegs})
	}
	d, err := DefaultCrowd(60, 5*time.Hour).Mix(stock)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range d.Mix {
		fmt.Println(m.Kegs, m.Name)
	}
	// Output:
	// 1 us-half
	// 1 us-sixth
}
