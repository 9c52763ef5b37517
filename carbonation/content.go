package carbonation

import (
	"fmt"
	"math"

	"example.com/pourwell/internal/quantity"
)

// gramsPerLitrePerVolume is the mass of one volume of CO2 per volume of
// liquid: the density of CO2 at 0 °C and 101.325 kPa as a real gas, 22.2630
// L/mol, in g/L. Source: Span & Wagner, J. Phys. Chem. Ref. Data 25 (1996)
// 1509, equation of state evaluated. The ideal gas gives 1.9635, the trade
// rounds to 2.
const gramsPerLitrePerVolume = 1.9768

// A Content is an amount of dissolved CO2 per amount of liquid. The zero
// value is invalid; flat beer is Volumes(0).
type Content struct {
	gramsPerLitre float64
	valid         bool
}

// Volumes returns the content of v volumes of CO2, measured at 0 °C and
// 101.325 kPa, per volume of liquid. A v that is negative or not finite gives
// the invalid zero value. One volume is 1.9768 g/L.
func Volumes(v float64) Content { return GramsPerLitre(v * gramsPerLitrePerVolume) }

// GramsPerLitre returns the content of c grams of CO2 per litre of liquid. A c
// that is negative or not finite gives the invalid zero value.
func GramsPerLitre(c float64) Content {
	if !(0 <= c && c <= math.MaxFloat64) {
		return Content{}
	}
	return Content{c, true}
}

// IsValid reports whether c is a content.
func (c Content) IsValid() bool { return c.valid }

// Volumes returns c in volumes of CO2 per volume of liquid, NaN if c is
// invalid.
func (c Content) Volumes() float64 { return c.GramsPerLitre() / gramsPerLitrePerVolume }

// GramsPerLitre returns c in grams per litre, NaN if c is invalid.
func (c Content) GramsPerLitre() float64 { return nanUnless(c.valid, c.gramsPerLitre) }

// String returns c in volumes, such as "2.57 volumes".
func (c Content) String() string {
	if !c.valid {
		return "invalid content"
	}
	return fmt.Sprintf("%.2f volumes", c.Volumes())
}

// MarshalText implements [encoding.TextMarshaler]: grams in a litre that read
// back as the same content, such as "4.942g/L". An invalid content is the empty
// text.
func (c Content) MarshalText() ([]byte, error) {
	if !c.valid {
		return nil, nil
	}
	return fmt.Appendf(nil, "%gg/L", c.gramsPerLitre), nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a content such
// as "2.5vol" or "5g/L"; the empty text is the invalid zero value. With an error
// c stays what it was.
func (c *Content) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*c = Content{}
		return nil
	}
	v, err := quantity.Parse(quantity.Content, string(text))
	if err != nil {
		return err
	}
	read := GramsPerLitre(v)
	if !read.valid {
		return &quantity.Error{Text: string(text), Kind: quantity.Content, What: "is less than nothing", Hint: "for example " + quantity.Content.Example()}
	}
	*c = read
	return nil
}
