package catalog

import (
	"errors"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/thermal"
)

// iceBathAnswer leads with the part of the keg that the answer holds for.
func iceBathAnswer(key string, c thermal.Chilling) string {
	if !c.Layered {
		if key == "time_s" {
			return "The beer takes {time_s} to {temperature_c}, with {ice_left_kg} of ice left then."
		}
		return "After {time_s} the beer pours at {temperature_c}, with {ice_left_kg} of ice left."
	}
	const rest = " The beer above it is then at {upper_c}; mixed, all of it would be at {mixed_c}."
	if key == "time_s" {
		return "The lowest {covered_share} of the keg takes {time_s} to {temperature_c}, with {ice_left_kg} of ice left then." + rest
	}
	return "The lowest {covered_share} of the keg is at {temperature_c} after {time_s}, with {ice_left_kg} of ice left." + rest
}

// compareDry sets the same tub without its water beside the answer, and says
// why the water stays in.
func compareDry(out *calc.Result, key string, b thermal.IceBath, chill func(thermal.IceBath) (thermal.Chilling, error)) {
	const how, why = "With the water let off, the same ice", " Water touches the whole side of the keg, ice only parts of it:" +
		" keep it, and let off no more than makes room for new ice."
	dry, err := chill(b.Dry())
	switch {
	case err != nil:
		out.Note(doesNot(how, err) + why)
		return
	case key == "time_s":
		out.Put("without_water_time_s", dry.Time)
		out.Note(how + " takes {without_water_time_s}, or half to twice that." + why)
	default:
		out.Put("without_water_temperature_c", dry.Temperature)
		out.Note(how + " leaves the beer at {without_water_temperature_c}." + why)
	}
	out.Put("without_water_hold_time_s", dry.Hold)
}

// compareStirred says what stirring the same tub would do.
func compareStirred(out *calc.Result, key string, b thermal.IceBath, chill func(thermal.IceBath) (thermal.Chilling, error)) {
	if b.Stirred {
		return
	}
	b.Stirred = true
	const how = "Stirred every few minutes, the same tub"
	why := ": floating ice leaves the water below it near {4 c}."
	if b.Salt > 0 { // salt lowers that temperature
		why = "."
	}
	c, err := chill(b)
	switch {
	case err != nil:
		out.Note(doesNot(how, err))
	case key == "time_s":
		out.Put("stirred_time_s", c.Time)
		out.Note(how + " takes {stirred_time_s}" + why)
	default:
		out.Put("stirred_temperature_c", c.Temperature)
		out.Note(how + " has the beer at {stirred_temperature_c}" + why)
	}
}

// doesNot says why another tub has no answer.
func doesNot(how string, err error) string {
	if errors.Is(err, thermal.ErrNever) {
		return how + " does not get the beer there: " + whyNot(err) + "."
	}
	return how + " has no answer: " + whyNot(err) + "."
}
