package quantity

import (
	"fmt"
	"slices"
	"strings"
)

// What a pressure counts from.
const (
	fromAir    = "gauge"
	fromVacuum = "abs"
)

// referenced parts the name of a unit of pressure from the word or letter that
// says what it counts from: "psig" and "psi gauge", "psia" and "kPa abs". from
// is "" where nothing says so.
func referenced(name string) (bare, from string) {
	for word, from := range map[string]string{" gauge": fromAir, " abs": fromVacuum, " absolute": fromVacuum} {
		if bare, ok := strings.CutSuffix(name, word); ok {
			return strings.TrimSpace(bare), from
		}
	}
	for letter, from := range map[string]string{"g": fromAir, "a": fromVacuum} {
		if bare, ok := strings.CutSuffix(name, letter); ok && slices.Contains([]string{"psi", "bar", "kPa", "mbar", "hPa"}, bare) {
			return bare, from
		}
	}
	return name, ""
}

// checkReference returns what is wrong with a pressure that counts from
// elsewhere than kind k, and a hint; nothing where it does not. An absolute
// pressure may stand without a word in the units of a barometer alone.
func checkReference(k Kind, number, bare, from string) (what, hint string) {
	switch {
	case k == Gauge && from == fromVacuum:
		return "is an absolute pressure, not a gauge reading", "give what the gauge reads, the pressure less that of the air, for example 12psig"
	case k == Pressure && from == fromAir:
		return "is a gauge reading, not an absolute pressure", "add the pressure of the air around, for example 26.7psia"
	case k == Pressure && from == "" && slices.Contains([]string{"psi", "bar"}, strings.ToLower(bare)):
		return "does not say what it counts from", fmt.Sprintf("above vacuum write %s%sa", number, bare)
	}
	return "", ""
}
