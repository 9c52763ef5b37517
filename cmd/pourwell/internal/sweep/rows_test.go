package sweep

import (
	"bytes"
	"fmt"
	"math"
	"runtime"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// values returns the numbers that an axis runs through.
func values(t *testing.T, kind quantity.Kind, text string) []float64 {
	t.Helper()
	a, err := readAxis(&calc.Input{Name: "x", Kind: kind}, text)
	if err != nil || a == nil {
		t.Fatalf("%q: %v, %v", text, a, err)
	}
	all := a.values
	for i := range a.Len() {
		if a.values == nil {
			all = append(all, a.at(i))
		}
	}
	return all
}

// TestRanges checks which values a range or list runs through.
func TestRanges(t *testing.T) {
	kelvin := func(fahrenheit float64) float64 { return (fahrenheit + 459.67) / 1.8 }
	for _, c := range []struct {
		kind quantity.Kind
		text string
		want []float64
	}{
		{quantity.Length, "1m..3m:1m", []float64{1, 2, 3}},
		{quantity.Length, "1m..3m:0.75m", []float64{1, 1.75, 2.5}},
		{quantity.Length, "3m..1m:1m", []float64{3, 2, 1}},
		{quantity.Length, "1..3m:1", []float64{1, 2, 3}},
		{quantity.Length, "1m..1m:1m", []float64{1}},
		{quantity.Length, "100cm..2m:50cm", []float64{1, 1.5, 2}},
		{quantity.Length, "3/16in..5/16in:1/16in", []float64{0.0047625, 0.00635, 0.0079375}},
		{quantity.Length, "1m,3m,2m", []float64{1, 3, 2}},
		{quantity.Temperature, "32F..36F:2F", []float64{kelvin(32), kelvin(34), kelvin(36)}},
		{quantity.Temperature, "-2C..2C:2C", []float64{271.15, 273.15, 275.15}},
		{quantity.Share, "10%..30%:10%", []float64{0.1, 0.2, 0.3}},
		{quantity.Share, "0.1,0.2", []float64{0.1, 0.2}},
		{quantity.Count, "20..60:20", []float64{20, 40, 60}},
		{quantity.Count, "40..100:10", []float64{40, 50, 60, 70, 80, 90, 100}},
	} {
		got := values(t, c.kind, c.text)
		if len(got) != len(c.want) {
			t.Errorf("%s is %v, want %v", c.text, got, c.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-12*math.Abs(c.want[i]) || c.kind == quantity.Count && got[i] != c.want[i] {
				t.Errorf("%s is %v, want %v", c.text, got, c.want)
			}
		}
	}
}

// TestRangesWithinTexts expands a range within the text of a tube.
func TestRangesWithinTexts(t *testing.T) {
	for text, want := range map[string][]string{
		"3/16in:3ft..5ft:1ft":         {"3/16in:3ft", "3/16in:4ft", "3/16in:5ft"},
		"3/16in:3..4ft:0.5:vinyl":     {"3/16in:3ft:vinyl", "3/16in:3.5ft:vinyl", "3/16in:4ft:vinyl"},
		"3/16in x 5ft..3ft:2ft":       {"3/16in x 5ft", "3/16in x 3ft"},
		"4mm..6mm:1mm:10m:coil95mm":   {"4mm:10m:coil95mm", "5mm:10m:coil95mm", "6mm:10m:coil95mm"},
		"1/4in..3/8in:1/8in:10ft":     {"0.25in:10ft", "0.375in:10ft"},
		"1psi..3psi:1psi at 2oz/s":    {"1psi at 2oz/s", "2psi at 2oz/s", "3psi at 2oz/s"},
		"first -1m..1m:1m and onward": {"first -1m and onward", "first 0m and onward", "first 1m and onward"},
	} {
		a, err := readInner(&calc.Input{Name: "tube", Kind: quantity.Text, Repeat: true}, []string{"7mm:1m", text})
		if err != nil || a == nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		var got []string
		for i := range a.Len() {
			set := a.within.at(i)
			if len(set) != 2 || set[0] != "7mm:1m" {
				t.Errorf("%q loses its neighbour: %v", text, set)
			}
			got = append(got, set[1])
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%q: %s", text, diff)
		}
	}
	for _, text := range []string{"3ft..5ft", "3ft..5m:1ft", "3ft..5ft:1m", "3ft..5ft:0ft", "1ft..2ft:1ft x 1ft..2ft:1ft", "3/16in:3ft...5ft:1ft", "1ft..1e9ft:1ft"} {
		if a, err := readInner(&calc.Input{Name: "tube", Kind: quantity.Text}, []string{text}); !isUsage(err) {
			t.Errorf("%q: %v, %v", text, a, err)
		}
	}
}

// TestPathsAreNoRanges leaves the names of files alone.
func TestPathsAreNoRanges(t *testing.T) {
	for _, text := range []string{"../log.csv", "a..b:c", "..", "logs/../2026.csv"} {
		if a, err := readInner(&calc.Input{Name: "log", Kind: quantity.Text}, []string{text}); a != nil || err != nil {
			t.Errorf("%q: %v, %v", text, a, err)
		}
	}
}

// TestRangesEndExactly checks that a range of any start, step and length has
// that length, and ends where it says to the last bit.
func TestRangesEndExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 1000).Draw(t, "steps")
		from := rapid.IntRange(-500, 500).Draw(t, "from")
		step := rapid.IntRange(1, 40).Draw(t, "step")
		text := fmt.Sprintf("%.1fm..%.1fm:%.1fm", float64(from)/10, float64(from+n*step)/10, float64(step)/10)
		a, err := readAxis(&calc.Input{Name: "x", Kind: quantity.Length}, text)
		if err != nil || a.Len() != n+1 {
			t.Fatalf("%s has %d values, %v, want %d", text, a.Len(), err, n+1)
		}
		if a.at(n) != float64(from+n*step)/10 || a.at(0) != float64(from)/10 {
			t.Fatalf("%s runs from %v to %v", text, a.at(0), a.at(n))
		}
	})
}

