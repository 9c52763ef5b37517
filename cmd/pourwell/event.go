package main

import (
	"io"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/plan"
	"example.com/pourwell/cmd/pourwell/internal/report"
)

// runEvent plans the day of a file, or prints a sample of one.
func runEvent(r *root, stdin io.Reader, w io.Writer, opt report.Options) error {
	if err := r.unused(); err != nil {
		return err
	}
	if r.Event.Sample {
		_, err := io.WriteString(w, plan.Sample)
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

// unused returns a usage error for what is typed and the event would ignore.
func (r *root) unused() error {
	for _, f := range []struct {
		name  string
		given bool
	}{{"plot", r.Plot != ""}, {"overwrite", r.Overwrite}, {"input", r.Input != ""}, {"show", r.Show != ""}, {"rows", r.Rows != ""}, {"samples", r.Samples != 0}} {
		if f.given {
			return &calc.UsageError{What: "--" + f.name + " does not go with event", Hint: "leave it out; --format json and csv hold the numbers of the plan"}
		}
	}
	if r.Event.Sample && r.Event.File != "" {
		return &calc.UsageError{What: "event --sample reads no file", Hint: "drop --sample, or " + r.Event.File}
	}
	if r.Event.Sample && (r.Format != "text" || r.Explain) {
		return &calc.UsageError{What: "event --sample prints a file as it is", Hint: "leave --format and --explain out"}
	}
	return nil
}

// readEvent returns the file's name for messages and what is in it; "-" is
// standard input.
func readEvent(file string, stdin io.Reader) (name string, data []byte, err error) {
	const hint = "pourwell event --sample > my-day.toml writes one to start from"
	if file == "" {
		return "", nil, &calc.UsageError{What: "event needs a file", Hint: hint}
	}
	name, data, err = calc.ReadFile(file, stdin)
	return name, data, calc.FileError("event", err)
}
