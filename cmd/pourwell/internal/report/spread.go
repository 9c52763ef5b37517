package report

import (
	"fmt"
	"math"
	"strings"

	"example.com/pourwell/cmd/pourwell/internal/calc"
	"example.com/pourwell/internal/quantity"
)

// bounds writes the rows under an answer that say how sure it is: by the model,
// by the tolerances typed, and by both.
func (p *printer) bounds(key, suffix string, band *calc.Band) [][]string {
	s, spread := p.opt.Spreads.Of(key)
	spread = spread && s.PlusMinus > 0
	var rows [][]string
	switch {
	case band != nil && !spread:
		rows = append(rows, p.span("likely within", suffix, band.Low, band.High))
	case band != nil:
		low, high := together(s, *band)
		rows = append(rows,
			p.span("by the model alone", suffix, band.Low, band.High),
			p.span("by the tolerances alone", suffix, s.Low(), s.High()),
			p.span("by both together", suffix, low, high))
	case spread:
		rows = append(rows, p.span("by the tolerances", suffix, s.Low(), s.High()))
	}
	if spread && s.Sampled != nil {
		rows = append(rows, p.span("by random samples", suffix, s.Sampled.Low, s.Sampled.High))
	}
	return rows
}

// span writes an interval under an answer in the units asked for.
func (p *printer) span(label, suffix string, low, high float64) []string {
	us, metric := quantity.Span(suffix, low, high)
	return append([]string{"  " + label}, oneOf(p.opt.Units, us, metric)...)
}

// spreads says what the tolerances are and which causes most.
func (p *printer) spreads() {
	s := p.opt.Spreads
	if s == nil {
		return
	}
	var given []string
	for _, in := range s.Inputs {
		given = append(given, fmt.Sprintf("%s ± {%v %s}", p.words(in.Name), in.Size, suffixOf(in.Key)))
	}
	text := strings.Join(given, ", ") + ", each holding 95 of 100 values."
	if lead, ok := s.Of(p.out.Lead()); ok {
		text += " " + p.blame(lead)
	}
	if s.Samples > 0 {
		text += fmt.Sprintf(" %d random samples, seed %d", s.Samples, s.Seed)
		if s.Failed > 0 {
			text += fmt.Sprintf("; %d had no answer and are left out", s.Failed)
		}
		text += "."
	}
	p.paragraph("Tolerances: ", text)
}

// blame says which input causes most of the spread.
func (p *printer) blame(s calc.Spread) string {
	label := p.label(s.Key)
	switch {
	case math.IsNaN(s.PlusMinus):
		return "What they make of the " + label + " cannot be told here."
	case s.PlusMinus == 0:
		return "They do not move the " + label + "."
	case len(s.Causes) == 1:
		return fmt.Sprintf("It moves the %s by ± %s.", label, p.plusMinus(s.Key, s.PlusMinus))
	}
	parts := []string{}
	for _, c := range s.Causes[1:] {
		parts = append(parts, fmt.Sprintf("%s %.0f %%", p.words(c.Input), 100*c.Share))
	}
	return fmt.Sprintf("Most of the ± %s in %s comes from %s, %.0f %% of the variance; %s.",
		p.plusMinus(s.Key, s.PlusMinus), label, p.words(s.Causes[0].Input), 100*s.Causes[0].Share, strings.Join(parts, ", "))
}

// plusMinus writes a difference of answers; that of temperatures has no zero.
func (p *printer) plusMinus(key string, v float64) string {
	suffix := suffixOf(key)
	if suffix == "c" {
		suffix = "k"
	}
	return quantity.Show(suffix, v, p.opt.Units)
}

func (p *printer) words(input string) string { return p.in.Calculation().Input(input).Words() }

// spreadsObject holds the tolerances and their effects in JSON. A tolerance on
// a temperature is a difference, in K.
func spreadsObject(s *calc.Spreads, bands []calc.Band) object {
	inputs, results := object{}, object{}
	for _, in := range s.Inputs {
		inputs.add(in.Key, in.Size)
	}
	for _, r := range s.Results {
		by := object{}
		for _, c := range r.Causes {
			by.add(strings.ReplaceAll(c.Input, "-", "_"), c.Share)
		}
		o := object{{"low", r.Low()}, {"high", r.High()}, {"plus_minus", r.PlusMinus}}
		if r.PlusMinus > 0 {
			o.add("most", strings.ReplaceAll(r.Causes[0].Input, "-", "_"))
		}
		o.add("variance_by", by)
		for _, b := range bands {
			if b.Key == r.Key {
				low, high := together(r, b)
				o.add("with_band", object{{"low", low}, {"high", high}})
			}
		}
		if r.Sampled != nil {
			o.add("sampled", object{{"low", r.Sampled.Low}, {"mean", r.Sampled.Mean}, {"high", r.Sampled.High}})
		}
		results.add(r.Key, o)
	}
	all := object{{"inputs", inputs}, {"results", results}}
	if s.Samples > 0 {
		all = append(all, member{"samples", s.Samples}, member{"seed", s.Seed}, member{"failed", s.Failed})
	}
	return all
}

// together returns the spread of an answer and the uncertainty of the model
// taken together, as the root of the sum of squares on each side.
func together(s calc.Spread, b calc.Band) (low, high float64) {
	return s.Within(s.Value - math.Hypot(s.PlusMinus, s.Value-b.Low)), s.Within(s.Value + math.Hypot(s.PlusMinus, b.High-s.Value))
}
