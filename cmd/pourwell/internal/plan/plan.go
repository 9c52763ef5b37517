package plan

import (
	"time"

	"example.com/pourwell/volume"
)

// A Plan is the whole day, computed. Keys carry the unit of their number;
// sentences quote numbers as {38.5 c}, for the report to write in the reader's
// units.
type Plan struct {
	Title       string        `json:"title"`
	Verdict     Verdict       `json:"verdict"`
	Beers       []BeerPlan    `json:"beers"`
	Cooling     []Cooling     `json:"cooling"`
	Gas         GasPlan       `json:"gas"`
	Lines       []LinePlan    `json:"lines"`
	Taps        TapPlan       `json:"taps"`
	Glasses     []GlassAdvice `json:"glasses"`
	Timeline    []Moment      `json:"timeline"`
	Shopping    []Item        `json:"shopping"`
	Cautions    []string      `json:"cautions"`
	Assumptions []string      `json:"assumptions"`
	Commands    []Command     `json:"commands"`
}

// A Verdict says first whether the day holds.
type Verdict struct {
	Holds   bool    `json:"holds"`
	Summary string  `json:"summary"`
	Change  string  `json:"change,omitempty"` // the one change that would mend it
	Points  []Point `json:"points"`
}

// A Point is one thing that holds or does not.
type Point struct {
	Holds bool   `json:"holds"`
	What  string `json:"what"`
	Mend  string `json:"mend,omitempty"`
}

// A BeerPlan is the amount and the pressure of one beer.
type BeerPlan struct {
	Name     string  `json:"name"`
	Expected float64 `json:"servings_expected"`
	Planned  int     `json:"servings_planned"`
	PerKeg   int     `json:"pours_per_keg"`
	Kegs     int     `json:"kegs"`
	Needed   int     `json:"kegs_needed"`
	RunOut   float64 `json:"run_out_probability"`
	Leftover float64 `json:"leftover_l"`
	LastsFor float64 `json:"lasts_for_s"`

	Content   float64 `json:"co2_volumes"`
	Gauge     float64 `json:"gauge_kpa"`                // to set, cold
	WarmGauge float64 `json:"arrival_gauge_kpa"`        // in the keg as it arrives
	WarmsTo   float64 `json:"keg_warms_to_c,omitempty"` // a keg in front of a chiller, by the last glass
	SetGauge  float64 `json:"regulator_kpa"`            // what someone means to set, or Gauge
	SetHolds  float64 `json:"regulator_co2_volumes"`

	Serving  float64 `json:"serving_l"`
	DrinksUS float64 `json:"us_standard_drinks"`
	DrinksUK float64 `json:"uk_units"`
	DrinksAU float64 `json:"au_standard_drinks"`
	Lift     float64 `json:"lift_kg"` // one full keg
	TwoLift  bool    `json:"two_person_lift"`
	InKeg    float64 `json:"left_in_keg_l,omitempty"`
	HomeAt   float64 `json:"packed_up_c,omitempty"` // what is left, after packing up
	Rechill  float64 `json:"rechill_time_s,omitempty"`
}

// A GlassAdvice is one thing to choose glasses by.
type GlassAdvice struct {
	What   string `json:"what"`
	Why    string `json:"why"`
	Status string `json:"status"`
}

// A Cooling is one tub: when its kegs go into the ice and how they fare.
type Cooling struct {
	Beer        string    `json:"beer"`
	BedAt       string    `json:"bed_at"`
	ReadyAt     string    `json:"ready_at"`
	Chill       float64   `json:"chill_time_s"`
	Longest     float64   `json:"chill_time_longest_s"` // the far end of its band
	Ice         float64   `json:"ice_kg"`               // at the start
	Water       float64   `json:"water_l"`
	TopUp       float64   `json:"top_up_kg"` // all of them together
	hold        string    // of the upkeep, as a flag of the command; "" where no ice holds the beer
	TopUps      []TopUp   `json:"top_ups"`
	Warmest     float64   `json:"warmest_c"` // beer drawn while guests are there
	ServeAt     float64   `json:"serve_at_c"`
	Left        float64   `json:"ice_left_kg"` // at the end
	FloatsBelow float64   `json:"floats_below_share"`
	FloatsAt    string    `json:"floats_at,omitempty"` // when the kegs are that empty
	FloatsFrom  time.Time `json:"-"`
	Hours       []Hour    `json:"hours"`

	Sure      bool    `json:"chill_sure"` // that it gets cold at all, given the band
	Covered   float64 `json:"covered_share"`
	MostIce   float64 `json:"most_ice_kg"` // that fits between the kegs, with
	MostWater float64 `json:"most_water_l"`
	Holds     bool    `json:"holds"`

	Chiller *Chilled `json:"chiller,omitempty"` // for beer that is cooled on its way to the tap

	never    error           // why the beer does not get cold
	cautions []volume.Remark // of the tub's result
}

