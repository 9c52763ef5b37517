package thermal

import "example.com/pourwell/volume"

var (
	limitKegLitres = volume.Range{Name: "keg", Min: 0.1, Max: 200, Suffix: "l", Source: "from a bottle to a barrel"}
	limitKegWide   = volume.Range{Name: "keg diameter", Min: 0.04, Max: 0.8, Suffix: "m", Source: "from a bottle to a barrel"}
	limitKegHigh   = volume.Range{Name: "keg height", Min: 0.05, Max: 1.5, Suffix: "m", Source: "from a bottle to a barrel"}
	limitTare      = volume.Range{Name: "tare", Min: 0, Max: 100, Suffix: "kg", Source: "from a can to a barrel"}
	limitFill      = volume.Range{Name: "fill", Min: 0.01, Max: 1, Source: "a share of the capacity; an empty keg has no beer to warm"}
	limitJacket    = volume.Range{Name: "jacket", Min: 0, Max: 0.1, Suffix: "m", Source: "jackets of kegs"}
	limitUA        = volume.Range{Name: "measured UA", Min: 0, Max: 1000, Suffix: "w_per_k", Source: "0 leaves it to the model"}
	limitSurface   = volume.Range{Name: "surface", Min: 0, Max: float64(len(finishes) - 1), Source: "Bare or Painted"}
)

// check returns a [*RangeError] in the name of fn if a field lies outside its
// range.
func (k Keg) check(fn string) error {
	if err := k.Around.check(fn); err != nil {
		return err
	}
	if err := checkVessel(fn, k.Vessel); err != nil {
		return err
	}
	for _, c := range [...]struct {
		limit volume.Range
		value float64
	}{
		{limitFill, k.Fill},
		{limitJacket, float64(k.Jacket)},
		{limitUA, float64(k.UA)},
		{limitSurface, float64(k.Surface)},
	} {
		if err := c.limit.Check(fn, c.value); err != nil {
			return err
		}
	}
	return k.Beer.checkLiquid(fn, "beer temperature", k.From)
}

// checkVessel refuses a vessel without the dimensions that heat needs.
func checkVessel(fn string, v volume.Vessel) error {
	for _, c := range [...]struct {
		limit volume.Range
		value float64
	}{
		{limitKegLitres, float64(v.Capacity / volume.Litre)},
		{limitKegWide, float64(v.Diameter)},
		{limitKegHigh, float64(v.Height)},
		{limitTare, float64(v.Tare)},
	} {
		if err := c.limit.Check(fn, c.value); err != nil {
			return err
		}
	}
	return nil
}
