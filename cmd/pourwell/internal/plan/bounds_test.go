package plan

import (
	"errors"
	"os"
	"reflect"
	"testing"

	"example.com/pourwell/volume"
)

// TestEveryNumberIsBounded sets each number of a day in turn to one that no row
// of any table allows: a plan that does not refuse it has not looked at it.
func TestEveryNumberIsBounded(t *testing.T) {
	data, err := os.ReadFile("../../../../testdata/meadow-party.toml")
	if err != nil {
		t.Fatal(err)
	}
	for n := 0; ; n++ {
		day, err := Read("meadow", data)
		if err != nil {
			t.Fatal(err)
		}
		left := n
		key := spoil(reflect.ValueOf(&day).Elem(), &left)
		if key == "" {
			if n < 40 {
				t.Errorf("%d numbers found", n)
			}
			return
		}
		_, err = Compute("meadow", day)
		var outside *volume.RangeError
		if !errors.As(err, &outside) && key != "Cylinders" { // of which there may be any number
			t.Errorf("%s: %v", key, err)
		}
	}
}

// spoil makes the number with left others before it absurd, and returns its
// name.
func spoil(v reflect.Value, left *int) string {
	switch {
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			if key := spoil(v.Index(i), left); key != "" {
				return key
			}
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if !v.Type().Field(i).IsExported() {
				continue
			}
			q, ok := v.Field(i).Addr().Interface().(interface{ absurd() })
			if !ok {
				if key := spoil(v.Field(i), left); key != "" {
					return key
				}
				continue
			}
			if *left--; *left < 0 {
				q.absurd()
				return v.Type().Field(i).Name
			}
		}
	}
	return ""
}

func (q *quantityOf) absurd() { *q = quantityOf{1e300, true} }
