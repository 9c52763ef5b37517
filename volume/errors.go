package volume

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/pourwell/internal/quantity"
)

// ErrNoSolution reports that no value of the unknown satisfies what was
// given. It comes as a [*NoSolutionError] that says what makes it so; test for
// it with [errors.Is].
var ErrNoSolution = errors.New("no solution")

// ErrNever reports that a time was asked for that never comes. It comes as a
// [*NeverError] that says where the process settles instead; test for it with
// [errors.Is].
var ErrNever = errors.New("never reached")

// A RangeError reports an argument outside the range in which a calculation
// holds. It is the one error for a wrong value in all packages of pourwell;
// find it with [errors.As].
type RangeError struct {
	Func   string  // the function that refused, for example "carbonation.ContentAt"
	Name   string  // the argument, for example "temperature"
	Field  string  // the field or parameter, for example "Sealed.Headspace"; empty where the row bounds several
	Value  float64 // the value given, in the unit of Suffix
	Min    float64 // the least value allowed, inclusive
	Max    float64 // the greatest value allowed, inclusive
	Suffix string  // of the unit of Value, Min and Max, as in [Range]; empty for a pure number
	Source string  // why the range ends there; a [Sentence]
}

// Error returns a sentence with the value, the range and its reason, such as
//
//	carbonation.ContentAt: temperature 61 °C is outside -1.2 to 45 °C (fitted range of [1])
func (e *RangeError) Error() string {
	source := ""
	if e.Source != "" {
		source = " (" + Sentence(e.Source).String() + ")"
	}
	unit := quantity.Symbol(e.Suffix)
	if unit != "" {
		unit = " " + unit
	}
	trim := func(v float64) string { return strconv.FormatFloat(v, 'g', 5, 64) }
	value := trim(e.Value)
	if value == trim(e.Min) || value == trim(e.Max) {
		value = strconv.FormatFloat(e.Value, 'g', -1, 64)
	}
	value += unit
	if math.IsNaN(e.Value) {
		return fmt.Sprintf("%s: %s is missing; it lies within %s to %s%s%s", e.Func, e.Name, trim(e.Min), trim(e.Max), unit, source)
	}
	return fmt.Sprintf("%s: %s %s is outside %s to %s%s%s", e.Func, e.Name, value, trim(e.Min), trim(e.Max), unit, source)
}

// Why returns what is wrong, without the function and the reason, as a sentence
// that quotes its numbers.
func (e *RangeError) Why() Sentence {
	if math.IsNaN(e.Value) {
		return say("%s is missing; it lies within {%v..%v %s}", e.Name, e.Min, e.Max, e.Suffix)
	}
	return say("%s %s{%v %s} is outside {%v..%v %[4]s}", e.Name, cmp.Or(e.beside(Sentence.US), e.beside(Sentence.Metric)), e.Value, e.Suffix, e.Min, e.Max)
}

// beside says on which side of a bound the value lies where both are written
// alike, so that no message contradicts itself: "" where they are not.
func (e *RangeError) beside(written func(Sentence) string) string {
	value, bounds := written(say("{%v %s}", e.Value, e.Suffix)), written(say("{%v..%v %s}", e.Min, e.Max, e.Suffix))
	number, unit, _ := strings.Cut(value, " ")
	switch {
	case e.Value > e.Max && strings.HasSuffix(bounds, " to "+value):
		return "a little above "
	case e.Value < e.Min && (strings.HasPrefix(bounds, value+" to ") || strings.HasPrefix(bounds, number+" to ") && strings.HasSuffix(bounds, " "+unit)):
		return "a little below "
	}
	return ""
}

// A NoSolutionError is an [ErrNoSolution] with what makes it so.
type NoSolutionError struct {
	Func          string   // the function that has no answer
	Why           Sentence // "the rise alone needs {98 kpa}; {82.7 kpa} is applied"
	Key           string   // names the two numbers with their unit, "gauge_kpa"; empty where none decide
	Needed, Given float64  // the least or most with which there is an answer, and what was given
}

// Error returns the sentence behind the function, its numbers in both systems
// of units.
func (e *NoSolutionError) Error() string {
	return e.Func + ": " + ErrNoSolution.Error() + ": " + e.Why.String()
}

// Is reports whether target is [ErrNoSolution].
func (e *NoSolutionError) Is(target error) bool { return target == ErrNoSolution }

// A NeverError is an [ErrNever] with what comes instead.
type NeverError struct {
	Func           string   // the function whose answer never comes
	Why            Sentence // "the beer settles at {9.6 c}"
	Key            string   // names the two numbers with their unit, "temperature_c"; empty where none decide
	Settles, Asked float64  // where it ends or comes nearest, and where it was to go
}

// Error returns the sentence behind the function, its numbers in both systems
// of units.
func (e *NeverError) Error() string {
	return e.Func + ": " + ErrNever.Error() + ": " + e.Why.String()
}

// Is reports whether target is [ErrNever].
func (e *NeverError) Is(target error) bool { return target == ErrNever }
