package thermal

import (
	"encoding/json"
	"testing"

	"pgregory.net/rapid"
)

// A beer comes back from its text, to the last digit; so do water and ordinary
// beer, in JSON too.
func TestBeerText(t *testing.T) {
	for text, b := range map[string]Beer{"5%:1.010": {}, "0%:1.000": Water()} {
		if got := b.String(); got != text {
			t.Errorf("%s, want %s", got, text)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		b, err := BeerOf(rapid.Float64Range(0, 0.2).Draw(t, "abv"), rapid.Float64Range(1, 1.1).Draw(t, "fg"))
		if err != nil {
			t.Skip(err)
		}
		var back struct{ Beer Beer }
		raw, err := json.Marshal(struct{ Beer Beer }{b})
		if err != nil || json.Unmarshal(raw, &back) != nil || back.Beer != b {
			t.Fatalf("%s comes back as %v (%v)", raw, back.Beer, err)
		}
	})
	for _, text := range []string{"", "5%", "5:1.010", "5%:", "5%:1.3", "60%:1.010", "warm:1.010"} {
		b := Water()
		if err := b.UnmarshalText([]byte(text)); err == nil || b != Water() {
			t.Errorf("%q is read as %v", text, b)
		}
	}
}