// TestRangesRefused lists ranges that cannot be meant.
func TestRangesRefused(t *testing.T) {
	for text, says := range map[string]string{
		"1m..3m":             "has no step",
		"1m..3m:0m":          "never arrives",
		"1m..3m:1e-12m":      "makes 2000000000001 rows",
		"0m..1e300m:1um":     "makes 1e+306 rows",
		"0m..1e300m:1e-300m": "never arrives",
		"1m...3m:1m":         "more points than two; write 1m..3m:1m;",
		"1m....3m:1m":        "more points than two",
		"1m.. .3m:1m":        "more points than two",
		"1m…3m:1m":           "more points than two; write 1m..3m:1m;",
		".5m..3m:1m":         "an end without a digit before its point",
		"-3m..-.5m:1m":       "an end without a digit before its point",
		"1m..3m:1psi":        "not a length",
		"1m..3F:1m":          "not a length",
		"1F..3m:1m":          "not a length",
		"1,5m":               "a decimal is written with a point",
		"1m,":                "is empty",
		"1m..x:1m":           "is not a length",
	} {
		_, err := Read(product(), typed("length", text))
		if !isUsage(err) || !strings.Contains(err.Error(), says) {
			t.Errorf("--length %s: %v, want an error with %q", text, err, says)
		}
	}
	_, err := Read(product(), []calc.Typed{{Name: "length", Texts: []string{"1m", "2m"}}})
	if !isUsage(err) {
		t.Errorf("an input given twice: %v", err)
	}
	_, err = Read(product(), typed("waste", "1,010"))
	if !isUsage(err) {
		t.Errorf("a decimal comma: %v", err)
	}
	_, err = Read(product(), typed("length", "1m", "motion", "still,caried"))
	if !isUsage(err) || !strings.Contains(err.Error(), "did you mean carried?") {
		t.Errorf("a misspelt word in a list: %v", err)
	}
}

// asLine is a row in a form that is easily compared.
func asLine(buf []byte, row *Row) []byte {
	for _, c := range row.Cells {
		if c.IsText {
			buf = fmt.Appendf(buf, "%s=%s ", c.Key, c.Text)
		} else {
			buf = fmt.Appendf(buf, "%s=%.6g ", c.Key, c.Number)
		}
	}
	if row.Err != nil {
		buf = append(buf, "failed"...)
	}
	return append(buf, '\n')
}

func stream(t *testing.T, rows *Rows) (string, Tally) {
	t.Helper()
	var b bytes.Buffer
	tally, err := rows.Stream(&b, asLine, nil)
	if err != nil {
		t.Fatal(err)
	}
	return b.String(), tally
}

