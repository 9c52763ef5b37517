package quantity

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestShow checks numbers as people read them. The pairs of units follow from
// the exact factors: 38 °F is 3.333 °C, 12 psi is 0.8274 bar, 5 US gallons are
// 18.93 L, 3 L/min are 1.691 US fluid ounces a second (GNU Units 2.22).
func TestShow(t *testing.T) {
	for _, c := range []struct {
		suffix  string
		value   float64
		sys     System
		as      string
		comment string
	}{
		{"c", 10.0 / 3, Both, "38.0 °F (3.3 °C)", ""},
		{"c", 10.0 / 3, US, "38.0 °F", ""},
		{"c", 10.0 / 3, Metric, "3.3 °C", ""},
		{"c", 0.04, Metric, "0.0 °C", "a temperature has no small digits"},
		{"k", 5.0 / 9, Both, "1.0 °F (0.56 K)", ""},
		{"kpa", 82.7371, Both, "12.0 psi (0.83 bar)", ""},
		{"l", 18.927, Both, "5.00 gal (18.9 L)", ""},
		{"l", 0.473176, Both, "16.0 fl oz (473 mL)", "a glass"},
		{"kg", 9.07185, Both, "20.0 lb (9.1 kg)", ""},
		{"kg", 0.1, Both, "3.5 oz (100 g)", ""},
		{"m", 1.524, Both, "5.0 ft (1.52 m)", ""},
		{"m", 0.005, Metric, "5.0 mm", "a wall"},
		{"l_per_min", 3, Both, "1.69 oz/s (3.00 L/min)", ""},
		{"share", 0.5, Both, "50 %", "the same everywhere"},
		{"share", 0.123, Both, "12.3 %", ""},
		{"s", 0, Both, "0 s", ""},
		{"s", 8.24, Both, "8.2 s", ""},
		{"s", 95 * 60, Both, "95 min", ""},
		{"s", 5*3600 + 20*60, Both, "5 h 20 min", ""},
		{"s", 5 * 3600, Both, "5 h", ""},
		{"s", 76 * 3600, Both, "3 d 4 h", ""},
		{"", 4, Both, "4", "a count"},
		{"", 0.65432, Both, "0.654", ""},
		{"kpa", math.NaN(), Both, "unknown", ""},
		{"s", math.Inf(1), Both, "for ever", ""},
	} {
		if got := Show(c.suffix, c.value, c.sys); got != c.as {
			t.Errorf("%v %s reads %q, want %q %s", c.value, c.suffix, got, c.as, c.comment)
		}
	}
}

// TestSplitKey checks where the unit of a key begins.
func TestSplitKey(t *testing.T) {
	for key, want := range map[string][2]string{
		"gauge_kpa": {"gauge", "kpa"}, "temperature_c": {"temperature", "c"}, "time_s": {"time", "s"},
		"co2_g_per_l": {"co2", "g_per_l"}, "ua_w_per_k": {"ua", "w_per_k"}, "sag_kpa_per_glass": {"sag", "kpa_per_glass"},
		"low_co2_volumes": {"low_co2", "volumes"}, "dew_heat_share": {"dew_heat", "share"}, "kegs": {"kegs", ""},
		"reynolds": {"reynolds", ""}, "flow_l_per_min": {"flow", "l_per_min"}, "run_out_probability": {"run_out", "probability"},
	} {
		if name, suffix := SplitKey(key); name != want[0] || suffix != want[1] {
			t.Errorf("SplitKey(%q) = %q, %q, want %q", key, name, suffix, want)
		}
	}
}

// TestShowReadsBack checks that what is shown, typed in again, is the number,
// to half a unit of the last digit shown.
func TestShowReadsBack(t *testing.T) {
	kindOf := map[string]Kind{"c": Temperature, "kpa": Gauge, "kg": Mass, "m": Length, "l_per_min": Flow, "m_per_s": Speed, "volumes": Content}
	rapid.Check(t, func(t *rapid.T) {
		suffix := rapid.SampledFrom([]string{"c", "kpa", "kg", "m", "l_per_min", "m_per_s", "volumes"}).Draw(t, "suffix")
		sys := rapid.SampledFrom([]System{US, Metric}).Draw(t, "system")
		v := rapid.Float64Range(1, 60).Draw(t, "value")
		shown := Show(suffix, v, sys)
		si, err := Parse(kindOf[suffix], shown)
		if err != nil {
			t.Fatalf("%q cannot be read back: %v", shown, err)
		}
		_, back := Suffix(kindOf[suffix], si)
		number, unit, _ := strings.Cut(shown, " ")
		_, digits, _ := strings.Cut(number, ".")
		half := 0.5 * math.Pow(10, -float64(len(digits)))
		one, _ := Parse(kindOf[suffix], "1"+unit)
		zero, _ := Parse(kindOf[suffix], "0"+unit)
		_, a := Suffix(kindOf[suffix], one)
		_, b := Suffix(kindOf[suffix], zero)
		if math.Abs(back-v) > half*math.Abs(a-b)*(1+1e-9)+1e-9 {
			t.Fatalf("%v %s reads %q, which is %v", v, suffix, shown, back)
		}
	})
}

