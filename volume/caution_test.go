package volume

import (
	"slices"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/unit"
)

// says reports whether a remark of that code and severity says the words.
func says(all []Remark, code Code, severity Severity, words string) bool {
	return slices.ContainsFunc(all, func(r Remark) bool {
		return r.Code == code && r.Severity == severity && strings.Contains(r.Text.Metric(), words)
	})
}

// A full keg above 23 kg, the load constant of DHHS (NIOSH) 94-110 as recalled:
// 20 L of 1008 kg/m³ and 2.8 or 2.9 kg of keg are 22.96 and 23.06 kg.
func TestLifting(t *testing.T) {
	for tare, want := range map[unit.Mass]bool{2.8: false, 2.9: true} {
		keg := VesselOf(20 * Litre)
		keg.Tare = tare
		f, err := Tub{100 * Litre, 0.5}.Fit(keg, 1, 0.6)
		if err != nil || says(f.Cautions(), Lifting, Caution, "weighs 23.1 kg") != want || !says(f.Cautions(), FullTub, Caution, "electricity") {
			t.Errorf("a keg of %g kg: %+v, %v", float64(tare), f.Cautions(), err)
		}
		if !says(f.Notes(), KegSize, Note, keg.Source) {
			t.Errorf("notes %+v", f.Notes())
		}
	}
}

// A can of 10 L and 0.5 m under water up to 0.3921 m, 916.7/999.8 of the ice's
// 0.4275 m, displaces 7.84 L: 7.84 kg carry one of 7.83 kg and no heavier one.
func TestFloating(t *testing.T) {
	for tare, want := range map[unit.Mass]bool{7: true, 9: false} {
		f, err := Tub{80 * Litre, 0.45}.Fit(Vessel{Capacity: 10 * Litre, Height: 0.5, Diameter: 0.2, Tare: tare}, 1, 0.6)
		if err != nil || says(f.Cautions(), Floating, Caution, "weigh it down") != want {
			t.Errorf("a can of %g kg: floats below %g, %+v, %v", float64(tare), f.Floats, f.Cautions(), err)
		}
	}
}

// Kegs of 0.2 m cover π/4 0.04 = 0.0314 m² each: one of them π/4 of a floor of
// 0.04 m², two of them half of one of 0.1257 m².
func TestTight(t *testing.T) {
	keg := VesselOf(10 * Litre)
	keg.Diameter = 0.2
	for _, c := range []struct {
		kegs  int
		floor float64
		tight bool
	}{{1, 0.0399, true}, {1, 0.0401, false}, {2, 0.125, true}, {2, 0.127, false}} {
		f, err := Tub{unit.Volume(c.floor * 0.4), 0.4}.Fit(keg, c.kegs, 0.6)
		if err != nil || says(f.Notes(), FloorSpace, Note, "side by side") != c.tight {
			t.Errorf("%+v: %+v, %v", c, f.Notes(), err)
		}
	}
}

func TestServingsAreCautioned(t *testing.T) {
	for glass, bursts := range map[string]bool{"growler": true, "us-pint": false} {
		g, _ := GlassNamed(glass)
		y, err := VesselOf(USBarrel / 6).Into(g).PerKeg()
		if err != nil || says(y.Cautions(), Bursting, Caution, "it can burst") != bursts {
			t.Errorf("%s: %+v, %v", glass, y.Cautions(), err)
		}
		d, err := DefaultCrowd(60, 5*time.Hour).Demand(y)
		sum := d.Plus(d)
		for _, all := range [][]Remark{d.Cautions(), sum.Cautions()} {
			if err != nil || says(all, Bursting, Caution, "it can burst") != bursts || !says(all, Alcohol, Caution, "get home") {
				t.Errorf("%s: %+v, %v", glass, all, err)
			}
		}
		if !says(sum.Notes(), OneBeerEach, Note, "stay with one beer") || says(d.Notes(), OneBeerEach, Note, "") {
			t.Errorf("%s: notes %+v and %+v", glass, d.Notes(), sum.Notes())
		}
	}
	if !says(Drinks{}.Cautions(), Alcohol, Caution, "who may drive") {
		t.Error("standard drinks without a caution")
	}
}

