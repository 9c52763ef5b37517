package report

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"testing"
	"unicode/utf8"
)

// TestSheetsAreLinear counts how often the layout of a sheet measures its
// cells: about as often for each, however many rows there are.
func TestSheetsAreLinear(t *testing.T) {
	defer func() { letters = utf8.RuneCountInString }()
	measured := 0
	letters = func(s string) int { measured++; return utf8.RuneCountInString(s) }
	in, _ := answered(t)
	for _, rows := range []int{100, 200, 1600} {
		measured = 0
		if err := sheet(rows, 8).Text(io.Discard, in, Options{}); err != nil {
			t.Fatal(err)
		}
		if each := measured / (9 * rows); each < 1 || each > 9 {
			t.Errorf("the cells of %d rows are measured %d times each", rows, each)
		}
	}
}

// TestLayout checks rows of several lengths, cells that break and cells too
// wide for their column.
func TestLayout(t *testing.T) {
	for _, c := range []struct {
		layout layout
		rows   [][]string
		want   string
	}{
		{layout{gap: 2}, nil, ""},
		{layout{gap: 2}, [][]string{{"a", "bb", "c"}, {"aaa", "b"}, {"", ""}, {"µ", "", "c"}}, "a    bb  c\naaa  b\nµ        c\n"},
		{layout{margin: 1, gap: 2, widest: 3}, [][]string{{"abcd", "x"}, {"ab", "y"}}, " abcd\n     x\n ab  y\n"},
		{layout{margin: 70, gap: 1, wrap: true}, [][]string{{"a", "one two three"}}, fmt.Sprintf("%71s one two\n%72sthree\n", "a", "")},
	} {
		got := text(t, func(b *bytes.Buffer) error {
			p := printer{w: bufio.NewWriter(b)}
			p.rows(c.layout, c.rows)
			return p.w.Flush()
		})
		if got != c.want {
			t.Errorf("%+v of %q:\n%s\nwant\n%s", c.layout, c.rows, got, c.want)
		}
	}
}

// BenchmarkSheet lays out rows in number doubled from run to run: the time a
// row takes stays the same.
func BenchmarkSheet(b *testing.B) {
	for rows := 2500; rows <= 20000; rows *= 2 {
		b.Run(fmt.Sprint(rows), func(b *testing.B) {
			s := sheet(rows, 5)
			in, _ := answered(b)
			b.ReportAllocs()
			for b.Loop() {
				if err := s.Text(io.Discard, in, Options{}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*rows), "ns/row")
		})
	}
}
