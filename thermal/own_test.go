package thermal

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// told is all that a result says, as text.
func told(t *testing.T, r interface {
	Steps() []Step
	Band() Band
}, more ...any,
) []any {
	t.Helper()
	return append([]any{r.Steps(), r.Band()}, more...)
}

// A result does not change when the caller uses a list of the parameters again.
func TestResultsOwnTheirLists(t *testing.T) {
	bath := DefaultIceBath(vessel(t, "soda-5gal"), Celsius(20), Shade(Celsius(31)))
	bath.Pours, bath.TopUps = []Pour{{Start: time.Hour, End: 5 * time.Hour, Volume: 0.01}}, []TopUp{{At: time.Hour, Ice: 5}}
	chilled, err := bath.After(6 * time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	c := DefaultCalibration(vessel(t, "soda-5gal"), Celsius(25), Reading{0, Celsius(4)}, Reading{time.Hour, Celsius(8)}, Reading{2 * time.Hour, Celsius(11)})
	fit, err := c.Solve()
	if err != nil {
		t.Fatal(err)
	}
	say := func() []any {
		var course []float64
		for _, s := range chilled.Course(5) {
			course = append(course, s.Beer.Celsius(), float64(s.Ice), float64(s.Left))
		}
		return append(told(t, chilled, course, chilled.Cautions(), chilled.Notes()), told(t, fit, fit.Notes())...)
	}
	before := say()
	bath.Pours[0].Volume, bath.TopUps[0].Ice, c.Readings[0].Temperature = 0.018, 20, Celsius(25)
	if diff := cmp.Diff(before, say()); diff != "" {
		t.Errorf("an answer changes with the caller's list:\n%s", diff)
	}
	readings := []Reading{{0, Celsius(4)}, {time.Hour, Celsius(8)}}
	given := DefaultCalibration(vessel(t, "soda-5gal"), Celsius(25), readings...)
	readings[0].Time = time.Minute
	if given.Readings[0].Time != 0 {
		t.Error("a calibration changes with the list that it was made from")
	}
}
