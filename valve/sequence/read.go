package sequence

import (
	"completion.example/internal/fault"
	"completion.example/internal/strictjson"
)

// Read reads a plan from JSON and checks that it can be walked. Quantities are
// text with their unit. The error lists every fault with its path in the file:
// unknown fields, missing units, names that nothing bears, depths out of order,
// loops of ports with nothing to fix their pressure.
//
// A plan that was made or changed in Go is written by encoding/json, what is zero
// left out, and reads back as the same plan. Keys that had another name in files
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
	if err := p.Validate(); err != nil {
		return nil, err
	}
	return p, nil
}
