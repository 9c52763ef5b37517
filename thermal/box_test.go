package thermal

import (
	"errors"
	"math"
	"testing"
	"time"
)

// The closed form m L/(UA T), evaluated in double precision: a test of
// arithmetic, not a published value. A chest of 0.555 W/K in air of 30 °C melts
// 10 kg in 55.62729396 h.
func TestMeltsClosedForm(t *testing.T) {
	got, err := Conductance(0.555).Melts(Celsius(30), time.Duration(55.62729396*float64(time.Hour)))
	if err != nil || math.Abs(float64(got)-10) > 1e-8 {
		t.Errorf("melted %v kg (%v), want 10", got, err)
	}
}

// MeltedIce is published as a method of measuring; Melts must undo it.
func TestMeltsUndoesMeltedIce(t *testing.T) {
	c, err := MeltedIce(10, Celsius(30), 50*time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	m, err := c.UA.Melts(Celsius(30), 50*time.Hour)
	if err != nil || math.Abs(float64(m)-10) > 1e-9 {
		t.Errorf("melted %v kg (%v), want 10", m, err)
	}
	var re *RangeError
	if m, err := Conductance(math.NaN()).Melts(Celsius(30), time.Hour); !errors.As(err, &re) || !math.IsNaN(float64(m)) {
		t.Errorf("NaN: %v, %v; want NaN and a RangeError", m, err)
	}
	if m, err := Conductance(1).Melts(Celsius(-5), time.Hour); err != nil || m != 0 {
		t.Errorf("frost: %v, %v; want 0", m, err)
	}
}
