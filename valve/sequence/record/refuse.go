package record

import (
	"fmt"

	"completion.example/valve/sequence"
)

// refused says what of a plan isn't held against a record yet: a branch, which gives
// the steps of one job more than one order, and in a step recorded what is done by hand
// or pumped through the well, whose volumes no walk of the plan foresees.
func refused(p *sequence.Plan, recorded []int) error {
	for i := range p.Steps {
		if s := &p.Steps[i]; s.Otherwise != nil {
			return fmt.Errorf("record: step %d, %s, has a branch, “otherwise”: a plan with branches isn't held against a record yet; give one with the steps that were done", i+1, s.Name)
		}
	}
	for _, i := range recorded {
		what := ""
		switch s := &p.Steps[i]; {
		case len(s.Pump) > 0:
			what = "pumps through the well"
		case len(s.Do) > 0:
			what = "does something by hand"
		default:
			continue
		}
		return fmt.Errorf("record: step %d, %s, %s, which isn't held against a record yet; leave its rows out, and it is taken as done as planned", i+1, p.Steps[i].Name, what)
	}
	return nil
}
