package thermal

import (
	"testing"
	"time"

	"example.com/pourwell/volume"
)

// Course behaves alike for every result that has one: n samples from the start
// to the end, nothing for a result that came with an error, a panic for fewer
// than two.
func TestCoursesAlike(t *testing.T) {
	keg := vessel(t, "soda-5gal")
	around := Shade(Celsius(30))
	warm, errKeg := DefaultKeg(keg, Celsius(4), around).After(time.Hour)
	cold, errBath := DefaultIceBath(keg, Celsius(20), around).After(time.Hour)
	line, errLine := DefaultLine(around).Stand(Celsius(4), time.Hour)
	glass, errGlass := DefaultGlassful(volume.GlassOf(0.4*volume.Litre), around).Pour(Celsius(4), time.Hour)
	for _, err := range []error{errKeg, errBath, errLine, errGlass} {
		if err != nil {
			t.Fatal(err)
		}
	}
	lostKeg, _ := Keg{}.After(time.Hour)
	lostBath, _ := IceBath{}.After(time.Hour)
	lostLine, _ := Line{}.Stand(Celsius(4), time.Hour)
	lostGlass, _ := Glassful{}.Pour(Celsius(4), time.Hour)
	for name, c := range map[string]struct{ good, lost func(int) []Sample }{
		"keg": {warm.Course, lostKeg.Course}, "bath": {cold.Course, lostBath.Course},
		"line": {line.Course, lostLine.Course}, "glass": {glass.Course, lostGlass.Course},
	} {
		for _, n := range []int{2, 7} {
			got := c.good(n)
			if len(got) != n || got[0].At != 0 || got[n-1].At < time.Hour-time.Second || got[n-1].At > time.Hour+time.Second {
				t.Errorf("%s: %d samples, from %v to %v", name, len(got), got[0].At, got[len(got)-1].At)
			}
		}
		if got := c.lost(2); got != nil {
			t.Errorf("%s: a course of a result that came with an error: %v", name, got)
		}
		for _, n := range []int{1, 0, -1} {
			func() {
				defer func() {
					if recover() == nil {
						t.Errorf("%s: a course of %d passes", name, n)
					}
				}()
				c.good(n)
			}()
		}
	}
}
