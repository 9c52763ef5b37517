package quantity

import (
	"math"
	"strconv"
	"strings"
)

// A System says in which units a person reads an answer.
type System uint8

// Both shows US units with the metric ones beside them.
const (
	Both System = iota
	US
	Metric
)

// A form is how one unit system writes a number: shown = value × factor +
// shift, with the given decimals. Below small, in the value's own unit, the
// next form takes over.
type form struct {
	unit          string
	factor, shift float64
	decimals      int
	small         float64
	below         *form
}

// displays lists, for each unit suffix of a result key, how people read it.
// A suffix whose two forms are equal reads the same everywhere.
var displays = map[string]struct{ us, metric form }{
	"c":             {form{unit: "°F", factor: 1.8, shift: 32, decimals: 1}, form{unit: "°C", factor: 1, decimals: 1}},
	"k":             {form{unit: "°F", factor: 1.8, decimals: 1}, form{unit: "K", factor: 1, decimals: 1}},
	"kpa":           {form{unit: "psi", factor: 1e3 / psi, decimals: 1}, form{unit: "bar", factor: 0.01, decimals: 2}},
	"kpa_per_m":     {form{unit: "psi/ft", factor: 1e3 / psi * foot, decimals: 2}, form{unit: "bar/m", factor: 0.01, decimals: 3}},
	"kpa_per_glass": {form{unit: "psi a glass", factor: 1e3 / psi, decimals: 2}, form{unit: "bar a glass", factor: 0.01, decimals: 3}},
	"volumes":       same(form{unit: "volumes", factor: 1, decimals: 2}),
	"g_per_l":       same(form{unit: "g/L", factor: 1, decimals: 2}),
	"mg_per_l":      same(form{unit: "mg/L", factor: 1, decimals: 2}),
	"l": {
		form{unit: "gal", factor: litre / usGallon, decimals: 2, small: 2, below: &form{unit: "fl oz", factor: litre / usOunce, decimals: 1}},
		form{unit: "L", factor: 1, decimals: 1, small: 2, below: &form{unit: "mL", factor: 1000, decimals: 0}},
	},
	"m3": {form{unit: "ft³", factor: 1 / (foot * foot * foot), decimals: 0}, form{unit: "m³", factor: 1, decimals: 1}},
	"kg": {
		form{unit: "lb", factor: 1 / pound, decimals: 1, small: 0.4, below: &form{unit: "oz", factor: 1 / ounceMass, decimals: 1}},
		form{unit: "kg", factor: 1, decimals: 1, small: 0.4, below: &form{unit: "g", factor: 1000, decimals: 0}},
	},
	"g_per_h":     {form{unit: "oz/h", factor: 1e-3 / ounceMass, decimals: 1}, form{unit: "g/h", factor: 1, decimals: 0}},
	"kg_per_h":    {form{unit: "lb/h", factor: 1 / pound, decimals: 1}, form{unit: "kg/h", factor: 1, decimals: 1}},
	"kg_per_l":    {form{unit: "lb/gal", factor: usGallon / litre / pound, decimals: 2}, form{unit: "kg/L", factor: 1, decimals: 3}},
	"m":           {form{unit: "ft", factor: 1 / foot, decimals: 1, small: 0.6, below: &form{unit: "in", factor: 1 / inch, decimals: 1}}, form{unit: "m", factor: 1, decimals: 2, small: 0.1, below: &form{unit: "mm", factor: 1000, decimals: 1}}},
	"mm":          {form{unit: "in", factor: 1e-3 / inch, decimals: 3}, form{unit: "mm", factor: 1, decimals: 1}},
	"l_per_min":   {form{unit: "oz/s", factor: litre / minute / usOunce, decimals: 2}, form{unit: "L/min", factor: 1, decimals: 2}},
	"m_per_s":     {form{unit: "mph", factor: hour / (5280 * foot), decimals: 1}, form{unit: "m/s", factor: 1, decimals: 1}},
	"w_per_m2":    same(form{unit: "W/m²", factor: 1, decimals: 0}),
	"w":           same(form{unit: "W", factor: 1, decimals: 0}),
	"w_per_k":     same(form{unit: "W/K", factor: 1, decimals: 2}),
	"share":       same(form{unit: "%", factor: 100, decimals: 1}),
	"probability": same(form{unit: "%", factor: 100, decimals: 1}),
}

func same(f form) struct{ us, metric form } { return struct{ us, metric form }{f, f} }

// suffixes of the SI unit in which Parse returns a kind, and the factor from
// it to the unit of the suffix: key value = SI value × factor − shift.
var suffixes = map[Kind]struct {
	suffix        string
	factor, shift float64
}{
	Share: {"share", 1, 0}, Temperature: {"c", 1, 273.15}, Difference: {"k", 1, 0},
	Gauge: {"kpa", 1e-3, 0}, Pressure: {"kpa", 1e-3, 0}, Content: {"volumes", 1 / volumeCO2, 0},
	Length: {"m", 1, 0}, Volume: {"l", 1000, 0}, Mass: {"kg", 1, 0}, Flow: {"l_per_min", 60000, 0},
	Time: {"s", 1, 0}, Speed: {"m_per_s", 1, 0}, Irradiance: {"w_per_m2", 1, 0}, Conductance: {"w_per_k", 1, 0},
}

