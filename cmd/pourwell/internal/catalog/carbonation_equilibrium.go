package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var equilibrium = calc.Calculation{
	Package: "carbonation",
	Name:    "equilibrium",
	Summary: "CO2 content, gauge pressure or temperature at balance: give two, the third follows",
	Detail: "A keg at rest settles at this balance, in about a week; an afternoon is too short for the content" +
		" to follow the regulator.",
	Examples: []string{
		"carbonation equilibrium --temp 38F --gauge 12psi",
		"carbonation equilibrium --temp 4C --co2 5g/L --elevation 600m",
	},
	Inputs: []calc.Input{
		{Name: "temp", Kind: quantity.Temperature, Help: "beer temperature", Limit: "carbonation.Draught.SolveGauge.t"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure of the regulator", Limit: "carbonation.Draught.SolveContent.g"},
		{Name: "co2", Kind: quantity.Content, Help: "dissolved CO2", Limit: "carbonation.Draught.SolveGauge.c"},
		{Name: "co2-share", Kind: quantity.Share, Default: "100%", Help: "share of CO2 in the gas, the rest nitrogen", Limit: "carbonation.Draught.CO2Share"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "co2_volumes", Label: "CO2 content"},
		{Key: "co2_g_per_l", Label: "CO2 content by mass"},
		{Key: "gauge_kpa", Label: "gauge pressure"},
		{Key: "absolute_kpa", Label: "absolute pressure"},
		{Key: "temperature_c", Label: "temperature"},
		{Key: "co2_partial_kpa", Label: "CO2 pressure, absolute"},
		{Key: "n2_mg_per_l", Label: "nitrogen in the end"},
	},
	Run: runEquilibrium,
}

func runEquilibrium(in *calc.Values, out *calc.Result) error {
	if err := in.Exactly(2, "temp", "gauge", "co2"); err != nil {
		return err
	}
	d, err := in.Draught()
	if err != nil {
		return err
	}
	d.CO2Share = in.Number("co2-share")
	var e carbonation.Equilibrium
	switch {
	case !in.Given("co2"):
		e, err = d.SolveContent(in.Temperature("temp"), in.Gauge("gauge"))
		out.Answer = "At {temperature_c} under {gauge_kpa} the beer holds {co2_volumes} of CO2."
		out.Band("co2_volumes", e.Band)
	case !in.Given("gauge"):
		e, err = d.SolveGauge(in.Temperature("temp"), in.Content("co2"))
		out.Answer = "Set {gauge_kpa} to hold {co2_volumes} of CO2 at {temperature_c}."
		out.Band("gauge_kpa", e.Band)
	default:
		e, err = d.SolveTemperature(in.Gauge("gauge"), in.Content("co2"))
		out.Answer = "Keep the beer at {temperature_c} to hold {co2_volumes} of CO2 under {gauge_kpa}."
		out.Band("temperature_c", e.Band)
	}
	if err != nil {
		return err
	}
	out.Put("co2_volumes", e.Content)
	out.Put("co2_g_per_l", e.Content)
	out.Put("gauge_kpa", e.Gauge)
	out.Put("absolute_kpa", e.Absolute)
	out.Put("temperature_c", e.Temperature)
	out.Put("co2_partial_kpa", e.Partial)
	if e.CO2Share < 1 {
		out.Set("n2_mg_per_l", e.Nitrogen)
	}
	out.Working(e.Steps)
	out.Remark(e.Notes())
	out.Remark(e.Cautions())
	return nil
}
