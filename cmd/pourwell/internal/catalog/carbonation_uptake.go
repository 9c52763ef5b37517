package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var uptake = calc.Calculation{
	Package: "carbonation",
	Name:    "uptake",
	Summary: "how long a still keg takes to carbonate, and how slowly it loses CO2",
	Detail: "An estimate with a wide band. CO2-rich beer sinks and carries the gas down, so that uptake takes a week or two;" +
		" beer that loses CO2 stays on top, so that loss takes months. Shaking or a stone makes it minutes.",
	Examples: []string{
		"carbonation uptake --temp 38F --gauge 12psi --depth 20in",
		"carbonation uptake --temp 4C --gauge 0.8bar --depth 50cm --from 3vol --for 5h",
	},
	Inputs: []calc.Input{
		{Name: "temp", Kind: quantity.Temperature, Help: "beer temperature", Limit: "carbonation: temperature"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "pressure of pure CO2 on the keg"},
		{Name: "depth", Kind: quantity.Length, Help: "depth of the beer in the keg", Limit: "carbonation: depth"},
		{Name: "from", Kind: quantity.Content, Default: "0vol", Help: "CO2 in the beer at first", Limit: "carbonation: content"},
		{Name: "for", Kind: quantity.Time, Help: "time on gas"},
		{Name: "reach", Kind: quantity.Share, Help: "share of the way to the end; 90% unless --for is given", Limit: "carbonation: reach"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "time_s", Label: "time"},
		{Key: "co2_volumes", Label: "CO2 content then"},
		{Key: "way_share", Label: "share of the way"},
		{Key: "end_volumes", Label: "CO2 content in the end"},
	},
	Run: runUptake,
}

func runUptake(in *calc.Values, out *calc.Result) error {
	if err := in.Require("temp", "gauge", "depth"); err != nil {
		return err
	}
	if in.Given("for") && in.Given("reach") {
		return &calc.UsageError{What: "carbonation uptake needs one of --for and --reach, not both", Hint: "drop --reach or --for"}
	}
	d, err := in.Draught()
	if err != nil {
		return err
	}
	e, err := d.SolveContent(in.Temperature("temp"), in.Gauge("gauge"))
	if err != nil {
		return err
	}
	var u carbonation.Uptake
	if in.Given("for") {
		u, err = e.After(in.Content("from"), in.Length("depth"), in.Duration("for"))
		out.Answer = "After {time_s} at rest the beer holds {co2_volumes}, {way_share} of the way to {end_volumes}."
	} else {
		u, err = e.Reach(in.Content("from"), in.Length("depth"), in.Or("reach", 0.9))
		out.Answer = "At rest the beer is {way_share} of the way to {end_volumes} after {time_s}, and holds {co2_volumes}."
		out.Band("time_s", u.Band)
	}
	if err != nil {
		return err
	}
	out.Set("time_s", u.Time.Seconds())
	out.Set("co2_volumes", u.Content.Volumes())
	out.Set("way_share", u.Way)
	out.Set("end_volumes", e.Content.Volumes())
	out.Working(u.Steps)
	out.Note("The content does not follow the regulator during an afternoon: pressure moves the beer now and carbonates it next week.")
	if u.Losing {
		out.Note("The beer loses CO2 by diffusion alone: what is lost at the top stays at the top. Moving the keg is faster, without limit.")
	} else {
		out.Note("Estimate: free convection, no measurement of a keg found. Common practice, no source: one to two weeks at rest, minutes by shaking or a stone.")
	}
	out.Remark(carbonation.HighPressure(e.Gauge))
	return nil
}
