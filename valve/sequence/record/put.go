package record

import (
	"slices"
	"time"

	"completion.example/valve/sequence"
)

// put writes down what was found.
func (d *diagnoser) put(alive, dead []*node) (*Diagnosis, error) {
	d.meant = d.base(alive, dead)
	x := &Diagnosis{Steps: []Step{}, Explains: []Explanation{}, Doubtful: []Explanation{}, RuledOut: []Explanation{}, Open: []string{}, Known: []State{}, Unknown: []State{}, Tried: d.tried}
	slices.SortStableFunc(dead, simplest)
	least := 0
	if len(alive) > 0 {
		least = len(alive[0].faults)
	}
	for _, n := range alive {
		if more := beyond(n, alive, least); more != nil {
			text := d.words(n, *more)
			switch t := d.tells(n, alive[0]); {
			case t != "":
				text += "; " + t
			case slices.Equal(d.follower.Ports(n.at), d.follower.Ports(alive[0].at)):
				text += "; by now every port stands the same either way"
			default:
				text += "; no step to come tells"
			}
			x.Open = append(x.Open, text)
			continue
		}
		if n.share <= fits {
			x.Explains = append(x.Explains, d.explanation(n))
		} else {
			x.Doubtful = append(x.Doubtful, d.explanation(n))
		}
	}
	for _, n := range dead {
		if len(n.faults) <= 1 && len(x.RuledOut) < 12 {
			x.RuledOut = append(x.RuledOut, d.explanation(n))
		}
	}
	best := d.best(alive, dead)
	x.finding(alive, best, d)
	d.states(x, alive)
	base := d.meant
	for _, i := range slices.Sorted(keys(d.frames)) {
		x.Steps = append(x.Steps, d.stepOf(i, base, best))
	}
	if x.Finding == Contrary || x.Finding == NotTold {
		return x, nil
	}
	var err error
	if x.Onward, err = d.onward(best); err != nil {
		return nil, err
	}
	x.Leaks = slices.ContainsFunc(best.faults, func(f lapse) bool { return f.leak != "" })
	return x, nil
}

// keys of a map, for going through them in their order.
func keys[V any](m map[int]V) func(yield func(int) bool) {
	return func(yield func(int) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// beyond is the one fault that a way has more than one of the simplest; nil where it
// isn't one of those with something added.
func beyond(n *node, alive []*node, least int) *lapse {
	if len(n.faults) != least+1 {
		return nil
	}
	for i := range n.faults {
		rest := append(slices.Clone(n.faults[:i]), n.faults[i+1:]...)
		if slices.ContainsFunc(alive, func(o *node) bool { return len(o.faults) == least && o.share <= fits && slices.Equal(o.faults, rest) }) {
			return &n.faults[i]
		}
	}
	return nil
}

// best is the way that is reported: the simplest that explains the record, or else
// what speaks least against.
func (d *diagnoser) best(alive, dead []*node) *node {
	for _, n := range alive {
		if n.share <= fits {
			return n
		}
	}
	var best *node
	for _, n := range append(slices.Clone(alive), dead...) {
		if best == nil || n.worstIn > best.worstIn && n.share > ruledOut && best.share > ruledOut || n.share < best.share {
			best = n
		}
	}
	return best
}

// base is the way with no fault, as far as it was walked.
func (d *diagnoser) base(alive, dead []*node) *node {
	for _, n := range append(slices.Clone(alive), dead...) {
		if len(n.faults) == 0 {
			return n
		}
	}
	return nil
}

// states says what is known of ports and devices.
func (d *diagnoser) states(x *Diagnosis, alive []*node) {
	type state struct{ of, is string }
	seen := map[string][]string{}
	var order []string
	add := func(s state) {
		if _, known := seen[s.of]; !known {
			order = append(order, s.of)
		}
		if !slices.Contains(seen[s.of], s.is) {
			seen[s.of] = append(seen[s.of], s.is)
		}
	}
	for _, n := range alive {
		for _, p := range d.follower.Ports(n.at) {
			is := "shut"
			if p.Open {
				is = "open"
			}
			add(state{p.Port, is})
		}
		done := d.follower.Happened(n.at)
		for _, dev := range d.given.Devices {
			for _, a := range dev.Actions {
				name := dev.Name + ": " + a.Name
				switch {
				case a.Holds && slices.ContainsFunc(dev.Actions, func(b sequence.Action) bool { return b.Unseats && done[dev.Name+": "+b.Name] > 0 }):
					add(state{dev.Name, "unseated"})
				case a.Holds && done[name] > 0:
					add(state{dev.Name, "set"})
				case a.Holds:
					add(state{dev.Name, "not set"})
				case a.Releases && done[name] > 0:
					add(state{dev.Name, "parted"})
				case a.Releases:
					add(state{dev.Name, "whole"})
				}
			}
		}
	}
	for _, of := range order {
		if len(seen[of]) == 1 {
			x.Known = append(x.Known, State{Of: of, Is: seen[of][0]})
		} else {
			x.Unknown = append(x.Unknown, State{Of: of, Maybe: seen[of], Why: "no instrument has told so far"})
		}
	}
	if len(alive) == 0 {
		for _, p := range d.given.Ports {
			x.Unknown = append(x.Unknown, State{Of: p.Name, Maybe: []string{"open", "shut"}, Why: "the record contradicts the programme"})
		}
	}
}

// stepOf writes down what one step expects and shows.
func (d *diagnoser) stepOf(i int, base, best *node) Step {
	f := d.frames[i]
	s := Step{Number: i + 1, Name: d.given.Steps[i].Name, Rows: len(f.rows), Left: string(f.mode), Checks: []Check{}}
	s.Took = time.Duration((f.time[len(f.time)-1] - f.time[0]) * float64(time.Second)).Round(time.Second).String()
	for _, m := range d.moved {
		if m.step == i {
			s.Moved = append(s.Moved, m)
		}
	}
	n := base
	if n == nil || n.seen[i] == nil || n.outcomes[i] == nil {
		n = best
	}
	if n == nil || n.seen[i] == nil {
		return s
	}
	c := &checking{d, f, &s, n.seen[i], n.outcomes[i]}
	c.all()
	return s
}
