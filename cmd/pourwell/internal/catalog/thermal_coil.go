package catalog

import (
	"errors"
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

var coil = calc.Calculation{
	Package: "thermal",
	Name:    "coil",
	Summary: "a coil in ice water: how cold it pours, without a rest and glass by glass",
	Detail: "The coil's content is a cold reserve, so spaced glasses come colder than a queue: both are given." +
		" Without --bath the answer is for a still bath, and all three baths are listed.",
	Examples: []string{
		"thermal coil --length 50ft --inlet 68F --bath packed --flow 2oz/s",
		"thermal coil --length 20m --bore 6.5mm --inlet 22C --flow 3L/min --target 5C --glass 0.4L --every 45s",
	},
	Inputs: []calc.Input{
		{Name: "length", Kind: quantity.Length, Help: "tube in the bath, such as 50ft or 15m", Limit: "thermal.Coil.Length"},
		{Name: "bore", Kind: quantity.Length, Default: "4.93mm", Help: "inside diameter of the tube", Limit: "thermal.Coil.Bore"},
		{Name: "wall", Kind: quantity.Length, Default: "0.71mm", Help: "thickness of the tube, stainless steel", Limit: "thermal.Coil.Wall"},
		{Name: "winding", Kind: quantity.Length, Default: "20cm", Help: "diameter of the winding, tube centre to tube centre", Limit: "thermal.Coil.Winding"},
		{Name: "inlet", Kind: quantity.Temperature, Help: "beer as it enters", Limit: "thermal.Coil.Chill.inlet"},
		{Name: "bath", Kind: quantity.Text, Choices: []string{"still", "packed", "pumped"}, Help: "ice water left alone, packed with ice or stirred by hand, or pumped"},
		{Name: "bath-temp", Kind: quantity.Temperature, Help: "water beside the coil, measured, such as 33F; that assumed with --bath if not given", Limit: "thermal.Coil.Bath"},
		{Name: "flow", Kind: quantity.Flow, Default: "2oz/s", Help: "while the tap is open", Limit: "thermal.Pours.Flow"},
		{Name: "target", Kind: quantity.Temperature, Default: "41F", Help: "as warm as beer may leave, for the largest steady flow", Limit: "thermal.Coil.LargestFlow.target"},
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "16oz", Help: "beer in a glass", Limit: "thermal.Pours.Glass"},
		{Name: "every", Kind: quantity.Time, Default: "2min", Help: "from the start of one glass to the next", Limit: "thermal.Pours.Every"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	NoAir:  true,
	Results: []calc.Key{
		{Key: "outlet_c", Label: "without a rest"},
		{Key: "first_glass_c", Label: "first glass"},
		{Key: "tenth_glass_c", Label: "tenth glass in a row"},
		{Key: "recovery_s", Label: "recovers in"},
		{Key: "max_flow_l_per_min", Label: "largest flow for the target"},
		{Key: "ice_kg_per_l", Label: "ice for the beer"},
		{Key: "ice_kg_per_h", Label: "ice at this pace"},
		{Key: "steady_ice_kg_per_h", Label: "ice without a rest"},
		{Key: "holdup_l", Label: "beer in the coil"},
		{Key: "bath_c", Label: "bath beside the coil"},
		{Key: "regime", Label: "flow in the coil"},
		{Key: "reynolds", Label: "Reynolds number"},
		{Key: "critical_reynolds", Label: "  critical"},
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA)"},
		{Key: "ntu", Label: "transfer units (NTU)"},
		{Key: "effectiveness", Label: "effectiveness"},
		{Key: "freezes_c", Label: "beer freezes at"},
	},
	Run: runCoil,
}

func runCoil(in *calc.Values, out *calc.Result) error {
	if err := in.Require("length", "inlet"); err != nil {
		return err
	}
	c, err := readCoil(in)
	if err != nil {
		return err
	}
	pours := readPours(in)
	r, err := c.Chill(in.Temperature("inlet"), pours.Flow)
	if err != nil {
		return err
	}
	out.Answer = "While it runs the beer leaves at {outlet_c}, but beer that stands in this bath freezes and blocks the coil."
	out.Band("outlet_c", r.Band)
	out.Put("outlet_c", r.Outlet)
	out.Working(r.Steps)
	if !r.Blocks {
		s, err := c.Serve(in.Temperature("inlet"), pours)
		if err != nil {
			return nameEvery(err)
		}
		setService(out, s, pours)
	}
	if err := setLargestFlow(in, out, c); err != nil {
		return err
	}
	setCoil(out, c, r)
	if !in.Given("bath") {
		setBaths(in, out, c, pours)
	}
	if !in.Given("bath-temp") {
		out.Note("The water beside the coil is assumed to be at {bath_c}: hold a thermometer there and give it as --bath-temp.")
	}
	out.Remark(r.Notes())
	out.Remark(r.Cautions())
	return nil
}

func readCoil(in *calc.Values) (thermal.Coil, error) {
	c := thermal.DefaultCoil().Still()
	switch in.Text("bath") {
	case "packed":
		c = c.Packed()
	case "pumped":
		c = c.Pumped()
	}
	if in.Given("bath-temp") {
		c.Bath = in.Temperature("bath-temp")
	}
	c.Length, c.Bore, c.Wall, c.Winding = in.Length("length"), in.Length("bore"), in.Length("wall"), in.Length("winding")
	beer, err := in.Beer()
	c.Beer = beer
	return c, err
}

// readPours reads the glasses that are drawn through a coil or a plate.
func readPours(in *calc.Values) thermal.Pours {
	return thermal.Pours{
		Glass: in.Glass("glass").Volume, Flow: thermal.Flow(in.Number("flow")), Every: in.Duration("every"), Number: 10,
	}
}

// nameEvery puts the flag before an error about the pace of the glasses.
func nameEvery(err error) error {
	var wrong *volume.RangeError
	if errors.As(err, &wrong) && wrong.Name == "time from glass to glass" {
		return fmt.Errorf("--every: %w", err)
	}
	return err
}

// setService sets the glasses of a coil or a plate, and the answer.
func setService(out *calc.Result, s thermal.Service, p thermal.Pours) {
	out.Answer = "The first glass comes at {first_glass_c}, the tenth, one every {every_s}, at {tenth_glass_c}. Without a rest the beer leaves at {outlet_c}."
	if s.Last.Sub(s.First) < thermal.KelvinStep/20 {
		out.Answer = "With one every {every_s} each glass comes at {first_glass_c}. Without a rest the beer leaves at {outlet_c}."
	}
	out.Put("first_glass_c", s.First)
	out.Put("tenth_glass_c", s.Last)
	out.Put("recovery_s", s.Recovery)
	out.Put("ice_kg_per_l", calc.PerLitre(s.IcePerLitre))
	out.Put("ice_kg_per_h", calc.PerHour(s.IcePerHour))
	out.Working(s.Steps)
	glasses := calc.Table{Key: "glasses", Columns: []string{"number", "glass_c"}, Curve: true}
	for n := range p.Number {
		glasses.Add(n+1, s.Glass(n+1))
	}
	out.Table(glasses)
}

func setCoil(out *calc.Result, c thermal.Coil, r thermal.CoilChill) {
	out.Put("steady_ice_kg_per_h", calc.PerHour(r.IcePerHour))
	out.Put("holdup_l", r.HoldUp)
	out.Put("bath_c", c.Bath)
	out.SetText("regime", r.Regime())
	out.Put("reynolds", r.Reynolds)
	out.Put("critical_reynolds", r.CriticalReynolds)
	out.Put("ua_w_per_k", r.UA)
	out.Put("ntu", r.NTU)
	out.Put("effectiveness", r.Effectiveness)
	out.Put("freezes_c", c.Beer.FreezingPoint())
}

// setLargestFlow sets the largest flow that meets the target, or says why
// there is none.
func setLargestFlow(in *calc.Values, out *calc.Result, c thermal.Coil) error {
	l, err := c.LargestFlow(in.Temperature("inlet"), in.Temperature("target"))
	switch {
	case err == nil:
		out.Put("max_flow_l_per_min", l.Flow)
		out.Band("max_flow_l_per_min", l.Band)
	case errors.Is(err, thermal.ErrNoSolution):
		out.Note("There is no largest flow for {target_c}: " + whyNot(err) + ".")
	default:
		return err
	}
	return nil
}

// setBaths lists the coil in each of the three baths.
func setBaths(in *calc.Values, out *calc.Result, c thermal.Coil, p thermal.Pours) {
	t := calc.Table{Key: "baths", Columns: []string{"bath", "bath_c", "outlet_c", "first_glass_c", "tenth_glass_c"}}
	for _, b := range []struct {
		name string
		coil thermal.Coil
	}{{"still", c.Still()}, {"packed", c.Packed()}, {"pumped", c.Pumped()}} {
		if in.Given("bath-temp") {
			b.coil.Bath = c.Bath
		}
		s, err := b.coil.Serve(in.Temperature("inlet"), p)
		if err != nil {
			out.Note(fmt.Sprintf("The %s bath is not listed: %s.", b.name, whyNot(err)))
			continue
		}
		t.Add(b.name, b.coil.Bath, s.Sustained, s.First, s.Last)
	}
	out.Table(t)
	out.Note("The bath was not given: the answer is for ice water left alone. Packing ice tight around the coil, or stirring, is worth more than a longer coil.")
}
