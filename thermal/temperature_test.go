package thermal

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/internal/quantity"
	"pgregory.net/rapid"
)

var (
	_ encoding.TextMarshaler   = Temperature{}
	_ encoding.TextUnmarshaler = (*Temperature)(nil)
)

// Fixed points of the scales, exact by definition or, for −40, by arithmetic.
func TestScales(t *testing.T) {
	for _, c := range []struct{ k, c, f float64 }{
		{273.15, 0, 32}, {373.15, 100, 212}, {233.15, -40, -40}, {255.372222222222, -17.7777777777778, 0}, {273.16, 0.01, 32.018},
	} {
		for _, temp := range []Temperature{Kelvin(c.k), Celsius(c.c), Fahrenheit(c.f)} {
			checktest.Near(t, "kelvin", temp.Kelvin(), c.k, 1e-9)
			checktest.Near(t, "celsius", temp.Celsius(), c.c, 1e-9)
			checktest.Near(t, "fahrenheit", temp.Fahrenheit(), c.f, 1e-9)
		}
	}
	checktest.Near(t, "a step of Fahrenheit", float64(FahrenheitStep), 5.0/9, 1e-15)
	checktest.Near(t, "48 °F less 38 °F", float64(Fahrenheit(48).Sub(Fahrenheit(38))), 10*float64(FahrenheitStep), 1e-9)
}

func TestTemperatureNonsense(t *testing.T) {
	for _, temp := range []Temperature{
		{}, Kelvin(0), Kelvin(-1), Kelvin(math.NaN()), Kelvin(math.Inf(1)), Celsius(-273.15), Fahrenheit(-460),
		Celsius(20).Add(-300), Celsius(20).Add(Difference(math.NaN())), Temperature{}.Add(5),
	} {
		if temp.IsValid() || !math.IsNaN(temp.Celsius()) || !math.IsNaN(temp.Fahrenheit()) || !math.IsNaN(float64(temp.Sub(Celsius(1)))) {
			t.Errorf("%v is taken for a temperature", temp)
		}
		if text, err := temp.MarshalText(); err != nil || len(text) != 0 || temp.String() != "invalid temperature" {
			t.Errorf("%v is written", temp)
		}
	}
}

func TestTemperatureText(t *testing.T) {
	for text, want := range map[string]float64{"38F": 276.483333333, "3.3C": 276.45, "276K": 276, "-2C": 271.15, "5 °C": 278.15} {
		var temp Temperature
		if err := temp.UnmarshalText([]byte(text)); err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		checktest.Near(t, text, temp.Kelvin(), want, 1e-6)
	}
	for _, text := range []string{" ", "38", "38X", "warm", "NaNC", "-500C", "0K", "-1K", "-459.68F", "-273.15C", "1e999C"} {
		temp := Celsius(1)
		err := temp.UnmarshalText([]byte(text))
		var bad *quantity.Error
		if !errors.As(err, &bad) || bad.Text != text || bad.Hint == "" || temp != Celsius(1) {
			t.Errorf("%q is read as %v, %v", text, temp, err)
		}
	}
	temp := Celsius(1)
	if err := temp.UnmarshalText(nil); err != nil || temp.IsValid() {
		t.Errorf("the empty text is read as %v, %v", temp, err)
	}
	if got := Fahrenheit(32).Fahrenheit(); got != 32 {
		t.Errorf("32 °F are %v °F", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		want := Kelvin(rapid.Float64Range(1e-3, 1e6).Draw(t, "k"))
		text, err := want.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var got Temperature
		if err := got.UnmarshalText(text); err != nil || got != want {
			t.Fatalf("%v comes back as %v, %v", want, got, err)
		}
	})
}

// The scales meet exactly where both have whole degrees, so that bounds in
// degrees Celsius are inclusive in degrees Fahrenheit too.
func TestScalesMeet(t *testing.T) {
	for _, c := range []float64{-40, -10, 0, 5, 10, 35, 40, 45, 100} {
		f := c*9/5 + 32
		if got := Fahrenheit(f); got != Celsius(c) {
			t.Errorf("%v °F is %v K, %v °C is %v K", f, got.Kelvin(), c, Celsius(c).Kelvin())
		}
		var read Temperature
		if err := read.UnmarshalText(fmt.Appendf(nil, "%gF", f)); err != nil || read != Celsius(c) {
			t.Errorf("%gF reads as %v K (%v), want %v K", f, read.Kelvin(), err, Celsius(c).Kelvin())
		}
	}
}

// No text is read as what is no temperature, and what is read is written and
// read back.
func FuzzTemperatureText(f *testing.F) {
	for _, text := range []string{"38F", "3.3C", "276K", "-500C", "0K", "1e-320K", "1/2C", "-459.67F", "1 1/2C", "38", "5 °C"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var temp, back Temperature
		if err := temp.UnmarshalText([]byte(text)); (err == nil && text != "") != temp.IsValid() {
			t.Fatalf("%q: %v, %v", text, temp, err)
		} else if err != nil {
			return
		}
		written, err := temp.MarshalText()
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		if err := back.UnmarshalText(written); err != nil || back != temp {
			t.Fatalf("%q: %v is written as %q and read as %v, %v", text, temp, written, back, err)
		}
	})
}
