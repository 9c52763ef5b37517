package checktest

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

// A span is a validity table's row, and an outside its refusal.
type (
	span    limit
	outside refusal
)

func (o *outside) Error() string { return o.Name + " is outside" }

var errElse = errors.New("else")

// A share of 0 to 1, checked by a function that is broken in one way or another.
func TestEveryBoundFinds(t *testing.T) {
	row := span{Name: "share", Max: 1, Source: "a share"}
	refuse := func(name string, v float64) error { return &outside{Name: name, Value: v, Max: 1} }
	for want, f := range map[string]func(v float64) (float64, error){
		"": func(v float64) (float64, error) {
			if v < 0 || v > 1 {
				return math.NaN(), refuse("share", v)
			}
			if v == 1 {
				return math.NaN(), fmt.Errorf("f: %w", errElse)
			}
			return v, nil
		},
		"refuses its own bound": func(v float64) (float64, error) {
			if v <= 0 || v > 1 {
				return 0, refuse("share", v)
			}
			return v, nil
		},
		"float64 is NaN without an error": func(v float64) (float64, error) { return math.NaN(), nil },
		"float64 is +Inf without":         func(v float64) (float64, error) { return 1 / v, nil },
		"no error names the row":          func(v float64) (float64, error) { return v, nil },
		"beyond its bound 1 ":             func(v float64) (float64, error) { return v, refuse("portion", 2) },
		"f: unsupported":                  func(v float64) (float64, error) { return v, errors.ErrUnsupported },
	} {
		set := func(v float64) []Trial {
			r, err := f(v)
			return []Trial{Tried("f", r, err)}
		}
		said := says(func(t *tape) {
			EveryBound[outside](t, []span{row}, Bounds{Setters: map[string]func(float64) []Trial{"share": set}, Fine: []error{errElse}})
		})
		if !strings.Contains(said, want) || want == "" && said != "" {
			t.Errorf("says %q, want %q", said, want)
		}
	}
	if said := says(func(t *tape) { EveryBound[outside](t, []span{row}, Bounds{}) }); !strings.Contains(said, "share has no setter") {
		t.Errorf("says %q of a row without a setter", said)
	}
}

// What a result may hide a number in that is none.
func TestLost(t *testing.T) {
	type part struct{ Size float64 }
	type whole struct {
		Parts  []part
		Spare  float64
		hidden float64
	}
	for _, c := range []struct {
		result any
		want   int
	}{
		{whole{hidden: math.NaN()}, 0},
		{whole{Spare: math.Inf(1)}, 0},
		{whole{Parts: []part{{1}, {math.NaN()}, {math.Inf(-1)}}}, 2},
		{nil, 1},
	} {
		if got := (Bounds{Empty: []string{"whole.Spare"}}).lost(c.result); len(got) != c.want {
			t.Errorf("%+v: %q, want %d", c.result, got, c.want)
		}
	}
}
