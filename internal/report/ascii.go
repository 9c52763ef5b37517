package report

import (
	"io"
	"strings"
)

// ascii spells the letters pourwell uses beyond ASCII.
var ascii = strings.NewReplacer(
	"°", "deg ", "±", "+-", "²", "2", "³", "3", "·", "*", "×", "x", "−", "-", "–", "-",
	"µ", "u", "μ", "u", "ρ", "rho", "β", "beta", "φ", "phi", "δ", "delta", "Δ", "delta ", "ε", "eps",
	"τ", "tau", "γ", "gamma", "σ", "sigma", "α", "alpha", "ν", "nu", "λ", "lambda", "ξ", "xi", "η", "eta",
	"π", "pi", "θ", "theta", "∞", "inf", "≤", "<=", "≥", ">=", "…", "...", "√", "sqrt", "é", "e", "ö", "oe", "ä", "ae", "ü", "ue",
	"Σ", "sum ", "∫", "integral ", "′", "'", "″", "\"", "₂", "2", "½", "1/2", "→", "->",
)

// plain returns a writer that spells other letters in ASCII, or w itself.
func plain(w io.Writer, on bool) io.Writer {
	if on {
		return asciiWriter{w}
	}
	return w
}

// asciiWriter expects whole letters in each write, as a bufio.Writer flushed
// once gives them.
type asciiWriter struct{ w io.Writer }

func (a asciiWriter) Write(b []byte) (int, error) {
	if _, err := ascii.WriteString(a.w, string(b)); err != nil {
		return 0, err
	}
	return len(b), nil
}
