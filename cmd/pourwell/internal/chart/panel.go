package chart

import (
	"math"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Rulers: how many numbers each carries, and how far apart two rulers stand.
const (
	xTicks    = 8
	yTicks    = 6
	tickSize  = 4 * vg.Length(1)
	rulerStep = 20 * vg.Length(1)
	sideStep  = 42 * vg.Length(1) // numbers stand between the rulers at the side
)

// A frame is where the curves of a panel go: data bounds in the inner scale,
// and the rectangle on paper.
type frame struct {
	x0, x1, y0, y1 float64
	box            vg.Rectangle
	panel          *Panel
}

// at returns the place of a point given in the units of the data.
func (f *frame) at(x, y float64) vg.Point {
	return vg.Point{X: f.atX(f.panel.X.value(x)), Y: f.atY(f.panel.Y.value(y))}
}

func (f *frame) atX(shown float64) vg.Length {
	return f.box.Min.X + vg.Length((shown-f.x0)/(f.x1-f.x0))*(f.box.Max.X-f.box.Min.X)
}

func (f *frame) atY(shown float64) vg.Length {
	return f.box.Min.Y + vg.Length((shown-f.y0)/(f.y1-f.y0))*(f.box.Max.Y-f.box.Min.Y)
}

// value returns v on the inner ruler.
func (a *Axis) value(v float64) float64 {
	if a.Names != nil {
		return v
	}
	return a.Inner.Value(v)
}

func (a *Axis) twoRulers() bool { return a.Names == nil && a.Outer != a.Inner }

// panel draws the rulers and the curves within the given space.
func (p *pen) panel(panel *Panel, space vg.Rectangle) {
	f := p.frame(panel, space)
	p.rules(f)
	p.bottom(f)
	p.side(f)
	ends := make([]end, 0, len(panel.Lines))
	for i := range panel.Lines {
		if e, ok := p.curve(f, i); ok {
			ends = append(ends, e)
		}
	}
	if len(panel.Lines) > 1 {
		p.names(f, ends)
	}
}

// frame finds the bounds of the data and leaves room for rulers and names.
func (p *pen) frame(panel *Panel, space vg.Rectangle) *frame {
	f := &frame{panel: panel, x0: math.Inf(1), x1: math.Inf(-1), y0: math.Inf(1), y1: math.Inf(-1)}
	for _, l := range panel.Lines {
		for i := range l.X {
			x, y := panel.X.value(l.X[i]), panel.Y.value(l.Y[i])
			if finite(x) { // a point without an answer leaves its place empty
				f.x0, f.x1 = math.Min(f.x0, x), math.Max(f.x1, x)
			}
			if finite(x) && finite(y) {
				f.y0, f.y1 = math.Min(f.y0, y), math.Max(f.y1, y)
			}
		}
	}
	if !finite(f.x0) {
		f.x0, f.x1 = 0, 1
	}
	if !finite(f.y0) {
		f.y0, f.y1 = 0, 1
	}
	if f.x1 == f.x0 || panel.X.Names != nil {
		f.x0, f.x1 = f.x0-0.5, f.x1+0.5
	}
	f.y0, f.y1 = widen(f.y0, f.y1, yTicks)

	f.box = vg.Rectangle{
		Min: vg.Point{X: space.Min.X + pageMargin + 34, Y: space.Min.Y + pageMargin + 34},
		Max: vg.Point{X: space.Max.X - pageMargin - p.room, Y: space.Max.Y - 40},
	}
	if p.twoSides {
		f.box.Min.X += sideStep
	}
	if panel.X.twoRulers() {
		f.box.Min.Y += rulerStep
	}
	return f
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// rules draws the hairlines that the inner ruler's numbers stand on.
func (p *pen) rules(f *frame) {
	marks, _ := ticks(f.y0, f.y1, yTicks)
	for _, y := range marks {
		at := f.atY(y)
		p.stroke(rule, 0.5, nil, vg.Point{X: f.box.Min.X, Y: at}, vg.Point{X: f.box.Max.X, Y: at})
	}
}

// bottom draws the rulers below: numbers, the unit at the right end, the label
// under them.
func (p *pen) bottom(f *frame) {
	axis, y := &f.panel.X, f.box.Min.Y-6
	text := sized(p.regular, textSize)
	if axis.Names != nil {
		every := p.sparse(axis.Names, text, f.box.Max.X-f.box.Min.X)
		for i, name := range axis.Names {
			if i%every != 0 {
				continue
			}
			p.words(text, vg.Point{X: f.atX(float64(i)), Y: y - tickSize - textSize}, middle, name)
		}
	} else {
		p.bottomRuler(f, axis.Inner, y)
		if axis.twoRulers() {
			y -= rulerStep
			p.bottomRuler(f, axis.Outer, y)
		}
	}
	p.words(text, vg.Point{X: (f.box.Min.X + f.box.Max.X) / 2, Y: y - tickSize - 2.6*textSize}, middle, axis.Label)
}

// sparse returns of how many names one is written so that they do not touch.
func (p *pen) sparse(names []string, text font.Face, width vg.Length) int {
	widest := vg.Length(0)
	for _, n := range names {
		widest = max(widest, text.Width(n)+6)
	}
	return max(1, int(math.Ceil(float64(widest)*float64(len(names))/float64(width))))
}

func (p *pen) bottomRuler(f *frame, scale quantity.Scale, y vg.Length) {
	text := sized(p.regular, textSize)
	p.stroke(black, 0.6, nil, vg.Point{X: f.box.Min.X, Y: y}, vg.Point{X: f.box.Max.X, Y: y})
	unitAt := f.box.Max.X
	low, high := scale.Value(f.panel.X.Inner.Back(f.x0)), scale.Value(f.panel.X.Inner.Back(f.x1))
	marks, decimals := ticks(low, high, xTicks)
	for _, m := range marks {
		x := f.atX(f.panel.X.Inner.Value(scale.Back(m)))
		p.stroke(black, 0.6, nil, vg.Point{X: x, Y: y}, vg.Point{X: x, Y: y - tickSize})
		label := tickText(m, decimals)
		p.words(text, vg.Point{X: x, Y: y - tickSize - textSize}, middle, label)
		unitAt = max(unitAt, x+text.Width(label)/2)
	}
	p.words(text, vg.Point{X: unitAt + 5, Y: y - tickSize - textSize}, left, scale.Unit)
}

// side draws the rulers at the left: numbers, the unit on top of each, the
// label above.
func (p *pen) side(f *frame) {
	x := f.box.Min.X - 6
	axis := &f.panel.Y
	p.sideRuler(f, axis.Inner, x)
	if axis.twoRulers() {
		x -= sideStep
		p.sideRuler(f, axis.Outer, x)
	}
	p.words(sized(p.bold, textSize), vg.Point{X: pageMargin, Y: f.box.Max.Y + 24}, left, axis.Label)
}

func (p *pen) sideRuler(f *frame, scale quantity.Scale, x vg.Length) {
	text := sized(p.regular, textSize)
	p.stroke(black, 0.6, nil, vg.Point{X: x, Y: f.box.Min.Y}, vg.Point{X: x, Y: f.box.Max.Y})
	low, high := scale.Value(f.panel.Y.Inner.Back(f.y0)), scale.Value(f.panel.Y.Inner.Back(f.y1))
	marks, decimals := ticks(low, high, yTicks)
	for _, m := range marks {
		y := f.atY(f.panel.Y.Inner.Value(scale.Back(m)))
		p.stroke(black, 0.6, nil, vg.Point{X: x, Y: y}, vg.Point{X: x - tickSize, Y: y})
		p.words(text, vg.Point{X: x - tickSize - 2, Y: y - 0.35*textSize}, right, tickText(m, decimals))
	}
	p.words(text, vg.Point{X: max(x, pageMargin+text.Width(scale.Unit)), Y: f.box.Max.Y + 10}, right, scale.Unit)
}
