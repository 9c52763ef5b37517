package main

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

func TestBrief(t *testing.T) {
	digits := strings.Repeat("0", 300)
	path := "/home/" + strings.Repeat("deep/", 20) + "day.toml"
	for _, c := range []struct{ in, want string }{
		{`--temp: "38Q" has the unknown unit "Q"`, `--temp: "38Q" has the unknown unit "Q"`},
		{"two\nlines\tand  blanks", "two lines and blanks"},
		{`a bore of 3/16" or 7 mm (é, 12 °C)`, `a bore of 3/16" or 7 mm (é, 12 °C)`},
		{"temperature 1" + digits + ".0 °F (1" + digits + ") is outside 0 to 1", "temperature 1e+300 °F (1e+300) is outside 0 to 1"},
		{`"` + strings.Repeat("é", 90) + `"`, `"` + strings.Repeat("é", 30) + "…" + strings.Repeat("é", 29) + `"`},
		{path + ":12: unknown key", path[:30] + "…" + path[len(path)-25:] + ":12: unknown key"},
		{"38\u202eF and \x1b[2J", `38\u202eF and \x1b[2J`},
		{`"38\u202eF" and "\x1b[2J"`, `"38\u202eF" and "\x1b[2J"`},
		{`an open "quote`, `an open "quote`},
		{"", ""},
	} {
		if got := brief(c.in); got != c.want {
			t.Errorf("%q becomes\n%q, want\n%q", c.in, got, c.want)
		}
	}
	long := strings.Repeat("a b ", 100)
	if got := brief("unexpected argument "+long, "lines", long); len(got) > len("unexpected argument ")+mostEcho+len("…") {
		t.Errorf("%q", got)
	}
}

// TestErrorsAreBrief types something long, and something that steers a
// terminal, for every input: the two lines stay short and harmless.
func TestErrorsAreBrief(t *testing.T) {
	tried := map[string]bool{}
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		for i := 2; i < len(args)-1; i++ {
			flag := c.Title() + args[i]
			if !strings.HasPrefix(args[i], "--") || strings.HasPrefix(args[i+1], "--") || tried[flag] {
				continue
			}
			tried[flag] = true
			for _, text := range []string{strings.Repeat("x", 900), strings.Repeat("3/16in:", 130), strings.Repeat("7 in ", 200),
				"1" + strings.Repeat("0", 300) + args[i+1], args[i+1] + strings.Repeat("9", 900), "a\x1b[2Jb", args[i+1] + "\u202e", "\a" + args[i+1]} {
				bad := slices.Clone(args)
				bad[i+1] = text
				_, errs, _ := commandCode(bad...)
				for line := range strings.Lines(errs) {
					if len(line) > 600 {
						t.Errorf("%s %.20s…: a line of %d characters: %.200s…", args[i], text, len(line), line)
					}
				}
				if j := strings.IndexFunc(errs, func(r rune) bool { return r != '\n' && !unicode.IsGraphic(r) }); j >= 0 {
					t.Errorf("%s: the message has %q", args[i], errs[j:])
				}
			}
		}
	})
}
