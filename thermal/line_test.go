package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Foam always helps a beer line, since the critical radius of foam is below
// that of the tube; a thicker vinyl wall, below its own, does harm.
func TestLineCriticalRadius(t *testing.T) {
	bare := DefaultLine(dryShade(25))
	heat := func(l Line) (float64, LineRun) {
		r, err := l.Carry(Celsius(3), 3e-5)
		if err != nil {
			t.Fatal(err)
		}
		return float64(r.Heat), r
	}
	q, r := heat(bare)
	thick := bare
	thick.Wall *= 1.2
	if more, _ := heat(thick); !(float64(r.CriticalRadius) > 0.0111125/2 && more > q) {
		t.Errorf("thicker vinyl: %v W after %v, critical radius %v m", more, q, r.CriticalRadius)
	}
	foam := bare
	foam.Insulation = 3e-3
	if less, r := heat(foam); !(float64(r.CriticalRadius) < 0.0111125/2 && less < q) {
		t.Errorf("foam: %v W after %v, critical radius %v m", less, q, r.CriticalRadius)
	}
}

// Air as warm as the beer, or nearly: the difference over which a film was
// worked out used to vanish, and with it the sense of the film. Within half a
// kelvin of where the line settles its films are those of half a kelvin.
func TestLineAsWarmAsAir(t *testing.T) {
	type question struct{ inlet, air float64 }
	try := func(q question, change func(*Line)) [2]LineRun {
		l := DefaultLine(Shade(Celsius(q.air)))
		change(&l)
		s, err := l.Stand(Celsius(q.inlet), time.Second)
		if err != nil {
			t.Fatalf("%+v: stands, %v", q, err)
		}
		r, err := l.Carry(Celsius(q.inlet), Flow(2/60e3))
		if err != nil {
			t.Fatalf("%+v: carries, %v", q, err)
		}
		for _, r := range []LineRun{s, r} {
			trial{"line", r, nil}.holdsUp(t, l.Around.Air.String())
			low, high := math.Min(q.inlet, q.air), math.Max(q.inlet, q.air)
			if got := r.Temperature.Celsius(); !(low-1e-9 <= got && got <= high+1e-9) || !(r.CriticalRadius > 0) {
				t.Errorf("%+v: %v, critical radius %v", q, r.Temperature, r.CriticalRadius)
			}
		}
		return [2]LineRun{s, r}
	}
	// The seed that found it.
	try(question{2.842170943040401e-14, 2.842170943040401e-14}, func(l *Line) {
		l.Around.Humidity, l.Around.Wind, l.Around.Altitude, l.Insulation = 1, 1, 0.5, 0.05
	})
	// Saturated air at 0 °C, where dew sets in with a jump.
	try(question{0, 0}, func(l *Line) {
		l.Around.Humidity, l.Around.Wind, l.Around.Altitude, l.Insulation = 1, 1, 1, 0.03125
	})
	try(question{15.3, 15.299999999999955}, func(l *Line) { l.Around.Humidity, l.Around.Wind = 1, 1 })
	for _, q := range []question{{5, 5.0000000000001}, {5, 5.0000000000002}, {3.3333333333, 3.3333333}, {20, 20.000001}, {5, 5}, {5, 4.9}} {
		near := try(q, func(*Line) {})
		off := try(question{q.inlet, q.inlet + math.Copysign(0.5, q.air-q.inlet)}, func(*Line) {})
		for i := range near {
			checktest.Near(t, "UA", float64(near[i].UA), float64(off[i].UA), 0.005*float64(off[i].UA))
		}
	}
}

// A course begins with the inlet, ends with the answer, and is empty where beer
// flows.
func TestLineAndGlassCourse(t *testing.T) {
	l := DefaultLine(Shade(Celsius(30)))
	s, err := l.Stand(Celsius(3), 20*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	c := s.Course(5)
	checktest.Near(t, "start", c[0].Beer.Celsius(), 3, 1e-9)
	checktest.Near(t, "end", c[4].Beer.Celsius(), s.Temperature.Celsius(), 1e-9)
	half, err := l.Stand(Celsius(3), 10*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "middle", c[2].Beer.Celsius(), half.Temperature.Celsius(), 1e-9)
	if r, _ := l.Carry(Celsius(3), 5e-5); r.Course(5) != nil {
		t.Error("flowing beer has a course in time")
	}
	g, err := meadowGlass(t, Shade(Celsius(30))).Pour(Celsius(3), 10*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	c = g.Course(2)
	checktest.Near(t, "glass at first", c[0].Beer.Celsius(), g.Temperature.Celsius(), 1e-9)
	checktest.Near(t, "glass at last", c[1].Beer.Celsius(), g.After.Celsius(), 1e-9)
}

func TestLineRefuses(t *testing.T) {
	for name, spoil := range map[string]func(*Line){
		"length": func(l *Line) { l.Length = 0 }, "bore": func(l *Line) { l.Bore = unit.Length(math.NaN()) },
		"wall": func(l *Line) { l.Wall = 0 }, "conductivity": func(l *Line) { l.Conductivity = 0 },
		"insulation": func(l *Line) { l.Insulation = -1 }, "foam": func(l *Line) { l.InsulationConductivity = 0 },
		"solar": func(l *Line) { l.Solar = 90 }, "air": func(l *Line) { l.Around.Air = Temperature{} },
	} {
		l := DefaultLine(Shade(Celsius(30)))
		spoil(&l)
		var re *RangeError
		if r, err := l.Carry(Celsius(3), 5e-5); !errors.As(err, &re) || r.Temperature.IsValid() || !math.IsNaN(float64(r.UA)) {
			t.Errorf("%s: carries, %v", name, err)
		}
		if r, err := l.Stand(Celsius(3), time.Minute); !errors.As(err, &re) || r.Temperature.IsValid() {
			t.Errorf("%s: stands, %v", name, err)
		}
	}
	l := DefaultLine(Shade(Celsius(30)))
	frost := DefaultLine(Shade(Celsius(-15)))
	if r, err := frost.Stand(Celsius(3), 5*time.Hour); !errors.Is(err, ErrNoSolution) || r.Temperature.IsValid() {
		t.Errorf("a night of frost: %v, %v", r.Temperature, err)
	}
	var re *RangeError
	if _, err := l.Stand(Celsius(3), -time.Second); !errors.As(err, &re) {
		t.Errorf("negative time: %v", err)
	}
	if _, err := l.Carry(Celsius(3), 0); !errors.As(err, &re) {
		t.Errorf("no flow: %v", err)
	}
}

func TestLineAllocates(t *testing.T) {
	l := DefaultLine(Shade(Celsius(30)))
	if n := testing.AllocsPerRun(20, func() { l.Carry(Celsius(3), Flow(2*volume.USFluidOunce)) }); n != 0 {
		t.Errorf("Carry allocates %v times", n)
	}
}

func BenchmarkLineCarry(b *testing.B) {
	b.ReportAllocs()
	l := DefaultLine(Shade(Celsius(30)))
	for b.Loop() {
		l.Carry(Celsius(3), Flow(2*volume.USFluidOunce))
	}
}
