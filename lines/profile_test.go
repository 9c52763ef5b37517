package lines

import (
	"errors"
	"math"
	"testing"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
	"pgregory.net/rapid"
)

// balanced is a run and the serving that holds its beer at rest with the gas.
func balanced(t interface{ Fatal(...any) }) (Run, Serving) {
	r := DefaultRun(Tube{Bore: 3 * Inch / 16, Length: 4.3 * Foot, Material: "vinyl"})
	s := DefaultServing(psi(12), carbonation.Content{})
	c, err := carbonation.ContentAt(r.Temp, s.Gauge.Absolute(s.Air), r.Beer)
	if err != nil {
		t.Fatal(err)
	}
	s.Content = c
	return r, s
}

func TestBalancedColdLineReportsNothing(t *testing.T) {
	r, s := balanced(t)
	p := must(r.Profile(s, 200))(t)
	if p.GasComesOut || math.Abs(float64(p.Excess)) > 1 || math.Abs(p.Exposure/p.Balanced-1) > 1e-4 {
		t.Errorf("balanced: excess %v, exposure %g of %g", p.Excess, p.Exposure, p.Balanced)
	}
	if m := float64(p.Stations[0].Margin); math.Abs(m) > 1 {
		t.Errorf("margin at the keg %g Pa, want none", m)
	}
	last := p.Stations[len(p.Stations)-1]
	if last.Gauge.Pascals() != 0 || last.Margin >= 0 {
		t.Errorf("mouth of the tap: %+v", last)
	}
	st := must(r.Stand(s))(t)
	if !st.Never {
		t.Errorf("a line as cold as the keg breaks out: %+v", st)
	}
}

func TestProfileAddsUp(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r, s := balanced(rt)
		r.DipTube = Tube{Bore: 7e-3, Length: 0.5}
		r.Rise = unit.Length(rapid.Float64Range(-1, 1.5).Draw(rt, "rise"))
		r.Full = rapid.Float64Range(0, 1).Draw(rt, "full")
		r.Tubes = append(r.Tubes, Tube{Bore: 6e-3, Length: unit.Length(rapid.Float64Range(0.2, 5).Draw(rt, "length"))})
		s.LineTemp = thermal.Celsius(rapid.Float64Range(0, 20).Draw(rt, "line"))
		n := rapid.IntRange(2, 300).Draw(rt, "n")
		p, err := r.Profile(s, n)
		if err != nil {
			rt.Fatal(err)
		}
		end, tap := p.Stations[len(p.Stations)-2], p.Stations[len(p.Stations)-1]
		// Before the tap the beer still has what fittings and hardware take.
		if got, want := end.Gauge.Pascals(), float64(p.Pour.Fittings()+p.Pour.Hardware()); math.Abs(got-want) > 1e-6*(1+want) {
			rt.Errorf("before the tap %g Pa, want %g", got, want)
		}
		if math.Abs(float64(end.Position-r.Tubes[0].Length-r.Tubes[1].Length-0.5)) > 1e-9 || tap.Position != end.Position {
			rt.Errorf("ends at %v and %v", end.Position, tap.Position)
		}
		volume := r.DipTube.Volume() + r.Tubes[0].Volume() + r.Tubes[1].Volume()
		if got := p.Residence.Seconds() * float64(p.Pour.Flow); math.Abs(got/float64(volume)-1) > 1e-6 {
			rt.Errorf("residence times flow is %g, volume %g", got, float64(volume))
		}
		for i, x := range p.Stations {
			if m := x.Gauge.Pascals() - x.Equilibrium.Pascals(); math.Abs(m-float64(x.Margin)) > 1e-6 {
				rt.Errorf("station %d: margin %v", i, x.Margin)
			}
			if i > 0 && x.Position < p.Stations[i-1].Position {
				rt.Errorf("station %d goes back", i)
			}
		}
		// Warmer lines are exposed more, colder ones less.
		warmer := s
		warmer.LineTemp = s.LineTemp.Add(2)
		if q, err := r.Profile(warmer, n); err != nil || q.Exposure < p.Exposure {
			rt.Errorf("2 K warmer: exposure %g, was %g, %v", q.Exposure, p.Exposure, err)
		}
		b := p.Band()
		if !(b.Low < float64(p.Excess) && float64(p.Excess) < b.High) {
			rt.Errorf("excess %v outside %+v", p.Excess, b)
		}
		value := map[string]float64{}
		for _, step := range p.Steps() {
			value[step.Symbol] = step.Value
		}
		if redo := (value["E"] - value["E_b"]) / value["t"]; math.Abs(redo-value["Δ"]) > 1e-3*math.Abs(redo)+1 {
			rt.Errorf("excess redone %g, is %g", redo, value["Δ"])
		}
	})
}

