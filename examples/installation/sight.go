package main

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// seen is what must be seen in a step, and what it means if it isn't.
type seen struct {
	What []string
	Else string
}

// sights lists what a step must show at surface; what means the same where it
// isn't seen stands together.
func (u reader) sights(s *sequence.StepResult) []seen {
	var all []seen
	see := func(what, otherwise string) {
		k := slices.IndexFunc(all, func(x seen) bool { return x.Else == otherwise })
		switch {
		case k < 0:
			all = append(all, seen{[]string{what}, otherwise})
		case !slices.Contains(all[k].What, what):
			all[k].What = append(all[k].What, what)
		}
	}
	for _, m := range u.surface(s) {
		if m.shut {
			see(fmt.Sprintf("%s, shut in, shows %s", m.compartment, u.of(m.values[len(m.values)-1])),
				"the columns aren't as planned, or something between them leaks: stop and find out")
		}
	}
	for _, e := range s.Events {
		see(u.sightOf(s, e), "at the greatest planned value it hasn't moved, or the pressure doesn't come to it. Stay inside the window, bleed off, find out; what follows counts on it")
	}
	slopes := u.slopes(s)
	for n, v := range s.Volumes {
		head, text := u.pumped(v)
		switch {
		case head == "pump" && v.What == "compression":
			see("takes "+text+slopes[n], "more: it leaks, or something has opened; less: less fluid is joined to it than planned")
		case head == "pump" && strings.HasPrefix(v.What, fills):
			see(head+" "+text, "more: the formation takes fluid meanwhile; less: the level stood higher")
		case head == "pump":
			see(head+" "+text+", and as much comes back", "less back: fluid is lost; more: the well flows in")
		default:
			see("gives back "+text, "less: something holds pressure, or fluid was lost; more: the well flows in")
		}
	}
	for _, l := range s.Levels {
		see(u.level(l), "higher: the formation has more pressure than planned, or the way isn't open; lower: it has less")
	}
	for _, f := range s.Points[len(s.Points)-1].Flows {
		see(u.flow(f), "no flow: the way isn't open")
	}
	for _, z := range s.Zones {
		see(u.zone(z), "the zone is not as tested, or another way is open or shut")
	}
	return all
}

// slopes are what each volume of compression is by pressure, on the average of its
// ramp: a line on the chart that bends tells that something has moved. It is empty
// where a volume can't be told to be of one ramp.
func (u reader) slopes(s *sequence.StepResult) []string {
	words := make([]string, len(s.Volumes))
	per, many := map[string]float64{"psi": 100, "bar": 10, "MPa": 1, "kPa": 1000, "kgf/cm2": 10}[u.symbol(pressure)], u.symbol(pressure)
	for _, m := range u.surface(s) {
		var of []int
		for n, v := range s.Volumes {
			if v.Compartment == m.compartment && v.What == "compression" {
				of = append(of, n)
			}
		}
		if len(of) != len(m.values)-1 || per == 0 {
			continue
		}
		for k, n := range of {
			if change := u.in(m.values[k+1]-m.values[k], pressure) / per; change > 0 {
				words[n] = fmt.Sprintf(", %s in %g %s", u.size(s.Volumes[n].Volume/unit.Volume(change)), per, many)
			}
		}
	}
	return words
}

// sightOf says where at surface an event is seen.
func (u reader) sightOf(s *sequence.StepResult, e sequence.Event) string {
	at := ""
	for n, r := range u.readings(e.Surface) {
		if n > 0 {
			at += ", "
		}
		at += r
	}
	if e.Pull != 0 {
		at = "weight indicator " + u.of(e.Pull)
	}
	if at == "" {
		at = "no pressure at surface"
	}
	text := e.Action
	if e.Partial != "" {
		text += " (" + e.Partial + ")"
	}
	text += ": at " + at
	if i := slices.IndexFunc(s.Triggers, func(t sequence.TriggerResult) bool { return t.Action == e.Action }); i >= 0 && e.Partial == "" {
		t := s.Triggers[i]
		if !t.Threshold.Exact() {
			text += fmt.Sprintf(" by design; its own band is %s to %s", u.of(t.Threshold.Least), u.of(t.Threshold.Greatest))
		}
	}
	for _, x := range e.Across {
		if x.Differential != 0 {
			text += fmt.Sprintf("; %s across it, from %s to %s", u.of(x.Differential), x.From, x.To)
		}
	}
	return text
}

// stops are the lines at which the step is stopped.
func (u reader) stops(s *sequence.StepResult) []string {
	var all []string
	switch {
	case s.Follows != "":
		all = append(all, "step “"+s.Follows+"” hasn't gone as this programme has it: what stands here counts on it")
	case !s.OK:
		all = append(all, "NOT TO BE DONE as planned: this step fails. Mend the plan first")
	}
	for n := range s.Windows {
		w := &s.Windows[n]
		if w.Compartment != "" && bleeds(s, w) {
			continue
		}
		for _, x := range spans(w) {
			if x.Above == "" || pressureOf(x.Greatest) == 0 && !x.Greatest.Axial() {
				continue
			}
			_, of := held(s, w)
			text := fmt.Sprintf("%s above %s: %s", of, u.limit(w, x.Greatest, down), u.text(x.Above))
			if !slices.Contains(all, text) {
				all = append(all, text)
			}
		}
	}
	return append(all, "a gauge moves that this step doesn't name, or volumes don't agree")
}

// act is a line of what is done in a step, with blanks for what really was.
type act struct{ What, Planned, Limits string }

