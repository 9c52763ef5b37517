package catalog

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

var room = calc.Calculation{
	Package: "carbonation",
	Name:    "room",
	Summary: "CO2 and oxygen in a closed room after a whole cylinder has emptied into it",
	Detail: "Well mixed, as much air leaving through gaps as gas comes in. The floor, a pit or a cooler is worse. The answer is" +
		" never a permission to do without ventilation and a detector.",
	Examples: []string{
		"carbonation room --cylinder 5lb --room 20m3",
		"carbonation room --cylinder 10kg --room 1500ft3",
	},
	Inputs: []calc.Input{
		{Name: "cylinder", Kind: quantity.Mass, Help: "CO2 in the full cylinder", Limit: "carbonation.Supply.Charge"},
		{Name: "room", Kind: quantity.Volume, Help: "volume of the room, tent, cellar or cooler, such as 20m3 or 700ft3", Limit: "carbonation.Supply.IntoRoom.room"},
	},
	Results: []calc.Key{
		{Key: "co2_share", Label: "CO2 in the air, well mixed"},
		{Key: "floor_co2_share", Label: "  at the floor, up to"},
		{Key: "oxygen_share", Label: "oxygen in the air, well mixed"},
		{Key: "room_needed_m3", Label: "room that keeps it under 0.5 %"},
		{Key: "room_needed_15min_m3", Label: "room that keeps it under 3 %"},
		{Key: "gas_m3", Label: "gas let out"},
	},
	Run: runRoom,
}

func runRoom(in *calc.Values, out *calc.Result) error {
	if err := in.Require("cylinder", "room"); err != nil {
		return err
	}
	air, err := in.Air()
	if err != nil {
		return err
	}
	s := carbonation.Supply{Air: air, Charge: in.Mass("cylinder")}
	r, err := s.IntoRoom(in.Volume("room"))
	if err != nil {
		return err
	}
	out.Answer = "If the whole cylinder empties, the air of the room holds {co2_share} of CO2, well mixed, and {oxygen_share} of oxygen. " + string(r.Verdict())
	out.Put("co2_share", r.CO2Share)
	out.Put("floor_co2_share", r.Band().High) // no spread about the answer, but another place
	out.Put("oxygen_share", r.OxygenShare)
	out.Put("room_needed_m3", r.For8h)
	out.Put("room_needed_15min_m3", r.For15min)
	out.Put("gas_m3", r.Gas)
	out.Working(r.Steps)
	out.Remark(r.Notes())
	out.Remark(r.Cautions())
	return nil
}
