package calc

import (
	"fmt"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
)

// Amounts that the packages state as masses: melted in an hour, or for each
// litre of beer.
type (
	PerHour  quantity.Kilograms
	PerLitre quantity.Kilograms
)

// Put adds an answer under key: the type of q says what it measures, the suffix
// of key in which unit. A float64 or an int is a pure number or a share. It
// panics if the key measures something else, a mistake in a description.
func (r *Result) Put(key string, q any) { r.Set(key, under(key, q)) }

// Add adds a row to t: a cell is a text or, as in Put, the quantity that its
// column measures.
func (t *Table) Add(cells ...any) {
	for i, q := range cells {
		if _, text := q.(string); !text {
			cells[i] = under(t.Columns[i], q)
		}
	}
	t.Rows = append(t.Rows, cells)
}

// under returns q in the unit of key.
func under(key string, q any) float64 {
	_, suffix := quantity.SplitKey(key)
	of, si := measured(q)
	if want := quantity.Measures(suffix); of != want && !(of == "" && want == "share") {
		panic(fmt.Sprintf("calc: %s measures %q, and %q was put there", key, want, of))
	}
	return quantity.In(suffix, si)
}

// measured returns what q measures and its value in SI.
func measured(q any) (of string, si float64) {
	switch q := q.(type) {
	case float64:
		return "", q
	case int:
		return "", float64(q)
	case time.Duration:
		return "time", q.Seconds()
	case quantity.Metres:
		return "length", float64(q)
	case quantity.CubicMetres:
		return "volume", float64(q)
	case quantity.Kilograms:
		return "mass", float64(q)
	case PerHour:
		return "mass flow", quantity.SI("kg_per_h", float64(q))
	case PerLitre:
		return "density", quantity.SI("kg_per_l", float64(q))
	case quantity.Pascals:
		return "pressure", float64(q)
	case quantity.Watts:
		return "power", float64(q)
	case thermal.Temperature:
		return "temperature", q.Kelvin()
	case thermal.Difference:
		return "difference", float64(q)
	case thermal.Conductance:
		return "conductance", float64(q)
	case thermal.Irradiance:
		return "irradiance", float64(q)
	case carbonation.Gauge:
		return "pressure", q.Pascals()
	case carbonation.Pressure:
		return "pressure", q.Pascals()
	case carbonation.Content:
		return "content", q.GramsPerLitre()
	case thermal.Flow:
		return "flow", float64(q)
	case lines.Flow:
		return "flow", float64(q)
	case lines.Gradient:
		return "gradient", float64(q)
	}
	panic("calc: an answer of a type that measures nothing")
}
