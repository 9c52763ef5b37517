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
		{Name: "length", Kind: quantity.Length, Help: "tube in the bath, such as 50ft or 15m", Limit: "thermal: tube length"},
		{Name: "bore", Kind: quantity.Length, Default: "4.93mm", Help: "inside diameter of the tube", Limit: "thermal: bore"},
		{Name: "wall", Kind: quantity.Length, Default: "0.71mm", Help: "thickness of the tube, stainless steel", Limit: "thermal: tube wall"},
		{Name: "winding", Kind: quantity.Length, Default: "20cm", Help: "diameter of the winding, tube centre to tube centre"},
		{Name: "inlet", Kind: quantity.Temperature, Help: "beer that enters", Limit: "thermal: beer temperature"},
		{Name: "bath", Kind: quantity.Text, Choices: []string{"still", "packed", "pumped"}, Help: "ice water left alone, packed with ice or stirred by hand, or pumped"},
		{Name: "bath-temp", Kind: quantity.Temperature, Help: "water beside the coil, measured, such as 33F; that assumed with --bath if not given", Limit: "thermal: bath temperature"},
		{Name: "flow", Kind: quantity.Flow, Default: "2oz/s", Help: "while the tap is open", Limit: "thermal: flow"},
		{Name: "target", Kind: quantity.Temperature, Default: "41F", Help: "as warm as beer may leave, for the largest steady flow"},
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "16oz", Help: "beer in a glass"},
		{Name: "every", Kind: quantity.Time, Default: "2min", Help: "from the start of one glass to the next", Limit: "thermal: time from glass to glass"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
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
	out.Set("outlet_c", r.Outlet.Celsius())
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
	coilRemarks(in, out, c, r)
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
	out.Set("first_glass_c", s.First.Celsius())
	out.Set("tenth_glass_c", s.Last.Celsius())
	out.Set("recovery_s", s.Recovery.Seconds())
	out.Set("ice_kg_per_l", float64(s.IcePerLitre))
	out.Set("ice_kg_per_h", float64(s.IcePerHour))
	out.Working(s.Steps)
	glasses := calc.Table{Key: "glasses", Columns: []string{"number", "glass_c"}, Curve: true}
	for n := range p.Number {
		glasses.Rows = append(glasses.Rows, []any{float64(n + 1), s.Glass(n + 1).Celsius()})
	}
	out.Table(glasses)
}

func setCoil(out *calc.Result, c thermal.Coil, r thermal.CoilChill) {
	out.Set("steady_ice_kg_per_h", float64(r.IcePerHour))
	out.Set("holdup_l", float64(r.HoldUp/volume.Litre))
	out.Set("bath_c", c.Bath.Celsius())
	out.SetText("regime", r.Regime())
	out.Set("reynolds", r.Reynolds)
	out.Set("critical_reynolds", r.CriticalReynolds)
	out.Set("ua_w_per_k", float64(r.UA))
	out.Set("ntu", r.NTU)
	out.Set("effectiveness", r.Effectiveness)
	out.Set("freezes_c", c.Beer.FreezingPoint().Celsius())
}

// setLargestFlow sets the largest flow that meets the target, or says why
// there is none.
func setLargestFlow(in *calc.Values, out *calc.Result, c thermal.Coil) error {
	l, err := c.LargestFlow(in.Temperature("inlet"), in.Temperature("target"))
	switch {
	case err == nil:
		out.Set("max_flow_l_per_min", l.Flow.LitresPerMinute())
		out.Band("max_flow_l_per_min", l.Band)
	case !errors.Is(err, thermal.ErrNoSolution):
		return err
	case in.Temperature("target").Sub(c.Bath) <= 0:
		out.Note("The bath at {bath_c} cannot bring beer to {target_c} at any flow: pack it with ice or pump it.")
	case in.Temperature("inlet").Sub(in.Temperature("target")) <= 0:
		out.Note("Beer that enters at {inlet_c} meets {target_c} at any flow.")
	default:
		out.Note("No largest flow was found for {target_c}: the coil meets it at any flow that a tap gives.")
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
		if s, err := b.coil.Serve(in.Temperature("inlet"), p); err == nil {
			t.Rows = append(t.Rows, []any{b.name, b.coil.Bath.Celsius(), s.Sustained.Celsius(), s.First.Celsius(), s.Last.Celsius()})
		}
	}
	out.Table(t)
	out.Note("The bath was not given: the answer is for ice water left alone. Packing ice tight around the coil, or stirring, is worth more than a longer coil.")
}

// coilRemarks says what the answer rests on and what to mind.
func coilRemarks(in *calc.Values, out *calc.Result, c thermal.Coil, r thermal.CoilChill) {
	if !in.Given("bath-temp") {
		out.Note("The water beside the coil is assumed to be at {bath_c}: hold a thermometer there and give it as --bath-temp.")
	}
	if c.Bath.Sub(in.Temperature("inlet")) > 0 {
		out.Note("The bath is warmer than the beer and warms it.")
	}
	out.Note("Common practice, no source: {15.24 m} of coil for glasses now and then, {36.6 m} for a queue. The model agrees for a packed bath.")
	out.Note("Ice is counted for the beer alone; what the box itself melts comes on top, see thermal icebath.")
	if r.Blocks {
		out.Caution("The bath at {bath_c} is colder than this beer's freezing point of {freezes_c}. Beer that stands in the coil freezes in a minute or" +
			" two and blocks it: use less salt, and never force a blocked coil with more pressure.")
	}
	if !r.Blocks && r.FreezeMargin < 2*thermal.KelvinStep/5 {
		out.Caution("The bath at {bath_c} is hardly warmer than this beer's freezing point, {freezes_c} give or take {0.4 k}: standing beer may freeze in the coil.")
	}
	if in.Text("bath") == "pumped" {
		out.Caution("A pump in ice water: low voltage or a ground-fault breaker, plugs dry and off the ground, as the local code asks.")
	}
}
