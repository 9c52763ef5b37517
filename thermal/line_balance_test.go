package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/heat"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// radial warms a line of layers, given from the beer outwards by their outer
// diameters, conductivities and heat capacities, in a film of coefficient h,
// by the radial equation in finite volumes; it begins with the temperatures of
// steady flow and returns the time in which the beer, mixed, comes 63 % of the
// way.
func radial(diameters, k, c []float64, h float64) float64 {
	const cells = 60
	var capacity, conductance []float64
	outer := diameters[0]
	capacity = append(capacity, math.Pi/4*outer*outer*c[0])
	pending := 0.0 // resistance from the last node to the edge reached
	for layer := 1; layer < len(diameters); layer++ {
		a, b := diameters[layer-1], diameters[layer]
		if a == b {
			continue
		}
		for j := range cells {
			d0, d1 := a+(b-a)*float64(j)/cells, a+(b-a)*float64(j+1)/cells
			middle := math.Sqrt((d0*d0 + d1*d1) / 2)
			conductance = append(conductance, 1/(pending+heat.RadialResistance(d0, middle, k[layer])))
			pending = heat.RadialResistance(middle, d1, k[layer])
			capacity = append(capacity, math.Pi/4*(d1*d1-d0*d0)*c[layer])
			outer = d1
		}
	}
	conductance = append(conductance, 1/(pending+heat.FilmResistance(outer, h)))
	whole := 0.0
	for _, g := range conductance {
		whole += 1 / g
	}
	n := len(capacity)
	theta := make([]float64, n)
	level := 1.0
	for i := range theta {
		theta[i] = level
		level -= 1 / conductance[i] / whole
	}
	dt := whole * capacity[0] / 2000
	upper, right := make([]float64, n), make([]float64, n)
	for steps := 1; ; steps++ { // implicit Euler, solved by elimination
		for i := range n {
			diagonal, lower := capacity[i]/dt+conductance[i], 0.0
			if i > 0 {
				lower = conductance[i-1]
				diagonal += lower
			}
			value := capacity[i] / dt * theta[i]
			if i > 0 {
				diagonal -= lower * upper[i-1]
				value += lower * right[i-1]
			}
			upper[i], right[i] = conductance[i]/diagonal, value/diagonal
		}
		before := theta[0]
		next := 0.0 // the air
		for i := n - 1; i >= 0; i-- {
			next = right[i] + upper[i]*next
			theta[i] = next
		}
		if theta[0] < math.Exp(-1) {
			part := math.Log(before*math.E) / math.Log(before/theta[0])
			return (float64(steps) - 1 + part) * dt
		}
	}
}

// The time constant against the radial equation, and what the usual rule makes
// of it.
func TestLineAgainstRadialEquation(t *testing.T) {
	worst := 0.0
	for _, x := range []struct{ bore, tube, foam, h float64 }{
		{0.0047625, 0.0111125, 0, 6}, {0.0047625, 0.0111125, 0, 14}, {0.00635, 0.009525, 0, 10},
		{0.0047625, 0.0111125, 0.0127, 10}, {0.0047625, 0.0111125, 0.0254, 10}, {0.007, 0.010, 0.013, 8},
	} {
		outer := x.tube + 2*x.foam
		wall, foam := heat.RadialResistance(x.bore, x.tube, 0.14), heat.RadialResistance(x.tube, outer, 0.04)
		whole := wall + foam + heat.FilmResistance(outer, x.h)
		const rc = 4.2e6
		beer := math.Pi / 4 * x.bore * x.bore * rc
		tau := whole * (beer + heat.LayerHeat(x.bore, x.tube, 0.14, lineWallHeat, whole-wall, whole) +
			heat.LayerHeat(x.tube, outer, 0.04, lineFoamHeat, whole-wall-foam, whole))
		exact := radial([]float64{x.bore, x.tube, outer}, []float64{0, 0.14, 0.04}, []float64{rc, lineWallHeat, lineFoamHeat}, x.h)
		checktest.Near(t, "time constant", tau, exact, 0.01*exact)
		rule := 0.9 * whole * (beer + math.Pi/4*(x.tube*x.tube-x.bore*x.bore)*lineWallHeat +
			math.Pi/4*(outer*outer-x.tube*x.tube)*lineFoamHeat/2)
		worst = math.Max(worst, rule/exact)
	}
	if !(worst > 1.4 && worst < 1.6) {
		t.Errorf("the usual rule is %.2f times too long at worst, where the documentation says by half", worst)
	}
}

