package catalog

import (
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var guests = calc.Calculation{
	Package: "volume",
	Name:    "guests",
	Summary: "servings and kegs for a party, and how likely the beer runs out",
	Detail: "Guests decide, so the answer is a chance. Several beers: --beer \"Pale:60%\" --beer \"Wheat:40%:2\" (name, share," +
		" kegs on hand). Several sizes of keg for one beer: --stock us-half:2 --stock us-sixth:4 (name or size, kegs on hand).",
	Examples: []string{
		"volume guests --guests 60 --for 5h --keg us-sixth --glass us-pint",
		"volume guests --guests 200 --for 4h --confidence 95% --beer \"Pale:60%\" --beer \"Wheat:40%\"",
	},
	Shared: []func() []calc.Input{crowdInputs, pourInputs},
	NoAir:  true,
	Results: []calc.Key{
		{Key: "kegs", Label: "kegs"},
		{Key: "volume_l", Label: "beer in them"},
		{Key: "servings_expected", Label: "servings expected"},
		{Key: "servings_planned", Label: "servings at the confidence"},
		{Key: "pours_per_keg", Label: "pours a keg"},
		{Key: "run_out_probability", Label: "chance of running out"},
		{Key: "lasts_for_s", Label: "lasts with that confidence"},
		{Key: "runs_out_at_s", Label: "if it runs out, after about"},
		{Key: "leftover_l", Label: "beer left, on average"},
		{Key: "cost_per_glass", Label: "cost of a serving drunk"},
		{Key: "expected", Label: "servings expected"},
	},
	Run: runGuests,
}

func crowdInputs() []calc.Input {
	return []calc.Input{
		{Name: "guests", Kind: quantity.Count, Help: "people who come", Limit: "volume.Crowd.Guests"},
		{Name: "for", Kind: quantity.Time, Help: "from the first pour to the last", Limit: "volume.Crowd.Duration"},
		{Name: "first-hour", Kind: quantity.Number, Default: "2", Help: "servings for each beer drinker in the first hour", Limit: "volume.Crowd.FirstHour"},
		{Name: "later", Kind: quantity.Number, Default: "1", Help: "servings for each in every later hour", Limit: "volume.Crowd.Later"},
		{Name: "share", Kind: quantity.Share, Default: "50%", Help: "guests who drink beer", Limit: "volume.Crowd.Share"},
		{Name: "weather", Kind: quantity.Number, Default: "1", Help: "factor on thirst, above 1 on a hot day", Limit: "volume.Crowd.Weather"},
		{Name: "spread", Kind: quantity.Share, Default: "50%", Help: "how much people differ: standard deviation over mean", Limit: "volume.Crowd.Spread"},
		{Name: "doubt", Kind: quantity.Share, Default: "10%", Help: "how sure the rates are, the same for all", Limit: "volume.Crowd.Doubt"},
		{Name: "confidence", Kind: quantity.Share, Default: "90%", Help: "chance that the beer lasts", Limit: "volume.Crowd.Confidence"},
		{Name: "kegs", Kind: quantity.Count, Help: "kegs on hand, such as 4; the fewest that suffice if not given", Limit: "volume.Choice.Kegs"},
		{Name: "price", Kind: quantity.Number, Help: "of a keg in any currency, such as 120; no cost of a glass if not given", Limit: "volume.Choice.Price"},
		{Name: "beer", Kind: quantity.Text, Repeat: true, Help: `one of several, as "Pale:60%" or "Pale:60%:2"`},
		{Name: "stock", Kind: quantity.Text, Repeat: true, Help: "kegs of several sizes to choose from, as us-half:2 or us-half:2:90 with a price"},
	}
}

func runGuests(in *calc.Values, out *calc.Result) error {
	if err := in.Require("guests", "for"); err != nil {
		return err
	}
	p, err := readKegPour(in)
	if err != nil {
		return err
	}
	noteHead(in, out, p)
	c := readCrowd(in)
	switch {
	case in.Given("beer") && in.Given("stock"):
		return &calc.UsageError{What: "--beer and --stock are given, one plan has one of them", Hint: "drop --stock"}
	case in.Given("beer"):
		return planBeers(in, out, c, p)
	case in.Given("stock"):
		return planStock(in, out, c, p)
	}
	y, err := p.PerKeg()
	if err != nil {
		return err
	}
	all, err := c.Menu([]volume.Choice{{Share: 1, Keg: y, Kegs: in.Count("kegs"), Price: in.Or("price", 0)}})
	if err != nil {
		return err
	}
	setDemand(in, out, all[0])
	out.Put("pours_per_keg", y.Pours)
	return nil
}

func readCrowd(in *calc.Values) volume.Crowd {
	return volume.Crowd{
		Guests: in.Count("guests"), Duration: in.Duration("for"),
		FirstHour: in.Number("first-hour"), Later: in.Number("later"), Share: in.Number("share"), Weather: in.Number("weather"),
		Spread: in.Number("spread"), Doubt: in.Number("doubt"), Confidence: in.Number("confidence"),
	}
}

// setDemand sets the answer for one beer.
func setDemand(in *calc.Values, out *calc.Result, d volume.Demand) {
	kegs := "{kegs} " + plural(d.Kegs, "keg")
	switch {
	case d.LastsFor < in.Duration("for"):
		out.Answer = kegs + " will not do for {servings_planned} servings: the beer runs out with a chance of" +
			" {run_out_probability}, and lasts {lasts_for_s} with the confidence asked."
	case in.Given("kegs"):
		out.Answer = kegs + " will do for {servings_planned} servings. The beer runs out with a chance of {run_out_probability}."
	default:
		out.Answer = "Bring " + kegs + " for {servings_planned} servings; {servings_expected} are expected." +
			" The beer runs out with a chance of {run_out_probability}."
	}
	out.Put("kegs", d.Kegs)
	out.Put("volume_l", d.Volume)
	out.Put("servings_expected", d.Expected)
	out.Put("servings_planned", d.Planned)
	out.Put("run_out_probability", d.RunOut)
	out.Put("lasts_for_s", d.LastsFor)
	out.Put("runs_out_at_s", d.RunsOutAt)
	out.Put("leftover_l", d.Leftover)
	if d.GlassCost > 0 {
		out.Put("cost_per_glass", d.GlassCost)
	}
	setDemandCourse(out, d, in.Duration("for"))
	if need := d.KegsBand(); need.High == float64(d.Kegs) { // else they are those on hand, not those needed
		out.Band("kegs", d.KegsBand)
	}
	out.Band("servings_expected", d.Band)
	out.Working(d.Steps)
	out.Remark(d.Cautions())
	out.Remark(d.Notes())
}

// setDemandCourse adds how demand and the chance of having run out grow.
func setDemandCourse(out *calc.Result, d volume.Demand, whole time.Duration) {
	const parts = 8
	course := calc.Table{Key: "course", Columns: []string{"time_s", "expected", "run_out_probability"}, Curve: true}
	for i := range time.Duration(parts + 1) {
		t := whole * i / parts
		expected, runOut := d.At(t)
		course.Add(t, expected, runOut)
	}
	out.Table(course)
}
