package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// PageMarkdown writes p as Markdown, one line a paragraph.
func PageMarkdown(w io.Writer, p Page, opt Options) error {
	t := printer{w: bufio.NewWriter(Plain(w, opt.ASCII)), out: &calc.Result{}, opt: opt}
	fmt.Fprintf(t.w, "# %s\n", t.markdown(p.Title))
	for _, b := range p.Blocks {
		if b.Heading != "" {
			fmt.Fprintf(t.w, "\n## %s\n", t.markdown(b.Heading))
		}
		for _, s := range b.Lines {
			fmt.Fprintf(t.w, "\n%s\n", t.markdown(s))
		}
		if len(b.Bullets) > 0 {
			fmt.Fprintln(t.w)
		}
		for _, s := range b.Bullets {
			fmt.Fprintf(t.w, "- %s\n", t.markdown(s))
		}
		t.markdownRows(b)
	}
	return t.w.Flush()
}

func (p *printer) markdownRows(b Block) {
	if len(b.Rows) == 0 {
		return
	}
	head := b.Columns
	if len(head) == 0 {
		head = make([]string, len(b.Rows[0]))
	}
	fmt.Fprintf(p.w, "\n| %s |\n|%s\n", strings.Join(head, " | "), strings.Repeat(" --- |", len(head)))
	for _, r := range b.Rows {
		cells := make([]string, len(r))
		for i, c := range r {
			cells[i] = p.markdown(c)
		}
		fmt.Fprintf(p.w, "| %s |\n", strings.Join(cells, " | "))
	}
}

// markdown writes a sentence so that a reader of Markdown sees its letters:
// the name of a beer makes no link, no emphasis, no HTML and no cell.
func (p *printer) markdown(sentence string) string {
	var b strings.Builder
	s := []rune(p.sentence(sentence))
	item := itemMark(s)
	for i, r := range s {
		switch {
		case strings.ContainsRune("\\`*[]<>|&~", r), i == item, r == '_' && !(inWord(s, i-1) && inWord(s, i+1)):
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// inWord reports whether a word goes on at i, where an underscore has no
// meaning.
func inWord(s []rune, i int) bool {
	return i >= 0 && i < len(s) && (unicode.IsLetter(s[i]) || unicode.IsDigit(s[i]))
}

// itemMark returns the place of the sign that makes s a heading or an item of a
// list, -1 if none does.
func itemMark(s []rune) int {
	mark, _, spaced := strings.Cut(string(s), " ")
	number := strings.TrimLeft(mark, "0123456789")
	switch {
	case !spaced || mark == "":
		return -1
	case mark == "-" || mark == "+" || strings.Trim(mark, "#") == "":
		return 0
	case number != mark && (number == "." || number == ")"):
		return len(mark) - 1
	}
	return -1
}
