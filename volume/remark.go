package volume

// A Remark is a sentence that a result carries beside its numbers: what can
// hurt someone, or physics that the answer rests on. Results list the former in
// Cautions, the latter in Notes.
type Remark struct {
	Code     Code
	Severity Severity
	Text     Sentence
}

// A Code says what a remark is about, for a program that looks for one. Each
// package lists those of its results.
type Code string

// The severities, each above the one before it.
const (
	Note    Severity = iota // physics that the answer rests on, or what it leaves out
	Caution                 // somebody can come to harm where it is not minded
	Danger                  // what was given is beyond a rating or a limit: do not do it
)

// A Severity says how much depends on a remark.
type Severity uint8

// String returns the severity as a word: "note", "caution" or "danger".
func (s Severity) String() string {
	return [...]string{"note", "caution", "danger"}[min(s, Danger)]
}
