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
		{Name: "co2", Kind: quantity.Content, Help: "CO2 of the beer as it is drawn", Limit: "carbonation: content"},
		{Name: "temp", Kind: quantity.Temperature, Help: "temperature when closed", Limit: "carbonation: temperature"},
		{Name: "at", Kind: quantity.Temperature, Help: "temperature later", Limit: "carbonation: later temperature"},
		{Name: "vessel", Kind: quantity.Text, Default: "growler", Choices: []string{"growler", "bottle", "can", "keg"}, Help: "what it is closed in"},
		{Name: "headspace", Kind: quantity.Share, Default: "4%", Help: "share of the vessel that is gas when closed", Limit: "carbonation: headspace"},
		{Name: "gas", Kind: quantity.Text, Choices: []string{"air", "co2"}, Help: "gas in the headspace when closed"},
		{Name: "fill-loss", Kind: quantity.Share, Default: "0%", Help: "share of the CO2 that foams off at filling", Limit: "carbonation: loss at filling"},
		{Name: "openings", Kind: quantity.Count, Default: "0", Help: "times it is opened and closed again", Limit: "carbonation: openings"},
		{Name: "rating", Kind: quantity.Gauge, Help: "pressure the maker allows for the vessel"},
		{Name: "regulator", Kind: quantity.Gauge, Help: "pressure set on a regulator that it is connected to later"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "gauge_kpa", Label: "pressure inside"},
		{Key: "co2_volumes", Label: "CO2 in the beer"},
		{Key: "headspace_co2_volumes", Label: "CO2 in the headspace"},
		{Key: "lost_volumes", Label: "CO2 lost for good"},
		{Key: "headspace_share", Label: "headspace left"},
		{Key: "full_at_c", Label: "beer fills the vessel at"},
		{Key: "pushback_kpa", Label: "above the regulator by"},
		{Key: "pushback_rise_m", Label: "lifts beer in the gas line"},
	},
	Cautions: []string{
		"Let the pressure off slowly, away from faces, and cold. The rating of the maker binds; nothing here is one.",
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
	out.Answer = sealedVerdict(in.Text("vessel"), p) + "At {at_c} the " + in.Text("vessel") + " stands under {gauge_kpa} and the beer holds {co2_volumes} of CO2."
	out.Set("gauge_kpa", p.Gauge.KPa())
	out.Set("co2_volumes", p.Content.Volumes())
	out.Set("headspace_co2_volumes", p.InGas.Volumes())
	out.Set("lost_volumes", p.Lost.Volumes())
	out.Set("headspace_share", p.Headspace)
	if p.FullAt.IsValid() {
		out.Set("full_at_c", p.FullAt.Celsius())
	}
	out.Working(p.Steps)
	out.Band("gauge_kpa", p.Band)
	sealedCautions(in.Text("vessel"), out, p)
	if in.Given("regulator") {
		pushBack(in, out, p)
	}
	sealedNotes(in, out, p)
	return nil
}

func sealedVessel(in *calc.Values) (carbonation.Sealed, error) {
	beer, err := in.Beer()
	if err != nil {
		return carbonation.Sealed{}, err
	}
	air, err := in.Air()
	if err != nil {
		return carbonation.Sealed{}, err
	}
	d := carbonation.Draught{Beer: beer, Air: air}
	s := d.Sealed(in.Content("co2"), in.Temperature("temp"))
	s.Headspace, s.FillLoss, s.Rating = in.Number("headspace"), in.Number("fill-loss"), in.Gauge("rating")
	s.Openings = in.Count("openings")
	if gas := in.Text("gas"); gas == "co2" || gas == "" && !isGlass(in.Text("vessel")) {
		s.AirShare, s.AtBalance = 0, in.Text("vessel") != "growler"
	}
	return s, nil
}

func pushBack(in *calc.Values, out *calc.Result, p carbonation.Package) {
	excess, lift := p.PushBack(in.Gauge("regulator"))
	out.Set("pushback_kpa", carbonation.GaugeOf(excess).KPa())
	out.Set("pushback_rise_m", float64(lift))
	if excess > 0 {
		out.Caution("Connected now, the keg pushes gas and beer back towards the regulator: {pushback_kpa} is enough to lift beer {pushback_rise_m}." +
			" Fit a check valve in the gas line, and cool the keg or raise the regulator first.")
	}
}

// isGlass reports whether the vessel is one that throws splinters.
func isGlass(vessel string) bool { return vessel == "growler" || vessel == "bottle" }

// sealedVerdict says first of all not to do what can burst the vessel, "" where
// nothing speaks against it.
func sealedVerdict(vessel string, p carbonation.Package) string {
	switch {
	case p.OverRating:
		return "Do not: the " + vessel + " comes above its rating of {rating_kpa}. "
	case p.Tight:
		return "Do not: the beer all but fills the " + vessel + " as it warms, and then bursts it. "
	case isGlass(vessel) && p.OverCarbonated && p.Warm:
		return "Do not: beer with so much CO2, and so warm, can burst the glass. "
	case isGlass(vessel) && p.OverCarbonated:
		return "Do not: beer with so much CO2 can burst the glass. "
	case isGlass(vessel) && p.Warm:
		return "Do not let it get so warm: the glass can burst. "
	}
	return ""
}

// sealedCautions says what can hurt someone, the worst first.
func sealedCautions(vessel string, out *calc.Result, p carbonation.Package) {
	if p.OverRating {
		out.Caution("{gauge_kpa} is above the rating of {rating_kpa}, which binds.")
	}
	if p.Tight {
		out.Caution("The beer has grown to leave only {headspace_share} for gas. Once it fills the vessel nothing gives way and the vessel bursts: leave more headspace, at least {0.03 share}, our choice.")
	}
	if isGlass(vessel) && (p.OverCarbonated || p.Warm) {
		out.Caution("Above {2.7 volumes} or {25 c} (our choice of limits, no source) glass can burst and throw splinters." +
			" Do not close it so, do not let it warm; if it has warmed, cover it, leave it to cool and stay away.")
	}
	if vessel == "can" && (p.OverCarbonated || p.Warm) {
		out.Caution("A can bulges, leaks or bursts: keep it cold, and below the pressure its maker states.")
	}
	if vessel == "keg" {
		if p.Warm {
			out.Caution("A warm keg may stand above its rating: read the stamp, and see that its relief valve is there and free.")
		}
		out.Remark(carbonation.HighPressure(p.Gauge))
	}
	if p.Hot {
		out.Caution("A closed car in the sun gets as hot as this: never leave closed beer in one.")
	}
	if isGlass(vessel) {
		out.Caution("Growlers and most bottles carry no pressure rating: take the glass as unrated. Keep it full of cold beer," +
			" upright, out of sun and car, and never let beer ferment or prime in it.")
	}
}

func sealedNotes(in *calc.Values, out *calc.Result, p carbonation.Package) {
	if p.Hot {
		out.Note("Above {45 c} the solubility is that of Carroll, Slupsky and Mather 1991, within 3 %.")
	}
	if !in.Given("gas") {
		out.Note(map[bool]string{
			true:  "Taken as closed with air above the beer; --gas co2 otherwise.",
			false: "Taken as closed with CO2 at balance above the beer; --gas air otherwise.",
		}[isGlass(in.Text("vessel"))])
	}
	out.Note("The vessel is taken as rigid and at rest: after a change of temperature that takes hours, or a shake. Air in the headspace is taken as undissolved, on the safe side.")
}
