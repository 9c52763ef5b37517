package plan

import (
	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
)

// A Day is what the file says: who comes, when and where, and what is there to
// serve them with. A quantity that the file leaves out has no value; Check
// fills in the usual ones and remembers them as assumptions.
type Day struct {
	Title     string              `toml:"title"`
	Date      string              `toml:"date"`  // 2027-07-17
	Start     string              `toml:"start"` // 15:00
	Hours     span                `toml:"hours"`
	Elevation length              `toml:"elevation"`
	Air       thermal.Temperature `toml:"air"`
	Humidity  share               `toml:"humidity"`
	Sun       irradiance          `toml:"sun"`  // on the tubs and lines
	Wind      speed               `toml:"wind"` // at the tubs

	Guests Guests `toml:"guests"`
	Glass  Glass  `toml:"glass"`
	Beers  []Beer `toml:"beer"`
	Ice    Ice    `toml:"ice"`
	Gas    Gas    `toml:"gas"`
	Taps   Taps   `toml:"taps"`
}

// Guests say how many come and how they drink.
type Guests struct {
	Count      count  `toml:"count"`
	Share      share  `toml:"share"`      // of them who drink beer
	FirstHour  number `toml:"first_hour"` // servings each
	Later      number `toml:"later"`      // servings each in every later hour
	Weather    number `toml:"weather"`    // factor on thirst
	Spread     number `toml:"spread"`     // coefficient of variation between people
	Confidence share  `toml:"confidence"`
}

// Glass is what the beer is served in.
type Glass struct {
	Size named  `toml:"size"`
	Head length `toml:"head"`
}

// A Beer is one beer in its kegs, and how it is kept and poured.
type Beer struct {
	Name      string              `toml:"name"`
	ABV       share               `toml:"abv"`
	FG        number              `toml:"fg"`
	OG        number              `toml:"og"`
	Share     share               `toml:"share"` // of all servings
	Keg       named               `toml:"keg"`
	Kegs      count               `toml:"kegs"`
	CO2       carbonation.Content `toml:"co2"`
	Arrives   thermal.Temperature `toml:"arrives"`   // temperature it comes with
	ServeAt   thermal.Temperature `toml:"serve_at"`  // warmest at which it is served
	Regulator carbonation.Gauge   `toml:"regulator"` // what someone means to set; the plan checks it
	Line      Line                `toml:"line"`
	Tub       Tub                 `toml:"tub"`
	Chiller   Chiller             `toml:"chiller"` // instead of a tub
}

// Line is the run from the keg to the tap.
type Line struct {
	Tubes []string `toml:"tubes"`
	Rise  length   `toml:"rise"`
}

// Tub is where the beer's kegs stand in ice.
type Tub struct {
	Size   volumeOf `toml:"size"`
	Height length   `toml:"height"`
	Wall   length   `toml:"wall"`
	Lid    bool     `toml:"lid"`
	Ice    mass     `toml:"ice"`   // at the start
	Water  volumeOf `toml:"water"` // at the start
}

// Ice is what can be brought, and how cold it is.
type Ice struct {
	Available mass `toml:"available"` // the most there will be; no limit if left out
	Bag       mass `toml:"bag"`       // the shop's bag
}

// Gas is the CO2 that is there.
type Gas struct {
	Cylinder  mass  `toml:"cylinder"` // contents of one, full
	Cylinders count `toml:"cylinders"`
}

// Taps say how people queue.
type Taps struct {
	Count  count `toml:"count"`
	Change span  `toml:"change"` // between two glasses
	Wait   span  `toml:"wait"`   // mean that guests bear
}
