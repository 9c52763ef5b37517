package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var airPump = calc.Calculation{
	Package: "carbonation",
	Name:    "airpump",
	Summary: "what a hand pump does to a keg: pressure lost a glass, oxygen, CO2, and how long it is worth drinking",
	Detail: "A hand pump pushes with air. The pressure sags with every glass until it is pumped up again, which foams and flattens" +
		" the beer; the oxygen of the air stales it within the day.",
	Examples: []string{
		"carbonation airpump --keg half-barrel --temp 38F --co2 2.5vol --gauge 12psi",
		"carbonation airpump --keg 30L --temp 6C --co2 5g/L --gauge 1bar --full 30% --for 8h --motion carried",
	},
	Inputs: []calc.Input{
		{Name: "keg", Kind: quantity.Volume, Named: "vessel", Default: "us-half", Help: "the keg", Limit: "carbonation.AirPump.Keg.Capacity"},
		{Name: "temp", Kind: quantity.Temperature, Help: "beer temperature", Limit: "carbonation.AirPump.Temperature"},
		{Name: "co2", Kind: quantity.Content, Default: "2.5vol", Help: "CO2 of the beer when tapped", Limit: "carbonation.AirPump.Content"},
		{Name: "gauge", Kind: quantity.Gauge, Default: "10psi", Help: "gauge pressure it is pumped to", Limit: "carbonation.AirPump.Gauge"},
		{Name: "full", Kind: quantity.Share, Default: "50%", Help: "share of the keg that is beer", Limit: "carbonation.AirPump.Full"},
		{Name: "for", Kind: quantity.Time, Default: "6h", Help: "time since the pump was put on", Limit: "carbonation.AirPump.After.elapsed"},
		{Name: "motion", Kind: quantity.Text, Default: "still", Choices: []string{"still", "carried"}, Help: "whether the keg stands or is carried about"},
		{Name: "glass", Kind: quantity.Volume, Named: "glass", Default: "16oz", Help: "beer drawn for one glass", Limit: "carbonation.AirPump.Glass"},
		{Name: "stroke", Kind: quantity.Volume, Default: "0.3L", Help: "air that one stroke of the pump takes in", Limit: "carbonation.AirPump.Stroke"},
	},
	Shared: []func() []calc.Input{calc.BeerInputs},
	Results: []calc.Key{
		{Key: "time_to_stale_s", Label: "past the oxygen of packaged beer after"},
		{Key: "oxygen_mg_per_l", Label: "oxygen dissolved by the end"},
		{Key: "oxygen_saturation_mg_per_l", Label: "oxygen it tends to"},
		{Key: "sag_kpa_per_glass", Label: "pressure lost"},
		{Key: "strokes", Label: "strokes a glass"},
		{Key: "balance_kpa", Label: "foams in the keg below"},
		{Key: "co2_volumes", Label: "CO2 left in the end"},
	},
	Run: runAirPump,
}

func runAirPump(in *calc.Values, out *calc.Result) error {
	if err := in.Require("temp"); err != nil {
		return err
	}
	d, err := in.Draught()
	if err != nil {
		return err
	}
	a := d.AirPump(in.Vessel("keg"), in.Temperature("temp"), in.Content("co2"))
	a.Gauge, a.Full, a.Glass, a.Stroke = in.Gauge("gauge"), in.Number("full"), in.Glass("glass").Volume, in.Volume("stroke")
	a.Carried = in.Text("motion") == "carried"
	p, err := a.After(in.Duration("for"))
	if err != nil {
		return err
	}
	out.Answer = "Drink it within 8 to 12 hours of tapping: that is common practice, for it goes stale and flat by and by." +
		" The pressure falls by {sag_kpa_per_glass}; {strokes} strokes of the pump make it good." +
		" The oxygen passes what packaged beer may hold after {time_to_stale_s}."
	out.Put("time_to_stale_s", p.Stale)
	out.Set("oxygen_mg_per_l", p.Oxygen)
	out.Set("oxygen_saturation_mg_per_l", p.OxygenSaturation)
	out.Put("sag_kpa_per_glass", p.Sag)
	out.Put("strokes", p.Strokes)
	out.Put("balance_kpa", p.Balance)
	out.Put("co2_volumes", p.Content)
	out.Working(p.Steps)
	out.Band("oxygen_mg_per_l", p.Band)
	out.Remark(p.Notes())
	out.Remark(p.Cautions())
	return nil
}
