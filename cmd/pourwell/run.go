package main

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"syscall"

	"example.com/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/internal/report"
)

// Exit codes, explained by "pourwell help exit".
const (
	exitDone       = 0
	exitUnexpected = 1
	exitUsage      = 2
	exitNoAnswer   = 3 // out of range, no solution, or never
)

// run is the whole command: it answers args and returns the exit code.
func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	err := answer(args, stdin, stdout)
	if err == nil || errors.Is(err, syscall.EPIPE) || errors.Is(err, io.ErrClosedPipe) {
		return exitDone
	}
	return fail(stderr, args, err)
}

// answer does what args ask for.
func answer(args []string, stdin io.Reader, stdout io.Writer) error {
	if topics, asked := helpAsked(args); asked {
		return help(stdout, topics)
	}
	k, r, err := parser(args)
	if err != nil {
		return err
	}
	ctx, err := k.Parse(args)
	if err != nil {
		return err
	}
	opt := report.Options{Units: systems[r.Units], Explain: r.Explain, ASCII: !utf8Locale()}
	path := strings.Fields(ctx.Command())
	switch path[0] {
	case "event":
		return runEvent(r, stdin, stdout, opt)
	case "help":
		return help(stdout, r.Help.Topic)
	}
	return calculate(lookup(path[0], path[1]), typed(ctx), r.globals, stdout, opt)
}

var systems = map[string]quantity.System{"both": quantity.Both, "us": quantity.US, "metric": quantity.Metric}

// calculate runs one calculation and writes its report.
func calculate(c *calc.Calculation, flags map[string][]string, g globals, w io.Writer, opt report.Options) error {
	in, err := read(c, flags)
	if err != nil {
		return err
	}
	var out calc.Result
	if err := c.Run(in, &out); err != nil {
		return err
	}
	in.NoteUnused(&out)
	switch {
	case g.Rows != "" && g.Format != "csv":
		return &calc.UsageError{What: "--rows goes with --format csv", Hint: "add --format csv"}
	case g.Rows != "":
		return report.TableCSV(w, &out, g.Rows)
	case g.Format == "json":
		return report.JSON(w, in, &out, opt)
	case g.Format == "csv":
		return report.CSV(w, &out)
	case g.Format == "markdown":
		return &calc.UsageError{What: "--format markdown is for the event", Hint: "use text, json or csv"}
	}
	return report.Text(w, in, &out, opt)
}

// read parses what was typed, in the order of the calculation's inputs.
func read(c *calc.Calculation, flags map[string][]string) (*calc.Values, error) {
	in, err := calc.NewValues(c)
	if err != nil {
		return nil, err
	}
	for _, input := range c.AllInputs() {
		texts, ok := flags[input.Name]
		if !ok {
			continue
		}
		if len(texts) > 1 && !input.Repeat {
			return nil, &calc.UsageError{What: fmt.Sprintf("--%s is given %d times", input.Name, len(texts)), Hint: "give it once"}
		}
		if err := in.SetText(input.Name, texts...); err != nil {
			return nil, err
		}
	}
	return in, nil
}

// helpAsked reports whether args ask for help, and on what.
func helpAsked(args []string) (topics []string, asked bool) {
	for _, a := range args {
		switch {
		case a == "--help", a == "-h":
			asked = true
		case !strings.HasPrefix(a, "-") && len(topics) < 2:
			topics = append(topics, a)
		}
	}
	asked = asked || len(args) == 0
	if asked && len(topics) > 0 && !slices.ContainsFunc(packages, func(p struct{ name, about string }) bool { return p.name == topics[0] }) {
		topics = topics[:1]
	}
	return topics, asked
}
