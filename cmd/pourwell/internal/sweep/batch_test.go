package sweep

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
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
