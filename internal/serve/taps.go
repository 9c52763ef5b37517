package serve

func (p *planner) taps() error      { return nil }
func (p *planner) queue() Point     { return Point{Holds: true, What: "x"} }
func (p *Plan) tapSentence() string { return "" }
