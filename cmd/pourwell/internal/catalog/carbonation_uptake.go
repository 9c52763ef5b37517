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
		{Name: "temp", Kind: quantity.Temperature, Help: "beer temperature", Limit: "carbonation.Equilibrium.Temperature"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure of pure CO2 on the keg", Limit: "carbonation.Draught.SolveContent.g"},
		{Name: "depth", Kind: quantity.Length, Help: "depth of the beer in the keg", Limit: "carbonation.Equilibrium.After.depth"},
		{Name: "from", Kind: quantity.Content, Default: "0vol", Help: "CO2 of the beer at the start", Limit: "carbonation.Equilibrium.After.from"},
		{Name: "for", Kind: quantity.Time, Help: "time on gas", Limit: "carbonation.Equilibrium.After.elapsed"},
		{Name: "reach", Kind: quantity.Share, Help: "share of the way to the end; 90% unless --for is given", Limit: "carbonation.Equilibrium.Reach.share"},
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
	out.Put("time_s", u.Time)
	out.Put("co2_volumes", u.Content)
	out.Put("way_share", u.Way)
	out.Put("end_volumes", e.Content)
	out.Working(u.Steps)
	out.Remark(u.Notes())
	out.Remark(u.Cautions())
	return nil
}
