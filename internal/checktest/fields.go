package checktest

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// Fields fails unless what the rows of a validity table bound exists, stands in
// one row only, and is all that there is to bound. A row names in its Fields
// exported fields of exported structs, "Tub.Height", parameters of exported
// functions, "AirAt.elevation", and of methods, "Keg.Reach.target"; a path may
// go on through structs and lists, "Keg.Around.Sun".
//
// All there is to bound are the numbers and quantities among the exported fields
// of parameter structs: exported structs with exported methods, none of them
// Steps, Cautions, Error or Check. except lists those that have no row, and the rows that
// bound no single field, each with the reason.
func Fields[R ~limit](t testing.TB, limits []R, except map[string]string) {
	t.Helper()
	own := load(t, ".")
	rows := map[string]string{} // by field
	for _, row := range limits {
		r := limit(row)
		fields := strings.Fields(r.Fields)
		if (len(fields) == 0) != (except[r.Name] != "") {
			t.Errorf("row %q bounds %q, and is excepted for %q", r.Name, r.Fields, except[r.Name])
		}
		for _, field := range fields {
			if other, twice := rows[field]; twice {
				t.Errorf("%s stands in the rows %q and %q", field, other, r.Name)
			}
			rows[field] = r.Name
			if !own.has(field) {
				t.Errorf("row %q bounds %s, which does not exist", r.Name, field)
			}
		}
	}
	for _, field := range own.parameters() {
		if _, bounded := rows[field]; bounded == (except[field] != "") {
			t.Errorf("%s stands in row %q, and is excepted for %q", field, rows[field], except[field])
		}
	}
	for name := range except {
		if !own.has(name) && !slices.ContainsFunc(limits, func(r R) bool { return limit(r).Name == name }) {
			t.Errorf("%q is excepted and does not exist", name)
		}
	}
}

// A source is what a package declares.
type source struct {
	t      testing.TB
	types  map[string]use
	funcs  map[string]use     // by "Func" and "Type.Method"
	others map[string]*source // packages read so far, by directory
}

// A use is an expression for a type, and where it stands.
type use struct {
	Expr ast.Expr
	file *ast.File
	in   *source
}

// load reads the package in a directory.
func load(t testing.TB, dir string) *source {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	s := &source{t, map[string]use{}, map[string]use{}, map[string]*source{}}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			s.declare(d, file)
		}
	}
	return s
}

func (s *source) declare(d ast.Decl, file *ast.File) {
	switch d := d.(type) {
	case *ast.FuncDecl:
		name, typ := d.Name.Name, d.Type
		if d.Recv != nil { // a receiver counts as a parameter
			name = receiver(d.Recv.List[0].Type) + "." + name
			typ = &ast.FuncType{Params: &ast.FieldList{List: slices.Concat(d.Recv.List, d.Type.Params.List)}, Results: d.Type.Results}
		}
		s.funcs[name] = use{typ, file, s}
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			if typ, ok := spec.(*ast.TypeSpec); ok {
				s.types[typ.Name.Name] = use{typ.Type, file, s}
			}
		}
	}
}

func receiver(e ast.Expr) string {
	if star, ok := e.(*ast.StarExpr); ok {
		e = star.X
	}
	if name, ok := e.(*ast.Ident); ok {
		return name.Name
	}
	return ""
}

// has reports whether a field or parameter of that path exists.
func (s *source) has(path string) bool {
	first, rest, _ := strings.Cut(path, ".")
	at, ok := s.funcs[first]
	if !ok {
		at, ok = s.types[first]
		method, more, _ := strings.Cut(rest, ".")
		if f, isMethod := s.funcs[first+"."+method]; isMethod && ast.IsExported(method) {
			at, rest = f, more
		}
	}
	if !ok || !ast.IsExported(first) || rest == "" {
		return false
	}
	for _, name := range strings.Split(rest, ".") {
		if at, ok = at.member(name); !ok {
			return false
		}
	}
	return true
}

