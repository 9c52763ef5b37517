package catalog

import (
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/thermal"
)

// Shares of the beer below the bath: under enoughCovered the rest is worth a
// warning. Cubes from a bag fill bagged of the space (usual, no source).
const (
	enoughCovered = 0.8
	bagged        = 0.6
)

// shallow reports whether so much of the beer stands out of the bath that the
// answer is not that of the keg.
func shallow(b thermal.IceBath, c thermal.Chilling) bool {
	return c.Covered < enoughCovered*b.Fill || c.Upper.Sub(c.Temperature) > 4*thermal.KelvinStep
}

// iceBathAnswer leads with the part of the keg that the answer holds for.
func iceBathAnswer(key string, b thermal.IceBath, c thermal.Chilling) string {
	if !shallow(b, c) {
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

// whatCools names what stands around the kegs.
func whatCools(b thermal.IceBath) string {
	if b.Drained {
		return "the ice"
	}
	return "the water"
}

// tubTakes says what fills the tub, and whether that is enough.
func tubTakes(b thermal.IceBath) string {
	f, err := b.Tub.Fit(b.Vessel, b.Kegs, bagged)
	if err != nil {
		return ""
	}
	take := fmt.Sprintf(" Filled around the kegs this tub takes {%.4g kg} of ice and {%.4g l} of water", float64(f.Ice), 1e3*float64(f.Water))
	covered := f.Covered
	if b.Drained {
		take = fmt.Sprintf(" Filled around the kegs this tub takes {%.4g kg} of ice", float64(f.Ice))
		covered = min(float64(f.Top/b.Vessel.Height), 1)
	}
	if covered < enoughCovered*b.Fill {
		return fmt.Sprintf("%s, and even that covers only %.0f %%: use a deeper tub.", take, 100*covered)
	}
	return fmt.Sprintf("%s, and covers %.0f %%: fill it, or use a narrower tub.", take, 100*covered)
}

// lateRemarks tells of top-ups and pours that come after the end.
func lateRemarks(out *calc.Result, b thermal.IceBath, c thermal.Chilling) {
	late := 0
	for _, u := range b.TopUps {
		if u.At > c.Time {
			late++
		}
	}
	if late > 0 {
		out.Note("A top-up after {time_s} comes too late for this answer: only the time that the ice lasts counts it.")
	}
	for _, p := range b.Pours {
		if p.End > c.Time {
			out.Note("A pour that runs past {time_s} counts in this answer only as far as it has run by then; the time that the ice lasts counts all of it.")
			return
		}
	}
}
