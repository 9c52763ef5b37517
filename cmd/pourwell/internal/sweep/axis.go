package sweep

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// mostSteps is how many rows a range may make: with more a slip is likelier
// than a wish.
const mostSteps = 100_000_000

// An Axis is an input that runs through several values.
type Axis struct {
	Input *calc.Input

	values      []float64 // of a list of numbers, SI
	texts       []string  // of a list of words or names
	within      *within   // of a range within a text
	first, last float64   // of a range, SI
	steps       int       // of a range
}

// Len returns the number of values.
func (a *Axis) Len() int { return max(len(a.values), len(a.texts), a.steps+1) }

// set puts the i'th value into v.
func (a *Axis) set(v *calc.Values, i int) error {
	switch {
	case a.texts != nil:
		return v.SetText(a.Input.Name, a.texts[i])
	case a.within != nil:
		return v.SetText(a.Input.Name, a.within.at(i)...)
	case a.values != nil:
		v.SetNumber(a.Input.Name, a.values[i])
	default:
		v.SetNumber(a.Input.Name, a.at(i))
	}
	return nil
}

// at returns the i'th value of a range; the ends come out exactly, and whole
// things whole.
func (a *Axis) at(i int) float64 {
	if a.steps == 0 {
		return a.first
	}
	f := float64(i) / float64(a.steps)
	v := a.first*(1-f) + a.last*f
	if a.Input.Kind == quantity.Count {
		return math.Round(v)
	}
	return v
}

// readAxis reads a range "32F..60F:2F" or a list "32F,38F,45F". It returns nil
// if text is neither.
func readAxis(in *calc.Input, text string) (*Axis, error) {
	words := len(in.Choices) > 0 || in.Named != ""
	if !in.Kind.Sizeable() && !words || in.Repeat {
		return nil, nil
	}
	if low, rest, ok := strings.Cut(strings.ReplaceAll(text, "…", "..."), ".."); ok && in.Kind.Sizeable() {
		return readRange(in, low, rest)
	}
	if !strings.Contains(text, ",") {
		return nil, nil
	}
	return readList(in, strings.Split(text, ","), words)
}

func readList(in *calc.Input, items []string, words bool) (*Axis, error) {
	a := &Axis{Input: in}
	for i, item := range items {
		item = strings.TrimSpace(item)
		if words {
			a.texts = append(a.texts, item)
			continue
		}
		v, err := quantity.Parse(in.Kind, item)
		switch {
		case err != nil && i == 0 && !in.Kind.Bare():
			return nil, usage(in, fmt.Sprintf("%q: %v", strings.Join(items, ","), err),
				"in a list each has its unit, "+listExample(in.Kind)+"; a decimal is written with a point")
		case err != nil:
			return nil, asUsage(in, "", err)
		case len(item) > 1 && item[0] == '0' && item[1] >= '0' && item[1] <= '9':
			return nil, usage(in, fmt.Sprintf("%q reads as a list", strings.Join(items, ",")), "a decimal is written with a point, such as 1.010")
		}
		a.values = append(a.values, v)
	}
	return a, nil
}

