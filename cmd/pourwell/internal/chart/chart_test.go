package chart

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image/png"
	"io"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// sample is a figure of two panels: a family of curves with a gap, and one
// curve alone.
func sample() Figure {
	us, metric := quantity.Scales("c", 20)
	hours, _ := quantity.Scales("s", 18000)
	pounds, kilos := quantity.Scales("kg", 20)
	x := []float64{0, 3600, 7200, 10800, 18000}
	return Figure{
		Title: "Thermal icebath over time",
		Under: "keg 5gal, from 75.0 °F (23.9 °C); assumed: sea level",
		Panels: []Panel{
			{X: Axis{Label: "time", Inner: hours, Outer: hours}, Y: Axis{Label: "beer", Inner: us, Outer: metric}, Lines: []Line{
				{Name: "beer as poured", X: x, Y: []float64{23.9, 12, 7, 5.5, 5}},
				{Name: "bath", X: x, Y: []float64{15, math.NaN(), 4, 4.5, 5}},
				{Name: "low", X: x, Y: []float64{23, 11, 6, 5, 4}, Thin: true},
			}},
			{X: Axis{Label: "time", Inner: hours, Outer: hours}, Y: Axis{Label: "ice", Inner: pounds, Outer: kilos}, Lines: []Line{
				{Name: "ice", X: x, Y: []float64{18.1, 10, 7, 4, 1}},
			}},
		},
	}
}

func drawn(t *testing.T, format string, f Figure) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, format, f); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// A drawing is what an SVG file holds.
type drawing struct {
	strokes []strokeOf
	texts   []string
}

type strokeOf struct {
	style  string
	points [][2]float64
}

// parse reads an SVG file with an XML parser and its paths point by point.
func parse(t *testing.T, svg []byte) drawing {
	t.Helper()
	var d drawing
	x := xml.NewDecoder(bytes.NewReader(svg))
	inText := false
	for {
		token, err := x.Token()
		if errors.Is(err, io.EOF) {
			return d
		}
		if err != nil {
			t.Fatalf("no XML: %v", err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			inText = e.Name.Local == "text"
			if e.Name.Local == "path" {
				var s strokeOf
				for _, a := range e.Attr {
					switch a.Name.Local {
					case "style":
						s.style = a.Value
					case "d":
						s.points = points(t, a.Value)
					}
				}
				d.strokes = append(d.strokes, s)
			}
		case xml.CharData:
			if inText {
				d.texts = append(d.texts, string(e))
			}
		case xml.EndElement:
			inText = false
		}
	}
}

func points(t *testing.T, path string) [][2]float64 {
	t.Helper()
	var all [][2]float64
	for _, p := range strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("MLZ", r) }) {
		if strings.Contains(p, "A") { // the arc of a dot
			continue
		}
		var xy [2]float64
		if _, err := fmt.Sscanf(p, "%f,%f", &xy[0], &xy[1]); err != nil {
			t.Fatalf("point %q: %v", p, err)
		}
		all = append(all, xy)
	}
	return all
}

// curves returns the strokes of a given width.
func (d drawing) curves(width string) []strokeOf {
	var all []strokeOf
	for _, s := range d.strokes {
		if strings.Contains(s.style, "stroke-width:"+width) && strings.Contains(s.style, "stroke:#000000") {
			all = append(all, s)
		}
	}
	return all
}

