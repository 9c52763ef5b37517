package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/cmd/pourwell/internal/report"
)

// A page in the language of man(7), made from the same descriptions as the
// help. The generators for the parser know its flags alone, without examples
// and the ranges of the packages' own tables, so this writes its own.

// man returns the manual page.
func man() string {
	var b strings.Builder
	b.WriteString(".TH POURWELL 1\n.SH NAME\npourwell \\- compute how to serve kegs outdoors\n" +
		".SH SYNOPSIS\n.nf\n")
	for _, p := range catalog.Packages {
		fmt.Fprintf(&b, ".B pourwell %s\n.I CALCULATION\n", p.Name)
	}
	b.WriteString(".B pourwell event\n.I FILE.toml\n.B pourwell help\n.I TOPIC\n.fi\n")
	section(&b, "EXAMPLES", literal(strings.Split(overview, "\n\n")[1]))
	for _, p := range catalog.Packages {
		fmt.Fprintf(&b, ".SH %s\n%s.\n", strings.ToUpper(p.Name), roff(report.Capital(p.About)))
		for _, c := range catalog.In(p.Name) {
			manCalculation(&b, c.Ready())
		}
	}
	section(&b, "EVENT", literal(strings.TrimRight(helpEvent, "\n")))
	b.WriteString(".SH OPTIONS EVERYWHERE\n")
	for _, name := range globalNames {
		tagged(&b, "--"+name, globalHelp[name])
	}
	for _, t := range topics() {
		if !slices.Contains([]string{"man", "completion", "licences"}, t.name) {
			section(&b, strings.ToUpper(t.name), literal(strings.TrimRight(t.text(), "\n")))
		}
	}
	return b.String()
}

func manCalculation(b *strings.Builder, c *calc.Calculation) {
	fmt.Fprintf(b, ".SS %s\n%s.\n", roff(c.Title()), roff(report.Capital(c.Summary)))
	if c.Detail != "" {
		fmt.Fprintf(b, "%s\n", roff(c.Detail))
	}
	var lines []string
	for _, e := range c.Examples {
		lines = append(lines, example(e))
	}
	b.WriteString(".PP\n" + literal(strings.Join(lines, "\n")))
	for _, in := range c.Inputs {
		tagged(b, "--"+in.Name, inputHelp(in))
	}
	b.WriteString(".PP\nResults:\n")
	for i, k := range c.Results {
		if i > 0 {
			b.WriteString(",\n")
		}
		b.WriteString(roff(k.Key))
	}
	b.WriteString(".\n")
}

func section(b *strings.Builder, title, body string) {
	fmt.Fprintf(b, ".SH %s\n%s", title, body)
}

func tagged(b *strings.Builder, tag, text string) {
	fmt.Fprintf(b, ".TP\n.B %s\n%s\n", roff(tag), roff(text))
}

// literal keeps text line by line.
func literal(text string) string {
	return ".nf\n" + roff(text) + "\n.fi\n"
}

// roff escapes what the language would take for its own, and letters beyond
// ASCII.
func roff(text string) string {
	lines := strings.Split(strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'") {
			lines[i] = `\&` + l
		}
	}
	var b strings.Builder
	for _, r := range strings.Join(lines, "\n") {
		if r < 128 {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\[u%04X]`, r)
		}
	}
	return b.String()
}
