package chart

import (
	"image/color"
	"strings"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	stdfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Sizes of letters, and the greys: lines are black, rules light enough not to
// compete with them.
const (
	titleSize = 12.0
	textSize  = 9.0
	smallSize = 8.0
)

var (
	black = color.Gray{0}
	rule  = color.Gray{205}
)

// A pen writes words and strokes on a canvas.
type pen struct {
	canvas        vg.Canvas
	regular, bold font.Face
	room          vg.Length // at the right of the curves, for their names
	twoSides      bool      // some panel has two rulers at its side
}

func newPen() (*pen, error) {
	regular, err := opentype.Parse(liberationsansregular.TTF)
	if err != nil {
		return nil, err
	}
	bold, err := opentype.Parse(liberationsansbold.TTF)
	if err != nil {
		return nil, err
	}
	sans := font.Font{Typeface: "Liberation", Variant: "Sans"}
	p := &pen{regular: font.Face{Font: sans, Face: regular}, bold: font.Face{Font: sans, Face: bold}}
	p.bold.Font.Weight = stdfont.WeightBold
	return p, nil
}

func sized(f font.Face, size vg.Length) font.Face {
	f.Font.Size = size
	return f
}

// Places to hang words from, as a share of their width.
const (
	left   = 0.0
	middle = 0.5
	right  = 1.0
)

// words writes text with its baseline through at, hung from the given share of
// its width.
func (p *pen) words(f font.Face, at vg.Point, hang float64, text string) {
	p.canvas.SetColor(black)
	at.X -= vg.Length(hang) * f.Width(text)
	p.canvas.FillString(f, at, text)
}

// stroke draws a line through points.
func (p *pen) stroke(c color.Color, width vg.Length, dashes []vg.Length, points ...vg.Point) {
	if len(points) < 2 {
		return
	}
	var path vg.Path
	path.Move(points[0])
	for _, at := range points[1:] {
		path.Line(at)
	}
	p.canvas.SetColor(c)
	p.canvas.SetLineWidth(width)
	p.canvas.SetLineDash(dashes, 0)
	p.canvas.Stroke(path)
}

// dot marks a point.
func (p *pen) dot(at vg.Point, radius vg.Length) {
	var path vg.Path
	path.Move(vg.Point{X: at.X + radius, Y: at.Y})
	path.Arc(at, radius, 0, 6.283185307179586)
	path.Close()
	p.canvas.SetColor(black)
	p.canvas.Fill(path)
}

// wrap breaks text between words into lines no wider than width.
func wrap(f font.Face, width vg.Length, text string) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && f.Width(longer) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

const (
	pageMargin = 12 * vg.Length(1)
	leading    = 1.3 // line height over letter size
)

func (p *pen) underLines(f Figure) []string {
	return wrap(sized(p.regular, smallSize), figureWidth-2*pageMargin, f.Under)
}

func (p *pen) titleLines(f Figure) []string {
	return wrap(sized(p.bold, titleSize), figureWidth-2*pageMargin, f.Title)
}

func (p *pen) headHeight(f Figure) vg.Length {
	return pageMargin + leading*(titleSize*vg.Length(len(p.titleLines(f)))+smallSize*vg.Length(len(p.underLines(f))))
}

// head writes the title and the inputs, on paper that is white.
func (p *pen) head(f Figure, height vg.Length) {
	var page vg.Path
	page.Move(vg.Point{})
	page.Line(vg.Point{X: figureWidth})
	page.Line(vg.Point{X: figureWidth, Y: height})
	page.Line(vg.Point{Y: height})
	page.Close()
	p.canvas.SetColor(color.White)
	p.canvas.Fill(page)
	at := vg.Point{X: pageMargin, Y: height - pageMargin*0.4}
	for _, l := range p.titleLines(f) {
		at.Y -= leading * titleSize
		p.words(sized(p.bold, titleSize), at, left, l)
	}
	for _, l := range p.underLines(f) {
		at.Y -= leading * smallSize
		p.words(sized(p.regular, smallSize), at, left, l)
	}
}
