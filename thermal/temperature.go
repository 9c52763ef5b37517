package thermal

import (
	"fmt"
	"math"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/internal/water"
)

// zeroCelsius is 0 °C in kelvin.
const zeroCelsius = water.ZeroCelsius

// A Temperature is a point on the temperature scale. It is opaque so that a
// number of degrees cannot stand for one without its scale being named. The
// zero value is invalid.
type Temperature struct {
	kelvin float64 // above 0 for a valid temperature
}

// A Difference is a difference of temperatures, or an interval, in kelvin.
type Difference float64

// Intervals of temperature.
const (
	KelvinStep     Difference = 1
	FahrenheitStep Difference = 5.0 / 9.0
)

// Kelvin returns the temperature t above absolute zero. A t that is not
// finite or not positive gives the invalid zero value.
func Kelvin(t float64) Temperature {
	if !(0 < t && t <= math.MaxFloat64) {
		return Temperature{}
	}
	return Temperature{t}
}

// Celsius returns the temperature of t degrees Celsius, or the invalid zero
// value if that is not above absolute zero.
func Celsius(t float64) Temperature { return Kelvin(t + 273.15) }

// Fahrenheit returns the temperature of t degrees Fahrenheit, or the invalid
// zero value if that is not above absolute zero.
func Fahrenheit(t float64) Temperature { return Celsius((t - 32) * 5 / 9) }

// IsValid reports whether t was made by one of the constructors from a
// temperature above absolute zero.
func (t Temperature) IsValid() bool { return t.kelvin > 0 }

// Kelvin returns t in kelvin, NaN if t is invalid.
func (t Temperature) Kelvin() float64 {
	if t.kelvin > 0 {
		return t.kelvin
	}
	return math.NaN()
}

// Celsius returns t in degrees Celsius, NaN if t is invalid.
func (t Temperature) Celsius() float64 { return t.Kelvin() - 273.15 }

// Fahrenheit returns t in degrees Fahrenheit, NaN if t is invalid.
func (t Temperature) Fahrenheit() float64 { return t.Celsius()*9/5 + 32 }

// Sub returns t − u, NaN if either is invalid.
func (t Temperature) Sub(u Temperature) Difference { return Difference(t.Kelvin() - u.Kelvin()) }

// Add returns t + d, the invalid zero value if that is not above absolute
// zero or t is invalid.
func (t Temperature) Add(d Difference) Temperature { return Kelvin(t.Kelvin() + float64(d)) }

// String returns t in degrees Celsius to two decimals, such as "3.33 °C".
func (t Temperature) String() string {
	if !t.IsValid() {
		return "invalid temperature"
	}
	return fmt.Sprintf("%.2f °C", t.Celsius())
}

// MarshalText implements [encoding.TextMarshaler] with the shortest text in
// kelvin that reads back as the same temperature. An invalid temperature is the
// empty text.
func (t Temperature) MarshalText() ([]byte, error) {
	if !t.IsValid() {
		return nil, nil
	}
	return fmt.Appendf(nil, "%gK", t.kelvin), nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a number with
// its scale, such as "38F", "3.3C" or "276K"; a bare number is refused, and a
// temperature that is not above absolute zero. The empty text is the invalid
// zero value. With an error t stays what it was.
func (t *Temperature) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*t = Temperature{}
		return nil
	}
	k, err := quantity.Parse(quantity.Temperature, string(text))
	if err != nil {
		return err
	}
	read := Kelvin(k)
	if !read.IsValid() {
		what := "is below absolute zero"
		if k == 0 {
			what = "is absolute zero"
		}
		return &quantity.Error{Text: string(text), Kind: quantity.Temperature, What: what, Hint: "which is -273.15C or -459.67F"}
	}
	*t = read
	return nil
}
