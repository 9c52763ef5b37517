package catalog

import (
	"errors"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

var taps = calc.Calculation{
	Package: "volume",
	Name:    "taps",
	Summary: "taps that keep the queue short, or the wait at the taps there are",
	Detail: "All taps are taken to pour the same beers; where each beer has a tap of its own, ask for each with those guests who drink it." +
		" A tap counts while somebody stands at it. --guests are those who come to these taps; in the first half hour everybody" +
		" wants a first glass, which is shown apart.",
	Examples: []string{
		"volume taps --guests 100 --per-hour 2 --wait 60s",
		"volume taps --guests 60 --taps 2 --self-service",
	},
	Inputs: []calc.Input{
		{Name: "guests", Kind: quantity.Count, Help: "people who come to these taps", Limit: "volume: guests"},
		{Name: "per-hour", Kind: quantity.Number, Default: "2", Help: "servings each asks for in an hour", Limit: "volume: servings an hour"},
		{Name: "pour-time", Kind: quantity.Time, Default: "8s", Help: "to fill a glass", Limit: "volume: pour time or change"},
		{Name: "change", Kind: quantity.Time, Default: "22s", Help: "between glasses", Limit: "volume: pour time or change"},
		{Name: "wait", Kind: quantity.Time, Default: "60s", Help: "wait that guests accept", Limit: "volume: wait"},
		{Name: "within", Kind: quantity.Share, Default: "90%", Help: "guests to be served within that wait", Limit: "volume: share served within the wait"},
		{Name: "taps", Kind: quantity.Count, Help: "taps in use, such as 2; the fewest that keep the wait if not given", Limit: "volume: taps"},
		{Name: "rush", Kind: quantity.Number, Default: "1.3", Help: "rate in the first half hour over that of the hour", Limit: "volume: rush of the first half hour"},
		{Name: "self-service", Kind: quantity.Switch, Help: "guests pour for themselves, half as long again"},
	},
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
	out.Answer = "With {taps} " + plural(q.Taps, "tap") + ", each with somebody at it, {late_share} of the guests wait longer than {wait_s}, and all of them" +
		" {wait_mean_s} on average at most."
	out.Set("taps", float64(q.Taps))
	out.Set("wait_mean_s", q.Mean.Seconds())
	out.Set("wait_least_s", q.Least.Seconds())
	out.Set("wait_share", q.Waits)
	out.Set("late_share", q.Late)
	out.Set("utilisation_share", q.Busy)
	out.Band("wait_mean_s", q.Band)
	out.Working(q.Steps)
	out.Note("Common practice counts 60 to 90 drinks an hour for each server, or a server for 75 guests, without a source.")
	return setRush(out, q)
}

// setRush sets the first half hour: the taps that would keep the wait, and what
// the taps of the steady hour make of it.
func setRush(out *calc.Result, q volume.Queue) error {
	b := q.Bar.FirstHalfHour()
	b.Taps = 0
	first, err := b.Queue()
	if err != nil {
		return err
	}
	out.Set("first_half_hour_taps", float64(first.Taps))
	b.Taps = q.Taps
	rush, err := b.Queue()
	if errors.Is(err, volume.ErrNever) {
		out.Set("first_half_hour_backlog", b.Backlog(q.Taps, 30*time.Minute))
		out.Note("In the first half hour more guests come than can be served: about {first_half_hour_backlog} are waiting at its end." +
			" Open {first_half_hour_taps} then, or pour ahead.")
		return nil
	}
	if err != nil {
		return err
	}
	out.Set("first_half_hour_wait_s", rush.Mean.Seconds())
	if first.Taps > q.Taps {
		out.Note("The first half hour takes {first_half_hour_taps} taps to keep the wait. With {taps} the queue would settle at" +
			" {first_half_hour_wait_s}, for which half an hour is too short; it clears when the rush is over.")
	}
	return nil
}
