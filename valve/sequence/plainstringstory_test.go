package sequence_test

import (
	"fmt"
	"math"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// strung are the strings as they stand; nil: there is none.
func (w *plainWalk) strung() *plainLoads {
	if w.str == nil {
		return nil
	}
	l := w.loads()
	l[0].outer = nil
	if w.outer != nil {
		l[0].outer = &l[1]
	}
	return &l[0]
}

// differenceOfString compares what the programme says of the string where a step
// stands still: hanger and weight indicator, balances of joints, what each place
// carries, where seals stand.
func differenceOfString(p *sequence.Plan, own *sequence.String, on sequence.WhichString, l *plainLoads, at *sequence.StringAt) string {
	if l == nil {
		return ""
	}
	s := newPlainString(&plainWalk{plainWell: newPlainWell(p)}, own, on)
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
			if len(at.Joints) == 0 {
				continue
			}
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
		case plainHung:
		case plainSeal:
			for _, x := range at.Seals {
				if d := x.Travel.In(unit.Inch) - l.travel[k]; x.Name == s.seals[m.index].Name && !l.lost[k] && math.Abs(d) > 0.02 {
					off = append(off, fmt.Sprintf("%s moved %v; the plain string's %.3f in", x.Name, x.Travel, l.travel[k]))
				}
			}
		}
	}
	return strings.Join(off, "\n")
}
