package catalog

import (
	"errors"
	"fmt"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/volume"
)

// runInputs describe the way from keg to tap; every calculation of lines but
// the cleaning has them.
func runInputs() []calc.Input {
	return []calc.Input{
		{Name: "tube", Kind: quantity.Text, Repeat: true, Help: `from the keg on, as "3/16in:5ft", "7mm:10m:coil95mm" or "1/4in-od:20ft:wall0.7mm:stainless"`},
		{Name: "rise", Kind: quantity.Length, Default: "0m", Help: "from the surface of the beer in a full keg up to the tap", Limit: "lines.Run.Rise"},
		{Name: "temp", Kind: quantity.Temperature, Default: "38F", Help: "of the beer in the line", Limit: "lines.Run.Temp"},
		{Name: "full", Kind: quantity.Share, Default: "100%", Help: "how full the keg is", Limit: "lines.Run.Full"},
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "the keg: its depth, and a dip tube", Limit: "volume.Vessel.Capacity"},
		{Name: "keg-height", Kind: quantity.Length, Help: "depth of beer in a full keg; --keg gives it too, else 0.5 m", Limit: "lines.Run.KegHeight"},
		{Name: "dip-tube", Kind: quantity.Text, Help: "a tube down through the keg, as --tube"},
		{Name: "loss-k", Kind: quantity.Number, Default: "2.5", Help: "loss coefficients of entrance, barbs and jet together, on the last bore", Limit: "lines.Fitting.K"},
		{Name: "hardware", Kind: quantity.Text, Default: "2psi at 2oz/s", Help: "loss of coupler, shank and tap at a flow"},
		{Name: "calibration", Kind: quantity.Number, Default: "1", Help: "factor on friction, from lines calibrate", Limit: "lines.Run.Calibration"},
	}
}

// glassInput is the glass that a pour is timed by.
var glassInput = calc.Input{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "16oz", Help: "glass to fill, with liquid to the brim", Limit: "lines.Observation.Glass.Volume"}

// readRun returns the run that the inputs describe.
func readRun(in *calc.Values, out *calc.Result) (lines.Run, error) {
	run := lines.DefaultRun()
	var err error
	if run.Beer, err = in.Beer(); err != nil {
		return run, err
	}
	run.Temp, run.Rise = in.Temperature("temp"), in.Length("rise")
	run.Full = in.Number("full")
	run.Fittings[0].K, run.Calibration = in.Number("loss-k"), in.Number("calibration")
	switch {
	case in.Given("keg"):
		run = run.InKeg(in.Vessel("keg"))
		out.Note(fmt.Sprintf("The keg holds beer {%.5g m} deep and has a steel dip tube of {%.5g mm} bore.",
			float64(run.KegHeight), float64(run.DipTube.Bore/lines.Millimetre)))
	case !in.Given("keg-height"):
		out.Note(fmt.Sprintf("A full keg is taken to hold beer {%.5g m} deep; --keg or --keg-height says otherwise.", float64(run.KegHeight)))
	}
	if in.Given("keg-height") {
		run.KegHeight = in.Length("keg-height")
	}
	if err = readText("hardware", in.Text("hardware"), &run.Hardware); err != nil {
		return run, err
	}
	if in.Given("dip-tube") {
		if err = readText("dip-tube", in.Text("dip-tube"), &run.DipTube); err != nil {
			return run, err
		}
	}
	if !in.Given("tube") {
		out.Note("No tube was given: the tap is taken to sit on the keg, where only fittings, coupler, shank and tap resist the flow.")
	}
	run.Tubes, err = readTubes(in, "tube")
	return run, err
}

func readTubes(in *calc.Values, name string) ([]lines.Tube, error) {
	texts := in.Texts(name)
	tubes := make([]lines.Tube, len(texts))
	for i, text := range texts {
		if err := readText(name, text, &tubes[i]); err != nil {
			return nil, err
		}
	}
	return tubes, nil
}

// readText reads the text of an input into a type that reads itself, and checks
// a tube, so that the error can say which.
func readText(name, text string, to interface{ UnmarshalText([]byte) error }) error {
	err := to.UnmarshalText([]byte(text))
	if tube, ok := to.(*lines.Tube); ok && err == nil {
		err = tube.Check()
	}
	var wrong *quantity.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &wrong) && wrong.Text == text:
		return &calc.UsageError{What: fmt.Sprintf("--%s %q %s", name, text, wrong.What), Hint: wrong.Hint}
	case errors.As(err, &wrong):
		return &calc.UsageError{What: fmt.Sprintf("--%s %q: %q %s", name, text, wrong.Text, wrong.What), Hint: wrong.Hint}
	}
	return fmt.Errorf("--%s %q: %w", name, text, err)
}

// needLengths refuses a tube without a length where none is sought.
func needLengths(in *calc.Values, run lines.Run) error {
	for i, t := range run.Tubes {
		if t.Length == 0 {
			text := in.Texts("tube")[i]
			return &calc.UsageError{What: fmt.Sprintf("--tube %q has no length", text), Hint: "for example --tube " + lengthen(text)}
		}
	}
	return nil
}

// lengthen returns the text of a tube with a length of 5 ft, in the place where
// the length stands.
func lengthen(text string) string {
	parts := strings.Split(text, ":")
	if strings.ContainsAny(text, " ×") {
		return "3/16in:5ft" // the tube in other words
	}
	rest := parts[1:]
	if len(rest) > 0 && rest[0] != "" && strings.Contains("+-.0123456789", rest[0][:1]) {
		rest = rest[1:] // a length of nothing
	}
	return strings.Join(append([]string{parts[0], "5ft"}, rest...), ":")
}

// setTubes adds the table of the flow in each tube.
func setTubes(in *calc.Values, out *calc.Result, p lines.Pour) {
	table := calc.Table{Key: "tubes", Columns: []string{"tube", "reynolds", "regime", "friction_factor", "loss_kpa"}}
	texts := in.Texts("tube")
	tubes := p.Tubes()
	if len(tubes) > len(texts) {
		texts = append([]string{"dip tube"}, texts...)
	}
	for i, t := range tubes {
		table.Add(texts[i], t.Reynolds, t.Regime, t.Friction, t.Loss)
	}
	if len(table.Rows) > 0 {
		out.Table(table)
	}
}

// noteNoTrade says why the trade's table gives no answer.
func noteNoTrade(out *calc.Result, err error) {
	out.Note("Only friction is computed: " + whyNot(err) + ".")
}

// whyNot returns the reason of an error as a sentence that quotes its numbers.
func whyNot(err error) string {
	var outside *volume.RangeError
	var none *volume.NoSolutionError
	var never *volume.NeverError
	switch {
	case errors.As(err, &outside):
		return string(outside.Why())
	case errors.As(err, &none):
		return string(none.Why)
	case errors.As(err, &never):
		return string(never.Why)
	}
	return err.Error()
}
