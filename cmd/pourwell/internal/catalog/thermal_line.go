package catalog

import (
	"time"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

var warmingLine = calc.Calculation{
	Package: "thermal",
	Name:    "line",
	Summary: "a beer line in air: what it adds to flowing beer, and how fast standing beer warms",
	Detail: "Give --flow for beer that runs, or --standing for beer that waits in the line. Running beer hardly warms;" +
		" standing beer does, and foam delays it.",
	Examples: []string{
		"thermal line --length 10ft --inlet 38F --air 86F --standing 10min",
		"thermal line --length 6m --bore 7mm --wall 1.5mm --insulation 13mm --inlet 3C --air 30C --sun 800W/m2 --flow 3L/min",
	},
	Inputs: []calc.Input{
		{Name: "length", Kind: quantity.Length, Help: "of the line, such as 10ft or 3m", Limit: "thermal.Line.Length"},
		{Name: "bore", Kind: quantity.Length, Default: "3/16in", Help: "inside diameter", Limit: "thermal.Line.Bore"},
		{Name: "wall", Kind: quantity.Length, Default: "1/8in", Help: "thickness of the tube, plastic", Limit: "thermal.Line.Wall"},
		{Name: "insulation", Kind: quantity.Length, Default: "0mm", Help: "thickness of foam around it", Limit: "thermal.Line.Insulation"},
		{Name: "inlet", Kind: quantity.Temperature, Help: "beer as it enters, or at the start", Limit: "thermal.Line.Carry.inlet"},
		{Name: "flow", Kind: quantity.Flow, Help: "of beer that runs", Limit: "thermal.Line.Carry.flow"},
		{Name: "standing", Kind: quantity.Time, Help: "time that beer waits in the line", Limit: "thermal.Line.Stand.d"},
	},
	Shared: []func() []calc.Input{surroundingInputs, calc.BeerInputs},
	Results: []calc.Key{
		{Key: "outlet_c", Label: "leaves at"},
		{Key: "temperature_c", Label: "after standing"},
		{Key: "time_constant_s", Label: "two thirds of the way in"},
		{Key: "settles_c", Label: "settles at"},
		{Key: "heat_w", Label: "heat into the beer"},
		{Key: "holdup_l", Label: "beer in the line"},
		{Key: "ua_w_per_k", Label: "heat per kelvin (UA)"},
		{Key: "critical_radius_mm", Label: "critical radius of the outer layer"},
		{Key: "beer_c", Label: "beer"},
	},
	Run: runWarmingLine,
}

func runWarmingLine(in *calc.Values, out *calc.Result) error {
	if err := in.Require("length", "inlet", "air"); err != nil {
		return err
	}
	if err := in.Exactly(1, "flow", "standing"); err != nil {
		return err
	}
	l, err := readLine(in)
	if err != nil {
		return err
	}
	var r thermal.LineRun
	if in.Given("flow") {
		r, err = l.Carry(in.Temperature("inlet"), thermal.Flow(in.Number("flow")))
		out.Answer = "Running beer enters at {inlet_c} and leaves at {outlet_c}. What stands in the line comes two thirds of the way to {settles_c} in {time_constant_s}."
		out.Band("outlet_c", r.Band)
		out.Put("outlet_c", r.Temperature)
	} else {
		r, err = l.Stand(in.Temperature("inlet"), in.Duration("standing"))
		out.Answer = "After {standing_s} the beer in the line is at {temperature_c}: {holdup_l} of the next glass."
		out.Band("temperature_c", r.Band)
		out.Put("temperature_c", r.Temperature)
		setCourse(out, in.Duration("standing"), r.Course(11))
	}
	if err != nil {
		return err
	}
	setLine(out, r)
	out.Remark(r.Notes())
	return nil
}

func readLine(in *calc.Values) (thermal.Line, error) {
	around, err := surroundings(in)
	if err != nil {
		return thermal.Line{}, err
	}
	l := thermal.DefaultLine(around)
	l.Length, l.Bore, l.Wall, l.Insulation = in.Length("length"), in.Length("bore"), in.Length("wall"), in.Length("insulation")
	l.Beer, err = in.Beer()
	return l, err
}

// setCourse sets the beer's temperature over a time, if it takes any.
func setCourse(out *calc.Result, whole time.Duration, samples []thermal.Sample) {
	if whole == 0 {
		return
	}
	course := calc.Table{Key: "course", Columns: []string{"time_s", "beer_c"}, Curve: true}
	for _, s := range samples {
		course.Add(s.At, s.Beer)
	}
	out.Table(course)
}

func setLine(out *calc.Result, r thermal.LineRun) {
	out.Put("time_constant_s", r.TimeConstant)
	out.Put("settles_c", r.Settles)
	out.Put("heat_w", r.Heat)
	out.Put("holdup_l", r.HoldUp)
	out.Put("ua_w_per_k", r.UA)
	out.Put("critical_radius_mm", r.CriticalRadius)
	out.Working(r.Steps)
}
