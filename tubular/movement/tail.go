package movement

import (
	"fmt"
	"strings"

	"completion.example/internal/fault"
)

// Tail is how the lower end of the string stands towards what is below it.
type Tail int

// The tails.
const (
	Open    Tail = iota // the pressure inside acts under the seals
	Plugged             // WellProfiles.Below acts under the seals
	Hanging             // clear of any seal, packer not set: the pressure outside acts below
)

func tailNames() [3]string { return [3]string{Open: "open", Plugged: "plugged", Hanging: "hanging"} }

// String returns the name of t.
func (t Tail) String() string {
	if names := tailNames(); t >= 0 && int(t) < len(names) {
		return names[t]
	}
	return fmt.Sprintf("Tail(%d)", int(t))
}

// MarshalText returns the name of t.
func (t Tail) MarshalText() ([]byte, error) {
	if t < Open || t > Hanging {
		return nil, fault.NewIn("movement", "", "tail is %d; must be one of %s", int(t), permittedTails())
	}
	return []byte(t.String()), nil
}

// UnmarshalText reads a name of a tail.
func (t *Tail) UnmarshalText(text []byte) error {
	for k, name := range tailNames() {
		if name == string(text) {
			*t = Tail(k)
			return nil
		}
	}
	return fault.NewIn("movement", "", "tail is %q; must be one of %s", text, permittedTails())
}

func permittedTails() string {
	names := tailNames()
	return strings.Join(names[:], ", ")
}
