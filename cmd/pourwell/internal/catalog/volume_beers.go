package catalog

import (
	"errors"
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// planBeers plans several beers by share, each with its own chance of running
// out.
func planBeers(in *calc.Values, out *calc.Result, c volume.Crowd, p volume.Pour) error {
	y, err := p.PerKeg()
	if err != nil {
		return err
	}
	var beers []volume.Choice
	for _, text := range in.Texts("beer") {
		b, err := y.ReadBeer(text)
		if err != nil {
			return usage("beer", err)
		}
		b.Price = in.Or("price", 0)
		beers = append(beers, b)
	}
	all, err := c.Menu(beers)
	if err != nil {
		return err
	}
	total := all[0]
	for _, d := range all[1:] {
		total = total.Plus(d)
	}
	setDemand(in, out, total)
	listBeers(out, all)
	return nil
}

func listBeers(out *calc.Result, all []volume.Demand) {
	table := calc.Table{Key: "beers", Columns: []string{"beer", "expected", "planned", "kegs", "run_out_probability", "lasts_for_s"}}
	for _, d := range all {
		table.Add(d.Choice.Name, d.Expected, d.Planned, d.Kegs, d.RunOut, d.LastsFor)
	}
	out.Table(table)
}

// planStock plans one beer from kegs of several sizes.
func planStock(in *calc.Values, out *calc.Result, c volume.Crowd, p volume.Pour) error {
	var stock []volume.Choice
	for _, text := range in.Texts("stock") {
		s, err := p.ReadStock(text)
		if err != nil {
			return usage("stock", err)
		}
		stock = append(stock, s)
	}
	d, err := c.Mix(stock)
	if err != nil {
		return err
	}
	setDemand(in, out, d)
	table := calc.Table{Key: "chosen", Columns: []string{"keg", "kegs", "pours_per_keg"}}
	for _, m := range d.Mix {
		table.Add(m.Name, m.Kegs, m.Keg.Pours)
	}
	out.Table(table)
	return nil
}

// usage makes text that is misread a mistake of usage.
func usage(name string, err error) error {
	var wrong *quantity.Error
	if errors.As(err, &wrong) {
		return &calc.UsageError{What: fmt.Sprintf("--%s: %q %s", name, wrong.Text, wrong.What), Hint: wrong.Hint}
	}
	return err
}
