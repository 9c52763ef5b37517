package main

import (
	"fmt"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/licences"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/volume"
)

// A topic is a page of help that belongs to no command.
type topic struct {
	name string
	text func() string
}

// topics lists them in the order of the help.
func topics() []topic {
	fixed := func(s string) func() string { return func() string { return s } }
	return []topic{
		{"units", helpUnits},
		{"names", helpNames},
		{"ranges", fixed(helpRanges)},
		{"output", keysAndUnits},
		{"environment", fixed(helpEnvironment)},
		{"exit", fixed(helpExit)},
		{"completion", fixed(helpCompletion)},
		{"man", man},
		{"licences", licences.Page},
	}
}

func topicNames() []string {
	var names []string
	for _, t := range topics() {
		names = append(names, t.name)
	}
	return names
}

func helpUnits() string {
	var b strings.Builder
	b.WriteString("A number carries its unit: 38F, 12psi, 3/16in. Case matters only where it must.\n\n")
	for _, k := range []quantity.Kind{
		quantity.Temperature, quantity.Gauge, quantity.Content, quantity.Length, quantity.Volume, quantity.Mass,
		quantity.Flow, quantity.Time, quantity.Speed, quantity.Irradiance, quantity.Conductance, quantity.Share,
	} {
		_, name, _ := strings.Cut(k.String(), " ")
		fmt.Fprintf(&b, "  %-16s %s\n", name, report.Wrap(strings.Join(k.Units(), ", "), 19, 19))
	}
	b.WriteString(`
gal, pt and oz are US; impgal, imppt and impoz are imperial. In a volume oz is
the fluid ounce, in a mass the avoirdupois ounce. A pressure on a gauge counts
from the air around it. One volume of CO2 is 1.9768 g/L.

Answers show US and metric units; --units us or metric shows one of them.
`)
	return b.String()
}

// helpNames lists the kegs and glasses that are known by name.
func helpNames() string {
	var b strings.Builder
	list := func(name string, size float64) {
		us, metric := quantity.Columns("l", size)
		fmt.Fprintf(&b, "  %-20s %12s  %8s\n", name, us, metric)
	}
	b.WriteString("Kegs and growlers, for --keg\n\n")
	for _, v := range volume.Vessels() {
		list(v.Name, float64(v.Capacity/volume.Litre))
	}
	b.WriteString("\nGlasses and growlers to the brim, for --glass\n\n")
	for _, g := range volume.Glasses() {
		list(g.Name, float64(g.Volume/volume.Litre))
	}
	b.WriteString("\nOther words of the trade are known too: half barrel, sixtel, ball lock, pitcher.\nPint and barrel alone are not: US and UK ones differ. Any size does: --keg 19L.\n")
	return b.String()
}

const helpRanges = `A range in any quantity makes a table, two make a grid:

  pourwell carbonation equilibrium --temp 32F..60F:2F --gauge 12psi
  pourwell carbonation equilibrium --temp 32F..60F:4F --gauge 8psi..16psi:2psi

  A..B:STEP   from A to B; a step of a temperature is a difference
  A,B,C       these values; names and words too: --keg 5gal,30L,50L
  within a tube: --tube 3/16in:3ft..10ft:1ft

The first range typed goes down the page, the second across. --plot FILE.svg or
FILE.png draws it: the first along the axis, a curve for each of the second. A
file that is no chart of pourwell is replaced with --overwrite only.
--show KEY,KEY picks answers by their keys. A row without an answer says why,
and the exit code is 3 at the end.

A tolerance says how far an input may be off:

  pourwell carbonation equilibrium --temp 38F+-1F --gauge 12psi+-5%

  +- or ±     the interval that holds 95 of 100 values
  %           relative; on a percentage it counts points: 5%+-0.5%

The answer then shows the spread by the model, by the tolerances and by both,
and which input causes most of it. --samples 10000 --seed 1 checks the spread
with random samples.

A file answers many rows:

  pourwell carbonation equilibrium --input kegs.csv --format csv

Its header names the inputs as the flags do. Units stand in the cells, or in the
header, as in "temp (F)". Columns called name, note or id are copied. An empty
cell leaves the input to the flag or its default.
`

// keysAndUnits is the help on output, with the suffixes that keys end in.
func keysAndUnits() string {
	var b strings.Builder
	for i, s := range quantity.KeySuffixes() {
		if i > 0 && i%2 == 0 {
			b.WriteString("\n")
		}
		symbol := s.Symbol
		if symbol == "" {
			symbol = "0 to 1"
		}
		fmt.Fprintf(&b, "  %-34s", fmt.Sprintf("_%-14s %s", s.Suffix, symbol))
	}
	var lines []string
	for line := range strings.Lines(b.String()) {
		lines = append(lines, strings.TrimRight(line, " \n"))
	}
	return fmt.Sprintf(helpOutput, strings.Join(lines, "\n"))
}

const helpOutput = `Text is for people and may change. JSON and CSV are for programs: keys are
added, none is renamed. --units changes their sentences, never a number.

  pourwell carbonation equilibrium --temp 38F --gauge 12psi --format json
  pourwell carbonation equilibrium --temp 32F..60F:2F --gauge 12psi --format csv

  {"schema":1,"calculation","inputs":{},"answer","results":{},
   "steps":[{"name","symbol","value","unit","source"}],
   "bands":{KEY:{"low","high","source"}},"tolerances":{},
   "assumptions":[],"notes":[],"cautions":[]}

A range or a file has "rows":[{}] and "failed" for answer, results, steps and
bands; a row that failed has null, in CSV nothing, and says why under "error".
testdata/result.schema.json in the source is the JSON schema.

A key ends in its unit; one without is a count, a pure number or a word:

%s

A list of rows, such as tubes or a course, is an array in JSON; --rows KEY
writes it as CSV. A cell of CSV that begins with = + - or @, such as a name that
someone else wrote, is a formula to a spreadsheet: --literal puts an
apostrophe before those that are text.
`

const helpEnvironment = `  POURWELL_UNITS       us, metric or both: as --units
  POURWELL_ELEVATION   height above sea level, for example 600m: as --elevation,
                       where no air pressure is typed
  LC_ALL, LC_CTYPE,    a locale that names no UTF-8 gets plain ASCII
  LANG
`

const helpExit = `Exit codes

  0   done
  1   something unexpected, such as a full disk
  2   the command line or the file cannot be read as typed
  3   no answer: a value out of range, no solution, or a time that never comes;
      of a range or a file, at least one row has none

A plan that does not hold is an answer, with code 0: the verdict says so, in
JSON as results.verdict.holds.
`
