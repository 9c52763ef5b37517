package sweep

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestBatchForeign: a cell with a character that steers a terminal fails its
// row and is not copied; any other name is.
func TestBatchForeign(t *testing.T) {
	file := "name,length,tube\n\x1b[31mred,1m,\n夏 {1} =x,2m,\n\"two\nlines\",3m,\ngood,4m,\u202e7mm\nlatin \xe9,5m,\nlast,6m,\n"
	rows, err := plan(t).Batch(strings.NewReader(file), []string{"area"})
	if err != nil {
		t.Fatal(err)
	}
	got, tally := stream(t, rows)
	want := `name= length_m=1 tube= area=NaN failed
name=夏 {1} =x length_m=2 tube= area=4 
name= length_m=3 tube= area=NaN failed
name=good length_m=4 tube= area=NaN failed
name= length_m=5 tube= area=NaN failed
name=last length_m=6 tube= area=12 
`
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if tally.Failed != 4 || !isUsage(tally.First) || !strings.Contains(tally.First.Error(), `name "\x1b[31mred" has the control character U+001B`) {
		t.Errorf("%+v", tally)
	}
}

// TestBatchStrayQuotes: a row whose quotes are not closed, or stand within a
// cell, fails alone, wherever it stands; a cell in quotes may have commas and
// quotes.
func TestBatchStrayQuotes(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		good := []string{"a,1m", `"a, b",1m`, `"5 "" keg",1m`, "a,1m # no comment", ""}
		broken := []string{`b"c,1m`, `"b,1m`, `"b"c,1m`, `b,"1m`, `"""b,1m`}
		n, failed := 0, 0
		file := "name,length"
		for _, i := range rapid.SliceOfN(rapid.IntRange(0, 49), 0, 60).Draw(r, "rows") {
			line := good[i%4]
			if i < len(broken) {
				line = broken[i]
				failed++
			}
			n++
			file += rapid.SampledFrom([]string{"\n", "\r\n", "\n\n", "\n# x\n"}).Draw(r, "end") + line
		}
		rows, err := plan(t).Batch(iotest.OneByteReader(strings.NewReader(file)), nil)
		if err != nil {
			r.Fatal(err)
		}
		failed += strings.Count(file, "# no comment") // 1m with words behind it is no length
		if got, tally := stream(t, rows); tally.Rows != n || tally.Failed != failed {
			r.Fatalf("%d of %d rows failed, want %d of %d:\n%s\n%s", tally.Failed, tally.Rows, failed, n, file, got)
		}
	})
}

// An endless file repeats its text.
type endless struct {
	text string
	read int
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.text[e.read%len(e.text)]
		e.read++
	}
	return len(p), nil
}

// TestBatchIsBounded: a row longer than it may be ends the file, an endless
// header is refused, and rows beyond those that are kept end the reading.
func TestBatchIsBounded(t *testing.T) {
	zeros := &endless{text: "\x00"}
	if _, err := plan(t).Batch(zeros, nil); !isUsage(err) || zeros.read > 2*mostLine {
		t.Errorf("%d zeros for a header: %v", zeros.read, err)
	}
	if _, err := plan(t).Batch(&endless{text: "tube,"}, nil); !isUsage(err) {
		t.Errorf("an endless header: %v", err)
	}
	if _, err := plan(t).Batch(strings.NewReader(strings.Repeat("tube,", mostColumns)+"tube\n"), nil); !isUsage(err) {
		t.Errorf("a header of many columns: %v", err)
	}
	for text, size := range map[string]int64{"x": 3 * mostLine, "\"" + strings.Repeat("x\n", 1000): 100_000} {
		more := io.LimitReader(&endless{text: text}, size)
		rows, err := plan(t).Batch(io.MultiReader(strings.NewReader("length\n1m\n2m\n"), more), nil)
		if err != nil {
			t.Fatal(err)
		}
		got, tally := stream(t, rows)
		if !strings.HasPrefix(got, "length_m=1 area=2") || tally.Rows-tally.Failed != 2 || tally.FirstRow != 3 {
			t.Errorf("after %.9q: %d of %d rows failed, the first is row %d, %v", text, tally.Failed, tally.Rows, tally.FirstRow, tally.First)
		}
	}
	lines := &endless{text: "1m\n"}
	rows, err := plan(t).Batch(io.MultiReader(strings.NewReader("length\n"), lines), nil)
	if err != nil {
		t.Fatal(err)
	}
	if all, _, err := rows.Collect(500, nil); !isUsage(err) || len(all) > 500 || lines.read > 10*mostLine {
		t.Errorf("500 rows of an endless file: %d rows, %d bytes, %v", len(all), lines.read, err)
	}
	if _, _, err := rows2(t).Collect(49999, nil); !isUsage(err) || !strings.Contains(err.Error(), "50000 rows") {
		t.Errorf("50 000 rows where 49 999 fit: %v", err)
	}
}

// TestBatchKeepsWhatItRead: the rows before a fault of the disk are answered.
func TestBatchKeepsWhatItRead(t *testing.T) {
	disk := errors.New("disk on fire")
	rows, err := plan(t).Batch(io.MultiReader(strings.NewReader("length\n"+strings.Repeat("1m\n", 100)), iotest.ErrReader(disk)), nil)
	if err != nil {
		t.Fatal(err)
	}
	tally, err := rows.Stream(io.Discard, asLine, nil)
	if tally.Rows != 100 || !errors.Is(err, disk) {
		t.Errorf("%d of 100 rows, %v", tally.Rows, err)
	}
}
