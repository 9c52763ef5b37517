package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
)

var calibrateLine = calc.Calculation{
	Package: "lines",
	Name:    "calibrate",
	Summary: "one timed glass: the factor on friction that makes the sums fit your line",
	Detail: "Open the tap fully, let the first glass go, then time how long a glass of known size takes to fill with liquid." +
		" Give the factor as --calibration to flow, balance, profile and diagnose.",
	Examples: []string{
		"lines calibrate --tube 3/16in:5ft:vinyl --rise 1ft --gauge 12psi --glass 16oz --time 9.5s",
		"lines calibrate --tube 7mm:10m --tube 4mm:1m --gauge 1.2bar --glass 0.3L --time 7s",
	},
	Inputs: []calc.Input{
		gaugeInput,
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Help: "liquid that was caught, without foam"},
		{Name: "time", Kind: quantity.Time, Help: "to fill it", Limit: "lines: time for a glass"},
	},
	Shared: []func() []calc.Input{runInputs, calc.BeerInputs},
	Results: []calc.Key{
		{Key: "factor", Label: "factor on friction"},
		{Key: "flow_l_per_min", Label: "flow as measured"},
		{Key: "equivalent_bore_mm", Label: "bore it acts like"},
		{Key: "loss_kpa_per_m", Label: "loss in that tube"},
		{Key: "friction_kpa", Label: "friction of all tubes"},
		{Key: "fixed_kpa", Label: "fittings and tap, as assumed"},
	},
	Run: runCalibrateLine,
}

func runCalibrateLine(in *calc.Values, out *calc.Result) error {
	if err := in.Require("gauge", "glass", "time"); err != nil {
		return err
	}
	run, err := readRun(in, out)
	if err != nil {
		return err
	}
	if err = needLengths(in, run); err != nil {
		return err
	}
	if in.Given("calibration") {
		return &calc.UsageError{What: "lines calibrate finds the calibration factor", Hint: "drop --calibration"}
	}
	k, err := run.Calibrate(in.Gauge("gauge"), in.Glass("glass").Volume, in.Duration("time"))
	if err != nil {
		return err
	}
	out.Answer = "Your line has {factor} times the computed friction: give --calibration {factor} from now on."
	out.Set("factor", k.Factor)
	out.Set("flow_l_per_min", k.Flow.LitresPerMinute())
	out.Set("equivalent_bore_mm", float64(k.EquivalentBore/lines.Millimetre))
	out.Set("loss_kpa_per_m", float64(k.LossPerMetre)/1e3)
	out.Set("friction_kpa", float64(k.Friction/carbonation.KPa))
	out.Set("fixed_kpa", float64(k.Fixed/carbonation.KPa))
	out.Band("factor", k.Band)
	out.Working(k.Steps)
	out.Note("The factor holds for this line as it is. It takes up what is wrong with the assumed losses of fittings and tap, so it carries over to another pressure better than to another tube.")
	out.Note("The longer the glass takes, the surer the factor: a jug is better than a glass.")
	out.Remark(carbonation.HighPressure(in.Gauge("gauge")))
	return nil
}
