package plan

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// TestForeignTextIsRefused puts characters that steer a terminal, or that would
// forge a line or a number of the plan, into every text of a day.
func TestForeignTextIsRefused(t *testing.T) {
	for _, text := range []string{
		`"Mea\u001b]0;x\u0007dow"`, `"Hay\nVERDICT\n  The plan holds."`, `"""Hay
maker"""`, `"\u202Eregal"`, `"\U0000009B31m"`, `"a\u2028b"`, "'tab\there'", `"{9 kpa}"`, `"\u007f"`,
	} {
		for _, key := range []string{"title", "date", "glass.size", "glass.head", "guests = { count", "beer.name", "beer.line.tubes = ['7mm:1m',"} {
			line := key + " = " + text
			switch {
			case strings.HasPrefix(key, "guests"):
				line += " }"
			case strings.Contains(key, "["):
				line = key + text + "]"
			}
			_, err := Read("day.toml", []byte("# a day\n\n"+line+"\n"))
			var file *FileError
			if !errors.As(err, &file) || file.Line != 3 || file.Hint == "" || !strings.Contains(file.What, " has ") {
				t.Errorf("%q: %v", line, err)
			}
			if err != nil && strings.ContainsFunc(err.Error(), func(r rune) bool { return r < ' ' || r > '~' }) {
				t.Errorf("the message itself is not plain: %q", err)
			}
		}
	}
	_, err := Read("day.toml", []byte("title = \"M\\u001bdow\"\n"))
	if want := `day.toml:1: title "M\x1bdow" has the control character U+001B as letter 2`; fmt.Sprint(err) != want {
		t.Errorf("%v, want %s", err, want)
	}
}

// TestAnyNameIsTaken: letters of every script, and what means something only to
// a page or a spreadsheet, are no concern of the file.
func TestAnyNameIsTaken(t *testing.T) {
	for _, name := range []string{"Bière d'été", "夏の麦酒", "[x](javascript:1)", "<script>|`*", "=1+1", "50 % \"new\""} {
		p := meadow(t, `"Haymaker Lager"`, fmt.Sprintf("%q", name))
		if p.Beers[0].Name != name {
			t.Errorf("%q is called %q", name, p.Beers[0].Name)
		}
	}
}
