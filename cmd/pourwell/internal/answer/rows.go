package answer

import (
	"bufio"
	"fmt"
	"io"
	"os"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/draw"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/cmd/pourwell/internal/sweep"
)

// mostLines is how many rows are laid out as text or drawn; JSON and CSV have
// no end.
const mostLines = 20000

// A RowsFailed error reports rows without an answer.
type RowsFailed struct{ sweep.Tally }

// Error says how many failed, and why the first did.
func (e *RowsFailed) Error() string { return e.Count() + e.First.Error() }

// Count says how many failed, as what stands before the first one's reason.
func (e *RowsFailed) Count() string {
	rows := "rows"
	if e.Rows == 1 {
		rows = "row"
	}
	return fmt.Sprintf("%d of %d %s failed; the first is row %d: ", e.Failed, e.Rows, rows, e.FirstRow)
}

// many runs the calculation over a range or a file and writes its rows.
func (r *Request) many(plan *sweep.Plan, opt report.Options) error {
	rows, err := r.open(plan)
	if err != nil {
		return err
	}
	opt.Spreads = plan.InputSpreads()
	p := newProgress(r.Err, "rows", rows.Len())
	w := bufio.NewWriterSize(r.Out, 1<<16)
	var tally sweep.Tally
	switch {
	case r.Plot.Name != "" || r.Format == "text":
		tally, err = r.sheet(rows, plan, w, opt, p)
	case r.Format == "json":
		tally, err = r.jsonRows(rows, plan, w, opt, p)
	default:
		tally, err = r.csvRows(rows, w, opt, p)
	}
	p.clear()
	if flushed := w.Flush(); err == nil {
		err = flushed
	}
	if err == nil && tally.Failed > 0 {
		return &RowsFailed{tally}
	}
	return err
}

// open returns the rows asked for.
func (r *Request) open(plan *sweep.Plan) (*sweep.Rows, error) {
	switch r.Input {
	case "":
		return plan.Rows(r.Show)
	case "-":
		return plan.Batch(r.In, r.Show)
	}
	f, err := os.Open(r.Input)
	if err != nil {
		return nil, calc.FileError("--input", err)
	}
	return plan.Batch(f, r.Show) // open until the command ends
}

// failure returns what is wrong with a row, "" if nothing is.
func (r *Request) failure(row *sweep.Row) string {
	if row.Err == nil {
		return ""
	}
	return r.Failure(row.Err)
}

func keys(rows *sweep.Rows) []string {
	all := make([]string, len(rows.Columns))
	for i, c := range rows.Columns {
		all[i] = c.Key
	}
	return all
}

func (r *Request) csvRows(rows *sweep.Rows, w io.Writer, opt report.Options, p *progress) (sweep.Tally, error) {
	if _, err := w.Write(report.AppendCSVHeader(nil, keys(rows))); err != nil {
		return sweep.Tally{}, err
	}
	return rows.Stream(w, func(buf []byte, row *sweep.Row) []byte {
		return report.AppendCSV(buf, row.Cells, r.failure(row), &opt)
	}, p.tell)
}

func (r *Request) jsonRows(rows *sweep.Rows, plan *sweep.Plan, w io.Writer, opt report.Options, p *progress) (sweep.Tally, error) {
	if err := report.RowsHead(w, plan.Base, rows.Varies, opt); err != nil {
		return sweep.Tally{}, err
	}
	comma := &separator{w: w}
	tally, err := rows.Stream(comma, func(buf []byte, row *sweep.Row) []byte {
		return report.AppendJSON(append(buf, ",\n"...), row.Cells, r.failure(row))
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
func (r *Request) sheet(rows *sweep.Rows, plan *sweep.Plan, w io.Writer, opt report.Options, p *progress) (sweep.Tally, error) {
	all, tally, err := rows.Collect(mostLines, p.tell)
	if err != nil {
		return tally, err
	}
	s := report.Sheet{Totals: totals(&tally), Grid: r.Input == "" && len(plan.Axes) == 2}
	if s.Grid && r.Show == nil {
		s.Lead = rows.Lead
	}
	for _, c := range rows.Columns {
		s.Heads = append(s.Heads, head(c, plan.Base.Calculation()))
	}
	for i := range all {
		s.Lines = append(s.Lines, report.Line{Cells: all[i].Cells, Failure: r.failure(&all[i])})
	}
	if r.Plot.Name != "" {
		if err := draw.Sweep(&s, rows.Lead, plan, r.Show, r.Plot, opt); err != nil {
			return tally, calc.FileError("--plot", err)
		}
	}
	switch r.Format {
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
