package main

import (
	"io"
	"os"

	"example.com/pourwell/internal/calc"
	"example.com/pourwell/internal/report"
	"example.com/pourwell/internal/serve"
)

// runEvent plans the day of a file, or prints a sample of one.
func runEvent(r *root, stdin io.Reader, w io.Writer, opt report.Options) error {
	if r.Event.Sample {
		_, err := io.WriteString(w, serve.Sample)
		return err
	}
	name, data, err := readEvent(r.Event.File, stdin)
	if err != nil {
		return err
	}
	day, err := serve.Read(name, data)
	if err != nil {
		return err
	}
	plan, err := serve.Compute(name, day)
	if err != nil {
		return err
	}
	switch r.Format {
	case "json":
		return report.WriteJSON(w, serve.Document(name, &plan, opt.Units))
	case "csv":
		return report.WriteCSV(w, plan.Rows())
	case "markdown":
		return report.PageMarkdown(w, plan.Page(opt.Explain), opt)
	}
	return report.PageText(w, plan.Page(opt.Explain), opt)
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
		return "", nil, &calc.UsageError{What: err.Error(), Hint: "pourwell event --sample > my-day.toml writes one to start from"}
	}
	return file, data, nil
}
