package sequence

import (
	"context"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
)

// Rest is the plan that goes on after a step: its beginning is how the step leaves
// the well, in all choices of the values, and its steps are those that follow. After
// the last step it has one in which nothing is done.
//
// Where the ways that the programme may go leave a pressure at different places, its
// band covers all of them, and what it depends on is given up: the rest is then proved
// for more than can be, never for less. A state that can't be written so is an error.
func (p *Plan) Rest(ctx context.Context, step string) (*Plan, error) {
	if p == nil {
		return nil, errNoPlan
	}
	flat := p.Steps
	if x := p.Expanded(); len(x.Steps) > 0 && x.Steps[0].flow != nil {
		flat = x.Steps
	}
	i := slices.IndexFunc(flat, func(s Step) bool { return s.Name == step })
	if i < 0 {
		var names []string
		for _, s := range flat {
			names = append(names, s.Name)
		}
		return nil, fmt.Errorf("sequence: the plan has no step %q; there are %q", step, names)
	}
	b, err := p.stateAfter(ctx, i, step)
	if err != nil {
		return nil, fmt.Errorf("sequence: the state after step %q: %w", step, err)
	}
	q := p.Clone()
	q.Begin = b
	if flat[i].flow != nil {
		q.Steps, err = p.After(i, false)
	} else {
		q.Steps = q.Steps[i+1:]
	}
	if err != nil {
		return nil, err
	}
	if len(q.Steps) == 0 {
		q.Steps = []Step{{Name: "as it stands"}}
	}
	if _, err := q.compiled(); err != nil {
		return nil, fmt.Errorf("sequence: the state after step %q: %w", step, err)
	}
	return q, nil
}

// stateAfter is how a step leaves the well, whichever way through the branches led to it;
// its number is that in the list of all steps.
func (p *Plan) stateAfter(ctx context.Context, i int, name string) (*Begin, error) {
	c, err := p.compiled()
	if err != nil {
		return nil, err
	}
	run, err := c.Walk(ctx, affine.Box(len(c.Network.Symbols), c.Nominal()), proof.Options{To: i + 1, Quiet: true})
	switch {
	case err != nil:
		return nil, err
	case run.Open != nil:
		return nil, run.Open
	case len(run.After) <= i || len(run.After[i]) == 0:
		return nil, fmt.Errorf("the plan is left in step %q: with no values does it do what it intends", c.plan.Steps[max(run.Died, 0)].Name)
	}
	l := &leaving{compiled: c, worlds: run.After[i], begin: &Begin{After: fmt.Sprintf("step %q of %q", name, p.Name)}}
	if err := l.alike(); err != nil {
		return nil, err
	}
	sharp, err := c.At(c.Nominal()).Walk(ctx, affine.Box(0, nil), proof.Options{To: i + 1, Quiet: true})
	if err == nil && sharp.Open == nil && len(sharp.After) > i && len(sharp.After[i]) > 0 {
		l.nominal = sharp.After[i][0]
	}
	return l.begin, l.write(i)
}

// alike makes sure that the worlds differ in nothing for which a beginning has one entry.
func (l *leaving) alike() error {
	const which = "it depends on which way its branches went: "
	first := l.worlds[0].State
	for _, w := range l.worlds {
		if len(w.Stuck) > 0 {
			return fmt.Errorf(which+"%q may be stuck there, which can't be written; take the state after the step that moves it by hand, or the plan as it went, without branches", l.Network.Actions[w.Stuck[0]].Name)
		}
		if w.State.Temperature != first.Temperature {
			return fmt.Errorf(which + "the well has one temperature or another; take the plan as it went, without branches")
		}
		for i := range first.Compartments {
			if !slices.Equal(w.State.Layers(i), first.Layers(i)) {
				return fmt.Errorf(which+"%q holds one fluid or another; take the plan as it went, without branches", first.Compartments[i].Name)
			}
		}
	}
	return nil
}

// leaving writes the state in which worlds are left.
type leaving struct {
	*compiled
	worlds  []*walk.World
	nominal *walk.World // with the nominal values alone; nil: it isn't left there
	begin   *Begin
}

func (l *leaving) write(step int) error {
	b, s := l.begin, l.worlds[0].State
	if len(l.names) > 0 {
		b.Temperature = l.names[s.Temperature]
	}
	if err := l.happened(); err != nil {
		return err
	}
	for i := range l.Network.Actions {
		l.progress(i)
	}
	if len(l.worlds) == 1 {
		b.If = l.conditions(l.worlds[0].Region.Rows())
	}
	if err := l.surfaces(step); err != nil {
		return err
	}
	for f, x := range l.Network.Formations {
		if !slices.ContainsFunc(l.worlds, func(w *walk.World) bool { return !w.Live[f] }) {
			b.Flowed = append(b.Flowed, x.Name)
		}
	}
	b.Layers = map[string][]Layer{}
	for i := range s.Compartments {
		if layers := l.column(s, i); !slices.Equal(layers, l.ownLayers(i)) {
			b.Layers[s.Compartments[i].Name] = layers
		}
	}
	b.Levels = l.levels(func(w *walk.World) *well.State { return w.State })
	l.trapped()
	return l.string()
}

