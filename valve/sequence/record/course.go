package record

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// course is what a compartment takes along the rows of a step, as a walk has it.
type course struct {
	name    string
	net     []float64 // recorded: in less out, m³
	closed  []float64 // what the walk makes of it while nothing else fixes its pressure, m³
	run     []int     // which run of such rows a row belongs to; -1: something flows
	load    []float64 // pressure times time since the step began, Pa·s
	flows   []flowing
	noise   float64
	within  float64
	driven  bool
	changed bool // something in the step changes what it takes
}

// flowing is a stretch in which something else fixes the pressure too.
type flowing struct {
	first, last int // rows
	after       string
	meets       sequence.OtherReference // that drives most
	turns       bool                    // it is driven the other way where the leg begins
}

// course puts together what is known of a compartment; nil: its volumes weren't
// recorded, or the plan doesn't say what it takes.
func (f *frame) course(seen *sequence.Seen, spots []spot, name string) *course {
	a, b := f.column(in, name), f.column(out, name)
	if a < 0 && b < 0 || !counted(seen, name) {
		return nil
	}
	x := &course{name: name, net: make([]float64, len(f.rows)), closed: make([]float64, len(f.rows)), run: make([]int, len(f.rows)), load: make([]float64, len(f.rows))}
	for _, c := range [2]int{a, b} {
		if c < 0 {
			continue
		}
		sign := 1.
		if c == b {
			sign = -1
		}
		for i, v := range f.filled[c] {
			x.net[i] += sign * v
		}
		x.noise = math.Hypot(x.noise, f.noise[c])
		x.within = math.Hypot(x.within, f.tolerance(c))
	}
	p := f.pressureOf(seen, spots, name)
	for i := range f.rows {
		if i > 0 {
			x.load[i] = x.load[i-1] + (p[i]+p[i-1])/2*(f.time[i]-f.time[i-1])
		}
	}
	x.take(f, seen, spots, p)
	return x
}

// counted tells whether the programme knows what a compartment takes, all through a
// step.
func counted(seen *sequence.Seen, name string) bool {
	for i := range seen.Legs {
		for k := range seen.Legs[i].Stretches {
			if t, ok := takeOf(&seen.Legs[i].Stretches[k], name); ok && !t.Counted {
				return false
			}
		}
	}
	return true
}

// pressureOf is the surface pressure of a compartment by row: recorded, or what the
// walk says.
func (f *frame) pressureOf(seen *sequence.Seen, spots []spot, name string) []float64 {
	if c := f.column(pressure, name); c >= 0 {
		return f.filled[c]
	}
	all := make([]float64, len(f.rows))
	for i, s := range spots {
		l := &seen.Legs[s.leg]
		a, b := shown(l.From, name), shown(l.To, name)
		if all[i] = a + s.share*(b-a); math.IsNaN(all[i]) {
			all[i] = 0
		}
	}
	return all
}

// takeOf finds a compartment in a stretch; false: it is shut in.
func takeOf(s *sequence.Stretch, name string) (sequence.Take, bool) {
	for _, t := range s.Takes {
		if t.Compartment == name {
			return t, true
		}
	}
	return sequence.Take{}, false
}

// driving is what drives most of what fixes a body too; false: nothing does.
func driving(t sequence.Take) (best sequence.OtherReference, ok bool) {
	for _, m := range t.References {
		if m.Flow != "" && m.Drive > best.Drive {
			best, ok = m, true
		}
	}
	return best, ok
}

// take fills in what the walk makes of the volume.
func (x *course) take(f *frame, seen *sequence.Seen, spots []spot, p []float64) {
	sum, from := 0., p[0] // what has gone in up to where the present stretch began, and the pressure there
	run, open := 0, false
	for i := range spots {
		s := spots[i]
		l := &seen.Legs[s.leg]
		t, _ := takeOf(&l.Stretches[min(s.stretch, len(l.Stretches)-1)], x.name)
		if i > 0 && s != spots[i-1] && (s.leg != spots[i-1].leg || s.stretch != spots[i-1].stretch) {
			sum, from = x.pass(seen, spots[i-1], s, sum, from, p[i-1])
		}
		slope := float64(t.PerPSI) / float64(unit.PSI)
		x.closed[i] = sum + slope*(p[i]-from)
		m, flows := driving(t)
		switch {
		case f.mode == byHand && s.leg == 0: // what it lets in and out, no walk foresees
			x.run[i], open = -1, false
			run = 1
		case flows && !open:
			x.flows = append(x.flows, flowing{i, i, l.Stretches[s.stretch].After, m, x.turns(seen, s, m)})
			run++
			x.run[i], open = -1, true
		case flows:
			k := &x.flows[len(x.flows)-1]
			if s.leg != spots[i-1].leg || s.stretch != spots[i-1].stretch {
				x.flows = append(x.flows, flowing{i, i, l.Stretches[s.stretch].After, m, x.turns(seen, s, m)})
			} else {
				k.last = i
			}
			x.run[i] = -1
		default:
			x.run[i], open = run, false
		}
	}
	x.driven = f.drives(x.name)
}

// pass goes from one stretch to another: what was taken up to where the new one
// begins, and the pressure there.
func (x *course) pass(seen *sequence.Seen, a, b spot, sum, from, last float64) (float64, float64) {
	for a.leg != b.leg || a.stretch != b.stretch {
		l := &seen.Legs[a.leg]
		t, _ := takeOf(&l.Stretches[min(a.stretch, len(l.Stretches)-1)], x.name)
		var at float64
		if a.stretch+1 < len(l.Stretches) && (a.leg < b.leg || a.stretch < b.stretch) {
			at = shown(l.Stretches[a.stretch+1].At, x.name)
			a.stretch++
		} else if a.leg < b.leg {
			at = last // a leg begins where the one before it has stood
			a.leg, a.stretch = a.leg+1, 0
		} else {
			return sum, from
		}
		if math.IsNaN(at) {
			at = from
		}
		sum += float64(t.PerPSI) / float64(unit.PSI) * (at - from)
		from = at
		if a.stretch > 0 {
			if u, ok := takeOf(&seen.Legs[a.leg].Stretches[a.stretch], x.name); ok {
				sum += float64(u.AtOnce)
				x.changed = x.changed || u.PerPSI != t.PerPSI || u.AtOnce != 0 || len(u.References) != len(t.References)
			}
		}
	}
	return sum, from
}

// turns tells whether what flows through a leg was driven the other way where the
// leg began.
func (x *course) turns(seen *sequence.Seen, s spot, m sequence.OtherReference) bool {
	if s.leg == 0 || seen.Legs[s.leg].Stretches[s.stretch].After != "" {
		return false
	}
	before := &seen.Legs[s.leg-1]
	t, _ := takeOf(&before.Stretches[len(before.Stretches)-1], x.name)
	for _, o := range t.References {
		if o.Name == m.Name && o.Flow != "" {
			return o.Out != m.Out
		}
	}
	return false
}

func (f *frame) drives(name string) bool {
	for _, d := range f.driven {
		if d == name {
			return true
		}
	}
	return false
}
