package volume

import "strings"

// What the remarks of this package are about.
const (
	Alcohol     Code = "alcohol"      // who may drive, who has had enough
	Bursting    Code = "bursting"     // glass under pressure
	Lifting     Code = "lifting"      // a keg too heavy for one person
	Floating    Code = "floating"     // a keg that tips
	FullTub     Code = "full-tub"     // too heavy to move; water and electricity
	GasCylinder Code = "gas-cylinder" // compressed gas

	KegSize      Code = "keg-size"      // how sure size and weight are
	FloorSpace   Code = "floor-space"   // whether the kegs stand side by side
	Reserve      Code = "reserve"       // kegs and servings beyond the average
	OneBeerEach  Code = "one-beer-each" // a menu taken as crowds apart
	KegChoice    Code = "keg-choice"    // what kegs of several sizes are chosen by
	ServerPace   Code = "server-pace"   // drinks an hour for each server
	Rush         Code = "rush"          // the first half hour
	GaugeTells   Code = "gauge-tells"   // what a cylinder's gauge shows
	LightStruck  Code = "light-struck"  // beer in clear glass
	ServingSize  Code = "serving-size"  // by strength
	EtchedBottom Code = "etched-bottom" // bubbles and head
)

// Cautions returns what can hurt someone where the beer goes into a growler.
func (y Yield) Cautions() []Remark {
	if !strings.Contains(y.Pour.Glass.Name, "growler") {
		return nil
	}
	return []Remark{{Bursting, Caution, "Never fill a growler to the brim or leave it warm: it can burst. Rinse it with CO2, fill it from the bottom," +
		" leave a headspace, keep it cold; its maker's rating rules."}}
}

// Cautions returns what to think of with a count of drinks.
func (Drinks) Cautions() []Remark {
	return []Remark{{Alcohol, Caution, "Standard drinks count what is served. They do not say who may drive or has had enough: offer water and food," +
		" serve nobody who is drunk or under age. Local law decides."}}
}

// Cautions returns what to think of with a count of servings, and what can hurt
// someone in how they are poured.
func (d Demand) Cautions() []Remark {
	return append(d.all()[0].Choice.Keg.Cautions(), Remark{Alcohol, Caution,
		"A count of servings says nothing about who may drive or has had enough. Offer water and food, serve nobody who is drunk" +
			" or under age, and plan how people get home. Local law and licence decide."})
}

// Cautions returns what can hurt someone at the tub.
func (f Fit) Cautions() []Remark {
	var all []Remark
	if f.TwoLift {
		all = append(all, Remark{Lifting, Caution, say("A full keg weighs {%.5g kg}: more than one person should lift. Two people, or a trolley and a ramp;"+
			" over the rim of a tub even less is safe.", float64(f.Lift))})
	}
	if f.Floats > 0 {
		all = append(all, Remark{Floating, Caution, say("A keg less than {%.5g share} full floats and tips: weigh it down or let water out.", f.Floats)})
	}
	return append(all, Remark{FullTub, Caution, "A full tub is not to be moved: fill it where it will stand, on level ground, away from cables and sockets." +
		" Melt water and electricity do not mix."})
}

// Cautions returns what can hurt someone with a cylinder of gas; none for beer.
func (r Remains) Cautions() []Remark {
	if r.unit == "pour" {
		return nil
	}
	return []Remark{{GasCylinder, Caution, "A cylinder is filled, tested and vented by licensed people only; one heavier than its tare and charge together is" +
		" overfilled: do not use it. Keep it upright, chained, cool and out of closed rooms and cars."}}
}
