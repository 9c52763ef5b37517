package main

import (
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/catalog"
)

// TestHelp checks that help fits, starts with two examples and names every
// flag; and the same for the manual page.
func TestHelp(t *testing.T) {
	page := pourwell(t, exitDone, "help", "man")
	for _, c := range catalog.All() {
		text := pourwell(t, exitDone, c.Package, c.Name, "--help")
		fits80(t, "help of "+c.Title(), text)
		if strings.Count(strings.SplitN(text, "\n\n", 2)[0], "  pourwell "+c.Title()) < 2 {
			t.Errorf("help of %s does not start with two examples:\n%s", c.Title(), text)
		}
		for _, in := range c.AllInputs() {
			if !strings.Contains(text, "--"+in.Name+" ") {
				t.Errorf("help of %s is silent on --%s", c.Title(), in.Name)
			}
		}
		for _, in := range c.Inputs {
			if !strings.Contains(page, roff("--"+in.Name)) {
				t.Errorf("the manual page is silent on %s --%s", c.Title(), in.Name)
			}
		}
		if text != pourwell(t, exitDone, "help", c.Package, c.Name) {
			t.Errorf("help %s and %s --help differ", c.Title(), c.Title())
		}
	}
	for _, topic := range append([]string{"", "event"}, topicNames()...) {
		if topic != "man" && topic != "licences" {
			fits80(t, "help "+topic, pourwell(t, exitDone, strings.Fields("help "+topic)...))
		}
	}
	for _, p := range catalog.Packages {
		fits80(t, p.Name, pourwell(t, exitDone, p.Name, "--help"))
	}
	for i, line := range strings.Split(page, "\n") {
		for _, r := range line {
			if r > 126 {
				t.Fatalf("line %d of the manual page has %q", i+1, r)
			}
		}
	}
}

// TestHelpExamples runs every command line of the pages that belong to no
// calculation, but for those about the reader's own files.
func TestHelpExamples(t *testing.T) {
	ran := 0
	for _, page := range []string{overview, helpRanges, helpOutput} {
		text := strings.ReplaceAll(page, "\\\n", "")
		for _, line := range strings.Split(text, "\n") {
			args, ok := strings.CutPrefix(line, "  pourwell ")
			if !ok || strings.Contains(args, "my-day") || strings.Contains(args, "kegs.csv") {
				continue
			}
			pourwell(t, exitDone, split(args)...)
			ran++
		}
	}
	if ran < 5 {
		t.Errorf("%d command lines", ran)
	}
}
