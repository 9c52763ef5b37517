package main

import (
	"encoding/json"
	"fmt"
	"os"
	"reflect"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"
)

// A schema checks values against testdata/result.schema.json. It knows the
// words of JSON Schema that the file uses, and refuses others, so that none of
// them is passed over.
type schema struct{ root map[string]any }

func readSchema(t *testing.T) *schema {
	t.Helper()
	data, err := os.ReadFile("../../testdata/result.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	s := &schema{}
	if err := json.Unmarshal(data, &s.root); err != nil {
		t.Fatal(err)
	}
	return s
}

// check returns what is wrong with v, "" if it is as the schema says.
func (s *schema) check(v any) string { return s.at("", s.root, v) }

func (s *schema) at(path string, rule map[string]any, v any) string {
	for word, arg := range rule {
		if wrong := s.word(path, rule, word, arg, v); wrong != "" {
			return wrong
		}
	}
	return ""
}

// word checks one word of a rule: those that look into a value here, and those
// of the value itself in plain.
func (s *schema) word(path string, rule map[string]any, word string, arg, v any) string {
	object, _ := v.(map[string]any)
	switch word {
	case "$ref":
		name := strings.TrimPrefix(arg.(string), "#/$defs/")
		return s.at(path, s.root["$defs"].(map[string]any)[name].(map[string]any), v)
	case "oneOf", "anyOf":
		return s.some(path, word, arg.([]any), v)
	case "propertyNames":
		return each(object, func(name string, _ any) string { return s.at(path+"/"+name, arg.(map[string]any), name) })
	case "properties":
		return each(object, func(name string, member any) string {
			if r, ok := arg.(map[string]any)[name]; ok {
				return s.at(path+"/"+name, r.(map[string]any), member)
			}
			return ""
		})
	case "additionalProperties":
		known, _ := rule["properties"].(map[string]any)
		return each(object, func(name string, member any) string {
			if _, ok := known[name]; ok {
				return ""
			}
			if r, ok := arg.(map[string]any); ok {
				return s.at(path+"/"+name, r, member)
			}
			return fmt.Sprintf("%s: has the unknown key %q", path, name)
		})
	case "items":
		list, _ := v.([]any)
		for i, member := range list {
			if w := s.at(fmt.Sprintf("%s/%d", path, i), arg.(map[string]any), member); w != "" {
				return w
			}
		}
		return ""
	}
	if wrong := plain(word, arg, v); wrong != "" {
		return path + ": " + wrong
	}
	return ""
}

// some checks that v fits one of the rules, or at least one.
func (s *schema) some(path, word string, rules []any, v any) string {
	var all []string
	for _, r := range rules {
		if w := s.at(path, r.(map[string]any), v); w != "" {
			all = append(all, w)
		}
	}
	if fits := len(rules) - len(all); fits == 0 || word == "oneOf" && fits != 1 {
		return fmt.Sprintf("%s: fits %d of %s: %s", path, fits, word, strings.Join(all, "; "))
	}
	return ""
}

// each returns the first thing wrong with a member of an object.
func each(object map[string]any, check func(name string, member any) string) string {
	for name, member := range object {
		if w := check(name, member); w != "" {
			return w
		}
	}
	return ""
}

// plain checks the words that are about v alone.
func plain(word string, arg, v any) string {
	object, isObject := v.(map[string]any)
	text, isText := v.(string)
	number, isNumber := v.(float64)
	switch word {
	case "$schema", "$defs", "title", "description":
	case "type":
		if !hasType(arg, v) {
			return fmt.Sprintf("%v is not %v", v, arg)
		}
	case "const":
		if !reflect.DeepEqual(arg, v) {
			return fmt.Sprintf("%v is not %v", v, arg)
		}
	case "minimum":
		if isNumber && number < arg.(float64) {
			return fmt.Sprintf("%v is below %v", number, arg)
		}
	case "minLength":
		if isText && utf8.RuneCountInString(text) < int(arg.(float64)) {
			return fmt.Sprintf("%q is too short", text)
		}
	case "pattern":
		if isText && !regexp.MustCompile(arg.(string)).MatchString(text) {
			return fmt.Sprintf("%q does not match %v", text, arg)
		}
	case "required":
		for _, name := range arg.([]any) {
			if _, ok := object[name.(string)]; isObject && !ok {
				return fmt.Sprintf("has no %v", name)
			}
		}
	default:
		return fmt.Sprintf("the checker does not know the word %q", word)
	}
	return ""
}

func hasType(arg, v any) bool {
	if all, ok := arg.([]any); ok {
		for _, one := range all {
			if hasType(one, v) {
				return true
			}
		}
		return false
	}
	switch x := v.(type) {
	case nil:
		return arg == "null"
	case bool:
		return arg == "boolean"
	case string:
		return arg == "string"
	case float64:
		return arg == "number" || arg == "integer" && x == float64(int64(x))
	case []any:
		return arg == "array"
	case map[string]any:
		return arg == "object"
	}
	return false
}

// TestSchemaRefuses checks the checker: each of these breaks one rule.
func TestSchemaRefuses(t *testing.T) {
	s := readSchema(t)
	good := `{"schema":1,"calculation":"thermal keg","inputs":{},"answer":"","results":{"time_s":1},"steps":[],"bands":{},"assumptions":[],"notes":[],"cautions":[]}`
	var v any
	if err := json.Unmarshal([]byte(good), &v); err != nil {
		t.Fatal(err)
	}
	if wrong := s.check(v); wrong != "" {
		t.Fatal(wrong)
	}
	for _, change := range [][2]string{
		{`"schema":1`, `"schema":2`}, {`"thermal keg"`, `"toaster"`}, {`"time_s":1`, `"Time":1`}, {`"time_s":1`, `"time_s":true`},
		{`"notes":[]`, `"notes":[""]`}, {`"bands":{}`, `"bands":{"time_s":{"low":1}}`}, {`"inputs":{},`, ``}, {`"answer":""`, `"answer":"","extra":1`},
	} {
		if err := json.Unmarshal([]byte(strings.Replace(good, change[0], change[1], 1)), &v); err != nil {
			t.Fatal(err)
		}
		if s.check(v) == "" {
			t.Errorf("%s for %s passes", change[1], change[0])
		}
	}
}
