package volume

import (
	"math"
	"testing"
)

// Whatever is typed gives an error or values that the calculations can check,
// and never a panic.
func FuzzReadTexts(f *testing.F) {
	for _, s := range []string{"Pale:60%:2", "us-half:2:90", "50L:3", "1in", "5%", ":", "::", "half barrel:1e30", "1/6bbl-us:1"} {
		f.Add(s)
	}
	y := Yield{Pours: 50, Liquid: 12 * USFluidOunce, Pour: VesselOf(19 * Litre).Into(GlassOf(USPint))}
	f.Fuzz(func(t *testing.T, text string) {
		if c, err := y.ReadBeer(text); err == nil && (math.IsNaN(c.Share) || c.Name == "") {
			t.Errorf("beer %q is read as %+v", text, c)
		}
		if c, err := y.Pour.ReadStock(text); err == nil && (math.IsNaN(c.Price) || c.Keg.Pours < 0) {
			t.Errorf("stock %q is read as %+v", text, c)
		}
		p := y.Pour
		if err := p.ReadHead(text); err == nil && (math.IsNaN(float64(p.Head)) || math.IsNaN(p.HeadShare)) {
			t.Errorf("head %q is read as %+v", text, p)
		}
		VesselNamed(text)
		GlassNamed(text)
	})
}
