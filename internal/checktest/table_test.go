package checktest

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// A tape takes down what a helper says against a test.
type tape struct {
	testing.TB
	said string
}

func (*tape) Helper() {}

func (p *tape) Errorf(format string, a ...any) { p.said += fmt.Sprintf(format, a...) }

func (p *tape) Fatalf(format string, a ...any) {
	p.Errorf(format, a...)
	panic(p)
}

// says returns what f says against its test.
func says(f func(*tape)) string {
	p := &tape{}
	func() {
		defer func() {
			if r := recover(); r != nil && r != p {
				panic(r)
			}
		}()
		f(p)
	}()
	return p.said
}

func TestTablesRefused(t *testing.T) {
	for text, want := range map[string]string{
		"":                              `:1: "" does not say what kind`,
		"a\n1\n":                        `:1: "a" does not say what kind`,
		"# kind: ours\n# S\na\n1\n":     `does not say what kind`,
		"# kind: memory":                ":2: no source is cited",
		"# kind: memory\na\n1\n":        ":2: no source is cited",
		"# kind: memory\n# \na\n1\n":    ":2: no source is cited",
		"# kind: memory\n\na\n1\n":      ":2: no source is cited",
		"# kind: memory\n# S\n":         "no heading",
		"# kind: memory\n# S\na,a\n":    `column 2 of the heading, "a"`,
		"# kind: memory\n# S\na,\n":     `column 2 of the heading, ""`,
		"# kind: memory\n# S\na\n":      "no rows",
		"# kind: memory\n# S\na\n1,2\n": "line 4: wrong number of fields",
	} {
		if _, err := parse("f.csv", text); err == nil || !strings.HasPrefix(err.Error(), "f.csv") || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: error %v, want %s", text, err, want)
		}
	}
}

func TestCells(t *testing.T) {
	rows, err := parse("f.csv", "# kind: memory\n# S\nname,a,b\nfirst,1/4,\n# S too\nsecond,2.50,1e-3\n")
	if err != nil || len(rows) != 2 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	first, second := rows[0], rows[1]
	first.t, second.t = t, t
	if got := first.Text("name"); got != "first" {
		t.Errorf("name %q", got)
	}
	if got := first.Number("a"); got != 0.25 {
		t.Errorf("a quarter is %g", got)
	}
	if got := first.Optional("b"); !math.IsNaN(got) {
		t.Errorf("an empty cell is %g", got)
	}
	if got := second.Optional("b"); got != 1e-3 {
		t.Errorf("1e-3 is %g", got)
	}
	if v, half := second.Printed("a"); v != 2.5 || half != 0.005 {
		t.Errorf("2.50 is %g, give or take %g", v, half)
	}
	for want, f := range map[string]func(Row){
		`f.csv:6: no column "c"`:                           func(r Row) { r.Text("c") },
		`f.csv:6: column "name": strconv.ParseFloat: pars`: func(r Row) { r.Number("name") },
		`f.csv:6: column "b": "1e-3" is no plain decimal`:  func(r Row) { r.Printed("b") },
	} {
		if got := says(func(t *tape) { second.t = t; f(second) }); !strings.HasPrefix(got, want) {
			t.Errorf("says %q, want %s", got, want)
		}
	}
	for _, cell := range []string{"", "NaN", "inf", "1/0", "1/", "1/2/3", "0.8-1.0"} {
		if v, err := number(cell); err == nil {
			t.Errorf("%q is read as %g", cell, v)
		}
	}
}

func TestNear(t *testing.T) {
	for _, c := range []struct {
		got, want, tolerance float64
		ok                   bool
	}{{1.5, 1, 0.5, true}, {1.51, 1, 0.5, false}, {math.NaN(), 1, 9, false}, {1, math.NaN(), 9, false}, {1, 1, math.NaN(), false}} {
		if said := says(func(t *tape) { Near(t, "x", c.got, c.want, c.tolerance) }); (said == "") != c.ok {
			t.Errorf("%+v: says %q", c, said)
		}
	}
}
