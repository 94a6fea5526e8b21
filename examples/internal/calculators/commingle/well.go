package commingle

import (
	"errors"
	"fmt"

	"completion.example/valve/production"
	"completion.example/valve/production/choke"
)

// positions is the choke of the demo, invented: shut, four steps, open.
const positions = `position,travel,coefficient
shut,0,0 Cv
1,0.2,1.5 Cv
2,0.4,3 Cv
3,0.6,6 Cv
4,0.8,12 Cv
open,1,30 Cv
`

// well puts the flags together; at holds the choke positions asked for.
func (in inputs) well() (w production.Well, at []int, err error) {
	table, err := read(in.chokes, positions, choke.ReadTable)
	faults := []error{err}
	for _, z := range in.zones.list {
		z.Zone.Chokes, z.Zone.Above = table, in.between
		w.Zones = append(w.Zones, z.Zone)
		i := table.Index(z.choke)
		if i < 0 && table != nil {
			faults = append(faults, fmt.Errorf("zone %q: its choke has no position %q", z.Name, z.choke))
		}
		at = append(at, i)
	}
	in.tubing.Loss.At = in.between.Loss.At
	if len(w.Zones) > 0 {
		in.tubing.Height = w.Zones[len(w.Zones)-1].TVD
	}
	w.Outflow = in.tubing
	if in.table != "" {
		w.Outflow, err = read(in.table, "", production.ReadOutflowTable)
		faults = append(faults, err)
	}
	if in.shut {
		w.Outflow = production.FixedRate{}
	}
	return w, at, errors.Join(faults...)
}
