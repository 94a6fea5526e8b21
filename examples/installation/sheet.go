package main

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// sheet is what the page shows of a step.
type sheet struct {
	Number int
	*sequence.StepResult
	Mark, Class string
	Acts        []act
	Bars        []bar
	Apply       []string
	Print       string // its class: what needs smaller print to stand on one page
	Moves       []string
	Volumes     []string
	Windows     []string
	Sights      []seen
	Speeds      []string
	Stops       []string
	TestLines   []string
	Facts       []fact
	Open, Shut  []string
	Doubt       []string
	Well        markup
	Parts       []string
	Table       *table
	Picture     *picture
}

// bar is a window with its words.
type bar struct {
	Head    string
	Drawing markup
	Edges   []string
	None    string
}

// fact is a line of what the step leaves behind.
type fact struct{ Head, Text string }

// table is the pressure of every compartment at every device.
type table struct {
	Heads []string
	Rows  [][]string
}

func sheetOf(w *work, i int, appendix bool) (sheet, error) {
	s, u := &w.programme.Steps[i], w.read
	x := sheet{Number: i + 1, StepResult: s, Mark: mark(w.programme, s), Class: classOf(s), Acts: u.acts(w.plan, i, s), Apply: u.apply(s),
		Sights: u.sights(s), Stops: u.stops(s), Well: wellPicture(w, i, true)}
	for n := range s.Windows {
		win := &s.Windows[n]
		verb, of := held(s, win)
		b := bar{Head: verb + " " + of, Edges: u.edges(s, win)}
		if before := s.Windows[:n]; len(win.Opens) > 0 {
			same := slices.IndexFunc(before, func(w sequence.Window) bool { return slices.Equal(u.edges(s, &w), b.Edges) })
			if same >= 0 {
				b.Edges = []string{"opens with the same as above"}
			}
		}
		if times := repeats(w.plan, i, win); times > 1 {
			b.Head += fmt.Sprintf(", %d times", times)
		}
		if win.Open() {
			b.Drawing = windowBar(u, s, win)
		} else {
			b.None = u.limits(s, win)
		}
		x.Bars = append(x.Bars, b)
		alone := len(win.Intervals) == 1 && win.Intervals[0].Least == win.Intervals[0].Greatest
		if win.Awaits == 0 && (alone || !(verb == "bleed" && win.Open() && len(b.Edges) == 0)) { // what may end anywhere needs no word in the schedule
			x.Windows = append(x.Windows, verb+" "+of+": "+u.briefly(s, win))
		}
	}
	x.schedule(u)
	for _, r := range s.Rises {
		x.Speeds = append(x.Speeds, u.rise(r))
	}
	for _, t := range s.Tests {
		x.TestLines = append(x.TestLines, u.tested(t))
	}
	for _, t := range s.Partings {
		x.Parts = append(x.Parts, u.parting(t))
	}
	x.Open, x.Shut, x.Doubt = doors(w.plan, s)
	x.facts(u, w.programme)
	x.Print = x.print()
	if !appendix {
		return x, nil
	}
	x.Table = tableOf(u, s)
	var err error
	x.Picture, err = pressureWithDepth(u, s)
	return x, err
}

// schedule are the short words of the schedule: what is completed, fluids that are
// swapped, and the most that pressure takes.
func (x *sheet) schedule(u reader) {
	for _, e := range x.Events {
		if e.Partial != "" {
			continue
		}
		text := e.Action
		if at := u.readings(e.Surface); len(at) > 0 {
			text += " at " + strings.Join(at, ", ")
		}
		if e.Pull != 0 {
			text += " at " + u.of(e.Pull)
		}
		x.Moves = append(x.Moves, text)
	}
	for _, z := range x.Zones {
		x.Moves = append(x.Moves, fmt.Sprintf("%s gives %s", z.Formation, u.of(z.Rate)))
	}
	largest := map[string]unit.Volume{}
	var order []string
	for _, v := range x.StepResult.Volumes {
		if fluid, ok := broughtIn(v.What); ok {
			x.Volumes = append(x.Volumes, fmt.Sprintf("%s of %s into %s", u.size(v.Volume), fluid, v.Compartment))
			continue
		}
		if _, known := largest[v.Compartment]; !known && v.Volume > 0 {
			order = append(order, v.Compartment)
		}
		largest[v.Compartment] = max(largest[v.Compartment], v.Volume)
	}
	for _, c := range order {
		x.Volumes = append(x.Volumes, fmt.Sprintf("%s takes %s", c, u.size(largest[c])))
	}
}

// facts are what the step leaves behind.
func (x *sheet) facts(u reader, p *sequence.Programme) {
	s := x.StepResult
	for n := range s.Pumps {
		x.Facts = append(x.Facts, fact{"pump", strings.Join(u.pumping(s, n), "; ")})
	}
	for _, l := range s.Levels {
		x.Facts = append(x.Facts, fact{"level", u.level(l)})
	}
	for _, g := range s.Gas {
		x.Facts = append(x.Facts, fact{"gas", u.gasIn(g)})
	}
	add := func(head, format string, args ...any) {
		x.Facts = append(x.Facts, fact{head, fmt.Sprintf(format, args...)})
	}
	if t, ok := nearest(s); ok {
		add("nearest", "%s: feels %s, moves from %s; %s left", t.Action, u.of(extreme(t)), u.of(near(t)), u.of(t.Margin))
	}
	u.loads(s, add)
	var standing, lost []string
	for _, b := range s.Barriers {
		text := b.Name
		if len(b.Tested) > 0 {
			text += " (tested from " + strings.Join(b.Tested, " and ") + ")"
		}
		if b.Stands {
			standing = append(standing, text)
		}
		if b.Lost {
			lost = append(lost, b.Name)
		}
	}
	if len(standing) > 0 {
		add("barriers", "%s", strings.Join(standing, ", "))
	}
	if len(lost) > 0 {
		add("given up", "%s", strings.Join(lost, ", "))
	}
	if s.Time != nil {
		add("time", "%s", u.timeWords(s.Time))
	}
	for _, d := range u.decisions(p, s) {
		add("decide", "%s", d)
	}
	if len(s.Unknown) > 0 {
		add("UNKNOWN", "from here on it isn't known what state these are in: %s", strings.Join(s.Unknown, ", "))
	}
}

func tableOf(u reader, s *sequence.StepResult) *table {
	t := &table{Heads: []string{"device", "TVD, " + u.symbol(depth), "compartment"}}
	for _, p := range s.Points {
		t.Heads = append(t.Heads, p.Label)
	}
	for k, at := range s.Points[0].Pressures {
		row := []string{at.Device, u.number(at.TVD, depth), at.Compartment}
		for _, p := range s.Points {
			row = append(row, u.number(p.Pressures[k].Pressure, pressure))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
