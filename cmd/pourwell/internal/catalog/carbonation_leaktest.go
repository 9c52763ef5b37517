package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var leakTest = calc.Calculation{
	Package: "carbonation",
	Name:    "leaktest",
	Summary: "close the cylinder, watch the gauge: grams an hour and how long a cylinder lasts",
	Detail: "Set the pressure, close the cylinder and the keg couplers, and read the gauge again later. The volume is that of the" +
		" hoses and empty kegs that the gauge sees. Beer must be shut off: it gives CO2 up as the pressure falls and hides a leak.",
	Examples: []string{
		"carbonation leaktest --volume 1L --gauge 12psi --fall 2psi --for 30min",
		"carbonation leaktest --volume 19L --gauge 1bar --fall 0.05bar --for 2h --cylinder 2kg",
	},
	Inputs: []calc.Input{
		{Name: "volume", Kind: quantity.Volume, Help: "gas that the gauge sees: hoses, empty kegs", Limit: "carbonation.Supply.LeakTest.gas"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure at the start", Limit: "carbonation.Supply.Gauge"},
		{Name: "fall", Kind: quantity.Gauge, Help: "by how much the gauge fell", Limit: "carbonation.Supply.LeakTest.fall"},
		{Name: "for", Kind: quantity.Time, Help: "in what time", Limit: "carbonation.Supply.LeakTest.over"},
		{Name: "temp", Kind: quantity.Temperature, Default: "20C", Help: "temperature of the gas", Limit: "carbonation.Supply.Temperature"},
		{Name: "cylinder", Kind: quantity.Mass, Default: "5lb", Help: "CO2 in a full cylinder", Limit: "carbonation.Supply.Charge"},
	},
	Results: []calc.Key{
		{Key: "leak_g_per_h", Label: "leak"},
		{Key: "cylinder_empty_s", Label: "a full cylinder is empty after"},
		{Key: "per_degree_kpa", Label: "cooling by 1 K looks like a fall of"},
	},
	Run: runLeakTest,
}

func runLeakTest(in *calc.Values, out *calc.Result) error {
	if err := in.Require("volume", "gauge", "fall", "for"); err != nil {
		return err
	}
	air, err := in.Air()
	if err != nil {
		return err
	}
	d := carbonation.Draught{Air: air}
	s := d.Supply(in.Volume("volume"), in.Temperature("temp"), in.Gauge("gauge"))
	s.Charge = in.Mass("cylinder")
	l, err := s.LeakTest(in.Volume("volume"), in.Drop("fall"), in.Duration("for"))
	if err != nil {
		return err
	}
	out.Answer = "The leak loses {leak_g_per_h} of CO2: a cylinder of {cylinder_kg} is empty after {cylinder_empty_s}."
	out.Set("leak_g_per_h", l.Rate)
	out.Put("cylinder_empty_s", l.Empty)
	out.Put("per_degree_kpa", l.PerDegree)
	out.Working(l.Steps)
	out.Band("leak_g_per_h", l.Band)
	out.Remark(l.Notes())
	out.Remark(l.Cautions())
	return nil
}
