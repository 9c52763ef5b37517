package plan

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/pourwell/volume"
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

// TestManyBeers: they are counted before they are read, and before each is
// compared with all the others.
func TestManyBeers(t *testing.T) {
	day := "hours = \"5h\"\nair = \"31C\"\nguests.count = 60\n"
	for _, text := range []string{
		day + strings.Repeat("[[beer]]\n", 101) + "what is this", // not read so far
		day + "beer = [" + strings.Repeat("{keg = \"30L\"},", 101) + "]\n",
	} {
		read, err := Read("day.toml", []byte(text))
		if err == nil {
			_, err = Compute("day.toml", read)
		}
		var outside *volume.RangeError
		if !errors.As(err, &outside) || outside.Name != "beers" {
			t.Errorf("%.60q: %v", text, err)
		}
	}
}

// TestManyLines: a file of nothing but unknown keys is given up early.
func TestManyLines(t *testing.T) {
	var wrong *FileError
	_, err := Read("day.toml", []byte(strings.Repeat("a = 1\n", mostLines+1)))
	if !errors.As(err, &wrong) || !strings.Contains(wrong.What, "more than 5000 lines") {
		t.Errorf("%v", err)
	}
}
