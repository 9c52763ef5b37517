package main

import (
	"bytes"
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"
)

// TestEventEqualsCommands runs the command line that the plan of the meadow
// party names for each of its numbers, and compares.
func TestEventEqualsCommands(t *testing.T) {
	var plan struct {
		Results map[string]any `json:"results"`
	}
	decode(t, &plan, "event", "../../testdata/meadow-party.toml", "--format", "json")
	commands, _ := plan.Results["commands"].([]any)
	if len(commands) < 8 {
		t.Fatalf("the plan names %d commands", len(commands))
	}
	for _, c := range commands {
		entry := c.(map[string]any)
		answers, key := entry["answers"].(string), entry["key"].(string)
		line := strings.TrimPrefix(entry["line"].(string), "pourwell ")
		var single struct {
			Results map[string]any `json:"results"`
		}
		decode(t, &single, append(split(line), "--format", "json")...)
		want, ok := at(plan.Results, answers).(float64)
		if !ok {
			t.Errorf("the plan has no number at %s", answers)
			continue
		}
		got, ok := single.Results[key].(float64)
		if !ok || math.Abs(got-want) > 1e-9*math.Max(1, math.Abs(want)) {
			t.Errorf("%s is %v in the plan; %s of pourwell %s is %v", answers, want, key, line, single.Results[key])
		}
	}
}

// decode runs the command and reads its JSON.
func decode(t *testing.T, into any, args ...string) {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(args, strings.NewReader(""), &out, &errs); code != exitDone {
		t.Fatalf("pourwell %v: exit code %d: %s", args, code, &errs)
	}
	if err := json.Unmarshal(out.Bytes(), into); err != nil {
		t.Fatalf("pourwell %v: %v", args, err)
	}
}

// at follows a path such as beers.0.gauge_kpa.
func at(v any, path string) any {
	for step := range strings.SplitSeq(path, ".") {
		switch x := v.(type) {
		case map[string]any:
			v = x[step]
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i >= len(x) {
				return nil
			}
			v = x[i]
		default:
			return nil
		}
	}
	return v
}
