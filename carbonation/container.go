package carbonation

import "fmt"

// A Container is what beer is closed in. The zero value is a growler, of which
// the least is known.
type Container uint8

// The containers that a [Sealed] tells apart.
const (
	Growler Container = iota // of glass, filled from a tap
	Bottle                   // of glass
	Can
	Keg
)

var containers = [...]string{Growler: "growler", Bottle: "bottle", Can: "can", Keg: "keg"}

// String returns the container as a word, such as "growler".
func (c Container) String() string {
	if int(c) >= len(containers) {
		return "vessel"
	}
	return containers[c]
}

// IsGlass reports whether the container throws splinters when it bursts.
func (c Container) IsGlass() bool { return c == Growler || c == Bottle }

// MarshalText implements [encoding.TextMarshaler].
func (c Container) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText implements [encoding.TextUnmarshaler]. It reads a container such
// as "growler".
func (c *Container) UnmarshalText(text []byte) error {
	for i, word := range containers {
		if word == string(text) {
			*c = Container(i)
			return nil
		}
	}
	return fmt.Errorf("carbonation: %q is none of %q", text, containers)
}
