package carbonation

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// Three published pressures of one kind of bottle at three temperatures must
// give one and the same content, within 1 %. The bottle: 750 mL of wine and 25
// mL of gas, from memory. The check is of the temperature law, so that the
// liquid stands as water.
func TestSealedBottlesHaveOneContent(t *testing.T) {
	var totals []float64
	for _, r := range checktest.Table(t, "sealed_bottle_pressure.csv") {
		kelvin, pascal := r.Number("temp_K"), 1e5*r.Number("published_pCO2_bar")
		totals = append(totals, hotLaw(kelvin, 0).content(pascal)+gasDensity(kelvin, pascal)*25/750)
	}
	mean := 0.0
	for _, c := range totals {
		mean += c / float64(len(totals))
	}
	for _, c := range totals {
		checktest.Near(t, "total content, g/L", c, mean, 0.01*mean)
	}
	// The same bottle as a Sealed: closed as the coldest row says, it shows the
	// pressure of the warmest.
	rows := checktest.Table(t, "sealed_bottle_pressure.csv")
	cold, hot := rows[0], rows[len(rows)-1]
	start := thermal.Kelvin(cold.Number("temp_K"))
	s := Sealed{
		Beer: thermal.Water(), Air: PaA(101325), Closed: start, Headspace: 25.0 / 775, AtBalance: true,
		Content: must(ContentAt(start, PaA(float64(unit.Pressure(cold.Number("published_pCO2_bar"))*Bar)), thermal.Water()))(t),
	}
	p := must(s.At(thermal.Kelvin(hot.Number("temp_K"))))(t)
	checktest.Near(t, "pressure at 293 K, bar", p.Partial.Bar(), hot.Number("published_pCO2_bar"), 0.02*7.5)
}

// With more headspace the same content stands under less pressure, by the
// closed form of the ideal gas without expansion:
//
//	p = c (1−h) / (s (1−h) + h M/RT)
//
// which the real gas follows within 2 %.
func TestHeadspaceByMassBalance(t *testing.T) {
	d := DefaultDraught()
	for _, h := range []float64{0.02, 0.04, 0.08} {
		s := d.Sealed(Volumes(2.5), thermal.Celsius(4))
		s.Headspace, s.AirShare = h, 0
		s.Air = PaA(101325)
		p := must(s.At(thermal.Celsius(20)))(t)
		kelvin := 293.15
		solubility := lawAt(kelvin, 1).content(1e5) / 1e5
		gas := molarMassCO2 * 1e-3 / (gasConstant * kelvin)
		total := Volumes(2.5).GramsPerLitre()*(1-h) + gasDensity(277.15, atmosphere)*h
		want := total / (solubility*(1-h) + gas*h)
		checktest.Near(t, fmt.Sprintf("CO2 pressure at %g %% headspace, kPa", 100*h), p.Partial.KPa(), want/1e3, 0.02*want/1e3)
	}
}

// At its closing temperature a keg at balance reads what its regulator read.
func TestSealedKegAtBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Draught{drawBeer(t), PaA(101325), 1}
		temp := thermal.Celsius(rapid.Float64Range(0, 25).Draw(t, "celsius"))
		e, err := d.SolveContent(temp, PaG(rapid.Float64Range(10e3, 300e3).Draw(t, "gauge")))
		if err != nil {
			t.Fatal(err)
		}
		s := d.Sealed(e.Content, temp)
		s.AtBalance, s.Headspace = true, rapid.Float64Range(0.01, 0.9).Draw(t, "headspace")
		p, err := s.At(temp)
		if err != nil || math.Abs(p.Gauge.Pascals()-e.Gauge.Pascals()) > 1e-2 {
			t.Fatalf("gauge %v, want %v (%v)", p.Gauge, e.Gauge, err)
		}
		// CO2 is conserved: dissolved and in the gas, for a litre of beer when closed.
		s.Regulator = e.Gauge
		warmer, err := s.At(temp.Add(10))
		if errors.Is(err, volume.ErrNoSolution) {
			t.Skip("full")
		}
		if err != nil {
			t.Fatal(err)
		}
		if !(warmer.Gauge.Pascals() > p.Gauge.Pascals()) {
			t.Fatal("pressure does not rise with temperature")
		}
		total := func(p Package) float64 {
			return p.Content.GramsPerLitre()*p.split.liquid + p.InGas.GramsPerLitre()*p.charge.liquid
		}
		if math.Abs(total(p)-total(warmer)) > 1e-9*total(p) {
			t.Fatalf("CO2 is not conserved: %g, %g g", total(p), total(warmer))
		}
		if math.Abs(float64(warmer.PushBack)-(warmer.Gauge.Pascals()-e.Gauge.Pascals())) > 1e-6 || !(warmer.Lift > 0) {
			t.Fatalf("push-back %v Pa, %v m", float64(warmer.PushBack), float64(warmer.Lift))
		}
		s.Regulator = warmer.Gauge
		if p, err = s.At(temp); err != nil || p.PushBack != 0 || p.Lift != 0 {
			t.Fatalf("a cold keg pushes back, %v", err)
		}
	})
}

