package plan

import (
	"fmt"
	"math"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"gonum.org/v1/gonum/unit"
)

// A Chiller cools the beer on its way to the tap, in a coil or a plate in an
// ice box; the kegs stand outside it.
type Chiller struct {
	Kind    string      `toml:"kind"`    // coil or plate
	Tube    string      `toml:"tube"`    // of the coil, as tubes are written
	Bath    string      `toml:"bath"`    // of the coil: still, packed or pumped
	Contact string      `toml:"contact"` // of the plate: pressed, loose or flooded
	Ice     mass        `toml:"ice"`     // in the box at the start
	BoxUA   conductance `toml:"box_ua"`  // heat that the box lets in for each kelvin
}

// coldAhead is how long before the first glass the box is filled.
const coldAhead = time.Hour

// assumeChiller fills in what the file leaves out of a chiller.
func (p *planner) assumeChiller(b *Beer) error {
	c := &b.Chiller
	of := b.Name + ": "
	switch c.Kind {
	case "", "coil", "plate":
	default:
		return &FileError{p.file, 0, fmt.Sprintf("%schiller.kind %q is neither coil nor plate", of, c.Kind), `write kind = "coil"`}
	}
	if c.Kind == "coil" && c.Tube == "" {
		c.Tube = "1/4in-od:50ft:wall0.71mm:coil20cm:stainless"
		p.note(of + "a coil of 1/4 in outside diameter and {15.24 m}")
	}
	if c.Kind == "coil" && c.Bath == "" {
		c.Bath = "packed"
		p.note(of + "ice packed tight around the coil, the gaps full of water")
	}
	if c.Kind == "plate" && c.Contact == "" {
		c.Contact = "pressed"
		p.note(of + "crushed ice pressed on the plate, the melt water drained")
	}
	if c.Kind != "" {
		// Assumed: a foam chest was measured at 0.53 to 0.56 W/K (secondary
		// source); lids are opened at a party.
		p.number(&c.BoxUA.quantityOf, 0.8, of+"an insulated ice box of {0.8 w_per_k}")
	}
	return nil
}

// coil returns the bath of the beer's chiller as thermal sees it, the tube left
// to lines.
func (b *Beer) coil(beer thermal.Beer) (thermal.Coil, error) {
	coil := thermal.DefaultCoil()
	coil.Beer = beer
	switch b.Chiller.Bath {
	case "still":
		return coil.Still(), nil
	case "packed":
		return coil.Packed(), nil
	case "pumped":
		return coil.Pumped(), nil
	}
	return coil, &FileError{File: b.Name, What: fmt.Sprintf("chiller.bath %q is none of still, packed, pumped", b.Chiller.Bath), Hint: `write bath = "packed"`}
}

func (b *Beer) plate(beer thermal.Beer) (thermal.Plate, error) {
	plate := thermal.DefaultPlate()
	plate.Beer = beer
	switch b.Chiller.Contact {
	case "pressed":
		return plate.Pressed(), nil
	case "loose":
		return plate.Loose(), nil
	case "flooded":
		return plate.Flooded(), nil
	}
	return plate, &FileError{File: b.Name, What: fmt.Sprintf("chiller.contact %q is none of pressed, loose, flooded", b.Chiller.Contact), Hint: `write contact = "pressed"`}
}

// serving describes the warm keg's gas and the bath around the coil.
func (p *planner) serving(b *Beer, set carbonation.Gauge, beer thermal.Beer) (lines.Serving, error) {
	s := lines.DefaultServing(set, b.CO2)
	s.Air = p.air
	if b.Chiller.Kind == "coil" {
		coil, err := b.coil(beer)
		if err != nil {
			return s, err
		}
		s.Chiller = coil
	}
	return s, nil
}

