package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
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
	key := regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
	seen := map[string]bool{}
	for _, c := range catalog.All() {
		c.Ready()
		if seen[c.Title()] {
			t.Errorf("%s is there twice", c.Title())
		}
		seen[c.Title()] = true
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

// rangeless lists inputs whose help states no range, because none of the
// packages' tables has one for them.
var rangeless = map[string]string{
	"regulator": "above the keg's own pressure it changes nothing", "rating": "any stamp", "gauge": "as the cylinder",
	"winding": "wider than the tube, as a ratio of bores",
}

func ranged(in *calc.Input) bool { _, ok := in.Range(); return ok }

// TestHelpStatesRanges checks that help states a range for every number, and
// that the list of exceptions has none too many.
func TestHelpStatesRanges(t *testing.T) {
	used := map[string]bool{}
	for _, c := range catalog.All() {
		for _, in := range c.Ready().AllInputs() {
			if !in.Kind.Sizeable() || ranged(&in) || in.Named != "" || in.Repeat {
				continue
			}
			used[in.Name] = true
			if rangeless[in.Name] == "" {
				t.Errorf("help of %s states no range for --%s", c.Title(), in.Name)
			}
		}
	}
	for name := range rangeless {
		if !used[name] {
			t.Errorf("--%s has a range by now", name)
		}
	}
}

// TestLimitsHold types a number just beyond the range that help states: there
// is no answer then.
func TestLimitsHold(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		for _, i := range numberFlags(c, args) {
			in := c.Input(strings.TrimPrefix(args[i], "--"))
			limit, _ := in.Range()
			for _, beyond := range []float64{limit.Max + (limit.Max-limit.Min)/1000, limit.Min - (limit.Max-limit.Min)/1000} {
				far := slices.Clone(args)
				far[i+1] = beyondText(in, limit, beyond)
				if far[i+1] == "" || limit.Name == "" {
					continue
				}
				if out, errs, code := commandCode(far...); code == exitDone || out != "" {
					t.Errorf("%s %s: exit code %d beyond %v to %v %s: %s%.80s", args[i], far[i+1], code, limit.Min, limit.Max, limit.Unit(), errs, out)
				}
			}
		}
	})
}

// beyondText writes v, in the unit of limit, as it is typed, "" if it cannot
// be.
func beyondText(in *calc.Input, limit volume.Range, v float64) string {
	unit := strings.TrimSuffix(limit.Unit(), " abs")
	switch {
	case in.Kind == quantity.Count:
		v = math.Round(v + math.Copysign(0.5, v-limit.Min))
	case in.Kind == quantity.Share && unit == "":
		v, unit = 100*v, "%"
	case in.Kind == quantity.Gauge && unit != limit.Unit(): // of absolute pressures
		v -= 101.325
	}
	text := strconv.FormatFloat(v, 'f', 9, 64) + unit
	if in.Kind == quantity.Count {
		text = strconv.FormatFloat(v, 'f', 0, 64)
	}
	if _, err := quantity.Parse(in.Kind, text); err != nil {
		return ""
	}
	return text
}
