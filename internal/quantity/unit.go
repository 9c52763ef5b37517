package quantity

import (
	"fmt"
	"math"
	"strings"
	"sync"
)

// A unit is one row of the table of units: what a suffix means, how it is
// written beside a number, and in which units a person reads it.
type unit struct {
	suffix string // as keys end in
	symbol string // as it is written behind a number
	of     string // what it measures: suffixes of one such word convert into each other
	si     float64
	zero   float64 // SI = value × si + zero
	per    float64 // the inverse of si where dividing would not give it to the last digit
	us     form
	metric form
}

// units is the one table of units, in the order in which the help lists the
// suffixes of keys. A row without a form of display is written by its symbol.
var units = [...]unit{
	{suffix: "c", symbol: "°C", of: "temperature", si: 1, zero: 273.15, us: form{unit: "°F", factor: 1.8, shift: 32, decimals: 1}, metric: form{unit: "°C", factor: 1, decimals: 1}},
	{suffix: "k", symbol: "K", of: "difference", si: 1, us: form{unit: "°F", factor: 1.8, decimals: 1}, metric: form{unit: "K", factor: 1, decimals: 1}},
	{suffix: "kpa", symbol: "kPa", of: "pressure", si: 1e3, us: form{unit: "psi", factor: 1e3 / psi, decimals: 1}, metric: form{unit: "bar", factor: 0.01, decimals: 2}},
	{suffix: "kpa_abs", symbol: "kPa abs", of: "pressure", si: 1e3, us: form{unit: "psi abs", factor: 1e3 / psi, decimals: 1}, metric: form{unit: "bar abs", factor: 0.01, decimals: 2}},
	{suffix: "kpa_per_m", symbol: "kPa/m", of: "gradient", si: 1e3, us: form{unit: "psi/ft", factor: 1e3 / psi * foot, decimals: 2}, metric: form{unit: "bar/m", factor: 0.01, decimals: 3}},
	{suffix: "kpa_per_glass", symbol: "kPa a glass", of: "pressure", si: 1e3, us: form{unit: "psi a glass", factor: 1e3 / psi, decimals: 2}, metric: form{unit: "bar a glass", factor: 0.01, decimals: 3}},
	{suffix: "volumes", symbol: "volumes", of: "content", si: volumeCO2, per: 1 / volumeCO2, us: form{unit: "volumes", factor: 1, decimals: 2}, metric: form{unit: "volumes", factor: 1, decimals: 2}},
	same("g_per_l", "g/L", "content", 1, form{unit: "g/L", factor: 1, decimals: 2}),
	same("mg_per_l", "mg/L", "content", 1e-3, form{unit: "mg/L", factor: 1, decimals: 2}),
	{
		suffix: "l", symbol: "L", of: "volume", si: litre,
		us:     form{unit: "gal", factor: litre / usGallon, decimals: 2, small: 2, below: &form{unit: "fl oz", factor: litre / usOunce, decimals: 1}},
		metric: form{unit: "L", factor: 1, decimals: 1, small: 2, below: &form{unit: "mL", factor: 1000, decimals: 0}},
	},
	{suffix: "m3", symbol: "m³", of: "volume", si: 1, us: form{unit: "ft³", factor: 1 / (foot * foot * foot), decimals: 0}, metric: form{unit: "m³", factor: 1, decimals: 1}},
	{
		suffix: "m", symbol: "m", of: "length", si: 1,
		us:     form{unit: "ft", factor: 1 / foot, decimals: 1, small: 0.6, below: &form{unit: "in", factor: 1 / inch, decimals: 1}},
		metric: form{unit: "m", factor: 1, decimals: 2, small: 0.1, below: &form{unit: "mm", factor: 1000, decimals: 1}},
	},
	{suffix: "mm", symbol: "mm", of: "length", si: 1e-3, us: form{unit: "in", factor: 1e-3 / inch, decimals: 3}, metric: form{unit: "mm", factor: 1, decimals: 1}},
	{
		suffix: "kg", symbol: "kg", of: "mass", si: 1,
		us:     form{unit: "lb", factor: 1 / pound, decimals: 1, small: 0.4, below: &form{unit: "oz", factor: 1 / ounceMass, decimals: 1}},
		metric: form{unit: "kg", factor: 1, decimals: 1, small: 0.4, below: &form{unit: "g", factor: 1000, decimals: 0}},
	},
	{suffix: "kg_per_l", symbol: "kg/L", of: "density", si: 1 / litre, us: form{unit: "lb/gal", factor: usGallon / litre / pound, decimals: 2}, metric: form{unit: "kg/L", factor: 1, decimals: 3}},
	{suffix: "s", symbol: "s", of: "time", si: 1},
	{suffix: "g_per_h", symbol: "g/h", of: "mass flow", si: 1e-3 / hour, us: form{unit: "oz/h", factor: 1e-3 / ounceMass, decimals: 1}, metric: form{unit: "g/h", factor: 1, decimals: 0}},
	{suffix: "kg_per_h", symbol: "kg/h", of: "mass flow", si: 1.0 / hour, us: form{unit: "lb/h", factor: 1 / pound, decimals: 1}, metric: form{unit: "kg/h", factor: 1, decimals: 1}},
	{suffix: "l_per_min", symbol: "L/min", of: "flow", si: litre / minute, us: form{unit: "oz/s", factor: litre / minute / usOunce, decimals: 2}, metric: form{unit: "L/min", factor: 1, decimals: 2}},
	{suffix: "m_per_s", symbol: "m/s", of: "speed", si: 1, us: form{unit: "mph", factor: hour / (5280 * foot), decimals: 1}, metric: form{unit: "m/s", factor: 1, decimals: 1}},
	same("w", "W", "power", 1, form{unit: "W", factor: 1, decimals: 0}),
	same("w_per_m2", "W/m²", "irradiance", 1, form{unit: "W/m²", factor: 1, decimals: 0}),
	same("w_per_k", "W/K", "conductance", 1, form{unit: "W/K", factor: 1, decimals: 2}),
	same("share", "", "share", 1, form{unit: "%", factor: 100, decimals: 1}),
	same("probability", "", "share", 1, form{unit: "%", factor: 100, decimals: 1}),

	// Of the working alone; no key ends in one of these.
	{suffix: "pa", symbol: "Pa", of: "pressure", si: 1},
	{suffix: "mpa", symbol: "MPa", of: "pressure", si: 1e6},
	{suffix: "ml", symbol: "mL", of: "volume", si: 1e-6},
	{suffix: "per_h", symbol: "1/h", of: "rate", si: 1.0 / hour},
	{suffix: "um", symbol: "µm", of: "length", si: 1e-6},
	{suffix: "min", symbol: "min", of: "time", si: minute},
	{suffix: "h", symbol: "h", of: "time", si: hour},
	{suffix: "d", symbol: "days", of: "time", si: 24 * hour},
	{suffix: "pa_per_m", symbol: "Pa/m", of: "gradient", si: 1},
	{suffix: "psi_per_ft", symbol: "psi/ft", of: "gradient", si: psi / foot},
	{suffix: "n_per_m", symbol: "N/m", of: "surface tension", si: 1},
	{suffix: "per_s", symbol: "1/s", of: "rate", si: 1},
	{suffix: "m2", symbol: "m²", of: "area", si: 1},
	{suffix: "m2_per_s", symbol: "m²/s", of: "diffusivity", si: 1},
	{suffix: "m3_per_s", symbol: "m³/s", of: "flow", si: 1},
	{suffix: "kg_per_m3", symbol: "kg/m³", of: "density", si: 1},
	{suffix: "kg_per_keg", symbol: "kg a keg", of: "mass", si: 1},
	{suffix: "g_per_l_vessel", symbol: "g a litre of vessel", of: "content", si: 1},
	{suffix: "l_per_l_vessel", symbol: "L a litre of vessel", of: "ratio", si: 1},
	{suffix: "pa_l_per_k_vessel", symbol: "Pa L/K a litre of vessel", of: "gas", si: 1e-3},
	{suffix: "pa_s", symbol: "Pa s", of: "viscosity", si: 1},
	{suffix: "cm3_per_mol", symbol: "cm³/mol", of: "molar volume", si: 1e-6},
	{suffix: "mol_per_l_atm", symbol: "mol/(L atm)", of: "solubility", si: 1e3 / 101325},
	{suffix: "j_per_k", symbol: "J/K", of: "heat capacity", si: 1},
	{suffix: "j_per_kg", symbol: "J/kg", of: "specific heat", si: 1},
	{suffix: "j_per_kg_k", symbol: "J/(kg K)", of: "specific heat capacity", si: 1},
	{suffix: "j_per_m_k", symbol: "J/(m K)", of: "heat capacity of a length", si: 1},
	{suffix: "w_per_m_k", symbol: "W/(m K)", of: "conductivity", si: 1},
	{suffix: "w_per_m2_k", symbol: "W/(m² K)", of: "film coefficient", si: 1},
	{suffix: "w_per_k_m", symbol: "W/(K m)", of: "conductivity", si: 1},
	{suffix: "w_per_k_kg", symbol: "W/(K kg)", of: "conductance of a mass", si: 1},
	{suffix: "k_per_w", symbol: "K/W", of: "resistance", si: 1},
	{suffix: "k_m_per_w", symbol: "K m/W", of: "resistance of a length", si: 1},
	{suffix: "plato", symbol: "°P", of: "extract", si: 1},
	{suffix: "percent_by_mass", symbol: "% w/w", of: "mass share", si: 0.01},
	{suffix: "percent_by_volume", symbol: "% vol", of: "volume share", si: 0.01},
	{suffix: "degree", symbol: "°", of: "angle", si: math.Pi / 180},
}

