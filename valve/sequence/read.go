package sequence

import (
	"encoding/json"

	"completion.example/internal/fault"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/strictjson"
)

// Read reads a plan from JSON and checks that it can be walked. Quantities are
// text with their unit. The error lists every fault with its path in the file:
// unknown fields, missing units, names that nothing bears, depths out of order,
// loops of ports with nothing to fix their pressure, trapped bodies whose pressure
// isn't stated.
//
// A plan that was made or changed in Go is written by Write or encoding/json, what is
// zero left out, and reads back as the same plan. Keys that had another name in files
// of before are read under that too, such as "held at" for held_at. A file of more
// than 16 MB is refused, and so is a plan of more than 2,000 steps, 500 devices,
// 1,000 ramps in a step, 5,000 entries in any other list or texts of 100,000 bytes.
func Read(data []byte) (*Plan, error) {
	if len(data) > mostBytes {
		return nil, fault.NewIn("", "", "is %d bytes long; a plan must be %d at most", len(data), mostBytes)
	}
	p := new(Plan)
	if err := strictjson.Unmarshal(data, p); err != nil {
		return nil, err
	}
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	if p.Begin == nil {
		given, err := trappedIn(data)
		if err != nil {
			return nil, err
		}
		stated := func(i int) bool {
			k := &c.plan.Compartments[i]
			return given[k.Name] || k.Trapped != unit.Band[unit.Pressure]{} // the latter by its tally
		}
		if err := c.unstated(stated, "compartments: trapped"); err != nil {
			return nil, p.follows(err)
		}
	}
	return p, nil
}

// trappedIn are the compartments whose trapped pressure a file states, a nought, too.
func trappedIn(data []byte) (map[string]bool, error) {
	var plan struct {
		Compartments []struct {
			Name    string
			Trapped *string
		}
	}
	if err := json.Unmarshal(data, &plan); err != nil {
		return nil, err
	}
	given := map[string]bool{}
	for _, c := range plan.Compartments {
		given[c.Name] = c.Trapped != nil
	}
	return given, nil
}
