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
	NoAir: true,
	Inputs: []calc.Input{
		{Name: "tube", Kind: quantity.Text, Repeat: true, Help: "a line to clean, as 3/16in:5ft"},
		{Name: "coil", Kind: quantity.Text, Repeat: true, Help: "a coil or plate passage to clean, as 5/16in-od:50ft:wall0.7mm"},
	},
	Results: []calc.Key{
		{Key: "fill_volume_l", Label: "lines and coils hold"},
		{Key: "solution_l", Label: "cleaner for the tubes"},
		{Key: "rinse_volume_l", Label: "water to rinse the tubes"},
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
	out.Answer = "For the tubes alone mix {solution_l} of cleaner, and {rinse_volume_l} of water rinse them. Coupler, tap, bucket and gloves need more."
	out.Put("fill_volume_l", c.Fill)
	out.Put("solution_l", c.Solution)
	out.Put("rinse_volume_l", c.Rinse)
	out.Put("contact_time_s", c.Contact)
	out.Put("moving_time_s", c.Moving)
	out.Band("fill_volume_l", c.Band)
	out.Working(c.Steps)
	out.Remark(c.Cautions())
	out.Remark(c.Notes())
	return nil
}
