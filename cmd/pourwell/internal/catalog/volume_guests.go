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
		{Key: "cost_per_glass", Label: "cost of a glass drunk"},
		{Key: "expected", Label: "servings expected"},
	},
	Cautions: []string{
		"A count of servings says nothing about who may drive or has had enough. Offer water and food, serve nobody who is drunk" +
			" or under age, and plan how people get home. Local law and licence decide.",
	},
	Run: runGuests,
}

func crowdInputs() []calc.Input {
	return []calc.Input{
		{Name: "guests", Kind: quantity.Count, Help: "people who come", Limit: "volume: guests"},
		{Name: "for", Kind: quantity.Time, Help: "from the first pour to the last", Limit: "volume: duration"},
		{Name: "first-hour", Kind: quantity.Number, Default: "2", Help: "servings for each beer drinker in the first hour", Limit: "volume: servings in the first hour"},
		{Name: "later", Kind: quantity.Number, Default: "1", Help: "servings for each in every later hour", Limit: "volume: servings in each later hour"},
		{Name: "share", Kind: quantity.Share, Default: "50%", Help: "guests who drink beer", Limit: "volume: share who drink beer"},
		{Name: "weather", Kind: quantity.Number, Default: "1", Help: "factor on thirst, above 1 on a hot day", Limit: "volume: weather factor"},
		{Name: "spread", Kind: quantity.Share, Default: "50%", Help: "how much people differ: standard deviation over mean", Limit: "volume: spread between people"},
		{Name: "doubt", Kind: quantity.Share, Default: "10%", Help: "how sure the rates are, the same for all", Limit: "volume: doubt in the rates"},
		{Name: "confidence", Kind: quantity.Share, Default: "90%", Help: "chance that the beer lasts", Limit: "volume: confidence"},
		{Name: "kegs", Kind: quantity.Count, Help: "kegs on hand, such as 4; the fewest that suffice if not given", Limit: "volume: kegs on hand"},
		{Name: "price", Kind: quantity.Number, Help: "of a keg in any currency, such as 120; no cost of a glass if not given", Limit: "volume: price of a keg"},
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
	notePour(in, out, p)
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
	out.Set("pours_per_keg", float64(y.Pours))
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
	out.Set("kegs", float64(d.Kegs))
	out.Set("volume_l", float64(d.Volume/volume.Litre))
	out.Set("servings_expected", d.Expected)
	out.Set("servings_planned", float64(d.Planned))
	out.Set("run_out_probability", d.RunOut)
	out.Set("lasts_for_s", d.LastsFor.Seconds())
	out.Set("runs_out_at_s", d.RunsOutAt.Seconds())
	out.Set("leftover_l", float64(d.Leftover/volume.Litre))
	if d.GlassCost > 0 {
		out.Set("cost_per_glass", d.GlassCost)
	}
	setDemandCourse(out, d, in.Duration("for"))
	if need := d.KegsBand(); need.High == float64(d.Kegs) { // else they are those on hand, not those needed
		out.Band("kegs", d.KegsBand)
		out.Note("The kegs to bring are those of a thirsty crowd, the upper end of what the guests are likely to empty.")
	}
	out.Band("servings_expected", d.Band)
	out.Working(d.Steps)
	out.Note("Two servings in the first hour and one in each later hour, and half of the guests drinking beer, are common practice" +
		" without a source. The same practice brings 10 to 15 % more than the average. For a small party that is too little:" +
		" there it is chance who comes thirsty.")
}

// setDemandCourse adds how demand and the chance of having run out grow.
func setDemandCourse(out *calc.Result, d volume.Demand, whole time.Duration) {
	const parts = 8
	course := calc.Table{Key: "course", Columns: []string{"time_s", "expected", "run_out_probability"}, Curve: true}
	for i := range time.Duration(parts + 1) {
		t := whole * i / parts
		expected, runOut := d.At(t)
		course.Rows = append(course.Rows, []any{t.Seconds(), expected, runOut})
	}
	out.Table(course)
}
