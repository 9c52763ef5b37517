package catalog

import (
	"fmt"

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
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "us-pint", Help: "glass by name or volume"},
		{Name: "fill", Kind: quantity.Share, Default: "90%", Help: "share of the glass that holds beer, the rest head", Limit: "thermal: fill of the glass"},
		{Name: "glass-mass", Kind: quantity.Mass, Help: "empty; that of the glass named if not given", Limit: "thermal: mass of the glass"},
		{Name: "glass-temp", Kind: quantity.Temperature, Help: "before the pour; as warm as the air if not given", Limit: "thermal: air temperature"},
		{Name: "beer-temp", Kind: quantity.Temperature, Help: "at the tap", Limit: "thermal: beer temperature"},
		{Name: "for", Kind: quantity.Time, Default: "10min", Help: "time that the beer waits", Limit: "thermal: wait"},
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
	out.Set("temperature_c", r.Temperature.Celsius())
	out.Set("glass_cost_k", float64(r.GlassCost))
	out.Set("after_c", r.After.Celsius())
	out.Set("settles_c", r.Settles.Celsius())
	out.Set("ua_w_per_k", float64(r.UA))
	out.Set("glass_mass_kg", float64(g.Glass.Mass))
	out.Working(r.Steps)
	setCourse(out, in.Duration("for"), r.Course(11))
	return glassRemarks(in, out, g, r)
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

// glassRemarks compares with a rinsed glass where the glass costs much.
func glassRemarks(in *calc.Values, out *calc.Result, g thermal.Glassful, r thermal.GlassRun) error {
	if !in.Given("glass-temp") {
		out.Note("The glass is taken to be as warm as the air; in the sun it is warmer.")
	}
	if b := r.Band(); b.High-b.Low > float64(thermal.KelvinStep)/10 {
		out.Note("The band lies to one side: at {temperature_c} all of the glass has come to the beer's temperature, at the other end" +
			" {0.3 share} of it, its foot and rim, has not when the beer is drunk.")
	}
	if r.GlassCost > thermal.KelvinStep {
		g.From = thermal.Celsius(10)
		rinsed, err := g.Pour(in.Temperature("beer-temp"), in.Duration("for"))
		if err != nil {
			return err
		}
		out.Note(fmt.Sprintf("Rinsed with water of {10 c} just before, the same glass gives {%.4g c} and after {for_s} {%.4g c}. Thin cups cost least.",
			rinsed.Temperature.Celsius(), rinsed.After.Celsius()))
	}
	if in.Number("sun") > 0 {
		out.Note(fmt.Sprintf("Glass and beer are assumed to absorb {%.4g share} of the sunshine on them.", g.Solar))
		out.Note("Sunlight also spoils the taste of hopped beer within minutes (common practice, no source): serve in the shade.")
	}
	return nil
}
