package sequence

import (
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
)

// Act is something that a person does by hand and not by pressure: with a ball or a
// plug, a tool on wireline or coiled tubing, by turning the string, or at a valve or
// a line at surface. Just one of Drop, Pull, Shift, Turn, Open, Close, Vent, Drain and
// Fill says what. What it needs is judged as everything else: that the way down is open, that
// there is anything to move, and that no more than AtMost stands across what it opens.
type Act struct {
	Drop  string `json:"drop,omitzero"`  // port that a ball, dart or plug shuts, dropped or run
	Pull  string `json:"pull,omitzero"`  // port that is open once the ball or plug in it is pulled
	Shift string `json:"shift,omitzero"` // action that a tool makes happen: "device: action"
	Turn  string `json:"turn,omitzero"`  // action that turning the string makes happen
	Open  string `json:"open,omitzero"`  // port at surface: a valve that is opened, a line that is connected
	Close string `json:"close,omitzero"` // port at surface: shut, or taken off
	Vent  string `json:"vent,omitzero"`  // compartment that is bled to 0 psi
	Drain string `json:"drain,omitzero"` // compartment that is left open to the air until its level has fallen to where its formation carries it
	Fill  string `json:"fill,omitzero"`  // compartment whose level is brought back to surface

	By      string   `json:"by,omitzero"`       // what is used, for the reader: a 1.75 in ball, wireline
	In      string   `json:"in,omitzero"`       // compartment in which it is dropped or run from surface; the string's inside where left out
	Through []string `json:"through,omitempty"` // ports on its way, from the top down
	// AtMost is the differential that may stand across each port that the act opens.
	// Where it is left out, a pulled plug must have none (to the 0.5 psi that count
	// as none); for the others it isn't judged.
	AtMost unit.Pressure `json:"at_most,omitzero" was:"at most"`
	Takes  string        `json:"takes,omitzero"` // how long, such as "4h"
}

// verbs are what an act may be, and the name that it is done to.
func (a *Act) verbs() (kinds, names []string) {
	for _, v := range [][2]string{{"drop", a.Drop}, {"pull", a.Pull}, {"shift", a.Shift}, {"turn", a.Turn}, {"open", a.Open}, {"close", a.Close}, {"vent", a.Vent}, {"drain", a.Drain}, {"fill", a.Fill}} {
		if v[1] != "" {
			kinds, names = append(kinds, v[0]), append(names, v[1])
		}
	}
	return kinds, names
}

// String says what is done.
func (a Act) String() string {
	kinds, names := a.verbs()
	if len(kinds) != 1 {
		return "nothing"
	}
	by := a.By
	text := map[string]string{
		"drop": "drop " + orElse(by, "a ball or plug") + ": shuts “%s”", "pull": "pull the ball or plug: opens “%s”", "shift": "shift by " + orElse(by, "a tool") + ": “%s”",
		"turn": "turn the string: “%s”", "open": "open at surface: “%s”", "close": "close at surface: “%s”", "vent": "vent “%s” to 0 psi",
		"drain": "leave “%s” open to the air until its level has fallen", "fill": "fill “%s” to surface",
	}[kinds[0]]
	if by := orElse(by, ""); by != "" && !strings.Contains(text, by) {
		text += " (" + by + ")"
	}
	return fmt.Sprintf(text, names[0])
}

func orElse(text, standard string) string {
	if text == "" {
		return standard
	}
	return strings.ReplaceAll(text, "%", "%%")
}

// way is the compartment in which an act begins.
func (p *Plan) way(a *Act) string {
	if a.In == "" && p.String != nil {
		return p.String.Inside
	}
	return a.In
}

