package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"syscall"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/cmd/pourwell/internal/draw"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/cmd/pourwell/internal/sweep"
	"example.com/pourwell/internal/quantity"
)

// Exit codes, explained by "pourwell help exit".
const (
	exitDone       = 0
	exitUnexpected = 1
	exitUsage      = 2
	exitNoAnswer   = 3 // out of range, no solution, or never
)

// A console is where the command reads and writes.
type console struct {
	in       io.Reader
	out, err io.Writer
}

// run is the whole command: it responds to args and returns the exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	err := respond(args, console{stdin, stdout, stderr})
	if err == nil || errors.Is(err, syscall.EPIPE) || errors.Is(err, io.ErrClosedPipe) {
		return exitDone
	}
	return fail(stderr, args, err)
}

// respond does what args ask for.
func respond(args []string, con console) error {
	if complete(con.out, args) {
		return nil
	}
	if topics, asked := helpAsked(args); asked {
		return help(con.out, topics)
	}
	if slices.Contains(args, "--version") {
		_, err := fmt.Fprintln(con.out, version())
		return err
	}
	if err := checkCommand(args); err != nil {
		return err
	}
	k, r, err := parser(args)
	if err != nil {
		return err
	}
	ctx, err := k.Parse(args)
	if err != nil {
		return misread(args, err)
	}
	if err := checkGlobals(ctx); err != nil {
		return err
	}
	units, err := unitsOf(ctx, r.Units)
	if err != nil {
		return err
	}
	opt := report.Options{Units: units, Explain: r.Explain, ASCII: !utf8Locale(), SafeCells: r.Literal}
	if r.Literal && r.Format != "csv" {
		return &calc.UsageError{What: "--literal goes with --format csv", Hint: "add --format csv, or leave --literal out"}
	}
	path := strings.Fields(ctx.Command())
	switch path[0] {
	case "event":
		return runEvent(r, con.in, con.out, opt)
	case "help":
		return help(con.out, r.Help.Topic)
	}
	return calculate(catalog.Find(path[0], path[1]), typed(ctx), r.globals, con, opt)
}

var systems = map[string]quantity.System{"both": quantity.Both, "us": quantity.US, "metric": quantity.Metric}

// calculate runs one calculation, once or over many rows, and writes its
// report.
func calculate(c *calc.Calculation, inputs []calc.Typed, g globals, con console, opt report.Options) error {
	plan, err := sweep.Read(c, inputs)
	if err != nil {
		return err
	}
	if err := supposeElevation(plan.Base); err != nil {
		return err
	}
	if err := g.check(plan); err != nil {
		return err
	}
	return g.request(con, opt.Units).Write(plan, opt)
}

// supposeElevation takes the height above sea level from the environment,
// unless the air pressure is typed.
func supposeElevation(in *calc.Values) error {
	text := os.Getenv("POURWELL_ELEVATION")
	if text == "" || in.Calculation().NoAir || in.Given("elevation") || in.Given("station-pressure") {
		return nil
	}
	if err := in.Suppose("elevation", text); err != nil {
		return &calc.UsageError{What: "POURWELL_ELEVATION: " + err.Error(), Hint: "set it to a height, for example 600m or 2000ft"}
	}
	return nil
}

// check returns a usage error if global flags do not go together.
func (g *globals) check(plan *sweep.Plan) error {
	rows := g.Input != "" || !plan.Single()
	usage := func(what, hint string) error { return &calc.UsageError{What: what, Hint: hint} }
	switch {
	case g.Format == "markdown":
		return usage("--format markdown is for the event", "use text, json or csv")
	case g.Rows != "" && (g.Format != "csv" || rows):
		return usage("--rows goes with --format csv and one answer", "add --format csv, or leave --rows out")
	case g.Explain && rows:
		return usage("--explain shows the working of one answer", "give every input one value")
	case g.Input != "" && !plan.Single():
		return usage("--input and a range do not go together", "put the values into the file")
	case g.Show != "" && !rows && g.Plot == "":
		return usage("--show picks answers of a range, a file or a plot", "leave it out; one answer shows all")
	case g.Samples != 0 && len(plan.Tolerances) == 0:
		return usage("--samples checks a tolerance, and none is given", "add one, for example --"+plan.Example())
	case g.Samples != 0 && rows:
		return usage("--samples checks one answer", "give every input one value")
	case g.Samples != 0 && (g.Samples < sweep.FewestSamples || g.Samples > sweep.MostSamples):
		return usage(fmt.Sprintf("--samples %d is outside %d to %d", g.Samples, sweep.FewestSamples, sweep.MostSamples), "10000 is plenty")
	case g.Plot == "" && g.Overwrite:
		return usage("--overwrite goes with --plot", "leave it out")
	case g.Plot != "" && g.Input != "":
		return usage("--plot draws one or two ranges, not a file", "leave --input out")
	case g.Plot != "":
		return calc.FileError("--plot", draw.Check(plan, g.plot()))
	}
	return nil
}
