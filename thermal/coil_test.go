package thermal

import (
	"errors"
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/heat"
	"example.com/pourwell/internal/water"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

var coilFlows = map[string]Flow{
	"laminar": Flow(volume.USFluidOunce), "transition": Flow(2 * volume.USFluidOunce), "turbulent": Flow(9 * volume.USFluidOunce),
}

// The assumed baths against the correlations they stand for: water that flows
// past the tube at 0.05 and 0.2 m/s, and natural convection on a tube of 8 to
// 18 °C in a still bath; colder tubes do worse, as the documentation says.
func TestCoilBaths(t *testing.T) {
	c := DefaultCoil()
	outside := float64(c.Bore + 2*c.Wall)
	w := heat.Water(zeroCelsius + 1)
	for _, x := range []struct {
		speed float64
		film  FilmCoefficient
	}{{0.05, c.Packed().Film}, {0.2, c.Pumped().Film}} {
		h := heat.NusseltCross(x.speed*outside/w.Nu, w.Pr) * w.K / outside
		checktest.Near(t, "film past the tube", float64(x.film), h, 0.15*h)
	}
	for _, tube := range []float64{8, 10, 12, 14, 16, 18} {
		w := heat.Water(zeroCelsius + (tube+2)/2)
		h := heat.NusseltCylinder(w.Rayleigh(heat.WaterBuoyancy(tube, 2, heat.Densest), outside), w.Pr) * w.K / outside
		if band := c.FilmBand; !(h > (1-band)*float64(c.Film) && h < (1+band)*float64(c.Film)) {
			t.Errorf("tube of %g °C: natural convection %.0f W/(m² K), outside the stated band of %v", tube, h, c.Film)
		}
	}
}

// Heat, ice and transfer units close, in every regime of flow.
func TestCoilBalance(t *testing.T) {
	for regime, flow := range coilFlows {
		c := DefaultCoil().Packed()
		c.Beer = Water()
		r, err := c.Chill(Celsius(20), flow)
		if err != nil {
			t.Fatal(err)
		}
		if r.Regime() != regime {
			t.Errorf("flow %v is %s, want %s", flow, r.Regime(), regime)
		}
		in, out, bath := 20.0, r.Outlet.Celsius(), c.Bath.Celsius()
		mass := water.Density(293.15) * float64(flow) // kg/s
		taken := mass * water.HeatCapacity(zeroCelsius+(in+bath)/2) * (in - out)
		// OIML and IAPWS differ by 4e-5 in the density of water.
		checktest.Near(t, regime+" heat", float64(r.Heat), taken, 1e-4*taken)
		checktest.Near(t, regime+" ice", float64(r.IcePerLitre)*water.LatentHeat*float64(flow)*1e3, float64(r.Heat), 1e-9*taken)
		checktest.Near(t, regime+" ice per hour", float64(r.IcePerHour), float64(r.IcePerLitre)*float64(flow)*3600e3, 1e-9)
		checktest.Near(t, regime+" effectiveness", r.Effectiveness, (in-out)/(in-bath), 1e-9)
		checktest.Near(t, regime+" NTU", r.NTU, -math.Log(1-r.Effectiveness), 1e-9)
		checktest.Near(t, regime+" outlet", out, heat.Approach(in, bath, float64(r.UA)/float64(r.Heat)*(in-out)), 1e-9)
		lmtd := (in - out) / math.Log((in-bath)/(out-bath))
		checktest.Near(t, regime+" UA LMTD", float64(r.UA)*lmtd, taken, 1e-4*taken)
		if b := r.Band(); !(b.Low < out && out < b.High) {
			t.Errorf("%s: outlet %v outside its band %v", regime, out, b)
		}
	}
}

// The march against the classical Runge-Kutta method with ten times the steps,
// and with its own step halved.
func TestCoilSteps(t *testing.T) {
	for _, flow := range []float64{0.2, 0.6, 1, 1.5, 2, 3, 6} {
		for _, c := range []Coil{DefaultCoil().Still(), DefaultCoil().Packed(), DefaultCoil().Pumped()} {
			v := flow * float64(volume.USFluidOunce)
			full, half := c.chill(27, v, coilStations).Outlet, c.chill(27, v, 2*coilStations).Outlet
			checktest.Near(t, "outlet with the step halved", full.Celsius(), half.Celsius(), 0.01)
			m := coilMarch{
				Coil: &c, bath: c.Bath.Celsius(), bore: float64(c.Bore), massFlow: c.Beer.density(27) * v,
				specific: c.Beer.heatCapacity((27 + c.Bath.Celsius()) / 2),
				wall:     heat.RadialResistance(float64(c.Bore), float64(c.Bore+2*c.Wall), float64(c.Conductivity)),
				outer:    heat.FilmResistance(float64(c.Bore+2*c.Wall), float64(c.Film)),
			}
			theta, dx := 27-m.bath, float64(c.Length)/80
			slope := func(th float64) float64 { return -m.conductance(th) * th / (m.massFlow * m.specific) }
			for range 80 {
				k1 := slope(theta)
				k2 := slope(theta + k1*dx/2)
				k3 := slope(theta + k2*dx/2)
				k4 := slope(theta + k3*dx)
				theta += dx / 6 * (k1 + 2*k2 + 2*k3 + k4)
			}
			checktest.Near(t, "outlet by Runge-Kutta", full.Celsius(), m.bath+theta, 0.01)
		}
	}
}

// Physics leaves no choice: a longer coil, a better film and a colder bath
// chill more; a warmer inlet leaves warmer; results are finite.
func TestCoilMonotonic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := DefaultCoil().in(Celsius(rapid.Float64Range(0, 5).Draw(t, "bath")), FilmCoefficient(rapid.Float64Range(100, 4000).Draw(t, "film")), 0.3)
		c.Length = unit.Length(rapid.Float64Range(1, 60).Draw(t, "length"))
		c.Bore = unit.Length(rapid.Float64Range(4e-3, 9e-3).Draw(t, "bore"))
		flow := Flow(rapid.Float64Range(5e-6, 2e-4).Draw(t, "flow"))
		in := rapid.Float64Range(8, 35).Draw(t, "inlet")
		outlet := func(c Coil, in float64) float64 {
			r, err := c.Chill(Celsius(in), flow)
			if err != nil {
				t.Fatal(err)
			}
			for _, s := range r.Steps() {
				if math.IsNaN(s.Value) || math.IsInf(s.Value, 0) {
					t.Fatalf("%s is %v", s.Name, s.Value)
				}
			}
			return r.Outlet.Celsius()
		}
		base := outlet(c, in)
		longer, better, colder := c, c, c
		longer.Length *= 1.1
		better.Film *= 1.1
		colder.Bath = c.Bath.Add(-0.5)
		for name, other := range map[string]float64{"longer": outlet(longer, in), "better": outlet(better, in), "colder": outlet(colder, in)} {
			if other > base+1e-9 {
				t.Fatalf("%s coil: outlet %v, above %v", name, other, base)
			}
		}
		if warmer := outlet(c, in+1); warmer < base {
			t.Fatalf("warmer inlet leaves colder: %v, %v", warmer, base)
		}
	})
}

