package lines

import "testing"

// Whatever text is typed for a tube, it is read or refused, and what was read
// is written so that it reads back the same.
func FuzzTubeText(f *testing.F) {
	for _, seed := range []string{
		"3/16in:5ft", "3/16in x 5ft vinyl", "7mm:10m:coil95mm", "1/4in-od:20ft:wall0.7mm:stainless",
		"1 1/2in × 3 ft", "5mm:2m:rough1.5um", "x", ":", "-od", "in-od:wall", "coil", "5mm:coil", "µm:µm",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var tube Tube
		if err := tube.UnmarshalText([]byte(text)); err != nil {
			if err.Error() == "" || tube != (Tube{}) {
				t.Errorf("%q: error %q, tube %+v", text, err, tube)
			}
			return
		}
		out, err := tube.MarshalText()
		if err != nil {
			if tube.Bore > 0 {
				t.Errorf("%q: %v", text, err)
			}
			return
		}
		var back Tube
		if err := back.UnmarshalText(out); err != nil || back != tube {
			t.Errorf("%q wrote %q, which reads as %+v, %v; want %+v", text, out, back, err, tube)
		}
	})
}
