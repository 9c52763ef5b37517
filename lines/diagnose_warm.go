package lines

import (
	"errors"

	"example.com/pourwell/carbonation"
	"example.com/pourwell/thermal"
)

// openGlass is what the gas in beer may press against an open glass before any
// pour of it foams, Pa above the air: 20 psi, that of the usual 2.5 volumes at
// 54 °F (12 °C), or of the 3.3 that wheat beers hold at 38 °F. Our choice; the
// trade pours beer of usual gas below 45 to 50 °F (common practice, no source).
const openGlass = 138e3

// poured is how cold beer is best poured; common practice, no source.
func poured() thermal.Temperature { return thermal.Fahrenheit(38) }

// outlet returns the temperature of the beer at the tap: as read, else from keg
// and line.
func (d *Diagnosis) outlet() thermal.Temperature {
	if d.Tap.IsValid() {
		return d.Tap
	}
	return d.expected
}

// temperatures finds how warm the beer is at the tap.
func (d *Diagnosis) temperatures(o *Observation) error {
	d.expected = o.Run.Temp
	p, err := o.Run.Profile(o.servingOr(), 2)
	switch {
	case err == nil:
		d.expected = p.Outlet
	case !errors.Is(err, ErrNoSolution): // without a flow it stays at the keg's
		return err
	}
	if !o.BeerTemp.IsValid() {
		d.unknown("The beer's temperature in the glass: read the second glass in a row. What keg and line make of it is judged instead.")
		return nil
	}
	d.Tap = o.BeerTemp
	if !o.GlassWas.IsValid() || o.Glass.Mass <= 0 {
		return nil
	}
	g := o.filled()
	r, err := g.Pour(o.BeerTemp, 0)
	if err != nil {
		return err
	}
	// Beer and glass meet at a mean of their temperatures: undo it.
	if gap := o.GlassWas.Celsius() - o.BeerTemp.Celsius(); gap != 0 {
		share := float64(r.GlassCost) / gap
		d.Tap = thermal.Celsius((o.BeerTemp.Celsius() - share*o.GlassWas.Celsius()) / (1 - share))
	}
	return nil
}

// strains returns by how much, in Pa, the beer's gas at t presses harder than an
// open glass bears; negative where it bears it.
func (o *Observation) strains(t thermal.Temperature) (float64, error) {
	g, err := o.holds(o.content(), t)
	return g.Pascals() - openGlass, err
}

// kegTooWarm reports whether beer as warm as the keg foams in any glass, and
// nothing on the way cools it.
func (d *Diagnosis) kegTooWarm(o *Observation) bool {
	strain, err := o.strains(o.Run.Temp)
	return err == nil && strain > 0 && float64(o.Run.Temp.Sub(d.outlet())) < temperatureSlack && o.Run.Temp.Sub(poured()) > 0
}

// cool makes a cold keg, under the pressure that holds its gas there, what the
// line is balanced for.
func (d *Diagnosis) cool(o *Observation) error {
	cold, err := o.holds(o.content(), poured())
	if err != nil {
		return err
	}
	d.aim = aim{cold, poured(), say("once the keg is at {%.4g c} under {%.5g kpa}, ", poured().Celsius(), cold.KPa())}
	return nil
}

// warmth judges the beer at the tap by what an open glass bears. A keg whose
// cooling is advised already, and beer that warms on its way, are other findings.
func (d *Diagnosis) warmth(o *Observation) error {
	d.checked("temperature at the tap against what an open glass bears")
	warm := d.outlet()
	strain, err := o.strains(warm)
	if err != nil || strain <= 0 || warm.Celsius() <= poured().Celsius() {
		return err
	}
	if d.aim.keg != o.Run.Temp || float64(d.Tap.Sub(d.expected)) > temperatureSlack {
		return nil
	}
	c := o.content()
	f := Finding{
		Cause: "beer too warm at the tap", Size: size(strain), Fits: !o.FirstOnly,
		Measured: say("{%.4g c} at the tap, where {%.4g volumes}%s press with {%.5g kpa} against an open glass", warm.Celsius(), c.Volumes(), assumed(d.Content), (strain+openGlass)/1e3),
		Expected: say("no more than {%.5g kpa}: beer at about {%.4g c}", openGlass/1e3, poured().Celsius()),
		Confirm:  "a jug of it, cooled in ice, pours into a glass without foaming over",
	}
	switch {
	case o.chilled():
		f.Remedy = "chill it more: ice and water right up around the whole coil, stirred, a longer coil, or a slower pour"
	case d.kegTooWarm(o):
		meanwhile, err := o.holds(c, o.Run.Temp)
		if err != nil {
			return err
		}
		if err := d.cool(o); err != nil {
			return err
		}
		f.Remedy = say("cool the keg to {%.4g c} and then set {%.5g kpa}: %s; or pass the beer through a coil in ice, with the line balanced for {%.5g kpa}",
			poured().Celsius(), d.aim.gauge.KPa(), d.balance(o, d.aim), meanwhile.KPa())
	default:
		f.Remedy = "keep the line cold: insulate and shade it, or lay it in ice"
	}
	d.found(f)
	return nil
}

// assumed marks a content that is not known.
func assumed(known carbonation.Content) string {
	if known.IsValid() {
		return ""
	}
	return " (assumed)"
}
