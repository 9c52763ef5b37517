package volume

import "math"

// Notes returns what the figures rest on, and whether the kegs fit side by side.
func (f Fit) Notes() []Remark {
	all := []Remark{{KegSize, Note, say("Size and weight of the keg: %s. Measure yours where it matters.", f.Keg.Source)}}
	if f.Tight {
		all = append(all, Remark{FloorSpace, Note, say("The kegs take {%.5g share} of the floor: whether they stand side by side depends on the shape of the tub."+
			" Try before the day.", f.Feet)})
	}
	return all
}

// Notes returns what the numbers of servings and kegs rest on.
func (d Demand) Notes() []Remark {
	var all []Remark
	if d.KegsBand().High == float64(d.Kegs) { // else they are those on hand, not those needed
		all = append(all, Remark{Reserve, Note, "The kegs to bring are those of a thirsty crowd, the upper end of what the guests are likely to empty."})
	}
	all = append(all, Remark{Reserve, Note, "Two servings in the first hour and one in each later hour, and half of the guests drinking beer, are common practice" +
		" without a source. The same practice brings 10 to 15 % more than the average. For a small party that is too little:" +
		" there it is chance who comes thirsty."})
	switch {
	case len(d.parts) > 1:
		all = append(all, Remark{OneBeerEach, Note, "Every drinker is taken to stay with one beer. The chance of running out and the times are those of the beer that" +
			" does it most likely and first; the chance that some beer runs out is higher."})
	case d.priced:
		all = append(all, Remark{KegChoice, Note, "The kegs chosen are those that cost least."})
	case d.Mix != nil:
		all = append(all, Remark{KegChoice, Note, "The kegs chosen are those that leave least over; give every size a price to choose by price."})
	}
	return all
}

// Notes returns what practice counts on, and what the first half hour takes.
func (q Queue) Notes() []Remark {
	pace := Remark{ServerPace, Note, "Common practice counts 60 to 90 drinks an hour for each server, or a server for 75 guests, without a source."}
	if q.Bar.ownHands {
		pace.Text = "Guests who pour for themselves are taken to need half as long again, at the tap and between glasses: our assumption. Time yours."
	}
	all := []Remark{pace}
	waiting := math.Round(q.RushBacklog)
	switch {
	case q.RushGrows && waiting > 0:
		all = append(all, Remark{Rush, Note, say("In the first half hour more guests come than can be served: about %.0f are waiting at its end."+
			" Open %d then, or pour ahead.", waiting, q.RushTaps)})
	case q.RushGrows:
		all = append(all, Remark{Rush, Note, say("In the first half hour guests come as fast as they can be served, and the queue grows. Open %d then, or pour ahead.", q.RushTaps)})
	case q.RushTaps > q.Taps:
		all = append(all, Remark{Rush, Note, say("The first half hour takes %d taps to keep the wait. With %d the queue would settle at"+
			" {%.5g s}, for which half an hour is too short; it clears when the rush is over.", q.RushTaps, q.Taps, q.RushMean.Seconds())})
	}
	return all
}

// Notes returns what a cylinder's gauge does not tell; none for beer.
func (r Remains) Notes() []Remark {
	if r.unit == "pour" {
		return nil
	}
	return []Remark{{GaugeTells, Note, "The gauge of a cylinder shows its temperature, not what is left, while it holds liquid."}}
}
