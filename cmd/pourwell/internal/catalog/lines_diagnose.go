package catalog

import (
	"fmt"
	"strings"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
)

var diagnose = calc.Calculation{
	Package: "lines",
	Name:    "diagnose",
	Summary: "why it foams: causes ranked by their size, each with its remedy",
	Detail: "Give what you know; what you leave out is not judged. The most telling readings are the keg's temperature, the" +
		" seconds to fill a glass, and the temperature of the second glass in a row.",
	Examples: []string{
		"lines diagnose --tube 3/16in:5ft --rise 1ft --gauge 12psi --temp 45F --carbonated-at 38F,12psi --glass us-pint --time 9s --beer-temp 47F",
		"lines diagnose --tube 3/16in:5ft --gauge 12psi --co2 2.57vol --air 88F --first-pour-only",
	},
	Inputs: []calc.Input{
		gaugeInput,
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Help: "glass that was filled", Limit: "lines.Observation.Glass.Volume"},
		{Name: "time", Kind: quantity.Time, Help: "seconds to fill it with liquid", Limit: "lines.Observation.Time"},
		{Name: "beer-temp", Kind: quantity.Temperature, Help: "of the beer in the glass, the second in a row", Limit: "lines.Observation.BeerTemp"},
		{Name: "glass-temp", Kind: quantity.Temperature, Help: "of the glass before", Limit: "thermal.Glassful.From"},
		{Name: "glass-mass", Kind: quantity.Mass, Help: "of the empty glass; that of the glass named if not given", Limit: "thermal.Glassful.Glass.Mass"},
		{Name: "first-pour-only", Kind: quantity.Switch, Help: "only the first glass after a pause foams"},
		{Name: "carried", Kind: quantity.Time, Help: "how long ago the keg was carried or shaken", Limit: "lines.Observation.Since"},
		{Name: "carbonated-at", Kind: quantity.Text, Help: "where the keg took up its gas, as 40F,12psi"},
		{Name: "carbonated-for", Kind: quantity.Time, Default: "7d", Help: "how long it stood so", Limit: "lines.Observation.CarbonatedFor"},
		{Name: "target", Kind: quantity.Flow, Default: "2oz/s", Help: "flow that you want", Limit: "lines.Serving.Target"},
		creviceInput,
	},
	Shared: []func() []calc.Input{runInputs, calc.BeerInputs, servingInputs},
	Results: []calc.Key{
		{Key: "flow_l_per_min", Label: "flow"},
		{Key: "co2_volumes", Label: "CO2 in the beer"},
		{Key: "needed_gauge_kpa", Label: "pressure that holds it"},
		{Key: "tap_c", Label: "beer at the tap"},
		{Key: "size_kpa", Label: "weight of the first cause"},
		{Key: "weight_share", Label: "weight among these"},
	},
	Run: runDiagnose,
}

func runDiagnose(in *calc.Values, out *calc.Result) error {
	if err := in.Require("gauge"); err != nil {
		return err
	}
	o, err := readObservation(in, out)
	if err != nil {
		return err
	}
	d, err := o.Diagnose()
	if err != nil {
		return err
	}
	setDiagnosis(out, d)
	noteMisfits(in, out, d)
	out.Working(d.Steps)
	out.Remark(d.Cautions())
	return nil
}

func readObservation(in *calc.Values, out *calc.Result) (lines.Observation, error) {
	var o lines.Observation
	var err error
	if o.Run, err = readRun(in, out); err != nil {
		return o, err
	}
	if err = needLengths(in, o.Run); err != nil {
		return o, err
	}
	if o.Serving, err = readServing(in); err != nil {
		return o, err
	}
	o.Serving.Target = lines.Flow(in.Number("target"))
	if in.Given("time") != in.Given("glass") && in.Given("time") {
		return o, &calc.UsageError{What: "--time needs the glass that was filled", Hint: "add --glass, for example us-pint or 0.3L"}
	}
	if in.Given("glass") {
		o.Glass = in.Glass("glass")
		if in.Given("glass-mass") {
			o.Glass.Mass = in.Mass("glass-mass")
		}
	}
	o.Time, o.BeerTemp, o.GlassWas = in.Duration("time"), in.Temperature("beer-temp"), in.Temperature("glass-temp")
	o.FirstOnly, o.Carried, o.Since = in.On("first-pour-only"), in.Given("carried"), in.Duration("carried")
	o.CarbonatedFor = in.Duration("carbonated-for")
	if in.Given("carbonated-at") {
		o.CarbonatedTemp, o.CarbonatedGauge, err = readCarbonated(in)
	}
	return o, err
}

// readCarbonated reads a temperature and a gauge pressure set apart by a comma.
func readCarbonated(in *calc.Values) (t thermal.Temperature, g carbonation.Gauge, err error) {
	if in.Given("co2") {
		return t, g, &calc.UsageError{What: "--co2 and --carbonated-at both give the gas in the beer", Hint: "drop one of them"}
	}
	text := in.Text("carbonated-at")
	temp, gauge, ok := strings.Cut(text, ",")
	if !ok {
		return t, g, &calc.UsageError{What: fmt.Sprintf("--carbonated-at: %q is not a temperature and a gauge pressure", text), Hint: "for example --carbonated-at 40F,12psi"}
	}
	if err = readText("carbonated-at", temp, &t); err == nil {
		err = readText("carbonated-at", gauge, &g)
	}
	return t, g, err
}

func setDiagnosis(out *calc.Result, d lines.Diagnosis) {
	out.Answer = "Nothing found. What is left is what no gauge shows: a dirty glass, a dirty tap or line, grease on the rim."
	if len(d.Findings) > 0 {
		out.Answer = "Most likely: " + d.Findings[0].Cause + ". Remedy: " + string(d.Findings[0].Remedy) + "."
	}
	if len(d.Findings) > 0 {
		out.Put("size_kpa", d.Findings[0].Size)
		out.Band("size_kpa", d.Band)
	}
	out.Put("flow_l_per_min", d.Flow)
	if d.Content.IsValid() {
		out.Put("co2_volumes", d.Content)
		out.Put("needed_gauge_kpa", d.Needed)
	}
	if d.Tap.IsValid() {
		out.Put("tap_c", d.Tap)
	}
	t := calc.Table{Key: "findings", Columns: []string{"cause", "measured", "expected", "remedy", "confirm", "weight_share"}}
	for _, f := range d.Findings {
		t.Add(f.Cause, string(f.Measured), string(f.Expected), string(f.Remedy), string(f.Confirm), f.Share)
	}
	out.Table(t) // without a row too: nothing found is an empty list
	out.Remark(d.Notes())
	if len(d.Checked) > 0 {
		out.Note("Looked at: " + strings.Join(d.Checked, "; ") + ".")
	}
	for _, u := range d.Unknown {
		out.Note("Not judged: " + string(u))
	}
}

// noteMisfits says which findings do not explain that only the first glass
// foams.
func noteMisfits(in *calc.Values, out *calc.Result, d lines.Diagnosis) {
	for _, f := range d.Findings {
		if in.On("first-pour-only") && !f.Fits {
			out.Note(f.Cause + ": does not explain why only the first glass foams, so it stands last.")
		}
	}
}
