package main

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// TestEveryNumberIsBounded checks that every number that can be typed has a row
// in a package's table, and that it measures what is typed.
func TestEveryNumberIsBounded(t *testing.T) {
	for _, c := range catalog.All() {
		for _, in := range c.Ready().AllInputs() {
			if !in.Kind.Sizeable() || in.Repeat {
				continue
			}
			r, ok := in.Range()
			if !ok {
				t.Errorf("%s --%s has no range", c.Title(), in.Name)
				continue
			}
			if kind, _ := quantity.Suffix(in.Kind, 0); kind != "" && !quantity.Alike(kind, r.Suffix) {
				t.Errorf("%s --%s is %s, and its row %q is in %q", c.Title(), in.Name, in.Kind, r.Name, r.Suffix)
			}
		}
	}
}

// TestEndsHold types both ends of every range as the help prints them, in both
// systems of units, and one step of the last digit beyond each: the ends are no
// reason to refuse, beyond them is, whether the calculation comes to use the
// input or not.
func TestEndsHold(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of calculations")
	}
	t.Setenv("LC_ALL", "C.UTF-8")
	typed := 0
	for _, c := range catalog.All() {
		args := split(c.Ready().Examples[0])
		for _, in := range c.AllInputs() {
			r, ok := in.Range()
			if !ok || in.Repeat {
				continue
			}
			for _, end := range endsOf(&in, r) {
				flag := "--" + in.Name + "=" + end.text
				out, errs, code := commandCode(append(without(args, in.Name), flag)...)
				refused := code == exitNoAnswer && strings.HasPrefix(errs, "pourwell: "+r.Name+" ") && strings.Contains(errs, " is outside ")
				if refused != end.beyond || code == exitUnexpected || end.beyond && out != "" {
					t.Errorf("%s %s, beyond the end %t: exit code %d: %.200s", c.Title(), flag, end.beyond, code, errs)
				}
				typed++
			}
		}
	}
	if typed < 2000 {
		t.Errorf("%d ends typed", typed)
	}
}

// without returns args without an input and its value.
func without(args []string, name string) []string {
	var kept []string
	for i := 0; i < len(args); i++ {
		if args[i] == "--"+name {
			if i+1 < len(args) && !strings.HasPrefix(args[i+1], "--") {
				i++
			}
			continue
		}
		kept = append(kept, args[i])
	}
	return kept
}

// An end is text for an input at the end of its range, or just beyond.
type end struct {
	text   string
	beyond bool
}

var printedEnd = regexp.MustCompile(`^(\S+?)( [^ ].*)?$`)

// typedUnit is how units are typed that are shown otherwise.
var typedUnit = map[string]string{"fl oz": "oz", "ft³": "ft3"}

// endsOf returns both ends of r as the help prints them, and a step beyond.
func endsOf(in *calc.Input, r volume.Range) []end {
	us, metric := quantity.Ends(r.Suffix, r.Min, r.Max)
	kind, _ := quantity.Suffix(in.Kind, 0)
	var all []end
	switch {
	case kind == "s": // 3 d 4 h cannot be typed
		for _, v := range []float64{quantity.SI(r.Suffix, r.Min), quantity.SI(r.Suffix, r.Max)} {
			all = append(all, end{strconv.FormatFloat(v, 'f', -1, 64) + "s", false})
		}
		step := math.Max(1e-3, 1e-6*quantity.SI(r.Suffix, r.Max))
		return append(all, end{fmt.Sprintf("%.4fs", quantity.SI(r.Suffix, r.Min)-step), true}, end{fmt.Sprintf("%.4fs", quantity.SI(r.Suffix, r.Max)+step), true})
	case kind == "" && in.Kind != quantity.Share: // a bare number, in the unit of the row
		us = metric
	}
	for _, text := range []string{us, metric} {
		low, high, _ := strings.Cut(text, " to ")
		l, h := printedEnd.FindStringSubmatch(low), printedEnd.FindStringSubmatch(high)
		if l[2] == "" {
			l[2] = h[2]
		}
		for i, m := range [][]string{l, h} {
			unit := strings.TrimSpace(m[2])
			if other, ok := typedUnit[unit]; ok {
				unit = other
			}
			if kind == "" && in.Kind != quantity.Share {
				unit = ""
			}
			all = append(all, end{m[1] + unit, false}, end{beyond(m[1], float64(2*i-1)) + unit, true})
		}
		if us == metric {
			break
		}
	}
	return all
}

