package licences

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "copy the licences of the modules that are linked")

// platforms are those that the project is built for; what is linked may differ.
var platforms = []string{"linux", "darwin", "windows"}

// own are names of files with a licence, or what belongs to one.
var own = regexp.MustCompile(`(?i)^((UN)?LICEN[CS]E|COPYING|NOTICE|PATENTS)`)

// elsewhere are further texts that a module's licence refers to.
var elsewhere = map[string]string{"github.com/golang/freetype": "licenses/ftl.txt"}

// TestEveryModuleIsThere compares the texts with the modules that the compiler
// links: a new dependency fails until its licence is read and copied.
func TestEveryModuleIsThere(t *testing.T) {
	want := map[string][]byte{}
	for module, dir := range linked(t) {
		names := []string{elsewhere[module]}
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if own.MatchString(e.Name()) && !e.IsDir() {
				names = append(names, e.Name())
			}
		}
		for _, name := range slices.DeleteFunc(names, func(s string) bool { return s == "" }) {
			text, err := os.ReadFile(filepath.Join(dir, name))
			if err != nil {
				t.Fatal(err)
			}
			want[path.Join("texts", module, path.Base(name))] = text
		}
		if len(names) == 0 {
			t.Errorf("%s has no licence", module)
		}
	}
	if *update {
		copyTexts(t, want)
		return
	}
	err := fs.WalkDir(texts, "texts", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(name, "texts/go/") {
			return err
		}
		text, err := texts.ReadFile(name)
		switch expected, linked := want[name]; {
		case !linked:
			t.Errorf("%s is there, and nothing of it is linked", name)
		case !bytes.Equal(text, expected):
			t.Errorf("%s is not as the module has it", name)
		}
		delete(want, name)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name := range want {
		t.Errorf("%s is missing: read it, and go test ./cmd/pourwell/internal/licences -update", name)
	}
}

// linked returns the modules that the program is built from, with the folder
// of each.
func linked(t *testing.T) map[string]string {
	t.Helper()
	modules := map[string]string{}
	for _, platform := range platforms {
		list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Dir}}{{end}}{{end}}", "example.com/pourwell/cmd/pourwell")
		list.Env = append(os.Environ(), "GOOS="+platform, "GOARCH=amd64", "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(out)) {
			if module, dir, ok := strings.Cut(strings.TrimSpace(line), "\t"); ok {
				modules[module] = dir
			}
		}
	}
	if len(modules) < 5 {
		t.Fatalf("%d modules", len(modules))
	}
	return modules
}

// copyTexts writes the texts anew. That of Go itself is not of a module; it
// stays.
func copyTexts(t *testing.T, want map[string][]byte) {
	t.Helper()
	entries, err := os.ReadDir("texts")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if e.Name() != "go" {
			if err := os.RemoveAll(filepath.Join("texts", e.Name())); err != nil {
				t.Fatal(err)
			}
		}
	}
	for name, text := range want {
		if err := os.MkdirAll(path.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// TestPage: every text is on the page.
func TestPage(t *testing.T) {
	if *update {
		t.Skip("what was copied just now is embedded next time")
	}
	page := Page()
	for _, words := range []string{
		"\ngo\n", "The Go Authors", "\ngithub.com/alecthomas/kong\n", "Alec Thomas", "FreeType Project LICENSE", "SIL OPEN FONT LICENSE",
		"Reserved Font Name Liberation", "The Gonum Authors", "Michael Fogleman", "Thomas Pelletier", "Attribution 4.0",
	} {
		if !strings.Contains(page, words) {
			t.Errorf("the page is silent on %q", words)
		}
	}
}
