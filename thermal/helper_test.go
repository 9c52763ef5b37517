package thermal

import (
	"testing"

	"example.com/pourwell/volume"
)

// vessel returns a vessel of the trade.
func vessel(t testing.TB, name string) volume.Vessel {
	t.Helper()
	v, ok := volume.VesselNamed(name)
	if !ok {
		t.Fatalf("no vessel %q", name)
	}
	return v
}
