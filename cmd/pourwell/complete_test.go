package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
)

// completed returns what a shell is offered behind line, which asks with args.
func completed(t *testing.T, line string, args ...string) []string {
	t.Helper()
	t.Setenv("COMP_LINE", line)
	var out, errs bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &errs); code != exitDone || errs.Len() > 0 {
		t.Fatalf("%q: exit code %d: %s", line, code, &errs)
	}
	return strings.Fields(out.String())
}

func TestComplete(t *testing.T) {
	for _, c := range []struct{ line, want string }{
		{"pourwell ", "event help carbonation thermal lines volume"},
		{"pourwell  th", "thermal"},
		{"pourwell --units us th", "thermal"},
		{"pourwell --explain th", "thermal"},
		{"pourwell --units ", "us metric both"},
		{"pourwell --units=m", "--units=metric"},
		{"pourwell --format ", "text json csv markdown"},
		{"pourwell carbonation e", "equilibrium"},
		{"pourwell toaster ", ""},
		{"pourwell carbonation equilibrium ", ""},
		{"pourwell carbonation equilibrium --te", "--temp"},
		{"pourwell carbonation equilibrium --temp ", ""},
		{"pourwell carbonation equilibrium --temp -2C --ga", "--gauge"},
		{"pourwell carbonation equilibrium --nonsense ", ""},
		{"pourwell thermal keg --surface ", "bare painted"},
		{"pourwell thermal keg --keg=soda-5gal-", "--keg=soda-5gal-pin-lock"},
		{"pourwell event --sa", "--sample --samples"},
		{"pourwell help the", "thermal"},
		{"pourwell help thermal ic", "icebath"},
		{"pourwell help thermal icebath ", ""},
		{"pourwell help c", "carbonation completion"},
	} {
		if got := strings.Join(completed(t, c.line), " "); got != c.want {
			t.Errorf("%q is offered %q, want %q", c.line, got, c.want)
		}
	}
}

// TestCompleteInside: the shell says where in the line the question is, and
// which part of the word it will replace.
func TestCompleteInside(t *testing.T) {
	if got := completed(t, "pourwell thermal keg --keg=us-h", "pourwell", "us-h", "="); !slices.Equal(got, []string{"us-half"}) {
		t.Errorf("behind = it is offered %q", got)
	}
	t.Setenv("COMP_POINT", "11")
	if got := completed(t, "pourwell th keg", "pourwell", "th", "pourwell"); !slices.Equal(got, []string{"thermal"}) {
		t.Errorf("within the line it is offered %q", got)
	}
}

// TestCompleteEverything: each command, each flag and each word of a choice is
// offered.
func TestCompleteEverything(t *testing.T) {
	for _, c := range catalog.All() {
		if got := completed(t, "pourwell "+c.Title()); !slices.Contains(got, c.Name) {
			t.Errorf("%s is not offered", c.Title())
		}
		flags := completed(t, "pourwell "+c.Title()+" --")
		for _, name := range slices.Concat(c.Ready().InputNames(), globalNames) {
			if !slices.Contains(flags, "--"+name) {
				t.Errorf("%s --%s is not offered", c.Title(), name)
			}
		}
		for _, in := range c.AllInputs() {
			words := completed(t, "pourwell "+c.Title()+" --"+in.Name+" ")
			if choice := len(in.Choices) > 0 || in.Named != ""; choice != (len(words) > 0) && in.Kind != quantity.Text {
				t.Errorf("%s --%s is offered %q", c.Title(), in.Name, words)
			}
			if !slices.Equal(words, in.Choices) && in.Choices != nil {
				t.Errorf("%s --%s is offered %q of %q", c.Title(), in.Name, words, in.Choices)
			}
		}
	}
}
