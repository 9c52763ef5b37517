package draw

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/chart"
)

var figure = chart.Figure{Title: "a line", Panels: []chart.Panel{{
	X: chart.Axis{Label: "x"}, Y: chart.Axis{Label: "y"},
	Lines: []chart.Line{{X: []float64{0, 1, 2}, Y: []float64{1, 3, 2}}},
}}}

// TestMarkedFilesAreWhole reads both formats as a strict reader does: the mark
// breaks neither the check sums of the one nor the grammar of the other.
func TestMarkedFilesAreWhole(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"a.svg", "a.png", "B.SVG", "B.PNG"} {
		file := File{Name: filepath.Join(dir, name)}
		for range 2 { // the second replaces the first
			if err := file.write(figure); err != nil {
				t.Fatal(err)
			}
		}
		data, err := os.ReadFile(file.Name)
		if err != nil {
			t.Fatal(err)
		}
		if strings.EqualFold(filepath.Ext(name), ".png") {
			if _, err := png.Decode(bytes.NewReader(data)); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		for d := xml.NewDecoder(bytes.NewReader(data)); err == nil; {
			_, err = d.Token()
		}
		if !errors.Is(err, io.EOF) {
			t.Errorf("%s: %v", name, err)
		}
	}
	onlyThese(t, dir, "B.PNG", "B.SVG", "a.png", "a.svg")
}

// onlyThese checks that nothing is left beside the files.
func onlyThese(t *testing.T, dir string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, e := range entries {
		found = append(found, e.Name())
	}
	if got, want := strings.Join(found, " "), strings.Join(names, " "); got != want {
		t.Errorf("the folder holds %s, want %s", got, want)
	}
}

// TestReplaces: what is no chart of ours stays, byte by byte.
func TestReplaces(t *testing.T) {
	dir := t.TempDir()
	notes := filepath.Join(dir, "notes.svg")
	put(t, notes, "<?xml version=\"1.0\"?>\nmine", 0o640)
	refused(t, File{Name: notes})
	if data, err := os.ReadFile(notes); err != nil || !strings.HasSuffix(string(data), "mine") {
		t.Errorf("%s, %v", data, err)
	}
	if err := (File{Name: notes, Overwrite: true}).write(figure); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(notes); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	for _, name := range []string{"a.gif", "a", "", "a\n.svg", "a\x1b[2J.svg", "a\u202e.svg", "a\u2028.png"} {
		refused(t, File{Name: filepath.Join(dir, name), Overwrite: true})
	}
	folder := filepath.Join(dir, "folder.svg")
	if err := os.Mkdir(folder, 0o777); err != nil {
		t.Fatal(err)
	}
	refused(t, File{Name: folder, Overwrite: true})
	onlyThese(t, dir, "folder.svg", "notes.svg")
}

// TestLinkIsNotFollowed: with Overwrite the link goes, what it points at stays.
func TestLinkIsNotFollowed(t *testing.T) {
	dir := t.TempDir()
	target, link := filepath.Join(dir, "target.txt"), filepath.Join(dir, "link.svg")
	put(t, target, "mine", 0o600)
	if err := os.Symlink(target, link); err != nil {
		t.Skip(err)
	}
	refused(t, File{Name: link})
	if err := (File{Name: link, Overwrite: true}).write(figure); err != nil {
		t.Fatal(err)
	}
	if data, err := os.ReadFile(target); err != nil || string(data) != "mine" {
		t.Errorf("%s, %v", data, err)
	}
	if info, err := os.Lstat(link); err != nil || !info.Mode().IsRegular() {
		t.Errorf("%v, %v", info, err)
	}
}

// TestWriteFails: the error names the file asked for, and nothing is left.
func TestWriteFails(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "nowhere", "a.svg")
	err := File{Name: name}.write(figure)
	var path *fs.PathError
	if !errors.As(err, &path) || path.Path != name || !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%v", err)
	}
	onlyThese(t, dir)
}

func put(t *testing.T, name, text string, mode fs.FileMode) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), mode); err != nil {
		t.Fatal(err)
	}
}

func refused(t *testing.T, file File) {
	t.Helper()
	var usage *calc.UsageError
	if err := file.write(figure); !errors.As(err, &usage) {
		t.Errorf("%q: %v", file.Name, err)
	}
}