// The steady outlet and heat against the line cut into 200 pieces, and the
// standing one against 600 steps, with the surface's balance solved afresh in
// each.
func TestLineAgainstPieces(t *testing.T) {
	humid := Shade(Celsius(30))
	humid.Humidity, humid.Sun = 0.7, 500
	for _, around := range []Surroundings{dryShade(30), humid} {
		for _, foam := range []unit.Length{0, 0.013} {
			l := DefaultLine(around)
			l.Length, l.Insulation = 40, foam
			r, err := l.Carry(Celsius(3), Flow(1e-5))
			if err != nil {
				t.Fatal(err)
			}
			temperature := 3.0
			step := l
			inner := r.inside - step.run(3, 0).inside
			for range 200 { // midpoint rule
				at := step.run(temperature, inner)
				half := temperature + (at.settles-temperature)*-math.Expm1(-0.1/(at.inside+at.outside)/r.capacity)
				at = step.run(half, inner)
				temperature += (at.settles - temperature) * -math.Expm1(-0.2/(at.inside+at.outside)/r.capacity)
			}
			checktest.Near(t, "outlet", r.Temperature.Celsius(), temperature, 0.02)
			checktest.Near(t, "heat", float64(r.Heat), r.capacity*(r.Temperature.Celsius()-3), 1e-9)
			checktest.Near(t, "UA", float64(r.UA)*(r.inside+r.outside), 40, 1e-9)

			s, err := l.Stand(Celsius(3), 10*time.Minute)
			if err != nil {
				t.Fatal(err)
			}
			temperature = 3
			// The heat capacity of the beer stays that of the inlet, as in Stand.
			area := math.Pi / 4 * float64(l.Bore*l.Bore)
			beer := func(c float64) float64 { return area * l.Beer.density(c) * l.Beer.heatCapacity(c) }
			rise := func(from, seconds float64) float64 {
				at := l.run(from, 0)
				return (at.settles - from) * -math.Expm1(-seconds/((at.inside+at.outside)*(at.capacity-beer(from)+beer(3))))
			}
			for range 600 {
				temperature += rise(temperature+rise(temperature, 0.5), 1)
			}
			checktest.Near(t, "after ten minutes", s.Temperature.Celsius(), temperature, 0.05)
			if b := s.Band(); !(b.Low < s.Temperature.Celsius() && s.Temperature.Celsius() < b.High) {
				t.Errorf("%v outside its band %v", s.Temperature, b)
			}
		}
	}
}

func TestLineProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		around := Shade(Celsius(rapid.Float64Range(-20, 60).Draw(t, "air")))
		around.Humidity = rapid.Float64Range(0, 1).Draw(t, "humidity")
		around.Sun = Irradiance(rapid.SampledFrom([]float64{0, 1, 300, 1200}).Draw(t, "sun"))
		around.Wind = unit.Velocity(rapid.Float64Range(0, 10).Draw(t, "wind"))
		around.Altitude = unit.Length(rapid.Float64Range(-500, 6000).Draw(t, "altitude"))
		l := DefaultLine(around)
		l.Insulation = unit.Length(rapid.Float64Range(0, 0.05).Draw(t, "foam"))
		in := rapid.Float64Range(0, 40).Draw(t, "inlet")
		wait := time.Duration(rapid.Float64Range(0, 1e5).Draw(t, "wait") * 1e9)
		s, err := l.Stand(Celsius(in), wait)
		if errors.Is(err, ErrNoSolution) && around.Air.Sub(Beer{}.FreezingPoint()) < 0 {
			return // it would freeze
		}
		if err != nil {
			t.Fatal(err)
		}
		low, high := math.Min(in, s.Settles.Celsius()), math.Max(in, s.Settles.Celsius())
		if got := s.Temperature.Celsius(); !(got >= low-1e-9 && got <= high+1e-9) {
			t.Fatalf("standing beer at %v, outside %v to %v", got, low, high)
		}
		if s.Settles.Sub(around.Air) < 0 || (around.Sun > 0) != (s.Settles.Sub(around.Air) > 0) {
			t.Fatalf("settles at %v in air of %v and sun of %v", s.Settles, around.Air, around.Sun)
		}
		later, err := l.Stand(Celsius(in), wait+time.Hour)
		if errors.Is(err, ErrNoSolution) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(later.Temperature.Sub(s.Settles))) > math.Abs(float64(s.Temperature.Sub(s.Settles)))+1e-9 {
			t.Fatalf("an hour later further from %v: %v after %v", s.Settles, later.Temperature, s.Temperature)
		}
		r, err := l.Carry(Celsius(in), Flow(rapid.Float64Range(1e-6, 2e-4).Draw(t, "flow")))
		if errors.Is(err, ErrNoSolution) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, step := range append(r.Steps(), s.Steps()...) {
			if math.IsNaN(step.Value) || math.IsInf(step.Value, 0) {
				t.Fatalf("%s is %v", step.Name, step.Value)
			}
		}
		if got := r.Temperature.Celsius(); !(got >= low-1e-9 && got <= high+1e-9) {
			t.Fatalf("outlet %v, outside %v to %v", got, low, high)
		}
	})
}
