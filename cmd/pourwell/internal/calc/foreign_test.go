package calc

import (
	"errors"
	"strings"
	"testing"
	"unicode"

	"example.com/pourwell/internal/quantity"
	"pgregory.net/rapid"
)

// TestForeign lists text that is let in and text that is not.
func TestForeign(t *testing.T) {
	for _, text := range []string{"", "Haymaker Lager", "Bière d'été 5 %", "38°F ± 1", "夏の麦酒", "שיכר", "<b>|*", "=1+1", "a \ufffd b", "e\u0301", "👩\u200d🌾"} {
		if err := CheckWords("", text); err != nil {
			t.Errorf("%q is refused: %v", text, err)
		}
	}
	for text, says := range map[string]string{
		"Hay\x1b[2Jmaker": `"Hay\x1b[2Jmaker" has the control character U+001B as letter 4`,
		"\x07bell":        "control character U+0007 as letter 1",
		"tab\there":       "control character U+0009",
		"delete\x7f":      "control character U+007F",
		"c1\u009b31m":     "control character U+009B as letter 3",
		"a\nb":            "line break U+000A as letter 2",
		"é\u2028b":        "line break U+2028 as letter 2",
		"a\u2029":         "line break U+2029",
		"38\u202eF":       "mark of direction U+202E as letter 3",
		"\u2066x\u2069":   "mark of direction U+2066",
		"a\u200e":         "mark of direction U+200E",
		"a\u061c":         "mark of direction U+061C",
		"a\x9b31m":        "is not UTF-8 from letter 2 on",
		"{1000 kpa}":      "curly bracket",
	} {
		err := CheckWords("", text)
		var usage *UsageError
		if !errors.As(err, &usage) || !strings.Contains(usage.What, says) || usage.Hint == "" {
			t.Errorf("%q: %v, want an error with %q", text, err, says)
		}
	}
	if err := CheckText("name", "\t"); err == nil || !strings.HasPrefix(err.Error(), `name "\t" has`) {
		t.Errorf("a text with a name: %v", err)
	}
	if err := CheckText("id", "{3F2504E0}"); err != nil {
		t.Errorf("a bracket in a copied cell: %v", err)
	}
}

// TestForeignMessages: what is refused is shown with nothing left that steers a
// terminal, and what is let in has nothing of the kind.
func TestForeignMessages(t *testing.T) {
	steers := func(s string) bool {
		return strings.ContainsFunc(s, func(r rune) bool {
			return unicode.In(r, unicode.Cc, unicode.Zl, unicode.Zp, unicode.Bidi_Control)
		})
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		err := CheckText("", text)
		if err == nil && steers(text) || err != nil && steers(err.Error()) {
			t.Fatalf("%q: %v", text, err)
		}
	})
}

// TestForeignTyped: every text that is typed for a calculation is checked.
func TestForeignTyped(t *testing.T) {
	v, err := NewValues((&Calculation{Package: "test", Name: "text", Inputs: []Input{{Name: "beer", Kind: quantity.Text, Repeat: true}}}).Ready())
	if err != nil {
		t.Fatal(err)
	}
	if err := v.SetText("beer", "Pale:60%", "\x1b[31mB:40%"); err == nil || !strings.HasPrefix(err.Error(), `--beer: "\x1b[31mB:40%" has`) {
		t.Error(err)
	}
}
