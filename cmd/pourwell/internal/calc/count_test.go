package calc

import (
	"math"
	"testing"

	"example.com/pourwell/internal/quantity"
)

// TestCount checks that a count is the nearest whole number, since a tolerance
// and the sums of a range leave it beside one, and that no number wraps round.
func TestCount(t *testing.T) {
	c := (&Calculation{Package: "test", Name: "count", Inputs: []Input{{Name: "guests", Kind: quantity.Count}}}).Ready()
	v, err := NewValues(c)
	if err != nil {
		t.Fatal(err)
	}
	if n := v.Count("guests"); n != 0 {
		t.Errorf("a count that has no value is %d", n)
	}
	for _, x := range []struct {
		si   float64
		want int
	}{
		{139.99999999999997, 140}, {60.00000000000001, 60}, {61.7, 62}, {2.4, 2}, {-3.6, -4},
		{1e19, 1e9}, {-1e19, -1e9}, {math.Inf(1), 1e9},
	} {
		v.SetNumber("guests", x.si)
		if n := v.Count("guests"); n != x.want {
			t.Errorf("%v is counted as %d, want %d", x.si, n, x.want)
		}
	}
}
