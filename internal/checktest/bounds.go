package checktest

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// A refusal is a volume.RangeError, spelt out as [limit] is.
type refusal = struct {
	Func     string
	Name     string
	Field    string
	Value    float64
	Min, Max float64
	Suffix   string
	Source   string
}

// A Trial is one calculation and what came of it.
type Trial struct {
	Name   string
	Result any
	Err    error
}

// Tried returns a trial.
func Tried(name string, result any, err error) Trial { return Trial{name, result, err} }

// Bounds says how the rows of a package's validity table are tried.
type Bounds struct {
	// Setters put a value, in the unit of a row, where that row is checked, and
	// try all that reads it; by the name of the row.
	Setters map[string]func(v float64) []Trial
	// Fine are the errors, other than that of a range, with which a calculation
	// may end.
	Fine []error
	// Empty lists fields of results that may be NaN or invalid without an error,
	// as Type.Field.
	Empty []string
	// Shut are the bounds beyond which no setter gets, such as "fill above" or
	// "fill below", and why.
	Shut map[string]string
}

// EveryBound tries each row of a validity table at both of its bounds and just
// beyond. At a bound each trial must give finite numbers or one of the errors of
// the package, and the bound must belong to its range; beyond it at least one
// must be refused by the name of that row, and none may give numbers that are
// not finite. X is the package's RangeError.
func EveryBound[X ~refusal, E interface {
	*X
	error
}, R ~limit](t testing.TB, limits []R, b Bounds) {
	t.Helper()
	for _, row := range limits {
		r := limit(row)
		set := b.Setters[r.Name]
		if set == nil {
			t.Errorf("%s has no setter", r.Name)
			continue
		}
		for _, v := range []float64{r.Min, r.Max} {
			where := fmt.Sprintf("%s at %g %s", r.Name, v, r.Suffix)
			answered, trials := 0, set(v)
			for _, tr := range trials {
				HoldsUp[X, E](t, where, tr, b)
				if names[X, E](tr.Err, r, v) {
					t.Errorf("%s: %s refuses its own bound: %v", where, tr.Name, tr.Err)
				}
				if tr.Err == nil {
					answered++
				}
			}
			if testing.Verbose() && answered == 0 {
				t.Logf("%s: nothing answers: %v", where, trials[0].Err)
			}
		}
		if b.Shut[r.Name+" below"] == "" {
			refuses[X, E](t, r, r.Min, -1, set, b)
		}
		if b.Shut[r.Name+" above"] == "" {
			refuses[X, E](t, r, r.Max, +1, set, b)
		}
	}
	if len(b.Setters) != len(limits) {
		t.Errorf("%d setters for %d rows", len(b.Setters), len(limits))
	}
}

// refuses demands that a value just beyond a bound is refused by the name of
// the row: a step of 1e-9 of it, or of one for what is counted in whole numbers.
func refuses[X ~refusal, E interface {
	*X
	error
}](t testing.TB, r limit, bound, way float64, set func(v float64) []Trial, b Bounds) {
	t.Helper()
	var trials []Trial
	for _, step := range []float64{1e-9 * max(1, math.Abs(bound)), 1} {
		v := bound + way*step
		trials = set(v)
		for _, tr := range trials {
			HoldsUp[X, E](t, fmt.Sprintf("%s beyond its bound, at %g %s", r.Name, v, r.Suffix), tr, b)
		}
		if slices.ContainsFunc(trials, func(tr Trial) bool { return names[X, E](tr.Err, r, math.NaN()) }) {
			return
		}
	}
	said := trials[max(0, slices.IndexFunc(trials, func(tr Trial) bool { return tr.Err != nil }))]
	t.Errorf("%s: no error names the row beyond its bound %g %s; %s says %v", r.Name, bound, r.Suffix, said.Name, said.Err)
}

// names reports whether err is the refusal of row r, at the value v unless that
// is NaN.
func names[X ~refusal, E interface {
	*X
	error
}](err error, r limit, v float64) bool {
	var e E
	if !errors.As(err, &e) {
		return false
	}
	got := refusal(*e)
	if got.Field != "" && !slices.Contains(strings.Fields(r.Fields), got.Field) {
		return false // of another row
	}
	return got.Name == r.Name && got.Min == r.Min && got.Max == r.Max && !(math.Abs(got.Value-v) > 1e-9*math.Abs(v))
}

// A Complainer is a test, of the testing package or of rapid.
type Complainer interface {
	Helper()
	Errorf(format string, args ...any)
}

// HoldsUp demands of a trial a finite result, an error of a range that the value
// lies outside of, or another of the errors that b calls fine.
func HoldsUp[X ~refusal, E interface {
	*X
	error
}](t Complainer, where string, tr Trial, b Bounds) {
	t.Helper()
	var e E
	switch {
	case tr.Err == nil:
		for _, l := range b.lost(tr.Result) {
			t.Errorf("%s, %s: %s without an error", where, tr.Name, l)
		}
	case errors.As(tr.Err, &e):
		if r := refusal(*e); r.Min <= r.Value && r.Value <= r.Max {
			t.Errorf("%s, %s: refused within its range: %v", where, tr.Name, tr.Err)
		}
	case !slices.ContainsFunc(b.Fine, func(fine error) bool { return errors.Is(tr.Err, fine) }):
		t.Errorf("%s, %s: %v", where, tr.Name, tr.Err)
	}
}

// lost returns where in a result a number is NaN or infinite or a quantity
// invalid, looking at exported fields, working and band. The upper end of a band
// may be infinite: a time that may never come.
func (b Bounds) lost(result any) []string {
	v := reflect.ValueOf(result)
	if !v.IsValid() {
		return []string{"no result"}
	}
	found := b.look(v.Type().Name(), v)
	if steps := v.MethodByName("Steps"); steps.IsValid() {
		found = append(found, b.look("Steps", steps.Call(nil)[0])...)
	}
	if band := v.MethodByName("Band"); band.IsValid() {
		low, high := band.Call(nil)[0].FieldByName("Low").Float(), band.Call(nil)[0].FieldByName("High").Float()
		if math.IsInf(low, 0) || math.IsInf(high, -1) || !(low <= high) {
			found = append(found, fmt.Sprintf("a band of %g to %g", low, high))
		}
	}
	return found
}

func (b Bounds) look(path string, v reflect.Value) (found []string) {
	if q, ok := v.Interface().(interface{ IsValid() bool }); ok {
		if !q.IsValid() {
			found = append(found, path+" is invalid")
		}
		return found
	}
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			found = append(found, fmt.Sprintf("%s is %g", path, f))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.IsExported() && !slices.Contains(b.Empty, v.Type().Name()+"."+f.Name) {
				found = append(found, b.look(path+"."+f.Name, v.Field(i))...)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			found = append(found, b.look(fmt.Sprintf("%s[%d]", path, i), v.Index(i))...)
		}
	}
	return found
}