func plan(t *testing.T, pairs ...string) *Plan {
	t.Helper()
	p, err := Read(product(), typed(pairs...))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestGrid checks the order of rows, the column that input and answer share,
// and that a row that fails is in its place.
func TestGrid(t *testing.T) {
	p := plan(t, "length", "60m..120m:30m", "motion", "still,carried")
	rows, err := p.Rows([]string{"area", "length_m"})
	if err != nil {
		t.Fatal(err)
	}
	got, tally := stream(t, rows)
	want := `length_m=60 motion=still area=120 
length_m=60 motion=carried area=120 
length_m=90 motion=still area=180 
length_m=90 motion=carried area=180 
length_m=120 motion=still area=NaN failed
length_m=120 motion=carried area=NaN failed
`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if tally.Rows != 6 || tally.Failed != 2 || tally.FirstRow != 5 || tally.First == nil {
		t.Errorf("tally %+v", tally)
	}
	if diff := cmp.Diff([]string{"Row 1: {60 m} is long."}, tally.Cautions()); diff != "" {
		t.Error(diff)
	}
	if rows.Lead != "area" {
		t.Errorf("the leading answer is %q", rows.Lead)
	}
}

// TestOrder checks that rows come in order, and all of them, whatever the
// number of processors.
func TestOrder(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, processors := range []int{1, 2, 7} {
		runtime.GOMAXPROCS(processors)
		rows, err := plan(t, "length", "0.001m..50m:0.001m").Rows([]string{"area"})
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		last := 0
		_, err = rows.Stream(&bytes.Buffer{}, func(buf []byte, row *Row) []byte { return buf }, func(done int) {
			if done <= last {
				t.Fatalf("progress goes from %d to %d", last, done)
			}
			last = done
		})
		if err != nil || last != 50000 {
			t.Fatalf("%d rows, %v", last, err)
		}
		all, tally, err := rows2(t).Collect(1e6, nil)
		for _, r := range all {
			n++
			if want := float64(n) / 1000; math.Abs(r.Cells[0].Number-want) > 1e-9 || math.Abs(r.Cells[1].Number-2*want) > 1e-9 {
				t.Fatalf("row %d is %v", n, r.Cells)
			}
		}
		if n != 50000 || tally.Rows != n || err != nil {
			t.Fatalf("%d rows, %+v, %v", n, tally, err)
		}
	}
}

func rows2(t *testing.T) *Rows {
	t.Helper()
	rows, err := plan(t, "length", "0.001m..50m:0.001m").Rows([]string{"area"})
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// A broken pipe ends the stream with its error.
type broken struct{ left int }

func (b *broken) Write(p []byte) (int, error) {
	if b.left -= len(p); b.left < 0 {
		return 0, fmt.Errorf("broken")
	}
	return len(p), nil
}

func TestStreamStops(t *testing.T) {
	rows := rows2(t)
	if _, err := rows.Stream(&broken{1000}, asLine, nil); err == nil || err.Error() != "broken" {
		t.Errorf("a stream into a broken pipe: %v", err)
	}
}

// TestRowsRefused checks what cannot be run at all.
func TestRowsRefused(t *testing.T) {
	if _, err := plan(t, "width", "1m..3m:1m").Rows(nil); !isUsage(err) {
		t.Errorf("a range without the input that is needed: %v", err)
	}
	if _, err := plan(t, "length", "0m..1m:1um", "width", "0m..1m:1um").Rows(nil); !isUsage(err) {
		t.Errorf("a million million rows: %v", err)
	}
	_, err := plan(t, "length", "1m..3m:1m").Rows([]string{"aera"})
	if !isUsage(err) || !strings.Contains(err.Error(), "did you mean area?") {
		t.Errorf("a misspelt answer: %v", err)
	}
}

// TestBatch reads a file: units in header and cells, empty cells, copied
// columns, a repeated column, and rows that fail.
func TestBatch(t *testing.T) {
	file := "\ufeffname,length [ft],width,tube,tube,lid\n" +
		"# a comment\n" +
		"north,10,,3/16in:5ft,7mm:1m,yes\n" +
		"\"south, east\",3m,1m,,,\n" +
		"west,abc,1m,,,\n" +
		"far,200m,,,,\n" +
		"short,1\n"
	rows, err := plan(t, "width", "4m").Batch(strings.NewReader(file), []string{"area"})
	if err != nil {
		t.Fatal(err)
	}
	got, tally := stream(t, rows)
	want := `name=north length_m=3.048 width_m=4 tube=3/16in:5ft 7mm:1m lid=1 area=12.192 
name=south, east length_m=3 width_m=1 tube= lid=NaN area=3 
name=west length_m=NaN width_m=1 tube= lid=NaN area=NaN failed
name=far length_m=200 width_m=4 tube= lid=NaN area=NaN failed
name=short length_m=NaN width_m=4 tube= lid=NaN area=NaN failed
`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if tally.Failed != 3 || tally.FirstRow != 3 || !isUsage(tally.First) {
		t.Errorf("tally %+v", tally)
	}
}

// TestBatchHeaders checks how headers are read, and refused.
func TestBatchHeaders(t *testing.T) {
	for _, header := range []string{"length m", "length (m)", "length [m]", "--length m", "Length m", "length m;width", "length m,name"} {
		rows, err := plan(t).Batch(strings.NewReader(header+"\n"+strings.Repeat("3;", strings.Count(header, ";"))+"3"+strings.Repeat(",", strings.Count(header, ","))+"\n"), nil)
		if strings.Contains(header, ";") {
			rows, err = plan(t).Batch(strings.NewReader(header+"\n3;1m\n"), nil)
		}
		if err != nil {
			t.Errorf("header %q: %v", header, err)
			continue
		}
		if all, tally, err := rows.Collect(1e6, nil); err != nil || tally.Failed > 0 || len(all) != 1 {
			t.Errorf("header %q: %v, %v", header, tally.First, err)
		}
	}
	for header, says := range map[string]string{
		"":                "no header",
		"lenght":          "did you mean length?",
		"length psi":      "not a length",
		"length m extra":  "is no input",
		"length,length":   "twice",
		"length,quality":  "name, note and id are copied",
		"length m,name m": "is no input",
	} {
		if _, err := plan(t).Batch(strings.NewReader(header+"\n"), nil); !isUsage(err) || !strings.Contains(err.Error(), says) {
			t.Errorf("header %q: %v, want an error with %q", header, err, says)
		}
	}
	if _, err := plan(t, "length", "1m..2m:1m").Batch(strings.NewReader("width\n1m\n"), nil); !isUsage(err) {
		t.Errorf("a range beside a file: %v", err)
	}
}

// TestBatchLikeSingle checks that a row gives the same as its command line.
func TestBatchLikeSingle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 200).Draw(t, "rows")
		var file strings.Builder
		file.WriteString("length,width\n")
		var want []float64
		for i := range n {
			length := rapid.IntRange(1, 99).Draw(t, "length")
			fmt.Fprintf(&file, "%dm,%dcm\n", length, i+1)
			want = append(want, float64(length)*float64(i+1)/100)
		}
		p, err := Read(product(), nil)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := p.Batch(strings.NewReader(file.String()), []string{"area"})
		if err != nil {
			t.Fatal(err)
		}
		all, tally, err := rows.Collect(1e6, nil)
		if err != nil || len(all) != n || tally.Failed > 0 {
			t.Fatalf("%d rows of %d, %+v, %v", len(all), n, tally, err)
		}
		for i, r := range all {
			if got := r.Cells[2].Number; math.Abs(got-want[i]) > 1e-9 {
				t.Fatalf("row %d is %v, want %v", i, got, want[i])
			}
		}
	})
}

func TestSameWording(t *testing.T) {
	for _, c := range []struct {
		a, b string
		same bool
	}{
		{"{3 c} is warm", "{4 c} is warm", true}, {"{3 c} is warm", "{4 c} is cold", false},
		{"plain", "plain", true}, {"plain", "plain {x}", false}, {"{a} {b}", "{c} {d}", true}, {"", "", true},
	} {
		if got := sameWording(c.a, c.b); got != c.same {
			t.Errorf("%q and %q: %v", c.a, c.b, got)
		}
	}
}

// BenchmarkSweep streams rows of the pressure chart as lines of numbers.
func BenchmarkSweep(b *testing.B) {
	p, err := Read(balance(), typed("temp", fmt.Sprintf("0C..20C:%.9fC", 20/float64(b.N+1)), "gauge", "12psi"))
	if err != nil {
		b.Fatal(err)
	}
	rows, err := p.Rows(nil)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	b.ResetTimer()
	if _, err := rows.Stream(&bytes.Buffer{}, func(buf []byte, _ *Row) []byte { return buf }, nil); err != nil {
		b.Fatal(err)
	}
}
