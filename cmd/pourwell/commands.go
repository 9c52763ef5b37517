package main

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/answer"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/cmd/pourwell/internal/draw"
	"example.com/pourwell/internal/quantity"
	"github.com/alecthomas/kong"
)

// globals are the flags every command has.
type globals struct {
	Units     string `enum:"us,metric,both" default:"both"`
	Format    string `enum:"text,json,csv,markdown" default:"text"`
	Explain   bool
	Rows      string
	Plot      string `files:"svg,png"`
	Overwrite bool
	Input     string `files:"csv"`
	Literal   bool
	Show      string
	Samples   whole
	Seed      whole `default:"1"`
}

// plot returns the file of the figure.
func (g *globals) plot() draw.File { return draw.File{Name: g.Plot, Overwrite: g.Overwrite} }

// request says how an answer is asked for.
func (g *globals) request(con console, units quantity.System) *answer.Request {
	r := &answer.Request{
		Format: g.Format, Rows: g.Rows, Plot: g.plot(), Input: g.Input, Samples: int(g.Samples), Seed: uint64(g.Seed),
		In: con.in, Out: con.out, Err: con.err, Failure: func(err error) string { return failure(err, units) },
	}
	if g.Show != "" {
		r.Show = strings.Split(g.Show, ",")
	}
	return r
}

// whole is a whole number from 0 on.
type whole uint64

// UnmarshalText implements [encoding.TextUnmarshaler].
func (w *whole) UnmarshalText(text []byte) error {
	v, err := quantity.Parse(quantity.Count, string(text))
	if err != nil || v < 0 || v > 1<<53 {
		return fmt.Errorf("%q is not a whole number", text)
	}
	*w = whole(v)
	return nil
}

// globalHelp describes the global flags. The parser is told none of it: help is
// not its part, and it would take half of its time over it.
var globalHelp = map[string]string{
	"units":     "us, metric or both (default, or $POURWELL_UNITS); display only",
	"format":    "text (default), json or csv; the event also markdown",
	"explain":   "show the working with its sources",
	"rows":      "with --format csv: write this list of rows, such as tubes or course",
	"literal":   "with --format csv: put an apostrophe before text that a spreadsheet would take for a formula",
	"plot":      "draw a range or a course of time into FILE.svg or FILE.png",
	"overwrite": "replace what --plot finds, even if it is no chart of pourwell",
	"input":     "answer every row of FILE.csv, or of standard input for -",
	"show":      "only these answers of a range, a file or a plot",
	"samples":   "check a tolerance with so many random samples, 100 to 1000000",
	"seed":      "of the random samples, 1 if not given",
}

// globalNames lists the global flags in the order of the help.
var globalNames = []string{"units", "format", "explain", "plot", "overwrite", "input", "show", "rows", "literal", "samples", "seed"}

// root is what the parser fills.
type root struct {
	globals
	kong.Plugins
	Event eventFlags `cmd:""`
	Help  helpFlags  `cmd:""`
}

type eventFlags struct {
	File   string `arg:"" optional:""`
	Sample bool
}

type helpFlags struct {
	Topic []string `arg:"" optional:""`
}

// words collects what is typed for one flag of a calculation, as text; the
// calculation's description knows what it must be.
type words []string

// Decode takes the next argument. One that looks like another flag is left
// alone, so that a flag without its value cannot swallow its neighbour; a
// negative number is a value.
func (w *words) Decode(ctx *kong.DecodeContext) error {
	t := ctx.Scan.Peek()
	s, _ := t.Value.(string)
	if t.IsEOL() || t.Type != kong.FlagValueToken && looksLikeFlag(s) {
		return errors.New("needs a value")
	}
	ctx.Scan.Pop()
	*w = append(*w, s)
	return nil
}

func looksLikeFlag(s string) bool {
	return len(s) > 1 && s[0] == '-' && !strings.ContainsRune("0123456789.", rune(s[1]))
}

var (
	wordsType = reflect.TypeFor[words]()
	boolType  = reflect.TypeFor[bool]()
)

// packageCommand returns a pointer to a structure the parser understands: one
// command for the package, below it one for each calculation with its flags.
func packageCommand(pkg string, calculations []*calc.Calculation) any {
	var fields []reflect.StructField
	for _, c := range calculations {
		if c.Package == pkg {
			fields = append(fields, command(c.Name, reflect.StructOf(flagFields(c.Ready()))))
		}
	}
	return reflect.New(reflect.StructOf([]reflect.StructField{command(pkg, reflect.StructOf(fields))})).Interface()
}

func command(name string, t reflect.Type) reflect.StructField {
	tag := fmt.Sprintf(`cmd:"" name:%q`, name)
	return reflect.StructField{Name: fieldName(name), Type: t, Tag: reflect.StructTag(tag)}
}

func flagFields(c *calc.Calculation) []reflect.StructField {
	var fields []reflect.StructField
	for _, in := range c.AllInputs() {
		t := wordsType
		if in.Kind == quantity.Switch {
			t = boolType
		}
		tag := fmt.Sprintf(`name:%q`, in.Name)
		fields = append(fields, reflect.StructField{Name: fieldName(in.Name), Type: t, Tag: reflect.StructTag(tag)})
	}
	return fields
}

// fieldName turns a flag's name into a Go field name.
func fieldName(name string) string {
	return "F_" + strings.ReplaceAll(name, "-", "_")
}

// parser returns the parser for args and the structure it fills. Where args
// begin with a calculation, as they do but for global flags in front, the
// parser knows it alone: the others would take most of the start.
func parser(args []string) (*kong.Kong, *root, error) {
	if len(args) > 1 {
		if c := catalog.Find(args[0], args[1]); c != nil {
			return parserOf([]*calc.Calculation{c})
		}
		if args[0] == "event" || args[0] == "help" {
			return parserOf(nil)
		}
	}
	return parserOf(catalog.All())
}

// parserOf returns a parser that knows the calculations given.
func parserOf(calculations []*calc.Calculation) (*kong.Kong, *root, error) {
	r := &root{}
	for _, p := range catalog.Packages {
		if slices.ContainsFunc(calculations, func(c *calc.Calculation) bool { return c.Package == p.Name }) {
			r.Plugins = append(r.Plugins, packageCommand(p.Name, calculations))
		}
	}
	k, err := kong.New(r, kong.Name("pourwell"), kong.NoDefaultHelp(),
		kong.WithHyphenPrefixedParameters(true), kong.Exit(func(int) {}))
	return k, r, err
}

// typed returns what was typed for the inputs of the selected calculation, in
// the order of the command line.
func typed(ctx *kong.Context) []calc.Typed {
	var all []calc.Typed
	for _, p := range ctx.Path {
		if p.Flag == nil || slices.ContainsFunc(all, func(t calc.Typed) bool { return t.Name == p.Flag.Name }) {
			continue
		}
		v := p.Flag.Target
		switch {
		case v.Type() == wordsType:
			all = append(all, calc.Typed{Name: p.Flag.Name, Texts: v.Interface().(words)})
		case v.Type() == boolType && v.Bool() && !slices.Contains(globalNames, p.Flag.Name):
			all = append(all, calc.Typed{Name: p.Flag.Name, Texts: []string{"true"}})
		}
	}
	return all
}