// Beer colder than the bath is warmed by it and melts no ice, in a steady flow
// or in glasses; its heat is the bath's.
func TestCoilColderThanBath(t *testing.T) {
	c := DefaultCoil().Packed()
	r, err := c.Chill(Celsius(-2), Flow(3/60e3))
	if err != nil {
		t.Fatal(err)
	}
	if !(-2 < r.Outlet.Celsius() && r.Outlet.Sub(c.Bath) < 0 && r.Heat < 0) || r.IcePerLitre != 0 || r.IcePerHour != 0 {
		t.Errorf("%+v", r)
	}
	s, err := c.Serve(Celsius(-2), DefaultPours())
	if err != nil || s.IcePerGlass != 0 || s.IcePerLitre != 0 || s.IcePerHour != 0 {
		t.Errorf("%+v, %v", s, err)
	}
}

func TestCoilRefuses(t *testing.T) {
	good := func() Coil { return DefaultCoil().Packed() }
	flow := Flow(2 * volume.USFluidOunce)
	for name, spoil := range map[string]func(*Coil){
		"length": func(c *Coil) { c.Length = 0 }, "bore": func(c *Coil) { c.Bore = 0.1 },
		"wall": func(c *Coil) { c.Wall = unit.Length(math.NaN()) }, "winding": func(c *Coil) { c.Winding = 0 },
		"tight winding": func(c *Coil) { c.Winding = 0.02 }, "conductivity": func(c *Coil) { c.Conductivity = 0 },
		"bath": func(c *Coil) { c.Bath = Temperature{} }, "film": func(c *Coil) { c.Film = FilmCoefficient(math.Inf(1)) },
		"band": func(c *Coil) { c.FilmBand = -1 },
	} {
		c := good()
		spoil(&c)
		var re *RangeError
		if r, err := c.Chill(Celsius(20), flow); !errors.As(err, &re) || !math.IsNaN(float64(r.UA)) || r.Outlet.IsValid() {
			t.Errorf("%s: %v, %v; want a RangeError and NaN", name, r.UA, err)
		}
		if f, err := c.LargestFlow(Celsius(20), Celsius(5)); !errors.As(err, &re) || !math.IsNaN(float64(f.Flow)) {
			t.Errorf("%s: %v, %v; want a RangeError and NaN", name, f.Flow, err)
		}
	}
	var re *RangeError
	for _, bad := range []float64{math.NaN(), math.Inf(1), 0, -1, 1} {
		if _, err := good().Chill(Celsius(20), Flow(bad)); !errors.As(err, &re) {
			t.Errorf("flow %v: %v", bad, err)
		}
	}
	if _, err := good().Chill(Celsius(41), flow); !errors.As(err, &re) {
		t.Errorf("inlet 41 °C: %v", err)
	}
	big := good()
	big.Bore, big.Winding = 4e-3, 0.1
	if _, err := big.Chill(Celsius(35), Flow(6e-4)); !errors.As(err, &re) || re.Name != "Reynolds number" {
		t.Errorf("Reynolds number above 1e5: %v", err)
	}
}

