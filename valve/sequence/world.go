package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// bandEnd says where in its bands a device's thresholds lie.
type bandEnd int

const (
	atNominal bandEnd = iota
	atEarliest
	atLatest
)

// sharp takes the width out of a row: every threshold of the device lies at
// one end, or at nominal.
func sharp(r valve.Row, at bandEnd) valve.Row {
	s := make(valve.Row, len(r))
	for i, t := range r {
		threshold, rearm := t.Threshold.Nominal, t.Rearm.Nominal
		switch at {
		case atEarliest:
			threshold, rearm = t.Near(), t.Rearm.Greatest
			if t.Direction == valve.Falling {
				rearm = t.Rearm.Least
			}
		case atLatest:
			threshold, rearm = t.Far(), t.Rearm.Least
			if t.Direction == valve.Falling {
				rearm = t.Rearm.Greatest
			}
		}
		t.Threshold, t.Rearm = unit.Exactly(threshold), unit.Exactly(rearm)
		s[i] = t
	}
	return s
}

// world is one choice of thresholds.
type world struct {
	name  string
	words string // for a person: what is assumed
	ends  []bandEnd
	// thorough worlds look at ratings and string as well: those in which all
	// devices stand alike.
	thorough bool
}

// worlds are the corners of the bands that Check walks: see the package doc.
func (n *network) worlds() []world {
	all := func(at bandEnd) []bandEnd {
		e := make([]bandEnd, len(n.actions))
		for i := range e {
			e[i] = at
		}
		return e
	}
	ws := []world{
		{"nominal", "every threshold nominal", all(atNominal), true},
		{"earliest", "every device as early as its band permits", all(atEarliest), true},
		{"latest", "every device as late as its band permits", all(atLatest), true},
	}
	for i, a := range n.actions {
		exact := true
		for _, t := range a.row {
			exact = exact && t.Threshold.Exact()
		}
		if exact {
			continue
		}
		early, late := all(atLatest), all(atEarliest)
		early[i], late[i] = atEarliest, atLatest
		ws = append(ws,
			world{a.name + " early", "“" + a.name + "” as early as its band permits and every other late", early, false},
			world{a.name + " late", "“" + a.name + "” as late as its band permits and every other early", late, false})
	}
	return ws
}