// beyond returns the number one step of its last digit further.
func beyond(number string, direction float64) string {
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		panic(err)
	}
	_, digits, _ := strings.Cut(number, ".")
	return strconv.FormatFloat(v+direction*math.Pow(10, -float64(len(digits))), 'f', len(digits), 64)
}

// TestEveryInputIsRead runs every example of a calculation and asks which inputs
// it read: one that none reads would be accepted and change nothing.
func TestEveryInputIsRead(t *testing.T) {
	for _, c := range catalog.All() {
		read := map[string]bool{}
		for _, example := range c.Ready().Examples {
			in, err := calc.NewValues(c)
			if err != nil {
				t.Fatal(err)
			}
			typed, args := map[string][]string{}, split(example)
			for i := 2; i < len(args); i++ {
				name := strings.TrimPrefix(args[i], "--")
				if i+1 < len(args) && !strings.HasPrefix(args[i+1], "--") {
					i++
					typed[name] = append(typed[name], args[i])
				} else {
					typed[name] = nil
				}
			}
			for name, texts := range typed {
				if c.Input(name) == nil { // of all calculations, such as --units
					continue
				}
				if err := in.SetText(name, texts...); err != nil {
					t.Fatalf("%s: %v", example, err)
				}
			}
			if err := c.Answer(in, &calc.Result{}); err != nil {
				t.Errorf("%s: %v", example, err)
			}
			for _, name := range c.InputNames() {
				read[name] = read[name] || in.Read(name)
			}
		}
		for _, name := range c.InputNames() {
			if !read[name] {
				t.Errorf("%s reads no --%s in any of its examples", c.Title(), name)
			}
		}
	}
}

// TestSourcesQuote checks that the reason of a range quotes its numbers, so
// that they follow the reader's units.
func TestSourcesQuote(t *testing.T) {
	quoted, bare := regexp.MustCompile(`\{[^}]*\}`), regexp.MustCompile(`[0-9] (°[CF]|psi|bar|[kM]?Pa|mm|in|cm|m|ft|L|gal|oz|kg|lb|W/m²|volumes)\b`)
	for _, rows := range [][]volume.Range{volume.Limits(), thermal.Limits(), carbonation.Limits(), lines.Limits()} {
		for _, r := range rows {
			if bare.MatchString(quoted.ReplaceAllString(r.Source, "")) {
				t.Errorf("%s: %q", r.Name, r.Source)
			}
		}
	}
}

// TestAnswersLieInTheirBands holds the answer of every example against its own
// band, and answers whose band once paid no heed to what was typed.
func TestAnswersLieInTheirBands(t *testing.T) {
	lines := []string{
		"volume fit --tub 80L --packing 85%", "volume fit --tub 80L --packing 35%",
		"lines profile --tube 3/16in:5ft:vinyl --gauge 12psi --co2 2.57vol --air 86F --crevice 1um",
		"lines profile --tube 3/16in:5ft:vinyl --gauge 12psi --co2 2.57vol --air 86F --crevice 20um",
		"volume guests --guests 300 --for 4h --confidence 51%", "volume guests --guests 1 --for 1h --confidence 50%",
	}
	for _, c := range catalog.All() {
		lines = append(lines, c.Examples...)
	}
	for _, line := range lines {
		var answer struct {
			Results map[string]any                          `json:"results"`
			Bands   map[string]struct{ Low, High *float64 } `json:"bands"`
		}
		decode(t, &answer, with(split(line), "--format", "json")...)
		for key, band := range answer.Bands {
			v, ok := answer.Results[key].(float64)
			slack := 1e-9 * math.Abs(v)
			if !ok || band.Low != nil && *band.Low > v+slack || band.High != nil && *band.High < v-slack {
				t.Errorf("%s: %s is %v, likely within %v to %v", line, key, answer.Results[key], deref(band.Low), deref(band.High))
			}
		}
	}
}

// deref returns what p points to, an infinity for nil.
func deref(p *float64) float64 {
	if p == nil {
		return math.Inf(1)
	}
	return *p
}
