package lines

import (
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The table in the package comment and the table in the code are the same.
func TestValidityTable(t *testing.T) {
	text, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	row := regexp.MustCompile(`(?m)^//\t(\S.*?)\s{2,}(-?[\d.]+) to (-?[\d.]+)(?: (\S+))?$`)
	documented := map[string]Range{}
	for _, m := range row.FindAllStringSubmatch(string(text), -1) {
		low, _ := strconv.ParseFloat(m[2], 64)
		high, _ := strconv.ParseFloat(m[3], 64)
		documented[m[1]] = Range{Name: m[1], Min: low, Max: high, Unit: m[4]}
	}
	for _, l := range Limits() {
		if l.Source == "" {
			t.Errorf("%s: no reason for the bounds", l.Name)
		}
		l.Source = ""
		if documented[l.Name] != l {
			t.Errorf("documented %+v, checked %+v", documented[l.Name], l)
		}
		delete(documented, l.Name)
	}
	for name := range documented {
		t.Errorf("%s is documented, not checked", name)
	}
	if !strings.HasSuffix(string(text), "package lines\n") {
		t.Error("doc.go holds more than the package comment")
	}
}
