package plan

import (
	_ "embed"

	"example.com/pourwell/internal/quantity"
)

// Sample is a file to start from: an invented day.
//
//go:embed sample.toml
var Sample string

// Document wraps the plan in the form that every calculation has in JSON, but
// for steps and bands: each number of the plan names the command that has them.
func Document(file string, p *Plan, sys quantity.System) any {
	plan := p.InUnits(sys)
	return struct {
		Schema      int               `json:"schema"`
		Calculation string            `json:"calculation"`
		Inputs      map[string]string `json:"inputs"`
		Answer      string            `json:"answer"`
		Results     Plan              `json:"results"`
		Assumptions []string          `json:"assumptions"`
		Notes       []string          `json:"notes"`
		Cautions    []string          `json:"cautions"`
	}{
		Schema: 1, Calculation: "event", Inputs: map[string]string{"file": file}, Answer: plan.Verdict.Summary,
		Results: plan, Assumptions: plan.Assumptions, Notes: []string{}, Cautions: plan.Cautions,
	}
}

// Rows returns the hours of all tubs as a table under a header of keys.
func (p *Plan) Rows() (head []string, rows [][]any) {
	for _, c := range p.Cooling {
		for _, h := range c.Hours {
			rows = append(rows, []any{c.Beer, h.At, h.Beer, h.Upper, h.Bath, h.Ice, h.Left})
		}
	}
	return []string{"beer", "at", "temperature_c", "upper_c", "bath_c", "ice_left_kg", "beer_left_l"}, rows
}
