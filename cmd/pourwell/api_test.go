package main

import (
	"bytes"
	"fmt"
	"go/ast"
	"go/doc"
	goparser "go/parser"
	"go/printer"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestAPI holds what each package exports against its listing in testdata/api,
// so that a change of it is seen and meant: go test ./cmd/pourwell -run API
// -update writes the listings anew.
func TestAPI(t *testing.T) {
	t.Chdir("../..")
	for _, pkg := range []string{"volume", "thermal", "carbonation", "lines"} {
		name := filepath.Join("testdata", "api", pkg+".txt")
		was, err := os.ReadFile(name)
		if err != nil && !*update {
			t.Fatal(err)
		}
		samePage(t, name, string(was), listing(t, pkg))
	}
}

// listing returns the exported declarations of a package, a line each, sorted,
// without their comments.
func listing(t *testing.T, pkg string) string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(pkg, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	fset := token.NewFileSet()
	var files []*ast.File
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := goparser.ParseFile(fset, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, file)
	}
	p, err := doc.NewFromFiles(fset, files, "example.com/pourwell/"+pkg)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	add := func(format string, args ...any) { lines = append(lines, fmt.Sprintf(format, args...)) }
	source := func(node any) string {
		var b bytes.Buffer
		if err := printer.Fprint(&b, fset, node); err != nil {
			t.Fatal(err)
		}
		return strings.Join(strings.Fields(b.String()), " ")
	}
	values := func(kind string, groups []*doc.Value) {
		for _, group := range groups {
			for _, name := range group.Names {
				if token.IsExported(name) {
					add("%s %s", kind, name)
				}
			}
		}
	}
	functions := func(all []*doc.Func) {
		for _, f := range all {
			f.Decl.Body = nil
			add("%s", source(f.Decl))
		}
	}
	values("const", p.Consts)
	values("var", p.Vars)
	functions(p.Funcs)
	for _, typ := range p.Types {
		values("const", typ.Consts)
		values("var", typ.Vars)
		functions(typ.Funcs)
		functions(typ.Methods)
		for _, spec := range typ.Decl.Specs {
			s, ok := spec.(*ast.TypeSpec)
			if !ok || s.Name.Name != typ.Name {
				continue
			}
			fields, ok := s.Type.(*ast.StructType)
			if !ok {
				add("type %s", source(s))
				continue
			}
			add("type %s struct", s.Name.Name)
			for _, f := range fields.Fields.List {
				for _, n := range f.Names {
					if n.IsExported() {
						add("type %s struct, %s %s", s.Name.Name, n.Name, source(f.Type))
					}
				}
			}
		}
	}
	slices.Sort(lines)
	return strings.Join(slices.Compact(lines), "\n") + "\n"
}