// Brine below the freezing point of the beer is reported, and beer is not
// chilled below it.
func TestCoilBrine(t *testing.T) {
	c := DefaultCoil().Pumped()
	c.Bath, c.Length = Celsius(-3), 4
	r, err := c.Chill(Celsius(20), Flow(2*volume.USFluidOunce))
	if err != nil || !r.Blocks || !(r.FreezeMargin < 0) {
		t.Errorf("brine of −3 °C: blocks %v by %v K, %v", r.Blocks, r.FreezeMargin, err)
	}
	if _, err := c.Serve(Celsius(20), DefaultPours()); !errors.Is(err, ErrNoSolution) {
		t.Errorf("brine serves: %v", err)
	}
	checktest.Near(t, "freeze margin", float64(r.FreezeMargin), -3-Beer{}.FreezingPoint().Celsius(), 1e-9)
	if r, _ := DefaultCoil().Pumped().Chill(Celsius(20), Flow(2*volume.USFluidOunce)); r.Blocks {
		t.Error("plain ice water blocks the coil")
	}
	c.Length = 60
	if r, err := c.Chill(Celsius(20), Flow(2*volume.USFluidOunce)); !errors.Is(err, ErrNoSolution) || !math.IsNaN(r.NTU) {
		t.Errorf("long coil in brine: %v, %v", r.Outlet, err)
	}
	for _, target := range []float64{-2.9, -4, 25} {
		if _, err := c.LargestFlow(Celsius(20), Celsius(target)); !errors.Is(err, ErrNoSolution) {
			t.Errorf("target %v °C: %v", target, err)
		}
	}
}

func TestCoilAllocates(t *testing.T) {
	c := DefaultCoil()
	if n := testing.AllocsPerRun(100, func() { c.Chill(Celsius(20), 6e-5) }); n != 0 {
		t.Errorf("Chill allocates %v times", n)
	}
	p := DefaultPours()
	if n := testing.AllocsPerRun(100, func() { c.Serve(Celsius(20), p) }); n != 0 {
		t.Errorf("Serve allocates %v times", n)
	}
}

func BenchmarkCoilChill(b *testing.B) {
	b.ReportAllocs()
	c := DefaultCoil()
	for b.Loop() {
		c.Chill(Celsius(20), Flow(2*volume.USFluidOunce))
	}
}
