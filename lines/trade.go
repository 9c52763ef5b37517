package lines

import (
	"cmp"
	"fmt"
	"math"

	"example.com/pourwell/carbonation"
	"gonum.org/v1/gonum/unit"
)

// A tradeRow is one row of the restriction tables that the trade balances by.
type tradeRow struct {
	List     string      // "handbook", "older trade list" or "installation manual"
	Material string      // as in [Tube]
	Bore     unit.Length // inside, as the table takes it
	OD       unit.Length // outside, where the tube is sold by it, else 0
	Loss     Gradient    // at about 1 US gal/min, whatever else flows
	Other    Gradient    // what another list of the trade gives for the same tube, 0 if none does
	Source   string      // "published", "practice" or "from memory"
}

// perFootOfRise is what the trade subtracts for each foot of rise; the weight
// of beer gives 0.437. Source: Brewers Association, Draught Beer Quality
// Manual (2009), as quoted in trade texts.
const perFootOfRise = 0.5 * PSIPerFoot

// The restriction table. Sources: handbook, Brewers Association, Draught Beer
// Quality Manual (2009), tubing table, cells confirmed one by one where trade
// texts quote them, the rest from memory; older trade list and installation manual,
// trade tables whose authors are not named.
var tradeTable = [...]tradeRow{
	{"handbook", "vinyl", 3 * Inch / 16, 0, 3.00 * PSIPerFoot, 2.2 * PSIPerFoot, "published"},
	{"handbook", "vinyl", Inch / 4, 0, 0.85 * PSIPerFoot, 0, "published"},
	{"handbook", "vinyl", 5 * Inch / 16, 0, 0.40 * PSIPerFoot, 0, "published"},
	{"handbook", "vinyl", 3 * Inch / 8, 0, 0.20 * PSIPerFoot, 0.11 * PSIPerFoot, "published"},
	{"handbook", "vinyl", Inch / 2, 0, 0.025 * PSIPerFoot, 0, "published"},
	{"handbook", "barrier", Inch / 4, 0, 0.30 * PSIPerFoot, 0, "from memory"},
	{"handbook", "barrier", 5 * Inch / 16, 0, 0.10 * PSIPerFoot, 0, "published"},
	{"handbook", "barrier", 3 * Inch / 8, 0, 0.06 * PSIPerFoot, 0.07 * PSIPerFoot, "from memory"},
	{"handbook", "stainless", 3 * Inch / 16, Inch / 4, 1.20 * PSIPerFoot, 2.0 * PSIPerFoot, "from memory"},
	{"handbook", "stainless", Inch / 4, 5 * Inch / 16, 0.30 * PSIPerFoot, 0.5 * PSIPerFoot, "published"},
	{"handbook", "stainless", 5 * Inch / 16, 3 * Inch / 8, 0.12 * PSIPerFoot, 0.2 * PSIPerFoot, "published"},
	{"older trade list", "polyethylene", 3 * Inch / 16, 0, 2.20 * PSIPerFoot, 0, "practice"},
	{"older trade list", "polyethylene", Inch / 4, 0, 0.50 * PSIPerFoot, 0, "practice"},
	{"installation manual", "supply", 3 * Inch / 8, 0, 0.07 * PSIPerFoot, 0, "practice"},
}

// Restriction returns what the trade's table gives for the tube, at about 1 US
// gal/min; see [Run.TradeGauge].
//
// It returns an error that wraps [ErrNoSolution] and NaN if the table has no row
// for it.
func (t Tube) Restriction() (Gradient, error) {
	row, ok := findRow(t)
	if !ok {
		return Gradient(nan), noRow("lines.Tube.Restriction", t)
	}
	return row.Loss, nil
}

func noRow(fn string, t Tube) error {
	return noSolution(fn, "the trade's table has no row for %s of {%.5g mm} bore", tradeMaterial(t), float64(t.Bore/Millimetre))
}

