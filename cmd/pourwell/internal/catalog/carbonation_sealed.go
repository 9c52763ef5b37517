package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var sealed = calc.Calculation{
	Package: "carbonation",
	Name:    "sealed",
	Summary: "pressure and CO2 in a closed growler, bottle, can or keg at a later temperature",
	Detail: "The CO2 divides between beer and headspace, and the beer expands into the headspace as it warms." +
		" A growler or bottle is taken as closed with air above the beer, a can or keg with CO2 at balance; --gas says otherwise.",
	Examples: []string{
		"carbonation sealed --vessel growler --co2 2.5vol --temp 38F --at 86F",
		"carbonation sealed --vessel keg --co2 2.5vol --temp 4C --at 25C --regulator 0.8bar",
		"carbonation sealed --co2 2.6vol --temp 38F --at 38F --openings 3",
	},
	Inputs: []calc.Input{
		{Name: "co2", Kind: quantity.Content, Help: "CO2 of the beer as it is drawn", Limit: "carbonation.Sealed.Content"},
		{Name: "temp", Kind: quantity.Temperature, Help: "temperature when closed", Limit: "carbonation.Sealed.Closed"},
		{Name: "at", Kind: quantity.Temperature, Help: "temperature later", Limit: "carbonation.Sealed.At.t"},
		{Name: "vessel", Kind: quantity.Text, Default: "growler", Choices: []string{"growler", "bottle", "can", "keg"}, Help: "what it is closed in"},
		{Name: "headspace", Kind: quantity.Share, Default: "4%", Help: "share of the vessel that is gas when closed", Limit: "carbonation.Sealed.Headspace"},
		{Name: "gas", Kind: quantity.Text, Choices: []string{"air", "co2"}, Help: "gas in the headspace when closed"},
		{Name: "fill-loss", Kind: quantity.Share, Default: "0%", Help: "share of the CO2 that foams off at filling", Limit: "carbonation.Sealed.FillLoss"},
		{Name: "openings", Kind: quantity.Count, Default: "0", Help: "times it is opened and closed again", Limit: "carbonation.Sealed.Openings"},
		{Name: "rating", Kind: quantity.Gauge, Help: "gauge pressure that the maker allows for the vessel", Limit: "carbonation.Sealed.Rating"},
		{Name: "regulator", Kind: quantity.Gauge, Help: "gauge pressure of a regulator that it is connected to later", Limit: "carbonation.Sealed.Regulator"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "gauge_kpa", Label: "gauge pressure inside"},
		{Key: "co2_volumes", Label: "CO2 in the beer"},
		{Key: "headspace_co2_volumes", Label: "CO2 in the headspace"},
		{Key: "lost_volumes", Label: "CO2 lost for good"},
		{Key: "headspace_share", Label: "headspace left"},
		{Key: "full_at_c", Label: "beer fills the vessel at"},
		{Key: "pushback_kpa", Label: "above the regulator by"},
		{Key: "pushback_rise_m", Label: "lifts beer in the gas line"},
	},
	Run: runSealed,
}

func runSealed(in *calc.Values, out *calc.Result) error {
	if err := in.Require("co2", "temp", "at"); err != nil {
		return err
	}
	s, err := sealedVessel(in)
	if err != nil {
		return err
	}
	p, err := s.At(in.Temperature("at"))
	if err != nil {
		return err
	}
	if verdict := p.Verdict(); verdict != "" {
		out.Answer = string(verdict) + " "
	}
	out.Answer += "At {at_c} the " + in.Text("vessel") + " stands under {gauge_kpa} and the beer holds {co2_volumes} of CO2."
	out.Put("gauge_kpa", p.Gauge)
	out.Put("co2_volumes", p.Content)
	out.Put("headspace_co2_volumes", p.InGas)
	out.Put("lost_volumes", p.Lost)
	out.Put("headspace_share", p.Headspace)
	if p.FullAt.IsValid() {
		out.Put("full_at_c", p.FullAt)
	}
	if in.Given("regulator") {
		out.Put("pushback_kpa", p.PushBack)
		out.Put("pushback_rise_m", p.Lift)
	}
	out.Working(p.Steps)
	out.Band("gauge_kpa", p.Band)
	if !in.Given("gas") {
		out.Note(map[bool]string{
			true:  "Taken as closed with air above the beer; --gas co2 otherwise.",
			false: "Taken as closed with CO2 at balance above the beer; --gas air otherwise.",
		}[s.Vessel.IsGlass()])
	}
	out.Remark(p.Notes())
	out.Remark(p.Cautions())
	return nil
}

func sealedVessel(in *calc.Values) (carbonation.Sealed, error) {
	d, err := in.Draught()
	if err != nil {
		return carbonation.Sealed{}, err
	}
	s := d.Sealed(in.Content("co2"), in.Temperature("temp"))
	if err := s.Vessel.UnmarshalText([]byte(in.Text("vessel"))); err != nil {
		return carbonation.Sealed{}, err
	}
	s.Headspace, s.FillLoss, s.Openings = in.Number("headspace"), in.Number("fill-loss"), in.Count("openings")
	s.Rating, s.Regulator = in.Gauge("rating"), in.Gauge("regulator")
	if gas := in.Text("gas"); gas == "co2" || gas == "" && !s.Vessel.IsGlass() {
		s.AirShare, s.AtBalance = 0, s.Vessel != carbonation.Growler
	}
	return s, nil
}