// TestSVGHoldsTheCurves parses the file and checks that each curve goes through
// its points: distances on paper are in proportion to those of the data.
func TestSVGHoldsTheCurves(t *testing.T) {
	f := sample()
	d := parse(t, drawn(t, "svg", f))
	curves := d.curves("1.3")
	if len(curves) != 3 { // the second curve of the first panel is one run after its gap
		t.Fatalf("%d curves", len(curves))
	}
	inProportion(t, curves[0].points, f.Panels[0].Lines[0].X, f.Panels[0].Lines[0].Y)
	inProportion(t, curves[1].points, f.Panels[0].Lines[1].X[2:], f.Panels[0].Lines[1].Y[2:])
	inProportion(t, curves[2].points, f.Panels[1].Lines[0].X, f.Panels[1].Lines[0].Y)
	if thin := d.curves("0.7"); len(thin) != 1 {
		t.Errorf("%d bounds", len(thin))
	}
	for _, want := range []string{"Thermal icebath over time", "time", "h", "beer", "°F", "°C", "ice", "lb", "kg", "beer as poured", "bath", "low"} {
		if !slices.Contains(d.texts, want) {
			t.Errorf("nowhere stands %q", want)
		}
	}
	if first, second := curves[0].style, curves[1].style; first == second {
		t.Error("two curves of one panel have the same stroke")
	}
}

// inProportion checks points on paper, printed with five digits, against data.
func inProportion(t *testing.T, paper [][2]float64, x, y []float64) {
	t.Helper()
	if len(paper) != len(x) {
		t.Errorf("%d points on paper, %d in the data", len(paper), len(x))
		return
	}
	last := len(x) - 1
	for i := range x {
		byX := paper[0][0] + (paper[last][0]-paper[0][0])*(x[i]-x[0])/(x[last]-x[0])
		byY := paper[0][1] + (paper[last][1]-paper[0][1])*(y[i]-y[0])/(y[last]-y[0])
		if math.Abs(paper[i][0]-byX) > 0.02 || math.Abs(paper[i][1]-byY) > 0.02 {
			t.Errorf("point %d is at %v, should be at %.2f, %.2f", i, paper[i], byX, byY)
		}
	}
}

// TestRulersAgree finds the places of the numbers on the two rulers of an axis:
// 0 °C stands at 32 °F and 10 °C at 50 °F.
func TestRulersAgree(t *testing.T) {
	p, err := newPen()
	if err != nil {
		t.Fatal(err)
	}
	us, metric := quantity.Scales("c", 20)
	panel := Panel{X: Axis{Inner: us, Outer: metric}, Y: Axis{Inner: us, Outer: metric}, Lines: []Line{{X: []float64{0, 20}, Y: []float64{0, 20}}}}
	f := p.frame(&panel, vg.Rectangle{Max: vg.Point{X: 400, Y: 300}})
	for celsius, fahrenheit := range map[float64]float64{0: 32, 10: 50, 20: 68} {
		if a, b := f.atX(us.Value(celsius)), f.atX(fahrenheit); math.Abs(float64(a-b)) > 1e-9 {
			t.Errorf("%v °C is at %v, %v °F at %v", celsius, a, fahrenheit, b)
		}
	}
}

// TestPNG decodes the file: grey throughout, of the size asked for, and dark
// somewhere.
func TestPNG(t *testing.T) {
	img, err := png.Decode(bytes.NewReader(drawn(t, "png", sample())))
	if err != nil {
		t.Fatal(err)
	}
	size := img.Bounds().Size()
	if want := int(figureWidth.Dots(dotsPerInch)); size.X < want-1 || size.X > want+1 || size.Y < size.X {
		t.Errorf("the figure has %v dots", size)
	}
	dark := 0
	for y := range size.Y {
		for x := range size.X {
			r, g, b, a := img.At(x, y).RGBA()
			if r != g || g != b || a != 0xffff {
				t.Fatalf("dot %d, %d is %v", x, y, img.At(x, y))
			}
			if r < 0x4000 {
				dark++
			}
		}
	}
	if dark < 1000 {
		t.Errorf("only %d dots are dark", dark)
	}
}

