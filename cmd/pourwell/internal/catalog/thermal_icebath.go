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
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Help: "keg by name or volume"},
		{Name: "kegs", Kind: quantity.Count, Default: "1", Help: "kegs in the tub", Limit: "thermal: kegs in a tub"},
		{Name: "full", Kind: quantity.Share, Default: "100%", Help: "share of each keg that holds beer", Limit: "thermal: fill"},
		{Name: "from", Kind: quantity.Temperature, Help: "beer at the start"},
		{Name: "to", Kind: quantity.Temperature, Help: "beer at the end, to find the time"},
		{Name: "for", Kind: quantity.Time, Help: "time, to find the state", Limit: "thermal: time"},
		{Name: "ice", Kind: quantity.Mass, Help: "ice at the start"},
		{Name: "ice-temp", Kind: quantity.Temperature, Default: "0C", Help: "ice at the start; -15C straight from a freezer", Limit: "thermal: ice temperature"},
		{Name: "water", Kind: quantity.Volume, Help: "water at the start, 15L if not given; 0L for ice that keeps its melt water"},
		{Name: "water-temp", Kind: quantity.Temperature, Default: "15C", Help: "water at the start", Limit: "thermal: water temperature"},
		{Name: "salt", Kind: quantity.Share, Default: "0%", Help: "salt, by mass of the water at the start", Limit: "thermal: salt in the water"},
		{Name: "drained", Kind: quantity.Switch, Help: "let the melt water run off: ice alone"},
		{Name: "stirred", Kind: quantity.Switch, Help: "stirred by hand every few minutes, or by a pump"},
		{Name: "tub", Kind: quantity.Volume, Default: "80L", Help: "tub, brimful without kegs", Limit: "volume: capacity of the tub"},
		{Name: "tub-height", Kind: quantity.Length, Default: "45cm", Help: "tub, inside", Limit: "volume: height of the tub"},
		{Name: "wall", Kind: quantity.Length, Default: "5mm", Help: "thickness of the tub's wall", Limit: "thermal: tub wall"},
		{Name: "foam", Kind: quantity.Switch, Help: "the wall is foam, as of an ice chest"},
		{Name: "lid", Kind: quantity.Switch, Help: "a lid or thick blanket over tub and kegs"},
		{Name: "ua", Kind: quantity.Conductance, Help: "measured heat per kelvin of the box, from thermal calibrate"},
		{Name: "pour", Kind: quantity.Text, Repeat: true, Help: "flow or amount, and when: 4L/h:2h-7h"},
		{Name: "top-up", Kind: quantity.Text, Repeat: true, Help: "ice added, and when: 10lb:3h"},
		{Name: "bag", Kind: quantity.Mass, Help: "with --for: add the fewest bags of this size that keep the reserve, and the beer at --hold", Limit: "thermal.Upkeep.Bag"},
		{Name: "reserve", Kind: quantity.Share, Help: "with --bag: share of the first ice that is always left, 20% if not given", Limit: "thermal.Upkeep.Reserve"},
		{Name: "hold", Kind: quantity.Temperature, Help: "with --bag: warmest beer to be drawn", Limit: "thermal: beer temperature"},
		clearSkyInput,
	},
	Shared: []func() []calc.Input{surroundingInputs, calc.BeerInputs},
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
		{Key: "covered_share", Label: "keg in water or ice"},
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
	Cautions: []string{
		"Ice and water that kegs have stood in are not for drinks or food.",
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
	out.Answer = iceBathAnswer(key, bath, c)
	out.Band(key, c.Band)
	setChilling(out, c)
	out.Set("beer_freezes_c", bath.Beer.FreezingPoint().Celsius())
	setAround(out, bath.Around)
	iceBathRemarks(out, bath, c)
	if !bath.Drained {
		compareStirred(out, key, bath, chill)
		compareDry(out, key, bath, chill)
	}
	return nil
}

// keepCold adds the fewest top-ups and lists them.
func keepCold(in *calc.Values, out *calc.Result, b thermal.IceBath) (thermal.IceBath, error) {
	if !in.Given("for") {
		return b, &calc.UsageError{What: "--bag needs the time that the ice must last", Hint: "add --for"}
	}
	u := thermal.DefaultUpkeep(in.Mass("bag"))
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
		rows.Rows = append(rows.Rows, []any{u.At.Seconds(), float64(u.Ice)})
	}
	out.Table(rows)
	return kept, nil
}

