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
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "the keg", Limit: "carbonation: keg"},
		{Name: "kegs", Kind: quantity.Count, Default: "1", Help: "kegs to empty", Limit: "carbonation: kegs"},
		{Name: "gauge", Kind: quantity.Gauge, Help: "pressure kept on the kegs"},
		{Name: "temp", Kind: quantity.Temperature, Help: "temperature of the kegs", Limit: "carbonation: temperature"},
		{Name: "cylinder", Kind: quantity.Mass, Default: "5lb", Help: "CO2 in a full cylinder", Limit: "carbonation: cylinder charge"},
		{Name: "cylinder-temp", Kind: quantity.Temperature, Default: "20C", Help: "temperature of the cylinder", Limit: "carbonation: cylinder temperature"},
		{Name: "filling", Kind: quantity.Number, Default: "0.68", Help: "kg of CO2 for each litre of cylinder when full", Limit: "carbonation: filling ratio"},
		{Name: "purge", Kind: quantity.Count, Default: "1", Help: "times the headspace of a fresh keg is filled and let out", Limit: "carbonation: purges"},
		{Name: "carbonate-from", Kind: quantity.Content, Help: "CO2 in beer still to be carbonated or topped up", Limit: "carbonation: content"},
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
	Cautions: []string{
		"Chain the cylinder upright, out of sun and heat, with the cap or regulator on. Never leave it in a car: the relief disc" +
			" lets the whole charge into the cabin. Have it filled and tested by licensed people only; the stamp on it and local code rule.",
		"CO2 stifles without warning in tents, cellars, cars and coolers: air the place and use a detector. Solid CO2 does not belong in a keg, a box or a car.",
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
	out.Set("co2_kg", float64(n.Total))
	out.Set("co2_per_keg_kg", float64(n.PerKeg))
	out.Set("push_kg", float64(n.Push))
	out.Set("purge_kg", float64(n.Purge))
	if in.Given("carbonate-from") {
		out.Set("carbonate_kg", float64(n.Carbonate))
	}
	out.Set("cylinders", float64(n.Cylinders))
	out.Set("kegs_per_cylinder", n.KegsPerCylinder)
	out.Set("cylinder_kpa", n.Cylinder.KPa())
	out.Set("liquid_full_c", n.LiquidFull.Celsius())
	out.Set("hot_car_kpa", n.HotCar.KPa())
	out.Working(n.Steps)
	out.Band("co2_kg", n.Band)
	supplyNotes(out, n)
	out.Remark(carbonation.HighPressure(s.Gauge))
	return nil
}

// gasSupply reads the inputs of a supply. Those that a calculation does not
// have keep their usual values.
func gasSupply(in *calc.Values) (carbonation.Supply, error) {
	air, err := in.Air()
	if err != nil {
		return carbonation.Supply{}, err
	}
	beer, err := in.Beer()
	if err != nil {
		return carbonation.Supply{}, err
	}
	d := carbonation.Draught{Beer: beer, Air: air}
	s := d.Supply(in.Vessel("keg").Capacity, in.Temperature("temp"), in.Gauge("gauge"))
	s.Kegs, s.Purges = in.Count("kegs"), in.Count("purge")
	s.Charge, s.Filling, s.CylinderTemperature = in.Mass("cylinder"), in.Number("filling"), in.Temperature("cylinder-temp")
	if in.Given("carbonate-from") {
		s.From = in.Content("carbonate-from")
	}
	return s, nil
}

func supplyNotes(out *calc.Result, n carbonation.GasNeed) {
	if n.NoVapour {
		out.Caution("At this temperature the liquid fills the cylinder: its pressure climbs by some {300 kpa} a degree Celsius. Cool it, out of the sun, and keep away from its disc.")
	} else {
		out.Note("The gauge reads {cylinder_kpa} whether the cylinder is full or nearly empty; it falls only when the last liquid is gone. Weigh it.")
	}
	if n.DiscBursts {
		out.Caution("In a car at {65 c} the cylinder comes to {hot_car_kpa}, where its relief disc lets go.")
	}
	out.Note("Common practice, no source, counts {0.22680 kg} for a half barrel, a tenth more than this sum: leaks and blow-off.")
}
