package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/water"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// The content of the coil first, then what passes through: 473 mL through a
// coil of 289 mL at 0.5 °C, with beer that passes at 12 °C.
func TestFirstGlassByHand(t *testing.T) {
	r := row{cold: 0.5, warm: 11.5, rested: 0.1, whole: 0, once: 289.0 / 473}
	checktest.Near(t, "first glass", r.at(1), (289*0.5+(473-289)*12)/473.0, 1e-9)
}

// parcels serves glasses drop by drop: the content of the coil is cut into
// slices that remember how often they have rested.
func parcels(c Coil, r CoilChill, p Pours, glasses int) []float64 {
	const slices = 2000 // per glass
	bath, theta := c.Bath.Celsius(), r.inlet-c.Bath.Celsius()
	holds := int(math.Round(float64(r.HoldUp) / float64(p.Glass) * slices))
	queue := make([]int, holds) // rests of each slice; −1 for the content that begins at the bath's temperature
	for i := range queue {
		queue[i] = -1
	}
	var means []float64
	for range glasses {
		sum := 0.0
		for range slices {
			queue = append(queue, 0)
			rests := queue[0]
			queue = queue[1:]
			if rests >= 0 {
				sum += theta * math.Exp(-r.NTU-float64(rests)*p.pause()/r.standing)
			}
		}
		means = append(means, bath+sum/slices)
		for i := range queue {
			if queue[i] >= 0 {
				queue[i]++
			}
		}
	}
	return means
}

func TestCoilServeAgainstParcels(t *testing.T) {
	for _, length := range []float64{4, 15, 25, 40, 70} {
		for _, every := range []time.Duration{8 * time.Second, 15 * time.Second, 30 * time.Second, 2 * time.Minute} {
			c := DefaultCoil()
			c.Length = unit.Length(length)
			p := DefaultPours()
			p.Every = every
			s, err := c.Serve(Celsius(24), p)
			if err != nil {
				t.Fatal(err)
			}
			r, err := c.Chill(Celsius(24), p.Flow)
			if err != nil {
				t.Fatal(err)
			}
			for i, want := range parcels(c, r, p, p.Number) {
				checktest.Near(t, "glass", s.Glass(i+1).Celsius(), want, 0.02) // a slice of 2000 is worth up to 0.01 K
			}
			heat := float64(r.Heat) / (24 - r.Outlet.Celsius()) * (24 - s.Settled.Celsius()) // W while a glass fills
			glass := heat * float64(p.Glass) / float64(p.Flow)
			checktest.Near(t, "ice per glass", float64(s.IcePerGlass)*water.LatentHeat, glass, 1e-9*glass)
			checktest.Near(t, "ice per litre", float64(s.IcePerLitre)*float64(p.Glass)*1e3, float64(s.IcePerGlass), 1e-12)
			checktest.Near(t, "ice per hour", float64(s.IcePerHour)*every.Hours(), float64(s.IcePerGlass), 1e-9)
			checktest.Near(t, "first", s.First.Celsius(), s.Glass(1).Celsius(), 0)
			checktest.Near(t, "last", s.Last.Celsius(), s.Glass(10).Celsius(), 0)
			checktest.Near(t, "settled", s.Settled.Celsius(), s.Glass(10000).Celsius(), 1e-9)
			if b := s.Band(); !(b.Low <= s.Last.Celsius() && s.Last.Celsius() <= b.High) {
				t.Errorf("last glass %v outside its band %v", s.Last, b)
			}
		}
	}
}