// TestOddFigures draws what must not fail: nothing, one point, a flat curve,
// names along the axis, more curves than strokes.
func TestOddFigures(t *testing.T) {
	scale, _ := quantity.Scales("", 1)
	axis := Axis{Label: "x", Inner: scale, Outer: scale}
	family := Panel{X: axis, Y: axis}
	for i := range 20 {
		family.Lines = append(family.Lines, Line{Name: fmt.Sprint(i), X: []float64{0, 1}, Y: []float64{1, 1 + float64(i)*1e-6}})
	}
	for name, panels := range map[string][]Panel{
		"no panel":  nil,
		"no curve":  {{X: axis, Y: axis}},
		"no point":  {{X: axis, Y: axis, Lines: []Line{{}}}},
		"one point": {{X: axis, Y: axis, Lines: []Line{{X: []float64{1}, Y: []float64{1}}}}},
		"all gaps":  {{X: axis, Y: axis, Lines: []Line{{X: []float64{1, 2}, Y: []float64{math.NaN(), math.Inf(1)}}}}},
		"flat":      {{X: axis, Y: axis, Lines: []Line{{X: []float64{1, 2}, Y: []float64{0, 0}}}}},
		"names":     {{X: Axis{Names: []string{"5gal", "30L"}}, Y: axis, Lines: []Line{{X: []float64{0, 1}, Y: []float64{3, 4}}}}},
		"family":    {family},
	} {
		svg := string(drawn(t, "svg", Figure{Title: name, Panels: panels}))
		if strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			t.Errorf("%s: a place is no number", name)
		}
		parse(t, []byte(svg))
		drawn(t, "png", Figure{Title: name, Panels: panels})
	}
	if err := Write(io.Discard, "gif", Figure{}); err == nil {
		t.Error("an unknown format is drawn")
	}
}

func TestFormat(t *testing.T) {
	for name, want := range map[string]string{"a.svg": "svg", "a.PNG": "png", "a.gif": "", "svg": "", "a.b/c": ""} {
		if got := Format(name); got != want {
			t.Errorf("Format(%q) = %q", name, got)
		}
	}
}

// TestTicks checks that ticks are round, within the range and at most one step
// from its ends.
func TestTicks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-1e4, 1e4).Draw(t, "low")
		high := low + rapid.Float64Range(1e-3, 1e4).Draw(t, "width")
		n := rapid.IntRange(3, 10).Draw(t, "n")
		marks, decimals := ticks(low, high, n)
		if len(marks) < 1 || len(marks) > n+1 {
			t.Fatalf("%d marks from %v to %v", len(marks), low, high)
		}
		for i, m := range marks {
			slack := 1e-6 * (high - low)
			if m < low-slack || m > high+slack {
				t.Fatalf("mark %v is outside %v to %v", m, low, high)
			}
			if i > 0 && tickText(m, decimals) == tickText(marks[i-1], decimals) {
				t.Fatalf("%v and %v read the same", m, marks[i-1])
			}
		}
		a, b := widen(low, high, n)
		if marks, _ := ticks(a, b, n); math.Abs(marks[0]-a) > 1e-6*(b-a) || math.Abs(marks[len(marks)-1]-b) > 1e-6*(b-a) {
			t.Fatalf("%v to %v is widened to %v to %v, with ticks %v", low, high, a, b, marks)
		}
		if a > low+1e-8*(b-a) || b < high-1e-8*(b-a) { // a hair's breadth may stick out
			t.Fatalf("%v to %v is widened to %v to %v", low, high, a, b)
		}
	})
}

// TestNamesApart checks that names never overlap and keep their order.
func TestNamesApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 16).Draw(t, "names")
		var ends []end
		for range n {
			ends = append(ends, end{at: vg.Point{Y: vg.Length(rapid.Float64Range(0, 200).Draw(t, "y"))}})
		}
		slices.SortFunc(ends, func(a, b end) int { return int(math.Copysign(1, float64(b.at.Y-a.at.Y))) })
		places := spread(ends, 10, 0, 200)
		for i := 1; i < n; i++ {
			if places[i-1]-places[i] < 10-1e-9 {
				t.Fatalf("names at %v", places)
			}
		}
		if places[0] > 200+1e-9 || places[n-1] < -1e-9 {
			t.Fatalf("names at %v", places)
		}
	})
}

func BenchmarkSVG(b *testing.B) {
	f := sample()
	for b.Loop() {
		if err := Write(io.Discard, "svg", f); err != nil {
			b.Fatal(err)
		}
	}
}
