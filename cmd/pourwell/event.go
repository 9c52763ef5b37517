package main

import (
	"errors"
	"io"
	"io/fs"
	"os"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/plan"
	"example.com/pourwell/cmd/pourwell/internal/report"
)

// runEvent plans the day of a file, or prints a sample of one.
func runEvent(r *root, stdin io.Reader, w io.Writer, opt report.Options) error {
	if r.Event.Sample {
		_, err := io.WriteString(w, plan.Sample)
		return err
	}
	if err := onlyForCalculations(r.globals); err != nil {
		return err
	}
	name, data, err := readEvent(r.Event.File, stdin)
	if err != nil {
		return err
	}
	day, err := plan.Read(name, data)
	if err != nil {
		return err
	}
	p, err := plan.Compute(name, day)
	if err != nil {
		return err
	}
	switch r.Format {
	case "json":
		return report.WriteJSON(w, plan.Document(name, &p, opt.Units))
	case "csv":
		head, rows := p.Rows()
		return report.WriteCSV(w, head, rows, opt)
	case "markdown":
		return report.PageMarkdown(w, p.Page(opt.Explain), opt)
	}
	return report.PageText(w, p.Page(opt.Explain), opt)
}

// onlyForCalculations refuses the global flags that a plan has no use for.
func onlyForCalculations(g globals) error {
	for _, f := range []struct {
		name  string
		given bool
	}{{"plot", g.Plot != ""}, {"input", g.Input != ""}, {"show", g.Show != ""}, {"rows", g.Rows != ""}, {"samples", g.Samples != 0}} {
		if f.given {
			return &calc.UsageError{What: "--" + f.name + " is for a calculation, not for the event", Hint: "drop it; --format csv writes the hours of the tubs"}
		}
	}
	return nil
}

// readEvent returns the file's name for messages and what is in it; "-" is
// standard input.
func readEvent(file string, stdin io.Reader) (name string, data []byte, err error) {
	switch file {
	case "":
		return "", nil, &calc.UsageError{What: "event needs a file", Hint: "pourwell event --sample > my-day.toml writes one to start from"}
	case "-":
		data, err = io.ReadAll(stdin)
		return "standard input", data, err
	}
	data, err = os.ReadFile(file)
	if err != nil {
		var at *fs.PathError
		if errors.As(err, &at) {
			err = at.Err
		}
		return "", nil, &calc.UsageError{What: file + ": " + err.Error(), Hint: "pourwell event --sample > my-day.toml writes one to start from"}
	}
	return file, data, nil
}