// Without a pause a long row is a steady flow; with a long one every glass is
// the first.
func TestCoilServeEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := DefaultCoil().Packed()
		c.Length = unit.Length(rapid.Float64Range(2, 60).Draw(t, "length"))
		in := Celsius(rapid.Float64Range(5, 35).Draw(t, "inlet"))
		p := DefaultPours()
		p.Glass = unit.Volume(rapid.Float64Range(1e-4, 1e-3).Draw(t, "glass"))
		p.Every = seconds(float64(p.Glass) / float64(p.Flow))
		row, err := c.Serve(in, p)
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(float64(row.Settled.Sub(row.Sustained))); d > 1e-6 {
			t.Fatalf("a queue without pause settles %v K off the steady outlet", d)
		}
		p.Every += time.Hour
		rested, err := c.Serve(in, p)
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(float64(rested.Settled.Sub(rested.First))); d > 1e-6 {
			t.Fatalf("rested glasses differ by %v K", d)
		}
		p.Every -= time.Hour - time.Minute
		between, err := c.Serve(in, p)
		if err != nil {
			t.Fatal(err)
		}
		if !(between.Settled.Sub(rested.Settled) >= 0 && row.Settled.Sub(between.Settled) >= 0) {
			t.Fatalf("a minute's pause is not between none and an hour's: %v %v %v", row.Settled, between.Settled, rested.Settled)
		}
		for n := 2; n < 30; n++ {
			if row.Glass(n).Sub(row.Glass(n-1)) < -1e-9 {
				t.Fatalf("glass %d is colder than the one before", n)
			}
		}
	})
}

func TestServeRefuses(t *testing.T) {
	for name, spoil := range map[string]func(*Pours){
		"too soon": func(p *Pours) { p.Every = 7 * time.Second },
		"no glass": func(p *Pours) { p.Glass = 0 },
		"no flow":  func(p *Pours) { p.Flow = Flow(math.NaN()) },
		"none":     func(p *Pours) { p.Number = 0 },
	} {
		p := DefaultPours()
		spoil(&p)
		var re *RangeError
		if s, err := DefaultCoil().Serve(Celsius(20), p); !errors.As(err, &re) || s.First.IsValid() || !math.IsNaN(float64(s.IcePerGlass)) {
			t.Errorf("%s through a coil: %v, %v", name, s.First, err)
		}
		if s, err := DefaultPlate().Serve(Celsius(20), p); !errors.As(err, &re) || s.First.IsValid() {
			t.Errorf("%s through a plate: %v, %v", name, s.First, err)
		}
	}
	if (Service{}).Glass(1).IsValid() {
		t.Error("an empty service serves")
	}
	if s, _ := DefaultCoil().Serve(Celsius(20), DefaultPours()); s.Glass(0).IsValid() {
		t.Error("there is a glass 0")
	}
}

// After the recovery every drop is within 1 K of the bath.
func TestCoilRecovery(t *testing.T) {
	c := DefaultCoil()
	s, err := c.Serve(Celsius(20), DefaultPours())
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "what is left", 18*math.Exp(-s.Recovery.Seconds()/s.tau), 1, 1e-6)
	// Beer and half the wall against the film outside and conduction inside,
	// Nu 5.783, by hand, the film at the low end of ±45 %, with ρc = 4.2e6 and k = 0.54.
	inner := 1 / (math.Pi * 5.783 * 0.54)
	outer := 1 / (0.55 * 450 * math.Pi * 6.35e-3)
	capacity := math.Pi / 4 * (4.93e-3*4.93e-3*4.2e6 + (6.35e-3*6.35e-3-4.93e-3*4.93e-3)/2*7900*477)
	checktest.Near(t, "time constant", s.tau, capacity*(inner+outer), 0.05*s.tau)
}

func BenchmarkCoilServe(b *testing.B) {
	b.ReportAllocs()
	c, p := DefaultCoil(), DefaultPours()
	for b.Loop() {
		c.Serve(Celsius(20), p)
	}
}

// A glass of 16 fl oz at 2 fl oz/s takes 8 s: the refusal of a quicker pace
// says so, and the pace of a queue is none.
func TestPaceOfGlasses(t *testing.T) {
	p := DefaultPours()
	for _, every := range []time.Duration{0, 5 * time.Second, -time.Minute} {
		p.Every = every
		_, err := DefaultCoil().Packed().Serve(Celsius(20), p)
		var wrong *RangeError
		if !errors.As(err, &wrong) || wrong.Value != every.Seconds() || math.Abs(wrong.Min-8) > 1e-9 {
			t.Errorf("one every %v: %v", every, err)
		}
	}
	p.Every = 8 * time.Second
	if _, err := DefaultCoil().Packed().Serve(Celsius(20), p); err != nil {
		t.Errorf("a queue: %v", err)
	}
}
