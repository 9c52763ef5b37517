package main

// Rules of the messages on standard error: one line says what is wrong, with
// the value and what is allowed in both unit systems; one line gives a hint.
// No capital at the start, no full stop at the end. Nothing is on standard
// output when there is an error.

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"syscall"

	"example.com/pourwell/cmd/pourwell/internal/answer"
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
	what, hint, code := describe(err, unitsTyped(args))
	if hint == "" {
		hint = "see pourwell " + strings.Join(append(commandIn(args), "--help"), " ")
	}
	message := fmt.Sprintf("pourwell: %s\nhint: %s\n", brief(what, args...), brief(hint, args...))
	_, _ = io.WriteString(report.Plain(w, !utf8Locale()), message) // nobody is left to tell of an error
	return code
}

// describe sorts err into what is wrong, a hint and the exit code.
func describe(err error, units quantity.System) (what, hint string, code int) {
	var file *plan.FileError
	var usage *calc.UsageError
	var parse *kong.ParseError
	var text *quantity.Error
	var rng *volume.RangeError
	var none *volume.NoSolutionError
	var never *volume.NeverError
	var rows *answer.RowsFailed
	switch {
	case errors.As(err, &file):
		return file.Error(), file.Hint, exitUsage
	case errors.As(err, &rows):
		first, hint, _ := describe(rows.First, units)
		return rows.Count() + first, hint, exitNoAnswer
	case errors.As(err, &usage):
		return usage.What, usage.Hint, exitUsage
	case errors.As(err, &text):
		return fmt.Sprintf("%q %s", text.Text, text.What), text.Hint, exitUsage
	case errors.As(err, &rng):
		return about(err, rng) + quantity.Say(string(rng.Why()), units), rangeHint(rng, units), exitNoAnswer
	case errors.As(err, &none):
		return about(err, none) + volume.ErrNoSolution.Error() + ": " + quantity.Say(string(none.Why), units), "", exitNoAnswer
	case errors.As(err, &never):
		return about(err, never) + volume.ErrNever.Error() + ": " + quantity.Say(string(never.Why), units), "", exitNoAnswer
	case errors.As(err, &parse):
		return parse.Error(), "", exitUsage
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT):
		return err.Error(), "make room there, or write to another place", exitUnexpected
	case errors.Is(err, syscall.EIO):
		return err.Error(), "the disk or device is at fault: try another place", exitUnexpected
	}
	return err.Error(), "", exitUnexpected
}

// failure returns what is wrong with a row as its own words.
func failure(err error, units quantity.System) string {
	what, hint, code := describe(err, units)
	if code == exitUsage && hint != "" {
		what += "; " + hint
	}
	return brief(what)
}

// about returns what stands before an error's own text, such as the name
// of the beer it is about.
func about(err, e error) string {
	return strings.TrimSuffix(err.Error(), e.Error())
}

func rangeHint(e *volume.RangeError, units quantity.System) string {
	if e.Source == "" {
		return ""
	}
	return "the range: " + quantity.Say(e.Source, units)
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

// unitsTyped returns the units of display that args or the environment ask for,
// as far as they can be read: both where they cannot.
func unitsTyped(args []string) quantity.System {
	word := os.Getenv("POURWELL_UNITS")
	for i, a := range args {
		if value, ok := strings.CutPrefix(a, "--units="); ok {
			word = value
		} else if a == "--units" && i+1 < len(args) {
			word = args[i+1]
		}
	}
	return systems[word]
}
