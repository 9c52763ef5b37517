package carbonation

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// A gauge reads against the air, so that at height it must read higher by the
// fall of the air pressure and by nothing else.
func TestElevationIsTheFallOfAirPressure(t *testing.T) {
	sea := DefaultDraught()
	low := must(sea.SolveGauge(thermal.Fahrenheit(38), Volumes(2.5)))(t)
	for _, h := range []unit.Length{-400, 500, 1609.344, 3000, 6000} {
		hill := sea
		hill.Air = must(AirAt(h))(t)
		high := must(hill.SolveGauge(thermal.Fahrenheit(38), Volumes(2.5)))(t)
		checktest.Near(t, fmt.Sprintf("gauge at %g m", float64(h)), high.Gauge.Pascals()-low.Gauge.Pascals(), 101325-hill.Air.Pascals(), 1e-9*101325)
	}
	// A brewery's chart adds 0.5 psi per 1000 ft. Common practice, no source;
	// the standard atmosphere agrees within 3.5 % up to 6000 ft.
	foot := unit.Length(0.3048)
	for _, kft := range []unit.Length{2, 4, 6} {
		fall := 101325 - must(AirAt(kft*1000*foot))(t).Pascals()
		checktest.Near(t, "psi", fall/float64(PSI), 0.5*float64(kft), 0.035*0.5*float64(kft))
	}
}

// Source: ICAO Doc 7488, table of the standard atmosphere, from memory.
func TestAirAt(t *testing.T) {
	for _, c := range []struct {
		metres unit.Length
		hPa    float64
	}{{0, 1013.25}, {500, 954.61}, {1000, 898.75}, {1500, 845.56}, {2000, 794.95}, {3000, 701.09}, {5000, 540.20}} {
		checktest.Near(t, fmt.Sprintf("air at %g m, hPa", float64(c.metres)), 10*must(AirAt(c.metres))(t).KPa(), c.hPa, 0.02)
	}
	standard := must(PaA(101325).StationAt(1500))(t)
	checktest.Near(t, "standard sea-level pressure at 1500 m", 10*standard.KPa(), 845.56, 0.02)
	// A hectopascal is 8.4 m of height near the sea: the rule of aviation,
	// common practice, no source.
	fine := must(PaA(102325).StationAt(100))(t)
	checktest.Near(t, "high pressure at 100 m, hPa", 10*fine.KPa(), 1023.25-100/8.4, 0.4)
	for _, err := range []error{
		second(AirAt(-501)), second(AirAt(unit.Length(math.NaN()))),
		second(PaA(float64(845 * 100)).StationAt(1500)), second(PaA(101325).StationAt(7000)), second(Pressure{}.StationAt(0)),
	} {
		var e *RangeError
		if !errors.As(err, &e) {
			t.Errorf("got %v, want a RangeError", err)
		}
	}
}

// Any two of the three give the third, and each way round the same state.
func TestDraughtAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Draught{drawBeer(t), PaA(rapid.Float64Range(60e3, 105e3).Draw(t, "air")), rapid.Float64Range(0.2, 1).Draw(t, "share")}
		temp := thermal.Celsius(rapid.Float64Range(-1, 30).Draw(t, "celsius"))
		g := PaG(rapid.Float64Range(0, 400e3).Draw(t, "gauge"))
		a, err := d.SolveContent(temp, g)
		if err != nil {
			t.Fatal(err)
		}
		b, errB := d.SolveGauge(temp, a.Content)
		c, errC := d.SolveTemperature(g, a.Content)
		s, errS := d.SolveShare(temp, a.Content, g)
		if errB != nil || errC != nil || errS != nil {
			t.Fatal(errB, errC, errS)
		}
		for _, off := range []float64{
			b.Absolute.Pascals()/a.Absolute.Pascals() - 1, b.Nitrogen - a.Nitrogen,
			float64(c.Temperature.Sub(temp)) / 300, s.CO2Share/a.CO2Share - 1,
		} {
			if !(math.Abs(off) < 1e-9) {
				t.Fatalf("the ways round disagree by %g:\n%+v\n%+v\n%+v\n%+v", off, a, b, c, s)
			}
		}
		for _, e := range []Equilibrium{a, b, c, s} {
			band := e.Band()
			if !(band.Low < band.High) || band.Name == "" || len(e.Steps()) < 15 {
				t.Fatalf("band %+v, %d steps", band, len(e.Steps()))
			}
			for _, step := range e.Steps() {
				if math.IsNaN(step.Value) || step.Source == "" || step.Symbol == "" {
					t.Fatalf("step %+v", step)
				}
			}
		}
	})
}

// The steps are enough to redo the sum by hand.
func TestStepsRedoTheSum(t *testing.T) {
	e := must(DefaultDraught().SolveContent(thermal.Fahrenheit(38), PSIG(12)))(t)
	v := map[string]float64{}
	for _, s := range e.Steps() {
		v[s.Symbol] = s.Value
	}
	checktest.Near(t, "p", v["p_g"]+v["p_air"], v["p"], 1e-9)
	checktest.Near(t, "φ", math.Exp(1e-6*v["B"]*1e3*v["p_CO2"]/(8.314462618*v["T"])), v["φ"], 1e-12)
	checktest.Near(t, "c", v["β"]*v["K0"]*v["φ"]*v["p_CO2"]*44.0095/101.325, v["c"], 1e-9)
	checktest.Near(t, "v", v["c"]/1.9768, e.Content.Volumes(), 1e-12)
}

