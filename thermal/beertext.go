package thermal

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/pourwell/internal/quantity"
)

// String returns alcohol and final gravity, such as "5%:1.010".
func (b Beer) String() string {
	abv, fg := b.ABV(), strconv.FormatFloat(b.FinalGravity(), 'f', -1, 64)
	if _, digits, _ := strings.Cut(fg, "."); len(digits) < 3 {
		fg = strconv.FormatFloat(b.FinalGravity(), 'f', 3, 64)
	}
	percent := strconv.FormatFloat(100*abv, 'f', -1, 64) + "%"
	if back, err := quantity.Parse(quantity.Share, percent); err != nil || back != abv {
		percent = strconv.FormatFloat(abv, 'f', -1, 64) // a share, to the last digit
	}
	return percent + ":" + fg
}

// MarshalText implements [encoding.TextMarshaler] with text that reads back as
// the same beer, as String.
func (b Beer) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads alcohol by volume
// and final gravity, such as "5%:1.010"; water is "0%:1.000". What [BeerOf]
// refuses is its [*RangeError]. With an error b stays what it was.
func (b *Beer) UnmarshalText(text []byte) error {
	alcohol, gravity, ok := strings.Cut(string(text), ":")
	if !ok {
		return &quantity.Error{Text: string(text), Kind: quantity.Share, What: "is not ALCOHOL:GRAVITY", Hint: "for example 5%:1.010"}
	}
	abv, err := quantity.Parse(quantity.Share, alcohol)
	if err != nil {
		return fmt.Errorf("alcohol by volume: %w", err)
	}
	fg, err := quantity.Parse(quantity.Number, gravity)
	if err != nil {
		return fmt.Errorf("final gravity: %w", err)
	}
	read, err := BeerOf(abv, fg)
	if err != nil {
		return err
	}
	*b = read
	return nil
}
