package main

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// mostEcho is how many characters of an argument a message repeats.
const mostEcho = 60

// brief makes a message fit to be shown, whatever was typed or stood in a
// file: one line, no more than mostEcho characters of any argument or word,
// and nothing that steers a terminal.
func brief(message string, args ...string) string {
	s := oneLine(message)
	for _, a := range args {
		if a = oneLine(a); utf8.RuneCountInString(a) > mostEcho {
			s = strings.ReplaceAll(s, a, shortened(a))
		}
	}
	var b strings.Builder
	for s != "" {
		part := s
		if quoted, err := strconv.QuotedPrefix(s); err == nil && s[0] == '"' {
			part = quoted
			text, _ := strconv.Unquote(quoted) // it has just been read
			b.WriteString(strconv.Quote(shortened(text)))
		} else {
			if i := strings.IndexAny(s[1:], ` "`); i >= 0 {
				part = s[:i+1]
			}
			b.WriteString(visible(shortWord(part)))
		}
		s = s[len(part):]
	}
	return b.String()
}

// shortened leaves the ends of a long text; a file's name and a unit stand at
// the end.
func shortened(text string) string {
	r := []rune(text)
	if len(r) <= mostEcho {
		return text
	}
	return string(r[:mostEcho/2]) + "…" + string(r[len(r)-mostEcho/2+1:])
}

// shortWord writes a number of many digits as a power of ten, and shortens any
// other long word.
func shortWord(word string) string {
	number := strings.Trim(word, " (),;:%")
	if v, err := strconv.ParseFloat(number, 64); err == nil && len(number) > 20 {
		return strings.Replace(word, number, strconv.FormatFloat(v, 'g', 4, 64), 1)
	}
	return shortened(word)
}

// visible spells the letters that show nothing and may steer a terminal.
func visible(text string) string {
	var b strings.Builder
	for _, r := range text {
		if strconv.IsGraphic(r) {
			b.WriteRune(r)
		} else {
			b.WriteString(strings.Trim(strconv.QuoteToASCII(string(r)), `"`))
		}
	}
	return b.String()
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }
