package catalog

import (
	"errors"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
)

var flow = calc.Calculation{
	Package: "lines",
	Name:    "flow",
	Summary: "how fast the tap pours at a gauge pressure, and where the pressure goes",
	Detail: "The flow settles where rise, friction, fittings and tap use up the pressure. About 2 oz/s (3.5 L/min)" +
		" fills a glass without foam; one timed glass tells more than any table, see lines calibrate. With --bath and --co2 a warm keg is served through a coil in ice water: flow and" +
		" temperature are solved together, and without --gauge the pressure that holds the gas is applied.",
	Examples: []string{
		"lines flow --tube 3/16in:5ft --rise 2ft --gauge 12psi",
		"lines flow --temp 68F --co2 2.5vol --bath packed --tube 5/16in-od:50ft:wall0.7mm:coil8in:stainless --tube 3/16in:4ft --air 88F",
	},
	Inputs: []calc.Input{gaugeInput, glassInput},
	Shared: []func() []calc.Input{runInputs, calc.BeerInputs, bathInputs},
	Results: []calc.Key{
		{Key: "flow_l_per_min", Label: "flow"},
		{Key: "pour_time_s", Label: "glass full in"},
		{Key: "glass_l", Label: "  a glass of"},
		{Key: "loss_kpa", Label: "losses"},
		{Key: "static_kpa", Label: "taken by the rise"},
		{Key: "fittings_kpa", Label: "  in fittings"},
		{Key: "hardware_kpa", Label: "  in coupler, shank and tap"},
		{Key: "full_flow_l_per_min", Label: "flow, full keg"},
		{Key: "full_pour_time_s", Label: "glass, full keg"},
		{Key: "empty_flow_l_per_min", Label: "flow, empty keg"},
		{Key: "empty_pour_time_s", Label: "glass, empty keg"},
		{Key: "trade_gauge_kpa", Label: "trade's table balances at"},
		{Key: "outlet_c", Label: "beer at the tap"},
		{Key: "needed_gauge_kpa", Label: "pressure that holds the gas"},
		{Key: "choker_m", Label: "choker to add to pour well"},
	},
	Run: runFlow,
}

// gaugeInput is the pressure that is applied to the beer.
var gaugeInput = calc.Input{
	Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure at the regulator", Limit: "lines.Serving.Gauge",
}

func runFlow(in *calc.Values, out *calc.Result) error {
	run, err := readRun(in, out)
	if err != nil {
		return err
	}
	if err = needLengths(in, run); err != nil {
		return err
	}
	if in.Given("bath") {
		return runWarm(in, out, run)
	}
	if err := in.Require("gauge"); err != nil {
		return err
	}
	if in.Given("co2") || in.Given("air") {
		out.Note("The gas in the beer and the air count only with --bath; for gas along the line see lines profile.")
	}
	p, err := run.Flow(in.Gauge("gauge"))
	if err != nil {
		return err
	}
	out.Answer = "The tap pours {flow_l_per_min}: a glass of {glass_l} in {pour_time_s}."
	setPour(in, out, p)
	if err = setFullAndEmpty(out, run, in); err != nil {
		return err
	}
	setTrade(out, run)
	setTubes(in, out, p)
	out.Band("flow_l_per_min", p.Band)
	out.Working(p.Steps)
	out.Remark(p.Notes())
	out.Remark(p.Cautions())
	return nil
}

// setPour sets the flow and where the pressure goes.
func setPour(in *calc.Values, out *calc.Result, p lines.Pour) {
	glass := in.Glass("glass").Volume
	out.Put("flow_l_per_min", p.Flow)
	if p.Flow > 0 { // balance takes a flow of 0 too
		out.Put("pour_time_s", p.TimeFor(glass))
	}
	out.Put("glass_l", glass)
	out.Put("loss_kpa", p.Loss)
	out.Put("fittings_kpa", p.Fittings())
	out.Put("hardware_kpa", p.Hardware())
	out.Put("static_kpa", p.Static)
}

// setFullAndEmpty sets the flow from a full and from an empty keg: the beer's
// surface sinks, so the rise grows.
func setFullAndEmpty(out *calc.Result, run lines.Run, in *calc.Values) error {
	for _, end := range []struct {
		key  string
		full float64
	}{{"full", 1}, {"empty", 0}} {
		run.Full = end.full
		p, err := run.Flow(in.Gauge("gauge"))
		if errors.Is(err, lines.ErrNoSolution) {
			out.Note("From the " + end.key + " keg nothing pours: " + whyNot(err) + ".")
			continue
		}
		if err != nil {
			return err
		}
		out.Put(end.key+"_flow_l_per_min", p.Flow)
		out.Put(end.key+"_pour_time_s", p.TimeFor(in.Glass("glass").Volume))
	}
	return nil
}

// setTrade sets the pressure at which the trade's table balances the run, or
// says why there is none.
func setTrade(out *calc.Result, run lines.Run) {
	if len(run.Tubes) == 0 {
		return
	}
	trade, err := run.TradeGauge()
	if err != nil {
		noteNoTrade(out, err)
		return
	}
	out.Put("trade_gauge_kpa", trade.Gauge)
	out.Remark(trade.Notes())
}
