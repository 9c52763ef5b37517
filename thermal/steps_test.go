package thermal

import (
	"math"
	"testing"
	"time"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
)

// The working of each result holds enough to redo its sum with a pencil.
func TestChillStepsByHand(t *testing.T) {
	flow := Flow(2 * volume.USFluidOunce)
	c := DefaultCoil()
	r, err := c.Chill(Celsius(20), flow)
	if err != nil {
		t.Fatal(err)
	}
	s := symbols(t, r.Steps())
	checktest.Near(t, "R_w", math.Log(s["d_o"]/s["d"])/(2*math.Pi*s["k"]), s["R_w"], 1e-12)
	checktest.Near(t, "R_o", 1/(s["h_o"]*math.Pi*s["d_o"]), s["R_o"], 1e-12)
	checktest.Near(t, "UA", s["L"]/(s["R_i"]+s["R_w"]+s["R_o"]), s["UA"], 1e-9*s["UA"])
	checktest.Near(t, "NTU", s["UA"]/s["ṁc"], s["NTU"], 1e-12)
	checktest.Near(t, "T_out", s["T_bath"]+(s["T_in"]-s["T_bath"])*math.Exp(-s["NTU"]), r.Outlet.Celsius(), 1e-9)
	checktest.Near(t, "q", s["ṁc"]*(s["T_in"]-s["T_out"]), float64(r.Heat), 1e-9*s["q"])
	checktest.Near(t, "Re_c", 2300*(1+8.6*math.Pow(s["d"]/s["D"], 0.45)), r.CriticalReynolds, 1e-9*s["Re_c"])

	limit, err := c.LargestFlow(Celsius(20), Celsius(6))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Near(t, "outlet at the largest flow", symbols(t, limit.Steps())["T_out"], 6, 1e-6)

	pours := DefaultPours()
	pours.Every = 25 * time.Second
	service, err := c.Serve(Celsius(20), pours)
	if err != nil {
		t.Fatal(err)
	}
	s = symbols(t, service.Steps())
	checktest.Near(t, "x", math.Exp(-s["t"]/s["τ"]), s["x"], 1e-12)
	checktest.Near(t, "T_1", s["T_b"]+s["θ"]*(1-s["f"]), service.First.Celsius(), 1e-9)
	checktest.Near(t, "T_n", s["T_b"]+s["θ"]*math.Pow(s["x"], s["k"])*(1-s["f"]+s["f"]*s["x"]), service.Last.Celsius(), 1e-9)

	p := DefaultPlate()
	plate, err := p.Chill(Celsius(12), flow)
	if err != nil {
		t.Fatal(err)
	}
	s = symbols(t, plate.Steps())
	checktest.Near(t, "ε", 1-math.Exp(-s["h"]*math.Pi*s["d"]*s["L"]/s["ṁc"]), s["ε"], 1e-12)
	checktest.Near(t, "G", 1/(1/(s["A"]*(s["φ"]*s["k"]/s["δ"]+(1-s["φ"])*s["h_film"]))+s["R_body"]), s["G"], 1e-9*s["G"])
	checktest.Near(t, "T_b", s["ṁc"]*s["ε"]*s["T_in"]/(s["G"]+s["ṁc"]*s["ε"]), s["T_b"], 1e-9)
	checktest.Near(t, "T_out", s["T_in"]-s["ε"]*(s["T_in"]-s["T_b"]), plate.Outlet.Celsius(), 1e-9)
	if service, err = p.Serve(Celsius(12), pours); err != nil {
		t.Fatal(err)
	}
	row := symbols(t, service.Steps())
	fill := float64(pours.Glass) / float64(pours.Flow)
	checktest.Near(t, "x", math.Exp(-fill*(s["G"]+s["ṁc"]*s["ε"])/s["C"]-row["t"]/row["τ"]), row["x"], 1e-9)
	checktest.Near(t, "T_n", row["T_∞"]-(row["T_∞"]-row["T_1"])*math.Pow(row["x"], 9), service.Last.Celsius(), 1e-9)

	l := DefaultLine(dryShade(25))
	l.Insulation = 0.01
	carried, err := l.Carry(Celsius(3), flow)
	if err != nil {
		t.Fatal(err)
	}
	s = symbols(t, carried.Steps())
	checktest.Near(t, "UA", s["L"]/(s["R_i"]+s["R_o"]), float64(carried.UA), 1e-9)
	// The working has UA at the inlet; over 0.1 K it does not change.
	checktest.Near(t, "T", s["T_s"]+(s["T_in"]-s["T_s"])*math.Exp(-s["UA"]/s["ṁc"]), carried.Temperature.Celsius(), 1e-3)
	stood, err := l.Stand(Celsius(3), time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	s = symbols(t, stood.Steps())
	checktest.Near(t, "τ at the inlet", (s["R_i"]+s["R_o"])*s["C′"], s["τ"], 0.05*s["τ"])
	if b := carried.Band(); !(b.Low < carried.Temperature.Celsius() && carried.Temperature.Celsius() < b.High) {
		t.Errorf("flowing beer at %v, outside %v", carried.Temperature, b)
	}

	g, err := meadowGlass(t, dryShade(25)).Pour(Celsius(3), time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	s = symbols(t, g.Steps())
	checktest.Near(t, "T", (s["C_b"]*s["T_b"]+s["C_g"]*s["T_g"])/(s["C_b"]+s["C_g"]), g.Temperature.Celsius(), 1e-9)
	checktest.Near(t, "τ", (s["C_b"]+s["C_g"])/s["UA"], s["τ"], 1e-9*s["τ"])
	checktest.Near(t, "T_w", s["T_s"]-(s["T_s"]-s["T"])*math.Exp(-s["t"]/s["τ"]), g.After.Celsius(), 0.01)

	k, err := DefaultCalibration(volume.Vessel{Capacity: 0.019, Tare: 4}, Celsius(30),
		Reading{0, Celsius(3)}, Reading{2 * time.Hour, Celsius(8)}).Solve()
	if err != nil {
		t.Fatal(err)
	}
	s = symbols(t, k.Steps())
	checktest.Near(t, "k", math.Log((s["T1"]-s["T_air"])/(s["T2"]-s["T_air"]))/(s["t2"]-s["t1"]), s["k"], 1e-12)
	checktest.Near(t, "UA", s["k"]*s["C"], float64(k.UA), 1e-12)
}
