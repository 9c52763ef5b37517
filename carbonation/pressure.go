package carbonation

import (
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
// gauge reading cannot stand for one, nor be converted into one. The zero value
// is invalid; a vacuum is PaA(0).
type Pressure struct {
	pascal float64 // above vacuum
	valid  bool
}

// A Gauge is a pressure read on a gauge, against the air around it. It may be
// negative. The zero value is invalid; a gauge at rest reads PaG(0).
type Gauge struct {
	above float64 // the air around, Pa; not the name it has in Pressure, so that neither converts into the other
	valid bool
}

// PSIA returns the absolute pressure of p pounds per square inch above vacuum. A
// p that is negative or not finite gives the invalid zero value.
func PSIA(p float64) Pressure { return PaA(p * float64(PSI)) }

// BarA returns the absolute pressure of p bar above vacuum, as [PSIA].
func BarA(p float64) Pressure { return PaA(p * float64(Bar)) }

// KPaA returns the absolute pressure of p kilopascals above vacuum, as [PSIA].
func KPaA(p float64) Pressure { return PaA(p * float64(KPa)) }

// PaA returns the absolute pressure of p pascals above vacuum, as [PSIA].
func PaA(p float64) Pressure {
	if !(0 <= p && p <= math.MaxFloat64) {
		return Pressure{}
	}
	return Pressure{p, true}
}

// PSIG returns the gauge pressure of p pounds per square inch above the air
// around the gauge. A p that is not finite gives the invalid zero value.
func PSIG(p float64) Gauge { return PaG(p * float64(PSI)) }

// BarG returns the gauge pressure of p bar above the air around, as [PSIG].
func BarG(p float64) Gauge { return PaG(p * float64(Bar)) }

// KPaG returns the gauge pressure of p kilopascals above the air around, as
// [PSIG].
func KPaG(p float64) Gauge { return PaG(p * float64(KPa)) }

// PaG returns the gauge pressure of p pascals above the air around, as [PSIG].
func PaG(p float64) Gauge {
	if !(-math.MaxFloat64 <= p && p <= math.MaxFloat64) {
		return Gauge{}
	}
	return Gauge{p, true}
}

// Absolute returns the absolute pressure that g reads when the air around the
// gauge is at ambient. It is invalid if g or ambient is, or if g is below
// vacuum.
func (g Gauge) Absolute(ambient Pressure) Pressure {
	if !g.valid || !ambient.valid {
		return Pressure{}
	}
	return PaA(g.above + ambient.pascal)
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
func (g Gauge) Pascals() float64 { return nanUnless(g.valid, g.above) }

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

// MarshalText implements [encoding.TextMarshaler]: pascals that read back as the
// same pressure, marked as absolute, such as "101325Pa abs". An invalid pressure
// is the empty text.
func (p Pressure) MarshalText() ([]byte, error) {
	if !p.valid {
		return nil, nil
	}
	return fmt.Appendf(nil, "%gPa abs", p.pascal), nil
}

// MarshalText implements [encoding.TextMarshaler]: pascals that read back as the
// same reading, marked as such, such as "80000Pa gauge". An invalid gauge
// pressure is the empty text.
func (g Gauge) MarshalText() ([]byte, error) {
	if !g.valid {
		return nil, nil
	}
	return fmt.Appendf(nil, "%gPa gauge", g.above), nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads an absolute
// pressure such as "26.7psia" or "184kPa abs", and that of the air bare in the
// units of a barometer, "845hPa", "845mbar", "25inHg" or "84.5kPa"; "12psi" could
// be a gauge reading and is refused, as is one that says so. The empty text is
// the invalid zero value. With an error p stays what it was.
func (p *Pressure) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*p = Pressure{}
		return nil
	}
	v, err := quantity.Parse(quantity.Pressure, string(text))
	if err != nil {
		return err
	}
	read := PaA(v)
	if !read.valid {
		return &quantity.Error{Text: string(text), Kind: quantity.Pressure, What: "is below vacuum", Hint: "for example " + quantity.Pressure.Example()}
	}
	*p = read
	return nil
}

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a gauge
// pressure such as "12psi", "12psig", "0.8barg" or "80kPa gauge"; an absolute
// one is refused. The empty text is the invalid zero value. With an error g
// stays what it was.
func (g *Gauge) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*g = Gauge{}
		return nil
	}
	v, err := quantity.Parse(quantity.Gauge, string(text))
	if err != nil {
		return err
	}
	*g = PaG(v)
	return nil
}

func nanUnless(valid bool, v float64) float64 {
	if valid {
		return v
	}
	return math.NaN()
}
