package main

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/unit/display"
	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

// view is what is shown of a plan while somebody changes it: the words and
// drawings of the report, in parts.
type view struct {
	Name      string     `json:"name"`
	Caution   string     `json:"caution"`
	Units     string     `json:"units"`
	Verdict   string     `json:"verdict"`
	Sentence  string     `json:"sentence"`
	Notes     []string   `json:"notes"`
	Findings  []found    `json:"findings"`
	Tightest  []margin   `json:"tightest"`
	Limits    int        `json:"limits"`
	Changes   *changed   `json:"changes"`
	Steps     []viewStep `json:"steps"`
	Windows   bool       `json:"windows"` // they are known
	Step      int        `json:"step"`    // of the drawing
	Well      string     `json:"well"`
	Fluids    []string   `json:"fluids"` // of the drawing
	Unchecked []string   `json:"unchecked"`
	Text      string     `json:"text"` // what the command prints; with the windows
}

// viewStep is a step as a list shows it.
type viewStep struct {
	Name    string       `json:"name"`
	Mark    string       `json:"mark"`
	Class   string       `json:"class"`
	Note    string       `json:"note"`
	Apply   []string     `json:"apply"`
	Moves   []string     `json:"moves"`
	Windows []viewWindow `json:"windows"`
}

// viewWindow is where a pressure or a pull may lie.
type viewWindow struct {
	Head    string   `json:"head"`
	Words   string   `json:"words"`
	Edges   []string `json:"edges"`
	Drawing string   `json:"drawing"`
}

// viewOf sets out what is known of a plan, with the drawing of the well after a
// step, counted from 1.
func viewOf(w *work, o *options, step int) (view, error) {
	p, u := w.programme, w.read
	step = min(max(step, 1), len(p.Steps))
	l := view{Name: p.Plan, Caution: calculator.Caution, Units: u.legend(), Verdict: string(p.Verdict), Sentence: sentence(w), Notes: w.notes,
		Findings: foundIn(w), Limits: len(p.Margins), Windows: w.windows, Step: step, Well: string(wellPicture(w, step-1, false)), Fluids: fluidsOf(w.plan)}
	for _, m := range p.Margins[:min(tightestShown, len(p.Margins))] {
		l.Tightest = append(l.Tightest, marginLine(w, m))
	}
	for _, x := range p.Unchecked {
		l.Unchecked = append(l.Unchecked, u.text(x))
	}
	if w.before != nil {
		l.Changes = compare(w, o.over)
	}
	for i := range p.Steps {
		l.Steps = append(l.Steps, stepOf(w, i))
	}
	if !w.windows {
		return l, nil
	}
	var text bytes.Buffer
	err := printText(&text, *o, w)
	l.Text = text.String()
	return l, err
}

const tightestShown = 5

func stepOf(w *work, i int) viewStep {
	s, u := &w.programme.Steps[i], w.read
	x := viewStep{Name: s.Name, Mark: mark(w.programme, s), Class: classOf(s), Note: s.Note, Apply: u.apply(s)}
	for _, e := range s.Events {
		x.Moves = append(x.Moves, u.happening(e))
	}
	if w.windows {
		x.Windows = u.windowsOf(s, s.Windows)
	}
	return x
}

// windowsOf sets out windows of a step.
func (u reader) windowsOf(s *sequence.StepResult, windows []sequence.Window) []viewWindow {
	var all []viewWindow
	for n := range windows {
		win := &windows[n]
		verb, of := held(s, win)
		b := viewWindow{Head: verb + " " + of, Words: u.limits(s, win), Edges: u.edges(s, win)}
		if win.Open() {
			b.Drawing = string(windowBar(u, s, win))
		}
		all = append(all, b)
	}
	return all
}

// classOf is how a step's result is coloured.
func classOf(s *sequence.StepResult) string {
	switch {
	case s.Follows != "":
		return "depends"
	case !s.OK:
		return "bad"
	}
	return "good"
}

// knob is a value of a plan that may be changed while one looks.
type knob struct {
	Path  string `json:"path"` // as -set has it, or the compartment of -gauge
	Name  string `json:"name"`
	Value string `json:"value"`
	Kind  string `json:"kind"` // pins, density, pressure or gauge
	// Of a slider: numbers in the unit of the value.
	Least    float64 `json:"least"`
	Greatest float64 `json:"greatest"`
	Step     float64 `json:"step"`
	Now      float64 `json:"now"`
	Unit     string  `json:"unit"`
}

