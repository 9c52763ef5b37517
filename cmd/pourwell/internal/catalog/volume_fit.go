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
		{Name: "tub", Kind: quantity.Volume, Help: "size of the tub, to the brim, such as 32gal or 80L", Limit: "volume: capacity of the tub"},
		{Name: "tub-height", Kind: quantity.Length, Default: "45cm", Help: "height of the tub, inside", Limit: "volume: height of the tub"},
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Default: "us-sixth", Help: "the keg, by name or size"},
		{Name: "kegs", Kind: quantity.Count, Default: "1", Help: "kegs standing upright in the tub", Limit: "volume: kegs in the tub"},
		{Name: "packing", Kind: quantity.Share, Default: "60%", Help: "space that the pieces of ice fill", Limit: "volume: packing of the ice"},
	},
	Results: []calc.Key{
		{Key: "ice_kg", Label: "ice"},
		{Key: "water_l", Label: "water"},
		{Key: "level_m", Label: "level of the water"},
		{Key: "covered_share", Label: "of a keg's height under water"},
		{Key: "floats_below_share", Label: "a keg floats below this fill"},
		{Key: "lift_kg", Label: "a full keg weighs"},
		{Key: "together_kg", Label: "all of it together"},
		{Key: "floor_share", Label: "of the floor under kegs"},
		{Key: "lift", Label: "to lift a keg takes"},
	},
	Cautions: []string{
		"A full tub is not to be moved: fill it where it will stand, on level ground, away from cables and sockets. Melt water and" +
			" electricity do not mix.",
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
		out.Answer += " A keg less than {floats_below_share} full floats and tips: weigh it down or let water out."
	} else {
		out.Answer += " No keg floats, even empty."
	}
	setFit(out, f)
	out.Band("ice_kg", f.Band)
	out.Working(f.Steps)
	out.Note("Size and weight of the keg: " + f.Keg.Source + ". Measure yours where it matters.")
	if f.TwoLift {
		out.Caution("A full keg weighs {lift_kg}: more than one person should lift. Two people, or a trolley and a ramp; over the rim of a" +
			" tub even less is safe.")
	}
	if f.Tight {
		out.Note("The kegs take {floor_share} of the floor: whether they stand side by side depends on the shape of the tub. Try before the day.")
	}
	return nil
}

func setFit(out *calc.Result, f volume.Fit) {
	out.Set("ice_kg", float64(f.Ice))
	out.Set("water_l", float64(f.Water/volume.Litre))
	out.Set("level_m", float64(f.Level))
	out.Set("covered_share", f.Covered)
	out.Set("floats_below_share", f.Floats)
	out.Set("lift_kg", float64(f.Lift))
	out.Set("together_kg", float64(f.Together))
	out.Set("floor_share", f.Feet)
	out.SetText("lift", map[bool]string{false: "one person", true: "two people or a trolley"}[f.TwoLift])
}
