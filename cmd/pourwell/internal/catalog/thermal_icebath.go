package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

var iceBath = calc.Calculation{
	Package: "thermal",
	Name:    "icebath",
	Summary: "kegs in a tub of ice and water: how fast they cool, how cold they stay, how long the ice lasts",
	Detail: "Give --to for the time, or --for for the state after a time. The beer below the water and the beer above" +
		" it are two temperatures; the tap draws from the bottom. Pours and top-ups are written AMOUNT:WHEN," +
		" such as --pour 4L/h:2h-7h, --pour 15L:2h-7h or --top-up 10lb:3h, and may be repeated; all kegs pour alike.",
	Examples: []string{
		"thermal icebath --keg 5gal --from 75F --to 40F --ice 60lb --water 15L --tub 65L --tub-height 60cm --air 86F",
		"thermal icebath --keg 5gal --kegs 2 --from 4C --for 6h --ice 20kg --water 20L --tub 120L --tub-height 45cm --air 31C --pour 30L:1h-6h --top-up 5kg:3h",
	},
	Inputs: []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "keg by name or volume", Limit: "thermal.IceBath.Vessel.Capacity"},
		{Name: "kegs", Kind: quantity.Count, Default: "1", Help: "kegs in the tub", Limit: "thermal.IceBath.Kegs"},
		{Name: "full", Kind: quantity.Share, Default: "100%", Help: "share of each keg that holds beer", Limit: "thermal.IceBath.Fill"},
		{Name: "from", Kind: quantity.Temperature, Help: "beer at the start", Limit: "thermal.IceBath.From"},
		{Name: "to", Kind: quantity.Temperature, Help: "beer at the end, to find the time", Limit: "thermal.IceBath.Reach.to"},
		{Name: "for", Kind: quantity.Time, Help: "time, to find the state", Limit: "thermal.IceBath.After.d"},
		{Name: "ice", Kind: quantity.Mass, Help: "ice at the start", Limit: "thermal.IceBath.Ice"},
		{Name: "ice-temp", Kind: quantity.Temperature, Default: "0C", Help: "ice at the start; -15C straight from a freezer", Limit: "thermal.IceBath.IceFrom"},
		{Name: "water", Kind: quantity.Volume, Help: "water at the start, 15L if not given; 0L for ice that keeps its melt water", Limit: "thermal.IceBath.Water"},
		{Name: "water-temp", Kind: quantity.Temperature, Default: "15C", Help: "water at the start", Limit: "thermal.IceBath.WaterFrom"},
		{Name: "salt", Kind: quantity.Share, Default: "0%", Help: "salt, by mass of the water at the start", Limit: "thermal.IceBath.Salt"},
		{Name: "drained", Kind: quantity.Switch, Help: "let the melt water run off: ice alone"},
		{Name: "stirred", Kind: quantity.Switch, Help: "stirred by hand every few minutes, or by a pump"},
		{Name: "tub", Kind: quantity.Volume, Default: "80L", Help: "tub, brimful without kegs", Limit: "volume.Tub.Capacity"},
		{Name: "tub-height", Kind: quantity.Length, Default: "45cm", Help: "tub, inside", Limit: "volume.Tub.Height"},
		{Name: "wall", Kind: quantity.Length, Default: "5mm", Help: "thickness of the tub's wall", Limit: "thermal.IceBath.Wall"},
		{Name: "foam", Kind: quantity.Switch, Help: "the wall is foam, as of an ice chest"},
		{Name: "lid", Kind: quantity.Switch, Help: "a lid or thick blanket over tub and kegs"},
		{Name: "ua", Kind: quantity.Conductance, Help: "measured heat per kelvin of the box, from thermal calibrate", Limit: "thermal.IceBath.UA"},
		{Name: "pour", Kind: quantity.Text, Repeat: true, Help: "flow or amount, and when: 4L/h:2h-7h"},
		{Name: "top-up", Kind: quantity.Text, Repeat: true, Help: "ice added, and when: 10lb:3h"},
		{Name: "bag", Kind: quantity.Mass, Help: "with --for: add the fewest bags of this size that keep the reserve, and the beer at --hold", Limit: "thermal.Upkeep.Bag"},
		{Name: "reserve", Kind: quantity.Share, Help: "with --bag: share of the first ice that is always left, 20% if not given", Limit: "thermal.Upkeep.Reserve"},
		{Name: "hold", Kind: quantity.Temperature, Help: "with --bag: warmest beer to be drawn", Limit: "thermal.Upkeep.Hold"},
		clearSkyInput,
	},
	Shared: []func() []calc.Input{bathSurroundings, calc.BeerInputs},
	Results: []calc.Key{
		{Key: "time_s", Label: "time"},
		{Key: "temperature_c", Label: "beer as poured"},
		{Key: "upper_c", Label: "beer above water or ice"},
		{Key: "mixed_c", Label: "beer if mixed"},
		{Key: "bath_c", Label: "water or ice beside the keg"},
		{Key: "ice_left_kg", Label: "ice left"},
		{Key: "ice_melted_kg", Label: "ice melted"},
		{Key: "hold_time_s", Label: "ice lasts, from the start"},
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA), a keg"},
		{Key: "depth_m", Label: "depth of the water"},
		{Key: "covered_share", Label: "keg covered by water or ice"},
		{Key: "floats_below_share", Label: "keg floats when less full than"},
		{Key: "bath_freezes_c", Label: "bath freezes at"},
		{Key: "beer_freezes_c", Label: "beer freezes at"},
		{Key: "around_c", Label: "air around the tub"},
		{Key: "sun_w_per_m2", Label: "sun on level ground there"},
		{Key: "top_ups", Label: "bags of ice to add"},
		{Key: "top_up_kg", Label: "ice to add"},
		{Key: "stirred_time_s", Label: "time if stirred"},
		{Key: "stirred_temperature_c", Label: "beer if stirred"},
		{Key: "without_water_time_s", Label: "time with ice alone"},
		{Key: "without_water_temperature_c", Label: "beer with ice alone"},
		{Key: "without_water_hold_time_s", Label: "ice alone lasts"},
	},
	Run: runIceBath,
}

