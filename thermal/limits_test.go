package thermal

import (
	"errors"
	"math"
	"testing"
)

func TestFinite(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if err := finite("test", 1, v); !errors.Is(err, ErrNoSolution) {
			t.Errorf("%g: %v", v, err)
		}
	}
	if err := finite("test", 0, math.MaxFloat64); err != nil {
		t.Error(err)
	}
}
