package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/cmd/pourwell/internal/report"
	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write what the command prints into the README")

// TestREADME runs every "$ pourwell …" of the README's console blocks and
// compares what it prints with what stands there; "| head -n 40" behind one
// shows its first lines. That keeps the page true, it checks no number: the
// packages' own tests do.
func TestREADME(t *testing.T) {
	t.Setenv("LC_ALL", "C.UTF-8")
	t.Chdir("../..")
	page, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	blocks := strings.Split(string(page), "```")
	runs := 0
	for i, block := range blocks {
		if i%2 == 0 || !strings.HasPrefix(block, "console\n$ pourwell ") {
			continue
		}
		line := commandLine(strings.TrimPrefix(block, "console\n$ pourwell "))
		blocks[i] = "console\n" + printed(t, line)
		runs++
	}
	if runs == 0 {
		t.Fatal("no console block found")
	}
	samePage(t, "README.md", string(page), strings.Join(blocks, "```"))
	if n := strings.Count(string(page), "\n"); n > mostLinesOfREADME {
		t.Errorf("README.md has %d lines, want at most %d", n, mostLinesOfREADME)
	}
}

// mostLinesOfREADME is how long the first page may be: what it is and how to
// begin. The calculations stand in the command's own page.
const mostLinesOfREADME = 220

// TestCommandREADME holds the page of all calculations against the catalogue
// that it is written from, whole.
func TestCommandREADME(t *testing.T) {
	t.Setenv("LC_ALL", "C.UTF-8")
	t.Chdir("../..")
	var b strings.Builder
	b.WriteString("# Each calculation\n\n" + report.Wrap("Written from the catalogue by the command's tests: each calculation with its first example and what that prints."+
		" The scenario is invented. `pourwell PACKAGE CALCULATION --help` gives more examples, the inputs with their ranges, and the keys of the results.", 0, 0) + "\n")
	for _, p := range catalog.Packages {
		fmt.Fprintf(&b, "\n## %s\n\n%s\n", p.Name, report.Wrap(report.Capital(p.About)+".", 0, 0))
		for _, c := range catalog.In(p.Name) {
			fmt.Fprintf(&b, "\n### %s\n\n%s\n\n```console\n%s```\n", c.Title(), report.Wrap(report.Capital(c.Summary)+".", 0, 0),
				printed(t, strings.TrimPrefix(strings.TrimLeft(example(c.Examples[0]), " "), "pourwell ")))
		}
	}
	const name = "cmd/pourwell/README.md"
	page, err := os.ReadFile(name)
	if err != nil && !*update {
		t.Fatal(err)
	}
	samePage(t, name, string(page), b.String())
}

// samePage fails unless page is what it should be, or writes it where the test is
// asked to.
func samePage(t *testing.T, name, page, want string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(name, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if diff := cmp.Diff(want, page); diff != "" {
		t.Errorf("%s is not as things are (go test ./cmd/pourwell -update):\n%s", name, diff)
	}
}

var headOf = regexp.MustCompile(` \| head -n (\d+)$`)

// printed runs a command line of pourwell and returns it with what it prints.
func printed(t *testing.T, line string) string {
	t.Helper()
	typed, lines := line, -1
	if m := headOf.FindStringSubmatchIndex(line); m != nil {
		typed = line[:m[0]]
		lines, _ = strconv.Atoi(line[m[2]:m[3]])
	}
	var out, errs bytes.Buffer
	code := run(split(strings.ReplaceAll(typed, "\\\n", " ")), strings.NewReader(""), &out, &errs)
	if code != exitDone && code != exitNoAnswer {
		t.Errorf("pourwell %s: exit code %d: %s", line, code, &errs)
	}
	text := strings.SplitAfter(out.String()+errs.String(), "\n")
	if lines >= 0 {
		text = text[:min(lines, len(text))]
	}
	return "$ pourwell " + line + "\n" + strings.Join(text, "")
}

// commandLine returns the first line of block, with the lines that a backslash
// at the end continues it by.
func commandLine(block string) string {
	end := 0
	for {
		n := strings.Index(block[end:], "\n")
		if n < 0 {
			return block
		}
		end += n
		if !strings.HasSuffix(block[:end], "\\") {
			return block[:end]
		}
		end++
	}
}

// split breaks a command line at blanks outside double quotes.
func split(line string) []string {
	var args []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			args = append(args, part)
			continue
		}
		args = append(args, strings.Fields(part)...)
	}
	return args
}
