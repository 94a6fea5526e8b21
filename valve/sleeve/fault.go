package sleeve

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// LineFault is an action with one line not as it should be, at the moment when the
// lines that move are under pressure.
type LineFault struct {
	Line    int      `json:"line"` // CloseLine, or a sleeve's open line
	Planned Mode     `json:"planned"`
	Actual  Mode     `json:"actual"`
	Effects []Effect `json:"effects"`

	// Differs are the sleeves that do something else than planned, or are no
	// longer certain to do it; empty where the fault does no harm.
	Differs []int `json:"differs"`
}

// Faults returns what an action does if one line is by mistake vented,
// pressured, or left blocked: every line in every way but the planned one. A line
// that is blocked by mistake holds nothing if it should have been vented, and
// the full pressure if it should have been pressured.
//
// Errors: the system's, an action or pressure out of range.
func (s System) Faults(before []Position, a Action, pressure unit.Pressure) ([]LineFault, error) {
	heads, err := s.prepare()
	if err := fault.Join(scope, err, fault.At("before", s.checkPositions(before)), s.checkPanel(Panel{Close: Setting{Pressured, pressure}})); err != nil {
		return nil, err
	}
	if err := s.checkAction(before, a); err != nil {
		return nil, err
	}
	mode := func(on bool) Setting {
		if on {
			return Setting{Pressured, pressure}
		}
		return Setting{}
	}
	panel := Panel{Close: mode(a.Close), Open: make([]Setting, len(s.Sleeves))}
	for i := range panel.Open {
		panel.Open[i] = mode(a.pressures(i))
	}
	effects := func(p Panel) []Effect {
		l := s.hold(p)
		return s.apply(heads, before, &l)
	}
	planned := effects(panel)
	var faults []LineFault
	for line := CloseLine; line < len(s.Sleeves); line++ {
		for _, m := range [...]Mode{Vented, Pressured, Blocked} {
			p := Panel{panel.Close, slices.Clone(panel.Open)}
			t := &p.Close
			if line != CloseLine {
				t = &p.Open[line]
			}
			f := LineFault{Line: line, Planned: t.Mode, Actual: m}
			if m == f.Planned {
				continue
			}
			t.Mode = m
			if m == Pressured {
				t.Pressure = pressure
			}
			f.Effects = effects(p)
			for i, e := range f.Effects {
				if e.After != planned[i].After {
					f.Differs = append(f.Differs, i)
				}
			}
			faults = append(faults, f)
		}
	}
	return faults, nil
}
