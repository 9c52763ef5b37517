package plan

import (
	"fmt"

	"example.com/pourwell/thermal"
)

// standing asks how warm each keg is while it is served: as cold as its beer is
// wanted in a tub, and in front of a chiller as warm as it gets by the last
// glass in the shade.
func (p *planner) standing() error {
	for i := range p.day.Beers {
		b := &p.day.Beers[i]
		keeps := b.ServeAt
		if b.Chiller.Kind != "" {
			keg, err := p.inShade(b, i)
			if err != nil {
				return p.about(b, err)
			}
			last, err := keg.After(p.end.Sub(p.start) + coldAhead)
			if err != nil {
				return p.about(b, err)
			}
			keeps = b.Arrives
			if last.Temperature.Sub(keeps) > 0 {
				keeps = last.Temperature
			}
			p.plan.Beers[i].WarmsTo = last.Temperature.Celsius()
			p.command(fmt.Sprintf("beers.%d.keg_warms_to_c", i), "temperature_c",
				"thermal keg --keg %s --from %vC --for %vs --air %vC --humidity %v --sun 0W/m2 --wind %vm/s --full %v %s %s",
				b.Keg.text, b.Arrives.Celsius(), (p.end.Sub(p.start) + coldAhead).Seconds(), p.day.Air.Celsius(),
				p.day.Humidity.si, p.day.Wind.si, keg.Fill, b.flags(), p.airFlags())
		}
		p.keeps = append(p.keeps, keeps)
	}
	return nil
}

// inShade returns beer i's keg in the shade, as full as it is on average: the
// emptier it is the faster it warms.
func (p *planner) inShade(b *Beer, i int) (thermal.Keg, error) {
	beer, err := b.liquid()
	if err != nil {
		return thermal.Keg{}, err
	}
	keg := thermal.DefaultKeg(b.Keg.vessel(), b.Arrives, p.around())
	keg.Beer, keg.Around.Sun = beer, 0
	drawn := 0.0
	for _, draw := range p.draws(i, p.start) {
		drawn += litres(draw.Volume)
	}
	capacity := float64(b.Kegs.int()) * litres(keg.Vessel.Capacity)
	keg.Fill = max(0.1, 1-drawn/capacity/2)
	p.note(fmt.Sprintf("%s: the kegs stand in the shade, {%.3g share} full on average", b.Name, keg.Fill))
	return keg, nil
}
