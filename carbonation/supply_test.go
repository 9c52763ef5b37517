package carbonation

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// Common practice, no source: half a pound for a half barrel at 12 to 14 psi, 8
// to 10 half barrels from 5 lb. The sum gives a tenth less gas and a tenth more
// kegs, since practice counts leaks and blow-off.
func TestPushPractice(t *testing.T) {
	for _, psi := range []unit.Pressure{12, 14} {
		s := DefaultDraught().Supply(volume.USBarrel/2, thermal.Celsius(3), PSIG(float64(psi)))
		n := must(s.Plan())(t)
		for _, r := range checktest.Table(t, "push_practice.csv") {
			low, high := r.Number("value_low"), r.Number("value_high")
			switch what := r.Text("what"); what {
			case "lb of CO2 a half barrel":
				if got := float64(n.PerKeg / volume.Pound); !(0.9*low <= got && got <= 1.1*high) {
					t.Errorf("%s: %.3f, want %v to %v within a tenth", what, got, low, high)
				}
			case "half barrels a 5 lb cylinder":
				if got := n.KegsPerCylinder; !(low <= got && got <= 1.1*high) {
					t.Errorf("%s: %.2f, want %v to %v and a tenth", what, got, low, high)
				}
			case "half barrels a 2.5 lb cylinder":
				s.Charge = 2.5 * volume.Pound
				if got := must(s.Plan())(t).KegsPerCylinder; !(low <= got && got <= 1.1*high) {
					t.Errorf("%s: %.2f, want %v to %v and a tenth", what, got, low, high)
				}
			default:
				t.Fatalf("no check of %q", what)
			}
		}
	}
}

func TestPlanAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := DefaultDraught().Supply(unit.Volume(rapid.Float64Range(5e-3, 60e-3).Draw(t, "keg")),
			thermal.Celsius(rapid.Float64Range(0, 30).Draw(t, "celsius")), PaG(rapid.Float64Range(20e3, 300e3).Draw(t, "gauge")))
		s.Kegs, s.Purges = rapid.IntRange(1, 40).Draw(t, "kegs"), rapid.IntRange(0, 5).Draw(t, "purges")
		s.From = Volumes(rapid.Float64Range(0, 4).Draw(t, "from"))
		n, err := s.Plan()
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(n.Push+n.Purge+n.Carbonate-n.PerKeg)) > 1e-12 || math.Abs(float64(n.PerKeg)*float64(s.Kegs)-float64(n.Total)) > 1e-9 {
			t.Fatalf("%+v does not add up", n)
		}
		if enough := float64(n.Cylinders) * n.KegsPerCylinder; enough < float64(s.Kegs)*(1-1e-9) || enough-n.KegsPerCylinder >= float64(s.Kegs) {
			t.Fatalf("%d cylinders of %g kegs for %d kegs", n.Cylinders, n.KegsPerCylinder, s.Kegs)
		}
		s.Kegs *= 2
		twice, _ := s.Plan()
		if math.Abs(float64(twice.Total/n.Total)-2) > 1e-12 {
			t.Fatal("twice the kegs do not take twice the gas")
		}
	})
}

// Carbonating flat beer takes the content of the chart: 2.57 volumes at 38 °F
// and 12 psi, 18.9 L, 1.9768 g/L each.
func TestPlanCarbonates(t *testing.T) {
	s := DefaultDraught().Supply(5*volume.USGallon, thermal.Fahrenheit(38), PSIG(12))
	s.From = Volumes(0)
	n := must(s.Plan())(t)
	checktest.Near(t, "kg dissolved", float64(n.Carbonate), 2.57*1.9768e-3*18.927, 0.002)
	checkSteps(t, n.Steps())
	if b := n.Band(); !(b.Low < float64(n.Total) && float64(n.Total) < b.High) {
		t.Errorf("band %+v", b)
	}
}

// Liquid-full where the printed densities of the liquid say: 679.24 kg/m³ at
// 300 K (Span & Wagner 1996, table 34).
func TestLiquidFull(t *testing.T) {
	s := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), PSIG(12))
	s.Filling = 0.67924
	n := must(s.Plan())(t)
	checktest.Near(t, "K", n.LiquidFull.Kelvin(), 300, 0.02)
	if n.NoVapour || !n.DiscBursts {
		t.Errorf("at 20 °C: no vapour %v; disc in a hot car %v", n.NoVapour, n.DiscBursts)
	}
	s.CylinderTemperature = thermal.Celsius(30)
	if n := must(s.Plan())(t); !n.NoVapour {
		t.Error("vapour left at 30 °C")
	}
	checktest.Near(t, "gauge", must(s.CylinderAt(thermal.Kelvin(280)))(t).KPa(), 4160.7-101.3, 1)
	for _, err := range []error{
		second(s.CylinderAt(thermal.Celsius(90))), second(Supply{Air: s.Air, Filling: 0.9}.CylinderAt(thermal.Celsius(20))), second(Supply{Filling: 0.68}.CylinderAt(thermal.Celsius(20))),
	} {
		var e *RangeError
		if !errors.As(err, &e) {
			t.Errorf("got %v, want a RangeError", err)
		}
	}
}

