package chart

import (
	"slices"

	"gonum.org/v1/plot/vg"
)

// strokes tell the curves apart; after the last they begin again, thicker.
var strokes = [][]vg.Length{
	nil,
	{7, 3},
	{1.5, 2},
	{9, 2, 2, 2},
	{14, 3},
	{9, 2, 2, 2, 2, 2},
	{3.5, 2},
	{1.5, 5},
}

// fewPoints is how many points of a curve are marked, to show what was computed
// and what lies between.
const fewPoints = 12

// An end is where the name of a curve belongs.
type end struct {
	at   vg.Point
	name string
}

// curve draws line i and returns its last point.
func (p *pen) curve(f *frame, i int) (last end, ok bool) {
	l := &f.panel.Lines[i]
	width := 1.3 + 0.9*vg.Length(i/len(strokes))
	dashes := strokes[i%len(strokes)]
	if l.Thin {
		width, dashes = 0.7, []vg.Length{2, 2}
	}
	var run []vg.Point
	flush := func() {
		if len(run) == 1 {
			p.dot(run[0], 1.6)
		}
		if alone := f.panel.X.Names != nil && len(f.panel.Lines) == 1; !alone { // nothing lies between names
			p.stroke(black, width, dashes, run...)
		}
		run = nil
	}
	for k := range l.X {
		if !finite(l.X[k]) || !finite(l.Y[k]) {
			flush()
			continue
		}
		at := f.at(l.X[k], l.Y[k])
		run = append(run, at)
		if !l.Thin && (f.panel.X.Names != nil || len(l.X) <= fewPoints) {
			p.dot(at, 1.8)
		}
		if !ok || at.X >= last.at.X {
			last, ok = end{at, l.Name}, true
		}
	}
	flush()
	return last, ok
}

// nameRoom is the width that the names of several curves need, in any of the
// panels so that they line up.
func (p *pen) nameRoom(panels []Panel) vg.Length {
	room := vg.Length(22) // for the unit of the ruler below
	text := sized(p.regular, textSize)
	for _, panel := range panels {
		for _, l := range panel.Lines {
			if len(panel.Lines) > 1 {
				room = max(room, text.Width(l.Name)+16)
			}
		}
	}
	return room
}

// names writes the name of each curve beside its end, moved apart where they
// would overlap.
func (p *pen) names(f *frame, ends []end) {
	slices.SortFunc(ends, func(a, b end) int {
		switch {
		case a.at.Y > b.at.Y:
			return -1
		case a.at.Y < b.at.Y:
			return 1
		}
		return 0
	})
	const apart = 1.15 * textSize
	places := spread(ends, apart, f.box.Min.Y, f.box.Max.Y)
	for i, e := range ends {
		x := f.box.Max.X
		p.stroke(black, 0.3, nil, vg.Point{X: e.at.X + 1, Y: e.at.Y}, vg.Point{X: x + 8, Y: places[i]})
		p.words(sized(p.regular, textSize), vg.Point{X: x + 11, Y: places[i] - 0.35*textSize}, left, e.name)
	}
}

// spread returns heights for the ends, highest first, at least apart from each
// other and as near to their own as that allows: neighbours that touch share
// the middle of their group.
func spread(ends []end, apart, low, high vg.Length) []vg.Length {
	type group struct {
		sum   vg.Length // of heights, each as if it were the first of its group
		first int
		n     int
	}
	var groups []group
	top := func(g group) vg.Length { return g.sum / vg.Length(g.n) }
	for i, e := range ends {
		groups = append(groups, group{e.at.Y, i, 1})
		for len(groups) > 1 {
			a, b := groups[len(groups)-2], groups[len(groups)-1]
			if top(a)-apart*vg.Length(a.n) >= top(b) {
				break
			}
			a.sum += b.sum + apart*vg.Length(a.n*b.n)
			a.n += b.n
			groups = append(groups[:len(groups)-2], a)
		}
	}
	places := make([]vg.Length, len(ends))
	for _, g := range groups {
		for k := range g.n {
			i := g.first + k
			places[i] = max(top(g)-apart*vg.Length(k), low+apart*vg.Length(len(ends)-1-i))
			places[i] = min(places[i], high-apart*vg.Length(i))
		}
	}
	return places
}
