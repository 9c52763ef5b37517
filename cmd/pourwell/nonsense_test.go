package main

import (
	"slices"
	"strings"
	"testing"
	"unicode"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// anySize lists inputs that may be of any size, with the reason.
var anySize = map[string]string{
	"carbonation sealed --regulator": "above the keg's own pressure it changes nothing",
}

// TestErrorsOnNonsense checks that what is no quantity, or far too large, ends in
// a message of two lines on standard error alone.
func TestErrorsOnNonsense(t *testing.T) {
	everyExample(t, func(t *testing.T, c *calc.Calculation, args []string) {
		for _, i := range numberFlags(c, args) {
			for _, text := range []string{"NaN", "Inf", "1e400", "", "--", "x", "12parsec"} {
				bad := slices.Clone(args)
				bad[i+1] = text
				out, errs, code := commandCode(bad...)
				if code != exitUsage || out != "" || strings.Count(errs, "\n") != 2 || !strings.HasPrefix(errs, "pourwell: ") || !strings.Contains(errs, "\nhint: ") {
					t.Errorf("%s %q: exit code %d, output %q, message %q", args[i], text, code, out, errs)
				}
			}
			huge := slices.Clone(args)
			huge[i+1] = "1e30" + quantity.UnitOf(args[i+1])
			if c.Input(strings.TrimPrefix(args[i], "--")).Kind == quantity.Share {
				huge[i+1] = "1e30%"
			}
			out, errs, code := commandCode(huge...)
			if anySize[c.Title()+" "+args[i]] == "" && (code != exitNoAnswer && code != exitUsage || out != "") {
				t.Errorf("%s %s: exit code %d: %s%s", args[i], huge[i+1], code, out, errs)
			}
		}
	})
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
