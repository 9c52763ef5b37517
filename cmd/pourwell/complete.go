package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/cmd/pourwell/internal/catalog"
	"example.com/pourwell/internal/quantity"
)

// complete answers a shell that asks what may come next, and reports whether
// one did: it says so by COMP_LINE, the line typed, and COMP_POINT, where in it.
// Bash and zsh give the command's name and the word under way as arguments.
func complete(w io.Writer, args []string) bool {
	line := os.Getenv("COMP_LINE")
	if line == "" {
		return false
	}
	if at, err := strconv.Atoi(os.Getenv("COMP_POINT")); err == nil && 0 <= at && at < len(line) {
		line = line[:at]
	}
	words := strings.Fields(line)
	if len(words) == 0 || strings.TrimRight(line, " \t") != line {
		words = append(words, "")
	}
	word := words[len(words)-1]
	// A shell that breaks words at = or : replaces the part behind it alone.
	kept := 0
	if len(args) > 1 && strings.HasSuffix(word, args[1]) {
		kept = len(word) - len(args[1])
	}
	for _, c := range candidates(words[1:max(1, len(words)-1)], word) {
		if strings.HasPrefix(c, word) {
			_, _ = fmt.Fprintln(w, c[kept:]) // a shell that is gone needs no answer
		}
	}
	return true
}

// candidates returns what may stand for word behind the words typed.
func candidates(typed []string, word string) []string {
	var path []string // commands and their arguments, without flags
	var under *offer  // the flag whose value comes next
	for _, t := range typed {
		switch name, isFlag := strings.CutPrefix(t, "--"); {
		case isFlag:
			under = flagCalled(path, name)
		case under != nil:
			under = nil
		default:
			path = append(path, t)
		}
	}
	if name, value, ok := strings.Cut(word, "="); ok && strings.HasPrefix(name, "--") {
		var all []string
		if under = flagCalled(path, name[2:]); under != nil {
			for _, c := range under.values(value) {
				all = append(all, name+"="+c)
			}
		}
		return all
	}
	if strings.HasPrefix(word, "-") {
		var all []string
		for _, o := range flagsAt(path) {
			all = append(all, "--"+o.flag)
		}
		return all
	}
	if under != nil {
		return under.values(word)
	}
	return commandsAt(path, word)
}

// commandsAt returns the commands and arguments that may follow path.
func commandsAt(path []string, word string) []string {
	switch {
	case len(path) == 0:
		return commands()
	case path[0] == "help" && len(path) == 1:
		return slices.Concat(commands(), topicNames())
	case path[0] == "event" && len(path) == 1:
		return files(word, []string{"toml"})
	case path[0] == "help":
		path = path[1:]
	}
	if len(path) == 1 {
		return names(path[0])
	}
	return nil
}

// An offer is what a flag may be completed with.
type offer struct {
	flag  string
	alone bool // takes no value
	words []string
	files []string // extensions
}

func (o *offer) values(word string) []string {
	if o.files != nil {
		return files(word, o.files)
	}
	return o.words
}

// flagCalled returns the flag if it is one that takes a value.
func flagCalled(path []string, name string) *offer {
	for _, o := range flagsAt(path) {
		if o.flag == name && !o.alone {
			return &o
		}
	}
	return nil
}

// flagsAt returns the flags of the command that path names.
func flagsAt(path []string) []offer {
	var all []offer
	if len(path) > 1 {
		if c := catalog.Find(path[0], path[1]); c != nil {
			for _, in := range c.AllInputs() {
				all = append(all, offerOf(&in))
			}
		}
	}
	if len(path) > 0 && path[0] == "event" {
		all = append(all, offer{flag: "sample", alone: true})
	}
	t := reflect.TypeFor[globals]()
	for _, name := range globalNames {
		f, _ := t.FieldByNameFunc(func(s string) bool { return strings.EqualFold(s, name) })
		o := offer{flag: name, alone: f.Type == boolType}
		if enum := f.Tag.Get("enum"); enum != "" {
			o.words = strings.Split(enum, ",")
		}
		if ext := f.Tag.Get("files"); ext != "" {
			o.files = strings.Split(ext, ",")
		}
		all = append(all, o)
	}
	return all
}

func offerOf(in *calc.Input) offer {
	o := offer{flag: in.Name, alone: in.Kind == quantity.Switch, words: in.Choices}
	switch {
	case in.Named != "":
		o.words = calc.Names(in.Named)
	case in.Name == "log":
		o.files = []string{"csv"}
	}
	return o
}

// files returns the files that word may become, and the folders that may hold
// them; of a single folder, what is in it, so that the shell goes on.
func files(word string, extensions []string) []string {
	folder, start := filepath.Split(word)
	entries, _ := os.ReadDir(cmp.Or(folder, ".")) // a folder that cannot be read has nothing to offer
	var found []string
	for _, e := range entries {
		name := e.Name()
		switch {
		case !strings.HasPrefix(name, start) || start == "" && name[0] == '.':
		case e.IsDir():
			found = append(found, folder+name+"/")
		case slices.Contains(extensions, strings.TrimPrefix(filepath.Ext(name), ".")):
			found = append(found, folder+name)
		}
	}
	if len(found) == 1 && strings.HasSuffix(found[0], "/") {
		if inside := files(found[0], extensions); inside != nil {
			return inside
		}
	}
	return found
}

const helpCompletion = `Put the line of your shell into its start-up file.

  bash   complete -C pourwell pourwell
  zsh    autoload -U +X bashcompinit && bashcompinit
         complete -C pourwell pourwell
  fish   function __pourwell
             set -lx COMP_LINE (commandline -cp)
             test -z (commandline -ct); and set COMP_LINE "$COMP_LINE "
             pourwell
         end
         complete -f -c pourwell -a "(__pourwell)"
`
