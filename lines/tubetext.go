package lines

import (
	"errors"
	"fmt"
	"strings"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/unit"
)

// MarshalText implements [encoding.TextMarshaler] with text that UnmarshalText
// reads back as the same tube.
func (t Tube) MarshalText() ([]byte, error) {
	if t.Bore <= 0 {
		return nil, errors.New("lines: cannot marshal a tube without a bore")
	}
	text := fmt.Appendf(nil, "%gm", float64(t.Bore))
	if t.Length != 0 {
		text = fmt.Appendf(text, ":%gm", float64(t.Length))
	}
	for _, part := range []struct {
		word string
		size unit.Length
	}{{"coil", t.Coil}, {"wall", t.Wall}, {"rough", t.Roughness}} {
		if part.size != 0 {
			text = fmt.Appendf(text, ":%s%gm", part.word, float64(part.size))
		}
	}
	if t.Material != "" {
		text = fmt.Appendf(text, ":%s", t.Material)
	}
	return text, nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads the bore, then
// the length if it is known, then what else is: a material, coil and the mean
// diameter of the winding, wall and its thickness, rough and its height. The
// parts are set apart by colons, or by x:
//
//	3/16in:5ft
//	3/16in x 5ft vinyl
//	7mm:10m:coil95mm
//	1/4in-od:20ft:wall0.7mm:stainless
//
// A bore written with -od is an outside diameter, and needs a wall.
func (t *Tube) UnmarshalText(text []byte) error {
	whole := string(text)
	fail := func(what, hint string) error {
		return &quantity.Error{Text: whole, Kind: quantity.Length, What: what, Hint: hint}
	}
	parts := tubeParts(whole)
	bore, isOD := strings.CutSuffix(parts[0], "-od")
	var out Tube
	var err error
	if out.Bore, err = parseLength(bore); err != nil {
		return err
	}
	for i, part := range parts[1:] {
		switch word, size := tubeWord(part); {
		case word == "" && i == 0:
			out.Length, err = parseLength(size)
		case word == "coil" && size != "":
			out.Coil, err = parseLength(size)
		case word == "wall" && size != "":
			out.Wall, err = parseLength(size)
		case word == "rough" && size != "":
			out.Roughness, err = parseLength(size)
		case size == "" && word == materialOf(word).name:
			out.Material = word
		default:
			what := fmt.Sprintf("has the part %q that is no part of a tube", part)
			if near := quantity.Nearest(word, tubeWords()); near != "" {
				what += fmt.Sprintf(" (did you mean %s?)", near)
			}
			return fail(what, "for example 3/16in:5ft, 7mm:10m:coil95mm or 1/4in-od:20ft:wall0.7mm:stainless")
		}
		if err != nil {
			return err
		}
	}
	if isOD {
		if out.Wall <= 0 {
			return fail("is an outside diameter without a wall", "add the wall, for example "+parts[0]+":20ft:wall0.7mm, or give the bore")
		}
		od, err := TubeOfOD(out.Bore, out.Wall, out.Length)
		if err != nil {
			return err
		}
		out.Bore = od.Bore
	}
	*t = out
	return nil
}

// tubeParts splits the text of a tube into bore, length and the rest. A word
// after a blank starts a part of its own: "5ft vinyl".
func tubeParts(text string) []string {
	marks := []string{"×", ":", " x ", ":"}
	for _, word := range tubeWords() {
		marks = append(marks, " "+word, ":"+word)
	}
	var parts []string
	for part := range strings.SplitSeq(strings.NewReplacer(marks...).Replace(strings.ToLower(text)), ":") {
		if part = strings.TrimSpace(part); part != "" || len(parts) == 0 {
			parts = append(parts, part)
		}
	}
	return parts
}

// tubeWords lists the words that may follow bore and length.
func tubeWords() []string {
	words := []string{"coil", "wall", "rough"}
	for _, m := range materials {
		words = append(words, m.name)
	}
	return words
}

// tubeWord splits a part into its leading word and the size after it. A part
// that starts with a digit is all size.
func tubeWord(part string) (word, size string) {
	end := strings.IndexFunc(part, func(r rune) bool { return r >= '0' && r <= '9' || r == '.' || r == ' ' || r == '-' || r == '+' })
	if end < 0 {
		return part, ""
	}
	return part[:end], strings.TrimSpace(part[end:])
}

func parseLength(text string) (unit.Length, error) {
	v, err := quantity.Parse(quantity.Length, text)
	return unit.Length(v), err
}

// MarshalText implements [encoding.TextMarshaler].
func (h Hardware) MarshalText() ([]byte, error) {
	return fmt.Appendf(nil, "%gPa at %gm3/s", float64(h.Loss), float64(h.At)), nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a loss and the
// flow at which it was read, such as "2psi at 2oz/s".
func (h *Hardware) UnmarshalText(text []byte) error {
	loss, flow, ok := strings.Cut(string(text), " at ")
	if !ok {
		loss, flow, ok = strings.Cut(string(text), "@")
	}
	if !ok {
		return &quantity.Error{
			Text: string(text), Kind: quantity.Gauge,
			What: "is not a loss at a flow", Hint: `for example "2psi at 2oz/s"`,
		}
	}
	p, err := quantity.Parse(quantity.Gauge, loss)
	if err != nil {
		return err
	}
	q, err := quantity.Parse(quantity.Flow, flow)
	if err != nil {
		return err
	}
	*h = Hardware{unit.Pressure(p), Flow(q)}
	return nil
}