// acts lists what is done, in order.
func (u reader) acts(plan *sequence.Plan, i int, s *sequence.StepResult) []act {
	step := &plan.Steps[i]
	var all []act
	for _, name := range step.Shut {
		all = append(all, act{What: "shut in " + name})
	}
	for _, w := range step.Displace {
		a := act{What: fmt.Sprintf("displace %s to %s, %s to %s", w.Compartment, w.Fluid, u.of(w.FromMD), u.of(w.ToMD))}
		for _, v := range s.Volumes {
			if v.Compartment == w.Compartment && v.What == "displacement to "+w.Fluid {
				a.Planned = u.size(v.Volume)
			}
		}
		all = append(all, a)
	}
	for n, a := range step.Do {
		x := act{What: a.String()}
		if n < len(s.Acts) && len(s.Acts[n].Across) > 0 {
			x.Planned = u.of(s.Acts[n].Across[0].Differential) + " across it"
		}
		if a.AtMost > 0 {
			x.Limits = "at most " + u.of(a.AtMost)
		}
		all = append(all, x)
	}
	for n := range s.Windows {
		w := &s.Windows[n]
		verb, of := held(s, w)
		if w.Compartment == "" {
			of = "until the weight indicator shows"
		}
		all = append(all, act{verb + " " + of, u.of(u.shown(w, w.Planned)), u.briefly(s, w)})
	}
	if len(s.Windows) == 0 && len(step.Ramps)+len(step.Pull) > 0 { // what the proof hasn't come to
		for _, x := range u.apply(s) {
			all = append(all, act{What: x, Limits: "not known"})
		}
	}
	if step.Lands {
		all = append(all, act{What: "land the string in its hanger"})
	}
	if s.Wellhead != nil && len(s.Windows) > 0 {
		all = append(all, act{What: "flow", Planned: u.of(*s.Wellhead)})
	}
	return all
}

// repeats counts how often the plan holds each pressure: a window stands for all.
func repeats(plan *sequence.Plan, i int, w *sequence.Window) int {
	p, ok := w.Planned.Pressure()
	if !ok {
		return 1
	}
	n := 0
	for _, ramp := range plan.Steps[i].Ramps {
		if x, in := ramp[w.Compartment]; in && x == p {
			n++
		}
	}
	return n
}

// card is one fact of the first screen.
type card struct{ Head, Big, Small string }

// cards are the facts that a reader wants first.
func cards(w *work) []card {
	p, u := w.programme, w.read
	var all []card
	var high unit.Pressure
	place := ""
	var pull unit.Force
	pulled := ""
	for i := range p.Steps {
		s := &p.Steps[i]
		for _, m := range u.surface(s) {
			for _, v := range m.values {
				if v > high {
					high, place = v, fmt.Sprintf("%s, step %d", m.compartment, i+1)
				}
			}
		}
		for _, f := range s.Pull {
			if f > pull {
				pull, pulled = f, fmt.Sprintf("weight indicator, step %d", i+1)
			}
		}
	}
	if place != "" {
		all = append(all, card{"highest pressure at surface", u.of(high), place})
	}
	if pulled != "" {
		all = append(all, card{"greatest pull", u.of(pull), pulled})
	}
	for _, v := range onLocation(w) {
		all = append(all, card{"to have on location", u.size(v.volume), v.fluid + ", without reserve"})
	}
	if c, ok := fewestBarriers(p); ok {
		all = append(all, c)
	}
	return all
}

// need is a fluid that is pumped in place of others.
type need struct {
	fluid  string
	volume unit.Volume
}

// onLocation sums what is swapped and filled in by fluid, and what fills columns that
// have fallen at the end; what pressure takes comes out again.
func onLocation(w *work) []need {
	var all []need
	add := func(fluid string, v unit.Volume) {
		if v <= 0 {
			return
		}
		k := slices.IndexFunc(all, func(n need) bool { return n.fluid == fluid })
		if k < 0 {
			all = append(all, need{fluid, v})
		} else {
			all[k].volume += v
		}
	}
	steps := w.programme.Steps
	for i := range steps {
		for _, v := range steps[i].Volumes {
			if fluid, ok := broughtIn(v.What); ok {
				add(fluid, v.Volume)
			}
		}
	}
	if len(steps) > 0 {
		for _, l := range steps[len(steps)-1].Levels {
			if !l.Filled {
				add(l.Fluid, l.Fill)
			}
		}
	}
	return all
}

// fills is how what fills a column that had fallen is called.
const fills = "fill with "

// broughtIn is the fluid that a volume brings into the well, where it is one that
// stays.
func broughtIn(what string) (fluid string, ok bool) {
	if fluid, ok = strings.CutPrefix(what, fills); ok {
		return fluid, true
	}
	return cutSwap(what)
}

func cutSwap(what string) (fluid string, ok bool) {
	const head = "displacement to "
	if len(what) > len(head) && what[:len(head)] == head {
		return what[len(head):], true
	}
	return "", false
}

func fewestBarriers(p *sequence.Programme) (card, bool) {
	least, where, whom := -1, 0, ""
	for i := range p.Steps {
		standing := map[string]int{}
		for _, b := range p.Steps[i].Barriers {
			if b.Stands {
				standing[b.Formation]++
			} else if _, known := standing[b.Formation]; !known {
				standing[b.Formation] = 0
			}
		}
		for f, n := range standing {
			if least < 0 || n < least || n == least && where == i && f < whom {
				least, where, whom = n, i, f
			}
		}
	}
	if least < 0 {
		return card{}, false
	}
	return card{"barriers at the least", fmt.Sprint(least), fmt.Sprintf("before %s, first at the end of step %d", whom, where+1)}, true
}
