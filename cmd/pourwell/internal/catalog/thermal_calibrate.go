package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

var calibrateKeg = calc.Calculation{
	Package: "thermal",
	Name:    "calibrate",
	Summary: "the heat per kelvin of your own keg or box, from a thermometer or from melted ice",
	Detail: "Two readings or more of a keg in steady air, written TEMPERATURE:TIME; or a log of them; or the ice that" +
		" a closed box melted in a while. The answer goes into --ua of thermal keg and thermal icebath and narrows their" +
		" bands. Rock the keg before each reading, and keep it out of the sun.",
	Examples: []string{
		"thermal calibrate --keg 5gal --air 77F --reading 38F:0h --reading 48F:3h",
		"thermal calibrate --melted 4kg --for 24h --air 25C",
	},
	Inputs: []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "keg by name or volume, full", Limit: "thermal.Calibration.Content"},
		{Name: "content", Kind: quantity.Volume, Help: "beer or water in it; a full keg if not given", Limit: "thermal.Calibration.Content"},
		{Name: "air", Kind: quantity.Temperature, Help: "steady air around it", Limit: "thermal.Calibration.Air"},
		{Name: "reading", Kind: quantity.Text, Repeat: true, Help: "temperature and time: 38F:0h or 4.5C:90min"},
		{Name: "log", Kind: quantity.Text, Help: "file of rows TIME,TEMPERATURE: 90min,4.5C or 14:30,4.5C; - for standard input"},
		{Name: "thermometer", Kind: quantity.Difference, Default: "0.3C", Help: "by which a reading may be off", Limit: "thermal.Calibration.Thermometer"},
		{Name: "melted", Kind: quantity.Mass, Help: "ice that melted in a closed box", Limit: "thermal.MeltedIce.melted"},
		{Name: "for", Kind: quantity.Time, Help: "time in which it melted", Limit: "thermal.MeltedIce.during"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	NoAir:  true,
	Results: []calc.Key{
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA)"},
		{Key: "ua_band_w_per_k", Label: "  give or take"},
		{Key: "time_constant_s", Label: "two thirds of the way to the air in"},
		{Key: "scatter_k", Label: "readings scatter by"},
		{Key: "readings", Label: "readings"},
	},
	Run: runCalibrate,
}

func runCalibrate(in *calc.Values, out *calc.Result) error {
	if err := in.Require("air"); err != nil {
		return err
	}
	if err := in.Exactly(1, "reading", "log", "melted"); err != nil {
		return err
	}
	if in.Given("melted") {
		return runMelted(in, out)
	}
	if in.Given("for") {
		return &calc.UsageError{What: "--for is the time in which ice melted; a reading has its own", Hint: "drop --for, or give --melted instead of readings"}
	}
	if err := in.Require("keg"); err != nil {
		return err
	}
	c, err := readCalibration(in)
	if err != nil {
		return err
	}
	r, err := c.Solve()
	if err != nil {
		return err
	}
	setCalibrated(out, r)
	out.Put("time_constant_s", r.TimeConstant)
	out.Put("readings", len(c.Readings))
	if len(c.Readings) > 2 {
		out.Put("scatter_k", r.Scatter)
	}
	return nil
}

// runMelted takes the box by its ice; what describes a keg and its readings does
// not enter and is refused, so that nobody takes it for heeded.
func runMelted(in *calc.Values, out *calc.Result) error {
	for _, name := range []string{"keg", "content", "thermometer", "abv", "fg", "og"} {
		if in.Given(name) {
			return &calc.UsageError{What: "--melted asks what a box lets in, and --" + name + " is of a keg", Hint: "drop one of them"}
		}
	}
	if err := in.Require("for"); err != nil {
		return err
	}
	r, err := thermal.MeltedIce(in.Mass("melted"), in.Temperature("air"), in.Duration("for"))
	if err != nil {
		return err
	}
	setCalibrated(out, r)
	return nil
}

// setCalibrated sets the conductance and says what to do with it.
func setCalibrated(out *calc.Result, r thermal.Calibrated) {
	out.Answer = "It takes {ua_w_per_k}, give or take {ua_band_w_per_k}: give that as --ua."
	out.Band("ua_w_per_k", r.Band)
	out.Put("ua_w_per_k", r.UA)
	out.Put("ua_band_w_per_k", r.Uncertainty)
	out.Working(r.Steps)
	out.Remark(r.Notes())
}

func readCalibration(in *calc.Values) (thermal.Calibration, error) {
	read := readReadings
	if in.Given("log") {
		read = readLog
	}
	readings, err := read(in)
	if err != nil {
		return thermal.Calibration{}, err
	}
	c := thermal.DefaultCalibration(in.Vessel("keg"), in.Temperature("air"), readings...)
	if in.Given("content") {
		c.Content = in.Volume("content")
	}
	c.Thermometer = thermal.Difference(in.Number("thermometer"))
	c.Beer, err = in.Beer()
	return c, err
}