func TestDraughtErrors(t *testing.T) {
	d, cold, g := DefaultDraught(), thermal.Fahrenheit(38), PSIG(12)
	thin, nitro := d, d
	thin.Air = KPaA(30)
	nitro.CO2Share = 0
	over := d
	over.CO2Share = 70
	for _, c := range []struct {
		name string
		err  error
	}{
		{"air pressure", second(thin.SolveContent(cold, g))},
		{"CO2 share", second(over.SolveContent(cold, g))},
		{"temperature", second(d.SolveContent(thermal.Celsius(71), g))},
		{"gauge pressure", second(d.SolveContent(cold, PSIG(-15)))},
		{"gauge pressure", second(d.SolveContent(cold, Gauge{}))},
		{"content", second(d.SolveGauge(cold, Content{}))},
		{"temperature", second(d.SolveGauge(thermal.Celsius(-3), Volumes(2)))},
		{"absolute pressure", second(Draught{Air: d.Air, CO2Share: 0.1}.SolveGauge(cold, Volumes(2.5)))},
		{"CO2 pressure", second(d.SolveGauge(thermal.Celsius(44), Volumes(10)))},
		{"content", second(d.SolveTemperature(g, Content{}))},
		{"gauge pressure", second(d.SolveTemperature(Gauge{}, Volumes(2)))},
		{"content", second(d.SolveShare(cold, Content{}, g))},
		{"gauge pressure", second(d.SolveShare(cold, Volumes(2), Gauge{}))},
	} {
		var e *RangeError
		if !errors.As(c.err, &e) || e.Name != c.name {
			t.Errorf("got %v, want a RangeError of the %s", c.err, c.name)
		}
	}
	for _, err := range []error{
		second(nitro.SolveGauge(cold, Volumes(2.5))), second(d.SolveTemperature(g, Volumes(9))), second(d.SolveShare(cold, Volumes(4), g)),
	} {
		if !errors.Is(err, volume.ErrNoSolution) {
			t.Errorf("got %v, want no solution", err)
		}
	}
	e, _ := over.SolveContent(cold, g)
	if e.Content.IsValid() || !math.IsNaN(e.CO2Share) || !math.IsNaN(e.Nitrogen) {
		t.Errorf("with an error the result is %+v, want NaN and invalid values", e)
	}
}

// A blend works by its CO2 alone: 12 psi of pure CO2 and a 70 % blend balance at
// 23.4 psi. Source: Brewers Association, Draught Beer Quality Manual, appendix C,
// the procedure on absolute pressures with these inputs; 2 %, since the rule has
// no fugacity and rounds the air to 14.7 psi.
func TestBlendRule(t *testing.T) {
	straight := must(DefaultDraught().SolveContent(thermal.Fahrenheit(38), PSIG(12)))(t)
	blend := DefaultDraught()
	blend.CO2Share = 0.70
	checktest.Near(t, "psi of a 70 % blend", must(blend.SolveGauge(thermal.Fahrenheit(38), straight.Content))(t).Gauge.PSI(), 23.4, 0.02*23.4)
	share := must(DefaultDraught().SolveShare(thermal.Fahrenheit(38), straight.Content, PSIG(22)))(t)
	checktest.Near(t, "share at 22 psi", share.CO2Share, 26.7/36.7, 0.002)
	// At height the same share needs the absolute pressure, not the gauge.
	hill := blend
	hill.Air = must(AirAt(2000))(t)
	low := must(blend.SolveGauge(thermal.Fahrenheit(38), straight.Content))(t)
	high := must(hill.SolveGauge(thermal.Fahrenheit(38), straight.Content))(t)
	checktest.Near(t, "absolute at 2000 m", high.Absolute.KPa(), low.Absolute.KPa(), 1e-9)
}

// The trade's table at 38 °F has no fugacity and 1.423 volumes an atmosphere
// against the chart's 1.413: within 2.5 %.
func TestBlendTable(t *testing.T) {
	for _, r := range checktest.Table(t, "blend_38F.csv") {
		d := DefaultDraught()
		d.CO2Share = r.Number("percent_CO2") / 100
		e := must(d.SolveContent(thermal.Fahrenheit(38), PaG(float64(unit.Pressure(r.Number("pressure_psig"))*PSI))))(t)
		want, half := r.Printed("volumes_CO2")
		checktest.Near(t, fmt.Sprintf("%g psi, %g %%", r.Number("pressure_psig"), r.Number("percent_CO2")), e.Content.Volumes(), want, half+0.025*want)
	}
}

// Stout on 25 % CO2 and 75 % nitrogen at 35 psi holds 1.2 volumes; its nitrogen
// by another equation, Wilhelm, Battino & Wilcock 1977, within the 2.6 % by which
// the two differ in the cold.
func TestNitrogenOfStout(t *testing.T) {
	stout := Draught{Air: PaA(101325), CO2Share: 0.25}
	e := must(stout.SolveContent(thermal.Fahrenheit(38), PSIG(35)))(t)
	checktest.Near(t, "volumes on 25/75 at 35 psi", e.Content.Volumes(), 1.2, 0.05) // common practice, no source
	k := e.Temperature.Kelvin()
	x := math.Exp((-327.850 + 16757.6/k + 42.8400*math.Log(k) + 0.0167645*k) / 1.98720) // Wilhelm 1977, from memory
	atm := 0.75 * e.Absolute.Pascals() / 101325
	checktest.Near(t, "nitrogen, mg/L", e.Nitrogen, x*atm/18.015*28.013*1e6, 0.026*e.Nitrogen)
}
