package chart

import (
	"path/filepath"
	"strings"
)

// Format returns the format that the name of a file asks for, "svg" or "png",
// "" if it is neither.
func Format(name string) string {
	switch f := strings.ToLower(strings.TrimPrefix(filepath.Ext(name), ".")); f {
	case "svg", "png":
		return f
	}
	return ""
}
