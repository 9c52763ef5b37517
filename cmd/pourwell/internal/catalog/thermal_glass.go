package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

var warmGlass = calc.Calculation{
	Package: "thermal",
	Name:    "glass",
	Summary: "a glass: what a warm one does to cold beer, and how the beer warms after",
	Detail: "Beer and glass meet at one temperature; then air, dew and sun warm them. A warm heavy glass often costs" +
		" more than line and tap together.",
	Examples: []string{
		"thermal glass --glass us-pint --glass-temp 86F --beer-temp 38F --air 86F --for 10min",
		"thermal glass --glass 0.5L --glass-mass 420g --beer-temp 4C --air 30C --sun 800W/m2 --for 15min",
	},
	Inputs: []calc.Input{
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "us-pint", Help: "glass by name or volume", Limit: "volume.Glass.Volume"},
		{Name: "fill", Kind: quantity.Share, Default: "90%", Help: "share of the glass that holds beer, the rest head", Limit: "thermal.Glassful.Filled.share"},
		{Name: "glass-mass", Kind: quantity.Mass, Help: "empty; that of the glass named if not given", Limit: "thermal.Glassful.Glass.Mass"},
		{Name: "glass-temp", Kind: quantity.Temperature, Help: "before the pour; as warm as the air if not given", Limit: "thermal.Glassful.From"},
		{Name: "beer-temp", Kind: quantity.Temperature, Help: "at the tap", Limit: "thermal.Glassful.Pour.beer"},
		{Name: "for", Kind: quantity.Time, Default: "10min", Help: "time that the beer waits", Limit: "thermal.Glassful.Pour.wait"},
	},
	Shared: []func() []calc.Input{surroundingInputs, calc.BeerInputs},
	Results: []calc.Key{
		{Key: "temperature_c", Label: "beer once in the glass"},
		{Key: "glass_cost_k", Label: "  of it from the glass"},
		{Key: "after_c", Label: "after the wait"},
		{Key: "settles_c", Label: "settles at"},
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA)"},
		{Key: "glass_mass_kg", Label: "glass, empty"},
		{Key: "beer_c", Label: "beer"},
	},
	Run: runWarmGlass,
}

func runWarmGlass(in *calc.Values, out *calc.Result) error {
	if err := in.Require("beer-temp", "air"); err != nil {
		return err
	}
	g, err := readGlassful(in)
	if err != nil {
		return err
	}
	r, err := g.Pour(in.Temperature("beer-temp"), in.Duration("for"))
	if err != nil {
		return err
	}
	out.Answer = "The glass takes the beer from {beer_temp_c} to {temperature_c}; after {for_s} it is at {after_c}."
	out.Band("temperature_c", r.Band)
	out.Band("after_c", r.AfterBand)
	out.Put("temperature_c", r.Temperature)
	out.Put("glass_cost_k", r.GlassCost)
	out.Put("after_c", r.After)
	out.Put("settles_c", r.Settles)
	out.Put("ua_w_per_k", r.UA)
	out.Put("glass_mass_kg", g.Glass.Mass)
	out.Working(r.Steps)
	setCourse(out, in.Duration("for"), r.Course(11))
	if !in.Given("glass-temp") {
		out.Note("The glass is taken to be as warm as the air; in the sun it is warmer.")
	}
	out.Remark(r.Notes())
	out.Remark(r.Cautions())
	return nil
}

func readGlassful(in *calc.Values) (thermal.Glassful, error) {
	around, err := surroundings(in)
	if err != nil {
		return thermal.Glassful{}, err
	}
	g := thermal.DefaultGlassful(in.Glass("glass"), around)
	g = g.Filled(in.Number("fill"))
	if in.Given("glass-mass") {
		g.Glass.Mass = in.Mass("glass-mass")
	}
	if in.Given("glass-temp") {
		g.From = in.Temperature("glass-temp")
	}
	g.Beer, err = in.Beer()
	return g, err
}
