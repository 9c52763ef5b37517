package checktest

import (
	"fmt"
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A limit is a volume.Range, spelt out because the tests of volume import this
// package.
type limit = struct {
	Name     string
	Min, Max float64
	Suffix   string
	Source   string
	Fields   string
}

var (
	validityRow   = regexp.MustCompile(`(?m)^//\t(.*)$`)
	packageClause = regexp.MustCompile(`^(//.*\n)*package \w+\n$`)
)

// Validity fails unless the table under the heading Validity of doc.go is the
// table that the checks read, row by row: format prints the name, the bounds
// and the unit of one.
func Validity[R interface {
	~limit
	Unit() string
}](t *testing.T, format string, limits []R) {
	t.Helper()
	text, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	_, after, ok := strings.Cut(string(text), "// # Validity\n")
	section, _, okEnd := strings.Cut(after, "// # ")
	if !ok || !okEnd {
		t.Fatal("doc.go has no section Validity")
	}
	var documented, want []string
	for _, m := range validityRow.FindAllStringSubmatch(section, -1) {
		documented = append(documented, m[1])
	}
	for _, l := range limits {
		r := limit(l)
		want = append(want, strings.TrimSpace(fmt.Sprintf(format, r.Name, r.Min, r.Max, l.Unit())))
		if r.Source == "" || !(r.Min < r.Max) {
			t.Errorf("row %+v", r)
		}
	}
	if !slices.Equal(documented, want) {
		t.Errorf("doc.go says\n%s\nthe table says\n%s", strings.Join(documented, "\n"), strings.Join(want, "\n"))
	}
	if !packageClause.Match(text) {
		t.Error("doc.go holds more than the package comment")
	}
}

// Exports says what is known of a package's exported names.
type Exports struct {
	Checks map[string]string // each function and Type.Method, and the outside value it is checked against
	Plain  []string          // methods that carry no number of their own, in any type
	Most   int               // exported types and functions at most, aliases apart; 0 for any number
}

// EveryExportIsChecked fails for each exported function and method that has no
// documentation or no outside check, for each check of a name that does not
// exist, and for too many names.
func EveryExportIsChecked(t *testing.T, e Exports) {
	t.Helper()
	fset, files := Source(t)
	p, err := doc.NewFromFiles(fset, files, "")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	names := 0
	need := func(name, comment string) {
		t.Helper()
		seen[name] = true
		if comment == "" {
			t.Errorf("%s has no documentation", name)
		}
		if i := strings.LastIndex(name, "."); !slices.Contains(e.Plain, name[i+1:]) && e.Checks[name] == "" {
			t.Errorf("%s has no outside check", name)
		}
	}
	functions := p.Funcs
	for _, typ := range p.Types {
		if !isAlias(typ) {
			names++
		}
		functions = append(functions, typ.Funcs...)
		for _, m := range typ.Methods {
			need(typ.Name+"."+m.Name, m.Doc)
		}
	}
	for _, f := range functions {
		names++
		need(f.Name, f.Doc)
	}
	for name := range e.Checks {
		if !seen[name] {
			t.Errorf("%s is listed and does not exist", name)
		}
	}
	if e.Most > 0 && names > e.Most {
		t.Errorf("%d exported types and functions, want at most %d", names, e.Most)
	}
}

// isAlias reports whether a type is another name for one.
func isAlias(typ *doc.Type) bool {
	for _, spec := range typ.Decl.Specs {
		if s, ok := spec.(*ast.TypeSpec); ok && s.Name.Name == typ.Name {
			return s.Assign.IsValid()
		}
	}
	return false
}

// Source parses the files of the package under test, without its tests.
func Source(t *testing.T) (*token.FileSet, []*ast.File) {
	t.Helper()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	fset := token.NewFileSet()
	var files []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	return fset, files
}
