package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var wine = calc.Calculation{
	Package: "carbonation",
	Name:    "wine",
	Summary: "CO2 in wine and cider: content under a pressure, or the pressure for a content",
	Detail: "By the EU's formula for sparkling wine. For the same alcohol and extract it holds a tenth less than the beer charts do," +
		" so wine is a liquid of its own; dry cider lies between.",
	Examples: []string{
		"carbonation wine --abv 12% --sugar 10 --temp 43F --gauge 30psi",
		"carbonation wine --abv 6% --sugar 20 --temp 6C --co2 5g/L",
	},
	Inputs: []calc.Input{
		{Name: "temp", Kind: quantity.Temperature, Help: "temperature of the wine", Limit: "carbonation.Wine.ContentAt.t"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure of the regulator, pure CO2", Limit: "carbonation.Supply.Gauge"},
		{Name: "co2", Kind: quantity.Content, Help: "dissolved CO2", Limit: "carbonation.Wine.PressureFor.c"},
		{Name: "abv", Kind: quantity.Share, Default: "12%", Key: "abv_share", Help: "alcohol by volume", Limit: "carbonation.Wine.ABV"},
		{Name: "sugar", Kind: quantity.Number, Default: "0", Key: "sugar_g_per_l", Help: "sugar in g/L", Limit: "carbonation.Wine.Sugar"},
	},
	Results: []calc.Key{
		{Key: "co2_volumes", Label: "CO2 content"},
		{Key: "co2_g_per_l", Label: "CO2 content by mass"},
		{Key: "gauge_kpa", Label: "gauge pressure"},
		{Key: "absolute_kpa", Label: "absolute pressure"},
	},
	Run: runWine,
}

func runWine(in *calc.Values, out *calc.Result) error {
	if err := in.Require("temp"); err != nil {
		return err
	}
	if err := in.Exactly(1, "gauge", "co2"); err != nil {
		return err
	}
	air, err := in.Air()
	if err != nil {
		return err
	}
	w := carbonation.Wine{ABV: in.Number("abv"), Sugar: in.Number("sugar")}
	t, c, p := in.Temperature("temp"), in.Content("co2"), in.Gauge("gauge").Absolute(air)
	if in.Given("co2") {
		p, err = w.PressureFor(c, t)
		out.Answer = "Set {gauge_kpa} to hold {co2_volumes} of CO2 in the wine at {temp_c}."
	} else {
		c, err = w.ContentAt(t, p)
		out.Answer = "At {temp_c} under {gauge_kpa} the wine holds {co2_volumes} of CO2."
	}
	if err != nil {
		return err
	}
	out.Put("co2_volumes", c)
	out.Put("co2_g_per_l", c)
	out.Put("gauge_kpa", p.Gauge(air))
	out.Put("absolute_kpa", p)
	out.Working(func() []volume.Step { return w.Steps(t, p) })
	if !in.Given("co2") {
		out.Band("co2_volumes", func() volume.Band { return w.Band(c) })
	}
	out.Remark(w.Notes(p.Gauge(air)))
	out.Remark(w.Cautions(p.Gauge(air)))
	return nil
}