func runIceBath(in *calc.Values, out *calc.Result) error {
	if err := in.Require("keg", "from", "ice", "air"); err != nil {
		return err
	}
	if err := in.Exactly(1, "to", "for"); err != nil {
		return err
	}
	bath, err := readIceBath(in)
	if err != nil {
		return err
	}
	if (in.Given("reserve") || in.Given("hold")) && !in.Given("bag") {
		return &calc.UsageError{What: "--reserve and --hold say when to add bags of ice", Hint: "add --bag, the size of one"}
	}
	if in.Given("bag") {
		if bath, err = keepCold(in, out, bath); err != nil {
			return err
		}
	}
	chill := func(b thermal.IceBath) (thermal.Chilling, error) { return b.After(in.Duration("for")) }
	key := "temperature_c"
	if in.Given("to") {
		chill = func(b thermal.IceBath) (thermal.Chilling, error) { return b.Reach(in.Temperature("to")) }
		key = "time_s"
	}
	c, err := chill(bath)
	if err != nil {
		return err
	}
	out.Answer = iceBathAnswer(key, c)
	out.Band(key, c.Band)
	setChilling(out, c)
	out.Put("beer_freezes_c", bath.Beer.FreezingPoint())
	setAround(out, bath.Around)
	out.Remark(c.Notes())
	if !bath.Drained {
		compareStirred(out, key, bath, chill)
		compareDry(out, key, bath, chill)
	}
	out.Remark(c.Cautions())
	return nil
}

// bathSurroundings are those of a tub, which frost does not reach.
func bathSurroundings() []calc.Input {
	all := surroundingInputs()
	all[0].Limit = "thermal.IceBath.Around.Air"
	return all
}

// keepCold adds the fewest top-ups and lists them.
func keepCold(in *calc.Values, out *calc.Result, b thermal.IceBath) (thermal.IceBath, error) {
	if !in.Given("for") {
		return b, &calc.UsageError{What: "--bag needs the time that the ice must last", Hint: "add --for"}
	}
	u := thermal.Upkeep{Bag: in.Mass("bag"), Reserve: thermal.UsualReserve}
	u.Reserve = in.Or("reserve", u.Reserve)
	if in.Given("hold") {
		u.Hold = in.Temperature("hold")
	}
	kept, err := b.KeptCold(in.Duration("for"), u)
	if err != nil {
		return b, err
	}
	ice := quantity.Kilograms(0)
	for _, t := range kept.TopUps[len(b.TopUps):] {
		ice += t.Ice
	}
	out.Put("top_ups", float64(ice/u.Bag))
	out.Put("top_up_kg", ice)
	rows := calc.Table{Key: "top_up_list", Columns: []string{"time_s", "ice_kg"}}
	for _, u := range kept.TopUps {
		rows.Add(u.At, u.Ice)
	}
	out.Table(rows)
	return kept, nil
}

func setChilling(out *calc.Result, c thermal.Chilling) {
	out.Put("time_s", c.Time)
	out.Put("temperature_c", c.Temperature)
	out.Put("upper_c", c.Upper)
	out.Put("mixed_c", c.Mixed)
	out.Put("bath_c", c.Bath)
	out.Put("ice_left_kg", c.IceLeft)
	out.Put("ice_melted_kg", c.IceMelted)
	out.Put("hold_time_s", c.Hold)
	out.Put("ua_w_per_k", c.UA)
	out.Put("depth_m", c.Depth)
	out.Put("covered_share", c.Covered)
	out.Put("floats_below_share", c.FloatsBelow)
	out.Put("bath_freezes_c", c.BathFreezes)
	out.Working(c.Steps)
	course := calc.Table{Key: "course", Columns: []string{"time_s", "temperature_c", "bath_c", "ice_kg"}, Curve: true}
	for _, s := range c.Course(25) {
		course.Add(s.At, s.Beer, s.Bath, s.Ice)
	}
	out.Table(course)
}