// readRange reads "A..B:STEP". A and the step may leave their unit to B.
func readRange(in *calc.Input, low, rest string) (*Axis, error) {
	whole, rest := low+".."+rest, strings.TrimSpace(rest)
	high, step, ok := cutStep(rest)
	switch {
	case strings.HasPrefix(rest, "."):
		return nil, usage(in, fmt.Sprintf("%q has more points than two", whole),
			fmt.Sprintf("write %s..%s; a number has a digit before its point", low, strings.TrimLeft(rest, ".")))
	case bareDecimal(low) || bareDecimal(high):
		return nil, usage(in, fmt.Sprintf("%q has an end without a digit before its point", whole), "write it as 0.5, so that no point of a range is taken for its own")
	case !ok:
		return nil, usage(in, fmt.Sprintf("%q has no step", whole), "write it after a colon, for example "+RangeExample(in.Kind))
	}
	unit := quantity.UnitOf(high)
	a := &Axis{Input: in}
	var err error
	if a.first, err = quantity.Parse(in.Kind, withUnit(low, unit)); err != nil {
		return nil, asUsage(in, "", err)
	}
	end, err := quantity.Parse(in.Kind, high)
	if err != nil {
		return nil, asUsage(in, "", err)
	}
	by, err := quantity.Parse(quantity.StepOf(in.Kind), withUnit(step, unit))
	if err != nil {
		return nil, asUsage(in, "step ", err)
	}
	n, err := stepsOf(in, whole, end-a.first, by, mostSteps)
	if err != nil {
		return nil, err
	}
	a.steps = n
	a.last = a.first + math.Copysign(float64(n)*math.Abs(by), end-a.first)
	if math.Abs(a.last-end) < 1e-9*math.Abs(by) {
		a.last = end
	}
	return a, nil
}

// bareDecimal reports whether text is a number that begins with its point.
func bareDecimal(text string) bool {
	return strings.HasPrefix(strings.TrimLeft(text, " +-"), ".")
}

// stepsOf returns how many steps of the size by fit into a range of the given
// length, or an error if there are more than most.
func stepsOf(in *calc.Input, whole string, length, by float64, most int) (int, error) {
	n := math.Floor(math.Abs(length)/math.Abs(by) + 1e-9)
	switch {
	case math.IsInf(n, 0) || math.IsNaN(n): // the step is nothing, or next to nothing
		return 0, usage(in, fmt.Sprintf("%q never arrives", whole), "take a larger step, for example "+RangeExample(in.Kind))
	case n >= float64(most):
		rows := strconv.FormatFloat(n+1, 'f', 0, 64)
		if n > 1e15 {
			rows = fmt.Sprintf("%.3g", n)
		}
		return 0, usage(in, fmt.Sprintf("%q makes %s rows", whole, rows), fmt.Sprintf("take a larger step: %d rows are the most", most))
	}
	return int(n), nil
}

// cutStep splits "60F:2F" at its last colon.
func cutStep(s string) (high, step string, ok bool) {
	i := strings.LastIndexByte(s, ':')
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+1:], true
}

// withUnit adds unit to a bare number.
func withUnit(text, unit string) string {
	if quantity.UnitOf(text) == "" {
		return text + unit
	}
	return text
}

// RangeExample returns a range of kind k as it is typed.
func RangeExample(k quantity.Kind) string {
	switch k {
	case quantity.Temperature:
		return "32F..60F:2F"
	case quantity.Gauge, quantity.Pressure:
		return "8psi..16psi:1psi"
	case quantity.Share:
		return "20%..80%:10%"
	case quantity.Count:
		return "20..100:20"
	case quantity.Text:
		return "3ft..10ft:1ft"
	case quantity.Number:
		return "1.000..1.020:0.005"
	}
	unit := kindUnit(k)
	return "1" + unit + "..5" + unit + ":1" + unit
}

func listExample(k quantity.Kind) string {
	unit := kindUnit(k)
	return "4" + unit + ",5" + unit
}

// kindUnit returns the unit of the kind's own example.
func kindUnit(k quantity.Kind) string {
	first, _, _ := strings.Cut(strings.ReplaceAll(k.Example(), ",", " "), " ")
	return quantity.UnitOf(first)
}

// asUsage says what is wrong with a part of what was typed, and keeps the hint.
func asUsage(in *calc.Input, part string, err error) error {
	var text *quantity.Error
	if errors.As(err, &text) {
		return usage(in, fmt.Sprintf("%s%q %s", part, text.Text, text.What), text.Hint)
	}
	return usage(in, part+err.Error(), "")
}

func usage(in *calc.Input, what, hint string) error {
	return &calc.UsageError{What: "--" + in.Name + ": " + what, Hint: hint}
}
