package carbonation

import (
	"errors"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

type trial = checktest.Trial

var tried = checktest.Tried

// A setting is what the methods of a [Draught] take.
type setting struct {
	d       Draught
	t       thermal.Temperature
	g       Gauge
	c       Content
	from    Content
	depth   unit.Length
	elapsed time.Duration
	share   float64
	still   thermal.Temperature // put into the equilibrium, unless invalid
}

func draughtTrials(change func(*setting)) []trial {
	s := setting{DefaultDraught(), thermal.Celsius(4), KPaG(80), Volumes(2.5), Volumes(1), 0.5, time.Hour, 0.9, thermal.Temperature{}}
	change(&s)
	content, err := s.d.SolveContent(s.t, s.g)
	all := []trial{tried("Draught.SolveContent", content, err)}
	if s.still.IsValid() {
		content.Temperature = s.still
	}
	if err == nil {
		after, err := content.After(s.from, s.depth, s.elapsed)
		all = append(all, tried("Equilibrium.After", after, err))
		reach, err := content.Reach(s.from, s.depth, s.share)
		all = append(all, tried("Equilibrium.Reach", reach, err))
	}
	gauge, err := s.d.SolveGauge(s.t, s.c)
	all = append(all, tried("Draught.SolveGauge", gauge, err))
	warmth, err := s.d.SolveTemperature(s.g, s.c)
	all = append(all, tried("Draught.SolveTemperature", warmth, err))
	share, err := s.d.SolveShare(s.t, s.c, s.g)
	return append(all, tried("Draught.SolveShare", share, err))
}

// lawTrials try the functions that take a partial pressure.
func lawTrials(t thermal.Temperature, p Pressure, c Content) []trial {
	content, err := ContentAt(t, p, thermal.Beer{})
	all := []trial{tried("ContentAt", content, err)}
	pressure, err := PressureFor(c, t, thermal.Beer{})
	all = append(all, tried("PressureFor", pressure, err))
	warmth, err := TemperatureFor(c, p, thermal.Beer{})
	return append(all, tried("TemperatureFor", warmth, err))
}

func sealedTrials(change func(*Sealed, *thermal.Temperature)) (all []trial) {
	for _, balance := range []bool{false, true} {
		s, t := DefaultDraught().Sealed(Volumes(2.5), thermal.Celsius(4)), thermal.Celsius(25)
		s.AtBalance = balance
		change(&s, &t)
		p, err := s.At(t)
		all = append(all, tried("Sealed.At", p, err))
	}
	return all
}

func pumpTrials(change func(*AirPump, *time.Duration)) (all []trial) {
	for _, carried := range []bool{false, true} {
		a, elapsed := DefaultDraught().AirPump(volume.VesselOf(volume.USBarrel/2), thermal.Celsius(4), Volumes(2.5)), time.Hour
		a.Carried = carried
		change(&a, &elapsed)
		p, err := a.After(elapsed)
		all = append(all, tried("AirPump.After", p, err))
	}
	return all
}

// A leak is what [Supply.LeakTest] and [Supply.IntoRoom] take.
type leakSetting struct {
	gas  unit.Volume
	fall unit.Pressure
	over time.Duration
	room unit.Volume
}

func supplyTrials(change func(*Supply, *leakSetting)) []trial {
	s := DefaultDraught().Supply(volume.USBarrel/2, thermal.Celsius(4), KPaG(80))
	s.From = Volumes(0)
	l := leakSetting{10 * volume.Litre, 10 * KPa, time.Hour, 20}
	change(&s, &l)
	n, err := s.Plan()
	all := []trial{tried("Supply.Plan", n, err)}
	test, err := s.LeakTest(l.gas, l.fall, l.over)
	all = append(all, tried("Supply.LeakTest", test, err))
	at, err := s.CylinderAt(s.CylinderTemperature)
	all = append(all, tried("Supply.CylinderAt", at, err))
	room, err := s.IntoRoom(l.room)
	return append(all, tried("Supply.IntoRoom", room, err))
}

func wineTrials(w Wine, t thermal.Temperature, p Pressure, c Content) []trial {
	content, err := w.ContentAt(t, p)
	all := []trial{tried("Wine.ContentAt", content, err)}
	pressure, err := w.PressureFor(c, t)
	return append(all, tried("Wine.PressureFor", pressure, err))
}

func kPaGauge(v float64) Gauge       { return KPaG(v) }
func kPaAbsolute(v float64) Pressure { return KPaA(v) }

// boundSetters put a value where the row of that name is checked.
func boundSetters() map[string]func(v float64) []trial {
	t, p, c := thermal.Celsius(4), KPaA(180), Volumes(2.5)
	all := wineAndAirSetters(t, p, c)
	for name, set := range map[string]func(*setting, float64){
		"temperature":         func(s *setting, v float64) { s.t = thermal.Celsius(v) },
		"temperature at rest": func(s *setting, v float64) { s.still = thermal.Celsius(v) },
		"gauge pressure":      func(s *setting, v float64) { s.g = kPaGauge(v) },
		"air pressure":        func(s *setting, v float64) { s.d.Air = kPaAbsolute(v) },
		"absolute pressure":   func(s *setting, v float64) { s.d.Air, s.g = kPaAbsolute(100+v/125), kPaGauge(v-100-v/125) },
		"CO2 share":           func(s *setting, v float64) { s.d.CO2Share = v },
		"content":             func(s *setting, v float64) { s.t, s.c, s.from = thermal.Celsius(0), Volumes(v), Volumes(v) },
		"depth":               func(s *setting, v float64) { s.depth = unit.Length(v) },
		"reach":               func(s *setting, v float64) { s.share = v },
		"time":                func(s *setting, v float64) { s.elapsed = time.Duration(v * 24 * float64(time.Hour)) },
	} {
		all[name] = func(v float64) []trial { return draughtTrials(func(s *setting) { set(s, v) }) }
	}
	for name, set := range map[string]func(*Sealed, *thermal.Temperature, float64){
		"later temperature": func(_ *Sealed, t *thermal.Temperature, v float64) { *t = thermal.Celsius(v) },
		"headspace":         func(s *Sealed, _ *thermal.Temperature, v float64) { s.Headspace = v },
		"air share":         func(s *Sealed, _ *thermal.Temperature, v float64) { s.AirShare = v },
		"loss at filling":   func(s *Sealed, _ *thermal.Temperature, v float64) { s.FillLoss = v },
		"openings":          func(s *Sealed, _ *thermal.Temperature, v float64) { s.Openings = int(v) },
		"rating":            func(s *Sealed, _ *thermal.Temperature, v float64) { s.Rating = kPaGauge(v) },
		"regulator":         func(s *Sealed, _ *thermal.Temperature, v float64) { s.Regulator = kPaGauge(v) },
		"CO2 pressure in the vessel": func(s *Sealed, t *thermal.Temperature, v float64) {
			s.Closed, *t = thermal.Celsius(45), thermal.Celsius(45)
			s.Content = Content{lawAt(s.Closed.Kelvin(), 1).content(1e3 * max(v, 0)), true}
		},
	} {
		all[name] = func(v float64) []trial {
			return sealedTrials(func(s *Sealed, t *thermal.Temperature) { set(s, t, v) })
		}
	}
	for name, set := range map[string]func(*AirPump, float64){
		"temperature under air": func(a *AirPump, v float64) { a.Temperature = thermal.Celsius(v) },
		"full":                  func(a *AirPump, v float64) { a.Full = v },
		"glass":                 func(a *AirPump, v float64) { a.Glass = unit.Volume(v) * volume.Litre },
		"pump stroke":           func(a *AirPump, v float64) { a.Stroke = unit.Volume(v) * volume.Litre },
		"keg diameter":          func(a *AirPump, v float64) { a.Keg.Diameter = unit.Length(v) },
	} {
		all[name] = func(v float64) []trial { return pumpTrials(func(a *AirPump, _ *time.Duration) { set(a, v) }) }
	}
	for name, set := range supplySetters {
		all[name] = func(v float64) []trial {
			return supplyTrials(func(s *Supply, l *leakSetting) { set(s, l, v) })
		}
	}
	return all
}

var supplySetters = map[string]func(*Supply, *leakSetting, float64){
	"gauge pressure on a keg": func(s *Supply, _ *leakSetting, v float64) { s.Gauge = kPaGauge(v) },
	"keg":                     func(s *Supply, _ *leakSetting, v float64) { s.Keg = unit.Volume(v) * volume.Litre },
	"kegs":                    func(s *Supply, _ *leakSetting, v float64) { s.Kegs = int(v) },
	"purges":                  func(s *Supply, _ *leakSetting, v float64) { s.Purges = int(v) },
	"cylinder charge":         func(s *Supply, _ *leakSetting, v float64) { s.Charge = unit.Mass(v) },
	"filling ratio":           func(s *Supply, _ *leakSetting, v float64) { s.Filling = v },
	"cylinder temperature":    func(s *Supply, _ *leakSetting, v float64) { s.CylinderTemperature = thermal.Celsius(v) },
	"gas volume":              func(_ *Supply, l *leakSetting, v float64) { l.gas = unit.Volume(v) * volume.Litre },
	"fall of the gauge": func(s *Supply, l *leakSetting, v float64) {
		s.Gauge, l.fall = kPaGauge(mostGauge), unit.Pressure(v)*KPa
	},
	"time of the test": func(_ *Supply, l *leakSetting, v float64) { l.over = time.Duration(v * float64(time.Second)) },
	"room":             func(_ *Supply, l *leakSetting, v float64) { l.room = unit.Volume(v) },
}

func wineAndAirSetters(t thermal.Temperature, p Pressure, c Content) map[string]func(v float64) []trial {
	return map[string]func(v float64) []trial{
		"CO2 pressure": func(v float64) []trial { return lawTrials(t, kPaAbsolute(v), c) },
		"sea-level pressure": func(v float64) []trial {
			air, err := kPaAbsolute(v).StationAt(1000)
			return []trial{tried("Pressure.StationAt", air, err)}
		},
		"elevation": func(v float64) []trial {
			standard, err := AirAt(unit.Length(v))
			all := []trial{tried("AirAt", standard, err)}
			reduced, err := PaA(101325).StationAt(unit.Length(v))
			return append(all, tried("Pressure.StationAt", reduced, err))
		},
		"wine temperature": func(v float64) []trial { return wineTrials(Wine{0.12, 10}, thermal.Celsius(v), p, c) },
		"wine alcohol":     func(v float64) []trial { return wineTrials(Wine{v, 10}, t, p, c) },
		"wine sugar":       func(v float64) []trial { return wineTrials(Wine{0.12, v}, t, p, c) },
	}
}

func TestEveryBound(t *testing.T) {
	checktest.EveryBound[RangeError](t, Limits(), checktest.Bounds{
		Setters: boundSetters(), Fine: []error{volume.ErrNoSolution, volume.ErrNever},
		Empty: []string{"Package.FullAt"}, // the beer does not fill the vessel
		Shut:  map[string]string{"CO2 pressure in the vessel below": "no content is less than nothing"},
	})
}

// TestBoundsHoldBothWays solves back what a bound gave, and asks for 20 volumes,
// which are a content, by two ways: both name the pressure that it would take.
func TestBoundsHoldBothWays(t *testing.T) {
	d := DefaultDraught()
	for _, err := range []error{second(d.SolveGauge(thermal.Celsius(4), Volumes(20))), second(PressureFor(Volumes(20), thermal.Celsius(4), thermal.Beer{}))} {
		var r *RangeError
		if !errors.As(err, &r) || r.Name != "CO2 pressure" {
			t.Errorf("20 volumes at 4 °C: %v", err)
		}
	}
	most := must(d.SolveContent(thermal.Celsius(4), kPaGauge(mostGauge)))(t)
	back := must(d.SolveGauge(thermal.Celsius(4), most.Content))(t)
	checktest.Near(t, "the highest gauge pressure, kPa", back.Gauge.KPa(), mostGauge, 1e-6)
	p := must(PressureFor(most.Content, thermal.Celsius(4), thermal.Beer{}))(t)
	checktest.Near(t, "its CO2, kPa", p.KPa(), back.Partial.KPa(), 0)
}
