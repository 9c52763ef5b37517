package calc

import (
	"errors"
	"fmt"
	"strings"

	"example.com/pourwell/internal/quantity"
)

// A UsageError reports what was typed wrong, as opposed to a calculation that
// has no answer.
type UsageError struct {
	What string // what is wrong, one line
	Hint string // what to type instead; may be empty
}

// Error returns what is wrong, with the hint after a semicolon.
func (e *UsageError) Error() string {
	if e.Hint == "" {
		return e.What
	}
	return e.What + "; " + e.Hint
}

// Exactly returns a [*UsageError] unless n of the inputs called names were
// typed. The error says which to add or drop.
func (v *Values) Exactly(n int, names ...string) error {
	count := 0
	for _, name := range names {
		if v.at(name).given {
			count++
		}
	}
	if count == n {
		return nil // a million rows pass here
	}
	return v.notExactly(n, names)
}

// notExactly says which of names to add or drop so that n are left.
func (v *Values) notExactly(n int, names []string) error {
	var given, missing []string
	for _, name := range names {
		if v.at(name).given {
			given = append(given, "--"+name)
		} else {
			missing = append(missing, "--"+name)
		}
	}
	counts := [...]string{"none", "one", "two", "three"}
	what := fmt.Sprintf("%s needs %s of %s", v.calc.Title(), counts[n], flagList(names))
	switch {
	case len(missing) == 0:
		return &UsageError{what + ", not all", "drop " + join(given, "or")}
	case len(given) > n:
		return &UsageError{what + ", not " + join(given, "and"), "drop " + join(given, "or")}
	}
	return &UsageError{what, "add " + join(missing, "or")}
}

// Require returns a [*UsageError] naming the first of the inputs that has no
// value.
func (v *Values) Require(names ...string) error {
	for _, name := range names {
		if i := v.calc.index(name); !v.cells[i].set {
			in := &v.calc.all[i]
			hint := fmt.Sprintf("add --%s, %s", name, in.Help)
			if ex := in.Kind.Example(); ex != "" && !strings.Contains(in.Help, "such as") {
				hint += ", for example " + ex
			}
			return &UsageError{fmt.Sprintf("%s needs --%s", v.calc.Title(), name), hint}
		}
	}
	return nil
}

func flagList(names []string) string {
	flags := make([]string, len(names))
	for i, n := range names {
		flags[i] = "--" + n
	}
	return join(flags, "and")
}

// join lists words with commas and a conjunction before the last.
func join(words []string, conjunction string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " " + conjunction + " " + words[last]
}

// named puts the flag's name before what is wrong with its text, and keeps the
// hint.
func named(name string, err error) error {
	var usage *UsageError
	var text *quantity.Error
	switch {
	case errors.As(err, &usage):
		return &UsageError{"--" + name + ": " + usage.What, usage.Hint}
	case errors.As(err, &text):
		return &UsageError{fmt.Sprintf("--%s: %q %s", name, text.Text, text.What), text.Hint}
	}
	return fmt.Errorf("--%s: %w", name, err)
}