// A TradeBalance is a run balanced by the trade's table of restriction. It
// stands beside a [Pour], never mixed with it: the table knows no flow, no
// viscosity, no fitting and no tap.
type TradeBalance struct {
	Gauge       carbonation.Gauge // applied
	Length      unit.Length       // of the tube [Run.TradeLength] solved for, 0 otherwise
	Restriction unit.Pressure     // of all tubes
	Rise        unit.Pressure     // 0.5 psi per foot

	n       int
	rows    [maxTubes]tradeRow
	lengths [maxTubes]unit.Length
	height  unit.Length // middle of the keg to the tap
	rated   unit.Pressure
	unnamed bool // a tube has no material
	solved  int  // the tube whose length was asked for, -1 for none
}

var invalidTrade = TradeBalance{Length: unit.Length(nan), Restriction: unit.Pressure(nan), Rise: unit.Pressure(nan)}

// TradeGauge returns the applied pressure that balances the run by the trade's
// table: length times loss per foot, plus 0.5 psi per foot of rise from the
// middle of the keg to the tap.
//
//	p = Σ r_i L_i + 0.5 psi/ft · (h + h_keg/2)
//
// The table is read at one flow, about 1 gal/min (2 oz/s). Against the friction
// of a smooth tube at that flow it gives 1.5 to 2.5 times as much for vinyl and
// 0.5 to 0.8 times for barrier and stainless tubing, so the two modes differ by
// as much; perhaps the vinyl figures carry the losses at both ends of a short
// line. One timed glass settles it: see [Run.Calibrate]. Dip tube, fittings,
// hardware, calibration and coiling do not count here.
//
// A tube without a material counts as vinyl. A tube sold by its outside diameter
// is found by it if its wall is given.
//
// It returns a [*RangeError] outside the validity table, and an error that
// wraps [ErrNoSolution] if the table has no row for a tube.
//
// Source: Brewers Association, Draught Beer Quality Manual (2009); gives its
// example back exactly and four of other trade texts within 0.1 psi.
func (r Run) TradeGauge() (TradeBalance, error) {
	b, err := r.trade("lines.Run.TradeGauge", -1)
	if err != nil {
		return invalidTrade, err
	}
	b.Gauge = carbonation.PaG(float64(b.Restriction + b.Rise))
	return b, nil
}

// TradeLength returns the length of r.Tubes[i] that balances the run under the
// applied pressure g by the trade's table; the length it has in r does not
// matter.
//
// Errors are those of [Run.TradeGauge]; an error that wraps [ErrNoSolution] also
// comes if the rest of the run takes more than g.
//
// TradeLength panics if r has no tube i.
func (r Run) TradeLength(i int, g carbonation.Gauge) (TradeBalance, error) {
	const fn = "lines.Run.TradeLength"
	if i < 0 || i >= len(r.Tubes) {
		panic(fmt.Sprintf("%s: no tube %d among %d", fn, i, len(r.Tubes)))
	}
	if err := limitGauge.Check(fn, g.KPa()); err != nil {
		return invalidTrade, err
	}
	b, err := r.trade(fn, i)
	if err != nil {
		return invalidTrade, err
	}
	left := unit.Pressure(g.Pascals()) - b.Restriction - b.Rise
	if left < 0 {
		takes := "the rest of the run takes"
		if b.Restriction == 0 {
			takes = "the rise alone takes"
		}
		return invalidTrade, lacks(fn, float64((b.Restriction+b.Rise)/carbonation.KPa), g.KPa(), "%s {%.5g kpa} by the trade's table; {%.5g kpa} is applied",
			takes, float64((b.Restriction+b.Rise)/carbonation.KPa), g.KPa())
	}
	b.Gauge = g
	b.Length = unit.Length(float64(left) / float64(b.rows[i].Loss))
	b.lengths[i] = b.Length
	b.Restriction += left
	return b, nil
}

