package catalog

import (
	"errors"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var pours = calc.Calculation{
	Package: "volume",
	Name:    "pours",
	Summary: "whole pours that a keg gives, and the beer in each under its head",
	Detail: "Growlers count as glasses: --glass growler --head 5%. --all lists every glass that is known by name. With --light" +
		" it says what to think of the glass for this beer.",
	Examples: []string{
		"volume pours --keg us-sixth --glass us-pint --head 1in",
		"volume pours --keg 50L --glass uk-pint --head 5% --line 3/16in:5ft --light sun",
	},
	Shared: []func() []calc.Input{pourInputs, drinkInputs},
	NoAir:  true,
	Results: []calc.Key{
		{Key: "pours", Label: "whole pours"},
		{Key: "liquid_per_pour_l", Label: "beer in each"},
		{Key: "lost_l", Label: "lost to heel, line and waste"},
		{Key: "rest_l", Label: "left over, less than a pour"},
		{Key: "us_drinks", Label: "US standard drinks in each"},
		{Key: "uk_units", Label: "UK units in each"},
		{Key: "au_drinks", Label: "Australian standard drinks"},
	},
	Run: runPours,
}

// drinkInputs are what pours asks for beyond [pourInputs], behind them.
func drinkInputs() []calc.Input {
	return []calc.Input{
		{Name: "all", Kind: quantity.Switch, Help: "list every glass known by name"},
		{Name: "abv", Kind: quantity.Share, Default: "5%", Key: "abv_share", Help: "alcohol by volume", Limit: "volume.Yield.Drinks.abv"},
		{Name: "light", Kind: quantity.Text, Choices: []string{"sun", "shade", "lamps", "dark"}, Help: "what falls on the glass; gives advice on it"},
	}
}

func runPours(in *calc.Values, out *calc.Result) error {
	p, err := readKegPour(in)
	if err != nil {
		return err
	}
	y, err := p.PerKeg()
	if err != nil {
		return err
	}
	d, err := y.Drinks(in.Number("abv"))
	if err != nil {
		return err
	}
	out.Answer = "The keg gives {pours} " + plural(y.Pours, "pour") + " with {liquid_per_pour_l} of beer in each."
	out.Put("pours", y.Pours)
	out.Put("liquid_per_pour_l", y.Liquid)
	out.Put("lost_l", y.Lost)
	out.Put("rest_l", y.Rest)
	out.Put("us_drinks", d.US)
	out.Put("uk_units", d.UK)
	out.Put("au_drinks", d.AU)
	out.Band("pours", y.Band)
	out.Working(y.Steps)
	out.Remark(y.Cautions())
	out.Remark(d.Cautions())
	noteHead(in, out, p)
	if in.On("all") {
		if err := listGlasses(out, p); err != nil {
			return err
		}
	}
	return adviseGlass(in, out, p.Glass)
}

// listGlasses adds what the keg gives in every glass known by name, and says
// which are left out because the head would be more foam than beer.
func listGlasses(out *calc.Result, p volume.Pour) error {
	var tooSmall []string
	table := calc.Table{Key: "glasses", Columns: []string{"glass", "glass_l", "pours", "liquid_l"}}
	for _, p.Glass = range volume.Glasses() {
		y, err := p.PerKeg()
		var wrong *volume.RangeError
		switch {
		case err == nil:
			table.Add(p.Glass.Name, p.Glass.Volume, y.Pours, y.Liquid)
		case errors.As(err, &wrong): // the keg and the losses have been answered for already
			tooSmall = append(tooSmall, p.Glass.Name)
		default:
			return err
		}
	}
	out.Table(table)
	if len(tooSmall) > 0 {
		out.Note("Left out, for the head would be more foam than beer: " + strings.Join(tooSmall, ", ") + ".")
	}
	return nil
}

// adviseGlass adds what to think of the glass, if the light is given.
func adviseGlass(in *calc.Values, out *calc.Result, g volume.Glass) error {
	light, ok := map[string]volume.Light{
		"sun": volume.Sun, "shade": volume.Shade, "lamps": volume.Lamps, "dark": volume.Darkness,
	}[in.Text("light")]
	if !ok {
		return nil
	}
	notes, err := g.Notes(in.Number("abv"), light)
	out.Remark(notes)
	return err
}
