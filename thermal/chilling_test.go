package thermal

import (
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
	"github.com/google/go-cmp/cmp"
)

// Beer mixed: the mean by volume, by hand for a keg that stands to 19 % in ice.
func TestMixed(t *testing.T) {
	b := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(24), Shade(Celsius(30))).Dry()
	c, err := b.After(time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	want := c.Covered*c.Temperature.Celsius() + (1-c.Covered)*c.Upper.Celsius()
	if checktest.Near(t, "mixed", c.Mixed.Celsius(), want, 1e-9); !(c.Covered < 0.5 && c.Upper.Sub(c.Temperature) > 4) {
		t.Errorf("%+v", c)
	}
	b = DefaultIceBath(b.Vessel, Celsius(24), b.Around)
	b.Tub.Height, b.Tub.Capacity, b.Ice, b.Water = 0.8, 70*volume.Litre, 20, 28*volume.Litre
	if c, err = b.After(time.Hour); err != nil || c.Mixed != c.Temperature {
		t.Errorf("covered to %.3f: %v mixed, %v, %v", c.Covered, c.Mixed, c.Temperature, err)
	}
}

func TestChillingCourse(t *testing.T) {
	c, err := day(t).After(9 * time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	course := c.Course(10)
	last := course[9]
	got := []float64{last.Beer.Celsius(), last.Upper.Celsius(), last.Bath.Celsius(), float64(last.Ice)}
	want := []float64{c.Temperature.Celsius(), c.Upper.Celsius(), c.Bath.Celsius(), float64(c.IceLeft)}
	if d := cmp.Diff(want, got, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 0.02 })); d != "" {
		t.Error(d)
	}
	if course[0].Beer != Celsius(18) || len(course) != 10 || course[3].At != 3*time.Hour {
		t.Errorf("%+v", course[0])
	}
	checktest.Near(t, "melted and left", float64(c.IceMelted+c.IceLeft), 54+15, 1e-9)
	if b := c.Band(); !(b.Low < c.Temperature.Celsius() && c.Temperature.Celsius() < b.High) {
		t.Errorf("band %+v", b)
	}
	r, err := day(t).Reach(Celsius(6))
	if err != nil {
		t.Fatal(err)
	}
	if b := r.Band(); !(b.Low < r.Time.Hours() && r.Time.Hours() < b.High && b.Suffix == "h") {
		t.Errorf("band %+v", b)
	}
	for _, s := range r.Steps() {
		if s.Symbol == "" || s.Name == "" || s.Source == "" || math.IsNaN(s.Value) {
			t.Errorf("step %+v", s)
		}
	}
	if dry, err := day(t).Dry().After(time.Hour); err != nil || len(dry.Steps()) >= len(r.Steps()) || dry.Band().Low >= dry.Band().High {
		t.Errorf("dry: %v", err)
	}
}