// A Chilled is how beer comes through a coil or a plate in a queue.
type Chilled struct {
	Kind     string  `json:"kind"`
	Tube     string  `json:"tube,omitempty"`
	State    string  `json:"state"`
	First    float64 `json:"first_glass_c"`
	Tenth    float64 `json:"tenth_glass_c"`
	Outlet   float64 `json:"outlet_c"` // while the tap stays open
	Recovery float64 `json:"recovery_s"`
	BeerIce  float64 `json:"beer_ice_kg"`
	BoxIce   float64 `json:"box_ice_kg"`
	DrainDue float64 `json:"drain_due_s,omitempty"`
	Iced     bool    `json:"iced"` // there is ice in the box all the time
}

// A TopUp is ice added to a tub during the day.
type TopUp struct {
	At  string  `json:"at"`
	Ice float64 `json:"ice_kg"`

	time time.Time
}

// An Hour is one row of a tub's course.
type Hour struct {
	At    string  `json:"at"`
	Beer  float64 `json:"temperature_c"`
	Upper float64 `json:"upper_c"`
	Bath  float64 `json:"bath_c"`
	Ice   float64 `json:"ice_left_kg"`
	Left  float64 `json:"beer_left_l"`
}

// A GasPlan is the CO2 to bring.
type GasPlan struct {
	CO2       float64   `json:"co2_kg"`
	PerKeg    float64   `json:"co2_per_keg_kg"`
	Cylinder  float64   `json:"cylinder_kg"`
	Cylinders int       `json:"cylinders"`
	Needed    int       `json:"cylinders_needed"`
	HotCar    float64   `json:"hot_car_kpa"`
	Beers     []BeerGas `json:"beers"`
}

// A BeerGas is the CO2 of one beer.
type BeerGas struct {
	Beer string  `json:"beer"`
	CO2  float64 `json:"co2_kg"`
}

// A LinePlan is how one beer's line pours.
type LinePlan struct {
	Beer        string   `json:"beer"`
	Tubes       []string `json:"tubes"`
	Flow        float64  `json:"flow_l_per_min"`
	FlowEmpty   float64  `json:"flow_empty_l_per_min"`
	PourTime    float64  `json:"pour_time_s"`
	Length      float64  `json:"length_m"`           // of the last tube, for the target flow
	TradeLength float64  `json:"trade_length_m"`     // by the trade's table
	Choker      float64  `json:"choker_m,omitempty"` // to add for the target flow, behind a chiller
	Target      float64  `json:"target_l_per_min"`
}

// A TapPlan is how guests queue at the peak.
type TapPlan struct {
	Taps   int        `json:"taps"`
	Needed int        `json:"taps_needed"`
	Beers  []BeerTaps `json:"beers"`
}

// A BeerTaps is the queue for one beer.
type BeerTaps struct {
	Beer        string  `json:"beer"`
	Taps        int     `json:"taps"`
	Needed      int     `json:"taps_needed"`
	Wait        float64 `json:"wait_mean_s"`
	Late        float64 `json:"wait_share"` // of guests who wait longer than they bear
	Utilisation float64 `json:"utilisation_share"`
	Overrun     bool    `json:"overrun"` // the queue grows without end
}

// A Moment is a time of the day and what to do then.
type Moment struct {
	At   string `json:"at"`
	What string `json:"what"`
}

// An Item is something to bring.
type Item struct {
	What   string `json:"what"`
	Amount string `json:"amount"`
}

// A Command is a command line that gives a number of the plan again.
type Command struct {
	Answers string `json:"answers"` // the path of the number in the plan, such as beers.0.gauge_kpa
	Key     string `json:"key"`     // its key in the command's results
	Line    string `json:"line"`
}
