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

func (s *schema) word(path string, rule map[string]any, word string, arg, v any) string {
	wrong := func(format string, args ...any) string { return path + ": " + fmt.Sprintf(format, args...) }
	object, isObject := v.(map[string]any)
	text, isText := v.(string)
	switch word {
	case "$schema", "$defs", "title", "description":
	case "$ref":
		name := strings.TrimPrefix(arg.(string), "#/$defs/")
		return s.at(path, s.root["$defs"].(map[string]any)[name].(map[string]any), v)
	case "oneOf", "anyOf":
		var all []string
		for _, r := range arg.([]any) {
			if w := s.at(path, r.(map[string]any), v); w != "" {
				all = append(all, w)
			}
		}
		if fits := len(arg.([]any)) - len(all); fits == 0 || word == "oneOf" && fits != 1 {
			return wrong("fits %d of %s: %s", fits, word, strings.Join(all, "; "))
		}
	case "type":
		if !hasType(arg, v) {
			return wrong("%v is not %v", v, arg)
		}
	case "const":
		if !reflect.DeepEqual(arg, v) {
			return wrong("%v is not %v", v, arg)
		}
	case "minimum":
		if n, ok := v.(float64); ok && n < arg.(float64) {
			return wrong("%v is below %v", n, arg)
		}
	case "minLength":
		if isText && utf8.RuneCountInString(text) < int(arg.(float64)) {
			return wrong("%q is too short", text)
		}
	case "pattern":
		if isText && !regexp.MustCompile(arg.(string)).MatchString(text) {
			return wrong("%q does not match %v", text, arg)
		}
	case "required":
		for _, name := range arg.([]any) {
			if _, ok := object[name.(string)]; isObject && !ok {
				return wrong("has no %v", name)
			}
		}
	case "propertyNames":
		for name := range object {
			if w := s.at(path+"/"+name, arg.(map[string]any), name); w != "" {
				return w
			}
		}
	case "properties":
		for name, r := range arg.(map[string]any) {
			if member, ok := object[name]; ok {
				if w := s.at(path+"/"+name, r.(map[string]any), member); w != "" {
					return w
				}
			}
		}
	case "additionalProperties":
		known, _ := rule["properties"].(map[string]any)
		for name, member := range object {
			if _, ok := known[name]; ok {
				continue
			}
			r, ok := arg.(map[string]any)
			if !ok {
				return wrong("has the unknown key %q", name)
			}
			if w := s.at(path+"/"+name, r, member); w != "" {
				return w
			}
		}
	case "items":
		list, _ := v.([]any)
		for i, member := range list {
			if w := s.at(fmt.Sprintf("%s/%d", path, i), arg.(map[string]any), member); w != "" {
				return w
			}
		}
	default:
		return wrong("the checker does not know the word %q", word)
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
