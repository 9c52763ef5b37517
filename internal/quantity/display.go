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

// suffixes of the keys that hold a kind.
var suffixes = [...]string{
	Share: "share", Temperature: "c", Difference: "k", Gauge: "kpa", Pressure: "kpa", Content: "volumes",
	Length: "m", Volume: "l", Mass: "kg", Flow: "l_per_min", Time: "s", Speed: "m_per_s", Irradiance: "w_per_m2", Conductance: "w_per_k",
	Switch: "", Text: "",
}

// Suffix returns the unit suffix of result keys of kind k, "" for a pure
// number, and v, in SI, in the unit of that suffix.
func Suffix(k Kind, v float64) (string, float64) {
	return suffixes[k], In(suffixes[k], v)
}

// SplitKey returns the name and the unit suffix of a result key:
// "gauge_kpa" gives "gauge" and "kpa". A key without a unit has the suffix "".
func SplitKey(key string) (name, suffix string) {
	for i := range len(key) {
		if i > 0 && key[i-1] == '_' {
			if displayed(key[i:]) != nil || key[i:] == "s" {
				return key[:i-1], key[i:]
			}
		}
	}
	if len(key) > 3 && displayed(key) != nil {
		return key, key
	}
	return key, ""
}

// Show writes v, in the unit of a key's suffix, as a person of the given unit
// system reads it; Both puts the metric form in brackets.
func Show(suffix string, v float64, sys System) string {
	us, metric := Columns(suffix, v)
	return choose(us, metric, sys)
}

// Columns writes v, in the unit of a key's suffix, in US and in metric units.
func Columns(suffix string, v float64) (us, metric string) {
	switch {
	case math.IsNaN(v):
		return "unknown", "unknown"
	case suffix != "" && suffix != "s" && math.IsInf(v, 0):
		return infinite(v), infinite(v)
	case suffix == "s":
		d := clockless(v)
		return d, d
	}
	d := displayed(suffix)
	if d == nil {
		s := bare(suffix, v)
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
	if math.Abs(shown) >= 1e9 {
		return strconv.FormatFloat(shown, 'g', 4, 64) // 300 digits say no more
	}
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
	if v == math.Trunc(v) && math.Abs(v) < 1e15 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	if math.IsInf(v, 0) {
		return infinite(v)
	}
	if a := math.Abs(v); a >= 100 && a < 1e6 {
		return strconv.FormatFloat(v, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'g', 3, 64)
}

const forEver = "for ever"

func infinite(v float64) string {
	if v < 0 {
		return "minus infinity"
	}
	return "infinity"
}

// bare writes v with the symbol of a suffix that no key ends in; a time of day
// or hours is written as one.
func bare(suffix string, v float64) string {
	u := bySuffix()[suffix]
	switch {
	case u == nil:
		return significant(v)
	case u.of == "time":
		return clockless(SI(suffix, v))
	}
	return significant(v) + " " + u.symbol
}

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
	case seconds >= 86400e9:
		return sign + strconv.FormatFloat(seconds/86400, 'g', 4, 64) + " d" // 300 digits say no more
	default:
		hours := math.Round(minutes / 60)
		return sign + strings.TrimSuffix(whole(math.Floor(hours/24))+" d "+whole(math.Mod(hours, 24))+" h", " 0 h")
	}
}