// chilled asks how beer i comes through its chiller at the pace of a queue, and
// how much ice that takes.
func (p *planner) chilled(i int) error {
	b := &p.day.Beers[i]
	beer, err := b.liquid()
	if err != nil {
		return err
	}
	pours := p.pace(i)
	var s thermal.Service
	c := Cooling{Beer: b.Name, ServeAt: b.ServeAt.Celsius(), Sure: true, Warmest: math.NaN(), TopUps: []TopUp{}, Hours: []Hour{}}
	out := &Chilled{Kind: b.Chiller.Kind, Tube: b.Chiller.Tube}
	c.Chiller = out
	switch b.Chiller.Kind {
	case "coil":
		coil, err := p.coilOf(b, beer)
		if err != nil {
			return err
		}
		out.State = b.Chiller.Bath
		if s, err = coil.Serve(p.keeps[i], pours); err != nil {
			return err
		}
		p.command(fmt.Sprintf("cooling.%d.chiller.tenth_glass_c", i), "tenth_glass_c",
			"thermal coil --length %vm --bore %vm --wall %vm --winding %vm --bath %s --inlet %vC --flow %vL/s --glass %vL --every %vs %s",
			float64(coil.Length), float64(coil.Bore), float64(coil.Wall), float64(coil.Winding), b.Chiller.Bath, p.keeps[i].Celsius(),
			1000*float64(pours.Flow), 1000*float64(pours.Glass), pours.Every.Seconds(), b.flags())
	case "plate":
		plate, err := b.plate(beer)
		if err != nil {
			return err
		}
		out.State = b.Chiller.Contact
		if s, err = plate.Serve(p.keeps[i], pours); err != nil {
			return err
		}
		p.command(fmt.Sprintf("cooling.%d.chiller.tenth_glass_c", i), "tenth_glass_c",
			"thermal plate --contact %s --inlet %vC --flow %vL/s --glass %vL --every %vs %s",
			b.Chiller.Contact, p.keeps[i].Celsius(), 1000*float64(pours.Flow), 1000*float64(pours.Glass), pours.Every.Seconds(), b.flags())
	}
	out.First, out.Tenth, out.Outlet = s.First.Celsius(), s.Last.Celsius(), s.Sustained.Celsius()
	out.Recovery = s.Recovery.Seconds()
	iced, err := p.boxIce(i, &c, s)
	if err != nil {
		return err
	}
	if b.Chiller.Kind == "plate" {
		plate, _ := b.plate(beer)
		if due, err := plate.DrainDue(p.keeps[i], p.typical(i), unit.Mass(c.Ice)); err == nil {
			out.DrainDue = due.Seconds()
		}
	}
	c.Warmest, out.Iced = out.Tenth, iced
	c.Holds = iced && out.Tenth <= c.ServeAt+coldNear
	bed := p.start.Add(-coldAhead)
	c.BedAt, c.ReadyAt = p.dayClock(bed), p.dayClock(p.start)
	p.beds = append(p.beds, bed)
	p.plan.Cooling = append(p.plan.Cooling, c)
	p.heed(b.Name, s.Cautions())
	return nil
}

// coilOf returns the coil with the tube of the file.
func (p *planner) coilOf(b *Beer, beer thermal.Beer) (thermal.Coil, error) {
	coil, err := b.coil(beer)
	if err != nil {
		return coil, err
	}
	var t lines.Tube
	if err := t.UnmarshalText([]byte(b.Chiller.Tube)); err != nil {
		return coil, &FileError{p.file, 0, fmt.Sprintf("%s: chiller.tube %v", b.Name, err), `write tube = "1/4in-od:50ft:wall0.71mm:coil20cm"`}
	}
	coil.Length, coil.Bore, coil.Winding = t.Length, t.Bore, t.Coil
	if t.Wall > 0 {
		coil.Wall = t.Wall
	}
	return coil, nil
}

// warmLine fills in how a warm keg's line pours through its chiller.
func (p *planner) warmLine(i int, g carbonation.Gauge, run lines.Run, plan *LinePlan) error {
	b := &p.day.Beers[i]
	s, err := p.serving(b, g, run.Beer)
	if err != nil {
		return err
	}
	passage := lines.Tube{}
	if b.Chiller.Kind == "coil" {
		err = passage.UnmarshalText([]byte(b.Chiller.Tube))
	} else {
		plate := thermal.DefaultPlate()
		passage.Length, passage.Bore = plate.Passage, plate.Bore
	}
	if err != nil {
		return &FileError{p.file, 0, fmt.Sprintf("%s: chiller.tube %v", b.Name, err), `write tube = "1/4in-od:50ft:wall0.71mm:coil20cm"`}
	}
	run.Tubes = append([]lines.Tube{passage}, run.Tubes...)
	run.Temp, run.Rated = p.keeps[i], b.Keg.vessel().Rated
	warm, err := run.Warm(s)
	if err != nil {
		return err
	}
	plan.Flow, plan.PourTime = warm.Pour.Flow.LitresPerMinute(), warm.Pour.TimeFor(p.pours[i]).Seconds()
	plan.Choker = float64(warm.Choker)
	low := run
	low.Full = 0
	if empty, err := low.Warm(s); err == nil {
		plan.FlowEmpty = empty.Pour.Flow.LitresPerMinute()
	}
	p.heed(b.Name, warm.Cautions())
	return nil
}

func (c *Cooling) chillerSentence() string {
	x := c.Chiller
	s := fmt.Sprintf("First glass {%.6g c}, the tenth in a row {%.6g c}, without a pause {%.6g c}; a rest of {%.6g s} brings it back."+
		" Beer melts {%.6g kg} of ice, the box {%.6g kg}.", x.First, x.Tenth, x.Outlet, x.Recovery, x.BeerIce, x.BoxIce)
	switch {
	case x.Kind == "plate" && x.DrainDue > 0:
		s += fmt.Sprintf(" Keep the drain open; shut, let the water off at the latest {%.6g s} after the first glass.", x.DrainDue)
	case x.Kind == "coil":
		s += " Keep the water in the box: it carries the cold to the coil."
	}
	return s
}