func same(suffix, symbol, of string, si float64, f form) unit {
	return unit{suffix: suffix, symbol: symbol, of: of, si: si, us: f, metric: f}
}

// bySuffix finds rows of the table; made when first asked for.
var bySuffix = sync.OnceValue(func() map[string]*unit {
	rows := make(map[string]*unit, len(units))
	for i := range units {
		rows[units[i].suffix] = &units[i]
	}
	return rows
})

// displayed returns the row of a suffix that keys end in; nil if there is none.
func displayed(suffix string) *unit {
	if u := bySuffix()[suffix]; u != nil && u.us.unit != "" {
		return u
	}
	return nil
}

// row returns the row of a suffix. It panics if the table has none, a mistake
// in the program.
func row(suffix string) *unit {
	if u := bySuffix()[suffix]; u != nil {
		return u
	}
	panic(fmt.Sprintf("quantity: no unit has the suffix %q", suffix))
}

// Symbol returns the unit of a suffix as it is written behind a number, such as
// "kPa"; "" for a pure number and for a share, which counts from 0 to 1. It
// panics if the table has no such suffix.
func Symbol(suffix string) string {
	if suffix == "" {
		return ""
	}
	return row(suffix).symbol
}

// SI returns v, in the unit of a suffix, in SI: what [Parse] returns for its
// kind. A pure number, with the suffix "", is itself.
func SI(suffix string, v float64) float64 {
	if suffix == "" {
		return v
	}
	u := row(suffix)
	return v*u.si + u.zero
}

