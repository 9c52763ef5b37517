package carbonation

import (
	"testing"

	"example.com/pourwell/thermal"
)

func BenchmarkContentAt(b *testing.B) {
	t, p := thermal.Fahrenheit(38), GaugeOf(12*PSI).Absolute(AbsoluteOf(Atmosphere))
	stout, _ := thermal.BeerOf(0.07, 1.018)
	for _, c := range []struct {
		name string
		beer thermal.Beer
	}{{"ordinary", thermal.Beer{}}, {"stout", stout}, {"water", thermal.Water}} {
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
	p := GaugeOf(12 * PSI).Absolute(AbsoluteOf(Atmosphere))
	b.ReportAllocs()
	for b.Loop() {
		TemperatureFor(Volumes(2.5), p, stout)
	}
}