// A leak by hand: 20 L at 12 psi lose 1 psi in an hour. A psi is 6895 Pa, so
// that by the ideal gas law n = pV/RT = 6895 × 0.020/(8.314 × 288.15) = 0.0576
// mol or 2.53 g; the real gas has 2.0 % more, (1 + Bp/RT)^−2.
func TestLeak(t *testing.T) {
	s := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(15), PSIG(12))
	l := must(s.LeakTest(20*volume.Litre, 1*PSI, time.Hour))(t)
	checktest.Near(t, "g/h", l.Rate, 2.53*1.02, 0.02)
	checktest.Near(t, "days from 5 lb", l.Empty.Hours()/24, 5*453.6/2.53/1.02/24, 0.4)
	// Gay-Lussac: 1/288 of the absolute pressure a kelvin.
	checktest.Near(t, "kPa a degree", float64(l.PerDegree/KPa), (101.325+82.737)/288.15, 1e-3)
	checkSteps(t, l.Steps())
	if b := l.Band(); !(b.Low < l.Rate && l.Rate < b.High) {
		t.Errorf("band %+v", b)
	}
	for _, fall := range []unit.Pressure{0, 1e-3} {
		if _, err := s.LeakTest(20*volume.Litre, fall, time.Hour); !errors.Is(err, volume.ErrNever) {
			t.Errorf("a fall of %g Pa: %v, want never", float64(fall), err)
		}
	}
	for _, err := range []error{
		second(s.LeakTest(0, PSI, time.Hour)), second(s.LeakTest(20*volume.Litre, 13*PSI, time.Hour)),
		second(s.LeakTest(20*volume.Litre, PSI, 0)), second(Supply{}.LeakTest(20*volume.Litre, PSI, time.Hour)),
	} {
		var e *RangeError
		if !errors.As(err, &e) {
			t.Errorf("got %v, want a RangeError", err)
		}
	}
}

// Dilution in a mixed room, by hand with 0.5437 m³/kg of CO2 at 20 °C and 1
// atm: 5 lb are 1.233 m³, in 20 m³ x = 1 − 0.99958 exp(−0.0617) = 6.02 %.
func TestIntoRoom(t *testing.T) {
	s := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), PSIG(12))
	r := must(s.IntoRoom(20))(t)
	checktest.Near(t, "gas, m³", float64(r.Gas), 1.233, 0.001)
	checktest.Near(t, "CO2", r.CO2Share, 0.0602, 0.0001)
	checktest.Near(t, "oxygen", r.OxygenShare, 0.20946*math.Exp(-0.0617), 0.0001)
	if !r.Over8h || !r.Over15min || !r.Dangerous {
		t.Errorf("5 lb in 20 m³: %v %v %v", r.Over8h, r.Over15min, r.Dangerous)
	}
	for _, c := range checktest.Table(t, "exposure_limits.csv") {
		ours := map[string]float64{"OSHA PEL (29 CFR 1910.1000 Z-1)": limit8h, "ACGIH TLV-TWA": limit8h, "ACGIH TLV-STEL": limit15min, "NIOSH IDLH": dangerous}
		if limit, ok := ours[c.Text("limit")]; ok {
			checktest.Near(t, c.Text("limit"), 100*limit, c.Number("percent"), 1e-12)
		}
	}
	// The room needed brings exactly the limit.
	checktest.Near(t, "in the room for 8 h", must(s.IntoRoom(r.For8h))(t).CO2Share, 0.005, 1e-12)
	checktest.Near(t, "in the room for 15 min", must(s.IntoRoom(r.For15min))(t).CO2Share, 0.03, 1e-12)
	checkSteps(t, r.Steps())
	if b := r.Band(); b.Low != r.CO2Share || b.High != 1 {
		t.Errorf("band %+v", b)
	}
	bad := s
	bad.Charge = 0
	noAir := s
	noAir.Air = Pressure{}
	for _, err := range []error{second(s.IntoRoom(0)), second(bad.IntoRoom(20)), second(noAir.IntoRoom(20))} {
		var e *RangeError
		if !errors.As(err, &e) {
			t.Errorf("got %v, want a RangeError", err)
		}
	}
}

func TestSupplyErrors(t *testing.T) {
	good := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), PSIG(12))
	for name, spoil := range map[string]func(*Supply){
		"air pressure":            func(s *Supply) { s.Air = Pressure{} },
		"keg":                     func(s *Supply) { s.Keg = 0 },
		"kegs":                    func(s *Supply) { s.Kegs = 1e9 },
		"headspace":               func(s *Supply) { s.Headspace = -1 },
		"purges":                  func(s *Supply) { s.Purges = -1 },
		"content":                 func(s *Supply) { s.From = Volumes(30) },
		"temperature":             func(s *Supply) { s.Temperature = thermal.Celsius(60) },
		"gauge pressure on a keg": func(s *Supply) { s.Gauge = PaG(-1) },
		"cylinder charge":         func(s *Supply) { s.Charge = 0 },
		"filling ratio":           func(s *Supply) { s.Filling = 1 },
		"cylinder temperature":    func(s *Supply) { s.CylinderTemperature = thermal.Celsius(99) },
	} {
		s := good
		spoil(&s)
		n, err := s.Plan()
		var e *RangeError
		if !errors.As(err, &e) || e.Name != name {
			t.Errorf("got %v, want a RangeError of the %s", err, name)
		}
		if !math.IsNaN(float64(n.Total)) || n.Cylinder.IsValid() {
			t.Errorf("%s: with an error the result is %s", name, fmt.Sprint(n.Total))
		}
	}
}
