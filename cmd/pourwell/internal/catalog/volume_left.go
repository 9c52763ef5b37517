package catalog

import (
	"fmt"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var left = calc.Calculation{
	Package: "volume",
	Name:    "left",
	Summary: "beer left in a keg, or gas left in a cylinder, from its weight on a scale",
	Detail: "Take coupler, hose or regulator off before you weigh. The tare is stamped on kegs and cylinders: with --tare the answer" +
		" is much surer than with the usual one.",
	Examples: []string{
		"volume left --keg us-sixth --weight 34lb",
		"volume left --cylinder 5lb --weight 15lb --tare 12.5lb --keg us-sixth",
	},
	Inputs: []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "the keg that is weighed; with --cylinder, the kegs it still serves", Limit: "volume.Vessel.Capacity"},
		{Name: "cylinder", Kind: quantity.Mass, Help: "gas in the full cylinder that is weighed, such as 5lb or 2kg", Limit: "volume.Cylinder.Charge"},
		{Name: "weight", Kind: quantity.Mass, Help: "what the scale shows, such as 34lb or 15kg", Limit: "volume.Pour.Left.weight"},
		{Name: "tare", Kind: quantity.Mass, Help: "weight of it empty, as stamped; the usual one if not given", Limit: "volume.Vessel.Tare"},
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Help: "glass for the pours left; us-pint if not given", Limit: "volume.Glass.Volume"},
		{Name: "head", Kind: quantity.Text, Help: "head on it, as 1in or 5%; 1in if not given"},
		{Name: "gravity", Kind: quantity.Number, Help: "final gravity of the beer that is weighed; 1.010 if not given", Limit: "volume.Pour.Left.gravity"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure kept on the kegs of a cylinder; 12 psi if not given", Limit: "carbonation.Supply.Gauge"},
		{Name: "temp", Kind: quantity.Temperature, Help: "temperature of those kegs; 38 °F if not given", Limit: "carbonation.Supply.Temperature"},
	},
	Results: []calc.Key{
		{Key: "volume_l", Label: "beer left"},
		{Key: "pours", Label: "whole pours left"},
		{Key: "full_share", Label: "of a full one"},
		{Key: "beer_kg", Label: "weight of the beer"},
		{Key: "gas_kg", Label: "gas left"},
		{Key: "kegs", Label: "kegs it still serves"},
		{Key: "gas_per_keg_kg", Label: "gas for each keg"},
		{Key: "tare_kg", Label: "empty it weighs"},
	},
	Run: runLeft,
}

func runLeft(in *calc.Values, out *calc.Result) error {
	if err := in.Require("weight"); err != nil {
		return err
	}
	switch {
	case in.Given("cylinder"):
		return gasLeft(in, out)
	case in.Given("keg"):
		return beerLeft(in, out)
	}
	return &calc.UsageError{What: "volume left needs --keg or --cylinder", Hint: "add --keg us-sixth, or --cylinder 5lb"}
}

func beerLeft(in *calc.Values, out *calc.Result) error {
	if err := suppose(in, "glass", "us-pint", "head", "1in", "gravity", "1.010"); err != nil {
		return err
	}
	p := in.Vessel("keg").Into(in.Glass("glass"))
	if in.Given("tare") {
		p.Keg.Tare, p.Keg.Weighed = in.Mass("tare"), volume.Published
	}
	if err := readText("head", in.Text("head"), headText{&p}); err != nil {
		return err
	}
	r, err := p.Left(in.Mass("weight"), in.Number("gravity"))
	if err != nil {
		return err
	}
	out.Answer = "About {volume_l} of beer is left, {pours} " + plural(r.Count, "pour") + "."
	out.Put("volume_l", r.Volume)
	out.Put("pours", r.Count)
	out.Put("full_share", r.Share)
	out.Put("beer_kg", r.Mass)
	out.Put("tare_kg", p.Keg.Tare)
	out.Band("volume_l", r.Band)
	out.Working(r.Steps)
	noteTare(in, out, p.Keg.Source)
	out.Note(fmt.Sprintf("Pours are those of volume pours: {%v share} stays in the keg and {%v share} is wasted, common practice.", p.Heel, p.Waste))
	return nil
}

func noteTare(in *calc.Values, out *calc.Result, source string) {
	if !in.Given("tare") {
		out.Note("The tare of {tare_kg} is not yours (" + source + "): read the stamp, or weigh it empty, and give --tare.")
	}
}

func gasLeft(in *calc.Values, out *calc.Result) error {
	c := volume.Cylinder{Charge: in.Mass("cylinder")}.UsualTare()
	if in.Given("tare") {
		c.Tare, c.Weighed = in.Mass("tare"), volume.Published
	}
	s, err := gasForKegs(in)
	if err != nil {
		return err
	}
	need, err := s.Plan()
	if err != nil {
		return err
	}
	r, err := c.Left(in.Mass("weight"), need.PerKeg)
	if err != nil {
		return err
	}
	out.Answer = "{gas_kg} of gas is left, {full_share} of a full cylinder: enough for {kegs} " + plural(r.Count, "keg") + "."
	out.Put("gas_kg", r.Mass)
	out.Put("kegs", r.Count)
	out.Put("full_share", r.Share)
	out.Put("gas_per_keg_kg", need.PerKeg)
	out.Put("tare_kg", c.Tare)
	out.Band("gas_kg", r.Band)
	out.Working(r.Steps)
	noteTare(in, out, "usual for its charge, "+string(c.Weighed)+"; steel and aluminium differ by a half")
	out.Note(fmt.Sprintf("Each keg of {%.6g l} takes {gas_per_keg_kg} to push and purge it once, at {%.5g c} under {%.5g kpa}; leaks are not in it.",
		float64(s.Keg/volume.Litre), s.Temperature.Celsius(), s.Gauge.KPa()))
	out.Remark(r.Notes())
	out.Remark(r.Cautions())
	return nil
}

// gasForKegs returns how the kegs are pushed that the cylinder still serves.
func gasForKegs(in *calc.Values) (carbonation.Supply, error) {
	air, err := in.Air()
	if err != nil {
		return carbonation.Supply{}, err
	}
	if err := suppose(in, "keg", "us-sixth", "gauge", "12psi", "temp", "38F"); err != nil {
		return carbonation.Supply{}, err
	}
	return carbonation.Draught{Air: air}.Supply(in.Vessel("keg").Capacity, in.Temperature("temp"), in.Gauge("gauge")), nil
}

// suppose gives inputs that were not typed the value that follows their name.
func suppose(in *calc.Values, namesAndTexts ...string) error {
	for i := 0; i < len(namesAndTexts); i += 2 {
		if name := namesAndTexts[i]; !in.Given(name) {
			if err := in.Suppose(name, namesAndTexts[i+1]); err != nil {
				return err
			}
		}
	}
	return nil
}
