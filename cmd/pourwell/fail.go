package main

// Rules of the messages on standard error: one line says what is wrong, with
// the value and what is allowed in both unit systems; one line gives a hint.
// No capital at the start, no full stop at the end. Nothing is on standard
// output when there is an error.

import (
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"sync"
	"syscall"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/cmd/pourwell/internal/plan"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
	"github.com/alecthomas/kong"
)

// fail writes the message for err and returns the exit code.
func fail(w io.Writer, args []string, err error) int {
	what, hint, code := describe(err)
	if hint == "" {
		hint = "see pourwell " + strings.Join(append(commandIn(args), "--help"), " ")
	}
	message := fmt.Sprintf("pourwell: %s\nhint: %s\n", brief(what, args...), brief(hint, args...))
	_, _ = io.WriteString(report.Plain(w, !utf8Locale()), message) // nobody is left to tell of an error
	return code
}

// describe sorts err into what is wrong, a hint and the exit code.
func describe(err error) (what, hint string, code int) {
	var file *plan.FileError
	var usage *calc.UsageError
	var parse *kong.ParseError
	var text *quantity.Error
	var rng *volume.RangeError
	var rows rowsFailed
	switch {
	case errors.As(err, &file):
		return file.Error(), file.Hint, exitUsage
	case errors.As(err, &rows):
		_, hint, _ := describe(rows.First)
		return rows.Error(), hint, exitNoAnswer
	case errors.As(err, &usage):
		return usage.What, usage.Hint, exitUsage
	case errors.As(err, &text):
		return fmt.Sprintf("%q %s", text.Text, text.What), text.Hint, exitUsage
	case errors.As(err, &rng):
		what, hint = rangeMessage(rng)
		return about(err, rng) + what, hint, exitNoAnswer
	case errors.Is(err, volume.ErrNoSolution), errors.Is(err, volume.ErrNever):
		return funcNames().ReplaceAllString(err.Error(), ""), "", exitNoAnswer
	case errors.As(err, &parse):
		return parse.Error(), "", exitUsage
	case errors.Is(err, syscall.ENOSPC):
		return err.Error(), "make room there, or write to another place", exitUnexpected
	}
	return err.Error(), "", exitUnexpected
}

// funcNames are the names of functions in the texts of errors: right for a Go
// program, noise for a person.
var funcNames = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\b(volume|thermal|carbonation|lines)\.[A-Z][A-Za-z.]*: `)
})

// about returns what stands before a range error's own text, such as the name
// of the beer it is about.
func about(err error, e *volume.RangeError) string {
	return strings.TrimSuffix(err.Error(), e.Error())
}

// suffixOf gives the key suffix for the units that range errors carry.
var suffixOf = map[string]string{
	"°C": "c", "kPa": "kpa", "kPa abs": "kpa", "bar": "bar", "m": "m", "mm": "mm", "L": "l", "kg": "kg", "L/min": "l_per_min",
	"volumes": "volumes", "g/L": "g_per_l", "s": "s", "W/m²": "w_per_m2", "m/s": "m_per_s", "W/K": "w_per_k", "K": "k", "W": "w", "m³": "m3",
}

// rangeMessage writes a range error in both unit systems.
func rangeMessage(e *volume.RangeError) (what, hint string) {
	value, low, high := plain(e.Value, e.Unit), plain(e.Min, ""), plain(e.Max, e.Unit)
	suffix, ok := suffixOf[e.Unit]
	if isShare(e) {
		suffix, ok = "share", true
	}
	if ok {
		value = quantity.Show(suffix, e.Value, quantity.Both)
		us, metric := quantity.Span(suffix, e.Min, e.Max)
		low, high = us, "("+metric+")"
		if us == metric {
			return fmt.Sprintf("%s %s is outside %s", e.Name, value, us), rangeHint(e)
		}
		return fmt.Sprintf("%s %s is outside %s %s", e.Name, value, low, high), rangeHint(e)
	}
	return fmt.Sprintf("%s %s is outside %s to %s", e.Name, value, low, high), rangeHint(e)
}

// isShare reports whether the range is of a share, which packages count as a
// fraction and people read in percent: it says so, or an input that is typed in
// percent has that range.
func isShare(e *volume.RangeError) bool {
	if e.Unit != "" || strings.Contains(e.Name, "share") {
		return e.Unit == ""
	}
	for _, c := range catalog.All() {
		for i := range c.Inputs {
			if in := &c.Inputs[i]; in.Kind == quantity.Share && in.Limit.Name == e.Name {
				return true
			}
		}
	}
	return false
}

func rangeHint(e *volume.RangeError) string {
	if e.Source == "" {
		return ""
	}
	return "the range: " + e.Source
}

// plain writes a number and a unit that have no display of their own.
func plain(v float64, unit string) string {
	format := "%.5g %s"
	if whole := float64(int64(v)); v == whole && -1e15 < v && v < 1e15 {
		format = "%.0f %s"
	}
	return strings.TrimSpace(fmt.Sprintf(format, v, unit))
}

// commandIn returns the package and calculation that args name, as far as they
// do.
func commandIn(args []string) []string {
	for i, a := range args {
		switch {
		case a == "event":
			return []string{a}
		case !catalog.IsPackage(a):
		case i+1 < len(args) && catalog.Find(a, args[i+1]) != nil:
			return args[i : i+2]
		default:
			return []string{a}
		}
	}
	return nil
}
