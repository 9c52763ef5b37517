package lines

import (
	"testing"

	"example.com/pourwell/internal/checktest"
	"example.com/pourwell/volume"
)

func TestInKeg(t *testing.T) {
	keg, ok := volume.VesselNamed("us-half")
	if !ok {
		t.Fatal("no half barrel")
	}
	// A half barrel's 58.67 L in a cylinder of its outside diameter, 16 1/8 in,
	// stand 0.445 m deep; inside its wall and bulge it is a little more.
	r := DefaultRun().InKeg(keg)
	checktest.Near(t, "depth of a half barrel, m", float64(r.KegHeight), 0.475, 0.035)
	checktest.Near(t, "dip tube, m", float64(r.DipTube.Length), float64(r.KegHeight), 1e-12)
	if _, err := r.Flow(psi(12)); err != nil {
		t.Error(err)
	}
}

func TestOpen(t *testing.T) {
	open, cut := Tube{Bore: 5e-3}, Tube{Bore: 5e-3, Length: 1}
	for _, c := range []struct {
		tubes []Tube
		want  int
	}{{nil, -1}, {[]Tube{cut}, -1}, {[]Tube{cut, open}, 1}, {[]Tube{open, cut, open}, -2}} {
		if got := DefaultRun(c.tubes...).Open(); got != c.want {
			t.Errorf("%v: open tube %d, want %d", c.tubes, got, c.want)
		}
	}
}
