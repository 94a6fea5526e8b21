package record

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// put writes down what was found.
func (d *diagnoser) put(alive, dead []*node) (*Diagnosis, error) {
	x := &Diagnosis{Steps: []Step{}, Explains: []Explanation{}, Doubtful: []Explanation{}, RuledOut: []Explanation{}, Open: []string{}, Known: []State{}, Unknown: []State{}, Tried: d.tried}
	slices.SortStableFunc(dead, func(a, b *node) int {
		switch {
		case len(a.faults) != len(b.faults):
			return len(a.faults) - len(b.faults)
		case a.share < b.share:
			return -1
		case a.share > b.share:
			return 1
		}
		return 0
	})
	least := 0
	if len(alive) > 0 {
		least = len(alive[0].faults)
	}
	for _, n := range alive {
		if more := beyond(n, alive, least); more != nil {
			x.Open = append(x.Open, d.words(n, *more))
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
	base := d.base(alive, dead)
	for _, i := range slices.Sorted(keys(d.frames)) {
		x.Steps = append(x.Steps, d.stepOf(i, base, best))
	}
	if x.Finding == Contrary || x.Finding == NotTold {
		return x, nil
	}
	x.Onward = d.onward(best)
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

// says are the faults of a way in words.
func (d *diagnoser) says(n *node) []string {
	if len(n.faults) == 0 {
		return []string{"every device moved as the programme has it"}
	}
	var all []string
	for _, f := range n.faults {
		all = append(all, d.words(n, f))
	}
	return all
}

// words are those of one fault of a way.
func (d *diagnoser) words(n *node, f lapse) string {
	at := fmt.Sprintf("step %d, %s: ", f.step+1, d.given.Steps[f.step].Name)
	if m := f.early; m != nil {
		return at + fmt.Sprintf("“%s” happened early, with %s at %s; its threshold then is %s, and its band is from %s to %s",
			m.Action, m.Of, m.Surface.Rounded(digits), m.Threshold.Rounded(digits), m.Least.Rounded(digits), m.Greatest.Rounded(digits))
	}
	if f.action != "" {
		return at + "“" + f.action + "” did not happen"
	}
	text := at + f.leak + " leaks"
	o := n.outcomes[f.step]
	if o == nil {
		return text
	}
	if o.lost > 0 {
		text += fmt.Sprintf(", %s in all", size(o.lost))
		if rate := d.rate(o, f); rate != "" {
			text += ", " + rate
		}
	}
	if o.to != "" {
		return text + "; it shows in " + o.to
	}
	return text + "; where to, the record does not show"
}

// rate of a leak where the pressure was highest.
func (d *diagnoser) rate(o *outcome, f lapse) string {
	fr := d.frames[f.step]
	c := fr.column(pressure, f.leak)
	if c < 0 {
		return ""
	}
	most := slices.Max(filled(fr.values(c)))
	return fmt.Sprintf("%s a minute at %s", size(o.fits[f.leak].leak*most*60), unit.Pressure(most).Rounded(digits))
}

func (d *diagnoser) explanation(n *node) Explanation {
	e := Explanation{Says: d.says(n), Share: n.share}
	if n.share > 0 {
		e.Step, e.Against = d.given.Steps[n.worstIn].Name, n.worst.says
	}
	return e
}

// finding says what was made of the record.
func (x *Diagnosis) finding(alive []*node, best *node, d *diagnoser) {
	switch {
	case len(alive) == 0:
		x.Finding = Contrary
		x.Says = fmt.Sprintf("Nothing that was tried explains the record: %s. Stop, and find out what it is before going on.", d.contradiction(best))
	case best.share > fits:
		x.Finding = NotTold
		x.Says = fmt.Sprintf("Nothing explains the record well; what comes nearest: %s. Against it speaks: %s.", strings.Join(d.says(best), "; "), best.worst.says)
	case len(best.faults) == 0:
		x.Finding = AsPlanned
		x.Says = "The record is what the programme expects: every device moving as it should explains it."
	default:
		x.Finding = Otherwise
		x.Says = "The programme as planned is ruled out. What explains the record: " + strings.Join(d.says(best), "; ") + "."
		if n := x.equals(len(best.faults), alive); n > 1 {
			x.Says = fmt.Sprintf("The programme as planned is ruled out. %d things explain the record alike; the nearest: %s.", n, strings.Join(d.says(best), "; "))
		}
	}
}

// equals is how many ways of so many faults aren't ruled out.
func (x *Diagnosis) equals(faults int, alive []*node) int {
	n := 0
	for _, a := range alive {
		if len(a.faults) == faults {
			n++
		}
	}
	return n
}

func (d *diagnoser) contradiction(n *node) string {
	if n == nil {
		return "it can't be walked"
	}
	return fmt.Sprintf("in step %d, %s, %s", n.worstIn+1, d.given.Steps[n.worstIn].Name, n.worst.says)
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

// onward is the plan from here: what was done as it was done, what is left as planned.
func (d *diagnoser) onward(best *node) *sequence.Plan {
	q := asRun(d.given, d.frames)
	for _, m := range d.moved {
		m.set(q, m.narrowed())
	}
	for _, f := range best.faults {
		if f.early != nil {
			f.early.set(q, f.early.narrowed())
			continue
		}
		m := Moved{Action: f.action}
		a := m.find(q)
		if f.action == "" || a == nil {
			continue
		}
		never := 50_000 * unit.PSI
		for k := range a.Triggers {
			t := &a.Triggers[k]
			switch {
			case a.Axial:
				t.Pins, t.Tension = nil, unit.Exactly(5_000_000*unit.PoundForce)
			case t.Direction == falling:
				t.Pins, t.Threshold = nil, unit.Exactly(-never)
			default:
				t.Pins, t.Threshold = nil, unit.Exactly(never)
			}
		}
	}
	return q
}
