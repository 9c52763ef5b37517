package heat

import (
	"math"
	"testing"

	"example.com/pourwell/internal/checktest"
)

// A flow with a corner at the air's temperature is given back exactly, each node
// is worked out once, and beyond the table there is nothing.
func TestTable(t *testing.T) {
	var table Table
	asked := 0
	table.Tabulate(21.3, func(c float64) (q, dew float64) {
		asked++
		return 3 * (21.3 - c), math.Max(0, 21.3-c)
	})
	for _, c := range []float64{-29.9, 3.14, 21.2, 21.3, 21.4, 130} {
		for range 2 {
			q, dew := table.At(c)
			checktest.Near(t, "heat", q, 3*(21.3-c), 1e-9)
			checktest.Near(t, "dew", dew, math.Max(0, 21.3-c), 1e-9)
		}
	}
	if asked > 12 {
		t.Errorf("%d nodes for 6 temperatures", asked)
	}
	for _, c := range []float64{-31, 132, math.NaN()} {
		if q, _ := table.At(c); !math.IsNaN(q) {
			t.Errorf("%g W at %g °C", q, c)
		}
	}
}
