package main

import (
	"strings"
	"testing"
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
