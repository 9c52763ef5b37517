package main

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
)

// build compiles a package or a file of Go, stripped, and returns the program.
func build(b *testing.B, from string) string {
	b.Helper()
	name := filepath.Join(b.TempDir(), "program")
	out, err := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", name, from).CombinedOutput()
	if err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	return name
}

// bare writes the yardstick for the start of pourwell, a program of the same
// parser with the commands and flags of the catalog that does nothing, and
// returns its file.
func bare(b *testing.B) string {
	b.Helper()
	var s strings.Builder
	flag := func(name, kind string) {
		fmt.Fprintf(&s, "%s %s `name:%q help:%q`\n", fieldName(name), kind, name, name)
	}
	s.WriteString("package main\n\nimport (\n\t\"fmt\"\n\n\t\"github.com/alecthomas/kong\"\n)\n\nfunc main() {\n\tvar cli struct {\n")
	for _, name := range globalNames {
		flag(name, "string")
	}
	for _, p := range catalog.Packages {
		fmt.Fprintf(&s, "%s struct {\n", fieldName(p.Name))
		for _, c := range catalog.In(p.Name) {
			fmt.Fprintf(&s, "%s struct {\n", fieldName(c.Name))
			for _, in := range c.Ready().AllInputs() {
				flag(in.Name, map[bool]string{false: "string", true: "bool"}[in.Kind == quantity.Switch])
			}
			fmt.Fprintf(&s, "} `cmd:\"\" name:%q help:%q`\n", c.Name, c.Name)
		}
		fmt.Fprintf(&s, "} `cmd:\"\" name:%q help:%q`\n", p.Name, p.Name)
	}
	s.WriteString("}\n\tfmt.Println(kong.Parse(&cli).Command())\n}\n")
	file := filepath.Join(b.TempDir(), "main.go")
	if err := os.WriteFile(file, []byte(s.String()), 0o600); err != nil {
		b.Fatal(err)
	}
	return file
}

// BenchmarkStart measures whole processes, one answer of pourwell against the
// bare parser in turns, so that both see the same machine. It reports medians in
// ms, and their ratio; the aim is 0.8 at most. Give it a hundred turns:
//
//	go test ./cmd/pourwell -run xxx -bench Start -benchtime 100x
func BenchmarkStart(b *testing.B) {
	ours, yardstick := build(b, "."), build(b, bare(b))
	commands := [2][]string{
		{ours, "carbonation", "equilibrium", "--temp", "38F", "--gauge", "12psi"},
		{yardstick, "carbonation", "equilibrium", "--temp", "38F", "--gauge", "12psi"},
	}
	var took [2][]float64
	b.ResetTimer()
	for range b.N {
		for i, c := range commands {
			started := time.Now()
			if err := exec.Command(c[0], c[1:]...).Run(); err != nil {
				b.Fatal(err)
			}
			took[i] = append(took[i], float64(time.Since(started).Microseconds())/1000)
		}
	}
	b.ReportMetric(median(took[0]), "ms/start")
	b.ReportMetric(median(took[1]), "ms/bare")
	b.ReportMetric(median(took[0])/median(took[1]), "ratio")
	if info, err := os.Stat(ours); err == nil {
		b.ReportMetric(float64(info.Size())/(1<<20), "MiB")
	}
}

func median(v []float64) float64 {
	slices.Sort(v)
	return v[len(v)/2]
}

// BenchmarkSweep streams a million rows of the pressure chart as CSV. It
// reports rows a second, aimed at half a million on two processors, and the
// memory taken from the system at the end.
func BenchmarkSweep(b *testing.B) {
	const rows = 1_000_001
	args := strings.Fields("carbonation equilibrium --temp 0C..20C:0.00002C --gauge 12psi --format csv")
	for b.Loop() {
		if code := run(args, strings.NewReader(""), io.Discard, io.Discard); code != exitDone {
			b.Fatalf("exit code %d", code)
		}
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	b.ReportMetric(rows*float64(b.N)/b.Elapsed().Seconds(), "rows/s")
	b.ReportMetric(float64(m.Sys)/(1<<20), "MiB")
}

// BenchmarkAnswer is one answer within the process: reading flags, the sum,
// the text.
func BenchmarkAnswer(b *testing.B) {
	args := strings.Fields("carbonation equilibrium --temp 38F --gauge 12psi")
	b.ReportAllocs()
	for b.Loop() {
		if code := run(args, strings.NewReader(""), io.Discard, io.Discard); code != exitDone {
			b.Fatalf("exit code %d", code)
		}
	}
}
