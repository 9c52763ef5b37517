package plan

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"strings"
	"unicode/utf8"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
	"github.com/pelletier/go-toml/v2"
)

// A FileError reports what is wrong in an event file, and where.
type FileError struct {
	File string
	Line int    // 0 where no line is to blame
	What string // what is wrong
	Hint string // what to write instead
}

// Error returns file, line and what is wrong.
func (e *FileError) Error() string {
	if e.Line == 0 {
		return e.File + ": " + e.What
	}
	return fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.What)
}

// Read reads a day from TOML. name is the file's name in messages. An unknown
// key is an error that names the nearest known one.
func Read(name string, data []byte) (Day, error) {
	var day Day
	data = bytes.TrimPrefix(data, []byte("\ufeff")) // what some editors begin a file with
	switch {
	case len(bytes.TrimSpace(data)) == 0:
		return Day{}, &FileError{name, 0, "is empty", "pourwell event --sample prints a file to start from"}
	case !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0:
		return Day{}, &FileError{name, 0, "is not a text file", "pourwell event --sample prints a file to start from"}
	}
	if err := foreign(name, data); err != nil {
		return Day{}, err
	}
	d := toml.NewDecoder(bytes.NewReader(data)).DisallowUnknownFields()
	if err := d.Decode(&day); err != nil {
		return Day{}, fileError(name, data, err)
	}
	return day, nil
}

// fileError turns an error of the TOML reader into one that a person can act
// on.
func fileError(name string, data []byte, err error) error {
	var missing *toml.StrictMissingError
	if errors.As(err, &missing) && len(missing.Errors) > 0 {
		e := missing.Errors[0]
		line, _ := e.Position()
		key := e.Key()
		return &FileError{name, line, fmt.Sprintf("unknown key %q", strings.Join(key, ".")), nearestKey(key)}
	}
	line := 0
	var at *toml.DecodeError
	if errors.As(err, &at) {
		line, _ = at.Position()
	}
	var text *quantity.Error
	if errors.As(err, &text) {
		if line == 0 {
			line = lineOf(data, text.Text)
		}
		return &FileError{name, line, fmt.Sprintf("%q %s", text.Text, text.What), text.Hint}
	}
	what, hint := splitHint(strings.TrimPrefix(err.Error(), "toml: "))
	if m := misplaced.FindStringSubmatch(what); m != nil {
		what, hint = misplacedValue(m[1], keyOnLine(data, line))
	}
	if strings.HasSuffix(what, "is already defined") {
		hint = "drop one of the two lines"
	}
	return &FileError{name, line, what, hint}
}

// misplaced is what the TOML reader says of a value of another sort than the
// key takes.
var misplaced = regexp.MustCompile(`^cannot decode TOML (.+) into struct field`)

// misplacedValue says that a value of that sort does not go under the key.
func misplacedValue(sort, key string) (what, hint string) {
	what = key + " takes no " + sort
	switch {
	case sort == "local date":
		return what, "a date is text in quotes, for example " + key + ` = "2027-07-17"`
	case strings.HasPrefix(sort, "local") || sort == "datetime":
		return what, "a time is text in quotes, for example " + key + ` = "15:00"`
	case sort == "array":
		return what, "write one value"
	}
	if keys := keysOf(reflect.TypeFor[Day](), []string{key}); len(keys) > 0 {
		return what, fmt.Sprintf("it is a table: write [%s] and below it %s", key, strings.Join(keys, ", "))
	}
	return what, "a line reads key = value, text in quotes"
}

// keyOnLine returns the key that stands on a line of data.
func keyOnLine(data []byte, line int) string {
	lines := strings.Split(string(data), "\n")
	if line < 1 || line > len(lines) {
		return "this"
	}
	key, _, _ := strings.Cut(lines[line-1], "=")
	return strings.TrimSpace(key)
}

// splitHint parts the message of a quantity that the TOML reader has turned
// into text from its hint.
func splitHint(message string) (what, hint string) {
	for _, start := range []string{", for example ", ", write ", ", a US "} {
		if i := strings.Index(message, start); i >= 0 {
			return message[:i], message[i+2:]
		}
	}
	return message, "a line reads key = value, text in quotes"
}

// lineOf returns the first line on which value stands as a bare value. The
// TOML reader gives no position for errors in numbers.
func lineOf(data []byte, value string) int {
	for i, line := range strings.Split(string(data), "\n") {
		_, after, _ := strings.Cut(line, "=")
		after, _, _ = strings.Cut(after, "#")
		if strings.TrimSpace(after) == value {
			return i + 1
		}
	}
	return 0
}

// nearestKey hints at the known key that an unknown one was probably meant to
// be.
func nearestKey(key []string) string {
	known := keysOf(reflect.TypeFor[Day](), key[:len(key)-1])
	return cmp.Or(calc.Suggest(key[len(key)-1], known), "known here: "+strings.Join(known, ", "))
}

// keysOf lists the keys of the table at path below t.
func keysOf(t reflect.Type, path []string) []string {
	for t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	var keys []string
	if t.Kind() != reflect.Struct {
		return nil
	}
	for i := range t.NumField() {
		f := t.Field(i)
		key, ok := f.Tag.Lookup("toml")
		switch {
		case !ok:
		case len(path) == 0:
			keys = append(keys, key)
		case key == path[0]:
			return keysOf(f.Type, path[1:])
		}
	}
	return keys
}