// 1 psi lifts 2.31 ft of water: common practice, no source.
func TestPushBackLift(t *testing.T) {
	s := DefaultDraught().Sealed(Volumes(2.5), thermal.Celsius(4))
	s.Beer, s.AtBalance, s.Regulator = thermal.Water(), true, PSIG(10)
	p := must(s.At(thermal.Celsius(15)))(t)
	checktest.Near(t, "ft a psi", float64(p.Lift)/0.3048/float64(p.PushBack/PSI), 2.31, 0.005)
	s.Regulator = Gauge{}
	if p = must(s.At(thermal.Celsius(15)))(t); p.PushBack != 0 || p.Lift != 0 {
		t.Errorf("push-back against no regulator: %g Pa", float64(p.PushBack))
	}
}

func TestOpenings(t *testing.T) {
	s := DefaultDraught().Sealed(Volumes(2.6), thermal.Celsius(4))
	last := must(s.At(thermal.Celsius(4)))(t)
	if last.Lost.Volumes() != 0 {
		t.Errorf("lost %v without opening", last.Lost)
	}
	for s.Openings = 1; s.Openings < 6; s.Openings++ {
		p := must(s.At(thermal.Celsius(4)))(t)
		if !(p.Content.Volumes() < last.Content.Volumes() && p.Lost.Volumes() > last.Lost.Volumes()) {
			t.Errorf("opening %d: %v left, %v lost", s.Openings, p.Content, p.Lost)
		}
		left := p.Content.GramsPerLitre() + p.InGas.GramsPerLitre() + p.Lost.GramsPerLitre()
		checktest.Near(t, "CO2 in all, g/L", left, s.Content.GramsPerLitre(), 1e-9)
		last = p
	}
	// The last opening of flat beer lets air in, not out.
	flat := DefaultDraught().Sealed(Volumes(0.3), thermal.Celsius(4))
	flat.AirShare, flat.Openings = 0, 2
	p := must(flat.At(thermal.Celsius(4)))(t)
	checktest.Near(t, "gauge of opened flat beer", p.Gauge.KPa(), 0, 1e-6)

	spilt := DefaultDraught().Sealed(Volumes(2.6), thermal.Celsius(4))
	spilt.FillLoss = 0.1
	checktest.Near(t, "lost at filling", must(spilt.At(thermal.Celsius(4)))(t).Lost.Volumes(), 0.26, 1e-12)
}

// Carroll's Henry constant against the table of the CRC Handbook that cites the
// same authors: x at 100 kPa, to 0.2 % beside the rounding. The fugacity and the
// vapour pressure are left to the table.
func TestCarroll(t *testing.T) {
	for _, r := range checktest.Table(t, "co2_in_water.csv") {
		if r.Text("source") != "CRC Handbook p8-90" || r.Number("CO2_partial_or_total_pressure_kPa") != 100 {
			continue
		}
		kelvin := r.Number("temp_degC") + iceKelvin
		want, half := r.Printed("value")
		x := 1e3 * 1e5 * math.Exp(1e5*lnFugacityPerPascal(kelvin)) / carrollHenry(kelvin)
		checktest.Near(t, fmt.Sprintf("1000 x at %g K", kelvin), x, want, half+0.002*want)
	}
	checktest.Near(t, "step at 45 °C", lnHenryHot(45.0001+iceKelvin)-lnHenryHot(45+iceKelvin), 0, 1e-5)
}

