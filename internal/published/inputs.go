package published

import (
	"encoding"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// Inputs are the inputs of one case, read by name. Faults collect until Err.
type Inputs struct {
	text   map[string]string
	read   map[string]bool
	faults []error
}

// NewInputs parts "name=text; name=text".
func NewInputs(text string) *Inputs {
	in := &Inputs{text: map[string]string{}, read: map[string]bool{}}
	for part := range strings.SplitSeq(text, ";") {
		if strings.TrimSpace(part) == "" {
			continue
		}
		name, value, found := strings.Cut(part, "=")
		name = strings.TrimSpace(name)
		if _, twice := in.text[name]; !found || name == "" || twice {
			in.faults = append(in.faults, fmt.Errorf("input %q is not name=value, or stands twice", part))
			continue
		}
		in.text[name] = strings.TrimSpace(value)
	}
	return in
}

// Has tells whether an input is given.
func (in *Inputs) Has(name string) bool { _, ok := in.text[name]; return ok }

// Read puts the input into to: a pointer to a quantity (anything that
// unmarshals text), float64, int, bool or string.
func (in *Inputs) Read(name string, to any) {
	in.read[name] = true
	text, ok := in.text[name]
	if !ok {
		in.faults = append(in.faults, fmt.Errorf("input %q is missing", name))
		return
	}
	var err error
	switch to := to.(type) {
	case encoding.TextUnmarshaler:
		err = to.UnmarshalText([]byte(text))
	case *float64:
		*to, err = strconv.ParseFloat(text, 64)
	case *int:
		*to, err = strconv.Atoi(text)
	case *bool:
		*to, err = strconv.ParseBool(text)
	case *string:
		*to = text
	default:
		err = fmt.Errorf("can't read into %T", to)
	}
	if err != nil {
		in.faults = append(in.faults, fmt.Errorf("input %s: %w", name, err))
	}
}

// Optional is Read where the input is given, and nothing where it isn't.
func (in *Inputs) Optional(name string, to any) {
	if in.Has(name) {
		in.Read(name, to)
	}
}

// Err returns all faults, an input that nobody read among them.
func (in *Inputs) Err() error {
	faults := in.faults
	for name := range in.text {
		if !in.read[name] {
			faults = append(faults, fmt.Errorf("input %q was not used", name))
		}
	}
	return errors.Join(faults...)
}
