package sequence

import (
	"errors"
	"fmt"
	"slices"
)

// errUnsettled says that devices keep moving each other without end.
var errUnsettled = errors.New("devices keep moving each other without an end")

// unsettled names what moved last.
func (w *walker) unsettled() error {
	var names []string
	for k := len(w.events) - 1; k >= 0 && k >= len(w.events)-4; k-- {
		if name := w.actions[w.events[k].action].name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return fmt.Errorf("%w: %q", errUnsettled, names)
}