func (v *validation) acts(path string, s Step) {
	for k := range s.Do {
		a := &s.Do[k]
		at := fmt.Sprintf("%s.do[%d]", path, k)
		kinds, names := a.verbs()
		if len(kinds) != 1 {
			v.fault(at, "does %d things; must be just one of drop, pull, shift, turn, open, close, vent, drain and fill", len(kinds))
			continue
		}
		v.span(at+".takes", a.Takes)
		name, to := names[0], at+"."+kinds[0]
		if a.AtMost < 0 {
			v.fault(at+`.at_most`, "is %v; must not be negative", a.AtMost)
		}
		v.chamber(at+`.at_most`, a.AtMost)
		run := false
		switch kinds[0] {
		case "drop", "pull":
			run = known(v, to, "port", name, v.plan.Ports, portName)
		case "shift":
			v.actionExists(to, name)
			run = true
		case "turn":
			v.actionExists(to, name)
			if v.plan.String == nil {
				v.fault(to, "needs the plan's string")
			}
		case "open", "close":
			if known(v, to, "port", name, v.plan.Ports, portName) {
				if d := v.plan.port(name).MD; d != 0 {
					v.fault(to, "%q is at %v; only what is at surface (0 ft) is opened or closed there: shift, drop or pull moves the rest", name, d)
				}
			}
		case "vent":
			v.surface(to, name)
		case "drain", "fill":
			v.surface(to, name)
			v.once(to, s.Do[:k], name)
		}
		if !run && (a.In != "" || len(a.Through) > 0) {
			v.fault(at, "runs nothing in the well: in and through have no place in it")
		}
		if run {
			v.onItsWay(at, a, kinds[0], name)
		}
	}
}

// once checks that a level is moved one way in a step: what comes to it and goes is
// counted between the places where a step stands still.
func (v *validation) once(path string, before []Act, name string) {
	for i := range before {
		if before[i].Drain == name || before[i].Fill == name {
			v.fault(path, "the level of %q is moved twice in one step; put the second into a step of its own", name)
			return
		}
	}
}

func (p *Plan) port(name string) *Port {
	for i := range p.Ports {
		if p.Ports[i].Name == name {
			return &p.Ports[i]
		}
	}
	return nil
}

// onItsWay checks that what is dropped or run comes to where it acts.
func (v *validation) onItsWay(path string, a *Act, kind, name string) {
	in := v.plan.way(a)
	if in == "" {
		v.fault(path+".in", "is missing: the compartment in which it is dropped or run from surface")
		return
	}
	if !v.compartment(path+".in", in) {
		return
	}
	v.surface(path+".in", in)
	for k, through := range a.Through {
		at := fmt.Sprintf("%s.through[%d]", path, k)
		if !known(v, at, "port", through, v.plan.Ports, portName) {
			return
		}
		p := v.plan.port(through)
		i := slices.Index(p.Joins, in)
		if len(p.Joins) != 2 || i < 0 {
			v.fault(at, "port %q joins %q; what is run stands in %q there", through, p.Joins, in)
			return
		}
		in = p.Joins[1-i]
	}
	var depth unit.Length
	if kind == "shift" {
		device, _, _ := strings.Cut(name, ": ")
		for _, d := range v.plan.Devices {
			if d.Name == device {
				depth = d.MD
			}
		}
	} else {
		p := v.plan.port(name)
		depth = p.MD
		if !slices.Contains(p.Joins, in) {
			v.fault(path+".through", "%q is run in %q, and “%s” joins %q: list the ports on its way, from the top down", kind, in, name, p.Joins)
			return
		}
	}
	for _, c := range v.plan.Compartments {
		if c.Name == in && !(c.TopMD <= depth && depth <= c.BottomMD) {
			v.fault(path+".through", "it stands in %q, which reaches from %v to %v, and acts at %v: list the ports on its way, from the top down", in, c.TopMD, c.BottomMD, depth)
		}
	}
}

