package main

import (
	"bufio"
	"fmt"
	"io"
	"os"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/draw"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/cmd/pourwell/internal/sweep"
	"example.com/pourwell/internal/quantity"
)

// mostLines is how many rows are laid out as text or drawn; JSON and CSV have
// no end.
const mostLines = 20000

// A rowsFailed error reports rows without an answer.
type rowsFailed struct{ sweep.Tally }

func (e rowsFailed) Error() string { return e.message(quantity.Both) }

// message returns the text of e with its numbers in the units given.
func (e rowsFailed) message(units quantity.System) string {
	what, _, _ := describe(e.First, units)
	rows := "rows"
	if e.Rows == 1 {
		rows = "row"
	}
	return fmt.Sprintf("%d of %d %s failed; the first is row %d: %s", e.Failed, e.Rows, rows, e.FirstRow, what)
}

// failure returns what is wrong with a row as its own words, "" if nothing is.
func failure(err error, units quantity.System) string {
	if err == nil {
		return ""
	}
	what, hint, code := describe(err, units)
	if code == exitUsage && hint != "" {
		what += "; " + hint
	}
	return brief(what)
}

// many runs a calculation over a range or a file and writes its rows.
func many(plan *sweep.Plan, g globals, con console, opt report.Options) error {
	rows, err := open(plan, g, con)
	if err != nil {
		return err
	}
	opt.Spreads = plan.InputSpreads()
	p := newProgress(con.err, "rows", rows.Len())
	w := bufio.NewWriterSize(con.out, 1<<16)
	var tally sweep.Tally
	switch {
	case g.Plot != "" || g.Format == "text":
		tally, err = sheet(rows, plan, g, w, opt, p)
	case g.Format == "json":
		tally, err = jsonRows(rows, plan, w, opt, p)
	default:
		tally, err = csvRows(rows, w, opt, p)
	}
	p.clear()
	if flushed := w.Flush(); err == nil {
		err = flushed
	}
	if err == nil && tally.Failed > 0 {
		return rowsFailed{tally}
	}
	return err
}

// open returns the rows asked for.
func open(plan *sweep.Plan, g globals, con console) (*sweep.Rows, error) {
	if g.Input == "" {
		return plan.Rows(g.show())
	}
	if g.Input == "-" {
		return plan.Batch(con.in, g.show())
	}
	f, err := os.Open(g.Input)
	if err != nil {
		return nil, calc.FileError("--input", err)
	}
	return plan.Batch(f, g.show()) // open until the command ends
}

func keys(rows *sweep.Rows) []string {
	all := make([]string, len(rows.Columns))
	for i, c := range rows.Columns {
		all[i] = c.Key
	}
	return all
}

func csvRows(rows *sweep.Rows, w io.Writer, opt report.Options, p *progress) (sweep.Tally, error) {
	if _, err := w.Write(report.AppendCSVHeader(nil, keys(rows))); err != nil {
		return sweep.Tally{}, err
	}
	return rows.Stream(w, func(buf []byte, row *sweep.Row) []byte {
		return report.AppendCSV(buf, row.Cells, failure(row.Err, opt.Units), &opt)
	}, p.tell)
}

func jsonRows(rows *sweep.Rows, plan *sweep.Plan, w io.Writer, opt report.Options, p *progress) (sweep.Tally, error) {
	if err := report.RowsHead(w, plan.Base, rows.Varies, opt); err != nil {
		return sweep.Tally{}, err
	}
	comma := &separator{w: w}
	tally, err := rows.Stream(comma, func(buf []byte, row *sweep.Row) []byte {
		return report.AppendJSON(append(buf, ",\n"...), row.Cells, failure(row.Err, opt.Units))
	}, p.tell)
	if err != nil {
		return tally, err
	}
	return tally, report.RowsTail(w, plan.Base, totals(&tally), opt)
}

// A separator drops the comma before the first of the rows.
type separator struct {
	w       io.Writer
	started bool
}

func (s *separator) Write(b []byte) (int, error) {
	if s.started || len(b) == 0 {
		return s.w.Write(b)
	}
	s.started = true
	n, err := s.w.Write(b[1:])
	return n + 1, err
}

func totals(t *sweep.Tally) report.Totals {
	return report.Totals{Rows: t.Rows, Failed: t.Failed, Notes: t.Notes(), Cautions: t.Cautions()}
}

// sheet keeps all rows, to lay them out as text or to draw them.
func sheet(rows *sweep.Rows, plan *sweep.Plan, g globals, w io.Writer, opt report.Options, p *progress) (sweep.Tally, error) {
	if rows.Len() > mostLines {
		return sweep.Tally{}, &calc.UsageError{
			What: fmt.Sprintf("%d rows are too many to read or to draw", rows.Len()),
			Hint: "add --format csv or json, or take a larger step",
		}
	}
	all, tally, err := rows.Collect(p.tell)
	if err != nil {
		return tally, err
	}
	s := report.Sheet{Totals: totals(&tally), Grid: g.Input == "" && len(plan.Axes) == 2}
	if s.Grid && g.Show == "" {
		s.Lead = rows.Lead
	}
	for _, c := range rows.Columns {
		s.Heads = append(s.Heads, head(c, plan.Base.Calculation()))
	}
	for _, r := range all {
		s.Lines = append(s.Lines, report.Line{Cells: r.Cells, Failure: failure(r.Err, opt.Units)})
	}
	if g.Plot != "" {
		if err := draw.Sweep(&s, rows.Lead, plan, g.show(), g.plot(), opt); err != nil {
			return tally, calc.FileError("--plot", err)
		}
	}
	switch g.Format {
	case "json":
		return tally, jsonSheet(&s, rows, plan, w, opt)
	case "csv":
		return tally, csvSheet(&s, rows, w, opt)
	}
	return tally, s.Text(w, plan.Base, opt)
}

func jsonSheet(s *report.Sheet, rows *sweep.Rows, plan *sweep.Plan, w io.Writer, opt report.Options) error {
	if err := report.RowsHead(w, plan.Base, rows.Varies, opt); err != nil {
		return err
	}
	var buf []byte
	for _, l := range s.Lines {
		buf = report.AppendJSON(append(buf, ",\n"...), l.Cells, l.Failure)
	}
	if _, err := (&separator{w: w}).Write(buf); err != nil {
		return err
	}
	return report.RowsTail(w, plan.Base, s.Totals, opt)
}

func csvSheet(s *report.Sheet, rows *sweep.Rows, w io.Writer, opt report.Options) error {
	buf := report.AppendCSVHeader(nil, keys(rows))
	for _, l := range s.Lines {
		buf = report.AppendCSV(buf, l.Cells, l.Failure, &opt)
	}
	_, err := w.Write(buf)
	return err
}

// head returns the head of a column in words.
func head(c sweep.Column, calculation *calc.Calculation) report.Head {
	if c.Input != nil {
		return report.Head{Key: c.Key, Label: c.Input.Words(), Input: true}
	}
	return report.Head{Key: c.Key, Label: report.Label(calculation, c.Key), Input: c.Copied()}
}
