package carbonation

import (
	"errors"
	"fmt"
	"math"

	"example.com/pourwell/internal/quantity"
	"gonum.org/v1/gonum/unit"
)

// Units of pressure. The pound-force per square inch is exact:
// 0.45359237 kg × 9.80665 m/s² over 0.0254² m² (NIST SP 811).
const (
	PSI        unit.Pressure = 0.45359237 * 9.80665 / (0.0254 * 0.0254)
	Bar        unit.Pressure = 1e5
	KPa        unit.Pressure = 1e3
	Atmosphere unit.Pressure = 101325
)

// A Pressure is an absolute pressure, above vacuum. It is opaque so that a
// gauge reading cannot stand for one. The zero value is invalid; a vacuum is
// AbsoluteOf(0).
type Pressure struct {
	pascal float64
	valid  bool
}

// A Gauge is a pressure read on a gauge, against the air around it. It may be
// negative. The zero value is invalid; a gauge at rest reads GaugeOf(0).
type Gauge struct {
	pascal float64
	valid  bool
}

// AbsoluteOf returns the absolute pressure p above vacuum. A p that is
// negative or not finite gives the invalid zero value.
func AbsoluteOf(p unit.Pressure) Pressure {
	if !(0 <= p && p <= math.MaxFloat64) {
		return Pressure{}
	}
	return Pressure{float64(p), true}
}

// GaugeOf returns the gauge pressure p above the air around the gauge. A p
// that is not finite gives the invalid zero value.
func GaugeOf(p unit.Pressure) Gauge {
	if !(-math.MaxFloat64 <= p && p <= math.MaxFloat64) {
		return Gauge{}
	}
	return Gauge{float64(p), true}
}

// Absolute returns the absolute pressure that g reads when the air around the
// gauge is at ambient. It is invalid if g or ambient is, or if g is below
// vacuum.
func (g Gauge) Absolute(ambient Pressure) Pressure {
	if !g.valid || !ambient.valid {
		return Pressure{}
	}
	return AbsoluteOf(unit.Pressure(g.pascal + ambient.pascal))
}

// Gauge returns what a gauge in air at ambient reads for p. It is invalid if
// p or ambient is.
func (p Pressure) Gauge(ambient Pressure) Gauge {
	if !p.valid || !ambient.valid {
		return Gauge{}
	}
	return Gauge{p.pascal - ambient.pascal, true}
}

// IsValid reports whether p is a pressure.
func (p Pressure) IsValid() bool { return p.valid }

// IsValid reports whether g is a gauge reading.
func (g Gauge) IsValid() bool { return g.valid }

// Pascals returns p in pascals above vacuum, NaN if p is invalid.
func (p Pressure) Pascals() float64 { return nanUnless(p.valid, p.pascal) }

// KPa returns p in kilopascals above vacuum, NaN if p is invalid.
func (p Pressure) KPa() float64 { return p.Pascals() / float64(KPa) }

// Bar returns p in bar above vacuum, NaN if p is invalid.
func (p Pressure) Bar() float64 { return p.Pascals() / float64(Bar) }

// PSI returns p in pounds per square inch above vacuum, NaN if p is invalid.
func (p Pressure) PSI() float64 { return p.Pascals() / float64(PSI) }

// Pascals returns g in pascals above the air around, NaN if g is invalid.
func (g Gauge) Pascals() float64 { return nanUnless(g.valid, g.pascal) }

// KPa returns g in kilopascals above the air around, NaN if g is invalid.
func (g Gauge) KPa() float64 { return g.Pascals() / float64(KPa) }

// Bar returns g in bar above the air around, NaN if g is invalid.
func (g Gauge) Bar() float64 { return g.Pascals() / float64(Bar) }

// PSI returns g in pounds per square inch above the air around, NaN if g is
// invalid.
func (g Gauge) PSI() float64 { return g.Pascals() / float64(PSI) }

// String returns p in kilopascals, marked as absolute.
func (p Pressure) String() string {
	if !p.valid {
		return "invalid pressure"
	}
	return fmt.Sprintf("%.2f kPa abs", p.KPa())
}

// String returns g in kilopascals, marked as gauge.
func (g Gauge) String() string {
	if !g.valid {
		return "invalid gauge pressure"
	}
	return fmt.Sprintf("%.2f kPa gauge", g.KPa())
}

var errInvalidPressure = errors.New("carbonation: cannot marshal an invalid pressure")

// MarshalText implements [encoding.TextMarshaler].
func (p Pressure) MarshalText() ([]byte, error) { return marshalPascals(p.valid, p.pascal) }

// MarshalText implements [encoding.TextMarshaler].
func (g Gauge) MarshalText() ([]byte, error) { return marshalPascals(g.valid, g.pascal) }

func marshalPascals(valid bool, pascal float64) ([]byte, error) {
	if !valid {
		return nil, errInvalidPressure
	}
	return fmt.Appendf(nil, "%gPa", pascal), nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads an absolute
// pressure such as "845hPa" or "14.7psi".
func (p *Pressure) UnmarshalText(text []byte) error {
	v, err := quantity.Parse(quantity.Pressure, string(text))
	if err != nil {
		return err
	}
	read := AbsoluteOf(unit.Pressure(v))
	if !read.valid {
		return &quantity.Error{Text: string(text), Kind: quantity.Pressure, What: "is below vacuum", Hint: "for example " + quantity.Pressure.Example()}
	}
	*p = read
	return nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a gauge
// pressure such as "12psi", "0.8bar" or "80kPa".
func (g *Gauge) UnmarshalText(text []byte) error {
	v, err := quantity.Parse(quantity.Gauge, string(text))
	if err != nil {
		return err
	}
	*g = GaugeOf(unit.Pressure(v))
	return nil
}

func nanUnless(valid bool, v float64) float64 {
	if valid {
		return v
	}
	return math.NaN()
}
