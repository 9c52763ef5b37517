package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// The film under a disc of melting ice from lubrication theory, by hand: the
// radial flow that carries the melt off under the pressure
// p = (3 μ w/2 δ³) R² with the melting speed w = k ΔT/(ρ L δ).
func TestSqueezedFilm(t *testing.T) {
	const dt, radius, pressure, mu, k, rho = 5, 0.012, 3600, 1.64e-3, 0.563, 1000
	film := squeezedFilm(dt, radius, pressure)
	speed := k * dt / (rho * water.LatentHeat * film)
	checktest.Near(t, "pressure under the foot", 1.5*mu*speed*radius*radius/(film*film*film), pressure, 1e-6*pressure)
}

// Textbook tables of a heat exchanger with one side at constant temperature: an
// NTU of 1, 2 and 3 has an effectiveness of 0.632, 0.865 and 0.950.
func TestPlateEffectiveness(t *testing.T) {
	p := DefaultPlate()
	p.Contact, p.Film = 1, 20000 // so much ice that the block hardly warms
	r, err := p.Chill(Celsius(10), Flow(2*volume.USFluidOunce))
	if err != nil {
		t.Fatal(err)
	}
	for ntu, effectiveness := range map[float64]float64{1: 0.632, 2: 0.865, 3: 0.950} {
		checktest.Near(t, "effectiveness", 1-heat.Approach(1, 0, ntu), effectiveness, 0.0005)
	}
	ntu := r.film * math.Pi * float64(p.Bore) * float64(p.Passage) / r.capacityRate
	checktest.Near(t, "share of the passage", r.share, 1-heat.Approach(1, 0, ntu), 1e-12)
}

// Beer's heat is the block's is the ice's, in each regime of flow and kind of
// contact.
func TestPlateBalance(t *testing.T) {
	for _, p := range []Plate{DefaultPlate().Pressed(), DefaultPlate().Loose(), DefaultPlate().Flooded()} {
		for _, flow := range []Flow{2e-5, 4.5e-5, 1.2e-4} { // laminar, transition, turbulent
			r, err := p.Chill(Celsius(15), flow)
			if err != nil {
				t.Fatal(err)
			}
			q := float64(r.Heat)
			checktest.Near(t, "block to ice", r.ice*r.Block.Celsius(), q, 1e-9*q)
			checktest.Near(t, "beer to block", r.capacityRate*(15-r.Outlet.Celsius()), q, 1e-9*q)
			checktest.Near(t, "ice", float64(r.IcePerHour)*water.LatentHeat/3600, q, 1e-9*q)
			checktest.Near(t, "ice per litre", float64(r.IcePerLitre)*float64(flow)*1e3*water.LatentHeat, q, 1e-9*q)
			checktest.Near(t, "effectiveness", r.Effectiveness, (15-r.Outlet.Celsius())/15, 1e-9)
			checktest.Near(t, "UA", float64(r.UA), -math.Log(1-r.Effectiveness)*r.capacityRate, 1e-9*q)
			if b := r.Band(); !(b.Low < r.Outlet.Celsius() && r.Outlet.Celsius() < b.High) {
				t.Errorf("outlet %v outside its band %v", r.Outlet, b)
			}
		}
	}
}

// The iteration of the mean temperature has come to rest: the film at the mean
// of inlet and outlet gives the outlet back.
func TestPlateRests(t *testing.T) {
	for _, flow := range []float64{2e-5, 4.5e-5, 1.2e-4} {
		p := DefaultPlate()
		r := p.chill(25, flow)
		mean := (25 + r.Outlet.Celsius()) / 2
		re := 4 * r.capacityRate / p.Beer.heatCapacity(12.5) / (math.Pi * float64(p.Bore) * p.Beer.viscosity(mean))
		checktest.Near(t, "Reynolds number", r.Reynolds, re, 1e-3*re)
	}
}

// The pours against the balance of the block, stepped by the classical
// Runge-Kutta method.
func TestPlateServeAgainstSteps(t *testing.T) {
	for _, p := range []Plate{DefaultPlate().Pressed(), DefaultPlate().Loose(), DefaultPlate().Flooded()} {
		pours := DefaultPours()
		pours.Every = 40 * time.Second
		s, err := p.Serve(Celsius(20), pours)
		if err != nil {
			t.Fatal(err)
		}
		r, _ := p.Chill(Celsius(20), pours.Flow)
		fill := float64(pours.Glass) / float64(pours.Flow)
		block := 0.0
		for n := 1; n <= pours.Number; n++ {
			const steps = 400
			start := block
			given, taken := 0.0, 0.0 // by the block to ice, by the block from beer, J
			run := func(seconds, passed float64) (average float64) {
				dt := seconds / steps
				f := func(b float64) float64 { return (passed*(20-b) - r.ice*b) / r.capacity }
				for range steps {
					k1 := f(block)
					k2 := f(block + k1*dt/2)
					k3 := f(block + k2*dt/2)
					k4 := f(block + k3*dt)
					next := block + dt/6*(k1+2*k2+2*k3+k4)
					// Simpson's rule, with the cubic through both ends for the middle
					middle := (block+next)/2 + dt/8*(k1-f(next))
					whole := (block + 4*middle + next) / 6
					average += whole / steps
					given += r.ice * whole * dt
					taken += passed * (20 - whole) * dt
					block = next
				}
				return average
			}
			mean := run(fill, r.capacityRate*r.share)
			checktest.Near(t, "glass", s.Glass(n).Celsius(), 20-r.share*(20-mean), 1e-6)
			run(pours.pause(), 0)
			checktest.Near(t, "energy of block", r.capacity*(block-start), taken-given, 1e-6*taken)
		}
		checktest.Near(t, "settled", s.Settled.Celsius(), s.Glass(2000).Celsius(), 1e-6)
		glass := r.capacityRate * fill * (20 - s.Settled.Celsius())
		checktest.Near(t, "ice per glass", float64(s.IcePerGlass)*water.LatentHeat, glass, 1e-9*glass)
	}
}