// acts puts together what is done by hand.
func (c *compiler) acts(s *Step, x *walk.Step, g *judge.Goals) {
	for k := range s.Do {
		a := &s.Do[k]
		kinds, names := a.verbs()
		y := walk.Act{Port: -1, Action: -1, Vent: -1, Drain: -1, Fill: -1, Takes: duration(a.Takes).Seconds()}
		limit := judge.Act{Most: float64(a.AtMost), HasMost: a.AtMost > 0}
		for _, name := range a.Through {
			y.Through = append(y.Through, c.by.port[name])
		}
		switch name := names[0]; kinds[0] {
		case "vent":
			y.Vent = c.by.compartment[name]
		case "drain":
			y.Drain = c.by.compartment[name]
		case "fill":
			y.Fill = c.by.compartment[name]
		case "shift", "turn":
			y.Action = c.by.action[name]
			c.Network.Actions[y.Action].Watched = true // it isn't a matter of its own row alone
			y.Across = c.Network.Actions[y.Action].Opens
		default:
			y.Port, y.Opens = c.by.port[name], kinds[0] == "pull" || kinds[0] == "open"
			if y.Opens {
				y.Across = []int{y.Port}
			}
			if kinds[0] == "pull" && a.AtMost == 0 {
				limit = judge.Act{Most: float64(0.5 * unit.PSI), HasMost: true}
			}
		}
		x.Acts = append(x.Acts, y)
		g.Acts = append(g.Acts, limit)
	}
}

// ActResult is an act by hand, with the nominal values.
type ActResult struct {
	Act    string   `json:"act"`
	Done   bool     `json:"done"`             // else something kept it from being done
	Across []Across `json:"across,omitempty"` // over each port that it opens, just before
}

// acts writes what a step does by hand.
func (k *checker) acts(i int, r *StepResult) {
	for n, a := range k.plan.Steps[i].Do {
		x := ActResult{Act: a.String(), Done: a.Vent != "" || a.Drain != "" || a.Fill != ""}
		for _, e := range events(k.ends[i], i) {
			if e.Act == n+1 {
				x.Done, x.Across = true, k.overPorts(e.Across)
			}
		}
		r.Acts = append(r.Acts, x)
	}
}

// handWords says what keeps an act from being done.
func (k *checker) handWords(f *Finding, m, shown *judge.Margin) {
	a := &k.plan.Steps[m.Step].Do[m.Index]
	kinds, names := a.verbs()
	f.Kind, f.Device = ByHand, names[0]
	switch walk.Hindrance(shown.Depth) { //nolint:gosec // the judge wrote it
	case walk.Blocked:
		f.Says = "what is dropped or run can't come there: the way is shut"
		f.Numbers = fmt.Sprintf("on its way are %q", a.Through)
		f.Cure = "open what is on its way first"
	case walk.Already:
		f.Says = "there is nothing to do: it stands so already"
		f.Numbers = fmt.Sprintf("“%s” is %s at that moment", names[0], map[bool]string{true: "open", false: "shut"}[kinds[0] == "pull" || kinds[0] == "open"])
		f.Cure = "take the act out, or look at what moved it before"
	case walk.NotArmed:
		f.Says = "there is nothing to shift: it has happened before, or what arms it has not"
		f.Numbers = "the device stands as the steps before left it"
		f.Cure = "take the act out, or let first happen what arms it"
	default:
		most := k.Limits.Steps[m.Step].Acts[m.Index].Most
		f.Says = "more stands across it than the act bears when it opens"
		f.Numbers = fmt.Sprintf("%s across it; at most %s", psi(unit.Pressure(most-shown.Least)), psi(unit.Pressure(most)))
		f.Cure = "equalise before it is opened, or state what it bears (at_most)"
	}
}

// handMargin is what an act by hand leaves.
func (k *checker) handMargin(m *judge.Margin) (name string, of float64) {
	_, names := k.plan.Steps[m.Step].Do[m.Index].verbs()
	return names[0] + ", across it", k.Limits.Steps[m.Step].Acts[m.Index].Most
}

// notJudged tells of acts that nothing bounds.
func (a *Act) notJudged() bool {
	return a.AtMost == 0 && (a.Shift != "" || a.Turn != "" || a.Open != "")
}
