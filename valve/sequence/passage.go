package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
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
	s := k.plan.String
	if len(s.Tools) == 0 && len(s.Friction) == 0 {
		return nil
	}
	l, err := k.loading(&k.standstills[i][len(k.standstills[i])-1])
	if err != nil {
		return err
	}
	for _, t := range s.Tools {
		p := Passage{Tool: t.Name, Diameter: t.Diameter}
		longest, at, limited := k.String.Up.LongestTool(l, t.Diameter)
		if p.Limited = limited; limited {
			p.Longest, p.At = longest, at
		}
		r.Passage = append(r.Passage, p)
	}
	if len(s.Friction) > 0 && l.Lost == 0 && !parted(l) {
		hole, err := k.String.InHole(l, k.Nominal())
		if err != nil {
			return err
		}
		x, err := hole.MostSetDown()
		if err != nil {
			return nil // it doesn't slide down by itself: nothing can be set down
		}
		r.SetDown = &SetDown{Arrives: x.Weight, Slacked: x.Slacked, Passes: x.Passes, Locked: x.Locked(), Buckled: x.Buckled, Helical: x.Helical}
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
func (v *validation) tools(s *String) {
	for i, t := range s.Tools {
		path := fmt.Sprintf("string.tools[%d]", i)
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
