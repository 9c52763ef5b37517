package volume

import "testing"

// TestWordsOfTheTrade checks that a name may end in what the thing is, and that
// a word with two meanings is not guessed at.
func TestWordsOfTheTrade(t *testing.T) {
	for said, want := range map[string]string{
		"sixth keg": "us-sixth", "Soda-Keg": "soda-5gal", "pony keg": "us-quarter-short", "mini keg": "mini-5l",
		"full size keg": "us-half", "din 30 keg": "din-30", "32oz growler": "half-growler",
	} {
		if v, ok := VesselNamed(said); !ok || v.Name != want {
			t.Errorf("the vessel %q is %q, want %q", said, v.Name, want)
		}
	}
	for said, want := range map[string]string{
		"shaker pint": "us-pint", "US pint glass": "us-pint", "plastic cup": "us-cup-16oz", "british pint": "uk-pint", "half-liter": "metric-0.5l",
	} {
		if g, ok := GlassNamed(said); !ok || g.Name != want {
			t.Errorf("the glass %q is %q, want %q", said, g.Name, want)
		}
	}
	for _, said := range []string{"pint", "pint glass", "glass", "-glass", "half"} {
		if g, ok := GlassNamed(said); ok {
			t.Errorf("the glass %q is taken for %s", said, g.Name)
		}
	}
	for _, said := range []string{"keg", "-keg", "barrel", "barrel keg"} {
		if v, ok := VesselNamed(said); ok {
			t.Errorf("the vessel %q is taken for %s", said, v.Name)
		}
	}
}
