package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var blend = calc.Calculation{
	Package: "carbonation",
	Name:    "blend",
	Summary: "share of CO2 in a nitrogen blend, or the pressure for a bottled blend, to hold a content",
	Detail: "Beer feels the CO2 of a blend alone, on absolute pressure: that is what lets a long line be pushed hard" +
		" without carbonating the beer further.",
	Examples: []string{
		"carbonation blend --temp 38F --co2 2.57vol --co2-share 70%",
		"carbonation blend --temp 38F --co2 1.2vol --gauge 35psi",
	},
	Inputs: []calc.Input{
		{Name: "temp", Kind: quantity.Temperature, Help: "beer temperature", Limit: "carbonation.Draught.SolveGauge.t"},
		{Name: "co2", Kind: quantity.Content, Help: "CO2 to hold", Limit: "carbonation.Draught.SolveGauge.c"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure of the regulator", Limit: "carbonation.Draught.SolveShare.g"},
		{Name: "co2-share", Kind: quantity.Share, Help: "share of CO2 in a bottled blend", Limit: "carbonation.Draught.CO2Share"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "co2_share", Label: "share of CO2"},
		{Key: "gauge_kpa", Label: "gauge pressure"},
		{Key: "straight_kpa", Label: "on pure CO2 it would be"},
		{Key: "co2_partial_kpa", Label: "CO2 pressure, absolute"},
		{Key: "n2_mg_per_l", Label: "nitrogen in the end"},
	},
	Run: runBlend,
}

func runBlend(in *calc.Values, out *calc.Result) error {
	if err := in.Require("temp", "co2"); err != nil {
		return err
	}
	if err := in.Exactly(1, "gauge", "co2-share"); err != nil {
		return err
	}
	d, err := in.Draught()
	if err != nil {
		return err
	}
	straight, err := d.SolveGauge(in.Temperature("temp"), in.Content("co2"))
	if err != nil {
		return err
	}
	var e carbonation.Equilibrium
	if in.Given("gauge") {
		e, err = d.SolveShare(in.Temperature("temp"), in.Content("co2"), in.Gauge("gauge"))
		out.Answer = "Blend {co2_share} of CO2 with nitrogen to hold {co2_volumes} at {temp_c} under {gauge_kpa}."
		out.Band("co2_share", e.Band)
	} else {
		d.CO2Share = in.Number("co2-share")
		e, err = d.SolveGauge(in.Temperature("temp"), in.Content("co2"))
		out.Answer = "Set {gauge_kpa} with {co2_share} of CO2 to hold {co2_volumes} at {temp_c}."
		out.Band("gauge_kpa", e.Band)
	}
	if err != nil {
		return err
	}
	out.Put("co2_share", e.CO2Share)
	out.Put("gauge_kpa", e.Gauge)
	if straight.Gauge.KPa() > 0 {
		out.Put("straight_kpa", straight.Gauge)
	}
	out.Put("co2_partial_kpa", e.Partial)
	out.Set("n2_mg_per_l", e.Nitrogen)
	out.Working(e.Steps)
	out.Remark(e.Notes())
	out.Remark(e.Cautions())
	return nil
}
