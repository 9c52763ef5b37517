package lines

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// opaque lists the exported types of the four packages that show no field.
func opaque(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, pkg := range []string{"volume", "thermal", "carbonation", "lines"} {
		files, err := filepath.Glob(filepath.Join("..", pkg, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(file, func(n ast.Node) bool {
				spec, ok := n.(*ast.TypeSpec)
				if !ok || !spec.Name.IsExported() || spec.Assign.IsValid() {
					return true
				}
				if s, ok := spec.Type.(*ast.StructType); ok && len(s.Fields.List) > 0 && !shows(s) {
					all = append(all, pkg+"."+spec.Name.Name)
				}
				return false
			})
		}
	}
	return all
}

// shows reports whether a struct has a field that its users see.
func shows(s *ast.StructType) bool {
	for _, f := range s.Fields.List {
		if len(f.Names) == 0 {
			return true // embedded
		}
		for _, n := range f.Names {
			if n.IsExported() {
				return true
			}
		}
	}
	return false
}

// TestOpaqueTypesDoNotConvert compiles the conversion of every opaque type into
// every other, and into a bare number, and demands that each fails.
func TestOpaqueTypesDoNotConvert(t *testing.T) {
	types := opaque(t)
	if len(types) < 5 {
		t.Fatalf("only %v are opaque", types)
	}
	var b strings.Builder
	b.WriteString("package misuse\nimport (\n")
	for _, pkg := range []string{"carbonation", "thermal"} {
		fmt.Fprintf(&b, "%q\n", "example.com/pourwell/"+pkg)
	}
	b.WriteString(")\n")
	misuses := map[int]string{}
	line := strings.Count(b.String(), "\n")
	add := func(from, into string) {
		line++
		misuses[line] = from + " into " + into
		fmt.Fprintf(&b, "var _ = func(x %s) %s { return %s(x) }\n", from, into, into)
	}
	for _, from := range types {
		add(from, "float64")
		add("float64", from)
		for _, into := range types {
			if from != into {
				add(from, into)
			}
		}
	}
	dir := t.TempDir()
	source, overlay := filepath.Join(dir, "misuse.go"), filepath.Join(dir, "overlay.json")
	here, err := filepath.Abs("misuse")
	if err != nil {
		t.Fatal(err)
	}
	replace, err := json.Marshal(map[string]any{"Replace": map[string]string{filepath.Join(here, "misuse.go"): source}})
	if err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{source: []byte(b.String()), overlay: replace} {
		if err := os.WriteFile(name, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out, err := exec.Command("go", "build", "-overlay", overlay, "-gcflags=-e", "./misuse").CombinedOutput()
	if err == nil {
		t.Fatal("every conversion compiles")
	}
	for n, what := range misuses {
		if !bytes.Contains(out, fmt.Appendf(nil, "misuse.go:%d:", n)) {
			t.Errorf("%s compiles", what)
		}
	}
	if strings.Count(string(out), "cannot convert") < len(misuses) {
		t.Errorf("something else is wrong:\n%.500s", out)
	}
}