// Suffix returns the unit suffix of result keys of kind k, "" for a pure
// number, and v, in SI, in the unit of that suffix.
func Suffix(k Kind, v float64) (string, float64) {
	s, ok := suffixes[k]
	if !ok {
		return "", v
	}
	return s.suffix, v*s.factor - s.shift
}

// SplitKey returns the name and the unit suffix of a result key:
// "gauge_kpa" gives "gauge" and "kpa". A key without a unit has the suffix "".
func SplitKey(key string) (name, suffix string) {
	for i := range len(key) {
		if i > 0 && key[i-1] == '_' {
			if _, ok := displays[key[i:]]; ok || key[i:] == "s" {
				return key[:i-1], key[i:]
			}
		}
	}
	if _, ok := displays[key]; ok && len(key) > 3 {
		return key, key
	}
	return key, ""
}

// Show writes v, in the unit of a key's suffix, as a person of the given unit
// system reads it; Both puts the metric form in brackets.
func Show(suffix string, v float64, sys System) string {
	us, metric := Columns(suffix, v)
	switch {
	case us == metric || sys == US:
		return us
	case sys == Metric:
		return metric
	}
	return us + " (" + metric + ")"
}

// Columns writes v, in the unit of a key's suffix, in US and in metric units.
func Columns(suffix string, v float64) (us, metric string) {
	if math.IsNaN(v) {
		return "unknown", "unknown"
	}
	if suffix == "s" {
		d := clockless(v)
		return d, d
	}
	d, ok := displays[suffix]
	if !ok {
		s := significant(v)
		return s, s
	}
	return d.us.show(v), d.metric.show(v)
}

// Span writes the interval from low to high in US and in metric units, the unit
// once where both ends have it.
func Span(suffix string, low, high float64) (us, metric string) {
	lowUS, lowMetric := Columns(suffix, low)
	highUS, highMetric := Columns(suffix, high)
	return span(lowUS, highUS), span(lowMetric, highMetric)
}

func span(low, high string) string {
	if high == forEver {
		return low + " or longer"
	}
	number, unit, _ := strings.Cut(low, " ")
	if _, other, ok := strings.Cut(high, " "); ok && other == unit && !strings.ContainsAny(unit, "0123456789") { // not "5 d 3 h"
		low = number
	}
	return low + " to " + high
}

func (f form) show(v float64) string {
	if f.below != nil && math.Abs(v) < f.small {
		f = *f.below
	}
	text := f.number(v)
	if f.unit == "%" {
		text = strings.TrimSuffix(text, ".0")
	}
	return text + " " + f.unit
}

// number writes v without its unit.
func (f form) number(v float64) string {
	shown := v*f.factor + f.shift
	if f.shift == 0 && f.unit != "°C" && shown != 0 && math.Abs(shown) < math.Pow(10, float64(1-f.decimals)) {
		return twoDigits(shown)
	}
	if math.Abs(shown) >= 1000 || math.Abs(shown) >= 100 && f.decimals > 1 {
		return strconv.FormatFloat(shown, 'f', 0, 64) // nobody reads 1378.0 ft
	}
	return strconv.FormatFloat(shown, 'f', f.decimals, 64)
}

// twoDigits writes a small number with two significant digits.
func twoDigits(v float64) string {
	decimals := 1 - int(math.Floor(math.Log10(math.Abs(v))))
	if decimals > 8 {
		return strconv.FormatFloat(v, 'g', 2, 64)
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// significant writes a pure number with three significant digits, whole
// numbers in full.
func significant(v float64) string {
	if v == math.Trunc(v) && math.Abs(v) < 1e9 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	if a := math.Abs(v); a >= 100 && a < 1e6 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 3, 64)
}

const forEver = "for ever"

// clockless writes a span of time of so many seconds: "8.2 s", "95 min", "5 h
// 20 min", "3 d 4 h".
func clockless(seconds float64) string {
	sign := ""
	if seconds < 0 {
		sign, seconds = "-", -seconds
	}
	whole := func(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }
	switch minutes := math.Round(seconds / minute); {
	case math.IsInf(seconds, 0):
		return sign + forEver
	case seconds == 0:
		return "0 s"
	case seconds < 10:
		return sign + strconv.FormatFloat(seconds, 'f', 1, 64) + " s"
	case seconds < 100:
		return sign + whole(seconds) + " s"
	case minutes < 100:
		return sign + whole(minutes) + " min"
	case minutes < 48*60:
		return sign + strings.TrimSuffix(whole(math.Floor(minutes/60))+" h "+whole(math.Mod(minutes, 60))+" min", " 0 min")
	default:
		hours := math.Round(minutes / 60)
		return sign + strings.TrimSuffix(whole(math.Floor(hours/24))+" d "+whole(math.Mod(hours, 24))+" h", " 0 h")
	}
}
