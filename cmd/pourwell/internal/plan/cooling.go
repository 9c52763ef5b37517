package plan

import (
	"errors"
	"fmt"
	"math"
	"time"

	"example.com/pourwell/internal/quantity"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// Choices of the plan, none of them physics.
const (
	slack    = 15 * time.Minute     // ready this long before the first glass
	grain    = 5 * time.Minute      // clock times and courses are told to this
	lowIce   = thermal.UsualReserve // top up when this share of the first ice is left
	earliest = 24 * time.Hour       // nobody beds kegs earlier than this
	unsure   = 1.5                  // times the chilling time, where its band has no far end
	coldNear = 0.05                 // K
)

// cooling asks when each beer's kegs must go into their ice, how beer and ice
// fare until the last glass, and how much ice to add on the way.
func (p *planner) cooling() error {
	for i := range p.day.Beers {
		b := &p.day.Beers[i]
		of := b.Name + ": "
		if b.Chiller.Kind != "" {
			if err := p.chilled(i); err != nil {
				return p.about(b, err)
			}
			continue
		}
		usual := thermal.DefaultIceBath(b.Keg.vessel(), b.Arrives, thermal.Shade(p.day.Air))
		fit, err := p.fit(b)
		if err != nil {
			return p.about(b, err)
		}
		full := math.Floor(float64(fit.Ice)/p.day.Ice.Bag.si) * p.day.Ice.Bag.si
		p.number(&b.Tub.Water.quantityOf, float64(fit.Water), of+fmt.Sprintf("as much water in the tub as fits the gaps in the ice, {%.6g l}", litres(fit.Water)))
		p.number(&b.Tub.Ice.quantityOf, full, of+fmt.Sprintf("as much ice as fits around the kegs, {%.6g kg}", full))
		p.note(of + fmt.Sprintf("ice at {%.6g c}, water in the tub at first {%.6g c}", usual.IceFrom.Celsius(), usual.WaterFrom.Celsius()))
		c, bed, err := p.tub(i, b.Tub.filled())
		if err != nil {
			return p.about(b, err)
		}
		p.beds = append(p.beds, bed)
		p.plan.Cooling = append(p.plan.Cooling, c)
		p.heed(b.Name, c.cautions, volume.Floating, volume.Lifting, volume.FullTub) // of these the day tells elsewhere
		if c.Chill > 0 {
			p.command(fmt.Sprintf("cooling.%d.chill_time_s", i), "time_s", "thermal icebath %s --to %vC", p.bathFlags(b), b.ServeAt.Celsius())
		}
		if len(c.Hours) > 0 {
			last := fmt.Sprintf("cooling.%d.hours.%d.", i, len(c.Hours)-1)
			p.command(last+"temperature_c", "temperature_c", "thermal icebath %s --for %vs%s", p.bathFlags(b), p.end.Sub(bed).Seconds(), p.dayFlags(i, &c, bed))
			p.also(last+"upper_c", "upper_c")
			p.also(last+"bath_c", "bath_c")
			p.also(last+"ice_left_kg", "ice_left_kg")
			p.command(fmt.Sprintf("cooling.%d.top_up_kg", i), "top_up_kg", "thermal icebath %s --for %vs%s --bag %vkg --reserve %v%s",
				p.bathFlags(b), p.end.Sub(bed).Seconds(), p.drawFlags(i, bed), p.day.Ice.Bag.si, lowIce, c.hold)
		}
		for _, draw := range p.draws(i, bed) {
			p.note(of + fmt.Sprintf("{%.6g l} drawn from %s to %s", litres(draw.Volume), clock(bed.Add(draw.Start)), clock(bed.Add(draw.End))))
		}
	}
	return nil
}

// fit returns what the beer's tub holds around its kegs.
func (p *planner) fit(b *Beer) (volume.Fit, error) {
	tub := volume.Tub{Capacity: b.Tub.Size.volume(), Height: b.Tub.Height.length()}
	return tub.Fit(b.Keg.vessel(), b.Kegs.int(), volume.BaggedIce)
}

// A filling is what goes into a tub at the start.
type filling struct {
	ice   unit.Mass
	water unit.Volume
	lid   bool
}

// filled returns the filling of the file.
func (t *Tub) filled() filling { return filling{t.Ice.mass(), t.Water.volume(), t.Lid} }

// tub runs one beer's tub from bedding to the last glass. Beer that comes cold
// enough is bedded just before the first glass.
func (p *planner) tub(i int, f filling) (c Cooling, bed time.Time, err error) {
	b := &p.day.Beers[i]
	bath, err := p.bath(b)
	if err != nil {
		return c, bed, err
	}
	bath.Ice, bath.Water, bath.Lid = f.ice, f.water, f.lid
	c = Cooling{
		TopUps: []TopUp{}, Hours: []Hour{},
		Beer: b.Name, ServeAt: b.ServeAt.Celsius(), Ice: float64(f.ice), Water: litres(f.water), Sure: true, Warmest: b.Arrives.Celsius(),
	}
	bed = p.start.Add(-slack).Truncate(grain)
	if b.Arrives.Sub(b.ServeAt) > 0 {
		chill, err := bath.Reach(b.ServeAt)
		switch {
		case errors.Is(err, thermal.ErrNever), errors.Is(err, thermal.ErrNoSolution):
			c.never = err
		case err != nil:
			return c, bed, err
		default:
			c.Chill = chill.Time.Seconds()
			c.Longest, c.Sure = farEnd(chill)
			bed = p.start.Add(-slack - time.Duration(c.Longest)*time.Second).Truncate(grain)
		}
	}
	if early := p.start.Add(-earliest); bed.Before(early) {
		bed = early
	}
	c.BedAt, c.ReadyAt = p.dayClock(bed), p.dayClock(roundUp(bed.Add(time.Duration(c.Chill)*time.Second)))
	bath.Pours = p.draws(i, bed)
	bath, day, held, err := p.topUp(bath, b.ServeAt.Add(coldNear), bed)
	if errors.Is(err, thermal.ErrNoSolution) { // it does not fit into the tub
		c.never = err
		return c, bed, nil
	}
	if err != nil {
		return c, bed, err
	}
	if held.IsValid() {
		c.hold = fmt.Sprintf(" --hold %vC", held.Celsius())
	}
	c.cautions = day.Cautions()
	c.FloatsBelow, c.Left, c.Covered = day.FloatsBelow, float64(day.IceLeft), day.Covered
	for _, t := range bath.TopUps {
		c.TopUps = append(c.TopUps, TopUp{clock(bed.Add(t.At)), float64(t.Ice), bed.Add(t.At)})
		c.TopUp += float64(t.Ice)
	}
	p.course(b, &c, day, bed)
	c.Holds = c.never == nil && c.Sure && c.Warmest <= c.ServeAt+coldNear
	return c, bed, nil
}

// roundUp returns the next clock time of the grain.
func roundUp(t time.Time) time.Time {
	if r := t.Truncate(grain); !r.Before(t) {
		return r
	}
	return t.Truncate(grain).Add(grain)
}

// bath returns the beer's tub as the file describes it.
func (p *planner) bath(b *Beer) (thermal.IceBath, error) {
	beer, err := b.liquid()
	if err != nil {
		return thermal.IceBath{}, err
	}
	bath := thermal.DefaultIceBath(b.Keg.vessel(), b.Arrives, p.around())
	bath.Tub = volume.Tub{Capacity: b.Tub.Size.volume(), Height: b.Tub.Height.length()}
	bath.Wall, bath.Lid = b.Tub.Wall.length(), b.Tub.Lid
	bath.Kegs, bath.Beer = b.Kegs.int(), beer
	return bath, nil
}

// around returns the air at tubs and kegs.
func (p *planner) around() thermal.Surroundings {
	around := thermal.Shade(p.day.Air)
	around.Humidity, around.Altitude = p.day.Humidity.si, p.day.Elevation.length()
	around.Sun, around.Wind = thermal.Irradiance(p.day.Sun.si), unit.Velocity(p.day.Wind.si)
	return around
}

func (p *planner) bathFlags(b *Beer) string {
	d := &p.day
	lid := ""
	if b.Tub.Lid {
		lid = " --lid"
	}
	return fmt.Sprintf("--keg %s --kegs %d --from %vC --ice %vkg --water %vL --tub %vL --tub-height %vm --wall %vm --air %vC --humidity %v --sun %vW/m2 --wind %vm/s%s %s %s",
		b.Keg.text, b.Kegs.int(), b.Arrives.Celsius(), b.Tub.Ice.si, 1000*b.Tub.Water.si, 1000*b.Tub.Size.si,
		b.Tub.Height.si, b.Tub.Wall.si, d.Air.Celsius(), d.Humidity.si, d.Sun.si, d.Wind.si, lid, b.flags(), p.airFlags())
}

// drawFlags tells the command what is drawn from the tub.
func (p *planner) drawFlags(i int, bed time.Time) string {
	flags := ""
	for _, d := range p.draws(i, bed) {
		flags += fmt.Sprintf(" --pour %vL:%vs-%vs", litres(d.Volume), d.Start.Seconds(), d.End.Seconds())
	}
	return flags
}

// dayFlags tells the command what is drawn from the tub and what is topped up.
func (p *planner) dayFlags(i int, c *Cooling, bed time.Time) string {
	flags := p.drawFlags(i, bed)
	for _, t := range c.TopUps {
		flags += fmt.Sprintf(" --top-up %vkg:%vs", t.Ice, t.time.Sub(bed).Seconds())
	}
	return flags
}

// farEnd returns the far end of the band of a chilling time, in seconds, and
// whether it has one: where the beer might never get there, half as long again
// stands for it.
func farEnd(c thermal.Chilling) (seconds float64, sure bool) {
	if c.Time == 0 {
		return 0, true
	}
	band := c.Band()
	far := quantity.SI(band.Suffix, band.High)
	if math.IsInf(far, 0) || math.IsNaN(far) {
		return unsure * c.Time.Seconds(), false
	}
	return far, true
}

// course fills in the hours of a tub, and the warmest beer drawn.
func (p *planner) course(b *Beer, c *Cooling, day thermal.Chilling, bed time.Time) {
	n := int(p.end.Sub(bed)/grain) + 1
	c.Warmest = math.Inf(-1) // the last moment is always one of service
	capacity := float64(b.Keg.vessel().Capacity)
	for i, s := range day.Course(n) {
		if i == n-1 { // the same moment as the answer itself, to the last digit
			s.Beer, s.Upper, s.Bath, s.Ice = day.Temperature, day.Upper, day.Bath, day.IceLeft
		}
		at := bed.Add(s.At).Round(time.Second)
		if !at.Before(p.start) {
			c.Warmest = math.Max(c.Warmest, s.Beer.Celsius())
		}
		if c.FloatsFrom.IsZero() && !at.Before(p.start) && float64(s.Left) < c.FloatsBelow*capacity {
			c.FloatsFrom, c.FloatsAt = at, p.dayClock(at)
		}
		if at.Minute() == 0 || i == 0 || i == n-1 {
			c.Hours = append(c.Hours, Hour{
				At: clock(at), Beer: s.Beer.Celsius(), Upper: s.Upper.Celsius(),
				Bath: s.Bath.Celsius(), Ice: float64(s.Ice), Left: litres(s.Left),
			})
		}
	}
}