// ownLayers is what the plan's own list puts into a compartment.
func (l *leaving) ownLayers(i int) []Layer {
	c := l.plan.Compartments[i]
	if c.Fluid != "" {
		return []Layer{{c.Fluid, c.BottomMD}}
	}
	return c.Layers
}

func (l *leaving) column(s *well.State, i int) []Layer {
	var all []Layer
	for _, x := range s.Layers(i) {
		all = append(all, Layer{l.plan.Fluids[x.Fluid].Name, unit.Length(x.Bottom.MD)})
	}
	if level, gas := s.GasIn(i); gas && s.GasMoved(i) {
		all[0].ToMD = unit.Length(level.F.At(l.Nominal()))
	}
	return all
}

// happened writes what has happened, in the order of the last time of each, so that
// it leaves the devices as they are.
func (l *leaving) happened() error {
	last := func(w *walk.World) []int {
		var all []int // the last first
		add := func(a int) {
			if w.Times[a] > 0 && !slices.Contains(all, a) {
				all = append(all, a)
			}
		}
		for t := w.Trail; t != nil; t = t.Before {
			if t.Complete && t.Action >= 0 {
				add(l.Network.Actions[t.Action].Of)
			}
		}
		if l.Begin != nil {
			for k := len(l.Begin.May) - 1; k >= 0; k-- {
				if w.Begun&(1<<k) != 0 {
					add(l.Begin.May[k])
				}
			}
			for k := len(l.Begin.Happened) - 1; k >= 0; k-- {
				add(l.Begin.Happened[k])
			}
		}
		slices.Reverse(all)
		return all
	}
	base := last(l.worlds[0])
	var all, may []int
	for _, a := range base {
		if slices.ContainsFunc(l.worlds, func(w *walk.World) bool { return w.Times[a] == 0 }) {
			may = append(may, a)
		} else {
			all = append(all, a)
		}
	}
	for _, w := range l.worlds[1:] {
		for _, a := range last(w) {
			if !slices.Contains(all, a) && !slices.Contains(may, a) {
				may = append(may, a)
			}
		}
	}
	name := func(list []int) []string {
		var names []string
		for _, a := range list {
			names = append(names, l.Network.Actions[a].Name)
		}
		return names
	}
	if len(may) > mostMay {
		return fmt.Errorf("it isn't certain which of %q have happened: too many to go on from", name(may))
	}
	l.begin.Happened, l.begin.May = name(all), name(may)
	return l.stands(all, may)
}

// stands finds the ports that stand otherwise than what has happened makes them, and
// holds the armed actions against it.
func (l *leaving) stands(all, may []int) error {
	for k, w := range l.worlds {
		open, armed := l.runIn()
		for _, a := range append(slices.Clone(all), may...) {
			if w.Times[a] > 0 {
				l.Network.Happens(a, open, armed)
			}
		}
		if !slices.Equal(armed, w.State.Armed) {
			return fmt.Errorf("it isn't certain in which state %q are", l.uncertain(armed, w.State.Armed))
		}
		for p, is := range w.State.Open {
			name := l.Network.Ports[p].Name
			switch {
			case is == open[p]:
			case is && !slices.Contains(l.begin.Open, name):
				l.begin.Open = append(l.begin.Open, name)
			case !is && !slices.Contains(l.begin.Shut, name):
				l.begin.Shut = append(l.begin.Shut, name)
			}
			if k > 0 && is != l.worlds[0].State.Open[p] && (slices.Contains(l.begin.Open, name) || slices.Contains(l.begin.Shut, name)) {
				return fmt.Errorf("it isn't certain whether %q is open", name)
			}
		}
	}
	return nil
}

// runIn is how ports and devices are by the plan's own lists.
func (l *leaving) runIn() (open, armed []bool) {
	for _, p := range l.plan.Ports {
		open = append(open, p.Open)
	}
	for i := range l.Network.Actions {
		armed = append(armed, !l.plan.action(l.Network.Actions[i].Name).Disarmed)
	}
	return open, armed
}

func (l *leaving) uncertain(a, b []bool) []string {
	var names []string
	for i := range a {
		if d := l.plan.Devices[l.Network.Actions[i].Device].Name; a[i] != b[i] && !slices.Contains(names, d) {
			names = append(names, d)
		}
	}
	return names
}
