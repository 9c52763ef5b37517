// Package answer runs what a command line asks for, once or over many rows, and
// writes the report.
package answer

import (
	"io"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/draw"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/cmd/pourwell/internal/sweep"
)

// A Request says how an answer is asked for, beside the inputs, and where it
// goes.
type Request struct {
	Format  string    // text, json or csv
	Rows    string    // the list of rows to write as CSV; "" for the answer itself
	Plot    draw.File // of a figure; without a name, none
	Input   string    // a file of rows, "-" for In; "" for none
	Show    []string  // keys of the answers to show; nil for all
	Samples int       // random ones, to check the tolerances with; 0 for none
	Seed    uint64    // of the samples

	In       io.Reader
	Out, Err io.Writer
	Failure  func(error) string // what is wrong with a row, as one line
}

// Write runs plan and writes the report.
func (r *Request) Write(plan *sweep.Plan, opt report.Options) error {
	if plan.Single() && r.Input == "" {
		return r.single(plan, opt)
	}
	return r.many(plan, opt)
}

// single runs the calculation once.
func (r *Request) single(plan *sweep.Plan, opt report.Options) error {
	in := plan.Base
	var out calc.Result
	if err := in.Calculation().Answer(in, &out); err != nil {
		return err
	}
	if len(plan.Tolerances) > 0 {
		opt.Spreads = plan.Spread(&out)
		if r.Samples > 0 {
			p := newProgress(r.Err, "samples", r.Samples)
			plan.Sample(opt.Spreads, r.Samples, r.Seed, p.tell)
			p.clear()
		}
	}
	if r.Plot.Name != "" {
		if err := draw.Course(in, &out, r.Show, r.Plot, opt); err != nil {
			return calc.FileError("--plot", err)
		}
	}
	switch {
	case r.Rows != "":
		return report.TableCSV(r.Out, &out, r.Rows, opt)
	case r.Format == "json":
		return report.JSON(r.Out, in, &out, opt)
	case r.Format == "csv":
		return report.CSV(r.Out, &out, opt)
	}
	return report.Text(r.Out, in, &out, opt)
}
