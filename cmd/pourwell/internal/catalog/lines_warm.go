package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/lines"
)

// bathInputs are those of a warm keg through a coil: [servingInputs] without the
// defaults that a plain flow would list as assumed.
func bathInputs() []calc.Input {
	inputs := servingInputs()
	for i := range inputs {
		inputs[i].Default = ""
	}
	return inputs
}

// runWarm answers lines flow for a warm keg through a coil in a bath.
func runWarm(in *calc.Values, out *calc.Result, run lines.Run) error {
	if err := in.Require("co2"); err != nil {
		return err
	}
	if !coiled(run) {
		return &calc.UsageError{
			What: "--bath needs a coiled tube",
			Hint: "for example --tube 1/4in-od:50ft:wall0.7mm:coil8in:stainless",
		}
	}
	s, err := readServing(in)
	if err != nil {
		return err
	}
	w, err := run.Warm(s)
	if err != nil {
		return err
	}
	out.Answer = "From a keg at {temp_c} the tap pours {flow_l_per_min} at {outlet_c}: a glass of {glass_l} in {pour_time_s}."
	setPour(in, out, w.Pour)
	out.Put("outlet_c", w.Outlet)
	out.Put("needed_gauge_kpa", w.Needed)
	out.Put("choker_m", w.Choker)
	setTubes(in, out, w.Pour)
	out.Band("flow_l_per_min", w.Band)
	out.Working(w.Steps)
	out.Remark(w.Cautions())
	out.Remark(w.Pour.Notes())
	out.Remark(w.Notes())
	out.Note("For glasses with pauses between them see thermal coil.")
	return nil
}

func coiled(run lines.Run) bool {
	for _, t := range run.Tubes {
		if t.Coil > 0 {
			return true
		}
	}
	return false
}
