package calc

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Text from outside, such as the name of a beer, is printed on terminals and
// on pages as it came. Two checks stand where it enters: one for text that is
// only copied, one for text that becomes part of a sentence.

// CheckText returns a [*UsageError] if text is not UTF-8, or has a character
// that steers what shows it rather than being read: a control character, a line
// break, or a mark of the direction of writing, which can turn a sentence
// around. The error begins with what, the name of the text, if there is one.
func CheckText(what, text string) error {
	wrong := func(hint, format string, args ...any) error {
		return &UsageError{strings.TrimSpace(fmt.Sprintf("%s %q ", what, text) + fmt.Sprintf(format, args...)), hint}
	}
	const hint = "leave it out: it is not for reading"
	letter := 0
	for i, r := range text {
		letter++
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(text[i:], string(r)):
			return wrong("write it as UTF-8", "is not UTF-8 from letter %d on", letter)
		case r == '\n' || r == '\r' || unicode.In(r, unicode.Zl, unicode.Zp):
			return wrong(hint, "has the line break %U as letter %d", r, letter)
		case unicode.IsControl(r):
			return wrong(hint, "has the control character %U as letter %d", r, letter)
		case unicode.Is(unicode.Bidi_Control, r):
			return wrong(hint, "has the mark of direction %U as letter %d", r, letter)
		}
	}
	return nil
}

// CheckWords is [CheckText] for text that becomes part of a sentence, in which
// curly brackets would quote a number.
func CheckWords(what, text string) error {
	if err := CheckText(what, text); err != nil {
		return err
	}
	if strings.ContainsAny(text, "{}") {
		return &UsageError{strings.TrimSpace(fmt.Sprintf("%s %q has a curly bracket", what, text)), "write a round one"}
	}
	return nil
}
