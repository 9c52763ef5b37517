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
		{Name: "cylinder", Kind: quantity.Mass, Help: "CO2 in the full cylinder", Limit: "carbonation: cylinder charge"},
		{Name: "room", Kind: quantity.Volume, Help: "volume of the room, tent, cellar or cooler, such as 20m3 or 700ft3", Limit: "carbonation: room"},
	},
	Results: []calc.Key{
		{Key: "co2_share", Label: "CO2 in the air, well mixed"},
		{Key: "floor_co2_share", Label: "  at the floor, up to"},
		{Key: "oxygen_share", Label: "oxygen in the air, well mixed"},
		{Key: "room_needed_m3", Label: "room that keeps it under 0.5 %"},
		{Key: "room_needed_15min_m3", Label: "room that keeps it under 3 %"},
		{Key: "gas_m3", Label: "gas let out"},
	},
	Cautions: []string{
		"Limits in the air people breathe: {0.005 share} over 8 h (OSHA, ACGIH), {0.03 share} over 15 min (ACGIH), {0.04 share}" +
			" immediately dangerous to life or health (NIOSH).",
		"This is never a permission to do without ventilation and a CO2 detector at floor level with its alarm outside; local code and the" +
			" supplier's rules come first.",
		"CO2 is heavier than air and collects at the floor, in cellars, pits and coolers, far above the figure here. If an alarm sounds or someone" +
			" is down, do not go in: get out, call for help, air the place from outside.",
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
	out.Answer = "If the whole cylinder empties, the air of the room holds {co2_share} of CO2, well mixed, and {oxygen_share} of oxygen. " + roomVerdict(r)
	out.Set("co2_share", r.CO2Share)
	out.Set("floor_co2_share", r.Band().High) // no spread about the answer, but another place
	out.Set("oxygen_share", r.OxygenShare)
	out.Set("room_needed_m3", float64(r.For8h))
	out.Set("room_needed_15min_m3", float64(r.For15min))
	out.Set("gas_m3", float64(r.Gas))
	out.Working(r.Steps)
	out.Note("Well mixed is the best that can happen. Before it mixes the gas lies near the floor, where it can be nearly pure.")
	return nil
}

func roomVerdict(r carbonation.RoomAir) string {
	switch {
	case r.Dangerous:
		return "That is immediately dangerous to life."
	case r.Over15min:
		return "That is above the limit for 15 minutes: nobody may stay."
	case r.Over8h:
		return "That is above the limit for a working day."
	}
	return "That is below the limit for a working day where it mixes; at the floor it can be far above."
}
