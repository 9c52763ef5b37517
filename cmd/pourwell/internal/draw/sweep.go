package draw

import (
	"fmt"
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

// Check returns a usage error if the ranges of plan cannot be drawn, or not
// into the file.
func Check(plan *sweep.Plan, f File) error {
	usage := func(what, hint string) error { return &calc.UsageError{What: what, Hint: hint} }
	switch {
	case len(plan.Axes) > 2:
		return usage("--plot draws one or two ranges", "take a range for the axis and one for the curves; --format csv has room for more")
	case len(plan.Axes) == 2 && plan.Axes[1].Len() > mostCurves:
		return usage(fmt.Sprintf("--plot has room for %d curves, not %d", mostCurves, plan.Axes[1].Len()),
			"take a larger step for --"+plan.Axes[1].Input.Name+", or type it first to put it along the axis")
	}
	_, err := f.replaces()
	return err
}

// Sweep draws the rows of one or two ranges into the file: the first along the
// axis, a curve for each value of the second. It draws the answers called show,
// the leading one and its spread if none are named.
func Sweep(s *report.Sheet, lead string, plan *sweep.Plan, show []string, file File, opt report.Options) error {
	axes := len(plan.Axes)
	across := 1
	if axes == 2 {
		across = plan.Axes[1].Len()
	}
	spread := show == nil
	if spread {
		show = []string{lead}
	}
	f := chart.Figure{Under: report.Circumstances(plan.Base, s, opt)}
	var names []string
	x := sweepAxis(s, across, opt)
	for i := axes; i < len(s.Heads); i++ {
		h := s.Heads[i]
		thin := strings.HasPrefix(h.Key, "low_") || strings.HasPrefix(h.Key, "high_")
		if !slices.Contains(show, h.Key) && (!thin || !spread) {
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
	return file.write(f)
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

// bareName returns the label of an answer; a bound is called low or high.
func bareName(h report.Head, thin bool) string {
	if thin {
		end, _, _ := strings.Cut(h.Key, "_")
		return end
	}
	return h.Label
}
