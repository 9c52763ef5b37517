package catalog

import (
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
)

var clean = calc.Calculation{
	Package: "lines",
	Name:    "clean",
	Summary: "how much cleaner and rinse water the lines and coils take",
	Detail: "Push the beer out with water, fill with cleaner and let it stand, push it out with water until test paper shows" +
		" none, and let the line drain.",
	Examples: []string{
		"lines clean --tube 3/16in:5ft --tube 3/16in:5ft --coil 5/16in-od:50ft:wall0.7mm",
		"lines clean --tube 7mm:10m --units metric",
	},
	Inputs: []calc.Input{
		{Name: "tube", Kind: quantity.Text, Repeat: true, Help: "a line to clean, as 3/16in:5ft"},
		{Name: "coil", Kind: quantity.Text, Repeat: true, Help: "a coil or plate passage to clean, as 5/16in-od:50ft:wall0.7mm"},
	},
	Results: []calc.Key{
		{Key: "fill_volume_l", Label: "lines and coils hold"},
		{Key: "solution_l", Label: "cleaner to mix"},
		{Key: "rinse_volume_l", Label: "water to rinse with"},
		{Key: "contact_time_s", Label: "cleaner stands for"},
		{Key: "moving_time_s", Label: "  or is pumped round for"},
	},
	Run: runClean,
}

func runClean(in *calc.Values, out *calc.Result) error {
	run := lines.Run{}
	for _, name := range []string{"tube", "coil"} {
		tubes, err := readTubes(in, name)
		if err != nil {
			return err
		}
		run.Tubes = append(run.Tubes, tubes...)
	}
	if len(run.Tubes) == 0 {
		return &calc.UsageError{What: "lines clean needs --tube or --coil", Hint: "for example --tube 3/16in:5ft"}
	}
	if run.Open() != -1 {
		return &calc.UsageError{What: "lines clean needs the length of every tube", Hint: "for example --tube 3/16in:5ft"}
	}
	c, err := run.Clean()
	if err != nil {
		return err
	}
	out.Answer = "Mix {solution_l} of cleaner and have {rinse_volume_l} of water ready."
	out.Set("fill_volume_l", float64(c.Fill)*1e3)
	out.Set("solution_l", float64(c.Solution)*1e3)
	out.Set("rinse_volume_l", float64(c.Rinse)*1e3)
	out.Set("contact_time_s", c.Contact.Seconds())
	out.Set("moving_time_s", c.Moving.Seconds())
	out.Band("fill_volume_l", c.Band)
	out.Working(c.Steps)
	for _, caution := range c.Cautions() {
		out.Caution(caution)
	}
	out.Note("Amounts and contact times are common practice; the label of the cleaner goes first. Rinse the lines the same day they were used: beer left in them is harder to remove.")
	return nil
}