// A bottle filled to the brim bursts by the beer's own expansion. Water that is
// heated from 4 to 40 °C grows by 0.78 %: density 992.22 kg/m³ at 40 °C, CRC
// Handbook of Chemistry and Physics, from memory.
func TestHydraulicLock(t *testing.T) {
	s := DefaultDraught().Sealed(Volumes(2.5), thermal.Celsius(4))
	s.Headspace = 1 - 992.22/999.97
	p := must(s.At(thermal.Celsius(30)))(t)
	checktest.Near(t, "full at", p.FullAt.Celsius(), 40, 0.1)
	if !p.Tight || !p.Warm || p.Hot || p.OverCarbonated {
		t.Errorf("flags %v %v %v %v", p.Tight, p.Warm, p.Hot, p.OverCarbonated)
	}
	_, err := s.At(thermal.Celsius(41))
	if !errors.Is(err, volume.ErrNoSolution) || !strings.Contains(err.Error(), "°F") {
		t.Errorf("got %v, want no solution in both scales", err)
	}
	roomy := DefaultDraught().Sealed(Volumes(3), thermal.Celsius(4))
	roomy.Headspace = 0.05
	hot := must(roomy.At(thermal.Celsius(60)))(t)
	if !hot.Hot || hot.Tight || !hot.OverCarbonated || hot.FullAt.IsValid() {
		t.Errorf("%+v", hot)
	}
	if b := hot.Band(); !(b.Low < hot.Gauge.KPa() && hot.Gauge.KPa() < b.High) {
		t.Errorf("band %+v", b)
	}
	checkSteps(t, hot.Steps())
	roomy.Rating = BarG(3)
	if hot = must(roomy.At(thermal.Celsius(60)))(t); !hot.OverRating {
		t.Error("above its rating and not flagged")
	}
}

func checkSteps(t *testing.T, steps []volume.Step) {
	t.Helper()
	if len(steps) < 5 {
		t.Errorf("%d steps", len(steps))
	}
	for _, s := range steps {
		if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) || s.Name == "" || s.Symbol == "" || s.Source == "" {
			t.Errorf("step %+v", s)
		}
	}
}

func TestSealedErrors(t *testing.T) {
	good := DefaultDraught().Sealed(Volumes(2.5), thermal.Celsius(4))
	later := thermal.Celsius(20)
	for name, spoil := range map[string]func(*Sealed, *thermal.Temperature){
		"air pressure":               func(s *Sealed, _ *thermal.Temperature) { s.Air = Pressure{} },
		"content":                    func(s *Sealed, _ *thermal.Temperature) { s.Content = Content{} },
		"temperature":                func(s *Sealed, _ *thermal.Temperature) { s.Closed = thermal.Celsius(50) },
		"headspace":                  func(s *Sealed, _ *thermal.Temperature) { s.Headspace = 0 },
		"air share":                  func(s *Sealed, _ *thermal.Temperature) { s.AirShare = math.NaN() },
		"loss at filling":            func(s *Sealed, _ *thermal.Temperature) { s.FillLoss = 1 },
		"openings":                   func(s *Sealed, _ *thermal.Temperature) { s.Openings = -1 },
		"rating":                     func(s *Sealed, _ *thermal.Temperature) { s.Rating = PSIG(-1) },
		"regulator":                  func(s *Sealed, _ *thermal.Temperature) { s.Regulator = PSIG(1e15) },
		"later temperature":          func(_ *Sealed, t *thermal.Temperature) { *t = thermal.Celsius(100) },
		"CO2 pressure in the vessel": func(s *Sealed, t *thermal.Temperature) { s.Content, *t = Volumes(9), thermal.Celsius(75) },
	} {
		s, at := good, later
		spoil(&s, &at)
		p, err := s.At(at)
		var e *RangeError
		if !errors.As(err, &e) || e.Name != name {
			t.Errorf("got %v, want a RangeError of the %s", err, name)
		}
		if p.Gauge.IsValid() || p.Content.IsValid() || !math.IsNaN(p.Headspace) {
			t.Errorf("%s: with an error the result is %+v", name, p)
		}
	}
	over := good
	over.Content, over.Openings, over.AtBalance, over.Closed = Volumes(15), 1, true, thermal.Celsius(45)
	if _, err := over.At(later); err == nil {
		t.Error("15 volumes at 45 °C pass")
	}
}
