package catalog

import (
	"fmt"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
)

var profile = calc.Calculation{
	Package: "lines",
	Name:    "profile",
	Summary: "pressure, temperature and gas along the line, and how long a standing line keeps its gas",
	Detail: "In every healthy line there is no pressure to spare near the tap, for a fraction of a second, and nothing" +
		" comes of it. Flowing beer is judged against the same run cold and balanced; standing beer by the temperature at" +
		" which crevices let go of bubbles, the number behind a first glass of foam.",
	Examples: []string{
		"lines profile --tube 3/16in:5ft:vinyl --rise 1ft --gauge 12psi --co2 2.57vol --air 86F",
		"lines profile --tube 7mm:3m --tube 4mm:1.5m --gauge 0.9bar --co2 5g/L --temp 4C --line-temp 9C",
	},
	Inputs: []calc.Input{
		gaugeInput,
		{Name: "stations", Kind: quantity.Count, Default: "12", Help: "places along the line to list", Limit: "lines.Run.Profile.n"},
		creviceInput,
	},
	Shared: []func() []calc.Input{runInputs, calc.BeerInputs, servingInputs},
	Results: []calc.Key{
		{Key: "flow_l_per_min", Label: "flow"},
		{Key: "outlet_c", Label: "beer at the tap"},
		{Key: "exposure", Label: "pull on the gas"},
		{Key: "exposure_balanced", Label: "  in a line cold and balanced"},
		{Key: "excess_kpa", Label: "pressure lacking beyond that"},
		{Key: "threshold_kpa", Label: "  gas comes out above"},
		{Key: "breakout_temperature_c", Label: "standing beer foams above"},
		{Key: "standing_limit_s", Label: "  the line gets there in"},
		{Key: "settles_c", Label: "  and comes to at last"},
		{Key: "holdup_l", Label: "beer in the line"},
		{Key: "standing_limits", Label: "a standing line lasts, bare or in foam, in shade or full sun"},
		{Key: "lasts_s", Label: "for"},
		{Key: "position_m", Label: "from the keg"},
		{Key: "pressure_kpa", Label: "pressure"},
		{Key: "temperature_c", Label: "temperature"},
		{Key: "equilibrium_kpa", Label: "needed for the gas"},
		{Key: "margin_kpa", Label: "to spare"},
	},
	Run: runProfile,
}

func runProfile(in *calc.Values, out *calc.Result) error {
	run, s, err := readProfile(in, out)
	if err != nil {
		return err
	}
	p, err := run.Profile(s, in.Count("stations"))
	if err != nil {
		return err
	}
	st, err := run.Stand(s)
	if err != nil {
		return err
	}
	setProfile(out, p)
	setStanding(out, s, st)
	out.Answer = profileAnswer(p, s, st)
	out.Working(p.Steps)
	out.Working(st.Steps)
	if s.Around.Air.IsValid() && st.HoldUp > 0 {
		setLimits(out, run, s)
	}
	out.Remark(p.Cautions())
	return nil
}

func readProfile(in *calc.Values, out *calc.Result) (lines.Run, lines.Serving, error) {
	if err := in.Require("gauge", "co2"); err != nil {
		return lines.Run{}, lines.Serving{}, err
	}
	run, err := readRun(in, out)
	if err != nil {
		return run, lines.Serving{}, err
	}
	if err = needLengths(in, run); err != nil {
		return run, lines.Serving{}, err
	}
	s, err := readServing(in)
	return run, s, err
}

func profileAnswer(p lines.Profile, s lines.Serving, st lines.Standing) string {
	answer := "The flowing beer keeps its gas."
	if p.GasComesOut {
		answer = "Gas comes out of the flowing beer: {excess_kpa} more than in a balanced line are lacking to hold it."
	}
	switch {
	case st.HoldUp == 0:
		answer += " There is no line for it to stand in."
	case st.Never && !s.Around.Air.IsValid():
		answer += " Standing in the line it foams above {breakout_temperature_c}; give --air for how soon."
	case st.Never:
		answer += " Standing in the line it never gets to {breakout_temperature_c}, where it would foam."
	case st.TooCold:
		answer += " Standing in the line it foams from the start, however cold the line is kept: the pressure is too low for its gas."
	case st.Limit == 0:
		answer += " Standing in the line it foams from the start: it would have to be below {breakout_temperature_c}."
	default:
		answer += " Standing in the line it foams above {breakout_temperature_c}, which it gets to in {standing_limit_s}."
	}
	return answer
}

func setProfile(out *calc.Result, p lines.Profile) {
	out.Put("flow_l_per_min", p.Pour.Flow)
	out.Put("outlet_c", p.Outlet)
	out.Put("exposure", p.Exposure/1e3) // kPa s
	out.Put("exposure_balanced", p.Balanced/1e3)
	out.Put("excess_kpa", p.Excess)
	out.Put("threshold_kpa", p.Threshold)
	out.Band("excess_kpa", p.Band)
	t := calc.Table{
		Key: "stations", Curve: true,
		Columns: []string{"position_m", "pressure_kpa", "temperature_c", "equilibrium_kpa", "margin_kpa"},
	}
	for _, x := range p.Stations {
		t.Add(x.Position, x.Gauge, x.Temperature, x.Equilibrium, x.Margin)
	}
	out.Table(t)
	out.Remark(p.Notes())
}

func setStanding(out *calc.Result, s lines.Serving, st lines.Standing) {
	out.Put("breakout_temperature_c", st.Breakout)
	if !st.Never {
		out.Put("standing_limit_s", st.Limit)
	}
	if s.Around.Air.IsValid() {
		out.Put("settles_c", st.Settles)
	}
	out.Put("holdup_l", st.HoldUp)
	out.Band("breakout_temperature_c", st.Band)
	out.Remark(st.Notes())
}

// setLimits lists how long the line lasts bare and in foam, in shade and sun.
func setLimits(out *calc.Result, run lines.Run, s lines.Serving) {
	const foam, sun = 0.0127, 800 // m, W/m²
	t := calc.Table{Key: "standing_limits", Columns: []string{"line", "lasts_s"}}
	for _, c := range []struct {
		name string
		foam float64
		sun  thermal.Irradiance
	}{
		{"bare, shade", 0, 0},
		{"foam, shade", foam, 0},
		{"bare, sun", 0, sun},
		{"foam, sun", foam, sun},
	} {
		v := s
		v.Around.Sun = c.sun
		assign(&v.Insulation, c.foam)
		st, err := run.Stand(v)
		switch {
		case err != nil:
			out.Note("How long the line lasts " + c.name + " is not known: " + whyNot(err) + ".")
		case st.Never:
			t.Add(c.name, "for ever")
		default:
			t.Add(c.name, st.Limit)
		}
	}
	out.Table(t)
	out.Note(fmt.Sprintf("Foam is taken to be {%v m} thick and the sun to give {%v w_per_m2}.", foam, sun))
}