// In returns an SI value in the unit of a suffix: the reverse of [SI].
func In(suffix string, si float64) float64 {
	if suffix == "" {
		return si
	}
	u := row(suffix)
	switch {
	case u.per != 0:
		return si * u.per
	case u.si < 1:
		return (si - u.zero) * (1 / u.si) // so that 0.005 m are 5 mm to the last digit
	}
	return (si - u.zero) / u.si
}

// Convert returns v, in the unit of one suffix, in that of another. It panics
// if they do not measure the same.
func Convert(from, to string, v float64) float64 {
	if from == to {
		return v
	}
	if !Alike(from, to) {
		panic(fmt.Sprintf("quantity: %q and %q do not measure the same", from, to))
	}
	return In(to, SI(from, v))
}

// Alike reports whether numbers of two suffixes measure the same, so that
// [Convert] takes them.
func Alike(from, to string) bool {
	of := func(suffix string) string {
		if m := Measures(suffix); m != "" {
			return m
		}
		return "share" // a pure number may be one
	}
	return from == to || of(from) == of(to)
}

// Measures returns what numbers of a suffix measure, such as "pressure"; "" for a
// pure number.
func Measures(suffix string) string {
	if suffix == "" {
		return ""
	}
	return row(suffix).of
}

// IsUnit reports whether word is a unit that numbers are shown in, so that a
// line does not break before it.
func IsUnit(word string) bool {
	first, _, _ := strings.Cut(word, " ")
	return first != "" && shownUnits()[first]
}

// shownUnits holds the first word of every unit of display.
var shownUnits = sync.OnceValue(func() map[string]bool {
	all := map[string]bool{"h": true, "min": true, "s": true}
	add := func(f *form) {
		for ; f != nil; f = f.below {
			first, _, _ := strings.Cut(f.unit, " ")
			all[first] = true
		}
	}
	for i := range units {
		add(&units[i].us)
		add(&units[i].metric)
	}
	return all
})

// A KeySuffix is a unit that keys of results end in.
type KeySuffix struct{ Suffix, Symbol string }

// KeySuffixes returns the suffixes that keys end in, in the order of the table.
func KeySuffixes() []KeySuffix {
	var all []KeySuffix
	for i := range units {
		if u := &units[i]; (u.us.unit != "" || u.suffix == "s") && !strings.HasSuffix(u.suffix, "_abs") {
			all = append(all, KeySuffix{u.suffix, u.symbol})
		}
	}
	return all
}