// Kegs are chosen by price only if every size has one.
func TestKegChoice(t *testing.T) {
	large := Choice{Keg: pints(t), Kegs: 9, Price: 90}
	for price, want := range map[float64]string{0: "leave least over", 80: "cost least"} {
		small := large
		small.Price = price
		d, err := DefaultCrowd(60, 5*time.Hour).Mix([]Choice{large, small})
		if err != nil || !says(d.Notes(), KegChoice, Note, want) {
			t.Errorf("a price of %g: %+v, %v", price, d.Notes(), err)
		}
	}
}

// The kegs on hand, more than the crowd is likely to empty, are not those to
// bring.
func TestKegsToBring(t *testing.T) {
	for kegs, want := range map[int]bool{0: true, 9: false} {
		all, err := DefaultCrowd(60, 5*time.Hour).Menu([]Choice{{Share: 1, Keg: pints(t), Kegs: kegs}})
		if err != nil || says(all[0].Notes(), Reserve, Note, "kegs to bring") != want || !says(all[0].Notes(), Reserve, Note, "10 to 15 %") {
			t.Errorf("%d kegs: %+v, %v", kegs, all, err)
		}
	}
}

// A hundred guests ask for 1 an hour, and a tap gives 120: 1.1 times that in the
// first half hour it can serve, 1.3 times that leaves 130 − 120 over two waiting,
// and 1.2 times that is as fast as it can.
func TestRush(t *testing.T) {
	b := DefaultBar(100)
	b.PerHour, b.Taps = 1, 1
	for rush, want := range map[float64]string{1.1: "the queue would settle at", 1.2: "as fast as they can be served", 1.3: "about 5 are waiting"} {
		b.Rush = rush
		q, err := b.Queue()
		if err != nil || !says(q.Notes(), Rush, Note, want) || q.RushGrows != (rush > 1.1) || q.RushTaps < 2 {
			t.Errorf("%g times: %+v, %+v, %v", rush, q, q.Notes(), err)
		}
	}
	b.Rush = 0
	if q, err := b.Queue(); err != nil || says(q.Notes(), Rush, Note, "") || q.RushTaps != 1 {
		t.Errorf("no rush: %+v, %v", q.Notes(), err)
	}
	b.Taps, b.Rush, b.PerHour = 0, 2, 20
	if q, err := b.Queue(); err != nil || q.RushTaps <= q.Taps {
		t.Errorf("at the bound of servings an hour: %+v, %v", q, err)
	}
	served, errServed := DefaultBar(25).Queue()
	own, errOwn := DefaultBar(25).SelfService().Queue()
	if errServed != nil || errOwn != nil || !says(served.Notes(), ServerPace, Note, "60 to 90") || !says(own.Notes(), ServerPace, Note, "pour for themselves") {
		t.Errorf("notes %+v, %+v; %v, %v", served.Notes(), own.Notes(), errServed, errOwn)
	}
}

func TestCylinderIsCautioned(t *testing.T) {
	c := Cylinder{Charge: 5 * Pound}.UsualTare()
	gas, err := c.Left(c.Tare+1, 0)
	if err != nil || !says(gas.Cautions(), GasCylinder, Caution, "overfilled") || !says(gas.Notes(), GaugeTells, Note, "temperature") {
		t.Errorf("%+v, %+v, %v", gas.Cautions(), gas.Notes(), err)
	}
	beer, err := pints(t).Pour.Left(15, 1.01)
	if err != nil || beer.Cautions() != nil || beer.Notes() != nil {
		t.Errorf("%+v, %+v, %v", beer.Cautions(), beer.Notes(), err)
	}
	// The error for one that is heavier than full says so too.
	if _, err := c.Left(c.Tare+c.Charge+0.6, 0); err == nil || !strings.Contains(err.Error(), "do not use one that is overfilled") {
		t.Errorf("an overfilled cylinder: %v", err)
	}
}
