package sweep

import (
	"io"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/calc"
)

// FuzzRead checks that any text for any input is read or refused, and that
// what is read runs.
func FuzzRead(f *testing.F) {
	for _, text := range []string{"1m..3m:1m", "1m,2m", "10m+-5%", "5%±1%", "..", ":", "1m..:", "still,carried", "1..2:", "5gal..6gal:1gal", "+-", "1m+-1m..2m:1m"} {
		for input := range uint8(8) {
			f.Add(input, text)
		}
	}
	c := product()
	f.Fuzz(func(t *testing.T, input uint8, text string) {
		in := c.AllInputs()[int(input)%len(c.AllInputs())]
		texts := []calc.Typed{{Name: "length", Texts: []string{"3m"}}}
		if in.Name == "length" {
			texts = nil
		}
		p, err := Read(c, append(texts, calc.Typed{Name: in.Name, Texts: []string{text}}))
		if err != nil {
			return
		}
		rows, err := p.Rows(nil)
		if err != nil || rows.Len() > 1000 {
			return
		}
		tally, err := rows.Stream(io.Discard, func(b []byte, _ *Row) []byte { return b }, nil)
		if err != nil || tally.Rows != rows.Len() {
			t.Fatalf("%s %q: %d rows of %d, %v", in.Name, text, tally.Rows, rows.Len(), err)
		}
	})
}

// FuzzBatch checks that any file is read or refused.
func FuzzBatch(f *testing.F) {
	for _, file := range []string{"length,width\n1m,2m\n", "length m\n1\n\"\n", "\ufefflength;width\n1m;2m", "name\nx\n", "length\n", "a,b,c", "length,length\n1m,2m\n", "length\n1m,2m\n#\n"} {
		f.Add(file)
	}
	c := product()
	f.Fuzz(func(t *testing.T, file string) {
		p, err := Read(c, nil)
		if err != nil {
			t.Fatal(err)
		}
		rows, err := p.Batch(strings.NewReader(file), nil)
		if err != nil {
			return
		}
		tally, err := rows.Stream(io.Discard, func(b []byte, _ *Row) []byte { return b }, nil)
		if err != nil && !isUsage(err) || tally.Failed > tally.Rows {
			t.Fatalf("%+v, %v", tally, err)
		}
	})
}
