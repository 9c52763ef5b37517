package calc

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
)

// Values holds what was typed for the inputs of one calculation, parsed.
type Values struct {
	calc  *Calculation
	cells []cell
	used  bool // the air pressure was read
}

type cell struct {
	given    bool     // typed, rather than left to its default
	set      bool     // has a value at all
	supposed bool     // from elsewhere than the default; see Suppose
	si       float64  // for kinds that are numbers
	read     bool     // asked for by the calculation
	texts    []string // as typed
}

// NewValues returns the values of c with every default set.
func NewValues(c *Calculation) (*Values, error) {
	v := &Values{calc: c, cells: make([]cell, len(c.all))}
	for i := range c.all {
		if d := c.all[i].Default; d != "" {
			if err := v.parse(i, []string{d}); err != nil {
				return nil, fmt.Errorf("default of --%s: %w", c.all[i].Name, err)
			}
		}
	}
	return v, nil
}

// Clone returns an independent copy of v.
func (v *Values) Clone() *Values {
	w := *v
	w.cells = append([]cell(nil), v.cells...)
	return &w
}

// Calculation returns the calculation v belongs to.
func (v *Values) Calculation() *Calculation { return v.calc }

// SetText parses what was typed for the input called name; several texts only
// for an input that repeats.
func (v *Values) SetText(name string, texts ...string) error {
	i := v.calc.index(name)
	if i < 0 {
		return &UsageError{
			What: fmt.Sprintf("%s has no input %q", v.calc.Title(), name),
			Hint: Suggest(name, v.calc.InputNames()),
		}
	}
	if err := v.parse(i, texts); err != nil {
		return named(name, err)
	}
	v.cells[i].given = true
	return nil
}

// SetNumber sets the input called name to si, in the SI unit of its kind. It
// panics if there is no such input or it is not a number.
func (v *Values) SetNumber(name string, si float64) {
	c := v.at(name)
	c.si, c.set, c.given, c.texts = si, true, true, nil
}

func (v *Values) parse(i int, texts []string) error {
	for _, text := range texts {
		if err := CheckWords("", text); err != nil {
			return err
		}
	}
	in := &v.calc.all[i]
	c := cell{set: true, texts: texts, si: quantity.Missing()}
	switch {
	case in.Kind == quantity.Switch:
		c.si = 0
		if len(texts) == 0 || texts[0] == "true" {
			c.si = 1
		}
	case in.Kind == quantity.Text:
		if len(in.Choices) > 0 && !slices.Contains(in.Choices, texts[0]) {
			return &UsageError{
				What: fmt.Sprintf("%q is not one of %s", texts[0], strings.Join(in.Choices, ", ")),
				Hint: Suggest(texts[0], in.Choices),
			}
		}
	case in.Repeat:
		// Parsed by the calculation, in order.
	case in.Named != "":
		si, err := namedVolume(in.Named, texts[0])
		if err != nil {
			return err
		}
		c.si = si
	default:
		si, err := quantity.Parse(in.Kind, texts[0])
		if err != nil {
			return err
		}
		c.si = si
	}
	v.cells[i] = c
	return nil
}

// at returns the cell of the input called name; it panics if the calculation
// has none, a mistake in its description.
func (v *Values) at(name string) *cell {
	i := v.calc.index(name)
	if i < 0 {
		panic("calc: " + v.calc.Title() + " has no input " + name)
	}
	v.cells[i].read = true
	return &v.cells[i]
}

// Read reports whether a run has asked for the input called name.
func (v *Values) Read(name string) bool { return v.cells[v.calc.index(name)].read }

// Given reports whether the input called name was typed.
func (v *Values) Given(name string) bool { return v.at(name).given }

// Has reports whether the input called name has a value, typed or by default.
func (v *Values) Has(name string) bool { return v.at(name).set }

// Number returns a number, count or share, or any other quantity in its SI
// unit; NaN if it has no value.
func (v *Values) Number(name string) float64 {
	if c := v.at(name); c.set {
		return c.si
	}
	return quantity.Missing()
}

// Count returns the whole number nearest to the count called name, 0 if it has
// no value: a tolerance moves a count off the whole numbers, and cutting there
// would take half a guest from each. Beyond a billion it returns a billion,
// which lies outside every range of a count.
func (v *Values) Count(name string) int {
	return quantity.Whole(v.Or(name, 0))
}

// Or returns the number called name, or other if it has no value.
func (v *Values) Or(name string, other float64) float64 {
	if c := v.at(name); c.set {
		return c.si
	}
	return other
}

// On reports whether the switch called name is on.
func (v *Values) On(name string) bool { c := v.at(name); return c.set && c.si == 1 }

// Text returns the text called name, "" if it has none.
func (v *Values) Text(name string) string {
	if c := v.at(name); len(c.texts) > 0 {
		return c.texts[0]
	}
	return ""
}

// Texts returns all texts typed for an input that repeats.
func (v *Values) Texts(name string) []string { return v.at(name).texts }

// Temperature returns the temperature called name, invalid if it has no value.
func (v *Values) Temperature(name string) thermal.Temperature {
	return thermal.Kelvin(v.Number(name))
}

// Gauge returns the gauge pressure called name, invalid if it has no value.
func (v *Values) Gauge(name string) carbonation.Gauge {
	return carbonation.PaG(v.Number(name))
}

// Drop returns the difference of pressures called name, NaN if it has no
// value.
func (v *Values) Drop(name string) quantity.Pascals { return quantity.Pascals(v.Number(name)) }

// Content returns the CO2 content called name, invalid if it has no value.
func (v *Values) Content(name string) carbonation.Content {
	return carbonation.GramsPerLitre(v.Number(name))
}

// Length returns the length called name, NaN if it has no value.
func (v *Values) Length(name string) quantity.Metres { return quantity.Metres(v.Number(name)) }

// Volume returns the volume called name, NaN if it has no value.
func (v *Values) Volume(name string) quantity.CubicMetres {
	return quantity.CubicMetres(v.Number(name))
}

// Mass returns the mass called name, NaN if it has no value.
func (v *Values) Mass(name string) quantity.Kilograms { return quantity.Kilograms(v.Number(name)) }

// Duration returns the time called name, 0 if it has no value. One that a
// Duration cannot hold, 292 years, comes back as the longest or shortest it
// can, which lies outside every range.
func (v *Values) Duration(name string) time.Duration {
	return quantity.Seconds(v.Or(name, 0))
}
