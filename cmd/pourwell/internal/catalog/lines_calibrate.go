package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
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
	NoAir: true,
	Inputs: []calc.Input{
		gaugeInput,
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Help: "liquid that was caught, without foam", Limit: "lines.Run.Calibrate.glass"},
		{Name: "time", Kind: quantity.Time, Help: "to fill it", Limit: "lines.Run.Calibrate.measured"},
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
	out.Put("factor", k.Factor)
	out.Put("flow_l_per_min", k.Flow)
	out.Put("equivalent_bore_mm", k.EquivalentBore)
	out.Put("loss_kpa_per_m", k.LossPerMetre)
	out.Put("friction_kpa", k.Friction)
	out.Put("fixed_kpa", k.Fixed)
	out.Band("factor", k.Band)
	out.Working(k.Steps)
	out.Remark(k.Notes())
	out.Remark(k.Cautions())
	return nil
}
