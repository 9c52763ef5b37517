package main

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// rooms lists the rooms of the house from the top down; a package may import
// those of its own room and of the rooms below it. The first prefix that fits
// decides, so that a room inside another stands before it.
var rooms = []string{"cmd/pourwell/internal", "cmd/pourwell", "lines/event", "lines", "carbonation", "thermal", "volume", "internal"}

// depth orders the rooms: package main stands on its own internal packages.
var depth = map[string]int{
	"cmd/pourwell": 0, "cmd/pourwell/internal": 1, "lines/event": 2, "lines": 3, "carbonation": 4, "thermal": 5, "volume": 6, "internal": 7,
}

// light lists what the importable packages may import from outside.
var light = []string{
	"gonum.org/v1/gonum/unit", "gonum.org/v1/gonum/stat/distuv", "gonum.org/v1/gonum/mathext", "gonum.org/v1/gonum/floats/scalar",
}

// TestArrows checks that imports go one way, down the rooms of the house, that
// the packages below the command import nothing from outside but the light
// parts of gonum, and that no physics stands in package main, calc or catalog.
func TestArrows(t *testing.T) {
	out, err := exec.Command("go", "list", "-f", `{{.ImportPath}} {{join .Imports " "}}`, "example.com/pourwell/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	const module = "example.com/pourwell/"
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		pkg, imports := strings.TrimPrefix(words[0], module), words[1:]
		from, ok := roomOf(pkg)
		if !ok {
			t.Errorf("%s stands in no room of the house", pkg)
		}
		noPhysics := slices.Contains([]string{"cmd/pourwell", "cmd/pourwell/internal/calc", "cmd/pourwell/internal/catalog"}, pkg)
		for _, path := range imports {
			if to, own := strings.CutPrefix(path, module); own {
				if room, ok := roomOf(to); !ok || depth[room] < depth[from] {
					t.Errorf("%s imports %s, against the arrows", pkg, to)
				}
				continue
			}
			outside := strings.Contains(strings.SplitN(path, "/", 2)[0], ".")
			switch {
			case noPhysics && (path == "math" || strings.HasPrefix(path, "gonum.org/")):
				t.Errorf("%s imports %s: a sum belongs in a package", pkg, path)
			case outside && from != "cmd/pourwell" && from != "cmd/pourwell/internal" && pkg != "internal/checktest" && !slices.Contains(light, path):
				t.Errorf("%s imports %s from outside", pkg, path)
			}
		}
	}
}

// roomOf returns the room that the package stands in.
func roomOf(pkg string) (string, bool) {
	for _, room := range rooms {
		if pkg == room || strings.HasPrefix(pkg, room+"/") {
			return room, true
		}
	}
	return "", false
}
