package draw

import (
	"cmp"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/chart"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/cmd/pourwell/internal/sweep"
	"example.com/pourwell/internal/quantity"
)

// Course draws the course of one answer into the file: what changes in time, or
// along the line. Quantities of one unit share a panel. Only the curves called
// show are drawn, if any are named.
func Course(in *calc.Values, out *calc.Result, show []string, file File, opt report.Options) error {
	c := in.Calculation()
	at := slices.IndexFunc(out.Tables, func(t calc.Table) bool { return t.Curve })
	if at < 0 {
		return &calc.UsageError{
			What: "--plot draws a range or a course of time, and this answer is a single point",
			Hint: "give an input a range, for example --" + sweep.RangeOf(c),
		}
	}
	t := out.Tables[at]
	for _, key := range show {
		if !slices.Contains(t.Columns[1:], key) {
			return noCurve(key, t.Columns[1:])
		}
	}
	var x []float64
	for _, row := range t.Rows {
		x = append(x, number(row[0]))
	}
	f := chart.Figure{Title: report.Capital(c.Title()) + " over " + report.Label(c, t.Columns[0]), Under: report.Circumstances(in, nil, opt)}
	for i, key := range t.Columns[1:] {
		if show != nil && !slices.Contains(show, key) || t.Rows == nil {
			continue
		}
		if _, text := t.Rows[0][i+1].(string); text {
			continue
		}
		line := chart.Line{Name: report.Label(c, key), X: x}
		for _, row := range t.Rows {
			line.Y = append(line.Y, number(row[i+1]))
		}
		addLine(&f, axis(report.Label(c, t.Columns[0]), t.Columns[0], x, opt), key, line, opt)
	}
	return file.write(f)
}

func number(cell any) float64 {
	v, _ := cell.(float64)
	return v
}

func noCurve(key string, keys []string) error {
	hint := cmp.Or(calc.Suggest(key, keys), "there are "+strings.Join(keys, ", "))
	return &calc.UsageError{What: "--show " + key + ": no such curve", Hint: hint}
}

// addLine puts a curve of the quantity under key into the panel of its unit.
func addLine(f *chart.Figure, x chart.Axis, key string, l chart.Line, opt report.Options) {
	_, suffix := quantity.SplitKey(key)
	y := axis(l.Name, key, l.Y, opt)
	for i := range f.Panels {
		p := &f.Panels[i]
		if p.Suffix == suffix && suffix != "" {
			p.Lines = append(p.Lines, l)
			if !strings.Contains(p.Y.Label, l.Name) {
				p.Y.Label += ", " + l.Name
			}
			return
		}
	}
	f.Panels = append(f.Panels, chart.Panel{X: x, Y: y, Suffix: suffix, Lines: []chart.Line{l}})
}

// axis returns an axis for values of the quantity under key.
func axis(label, key string, values []float64, opt report.Options) chart.Axis {
	_, suffix := quantity.SplitKey(key)
	us, metric := quantity.Scales(suffix, quantity.Largest(values))
	switch opt.Units {
	case quantity.US:
		metric = us
	case quantity.Metric:
		us = metric
	}
	return chart.Axis{Label: label, Inner: us, Outer: metric}
}
