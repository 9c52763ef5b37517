package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var taps = calc.Calculation{
	Package: "volume",
	Name:    "taps",
	Summary: "taps that keep the queue short, or the wait at the taps there are",
	Detail: "All taps are taken to pour the same beers; where each beer has a tap of its own, ask for each with those guests who drink it." +
		" A tap counts while somebody stands at it, a guest with --self-service. --guests are those who come to these taps; in the first half hour everybody" +
		" wants a first glass, which is shown apart.",
	Examples: []string{
		"volume taps --guests 100 --per-hour 2 --wait 60s",
		"volume taps --guests 60 --taps 2 --self-service",
	},
	Inputs: []calc.Input{
		{Name: "guests", Kind: quantity.Count, Help: "people who come to these taps", Limit: "volume.Bar.Guests"},
		{Name: "per-hour", Kind: quantity.Number, Default: "2", Help: "servings each asks for in an hour", Limit: "volume.Bar.PerHour"},
		{Name: "pour-time", Kind: quantity.Time, Default: "8s", Help: "to fill a glass", Limit: "volume.Bar.PourTime"},
		{Name: "change", Kind: quantity.Time, Default: "22s", Help: "between glasses", Limit: "volume.Bar.Change"},
		{Name: "wait", Kind: quantity.Time, Default: "60s", Help: "wait that guests accept", Limit: "volume.Bar.Wait"},
		{Name: "within", Kind: quantity.Share, Default: "90%", Help: "guests to be served within that wait", Limit: "volume.Bar.Within"},
		{Name: "taps", Kind: quantity.Count, Help: "taps in use, such as 2; the fewest that keep the wait if not given", Limit: "volume.Bar.Taps"},
		{Name: "rush", Kind: quantity.Number, Default: "1.3", Help: "rate in the first half hour over that of the hour", Limit: "volume.Bar.Rush"},
		{Name: "self-service", Kind: quantity.Switch, Help: "guests pour for themselves, half as long again"},
	},
	NoAir: true,
	Results: []calc.Key{
		{Key: "taps", Label: "taps"},
		{Key: "wait_mean_s", Label: "wait on average, at most"},
		{Key: "wait_least_s", Label: "if all pours take alike"},
		{Key: "wait_share", Label: "guests who wait at all"},
		{Key: "late_share", Label: "who wait longer than accepted"},
		{Key: "utilisation_share", Label: "time a tap is in use"},
		{Key: "first_half_hour_taps", Label: "taps for the first half hour"},
		{Key: "first_half_hour_wait_s", Label: "wait in it, on average"},
		{Key: "first_half_hour_backlog", Label: "guests waiting at its end"},
	},
	Run: runTaps,
}

func runTaps(in *calc.Values, out *calc.Result) error {
	if err := in.Require("guests"); err != nil {
		return err
	}
	b := volume.Bar{
		Guests: in.Count("guests"), PerHour: in.Number("per-hour"), PourTime: in.Duration("pour-time"), Change: in.Duration("change"),
		Wait: in.Duration("wait"), Within: in.Number("within"), Taps: in.Count("taps"), Rush: in.Number("rush"),
	}
	if in.On("self-service") {
		b = b.SelfService()
	}
	q, err := b.Queue()
	if err != nil {
		return err
	}
	served := "each with somebody at it"
	if in.On("self-service") {
		served = "at which guests pour for themselves"
	}
	out.Answer = "With {taps} " + plural(q.Taps, "tap") + ", " + served + ", {late_share} of the guests wait longer than {wait_s}, and all of them" +
		" {wait_mean_s} on average at most."
	out.Put("taps", q.Taps)
	out.Put("wait_mean_s", q.Mean)
	out.Put("wait_least_s", q.Least)
	out.Put("wait_share", q.Waits)
	out.Put("late_share", q.Late)
	out.Put("utilisation_share", q.Busy)
	out.Band("wait_mean_s", q.Band)
	out.Working(q.Steps)
	out.Remark(q.Notes())
	out.Put("first_half_hour_taps", q.RushTaps)
	if q.RushGrows {
		out.Put("first_half_hour_backlog", q.RushBacklog)
	} else {
		out.Put("first_half_hour_wait_s", q.RushMean)
	}
	return nil
}
