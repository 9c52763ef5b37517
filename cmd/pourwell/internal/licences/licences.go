// Package licences holds the licences of what is linked into the program, which
// a binary must carry: one folder for each module, with its texts as they
// stand. Its test compares them with the modules; with -update it copies them.
package licences

import (
	"embed"
	"io/fs"
	"path"
	"strings"
	"unicode/utf8"
)

//go:embed texts
var texts embed.FS

const head = `pourwell is built from the modules below, each under its own licence, and from
the standard library of Go. Portions of this software are copyright The FreeType
Project (www.freetype.org), all rights reserved. SVGo is by Anthony Starks. All
are used as they are published.
`

// Page returns the licences of every module, in the order of their names.
func Page() string {
	var b strings.Builder
	b.WriteString(head)
	module := ""
	// Nothing can fail in what is embedded.
	_ = fs.WalkDir(texts, "texts", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		if dir := strings.TrimPrefix(path.Dir(name), "texts/"); dir != module {
			module = dir
			b.WriteString("\n" + strings.Repeat("-", 80) + "\n" + module + "\n")
		}
		text, err := texts.ReadFile(name)
		b.WriteString("\n" + strings.Trim(letters(text), "\n") + "\n")
		return err
	})
	return b.String()
}

// letters reads a text as UTF-8, or else as ISO 8859-1, where each byte is the
// letter of its number.
func letters(text []byte) string {
	if utf8.Valid(text) {
		return string(text)
	}
	var b strings.Builder
	for _, c := range text {
		b.WriteRune(rune(c))
	}
	return b.String()
}
