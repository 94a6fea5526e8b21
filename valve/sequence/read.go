package sequence

import (
	"completion.example/internal/strictjson"
)

// Read reads a plan from JSON and checks that it can be walked. Quantities are
// text with their unit. The error lists every fault with its path in the file:
// unknown fields, missing units, names that nothing bears, depths out of order,
// loops of ports with nothing to fix their pressure.
func Read(data []byte) (*Plan, error) {
	p := new(Plan)
	if err := strictjson.Unmarshal(data, p); err != nil {
		return nil, err
	}
	if err := p.Validate(); err != nil {
		return nil, err
	}
	return p, nil
}
