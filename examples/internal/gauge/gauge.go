// Package gauge checks gauge pressures read from flags.
package gauge

import (
	"fmt"

	"completion.example/hydrostatics/unit"
)

// Possible reports a gauge pressure below vacuum, by the name of its flag.
func Possible(name string, p unit.Pressure) error {
	if p >= -unit.Atmosphere {
		return nil
	}
	return fmt.Errorf("%s is %v; a gauge pressure is at least that of vacuum, %v", name, p, (-unit.Atmosphere).Rounded(4))
}
