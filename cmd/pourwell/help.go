package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

const overview = `pourwell computes how to serve kegs outdoors.

  pourwell carbonation equilibrium --temp 38F --gauge 12psi
  pourwell thermal icebath --keg 5gal --from 75F --to 40F --ice 60lb \
      --water 15L --tub 65L --tub-height 60cm --air 86F
  pourwell event --sample > my-day.toml
  pourwell event my-day.toml

A number carries its unit: 38F or 3.3C, 12psi or 0.8bar; answers show both.
"pourwell thermal --help" says what the calculations of a package do, "pourwell
thermal icebath --help" what one needs, with examples.
`

// help writes help on what is asked: nothing, a package, a calculation, event,
// or a topic.
func help(w io.Writer, asked []string) error {
	var b strings.Builder
	pages := topics()
	page := func(t topic) bool { return t.name == asked[0] }
	switch {
	case len(asked) == 0 || asked[0] == "help":
		helpOverview(&b)
	case asked[0] == "event":
		b.WriteString(helpEvent)
	case slices.ContainsFunc(pages, page):
		b.WriteString(pages[slices.IndexFunc(pages, page)].text())
	case !catalog.IsPackage(asked[0]):
		return unknownTopic(asked[0], slices.Concat(commands(), topicNames()))
	case len(asked) == 1:
		helpPackage(&b, asked[0])
	case catalog.Find(asked[0], asked[1]) == nil:
		return unknownTopic(asked[1], names(asked[0]))
	default:
		helpCalculation(&b, catalog.Find(asked[0], asked[1]))
	}
	_, err := io.WriteString(report.Plain(w, !utf8Locale()), b.String())
	return err
}

func helpOverview(b *strings.Builder) {
	b.WriteString(overview + "\nCommands\n")
	for _, p := range catalog.Packages {
		fmt.Fprintf(b, "  %-12s %s\n", p.Name, p.About)
		fmt.Fprintf(b, "  %-12s   %s\n", "", report.Wrap(strings.Join(names(p.Name), ", "), 17, 17))
	}
	fmt.Fprintf(b, "  %-12s %s\n", "event", "the whole day from one file; --sample prints one")
	fmt.Fprintf(b, "  %-12s %s\n", "help", report.Wrap("help on a command, or on: "+strings.Join(topicNames(), ", "), 15, 15))
	b.WriteString("\n")
	helpGlobals(b)
}

func helpGlobals(b *strings.Builder) {
	b.WriteString("Everywhere\n")
	for _, name := range globalNames {
		text := globalHelp[name]
		fmt.Fprintf(b, "  --%-9s %s\n", name, report.Wrap(text, 14, 14))
	}
}

func helpPackage(b *strings.Builder, name string) {
	fmt.Fprintf(b, "pourwell %s CALCULATION\n\n", name)
	for _, c := range catalog.In(name) {
		fmt.Fprintf(b, "  %-12s %s\n", c.Name, report.Wrap(c.Summary, 15, 15))
	}
	fmt.Fprintf(b, "\nWhat one needs, with examples: pourwell %s CALCULATION --help\n", name)
}

// names lists the calculations of a package.
func names(pkg string) []string {
	var all []string
	for _, c := range catalog.In(pkg) {
		all = append(all, c.Name)
	}
	return all
}

// helpCalculation writes examples first, then what it does, inputs with their
// ranges, and results.
func helpCalculation(b *strings.Builder, c *calc.Calculation) {
	for _, e := range c.Examples {
		fmt.Fprintf(b, "  %s\n", example(e))
	}
	fmt.Fprintf(b, "\n%s\n", report.Wrap(report.Capital(c.Summary)+".", 0, 0))
	if c.Detail != "" {
		fmt.Fprintf(b, "%s\n", report.Wrap(c.Detail, 0, 0))
	}
	b.WriteString("\nInputs\n")
	for _, in := range c.AllInputs() {
		fmt.Fprintf(b, "  --%-20s %s\n", in.Name, report.Wrap(inputHelp(in), 25, 25))
	}
	b.WriteString("\nResults\n")
	for _, k := range c.Results {
		label := k.Label
		if label == "" {
			label = report.Words(k.Key)
		}
		fmt.Fprintf(b, "  %-26s %s\n", k.Key, report.Wrap(strings.TrimSpace(label), 29, 29))
	}
	b.WriteString("\n")
	helpGlobals(b)
}

// example returns a command line as it is typed, folded where it is long.
func example(line string) string {
	const fold = " \\\n     "
	var b strings.Builder
	b.WriteString("pourwell")
	at := len("  pourwell")
	for _, word := range strings.Split(line, " --") {
		if b.Len() > len("pourwell") {
			word = "--" + word
		}
		if at+1+len(word) > 78 {
			b.WriteString(fold)
			at = 5
		}
		b.WriteString(" " + word)
		at += 1 + len(word)
	}
	return b.String()
}

// rangeText writes a range in both systems of units.
func rangeText(r volume.Range) string {
	return quantity.Say(fmt.Sprintf("{%v..%v %s}", r.Min, r.Max, r.Suffix), quantity.Both)
}

// inputHelp says what an input is, its choices, its range and its default.
func inputHelp(in calc.Input) string {
	s := in.Help
	switch {
	case len(in.Choices) > 0:
		s += ": " + strings.Join(in.Choices, ", ")
	case in.Named != "":
		s += fmt.Sprintf(" (a %s by name or %s)", in.Named, quantity.Volume.Example())
	case in.Kind.Example() != "" && in.Default == "" && !strings.Contains(in.Help, "if not given") && !strings.Contains(in.Help, "such as"):
		s += " (" + in.Kind.Example() + ")"
	}
	if r, ok := in.Range(); ok {
		s += "; " + rangeText(r)
	}
	if in.Repeat {
		s += "; may be repeated"
	}
	if in.Default != "" {
		s += "; " + in.Default + " if not given"
	}
	return s
}

const helpEvent = `  pourwell event --sample > my-day.toml
  pourwell event my-day.toml

The whole day from one file: servings and kegs, gas and pressure, when to bed
the kegs in ice and how much, lines, a timeline, a shopping list. The verdict
comes first. --sample prints a file to start from; --format text, markdown,
json or csv.
`

func unknownTopic(word string, known []string) error {
	return &calc.UsageError{What: fmt.Sprintf("no help on %q", word), Hint: nearest(word, known)}
}

// utf8Locale reports whether the terminal's locale shows letters beyond ASCII.
// A locale that says nothing is taken to.
func utf8Locale() bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := os.Getenv(name); v != "" {
			v = strings.ToLower(v)
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return true
}
