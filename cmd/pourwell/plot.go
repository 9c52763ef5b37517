package main

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/chart"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/cmd/pourwell/internal/sweep"
	"example.com/pourwell/internal/quantity"
)

// mostCurves is how many curves of one panel can still be told apart.
const mostCurves = 16

// checkPlot returns a usage error if what is asked for cannot be drawn.
func checkPlot(plan *sweep.Plan, g *globals) error {
	usage := func(what, hint string) error { return &calc.UsageError{What: what, Hint: hint} }
	switch {
	case chart.Format(g.Plot) == "":
		return usage(fmt.Sprintf("--plot %q ends in neither .svg nor .png", g.Plot), "name it for example curve.svg")
	case g.Input != "" || len(plan.Axes) > 2:
		return usage("--plot draws one or two ranges", "take a range for the axis and one for the curves; --format csv has room for more")
	case len(plan.Axes) == 2 && plan.Axes[1].Len() > mostCurves:
		return usage(fmt.Sprintf("--plot has room for %d curves, not %d", mostCurves, plan.Axes[1].Len()),
			"take a larger step for --"+plan.Axes[1].Input.Name+", or type it first to put it along the axis")
	}
	return nil
}

// plotCourse draws the course of one answer: what changes in time, or along
// the line. Quantities of one unit share a panel.
func plotCourse(in *calc.Values, out *calc.Result, g globals, opt report.Options) error {
	c := in.Calculation()
	at := slices.IndexFunc(out.Tables, func(t calc.Table) bool { return t.Curve })
	if at < 0 {
		return &calc.UsageError{
			What: "--plot draws a range or a course of time, and this answer is a single point",
			Hint: "give an input a range, for example --" + sweep.RangeOf(c),
		}
	}
	t := out.Tables[at]
	show, err := shownOf(g.Show, t.Columns[1:])
	if err != nil {
		return err
	}
	var x []float64
	for _, row := range t.Rows {
		x = append(x, number(row[0]))
	}
	f := chart.Figure{Title: report.Capital(c.Title()) + " over " + report.Label(c, t.Columns[0]), Under: report.Circumstances(in, nil, opt)}
	for i, key := range t.Columns[1:] {
		if !slices.Contains(show, key) || t.Rows == nil {
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
	return draw(g.Plot, f)
}

func number(cell any) float64 {
	v, _ := cell.(float64)
	return v
}

// shownOf returns the keys asked for, all if none are.
func shownOf(show string, keys []string) ([]string, error) {
	if show == "" {
		return keys, nil
	}
	asked := strings.Split(show, ",")
	for _, key := range asked {
		if !slices.Contains(keys, key) {
			return nil, &calc.UsageError{What: "--show " + key + ": no such curve", Hint: nearest(key, keys)}
		}
	}
	return asked, nil
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

// plotSweep draws the rows of one or two ranges: the first along the axis, a
// curve for each value of the second.
func plotSweep(s *report.Sheet, lead string, plan *sweep.Plan, g globals, opt report.Options) error {
	axes := len(plan.Axes)
	across := 1
	if axes == 2 {
		across = plan.Axes[1].Len()
	}
	show := []string{lead}
	if g.Show != "" {
		show = strings.Split(g.Show, ",")
	}
	f := chart.Figure{Under: report.Circumstances(plan.Base, s, opt)}
	var names []string
	x := sweepAxis(s, across, opt)
	for i := axes; i < len(s.Heads); i++ {
		h := s.Heads[i]
		thin := strings.HasPrefix(h.Key, "low_") || strings.HasPrefix(h.Key, "high_")
		if !slices.Contains(show, h.Key) && !(thin && g.Show == "") {
			continue
		}
		if !thin {
			names = append(names, h.Label)
		}
		for k := range across {
			l := s.Curve(i, k, across)
			line := chart.Line{Name: bareName(h, thin), X: l.X, Y: l.Y, Thin: thin}
			if axes == 2 && !thin {
				line.Name = s.Name(1, k, opt)
			}
			addCurve(&f, x, h, line, opt)
		}
	}
	f.Title = report.Capital(strings.Join(names, ", ")) + " by " + s.Heads[0].Label
	if axes == 2 {
		f.Title += " and " + s.Heads[1].Label
	}
	return draw(g.Plot, f)
}

// sweepAxis returns the axis of the first range; a list of names has places.
func sweepAxis(s *report.Sheet, across int, opt report.Options) chart.Axis {
	l := s.Curve(0, 0, across)
	a := axis(s.Heads[0].Label, s.Heads[0].Key, l.Y, opt)
	if l.Names != nil {
		a = chart.Axis{Label: s.Heads[0].Label, Names: l.Names}
	}
	return a
}

// addCurve puts a curve into the panel of its answer; a bound goes to that of
// the same unit.
func addCurve(f *chart.Figure, x chart.Axis, h report.Head, l chart.Line, opt report.Options) {
	_, suffix := quantity.SplitKey(h.Key)
	for i := range f.Panels {
		p := &f.Panels[i]
		if p.Key == h.Key || l.Thin && p.Suffix == suffix {
			p.Lines = append(p.Lines, l)
			return
		}
	}
	y := axis(h.Label, h.Key, l.Y, opt)
	f.Panels = append(f.Panels, chart.Panel{X: x, Y: y, Key: h.Key, Suffix: suffix, Lines: []chart.Line{l}})
}

// draw writes the figure into the file.
func draw(name string, f chart.Figure) error {
	var b bytes.Buffer
	if err := chart.Write(&b, chart.Format(name), f); err != nil {
		return err
	}
	if err := os.WriteFile(name, b.Bytes(), 0o666); err != nil {
		return unreadable("--plot", err)
	}
	return nil
}

// bareName returns the label of an answer; a bound is called low or high.
func bareName(h report.Head, thin bool) string {
	if thin {
		end, _, _ := strings.Cut(h.Key, "_")
		return end
	}
	return h.Label
}
