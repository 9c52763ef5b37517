package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var fit = calc.Calculation{
	Package: "volume",
	Name:    "fit",
	Summary: "kegs in a tub: the ice and water it takes, what they cover, what floats, what is too heavy",
	Detail: "The tub is filled with ice to a twentieth below its brim or to the tops of the kegs, then with water until the ice is" +
		" about to float. The level stays while the ice melts.",
	Examples: []string{
		"volume fit --tub 80L --tub-height 45cm --keg 5gal --kegs 1",
		"volume fit --tub 32gal --tub-height 20in --keg us-sixth --kegs 2",
	},
	Inputs: []calc.Input{
		{Name: "tub", Kind: quantity.Volume, Help: "size of the tub, to the brim, such as 32gal or 80L", Limit: "volume.Tub.Capacity"},
		{Name: "tub-height", Kind: quantity.Length, Default: "45cm", Help: "height of the tub, inside", Limit: "volume.Tub.Height"},
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Default: "us-sixth", Help: "the keg, by name or size", Limit: "volume.Vessel.Capacity"},
		{Name: "kegs", Kind: quantity.Count, Default: "1", Help: "kegs standing upright in the tub", Limit: "volume.Tub.Fit.kegs"},
		{Name: "packing", Kind: quantity.Share, Default: "60%", Help: "space that the pieces of ice fill", Limit: "volume.Tub.Fit.packing"},
	},
	NoAir: true,
	Results: []calc.Key{
		{Key: "ice_kg", Label: "ice"},
		{Key: "water_l", Label: "water"},
		{Key: "level_m", Label: "depth of the water"},
		{Key: "covered_share", Label: "keg covered by water"},
		{Key: "floats_below_share", Label: "keg floats when less full than"},
		{Key: "lift_kg", Label: "a full keg weighs"},
		{Key: "together_kg", Label: "all of it together"},
		{Key: "floor_share", Label: "of the floor under kegs"},
		{Key: "lift", Label: "to lift a keg takes"},
	},
	Run: runFit,
}

func runFit(in *calc.Values, out *calc.Result) error {
	if err := in.Require("tub"); err != nil {
		return err
	}
	tub := volume.Tub{Capacity: in.Volume("tub"), Height: in.Length("tub-height")}
	f, err := tub.Fit(in.Vessel("keg"), in.Count("kegs"), in.Number("packing"))
	if err != nil {
		return err
	}
	out.Answer = "The tub takes {ice_kg} of ice and {water_l} of water, which stands {covered_share} of a keg high."
	if f.Floats > 0 {
		out.Answer += " A keg less than {floats_below_share} full floats."
	} else {
		out.Answer += " No keg floats, even empty."
	}
	setFit(out, f)
	out.Band("ice_kg", f.Band)
	out.Working(f.Steps)
	out.Remark(f.Cautions())
	out.Remark(f.Notes())
	return nil
}

func setFit(out *calc.Result, f volume.Fit) {
	out.Put("ice_kg", f.Ice)
	out.Put("water_l", f.Water)
	out.Put("level_m", f.Level)
	out.Put("covered_share", f.Covered)
	out.Put("floats_below_share", f.Floats)
	out.Put("lift_kg", f.Lift)
	out.Put("together_kg", f.Together)
	out.Put("floor_share", f.Feet)
	out.SetText("lift", map[bool]string{false: "one person", true: "two people or a trolley"}[f.TwoLift])
}