func setChilling(out *calc.Result, c thermal.Chilling) {
	out.Set("time_s", c.Time.Seconds())
	out.Set("temperature_c", c.Temperature.Celsius())
	out.Set("upper_c", c.Upper.Celsius())
	out.Set("mixed_c", c.Mixed.Celsius())
	out.Set("bath_c", c.Bath.Celsius())
	out.Set("ice_left_kg", float64(c.IceLeft))
	out.Set("ice_melted_kg", float64(c.IceMelted))
	out.Set("hold_time_s", c.Hold.Seconds())
	out.Set("ua_w_per_k", float64(c.UA))
	out.Set("depth_m", float64(c.Depth))
	out.Set("covered_share", c.Covered)
	out.Set("floats_below_share", c.FloatsBelow)
	out.Set("bath_freezes_c", c.BathFreezes.Celsius())
	out.Working(c.Steps)
	course := calc.Table{Key: "course", Columns: []string{"time_s", "temperature_c", "bath_c", "ice_kg"}, Curve: true}
	for _, s := range c.Course(25) {
		course.Rows = append(course.Rows, []any{s.At.Seconds(), s.Beer.Celsius(), s.Bath.Celsius(), float64(s.Ice)})
	}
	out.Table(course)
}

// compareDry sets the same tub without its water beside the answer, and says
// why the water stays in.
func compareDry(out *calc.Result, key string, b thermal.IceBath, chill func(thermal.IceBath) (thermal.Chilling, error)) {
	const why = " Water touches the whole side of the keg, ice only parts of it: keep it, and let off no more than makes room for new ice."
	dry, err := chill(b.Dry())
	switch {
	case err != nil:
		out.Note("With the water let off, the same ice does not get the beer there." + why)
		return
	case key == "time_s":
		out.Set("without_water_time_s", dry.Time.Seconds())
		out.Note("With the water let off, the same ice takes {without_water_time_s}, or half to twice that." + why)
	default:
		out.Set("without_water_temperature_c", dry.Temperature.Celsius())
		out.Note("With the water let off, the same ice leaves the beer at {without_water_temperature_c}." + why)
	}
	out.Set("without_water_hold_time_s", dry.Hold.Seconds())
}

// compareStirred says what stirring the same tub would do.
func compareStirred(out *calc.Result, key string, b thermal.IceBath, chill func(thermal.IceBath) (thermal.Chilling, error)) {
	if b.Stirred {
		return
	}
	b.Stirred = true
	c, err := chill(b)
	switch {
	case err != nil:
		return
	case key == "time_s":
		out.Set("stirred_time_s", c.Time.Seconds())
		out.Note("Stirred every few minutes, the same tub takes {stirred_time_s}: floating ice leaves the water below it near {4 c}.")
	default:
		out.Set("stirred_temperature_c", c.Temperature.Celsius())
		out.Note("Stirred every few minutes, the same tub has the beer at {stirred_temperature_c}: floating ice leaves the water below it near {4 c}.")
	}
}

// iceBathRemarks says what to do about what was found.
func iceBathRemarks(out *calc.Result, b thermal.IceBath, c thermal.Chilling) {
	if shallow(b, c) {
		out.Note("Only {covered_share} of the keg stands in " + whatCools(b) + ". The beer above it stays on top of the cold and pours last, as it sinks." +
			tubTakes(b) + " Keep the top of the keg covered.")
	}
	lateRemarks(out, b, c)
	if c.FloatsBelow > 0 {
		out.Note("A keg less than {floats_below_share} full floats and tips in this depth: weigh it down or let water off.")
	}
	if b.Around.Sun > 0 && !b.Lid {
		out.Note("The tub stands in sun of {sun_w_per_m2}: shade and a lid save ice.")
	}
	if b.Salt > 0 {
		out.Note("The salted bath freezes at {bath_freezes_c}, and less cold as ice melts into it.")
	}
	if c.FreezesBeer {
		out.Caution("The bath can get to {bath_freezes_c}, and this beer freezes at {beer_freezes_c}. Beer standing in a line or coil in it freezes and blocks it, and a" +
			" frozen keg can burst its fittings: use less salt.")
	}
}
