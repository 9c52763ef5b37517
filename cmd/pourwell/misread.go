package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
)

// misread says more of what the parser could not read: a flag with one dash or
// by another name, a value without its flag, a unit apart from its number.
func misread(args []string, err error) error {
	for _, a := range args {
		if len(a) > 2 && a[0] == '-' && a[1] >= 'a' && a[1] <= 'z' {
			return &calc.UsageError{What: a + " has one dash", Hint: "a flag has two: -" + a}
		}
	}
	var c *calc.Calculation
	if len(args) > 1 {
		c = catalog.Find(args[0], args[1])
	}
	if c == nil {
		return err
	}
	if word, ok := strings.CutPrefix(err.Error(), "unknown flag --"); ok {
		word, _, _ = strings.Cut(word, ", did you mean ") // by letters alone
		return &calc.UsageError{What: "unknown flag --" + word, Hint: flagFor(c, word)}
	}
	if word, ok := strings.CutPrefix(err.Error(), "unexpected argument "); ok {
		word, _, _ = strings.Cut(word, ",")
		return &calc.UsageError{What: "unexpected argument " + word, Hint: placeFor(c, args, word)}
	}
	return err
}

// flagFor returns a hint at the flag that word may be meant for.
func flagFor(c *calc.Calculation, word string) string {
	names := slices.Concat(c.InputNames(), globalNames)
	if meant := calc.Meant(word, names); meant != "" {
		return "did you mean --" + meant + "?"
	}
	var own []string
	for _, in := range c.Inputs {
		own = append(own, "--"+in.Name)
	}
	return "there are " + strings.Join(own, ", ")
}

// placeFor returns a hint at where an argument that stands alone belongs.
func placeFor(c *calc.Calculation, args []string, word string) string {
	at := slices.Index(args, word)
	if at > 0 {
		if _, err := strconv.ParseFloat(args[at-1], 64); err == nil {
			return fmt.Sprintf("write number and unit in one: %s%s", args[at-1], word)
		}
	}
	for _, in := range c.Inputs {
		if in.Kind.Bare() || in.Named != "" {
			continue
		}
		if _, err := quantity.Parse(in.Kind, word); err == nil && !slices.Contains(args, "--"+in.Name) {
			return fmt.Sprintf("a value follows its flag, perhaps --%s %s", in.Name, word)
		}
	}
	return "a value follows its flag; see pourwell " + c.Title() + " --help"
}
