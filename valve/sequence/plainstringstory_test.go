package sequence_test

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"fmt"
	"math"
	"strings"
)

// strung is the string as it stands; nil: there is none.
func (w *plainWalk) strung() *plainLoads {
	if w.str == nil {
		return nil
	}
	l, _ := w.str.load()
	return &l
}

// differenceOfString compares what the programme says of the string where a step
// stands still: hanger and weight indicator, balances of joints, what each place
// carries, where seals stand.
func differenceOfString(p *sequence.Plan, l *plainLoads, at *sequence.StringAt) string {
	if l == nil {
		return ""
	}
	s := newPlainString(&plainWalk{plainWell: newPlainWell(p)})
	var off []string
	near := func(what string, got unit.Force, want float64) {
		if d := got.In(unit.PoundForce) - want; math.Abs(d) > 20 {
			off = append(off, fmt.Sprintf("%s %v; the plain string has %.1f lbf", what, got, want))
		}
	}
	near("hanger load", at.Hanger, l.top)
	near("weight indicator", at.Reading, l.reading)
	if at.Free != l.free {
		off = append(off, fmt.Sprintf("free: %v", at.Free))
	}
	for k, m := range s.marks {
		switch m.kind {
		case plainJoint:
			j := at.Joints[0]
			if !l.lost[k] && !j.Parted {
				near("balance", j.Balance, l.balance[k])
			}
		case plainHold:
			for _, h := range at.Holds {
				if h.Depth == feet(m.depth) && h.Held {
					near("load at "+h.Name, h.Load, l.load[k])
				}
			}
		case plainSeal:
			for _, x := range at.Seals {
				if d := x.Travel.In(unit.Inch) - l.moved[k]; x.Name == s.seals[m.index].Name && !l.lost[k] && math.Abs(d) > 0.02 {
					off = append(off, fmt.Sprintf("%s moved %v; the plain string's %.3f in", x.Name, x.Travel, l.moved[k]))
				}
			}
		}
	}
	return strings.Join(off, "\n")
}