// parameters returns the numbers among the fields of parameter structs.
func (s *source) parameters() []string {
	var all []string
	for _, name := range slices.Sorted(maps.Keys(s.types)) {
		typ, isStruct := s.types[name].Expr.(*ast.StructType)
		if !isStruct || !ast.IsExported(name) || !s.isParameter(name) {
			continue
		}
		for _, f := range typ.Fields.List {
			for _, field := range f.Names {
				if field.IsExported() && s.types[name].of(f.Type).isNumber() {
					all = append(all, name+"."+field.Name)
				}
			}
		}
	}
	return all
}

// isParameter reports whether a type has exported methods, and none of a result,
// an error or a range.
func (s *source) isParameter(name string) bool {
	methods := 0
	for f := range s.funcs {
		switch typ, method, _ := strings.Cut(f, "."); {
		case typ != name || !ast.IsExported(method):
		case slices.Contains([]string{"Steps", "Cautions", "Error", "Check"}, method):
			return false
		default:
			methods++
		}
	}
	return methods > 0
}

func (u use) of(e ast.Expr) use { return use{e, u.file, u.in} }

// member returns the type of a field of a struct, or of each struct of a list,
// or of a parameter of a function.
func (u use) member(name string) (use, bool) {
	for {
		u = u.resolved()
		switch e := u.Expr.(type) {
		case *ast.StarExpr:
			u = u.of(e.X)
		case *ast.ArrayType:
			u = u.of(e.Elt)
		case *ast.Ellipsis:
			u = u.of(e.Elt)
		case *ast.StructType:
			return u.among(e.Fields, name, ast.IsExported(name))
		case *ast.FuncType:
			return u.among(e.Params, name, true)
		default:
			return use{}, false
		}
	}
}

func (u use) among(fields *ast.FieldList, name string, visible bool) (use, bool) {
	for _, f := range fields.List {
		for _, n := range f.Names {
			if n.Name == name && visible {
				return u.of(f.Type), true
			}
		}
	}
	return use{}, false
}

// resolved returns what a name of a type stands for, as far as this module says.
func (u use) resolved() use {
	switch e := u.Expr.(type) {
	case *ast.Ident:
		if typ, ok := u.in.types[e.Name]; ok {
			return typ.resolved()
		}
	case *ast.SelectorExpr:
		if typ, ok := u.imported(e.X.(*ast.Ident).Name).types[e.Sel.Name]; ok {
			return typ.resolved()
		}
	}
	return u
}

// imported reads the package that a file of this module calls name; nothing, if
// it is not of this module.
func (u use) imported(name string) *source {
	for _, i := range u.file.Imports {
		path, _ := strconv.Unquote(i.Path.Value)
		if dir, ok := strings.CutPrefix(path, "example.com/pourwell/"); ok && filepath.Base(dir) == name {
			known := u.in.others
			if known[dir] == nil {
				known[dir] = load(u.in.t, filepath.Join(root(u.in.t), dir))
				known[dir].others = known
			}
			return known[dir]
		}
	}
	return &source{}
}

// root returns the directory of the module.
func root(t testing.TB) string {
	t.Helper()
	for dir := "."; len(dir) < 64; dir = filepath.Join("..", dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
	}
	t.Fatal("no module around the package")
	return ""
}

// isNumber reports whether a type holds one number: a basic type, a quantity of
// gonum, a time, or a struct that hides a float64.
func (u use) isNumber() bool {
	u = u.resolved()
	switch e := u.Expr.(type) {
	case *ast.Ident:
		return slices.Contains([]string{"float64", "int", "uint8"}, e.Name)
	case *ast.SelectorExpr:
		pkg := e.X.(*ast.Ident).Name
		return pkg == "unit" || pkg == "time" && e.Sel.Name == "Duration"
	case *ast.StructType:
		numbers := 0
		for _, f := range e.Fields.List {
			for _, n := range f.Names {
				if typ, ok := f.Type.(*ast.Ident); n.IsExported() || !ok {
					return false
				} else if typ.Name == "float64" {
					numbers++
				}
			}
		}
		return numbers == 1
	}
	return false
}