func TestExposureDoesNotHangOnStations(t *testing.T) {
	r, s := balanced(t)
	s.LineTemp = thermal.Celsius(9)
	coarse, fine := must(r.Profile(s, 20))(t), must(r.Profile(s, 2000))(t)
	checktest.Near(t, "exposure of 20 stations", coarse.Exposure, fine.Exposure, 0.002*fine.Exposure)
	// A line 6 K too warm lets gas out even while it flows.
	if !fine.GasComesOut {
		t.Errorf("line at 9 °C: excess %v of %v", fine.Excess, fine.Threshold)
	}
	// At rest with the pressure all the way the exposure has a closed form: the
	// pressure falls evenly, so it is half the friction times the time.
	b, cold := balanced(t)
	p := must(b.Profile(cold, 50))(t)
	checktest.Near(t, "exposure of an even fall", p.Balanced, float64(p.Pour.Tubes()[0].Loss)/2*p.Residence.Seconds(), 1e-6*p.Balanced)
}

func TestProfileInAir(t *testing.T) {
	r, s := balanced(t)
	s.Around = thermal.Shade(thermal.Celsius(30))
	p := must(r.Profile(s, 50))(t)
	// A flowing line warms by far less than a kelvin: thermal gives the same.
	line := s.line(r.Tubes[0], r.Beer)
	want := must(line.Carry(r.Temp, thermal.Flow(p.Pour.Flow)))(t)
	checktest.Near(t, "outlet, °C", p.Outlet.Celsius(), want.Temperature.Celsius(), 1e-9)
	if p.GasComesOut {
		t.Errorf("a flowing line in the shade lets gas out: %v", p.Excess)
	}
	// A tube shorter than thermal's models counts as no warmer.
	r.Tubes = append(r.Tubes, Tube{Bore: 3 * Inch / 16, Length: 0.05})
	must(r.Profile(s, 50))(t)
}

func TestProfileThroughChiller(t *testing.T) {
	r := warmRun()
	s := warmServing()
	s.Gauge = psi(30)
	p := must(r.Profile(s, 100))(t)
	w := must(r.Warm(s))(t)
	checktest.Near(t, "outlet", p.Outlet.Celsius(), w.Outlet.Celsius(), 1e-6)
	checktest.Near(t, "flow", float64(p.Pour.Flow), float64(w.Pour.Flow), 1e-15)
}

func TestProfileErrors(t *testing.T) {
	r, good := balanced(t)
	for _, c := range []struct {
		name string
		edit func(*Serving)
	}{
		{"gauge pressure", func(s *Serving) { s.Gauge = carbonation.Gauge{} }},
		{"content", func(s *Serving) { s.Content = carbonation.Content{} }},
		{"content", func(s *Serving) { s.Content = carbonation.Volumes(7) }},
		{"air pressure", func(s *Serving) { s.Air = carbonation.PaA(1e3) }},
		{"crevice radius", func(s *Serving) { s.Crevice = 0 }},
	} {
		s := good
		c.edit(&s)
		p, err := r.Profile(s, 10)
		wantRange(t, c.name, err, c.name)
		if !math.IsNaN(p.Exposure) || p.Outlet.IsValid() {
			t.Errorf("%s: result beside an error: %+v", c.name, p)
		}
		_, err = r.Stand(s)
		wantRange(t, c.name, err, c.name)
	}
	_, err := r.Profile(good, 1)
	wantRange(t, "stations", err, "number of stations")
	s := good
	s.LineTemp = thermal.Celsius(60)
	if _, err = r.Profile(s, 10); err == nil {
		t.Error("line at 60 °C accepted")
	}
	s = good
	s.Around = thermal.Shade(thermal.Celsius(90))
	_, err = r.Profile(s, 10)
	wantRange(t, "air", err, "air temperature")
	_, err = r.Stand(s)
	wantRange(t, "air", err, "air temperature")
	r.Rise = 20
	if _, err = r.Profile(good, 10); !errors.Is(err, ErrNoSolution) {
		t.Errorf("rise: %v", err)
	}
	if _, err = r.Stand(good); !errors.Is(err, ErrNoSolution) {
		t.Errorf("rise: %v", err)
	}
	bath := good
	bath.Chiller = thermal.DefaultCoil().Packed()
	bath.Chiller.Film = 0
	coil, _ := balanced(t)
	coil.Tubes = append([]Tube{{Bore: 5e-3, Length: 3, Coil: 0.2}}, coil.Tubes...)
	_, err = coil.Stand(bath)
	wantRange(t, "bath", err, "film coefficient")
	_, err = coil.Profile(bath, 10)
	wantRange(t, "bath", err, "film coefficient")
	r.Temp = thermal.Temperature{}
	_, err = r.Stand(good)
	wantRange(t, "temperature", err, "temperature")
}

