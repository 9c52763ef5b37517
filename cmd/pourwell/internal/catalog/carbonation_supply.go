package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var supply = calc.Calculation{
	Package: "carbonation",
	Name:    "supply",
	Summary: "CO2 to push, purge and carbonate; kegs a cylinder; what its gauge reads and what a hot car does to it",
	Detail: "While there is liquid in a cylinder its gauge reads the vapour pressure and nothing of what is left: weigh it." +
		" Above the liquid-full temperature the pressure climbs steeply.",
	Examples: []string{
		"carbonation supply --keg half-barrel --kegs 2 --gauge 12psi --temp 38F --cylinder 5lb",
		"carbonation supply --keg 19L --kegs 3 --gauge 0.8bar --temp 4C --cylinder 2kg --cylinder-temp 30C --carbonate-from 0vol",
	},
	Inputs: []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "the keg", Limit: "carbonation.Supply.Keg"},
		{Name: "kegs", Kind: quantity.Count, Default: "1", Help: "kegs to empty", Limit: "carbonation.Supply.Kegs"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "gauge pressure kept on the kegs", Limit: "carbonation.Supply.Gauge"},
		{Name: "temp", Kind: quantity.Temperature, Help: "temperature of the kegs", Limit: "carbonation.Supply.Temperature"},
		{Name: "cylinder", Kind: quantity.Mass, Default: "5lb", Help: "CO2 in a full cylinder", Limit: "carbonation.Supply.Charge"},
		{Name: "cylinder-temp", Kind: quantity.Temperature, Default: "20C", Help: "temperature of the cylinder", Limit: "carbonation.Supply.CylinderTemperature"},
		{Name: "filling", Kind: quantity.Number, Default: "0.68", Help: "mass of CO2 over that of the water which the cylinder would hold, as kg a litre", Limit: "carbonation.Supply.Filling"},
		{Name: "purge", Kind: quantity.Count, Default: "1", Help: "times the headspace of a fresh keg is filled and let out", Limit: "carbonation.Supply.Purges"},
		{Name: "carbonate-from", Kind: quantity.Content, Help: "CO2 in beer still to be carbonated or topped up", Limit: "carbonation.Supply.From"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "co2_kg", Label: "CO2 for all kegs"},
		{Key: "co2_per_keg_kg", Label: "CO2 a keg"},
		{Key: "push_kg", Label: "  of it to push"},
		{Key: "purge_kg", Label: "  of it to purge"},
		{Key: "carbonate_kg", Label: "  of it to carbonate"},
		{Key: "cylinders", Label: "full cylinders"},
		{Key: "kegs_per_cylinder", Label: "  kegs that one serves"},
		{Key: "cylinder_kpa", Label: "  its gauge reads"},
		{Key: "liquid_full_c", Label: "  liquid fills it at"},
		{Key: "hot_car_kpa", Label: "  its pressure in a hot car"},
	},
	Run: runSupply,
}

func runSupply(in *calc.Values, out *calc.Result) error {
	if err := in.Require("keg", "gauge", "temp"); err != nil {
		return err
	}
	s, err := gasSupply(in)
	if err != nil {
		return err
	}
	n, err := s.Plan()
	if err != nil {
		return err
	}
	out.Answer = "The kegs take {co2_kg} of CO2. Full cylinders of {cylinder_kg} to bring: {cylinders}, and a spare, since leaks are not in it;" +
		" one serves {kegs_per_cylinder} such kegs."
	out.Put("co2_kg", n.Total)
	out.Put("co2_per_keg_kg", n.PerKeg)
	out.Put("push_kg", n.Push)
	out.Put("purge_kg", n.Purge)
	if in.Given("carbonate-from") {
		out.Put("carbonate_kg", n.Carbonate)
	}
	out.Put("cylinders", n.Cylinders)
	out.Put("kegs_per_cylinder", n.KegsPerCylinder)
	out.Put("cylinder_kpa", n.Cylinder)
	out.Put("liquid_full_c", n.LiquidFull)
	out.Put("hot_car_kpa", n.HotCar)
	out.Working(n.Steps)
	out.Band("co2_kg", n.Band)
	out.Remark(n.Notes())
	out.Remark(n.Cautions())
	return nil
}

// gasSupply reads the inputs of a supply. Those that a calculation does not
// have keep their usual values.
func gasSupply(in *calc.Values) (carbonation.Supply, error) {
	d, err := in.Draught()
	if err != nil {
		return carbonation.Supply{}, err
	}
	s := d.Supply(in.Vessel("keg").Capacity, in.Temperature("temp"), in.Gauge("gauge"))
	s.Kegs, s.Purges = in.Count("kegs"), in.Count("purge")
	s.Charge, s.Filling, s.CylinderTemperature = in.Mass("cylinder"), in.Number("filling"), in.Temperature("cylinder-temp")
	if in.Given("carbonate-from") {
		s.From = in.Content("carbonate-from")
	}
	return s, nil
}
