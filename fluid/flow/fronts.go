package flow

import "completion.example/hydrostatics/unit"

// Batch is a liquid in the well at some moment of a displacement, from its
// leading front to its trailing one.
type Batch struct {
	Name   string      `json:"name"`
	Volume unit.Volume `json:"volume"` // of it in the well
	Spans  []Span      `json:"spans"`  // in the order of flow, leading part last
}

// Span is the part of a batch in one section.
type Span struct {
	Section string      `json:"section"`
	Side    Side        `json:"side"`
	UpperMD unit.Length `json:"upper_md"` // measured depths of its ends
	LowerMD unit.Length `json:"lower_md"`
}

// Length returns the length of hole a batch takes up.
//
//	L = Σ (lower − upper)
//
// Range: any spans; they aren't checked.
//
// Source: definition.
func (s Batch) Length() unit.Length {
	var l unit.Length
	for _, x := range s.Spans {
		l += x.LowerMD - x.UpperMD
	}
	return l
}

// At returns what stands where when a volume is pumped, from the inlet on. It
// is nil for a volume outside the schedule.
//
//	volumes pumped = Σ A·L of what stands in the way of flow
//
// Range: from 0 to Pumped; nil outside it and for NaN.
//
// Source: continuity.
func (s Schedule) At(pumped unit.Volume) []Batch {
	if !(pumped >= 0 && pumped <= s.Pumped) || s.run == nil {
		return nil
	}
	v := float64(pumped)
	total := s.run.total
	var fronts []front // between liquids of different name
	for _, f := range s.run.fronts {
		if f.ahead != f.behind {
			fronts = append(fronts, f)
		}
	}
	var all []Batch
	for k := len(fronts); k >= 0; k-- {
		from, to := 0.0, total
		name := s.run.liquids[0].Name
		if k < len(fronts) {
			from = max(from, fronts[k].start+v)
			name = fronts[k].ahead
		}
		if k > 0 {
			to = min(to, fronts[k-1].start+v)
			name = fronts[k-1].behind
		}
		if to <= from {
			continue
		}
		batch := Batch{Name: name, Volume: unit.Volume(to - from)}
		for _, l := range s.run.legs {
			a, b := max(from, l.v0), min(to, l.v1)
			if b <= a {
				continue
			}
			md := func(x float64) unit.Length {
				return unit.Length(l.md0 + (l.md1-l.md0)*(x-l.v0)/(l.v1-l.v0))
			}
			u, w := md(a), md(b)
			batch.Spans = append(batch.Spans, Span{l.section.Name, l.side, min(u, w), max(u, w)})
		}
		all = append(all, batch)
	}
	return all
}