// trade sums the restriction of all tubes but the one solved for.
func (r Run) trade(fn string, solved int) (TradeBalance, error) {
	if err := cmp.Or(
		limitTubes.Check(fn, float64(len(r.Tubes))),
		limitRise.Check(fn, float64(r.Rise)),
		limitKegHeight.Check(fn, float64(r.KegHeight)),
		limitRated.Check(fn, float64(r.Rated/carbonation.KPa)),
	); err != nil {
		return invalidTrade, err
	}
	b := TradeBalance{n: len(r.Tubes), height: r.Rise + r.KegHeight/2, solved: solved, rated: r.Rated}
	b.Rise = unit.Pressure(float64(perFootOfRise) * float64(b.height))
	for i, t := range r.Tubes {
		if err := t.check(fn); err != nil {
			return invalidTrade, err
		}
		row, ok := findRow(t)
		if !ok {
			return invalidTrade, noRow(fn, t)
		}
		b.rows[i], b.lengths[i] = row, t.Length
		b.unnamed = b.unnamed || t.Material == ""
		if i != solved {
			b.Restriction += unit.Pressure(float64(row.Loss) * float64(t.Length))
		}
	}
	return b, nil
}

// findRow finds the row of a tube: material and bore within 2 %, or outside
// diameter within 2 %.
func findRow(t Tube) (tradeRow, bool) {
	near := func(a, b unit.Length) bool { return math.Abs(float64(a/b)-1) <= 0.02 }
	material := tradeMaterial(t)
	for _, row := range tradeTable {
		if row.Material != material {
			continue
		}
		if row.OD > 0 && t.Wall > 0 {
			if near(t.Bore+2*t.Wall, row.OD) {
				return row, true
			}
		} else if near(t.Bore, row.Bore) {
			return row, true
		}
	}
	return tradeRow{}, false
}

func tradeMaterial(t Tube) string {
	if t.Material == "" {
		return "vinyl"
	}
	return t.Material
}

// Steps returns the working: the row of each tube, its share, and the rise.
func (b TradeBalance) Steps() []Step {
	var steps []Step
	for i := range b.n {
		n, row := fmt.Sprint(i+1), b.rows[i]
		source := "given"
		if i == b.solved {
			source = "what is left of p over r" + n
		}
		steps = append(steps,
			step("length of tube "+n, "L"+n, float64(b.lengths[i]/Foot), "ft", source),
			step("restriction of tube "+n, "r"+n, float64(row.Loss/PSIPerFoot), "psi_per_ft", row.List+", "+row.Material+" ("+row.Source+")"))
	}
	return append(steps,
		step("restriction of all tubes", "Σ r L", float64(b.Restriction/carbonation.PSI), "psi", "sum"),
		step("rise from the middle of the keg", "h", float64(b.height/Foot), "ft", "given"),
		step("pressure of the rise", "0.5 h", float64(b.Rise/carbonation.PSI), "psi", "0.5 psi per foot, common practice"),
		step("applied pressure, gauge", "p", b.Gauge.PSI(), "psi", "sum"))
}

// Band returns the pressures, or with [Run.TradeLength] the lengths, that
// other tables of the trade lead to; its width is 0 where only one list gives
// the tubes.
func (b TradeBalance) Band() Band {
	low, high := float64(b.Rise), float64(b.Rise)
	for i := range b.n {
		if i != b.solved {
			least, most := b.rows[i].spread()
			low += least * float64(b.lengths[i])
			high += most * float64(b.lengths[i])
		}
	}
	const source = "what the lists of the trade differ by"
	if b.solved < 0 {
		return Band{Name: "applied pressure", Low: low, High: high, Suffix: "pa", Source: source}
	}
	least, most := b.rows[b.solved].spread()
	applied := b.Gauge.Pascals()
	return Band{Name: "length", Low: max(0, (applied-high)/most), High: (applied - low) / least, Suffix: "m", Source: source}
}

// spread returns the least and the greatest loss in Pa/m that a list gives.
func (r tradeRow) spread() (least, most float64) {
	least, most = float64(r.Loss), float64(r.Loss)
	if r.Other > 0 {
		least, most = min(least, float64(r.Other)), max(most, float64(r.Other))
	}
	return least, most
}
