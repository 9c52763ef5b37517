package catalog

import (
	"fmt"

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
	out.Set("outlet_c", w.Outlet.Celsius())
	out.Set("needed_gauge_kpa", w.Needed.KPa())
	out.Set("choker_m", float64(w.Choker))
	setTubes(in, out, w.Pour)
	out.Band("flow_l_per_min", w.Band)
	out.Working(w.Steps)
	for _, c := range w.Cautions(0) {
		out.Caution(c)
	}
	warmRemarks(out, w)
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

func warmRemarks(out *calc.Result, w lines.Warm) {
	out.Note(fmt.Sprintf("The gas in the warm keg needs {needed_gauge_kpa}; as cold as it leaves the tap the beer would need {%.5g kpa}."+
		" A keg cooled beforehand needs less pressure, less coil and less ice.", w.ColdOnly.KPa()))
	if w.Pour.Gauge.Pascals() < 0.95*w.Needed.Pascals() {
		out.Note("At the pressure that is set the gas leaves the warm beer in the keg.")
	}
	if w.Choker > 0 {
		out.Note("Add {choker_m} of tube like the last to slow the pour to 2 oz/s, or close a flow-control tap a little.")
	}
	out.Note("This is beer that flows without a pause. The first glasses are colder, since the coil holds cold beer: see thermal coil.")
}
