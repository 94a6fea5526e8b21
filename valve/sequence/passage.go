package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/stringload"
)

// Passage is the longest stiff tool of a diameter that passes through the string as it
// lies: bent with the hole, and buckled.
type Passage struct {
	Tool     string      `json:"tool"`
	Diameter unit.Length `json:"diameter"`
	// Longest is how long it may be, and At where it is stopped; not Limited where
	// nothing bends the string. Neither bore nor couplings are looked at: a drift is.
	Longest unit.Length `json:"longest,omitempty"`
	At      unit.Length `json:"at,omitempty"`
	Limited bool        `json:"limited"`
}

// SetDown is the greatest weight that arrives at the lower end of the string, running
// free, with all of its hook load slacked off.
type SetDown struct {
	Arrives unit.Force  `json:"arrives"`
	Slacked unit.Force  `json:"slacked"` // off at surface
	Passes  float64     `json:"passes"`  // share of the next weight slacked off that arrives
	Locked  bool        `json:"locked"`  // hardly any: see drag.LockUp
	Buckled unit.Length `json:"buckled"`
	Helical unit.Length `json:"helical"`
}

// passages tells how tools and set-down weight come down the string after a step.
func (k *checker) passages(i int, r *StepResult) error {
	if k.String == nil || len(k.standstills[i]) == 0 {
		return nil
	}
	var l *movement.NestedLoading
	for _, s := range k.plan.strings() {
		if len(s.Tools) == 0 && len(s.Friction) == 0 {
			continue
		}
		if l == nil {
			var err error
			if l, err = k.loading(&k.standstills[i][len(k.standstills[i])-1]); err != nil {
				return err
			}
		}
		if err := k.passagesOf(s, l, r); err != nil {
			return err
		}
	}
	return nil
}

func (k *checker) passagesOf(s ownString, both *movement.NestedLoading, r *StepResult) error {
	room, l := k.room(s.of), &both.Inner
	if s.of == stringload.Outer {
		l = &both.Outer
	}
	for _, t := range s.Tools {
		p := Passage{Tool: t.Name, Diameter: t.Diameter}
		longest, at, limited := room.Up.LongestTool(l, t.Diameter)
		if p.Limited = limited; limited {
			p.Longest, p.At = longest, at
		}
		r.Passage = append(r.Passage, p)
	}
	if len(s.Friction) > 0 && l.Lost == 0 && !parted(l) {
		hole, err := room.InHole(l, k.Nominal())
		if err != nil {
			return err
		}
		x, err := hole.MostSetDown()
		if err != nil {
			return nil // it doesn't slide down by itself: nothing can be set down
		}
		down := &SetDown{Arrives: x.Weight, Slacked: x.Slacked, Passes: x.Passes, Locked: x.Locked(), Buckled: x.Buckled, Helical: x.Helical}
		if s.of == stringload.Outer {
			r.OuterSetDown = down
		} else {
			r.SetDown = down
		}
	}
	return nil
}

func parted(l *movement.Loading) bool {
	for _, j := range l.Joints {
		if j.Parted {
			return true
		}
	}
	return false
}

// tools checks the tools of a string.
func (v *validation) tools(at string, s *String) {
	for i, t := range s.Tools {
		path := fmt.Sprintf("%s.tools[%d]", at, i)
		if t.Name == "" {
			v.fault(path+".name", "is missing")
		}
		v.positive(path+".diameter", t.Diameter, float64(t.Diameter))
		for k, x := range s.Sections {
			if pipe, err := x.Pipe.find(v.pipes); err == nil && t.Diameter >= pipe.ID {
				v.fault(path+".diameter", "is %v; must be below the bore of %v of section %d", t.Diameter, pipe.ID, k+1)
			}
		}
	}
}
