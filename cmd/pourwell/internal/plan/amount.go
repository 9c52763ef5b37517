package plan

import (
	"fmt"
	"strings"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/lines"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
	"gonum.org/v1/gonum/unit"
)

// amounts asks how much of each beer the guests want, and whether its kegs
// hold that.
func (p *planner) amounts() error {
	d := &p.day
	crowd := p.crowd()
	menu := make([]volume.Choice, len(d.Beers))
	for i := range d.Beers {
		b := &d.Beers[i]
		yield, err := p.pour(b).PerKeg()
		if err != nil {
			return p.about(b, err)
		}
		menu[i] = volume.Choice{Name: b.Name, Share: b.Share.si, Keg: yield, Kegs: b.Kegs.int()}
	}
	demands, err := crowd.Menu(menu)
	if err != nil {
		return err
	}
	p.demands = demands
	for i, demand := range demands {
		b := &d.Beers[i]
		p.heed("", demand.Cautions())
		needed := menu[i]
		needed.Kegs = 0
		alone := crowd
		alone.Share *= b.Share.si
		enough, err := alone.Demand(needed.Keg)
		if err != nil {
			return p.about(b, err)
		}
		p.plan.Beers = append(p.plan.Beers, BeerPlan{
			Name: b.Name, Expected: demand.Expected, Planned: demand.Planned, PerKeg: menu[i].Keg.Pours,
			Kegs: demand.Kegs, Needed: enough.Kegs, RunOut: demand.RunOut,
			Leftover: litres(demand.Leftover), LastsFor: demand.LastsFor.Seconds(),
		})
		p.pours = append(p.pours, menu[i].Keg.Liquid)
		p.command(fmt.Sprintf("beers.%d.run_out_probability", i), "run_out_probability",
			"volume guests --guests %d --for %vs --first-hour %v --later %v --share %v --weather %v --spread %v --confidence %v --keg %s --kegs %d --glass %s --head %vm --line \"%s\"",
			crowd.Guests, crowd.Duration.Seconds(), crowd.FirstHour, crowd.Later, alone.Share, crowd.Weather,
			crowd.Spread, crowd.Confidence, b.Keg.text, b.Kegs.int(), d.Glass.Size.text, d.Glass.Head.si, strings.Join(b.tubes(), `" --line "`))
		of := fmt.Sprintf("beers.%d.", i)
		p.also(of+"servings_expected", "servings_expected")
		p.also(of+"servings_planned", "servings_planned")
		p.also(of+"leftover_l", "leftover_l")
		line := p.plan.Commands[len(p.plan.Commands)-1].Line
		p.command(of+"kegs_needed", "kegs", "%s", strings.Replace(strings.TrimPrefix(line, "pourwell "), fmt.Sprintf(" --kegs %d", b.Kegs.int()), "", 1))
	}
	return nil
}

// tubes returns the tubes that are left full of beer at the end, the coil's
// among them.
func (b *Beer) tubes() []string {
	if b.Chiller.Kind == "coil" {
		return append([]string{b.Chiller.Tube}, b.Line.Tubes...)
	}
	return b.Line.Tubes
}

func (p *planner) crowd() volume.Crowd {
	g := &p.day.Guests
	c := volume.DefaultCrowd(g.Count.int(), p.day.Hours.duration())
	c.FirstHour, c.Later, c.Share = g.FirstHour.si, g.Later.si, g.Share.si
	c.Weather, c.Spread, c.Confidence = g.Weather.si, g.Spread.si, g.Confidence.si
	return c
}

// pour returns how the beer gets from its keg into the day's glass.
func (p *planner) pour(b *Beer) volume.Pour {
	pour := b.Keg.vessel().Into(p.day.Glass.Size.glass())
	pour.Head = p.day.Glass.Head.length()
	for _, text := range b.tubes() {
		var t lines.Tube
		if t.UnmarshalText([]byte(text)) == nil {
			pour.Line += t.Volume()
		}
	}
	return pour
}

// pressures asks what pressure holds each beer's CO2 at the temperature it is
// served at, and what the keg has in it as it arrives.
func (p *planner) pressures() error {
	for i := range p.day.Beers {
		b := &p.day.Beers[i]
		beer, err := b.liquid()
		if err != nil {
			return p.about(b, err)
		}
		draught := carbonation.DefaultDraught()
		draught.Beer, draught.Air = beer, p.air
		cold, err := draught.SolveGauge(p.keeps[i], b.CO2)
		if err != nil {
			return p.about(b, err)
		}
		warm, err := draught.SolveGauge(b.Arrives, b.CO2)
		if err != nil {
			return p.about(b, err)
		}
		set := b.Regulator
		if !set.IsValid() {
			set = cold.Gauge
			p.note(b.Name + fmt.Sprintf(": the regulator is set to {%.6g kpa}", set.KPa()))
		}
		held, err := draught.SolveContent(p.keeps[i], set)
		if err != nil {
			return p.about(b, err)
		}
		p.heed(b.Name, carbonation.HighPressure(warm.Gauge))
		plan := &p.plan.Beers[i]
		plan.Content, plan.Gauge, plan.WarmGauge = b.CO2.Volumes(), cold.Gauge.KPa(), warm.Gauge.KPa()
		plan.SetGauge, plan.SetHolds = set.KPa(), held.Content.Volumes()
		p.set = append(p.set, set)
		p.command(fmt.Sprintf("beers.%d.gauge_kpa", i), "gauge_kpa", "carbonation equilibrium --temp %vC --co2 %vg/L %s %s",
			p.keeps[i].Celsius(), b.CO2.GramsPerLitre(), b.flags(), p.airFlags())
	}
	return nil
}

// liquid returns the beer as a liquid.
func (b *Beer) liquid() (thermal.Beer, error) {
	if b.OG.set {
		return thermal.BeerFromOriginal(b.ABV.si, b.OG.si)
	}
	return thermal.BeerOf(b.ABV.si, b.FG.si)
}

// flags describes the beer to the command.
func (b *Beer) flags() string {
	if b.OG.set {
		return fmt.Sprintf("--abv %v --og %v", b.ABV.si, b.OG.si)
	}
	return fmt.Sprintf("--abv %v --fg %v", b.ABV.si, b.FG.si)
}

func (p *planner) airFlags() string { return fmt.Sprintf("--elevation %vm", p.day.Elevation.si) }

func litres(v unit.Volume) float64 { return float64(v / volume.Litre) }
