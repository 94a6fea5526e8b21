package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// PinCase is the load that one load case puts on release pins, or on a latch:
// positive where it parts them. JointLoad makes it from the force in the string,
// and an anchored movement's PackerForce is one for pins between string and
// packer.
type PinCase struct {
	Case string     `json:"case"`
	Load unit.Force `json:"load"`
}

// PinMargin is how pins stand in one case.
type PinMargin struct {
	PinCase
	Margin unit.Force `json:"margin"` // least strength less load; negative may part
	Used   float64    `json:"used"`   // load over least strength
	State  Outcome    `json:"state"`  // not parted, unknown, parted
}

// HoldPins holds the loads of all cases against pins that must not part in any
// of them.
//
//	margin = S(least) - P
//	used   = P / S(least)
//
// P is the load and S the strength. Pins that compression parts as well take the
// magnitude of the load: set bothWays. Errors name what is out of range. Source:
// definition.
func HoldPins(pins unit.Band[unit.Force], bothWays bool, cases []PinCase) ([]PinMargin, error) {
	f := fault.In(scope)
	checkPins(&f, "pins", pins)
	for i, c := range cases {
		f.Add(fault.Finite(fault.Index("cases", i)+".Load", c.Load))
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	margins := make([]PinMargin, 0, len(cases))
	for _, c := range cases {
		load := c.Load
		if bothWays && load < 0 {
			load = -load
		}
		m := PinMargin{PinCase: c, Margin: pins.Least - load, Used: float64(load / pins.Least), State: stateOf(unit.Exactly(load), pins)}
		if err := finiteResult("pin margin", float64(m.Margin), m.Used); err != nil {
			return nil, err
		}
		margins = append(margins, m)
	}
	return margins, nil
}
