package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// An Error reports text that is no quantity of the kind asked for.
type Error struct {
	Text string // as typed
	Kind Kind
	What string // what is wrong
	Hint string // what to type instead
}

// Error returns what is wrong and what to type instead on one line.
func (e *Error) Error() string {
	if e.Hint == "" {
		return fmt.Sprintf("%q %s", e.Text, e.What)
	}
	return fmt.Sprintf("%q %s, %s", e.Text, e.What, e.Hint)
}

// largest is the size of number, in SI, that every unit can show.
const largest = 1e300

// Parse reads text as a quantity of kind k and returns it in the SI unit of
// the kind. Text is a number, which may be a fraction ("3/16in") or mixed ("1
// 1/2in"), followed by one of the kind's units. NaN, infinities and numbers
// with a unit of another kind are refused with an [*Error].
func Parse(k Kind, text string) (float64, error) {
	s := strings.TrimSpace(text)
	fail := func(what, hint string) (float64, error) {
		return math.NaN(), &Error{text, k, what, hint}
	}
	forExample := "for example " + k.Example()
	if s == "" {
		return fail("is empty", forExample)
	}
	end := numberEnd(s)
	v, ok := number(strings.TrimSpace(s[:end]))
	if !ok {
		return fail("is not "+k.String(), forExample)
	}
	name := strings.TrimSpace(s[end:])
	if name == "" {
		switch {
		case k == Count && v != math.Trunc(v):
			return fail("is not a whole number", forExample)
		case k == Share && v > 1:
			return fail("is ambiguous", fmt.Sprintf("write %s%% or a share from 0 to 1", s))
		case !k.Bare():
			return fail("needs a unit", forExample)
		}
		return v, nil
	}
	if hint, bad := ambiguous[strings.ToLower(name)]; bad && !k.Bare() {
		return fail(fmt.Sprintf("has the ambiguous unit %q", name), hint)
	}
	if len(name) > 1 && name[0] == ',' && name[1] >= '0' && name[1] <= '9' {
		return fail("has a comma", "a decimal is written with a point, "+forExample)
	}
	of := k
	if k == Gauge || k == Pressure {
		bare, from := referenced(name)
		if what, hint := checkReference(k, strings.TrimSpace(s[:end]), bare, from); what != "" {
			return fail(what, hint)
		}
		if from != "" {
			name, of = bare, Gauge // whose units have no word
		}
	}
	u, ok := find(of, name)
	if !ok {
		return fail(unknownUnit(k, name), forExample)
	}
	si := u.si(v)
	if math.Abs(si) > largest {
		return fail("is too large", forExample)
	}
	return si, nil
}

// si converts v. A thousandth is taken by dividing, so that 70 % is 0.7 to the
// last bit.
func (u spelling) si(v float64) float64 {
	if whole := math.Round(1 / u.factor); u.factor < 1 && 1/whole == u.factor {
		return (v + u.shift) / whole
	}
	if u.shift == absoluteFahrenheit {
		return (v-32)*5/9 + 273.15 // so that 113F is 45C to the last digit
	}
	return (v + u.shift) * u.factor
}

// numberEnd returns where the leading number of s ends: digits, signs, point,
// slash, an exponent, and blanks between two digits ("1 1/2").
func numberEnd(s string) int {
	i := 0
	for i < len(s) {
		c := s[i]
		switch {
		case c >= '0' && c <= '9', c == '.', c == '/', c == '+', c == '-':
			if c == '/' && (i+1 == len(s) || s[i+1] < '0' || s[i+1] > '9') {
				return i
			}
		case (c == 'e' || c == 'E') && exponentAt(s, i):
		case c == ' ' && i+1 < len(s) && s[i+1] >= '0' && s[i+1] <= '9':
		default:
			return i
		}
		i++
	}
	return i
}

// exponentAt reports whether s[i], an e, starts a decimal exponent.
func exponentAt(s string, i int) bool {
	if i == 0 || i+1 == len(s) {
		return false
	}
	j := i + 1
	if s[j] == '+' || s[j] == '-' {
		j++
	}
	return j < len(s) && s[j] >= '0' && s[j] <= '9'
}

// number reads a finite decimal number, a fraction, or a whole number and a
// fraction.
func number(s string) (float64, bool) {
	if whole, frac, ok := strings.Cut(s, " "); ok {
		w, err := strconv.ParseUint(whole, 10, 32)
		f, good := number(strings.TrimSpace(frac))
		return float64(w) + f, err == nil && good && f < 1 && strings.Contains(frac, "/")
	}
	if top, bottom, ok := strings.Cut(s, "/"); ok {
		t, okT := decimal(top)
		b, okB := decimal(bottom)
		return t / b, okT && okB && b > 0 && !math.IsInf(t/b, 0)
	}
	return decimal(s)
}

// decimal reads a finite decimal number.
func decimal(s string) (float64, bool) {
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && !math.IsInf(v, 0) && !math.IsNaN(v) && !strings.ContainsAny(s, "xXpP_")
}

// find looks a unit up by its name: as written, then without regard to case
// where that is unambiguous; no milli turns into a mega.
func find(k Kind, name string) (spelling, bool) {
	for _, u := range kinds[k].units {
		if u.name == name {
			return u, true
		}
	}
	var found spelling
	n := 0
	for _, u := range kinds[k].units {
		if strings.EqualFold(u.name, name) && (u.name != "MPa" || name[0] == 'M') { // mPa is not MPa
			found = u
			n++
		}
	}
	return found, n == 1
}

// unknownUnit says what is wrong with a unit that the kind does not have:
// what it measures instead, or which unit was probably meant.
func unknownUnit(k Kind, name string) string {
	for other := range kinds {
		if _, ok := find(Kind(other), name); ok {
			return fmt.Sprintf("is %s, not %s", kinds[other].noun, k)
		}
	}
	what := fmt.Sprintf("has the unknown unit %q", name)
	if near := Nearest(name, k.Units()); near != "" {
		what += fmt.Sprintf(" (did you mean %s?)", near)
	}
	return what
}
