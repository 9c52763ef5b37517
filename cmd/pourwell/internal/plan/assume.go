package plan

import (
	"fmt"
	"strings"
	"time"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
	"example.com/pourwell/volume"
)

// assume fills in the usual values for what the file leaves out and remembers
// each as a sentence. What cannot be guessed is an error.
func (p *planner) assume() error {
	d := &p.day
	switch {
	case d.Guests.Count.si == 0:
		return p.missing("guests.count", "how many people come, for example count = 60")
	case !d.Hours.set:
		return p.missing("hours", `how long you serve, for example hours = "5h"`)
	case !d.Air.IsValid():
		return p.missing("air", `the air temperature in the shade, for example air = "31C"`)
	case len(d.Beers) == 0:
		return p.missing("beer", "a beer: a table [[beer]] with name, keg and kegs")
	}
	if err := fewBeers(len(d.Beers)); err != nil {
		return err
	}
	usual := volume.DefaultCrowd(0, 0)
	p.number(&d.Humidity.quantityOf, 0.5, "humidity {0.5 share}")
	p.number(&d.Sun.quantityOf, 0, "tubs and lines in the shade")
	p.number(&d.Wind.quantityOf, 0, "no wind")
	p.number(&d.Elevation.quantityOf, 0, "sea level")
	p.number(&d.Guests.Share.quantityOf, usual.Share, fmt.Sprintf("{%v share} of the guests drink beer", usual.Share))
	p.number(&d.Guests.FirstHour.quantityOf, usual.FirstHour, fmt.Sprintf("%v glasses each in the first hour (common practice)", usual.FirstHour))
	p.number(&d.Guests.Later.quantityOf, usual.Later, fmt.Sprintf("%v glass each in every later hour (common practice)", usual.Later))
	p.number(&d.Guests.Weather.quantityOf, usual.Weather, "ordinary thirst for the weather")
	p.number(&d.Guests.Spread.quantityOf, usual.Spread, fmt.Sprintf("thirst spreads by {%v share} between people", usual.Spread))
	p.number(&d.Guests.Confidence.quantityOf, usual.Confidence, fmt.Sprintf("beer to last with {%v share} confidence", usual.Confidence))
	p.number(&d.Glass.Head.quantityOf, float64(volume.Inch), "a head of {0.0254 m}")
	p.number(&d.Taps.Change.quantityOf, 22, "{22 s} between two glasses")
	p.number(&d.Taps.Wait.quantityOf, 60, "guests bear {60 s} on average")
	p.number(&d.Gas.Cylinders.quantityOf, 1, "one cylinder")
	p.number(&d.Gas.Cylinder.quantityOf, 2, "a cylinder of {2 kg}")
	p.number(&d.Ice.Bag.quantityOf, 2.5, "ice in bags of {2.5 kg}")
	if d.Glass.Size.text == "" {
		d.Glass.Size.text = "us-pint"
		p.note("16 oz glasses")
	}
	if d.Start == "" {
		d.Start = "15:00"
		p.note("start at 15:00")
	}
	start, err := time.Parse("2006-01-02 15:04", orDate(d.Date)+" "+d.Start)
	if err != nil {
		return &FileError{p.file, 0, fmt.Sprintf("date %q and start %q are not a day and a time", d.Date, d.Start), `write date = "2027-07-17" and start = "15:00"`}
	}
	p.start = start
	p.end = start.Add(d.Hours.duration())
	for i := range d.Beers {
		if err := p.assumeBeer(&d.Beers[i], i); err != nil {
			return err
		}
	}
	return nil
}

// orDate stands in for a date that is not given; only times of day show then.
func orDate(date string) string {
	if date == "" {
		return "2000-07-01"
	}
	return date
}

func (p *planner) assumeBeer(b *Beer, i int) error {
	if b.Name = strings.TrimSpace(b.Name); b.Name == "" {
		b.Name = fmt.Sprintf("Beer %d", i+1)
	}
	for _, other := range p.day.Beers[:i] {
		if other.Name == b.Name {
			return &FileError{p.file, 0, fmt.Sprintf("two beers are called %q", b.Name), "give each its own name, or add their kegs together"}
		}
	}
	if b.Kegs.set && b.Kegs.si < 1 {
		return &FileError{p.file, 0, fmt.Sprintf("%s has %.0f kegs", b.Name, b.Kegs.si), "leave the beer out, or bring a keg of it"}
	}
	if b.Keg.text == "" {
		return p.missing("beer.keg", fmt.Sprintf("the keg of %s, for example keg = \"30L\"", b.Name))
	}
	of := b.Name + ": "
	even := 1 / float64(len(p.day.Beers))
	p.number(&b.Share.quantityOf, even, fmt.Sprintf("%s{%.4g share} of the glasses", of, even))
	p.number(&b.Kegs.quantityOf, 1, of+"one keg")
	p.number(&b.ABV.quantityOf, thermal.Beer{}.ABV(), of+"5 % alcohol")
	if !b.FG.set && !b.OG.set {
		p.number(&b.FG.quantityOf, thermal.Beer{}.FinalGravity(), of+"final gravity 1.010")
	}
	if !b.CO2.IsValid() {
		b.CO2 = carbonation.Volumes(2.5)
		p.note(of + "{2.5 volumes} of CO2")
	}
	if !b.Arrives.IsValid() {
		b.Arrives = p.day.Air
		p.note(of + "arrives as warm as the air")
	}
	if !b.ServeAt.IsValid() {
		b.ServeAt = thermal.Celsius(6)
		p.note(of + "served at {6 c} or colder")
	}
	if len(b.Line.Tubes) == 0 {
		b.Line.Tubes = []string{"3/16in:5ft"}
		p.note(of + "a line of 3/16 in bore and {1.524 m}")
	}
	p.number(&b.Line.Rise.quantityOf, 0, of+"tap level with the beer")
	if err := p.assumeChiller(b); err != nil || b.Chiller.Kind != "" {
		return err
	}
	p.number(&b.Tub.Size.quantityOf, 0.08, of+"a tub of {80 l}")
	p.number(&b.Tub.Height.quantityOf, 0.4, of+"tub {0.4 m} high")
	p.number(&b.Tub.Wall.quantityOf, 0.005, of+"tub wall {5 mm} of plastic")
	return nil
}

// number sets q to the usual value if it has none, and remembers the sentence.
func (p *planner) number(q *quantityOf, si float64, sentence string) {
	if q.or(si) {
		p.note(sentence)
	}
}

func (p *planner) note(sentence string) {
	p.plan.Assumptions = append(p.plan.Assumptions, sentence)
}

func (p *planner) missing(key, hint string) error {
	return &FileError{p.file, 0, "has no " + key, "add " + hint}
}
