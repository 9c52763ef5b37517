package main

import (
	"bytes"
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write what the command prints into the README")

// TestREADME runs every "$ pourwell …" of the README's console blocks and
// compares what it prints with what stands there. That keeps the page true, it
// checks no number: the packages' own tests do.
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
		var out, errs bytes.Buffer
		code := run(split(strings.ReplaceAll(line, "\\\n", " ")), strings.NewReader(""), &out, &errs)
		if code != exitDone && code != exitNoAnswer {
			t.Errorf("pourwell %s: exit code %d: %s", line, code, &errs)
		}
		want := "console\n$ pourwell " + line + "\n" + out.String() + errs.String()
		if *update {
			blocks[i] = want
		} else if diff := cmp.Diff(want, block); diff != "" {
			t.Errorf("pourwell %s prints other than the README shows (go test ./cmd/pourwell -run README -update):\n%s", line, diff)
		}
		runs++
	}
	if runs == 0 {
		t.Fatal("no console block found")
	}
	if *update {
		if err := os.WriteFile("README.md", []byte(strings.Join(blocks, "```")), 0o644); err != nil {
			t.Fatal(err)
		}
	}
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
