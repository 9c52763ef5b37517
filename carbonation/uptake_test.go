package carbonation

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// Common practice, no source: a still keg on serving pressure is carbonated
// after one to two weeks.
func TestStillKegTakesOneToTwoWeeks(t *testing.T) {
	e := must(DefaultDraught().SolveContent(thermal.Celsius(4), PSIG(12)))(t)
	u := must(e.Reach(Volumes(0), 0.55, 0.9))(t)
	if days := u.Time.Hours() / 24; !(7 <= days && days <= 14) {
		t.Errorf("nine tenths after %.1f days, want one to two weeks", days)
	}
	if hour := must(e.After(Volumes(0), 0.55, 5*time.Hour))(t); hour.Way > 0.2 {
		t.Errorf("%.0f %% of the way within an afternoon", 100*hour.Way)
	}
	// Loss is slower by far: diffusion alone, 2 (D t/π)^½ of equivalent depth.
	loss := must(e.After(Volumes(3.5), 0.55, 7*24*time.Hour))(t)
	depth := 2 * math.Sqrt(1.056e-9*7*86400/math.Pi)
	if !loss.Losing {
		t.Error("from 3.5 volumes it does not lose")
	}
	checktest.Near(t, "share lost in a week", loss.Way, depth/0.55, 0.001)
	checkSteps(t, u.Steps())
	checkSteps(t, loss.Steps())
	for _, r := range []Uptake{u, loss} {
		b := r.Band()
		if s := r.Time.Seconds(); !(b.Low < s && s <= b.High) {
			t.Errorf("band %+v around %g s", b, s)
		}
	}
}

// The law of the cube root integrates dΔ/dt = −k0 (Δ/Δ0)^⅓ Δ/h: a fine
// numerical step gives the closed form.
func TestConvectedSolvesItsEquation(t *testing.T) {
	left, dt := 1.0, 1e-4
	for s := 0.0; s < 2; s += dt {
		half := left - dt/2*math.Cbrt(left)*left
		left -= dt * math.Cbrt(half) * half
	}
	checktest.Near(t, "left", convected(1, 1, 2), left, 1e-4)
	checktest.Near(t, "time", convectedTime(1, 1, convected(1, 1, 2)), 2, 1e-9)
	// Churchill-type tables print Nu = 0.15 Ra^⅓: at Ra 1e9, 150.
	k := sinking(1, 1e-3, 1e-9, 0.15)
	ra := 9.80665 * (1 - 1000*33e-6/44.0095e-3) * 1 / (1e-3 * 1e-9)
	checktest.Near(t, "transfer", k, 0.15*math.Cbrt(ra)*1e-9, 1e-12)
	// Water saturated at 2.5 volumes is denser by 1.24 kg/m³.
	checktest.Near(t, "density rise", 4.94*(1-1000*33e-6/44.0095e-3), 1.24, 0.01)
}

func TestUptakeInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, err := DefaultDraught().SolveContent(thermal.Celsius(rapid.Float64Range(0, 20).Draw(t, "celsius")), PSIG(12))
		if err != nil {
			t.Fatal(err)
		}
		from, depth := Volumes(rapid.Float64Range(0, 4).Draw(t, "from")), unit.Length(rapid.Float64Range(0.05, 0.6).Draw(t, "depth"))
		share := rapid.Float64Range(0.01, 0.9).Draw(t, "share")
		u, err := e.Reach(from, depth, share)
		if errors.Is(err, volume.ErrNever) {
			t.Skip("slower than 1000 days")
		}
		if err != nil {
			t.Fatal(err)
		}
		back, err := e.After(from, depth, u.Time)
		if err != nil || math.Abs(back.Way-share) > 1e-6 || math.Abs(back.Content.Volumes()-u.Content.Volumes()) > 1e-5 {
			t.Fatalf("After(Reach(%g)) = %g, %v", share, back.Way, err)
		}
	})
}

func TestUptakeErrors(t *testing.T) {
	e := must(DefaultDraught().SolveContent(thermal.Celsius(4), PSIG(12)))(t)
	hot := must(DefaultDraught().SolveContent(thermal.Celsius(44), PSIG(12)))(t)
	for _, err := range []error{
		second(e.After(Content{}, 0.5, time.Hour)), second(e.After(Volumes(0), 3, time.Hour)), second(e.After(Volumes(0), 0.5, -time.Hour)),
		second(e.Reach(Volumes(0), 0.5, 1.5)), second(e.Reach(Volumes(0), 0, 0.5)), second(hot.After(Volumes(0), 0.5, time.Hour)), second(Equilibrium{}.After(Volumes(0), 0.5, time.Hour)),
	} {
		var r *RangeError
		if !errors.As(err, &r) {
			t.Errorf("got %v, want a RangeError", err)
		}
	}
	for _, err := range []error{second(e.Reach(Volumes(0), 0.5, 1)), second(e.Reach(Volumes(4), 0.55, 0.9))} {
		if !errors.Is(err, volume.ErrNever) {
			t.Errorf("got %v, want never", err)
		}
	}
	if u, _ := e.After(Content{}, 0.5, time.Hour); u.Content.IsValid() || !math.IsNaN(u.Way) {
		t.Errorf("with an error the result is %+v", u)
	}
	// At rest already: nothing to wait for.
	if u := must(e.Reach(e.Content, 0.5, 0.9))(t); u.Time != 0 {
		t.Errorf("at balance it still takes %v", u.Time)
	}
}
