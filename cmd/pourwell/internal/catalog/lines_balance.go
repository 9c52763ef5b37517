package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
)

var balance = calc.Calculation{
	Package: "lines",
	Name:    "balance",
	Summary: "the pressure for a flow, or the length of the tube given without one",
	Detail: "Balance the line to the pressure that holds the gas in the beer, not the other way about: give --co2 or --gauge," +
		" leave one tube's length out, and read its length.",
	Examples: []string{
		"lines balance --tube 3/16in:vinyl --rise 2ft --co2 2.5vol --temp 38F",
		"lines balance --tube 7mm:10m --tube 4mm:1m --flow 3L/min",
	},
	Inputs: []calc.Input{
		{Name: "flow", Kind: quantity.Flow, Default: "2oz/s", Help: "flow to balance for", Limit: "lines.Run.Gauge.q"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure at the regulator, to find a length", Limit: "lines.Run.Length.g"},
		{Name: "co2", Kind: quantity.Content, Help: "CO2 in the beer, to find the pressure that holds it", Limit: "lines.Serving.Content"},
		glassInput,
	},
	Shared: []func() []calc.Input{runInputs, calc.BeerInputs},
	Results: []calc.Key{
		{Key: "gauge_kpa", Label: "gauge pressure"},
		{Key: "length_m", Label: "length of the open tube"},
		{Key: "flow_l_per_min", Label: "flow"},
		{Key: "pour_time_s", Label: "glass full in"},
		{Key: "glass_l", Label: "  a glass of"},
		{Key: "loss_kpa", Label: "losses"},
		{Key: "static_kpa", Label: "taken by the rise"},
		{Key: "fittings_kpa", Label: "  in fittings"},
		{Key: "hardware_kpa", Label: "  in coupler, shank and tap"},
		{Key: "empty_gauge_kpa", Label: "same flow, empty keg"},
		{Key: "needed_gauge_kpa", Label: "pressure that holds the gas"},
		{Key: "trade_length_m", Label: "length by the trade's table"},
		{Key: "trade_gauge_kpa", Label: "pressure by the trade's table"},
	},
	Run: runBalance,
}

func runBalance(in *calc.Values, out *calc.Result) error {
	run, err := readRun(in, out)
	if err != nil {
		return err
	}
	needed, err := neededGauge(in, out, run)
	if err != nil {
		return err
	}
	g := in.Gauge("gauge")
	if !in.Given("gauge") {
		g = needed
	}
	var p lines.Pour
	open, q := run.Open(), lines.Flow(in.Number("flow"))
	switch {
	case open >= 0 && g.IsValid():
		p, err = balanceLength(out, run, open, q, g)
	case in.Given("gauge") || open == -2:
		return &calc.UsageError{
			What: "lines balance with --gauge finds the length of one tube, and needs one --tube without a length",
			Hint: "for example --tube 3/16in; to find the pressure drop --gauge, for the flow use lines flow",
		}
	default:
		p, err = balanceGauge(in, out, run, q)
	}
	if err != nil {
		return err
	}
	setPour(in, out, p)
	setTubes(in, out, p)
	out.Working(p.Steps)
	out.Remark(p.Cautions())
	return nil
}

// neededGauge returns the pressure that holds the gas in the beer, invalid if
// its content is not given.
func neededGauge(in *calc.Values, out *calc.Result, run lines.Run) (carbonation.Gauge, error) {
	if !in.Given("co2") {
		return carbonation.Gauge{}, nil
	}
	air, err := in.Air()
	if err != nil {
		return carbonation.Gauge{}, err
	}
	e, err := carbonation.Draught{Beer: run.Beer, Air: air, CO2Share: 1}.SolveGauge(run.Temp, in.Content("co2"))
	if err != nil {
		return carbonation.Gauge{}, err
	}
	out.Put("needed_gauge_kpa", e.Gauge)
	return e.Gauge, nil
}

// balanceLength finds the length of the open tube, by friction and by the
// trade's table.
func balanceLength(out *calc.Result, run lines.Run, open int, q lines.Flow, g carbonation.Gauge) (lines.Pour, error) {
	p, err := run.Length(open, q, g)
	if err != nil {
		return p, err
	}
	out.Answer = "Cut the open tube to {length_m}: {gauge_kpa} then pours {flow_l_per_min}."
	out.Put("gauge_kpa", p.Gauge)
	out.Put("length_m", p.Length)
	out.Band("length_m", p.Band)
	out.Remark(p.Notes())
	trade, err := run.TradeLength(open, p.Gauge)
	if err != nil {
		noteNoTrade(out, err)
		return p, nil
	}
	out.Put("trade_length_m", trade.Length)
	out.Remark(trade.Notes())
	return p, nil
}

// balanceGauge finds the pressure for the flow, by friction and by the trade's
// table.
func balanceGauge(in *calc.Values, out *calc.Result, run lines.Run, q lines.Flow) (lines.Pour, error) {
	if err := needLengths(in, run); err != nil {
		return lines.Pour{}, err
	}
	p, err := run.Gauge(q)
	if err != nil {
		return p, err
	}
	out.Answer = "Set {gauge_kpa}: the tap then pours {flow_l_per_min}."
	out.Put("gauge_kpa", p.Gauge)
	out.Band("gauge_kpa", p.Band)
	if _, ok := out.Get("needed_gauge_kpa"); ok {
		out.Note("The gas in the beer needs {needed_gauge_kpa}. If that is another pressure, change the line: leave a tube's length out and it is found.")
	} else {
		out.Note("The pressure must also hold the gas in the beer: give --co2 to compare. If they differ, change the line.")
	}
	setTrade(out, run)
	run.Full = 0
	empty, err := run.Gauge(q)
	if err != nil {
		out.Note("No gauge gives that flow from the empty keg: " + whyNot(err) + ".")
	} else {
		out.Put("empty_gauge_kpa", empty.Gauge)
	}
	out.Remark(p.Notes())
	return p, nil
}
