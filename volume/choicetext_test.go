package volume

import (
	"errors"
	"testing"

	"example.com/pourwell/internal/quantity"
)

func TestReadBeer(t *testing.T) {
	y := pints(t)
	for text, want := range map[string]Choice{
		"Pale:60%":             {Name: "Pale", Share: 0.6, Keg: y},
		"Barn Porter: 0.4 : 2": {Name: "Barn Porter", Share: 0.4, Keg: y, Kegs: 2},
	} {
		if got, err := y.ReadBeer(text); err != nil || got != want {
			t.Errorf("%q: %+v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "Pale", "Pale:", ":60%", "Pale:60", "Pale:60%:two", "Pale:60%:1.5", "Pale:NaN"} {
		var q *quantity.Error
		if got, err := y.ReadBeer(text); !errors.As(err, &q) || got != (Choice{}) {
			t.Errorf("%q is read as %+v", text, got)
		}
	}
}

func TestReadStock(t *testing.T) {
	p := VesselOf(19 * Litre).Into(GlassOf(USPint))
	half, err := p.ReadStock("half barrel:2:90")
	if err != nil || half.Kegs != 2 || half.Price != 90 || half.Keg.Pour.Keg.Name != "us-half" || half.Keg.Pours < 140 {
		t.Errorf("%+v, %v", half, err)
	}
	metric, err := p.ReadStock("50L:3")
	if err != nil || metric.Kegs != 3 || metric.Keg.Pour.Keg.Name != "din-50" || metric.Price != 0 {
		t.Errorf("%+v, %v", metric, err)
	}
	for _, text := range []string{"", "us-half", "us-half:", "us-haf:2", "us-half:2:dear", "50:2"} {
		var q *quantity.Error
		if got, err := p.ReadStock(text); !errors.As(err, &q) {
			t.Errorf("%q is read as %+v, %v", text, got, err)
		}
	}
	var r *RangeError
	p.Waste = 2
	if _, err := p.ReadStock("50L:3"); !errors.As(err, &r) {
		t.Errorf("waste of 200 %%: %v", err)
	}
}