// knobsOf lists pin counts, densities, formation pressures and gauges.
func knobsOf(p *sequence.Plan, s display.System) []knob {
	var all []knob
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			for n, t := range a.Triggers {
				if t.Pins == nil || t.Pins.Count == 0 {
					continue
				}
				c := float64(t.Pins.Count)
				all = append(all, knob{Path: fmt.Sprintf("devices.%s.actions.%s.triggers[%d].pins.count", d.Name, a.Name, n), Name: d.Name + ": " + a.Name,
					Value: fmt.Sprint(t.Pins.Count), Kind: "pins", Least: 1, Greatest: max(2*c, c+4), Step: 1, Now: c})
			}
		}
	}
	for _, f := range p.Fluids {
		if f.Density.Nominal > 0 {
			all = append(all, slider(s, "fluids."+f.Name+".density", f.Name, "density", f.Density.String(), f.Density.Nominal, display.Density, 0.2))
		}
	}
	for _, f := range p.Formations {
		if f.Pressure.Nominal > 0 {
			all = append(all, slider(s, "formations."+f.Name+".pressure", f.Name, "pressure", f.Pressure.String(), f.Pressure.Nominal, display.Pressure, 0.2))
		}
	}
	for _, c := range p.Compartments {
		if c.Surface {
			x := slider(s, c.Name, c.Name, "gauge", s.Exact(unit.Pressure(0), display.Pressure), 500*unit.PSI, display.Pressure, 0)
			x.Least, x.Now = -x.Greatest, 0
			all = append(all, x)
		}
	}
	return all
}

// slider is a knob that goes a share to either side of a value, in a hundred steps
// or so.
func slider(s display.System, path, name, kind, written string, v any, p display.Purpose, share float64) knob {
	now := s.In(v, p)
	x := knob{Path: path, Name: name, Value: written, Kind: kind, Now: now, Unit: s.Unit(p)}
	step := nice(max(share, 0.5) * now / 100)
	x.Step = step
	round := func(v float64) float64 { return float64(int(v/step+0.5)) * step }
	x.Least, x.Greatest = round(now*(1-share)), round(now*(1+share))
	return x
}

// viewer shows plans, and remembers what is known of the one that is being changed.
type viewer struct {
	text           string
	verdict, whole *sequence.Programme // of the plan as it is in text, as far as it was walked
}

// show reads what was asked, walks it, and tells what is known twice: with the
// verdict, and with the windows; and between, step by step, the windows that are found,
// those of the step that is in view before all others.
func (v *viewer) show(ctx context.Context, data []byte, o *options, step int, tell func(float64, string), show func(view), some func(step int, of []viewWindow)) error {
	w, before, err := beginWith(data, "the plan", o)
	if err != nil {
		return err
	}
	if v.text != string(data) {
		*v = viewer{text: string(data)}
	}
	if before != nil && v.verdict == nil {
		if v.verdict, err = sequence.Check(ctx, before, sequence.Options{Only: sequence.VerdictOnly, Progress: tell}); err != nil {
			return err
		}
	}
	shown := func(now, then *sequence.Programme, windows bool) error {
		if w.programme, w.windows = now, windows; before == nil {
			w.before = nil
		} else {
			w.before = then
		}
		l, err := viewOf(w, o, step)
		if err == nil {
			show(l)
		}
		return err
	}
	if before == nil && v.whole != nil {
		return shown(v.whole, nil, true)
	}
	var fault error
	whole, err := sequence.Check(ctx, w.plan, sequence.Options{Progress: tell, First: step, Verdict: func(p *sequence.Programme) {
		if before == nil {
			v.verdict = p
		}
		fault = shown(p, v.verdict, false)
	}, Windows: func(step int, of []sequence.Window) {
		some(step, w.read.windowsOf(&w.programme.Steps[step-1], of))
	}})
	if err := cmp.Or(err, fault); err != nil {
		return err
	}
	if before == nil {
		v.whole = whole
	} else if v.whole == nil {
		if v.whole, err = sequence.Check(ctx, before, sequence.Options{Progress: tell}); err != nil {
			return err
		}
	}
	return shown(whole, v.whole, true)
}

// faultsOf are the lines of an error of a plan.
func faultsOf(err error) []string {
	return slices.DeleteFunc(strings.Split(err.Error(), "\n"), func(s string) bool { return strings.TrimSpace(s) == "" })
}
