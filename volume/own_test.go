package volume

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// A result does not change when the caller uses a list of the parameters again.
func TestResultsOwnTheirLists(t *testing.T) {
	pour := Pour{Keg: VesselOf(30 * Litre), Glass: GlassOf(0.4 * Litre)}
	yield, err := pour.PerKeg()
	if err != nil {
		t.Fatal(err)
	}
	crowd := DefaultCrowd(60, 5*time.Hour)
	menu := []Choice{{Name: "a lager", Share: 0.6, Keg: yield, Kegs: 2}, {Name: "a pale ale", Share: 0.4, Keg: yield, Kegs: 1}}
	demands, err := crowd.Menu(menu)
	if err != nil {
		t.Fatal(err)
	}
	pour.Keg = VesselOf(10 * Litre)
	small, err := pour.PerKeg()
	if err != nil {
		t.Fatal(err)
	}
	stock := []Choice{{Name: "large", Keg: yield, Kegs: 5}, {Name: "small", Keg: small, Kegs: 5}}
	mix, err := crowd.Mix(stock)
	if err != nil {
		t.Fatal(err)
	}
	told := func() (all []any) {
		for _, d := range append(demands[:2:2], mix) {
			all = append(all, d.Steps(), d.Band(), d.Cautions(), d.Notes(), d.Planned, len(d.Mix))
			for _, m := range d.Mix {
				all = append(all, m.Name, m.Kegs)
			}
		}
		return all
	}
	before := told()
	menu[0], menu[1].Kegs = Choice{}, 9
	stock[0], stock[1].Kegs = Choice{}, 9
	if diff := cmp.Diff(before, told()); diff != "" {
		t.Errorf("an answer changes with the caller's list:\n%s", diff)
	}
}
