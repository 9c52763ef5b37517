package main

import (
	"cmp"
	"fmt"
	"os"
	"reflect"
	"runtime/debug"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
	"github.com/alecthomas/kong"
)

// checkCommand returns a usage error if args do not begin with a command, with
// the nearest one that there is.
func checkCommand(args []string) error {
	if strings.HasPrefix(args[0], "-") {
		return nil // the parser finds the command behind the flags
	}
	here := names(args[0])
	var elsewhere []string
	for _, c := range catalog.All() {
		if c.Name == args[0] && here == nil {
			elsewhere = append(elsewhere, "pourwell "+c.Title())
		}
	}
	switch {
	case elsewhere != nil:
		return &calc.UsageError{What: fmt.Sprintf("%q stands behind its package", args[0]), Hint: strings.Join(elsewhere, " or ")}
	case !slices.Contains(commands(), args[0]):
		return &calc.UsageError{What: fmt.Sprintf("there is no command %q", args[0]), Hint: nearest(args[0], commands())}
	case here == nil:
		return nil
	case len(args) == 1 || strings.HasPrefix(args[1], "-"):
		return &calc.UsageError{What: args[0] + " needs a calculation", Hint: "there are " + strings.Join(here, ", ")}
	case !slices.Contains(here, args[1]):
		return &calc.UsageError{What: fmt.Sprintf("%s has no calculation %q", args[0], args[1]), Hint: nearest(args[1], here)}
	}
	return nil
}

// commands lists the first words of a command line.
func commands() []string {
	all := []string{"event", "help"}
	for _, p := range catalog.Packages {
		all = append(all, p.Name)
	}
	return all
}

// nearest asks for the word that was probably meant, or lists them all.
func nearest(word string, known []string) string {
	return cmp.Or(calc.Suggest(word, known), "there are "+strings.Join(known, ", "))
}

// checkGlobals returns a usage error for a flag that is typed twice or empty. A
// calculation checks its own.
func checkGlobals(ctx *kong.Context) error {
	times := map[string]int{}
	for _, p := range ctx.Path {
		if p.Flag == nil || p.Flag.Target.Type() == wordsType {
			continue
		}
		name := p.Flag.Name
		times[name]++
		switch {
		case times[name] > 1:
			return &calc.UsageError{What: fmt.Sprintf("--%s is given %d times", name, times[name]), Hint: "give it once"}
		case p.Flag.Target.Kind() == reflect.String && p.Flag.Target.Len() == 0:
			return &calc.UsageError{What: "--" + name + " is empty", Hint: globalHelp[name]}
		}
	}
	return nil
}

// unitsOf returns the units of display: as typed, else as the environment
// says, else both.
func unitsOf(ctx *kong.Context, typed string) (quantity.System, error) {
	given := slices.ContainsFunc(ctx.Path, func(p *kong.Path) bool { return p.Flag != nil && p.Flag.Name == "units" })
	if v := os.Getenv("POURWELL_UNITS"); v != "" && !given {
		if _, ok := systems[v]; !ok {
			return 0, &calc.UsageError{What: fmt.Sprintf("POURWELL_UNITS: %q is not one of us, metric, both", v), Hint: "set it to one of them, or unset it"}
		}
		typed = v
	}
	return systems[typed], nil
}

// version returns the name of the program and the version it was built as.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return "pourwell " + info.Main.Version
	}
	return "pourwell (devel)"
}

// helpAsked reports whether args ask for help, and on what.
func helpAsked(args []string) (topics []string, asked bool) {
	for _, a := range args {
		switch {
		case a == "--help", a == "-h":
			asked = true
		case !strings.HasPrefix(a, "-") && len(topics) < 2:
			topics = append(topics, a)
		}
	}
	if len(topics) > 0 && !catalog.IsPackage(topics[0]) {
		topics = topics[:1]
	}
	return topics, asked || len(args) == 0
}
