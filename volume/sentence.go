package volume

import "example.com/pourwell/internal/quantity"

// A Sentence is text that quotes numbers in braces, each with a suffix for its
// unit: {3.4 c}, {82.7 kpa}, {1.5 m}, {9 s}, {3.5 l_per_min}, {0.5 share} and
// the like, or a range, {-1.2..45 c}. String writes them for a reader; a
// program may take them apart.
type Sentence string

// String returns the sentence with its numbers in US units and the metric ones
// in brackets.
func (s Sentence) String() string { return quantity.Say(string(s), quantity.Both) }

// US returns the sentence with its numbers in US units.
func (s Sentence) US() string { return quantity.Say(string(s), quantity.US) }

// Metric returns the sentence with its numbers in metric units.
func (s Sentence) Metric() string { return quantity.Say(string(s), quantity.Metric) }

// say formats a sentence; a braced verb, as in "{%.5g c}", quotes a number.
func say(format string, args ...any) Sentence { return quantity.Sayf[Sentence](format, args...) }
