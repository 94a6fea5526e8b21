package sleeve

import "slices"

// Joined returns which compartments the sleeves join: certain counts the open
// ones, possible the unknown ones too. Compartments come in the order in which
// the sleeves name them, each in one group.
//
// Errors: positions out of range.
func (s System) Joined(at []Position) (certain, possible [][]string, err error) {
	if err := s.checkPositions(at); err != nil {
		return nil, nil, err
	}
	return s.join(at, false), s.join(at, true), nil
}

func (s System) join(at []Position, perhaps bool) [][]string {
	var groups [][]string
	find := func(name string) int {
		for i, g := range groups {
			if slices.Contains(g, name) {
				return i
			}
		}
		groups = append(groups, []string{name})
		return len(groups) - 1
	}
	for i, v := range s.Sleeves {
		in, out := find(v.Inside), find(v.Outside)
		if in == out || !(at[i] == Open || perhaps && at[i] == Unknown) {
			continue
		}
		in, out = min(in, out), max(in, out)
		groups[in] = append(groups[in], groups[out]...)
		groups = slices.Delete(groups, out, out+1)
	}
	return groups
}

// Junction is two compartments that an action joins or parts.
type Junction struct {
	Sleeve  string `json:"sleeve"`
	Inside  string `json:"inside"`
	Outside string `json:"outside"`
	Joins   bool   `json:"joins"` // false: parts
	Perhaps bool   `json:"perhaps"`
}

// Junctions returns what the step from one set of positions to another joins
// and parts, sleeve by sleeve. Compartments parted here may still be joined by
// another sleeve; Joined tells.
//
// Errors: positions out of range.
func (s System) Junctions(before, after []Position) ([]Junction, error) {
	if err := s.checkPositions(before); err != nil {
		return nil, err
	}
	if err := s.checkPositions(after); err != nil {
		return nil, err
	}
	var js []Junction
	for i, v := range s.Sleeves {
		if before[i] == after[i] {
			continue
		}
		js = append(js, Junction{v.Name, v.Inside, v.Outside, after[i] != Closed, before[i] == Unknown || after[i] == Unknown})
	}
	return js, nil
}
