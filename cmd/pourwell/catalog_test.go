package main

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
)

// These tests run every calculation by its own examples, so that whoever adds
// one need not think of the mechanisms.

// pourwell runs the command in this process.
func pourwell(t *testing.T, want int, args ...string) string {
	t.Helper()
	out, errs, code := commandCode(args...)
	if code != want {
		t.Fatalf("pourwell %s: exit code %d, want %d: %s", strings.Join(args, " "), code, want, errs)
	}
	return out
}

func commandCode(args ...string) (out, errs string, code int) {
	var o, e bytes.Buffer
	code = run(args, strings.NewReader(""), &o, &e)
	return o.String(), e.String(), code
}

// everyExample calls test for each example of each calculation.
func everyExample(t *testing.T, test func(t *testing.T, c *calc.Calculation, args []string)) {
	t.Setenv("LC_ALL", "C.UTF-8")
	t.Setenv("POURWELL_UNITS", "")
	os.Unsetenv("POURWELL_UNITS")
	for _, c := range catalog.All() {
		for i, example := range c.Ready().Examples {
			t.Run(fmt.Sprintf("%s %d", c.Title(), i+1), func(t *testing.T) { test(t, c, split(example)) })
		}
	}
}

// with adds flags to args, in place of those that the example has.
func with(args []string, more ...string) []string {
	for i := len(args) - 2; i > 0; i-- {
		if strings.HasPrefix(args[i], "--") && slices.Contains(more, args[i]) {
			args = slices.Concat(args[:i], args[i+2:])
		}
	}
	return slices.Concat(args, more)
}

// fits80 checks that every line fits 80 columns.
func fits80(t *testing.T, what, text string) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		if utf8.RuneCountInString(line) > 80 {
			t.Errorf("%s has a line of %d columns: %s", what, utf8.RuneCountInString(line), line)
		}
	}
}

// TestDescriptions checks what every description must have.
func TestDescriptions(t *testing.T) {
	word, key := regexp.MustCompile(`^[a-z]+$`), regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
	seen := map[string]bool{}
	for _, c := range catalog.All() {
		c.Ready()
		if seen[c.Title()] {
			t.Errorf("%s is there twice", c.Title())
		}
		seen[c.Title()] = true
		if !word.MatchString(c.Name) {
			t.Errorf("%s: the name is not one word of small letters", c.Title())
		}
		if len(c.Examples) < 2 {
			t.Errorf("%s has %d examples", c.Title(), len(c.Examples))
		}
		if c.Summary == "" || strings.HasSuffix(c.Summary, ".") || strings.Contains(c.Summary, "{") {
			t.Errorf("%s: summary %q", c.Title(), c.Summary)
		}
		names := map[string]bool{}
		for _, in := range c.AllInputs() {
			if names[in.Name] || slices.Contains(globalNames, in.Name) || in.Name == "help" {
				t.Errorf("%s: the flag --%s has two meanings", c.Title(), in.Name)
			}
			names[in.Name] = true
			if in.Help == "" || strings.HasSuffix(in.Help, ".") {
				t.Errorf("%s --%s: help %q", c.Title(), in.Name, in.Help)
			}
			if !key.MatchString(in.InputKey()) {
				t.Errorf("%s --%s: key %q", c.Title(), in.Name, in.InputKey())
			}
		}
		results := map[string]bool{}
		for _, k := range c.Results {
			if results[k.Key] || !key.MatchString(k.Key) {
				t.Errorf("%s: result %q is there twice or misspelt", c.Title(), k.Key)
			}
			results[k.Key] = true
		}
		if _, err := calc.NewValues(c); err != nil {
			t.Errorf("%s: %v", c.Title(), err)
		}
	}
	for _, p := range catalog.Packages {
		if !slices.ContainsFunc(catalog.All(), func(c *calc.Calculation) bool { return c.Package == p.Name }) {
			t.Errorf("%s has no calculation", p.Name)
		}
	}
}