func TestStandingLine(t *testing.T) {
	r, s := balanced(t)
	s.Around = thermal.Shade(thermal.Celsius(30))
	bare := must(r.Stand(s))(t)
	// At the breakout the gas presses with the line's pressure and 2γ/r.
	eq := must(carbonation.PressureFor(s.Content, bare.Breakout, r.Beer))(t)
	checktest.Near(t, "p_eq at breakout", eq.Pascals(), s.Gauge.Absolute(s.Air).Pascals()+2*0.045/5e-6, 1)
	// Thresholds of 1 to 3 psi are crevices of 13 to 4.4 µm.
	checktest.Near(t, "threshold of 13 µm, psi", 2*surfaceTension/13e-6/float64(carbonation.PSI), 1, 0.05)
	// The time is thermal's: after it the line is at the breakout.
	line := s.line(r.Tubes[0], r.Beer)
	at := must(line.Stand(r.Temp, bare.Limit))(t)
	checktest.Near(t, "line at the limit, °C", at.Temperature.Celsius(), bare.Breakout.Celsius(), 1e-2)
	checktest.Near(t, "hold-up", float64(bare.HoldUp), float64(r.Tubes[0].Volume()), 1e-15)

	foam := s
	foam.Insulation = Inch / 2
	insulated := must(r.Stand(foam))(t)
	sunny := s
	sunny.Around.Sun = 800
	sun := must(r.Stand(sunny))(t)
	if !(sun.Limit < bare.Limit && bare.Limit < insulated.Limit) || bare.Never || sun.Never || insulated.Never {
		t.Errorf("sun %v, bare %v, insulated %v", sun.Limit, bare.Limit, insulated.Limit)
	}
	// A smaller crevice needs a warmer line, a rise a colder one.
	fine := s
	fine.Crevice /= 2
	up := r
	up.Rise = 1.5
	if a, b := must(r.Stand(fine))(t), must(up.Stand(s))(t); a.Breakout.Sub(bare.Breakout) <= 0 || b.Breakout.Sub(bare.Breakout) >= 0 {
		t.Errorf("fine %v, up %v, bare %v", a.Breakout, b.Breakout, bare.Breakout)
	}
	if b := bare.Band(); !(b.Low < bare.Breakout.Celsius() && bare.Breakout.Celsius() < b.High) {
		t.Errorf("%v outside %+v", bare.Breakout, b)
	}
	if len(bare.Steps()) == 0 {
		t.Error("no steps")
	}
}

func TestStandingEnds(t *testing.T) {
	r, s := balanced(t)
	// A line cooler than its breakout for ever.
	s.Around = thermal.Shade(thermal.Celsius(4))
	if st := must(r.Stand(s))(t); !st.Never {
		t.Errorf("air at 4 °C: %+v", st)
	}
	// A line that is too warm from the start.
	s.LineTemp, s.Around.Air = thermal.Celsius(15), thermal.Celsius(30)
	if st := must(r.Stand(s))(t); st.Never || st.Limit != 0 {
		t.Errorf("line at 15 °C: %+v", st)
	}
	// The same without air to warm it.
	s.Around = thermal.Surroundings{}
	if st := must(r.Stand(s))(t); st.Never || st.Limit != 0 {
		t.Errorf("line at 15 °C, no air: %+v", st)
	}
	// Flat beer never breaks out, wild beer always does.
	s.LineTemp = thermal.Temperature{}
	s.Around = thermal.Shade(thermal.Celsius(30))
	s.Content = carbonation.Volumes(0.5)
	if st := must(r.Stand(s))(t); !st.Never || math.Abs(st.Breakout.Celsius()-limitSoluble().Max) > 1e-9 {
		t.Errorf("flat beer: %+v", st)
	}
	s.Content = carbonation.Volumes(5)
	if st := must(r.Stand(s))(t); st.Never || st.Limit != 0 || math.Abs(st.Breakout.Celsius()-limitSoluble().Min) > 1e-9 {
		t.Errorf("wild beer: %+v", st)
	}
	// A coil in its bath stays cold.
	w := warmServing()
	w.Gauge = psi(30)
	run := warmRun()
	run.Temp = thermal.Celsius(2)
	all := must(run.Stand(w))(t)
	// The line behind it starts as cold as the flow left it.
	chilled := must(run.Warm(w))(t).Coil
	line := w.line(run.Tubes[1], run.Beer)
	at := must(line.Stand(chilled, all.Limit))(t)
	checktest.Near(t, "line behind the coil at the limit, °C", at.Temperature.Celsius(), all.Breakout.Celsius(), 1e-2)
	run.Tubes = run.Tubes[:1]
	if st := must(run.Stand(w))(t); !st.Never || all.HoldUp <= st.HoldUp {
		t.Errorf("coil alone: %+v", st)
	}
}

func BenchmarkProfile200(b *testing.B) {
	r, s := threeTubes(), DefaultServing(psi(14), carbonation.Volumes(2.57))
	s.Around = thermal.Shade(thermal.Celsius(31))
	b.ReportAllocs()
	for b.Loop() {
		_, _ = r.Profile(s, 200)
	}
}

func BenchmarkStand(b *testing.B) {
	r, s := threeTubes(), DefaultServing(psi(14), carbonation.Volumes(2.57))
	s.Around = thermal.Shade(thermal.Celsius(31))
	for b.Loop() {
		_, _ = r.Stand(s)
	}
}

func TestProfileAllocatesItsStationsOnly(t *testing.T) {
	r, s := threeTubes(), DefaultServing(psi(14), carbonation.Volumes(2.57))
	s.Around = thermal.Shade(thermal.Celsius(31))
	if n := testing.AllocsPerRun(20, func() { _, _ = r.Profile(s, 200) }); n > 1 {
		t.Errorf("allocates %g times", n)
	}
}
