package chart

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// A Figure is one or more panels under a title.
type Figure struct {
	Title  string
	Under  string // below the title, smaller: the inputs
	Panels []Panel
}

// A Panel is curves over one pair of axes.
type Panel struct {
	X, Y   Axis
	Lines  []Line
	Key    string // of the answer, for whoever fills the panel
	Suffix string // of its unit, likewise
}

// An Axis says what is measured along it and on which rulers.
type Axis struct {
	Label string
	Inner quantity.Scale
	Outer quantity.Scale // a second ruler, if it differs from Inner
	Names []string       // instead of rulers: names of the places 0, 1, 2 …
}

// A Line is one curve: points in the units that the scales convert from. A gap
// stands where a number is NaN.
type Line struct {
	Name string
	X, Y []float64
	Thin bool // a bound rather than a curve
}

// Size of a figure on paper, and the dots to draw it with as PNG: legible on a
// phone and in print.
const (
	figureWidth = 170 * vg.Millimeter
	panelHeight = 105 * vg.Millimeter
	dotsPerInch = 160
)

// Format returns the format that the name of a file asks for, "svg" or "png",
// "" if it is neither.
func Format(name string) string {
	switch f := strings.ToLower(strings.TrimPrefix(filepath.Ext(name), ".")); f {
	case "svg", "png":
		return f
	}
	return ""
}

// Write draws f in the format "svg" or "png".
func Write(w io.Writer, format string, f Figure) error {
	p, err := newPen()
	if err != nil {
		return err
	}
	p.room = p.nameRoom(f.Panels)
	p.twoSides = slices.ContainsFunc(f.Panels, func(p Panel) bool { return p.Y.twoRulers() })
	head := p.headHeight(f)
	height := head + vg.Length(len(f.Panels))*panelHeight
	var out io.WriterTo
	switch format {
	case "svg":
		c := vgsvg.New(figureWidth, height)
		p.canvas, out = c, c
	case "png":
		c := vgimg.NewWith(vgimg.UseWH(figureWidth, height), vgimg.UseDPI(dotsPerInch))
		p.canvas, out = c, vgimg.PngCanvas{Canvas: c}
	default:
		return fmt.Errorf("chart: unknown format %q", format)
	}
	p.head(f, height)
	for i := range f.Panels {
		top := height - head - vg.Length(i)*panelHeight
		p.panel(&f.Panels[i], vg.Rectangle{
			Min: vg.Point{X: 0, Y: top - panelHeight},
			Max: vg.Point{X: figureWidth, Y: top},
		})
	}
	if format == "svg" {
		w = fallback{w}
	}
	_, err = out.WriteTo(w)
	return err
}

// A fallback names fonts of the same widths where the first is not at hand.
type fallback struct{ w io.Writer }

func (f fallback) Write(b []byte) (int, error) {
	family := []byte("font-family:Liberation Sans;")
	if _, err := f.w.Write(bytes.ReplaceAll(b, family, []byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif;"))); err != nil {
		return 0, err
	}
	return len(b), nil
}
