package carbonation

import (
	"testing"
	"time"

	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

func BenchmarkContentAt(b *testing.B) {
	t, p := thermal.Fahrenheit(38), PSIG(12).Absolute(PaA(101325))
	stout, _ := thermal.BeerOf(0.07, 1.018)
	for _, c := range []struct {
		name string
		beer thermal.Beer
	}{{"ordinary", thermal.Beer{}}, {"stout", stout}, {"water", thermal.Water()}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				ContentAt(t, p, c.beer)
			}
		})
	}
}

func BenchmarkPressureFor(b *testing.B) {
	stout, _ := thermal.BeerOf(0.07, 1.018)
	b.ReportAllocs()
	for b.Loop() {
		PressureFor(Volumes(2.5), thermal.Celsius(4), stout)
	}
}

func BenchmarkTemperatureFor(b *testing.B) {
	stout, _ := thermal.BeerOf(0.07, 1.018)
	p := PSIG(12).Absolute(PaA(101325))
	b.ReportAllocs()
	for b.Loop() {
		TemperatureFor(Volumes(2.5), p, stout)
	}
}

func BenchmarkSolveGauge(b *testing.B) {
	d := DefaultDraught()
	b.ReportAllocs()
	for b.Loop() {
		d.SolveGauge(thermal.Celsius(4), Volumes(2.5))
	}
}

func BenchmarkSealedAt(b *testing.B) {
	s := DefaultDraught().Sealed(Volumes(2.5), thermal.Celsius(4))
	b.ReportAllocs()
	for b.Loop() {
		s.At(thermal.Celsius(30))
	}
}

func BenchmarkAirPumpAfter(b *testing.B) {
	keg, _ := volume.VesselNamed("us-half")
	a := DefaultDraught().AirPump(keg, thermal.Celsius(4), Volumes(2.5))
	b.ReportAllocs()
	for b.Loop() {
		a.After(6 * time.Hour)
	}
}

func BenchmarkSupplyPlan(b *testing.B) {
	s := DefaultDraught().Supply(50*volume.Litre, thermal.Celsius(4), PSIG(12))
	b.ReportAllocs()
	for b.Loop() {
		s.Plan()
	}
}

func BenchmarkReach(b *testing.B) {
	e, _ := DefaultDraught().SolveContent(thermal.Celsius(4), PSIG(12))
	b.ReportAllocs()
	for b.Loop() {
		e.Reach(Volumes(0), 0.5, 0.9)
	}
}