// Over one round of a settled row the ice takes exactly the heat of the glass.
func TestPlateRoundCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := DefaultPlate().with(rapid.Float64Range(0, 0.3).Draw(t, "contact"), 50)
		pours := DefaultPours()
		pours.Every = seconds(rapid.Float64Range(8, 600).Draw(t, "every"))
		in := rapid.Float64Range(2, 35).Draw(t, "inlet")
		r, err := p.Chill(Celsius(in), pours.Flow)
		if err != nil {
			t.Fatal(err)
		}
		s, err := p.Serve(Celsius(in), pours)
		if err != nil {
			t.Fatal(err)
		}
		passed, fill := r.capacityRate*r.share, float64(pours.Glass)/float64(pours.Flow)
		// Start of the pour from the mean of the glass, then round to the start.
		x := fill * (r.ice + passed) / r.capacity
		w := -math.Expm1(-x) / x
		steady := passed * in / (r.ice + passed)
		mean := in - (in-s.Settled.Celsius())/r.share
		start := steady + (mean-steady)/w
		end := steady + (start-steady)*math.Exp(-x)
		after := end * math.Exp(-pours.pause()*r.ice/r.capacity)
		toIce := r.ice*mean*fill + r.capacity*(end-after)
		glass := r.capacityRate * fill * (in - s.Settled.Celsius())
		if math.Abs(after-start) > 1e-6*in || math.Abs(toIce-glass) > 1e-6*glass {
			t.Fatalf("round does not close: block %v to %v °C, ice %v, glass %v J", start, after, toIce, glass)
		}
	})
}

// More ice touching chills more; a queue without pause settles at the steady
// outlet; a plate recovers.
func TestPlateOrder(t *testing.T) {
	flow := Flow(2 * volume.USFluidOunce)
	last := math.Inf(-1)
	for _, p := range []Plate{DefaultPlate().Pressed(), DefaultPlate().Loose(), DefaultPlate().Flooded()} {
		r, err := p.Chill(Celsius(12), flow)
		if err != nil {
			t.Fatal(err)
		}
		if r.Outlet.Celsius() <= last {
			t.Errorf("contact of %v chills more than a better one", p.Contact)
		}
		last = r.Outlet.Celsius()
		pours := DefaultPours()
		pours.Every = 8 * time.Second
		s, err := p.Serve(Celsius(12), pours)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Near(t, "queue", s.Settled.Celsius(), r.Outlet.Celsius(), 1e-6)
		checktest.Near(t, "what is left of the block's warmth", r.Block.Celsius()*math.Exp(-s.Recovery.Seconds()/s.tau), math.Min(1, r.Block.Celsius()), 1e-6)
		checktest.Near(t, "time constant", s.tau, r.capacity/r.ice, 1e-9*s.tau)
	}
}

// Half the weight of the ice floats when the melt water between the cubes has
// displaced half of what is left, by hand for 10 kg.
func TestPlateDrainDue(t *testing.T) {
	p, pours := DefaultPlate(), DefaultPours()
	due, err := p.DrainDue(Celsius(12), pours, 10)
	if err != nil {
		t.Fatal(err)
	}
	s, err := p.Serve(Celsius(12), pours)
	if err != nil {
		t.Fatal(err)
	}
	melt := due.Seconds() / pours.Every.Seconds() * float64(s.IcePerGlass)
	lift := melt * (1 - voids) / voids // of the ice that the water between it displaces
	checktest.Near(t, "lift", lift, (10-melt)/2, 1e-6)
	var re *RangeError
	if _, err := p.DrainDue(Celsius(12), pours, unit.Mass(math.NaN())); !errors.As(err, &re) {
		t.Errorf("no ice: %v", err)
	}
	if _, err := p.DrainDue(Celsius(0), pours, 10); !errors.Is(err, ErrNever) {
		t.Errorf("beer at 0 °C: %v", err)
	}
}

func TestPlateRefuses(t *testing.T) {
	for name, spoil := range map[string]func(*Plate){
		"width": func(p *Plate) { p.Width = 0 }, "depth": func(p *Plate) { p.Depth = unit.Length(math.NaN()) },
		"mass": func(p *Plate) { p.Mass = 0 }, "passage": func(p *Plate) { p.Passage = -1 }, "bore": func(p *Plate) { p.Bore = 1 },
		"contact": func(p *Plate) { p.Contact = 1.1 }, "film": func(p *Plate) { p.Film = 0 },
	} {
		p := DefaultPlate()
		spoil(&p)
		var re *RangeError
		if r, err := p.Chill(Celsius(10), 5e-5); !errors.As(err, &re) || r.Outlet.IsValid() || !math.IsNaN(r.NTU) {
			t.Errorf("%s: %v", name, err)
		}
	}
	var re *RangeError
	if _, err := DefaultPlate().Chill(Celsius(-1), 5e-5); !errors.As(err, &re) {
		t.Errorf("beer below 0 °C: %v", err)
	}
}

func BenchmarkPlateServe(b *testing.B) {
	b.ReportAllocs()
	p, pours := DefaultPlate(), DefaultPours()
	for b.Loop() {
		p.Serve(Celsius(12), pours)
	}
}
