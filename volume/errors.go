package volume

import (
	"errors"
	"fmt"
	"strconv"
)

// ErrNoSolution reports that no value of the unknown satisfies what was
// given. It comes wrapped in an error that says what makes it so; test for it
// with [errors.Is].
var ErrNoSolution = errors.New("no solution")

// ErrNever reports that a time was asked for that never comes. It comes
// wrapped in an error that says where the process settles instead; test for
// it with [errors.Is].
var ErrNever = errors.New("never reached")

// A RangeError reports an argument outside the range in which a calculation
// holds. It is the one error for a wrong value in all packages of pourwell;
// find it with [errors.As].
type RangeError struct {
	Func   string  // the function that refused, for example "carbonation.ContentAt"
	Name   string  // the argument, for example "temperature"
	Value  float64 // the value given, in Unit
	Min    float64 // the least value allowed, inclusive
	Max    float64 // the greatest value allowed, inclusive
	Unit   string  // the unit of Value, Min and Max; empty for a pure number
	Source string  // why the range ends there
}

// Error returns a sentence with the value, the range and its reason, such as
//
//	carbonation.ContentAt: temperature 61.0 °C is outside -1 to 45 °C (fitted range of [1])
func (e *RangeError) Error() string {
	unit, source := "", ""
	if e.Unit != "" {
		unit = " " + e.Unit
	}
	if e.Source != "" {
		source = " (" + e.Source + ")"
	}
	return fmt.Sprintf("%s: %s %s%s is outside %s to %s%s%s",
		e.Func, e.Name, trim(e.Value), unit, trim(e.Min), trim(e.Max), unit, source)
}

// trim prints v with as many digits as a reader needs, at most five.
func trim(v float64) string { return strconv.FormatFloat(v, 'g', 5, 64) }
