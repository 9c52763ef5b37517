package report

import (
	"io"
	"strings"
)

// ascii spells the letters pourwell uses beyond ASCII.
var ascii = strings.NewReplacer(
	"°F", "F", "°C", "C", "°", "deg", "±", "+-", "²", "2", "³", "3", "·", "*", "×", "x", "−", "-", "–", "-",
	"µ", "u", "μ", "u", "ρ", "rho", "β", "beta", "φ", "phi", "δ", "delta", "ε", "eps",
	"τ", "tau", "γ", "gamma", "σ", "sigma", "α", "alpha", "ν", "nu", "λ", "lambda", "ξ", "xi", "η", "eta",
	"π", "pi", "θ", "theta", "∞", "inf", "≤", "<=", "≥", ">=", "…", "...", "√", "sqrt", "é", "e", "ö", "oe", "ä", "ae", "ü", "ue",
	"Σ", "sum", "∫", "integral", "′", "'", "©", "(c)", "″", "\"", "₂", "2", "½", "1/2", "⅓", "1/3", "⅔", "2/3", "¼", "1/4", "¾", "3/4", "ṁ", "m", "ω", "omega", "ψ", "psi", "χ", "chi", "κ", "kappa", "ζ", "zeta",
	"Λ", "Lambda", "Ω", "Omega", "Φ", "Phi", "Θ", "Theta", "₀", "0", "₁", "1", "₃", "3", "⁻", "-", "¹", "1", "⁴", "4", "⋅", "*", "≈", "~", "≠", "!=",
	"∂", "d", "’", "'", "‘", "'", "“", "\"", "”", "\"", "ß", "ss", "⌊", "[", "⌋", "]", "⌈", "[", "⌉", "]", "è", "e", "ñ", "n", "Δ", "d", "→", "->",
)

// letters spells s for the reader's terminal. Layout counts on it: what is
// written later is as long as what it measured.
func (p *printer) letters(s string) string {
	if p.opt.ASCII {
		return ascii.Replace(s)
	}
	return s
}

// Plain returns a writer that spells other letters in ASCII if on is true, else
// w itself. Each write must hold whole letters.
func Plain(w io.Writer, on bool) io.Writer {
	if on {
		return asciiWriter{w}
	}
	return w
}

// asciiWriter expects whole letters in each write, as a bufio.Writer flushed
// once gives them.
type asciiWriter struct{ w io.Writer }

func (a asciiWriter) Write(b []byte) (int, error) {
	plain := strings.Map(func(r rune) rune {
		if r > 126 {
			return '?' // a letter that the list above lacks
		}
		return r
	}, ascii.Replace(string(b)))
	if _, err := io.WriteString(a.w, plain); err != nil {
		return 0, err
	}
	return len(b), nil
}