// TestScales checks that a column keeps one unit and that its numbers and those
// shown alone agree.
func TestScales(t *testing.T) {
	us, metric := Scales("l", 0.5)
	if us.Unit != "fl oz" || metric.Unit != "mL" {
		t.Errorf("half a litre is on scales of %q and %q", us.Unit, metric.Unit)
	}
	if us, _ := Scales("l", 20); us.Unit != "gal" || us.Text(0.5) != "0.13" {
		t.Errorf("beside 20 L, half a litre is %s %s", us.Text(0.5), us.Unit)
	}
	for seconds, unit := range map[float64]string{30: "s", 3000: "min", 30000: "h", 300000: "d"} {
		if s, _ := Scales("s", seconds); s.Unit != unit {
			t.Errorf("%v s are on a scale of %q, want %q", seconds, s.Unit, unit)
		}
	}
	if s, _ := Scales("kpa", 0.02); s.Text(0.02) != "0.0029" {
		t.Errorf("0.02 kPa in psi is %q", s.Text(0.02))
	}
}

// TestScalesOf checks the decimals of pure numbers in one column.
func TestScalesOf(t *testing.T) {
	for _, c := range []struct {
		values []float64
		first  string
	}{
		{[]float64{37.5, 105, 124}, "37.5"}, {[]float64{0.036, 0.03}, "0.0360"}, {[]float64{5, 6}, "5"}, {[]float64{5916, 7000.4}, "5916"},
		{[]float64{1.5, math.NaN()}, "1.50"}, {[]float64{12.25, 3}, "12.2"}, {nil, ""},
	} {
		us, metric := ScalesOf("", c.values)
		if us != metric {
			t.Error("a pure number has two scales")
		}
		if len(c.values) > 0 && us.Text(c.values[0]) != c.first {
			t.Errorf("%v begin with %q, want %q", c.values, us.Text(c.values[0]), c.first)
		}
	}
	if us, metric := ScalesOf("kpa", []float64{50, 100}); us.Unit != "psi" || metric.Unit != "bar" {
		t.Error("a unit is lost")
	}
}

// TestScalesReadBack checks that a scale there and back changes nothing.
func TestScalesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		suffix := rapid.SampledFrom([]string{"c", "kpa", "l", "kg", "m", "s", "share", ""}).Draw(t, "suffix")
		v := rapid.Float64Range(-1000, 1000).Draw(t, "value")
		us, metric := Scales(suffix, v)
		for _, s := range []Scale{us, metric} {
			if back := s.Back(s.Value(v)); math.Abs(back-v) > 1e-9*(1+math.Abs(v)) {
				t.Fatalf("%v there and back is %v", v, back)
			}
			shown, err := strconv.ParseFloat(s.Text(v), 64)
			if err != nil || math.Abs(shown-s.Value(v)) > 0.51 {
				t.Fatalf("%v is written %q on the scale of %q", s.Value(v), s.Text(v), s.Unit)
			}
		}
	})
}

// TestNearest checks slips of the finger, and that other words stay unknown.
func TestNearest(t *testing.T) {
	for word, want := range map[string]string{
		"pis": "psi", "ba": "bar", "psii": "psi", "Psi": "psi", "zzz": "", "furlong": "",
	} {
		if got := Nearest(word, []string{"psi", "bar", "kPa"}); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", word, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-z]{3,9}`), 1, 6).Draw(t, "words")
		a, b := words[0], words[len(words)-1]
		if distance(a, b) != distance(b, a) || distance(a, a) != 0 || (distance(a, b) == 0) != (a == b) {
			t.Fatalf("distance of %q and %q", a, b)
		}
		if got := Nearest(a, words); got != a {
			t.Fatalf("the nearest to %q among %q is %q", a, words, got)
		}
	})
}
