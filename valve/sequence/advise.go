package sequence

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
	"completion.example/valve/sequence/internal/proof"
)

// advise looks for what opens the windows that are empty, step by step: the smallest
// change of each kind. Those behind a step that fails mostly fail for the same reason:
// they are first tried with what mends it, and searched by themselves only where that
// doesn't open them. What one limit alone shuts from end to end, and no change has opened
// in a step before, isn't searched again.
func (k *checker) advise() error {
	failing := map[int]bool{}
	for _, f := range k.out.Failures {
		failing[f.Step] = true
	}
	var cures []*cure
	shut := map[string]bool{} // limits for which nothing was found
	for i := range k.programme.Steps {
		var empty []*Window
		windows := k.programme.Steps[i].Windows
		for n := range windows {
			if w := &windows[n]; !w.Open() {
				empty = append(empty, w)
			}
		}
		if len(empty) > 0 {
			k.progress.tell(0.99, "looking for what opens a window of step "+fmt.Sprint(i+1))
			rest, err := k.cured(i, empty, cures)
			rest = slices.DeleteFunc(rest, func(w *Window) bool {
				w.Advised = w.Advised || shut[w.wall] || w.Awaits > 0
				return shut[w.wall] || w.Awaits > 0
			})
			if err == nil && len(rest) > 0 {
				err = k.open(i, rest)
			}
			if err != nil {
				return err
			}
			for _, w := range rest {
				shut[w.wall] = w.wall != "" && len(w.Opens) == 0 || shut[w.wall]
			}
		}
		if len(k.out.Before) > i && len(k.out.Before[i]) > 0 && (len(empty) > 0 || failing[i]) {
			cures = append(cures, k.cures(i)...)
		}
	}
	return nil
}

// open looks for what opens the windows of a step.
func (k *checker) open(i int, empty []*Window) error {
	pipes, err := catalogue.Standard()
	if err != nil {
		return err
	}
	base, err := k.writable(pipes)
	if err != nil {
		return err
	}
	o := &opener{checker: k, pipes: pipes, base: base, step: i, empty: empty, known: k.failing(k.out.Run)}
	for n := range k.programme.Steps[i].Windows {
		w := &k.programme.Steps[i].Windows[n]
		o.mends = o.mends || w.Open() && !w.Inside
	}
	var all []candidate
	if !o.mends {
		if err := o.asPlanned(); err != nil {
			return err
		}
		all = o.candidates()
	}
	found := make([][]*Advice, len(all)) // by candidate, then by window
	faults := make([]error, len(all))
	atOnce(len(all), k.options.Workers, func(n int) { found[n], faults[n] = o.smallest(&all[n]) })
	if err := first(faults...); err != nil {
		return err
	}
	pressed, err := o.pressures()
	if err != nil {
		return err
	}
	for n, w := range empty {
		w.Advised = true
		for _, kind := range []AdviceKind{ChangePins, ChangeDensity, ChangePressure, ChangePull, ChangeOrder} {
			best := -1
			for c := range all {
				if found[c][n] == nil || all[c].kind != kind {
					continue
				}
				if best < 0 || all[c].size[n] < all[best].size[n] {
					best = c
				}
			}
			switch {
			case best >= 0:
				w.Opens = append(w.Opens, *found[best][n])
			case pressed[n] != nil && pressed[n].Kind == kind:
				w.Opens = append(w.Opens, *pressed[n])
			}
		}
		for a := range w.Opens {
			if err := o.whole(w, &w.Opens[a]); err != nil {
				return err
			}
		}
		inOrder(w.Opens, func(a, b Advice) int { return -compare(a.Proves, b.Proves) })
	}
	return nil
}

// writable is a copy of the plan as given, without an assembly and its branches written out:
// what changes are written into.
func (k *checker) writable(pipes catalogue.Catalogue) (*Plan, error) {
	p, err := k.given.lower(pipes)
	if err != nil {
		return nil, err
	}
	return p.Expanded().Clone(), nil
}

// take makes changes in a plan, one after the other.
func (p *Plan) take(edits []Edit) error {
	for _, e := range edits {
		if _, err := p.Set(e.Path, e.Now); err != nil {
			return err
		}
	}
	return nil
}

// opener looks for what opens the windows of one step.
type opener struct {
	*checker
	pipes catalogue.Catalogue
	base  *Plan // without an assembly, its branches written out
	step  int
	empty []*Window
	known map[string]bool // what fails as planned
	mends bool            // another pressure of the step mends it, and nothing else is looked for
	shuts [][]shutting    // what shuts each window with the nominal values as planned
}

// candidate is one thing that can be changed, one way, by so many of its steps.
type candidate struct {
	kind   AdviceKind
	sizes  []int // in the order in which they are tried
	part   bool  // what lies between two sizes may do, too
	change func(p *Plan, n int) (*Advice, error)
	weigh  func(n int) float64
	size   []float64 // found, by window
}

// Sizes of a change, in its steps, from the least on.
var growing = []int{1, 2, 4, 8, 16, 32}

// candidates are all single changes that are tried.
func (o *opener) candidates() []candidate {
	var all []candidate
	all = append(all, o.pins()...)
	all = append(all, o.densities()...)
	all = append(all, o.places()...)
	for n := range all {
		all[n].size = make([]float64, len(o.empty))
	}
	return all
}

// pins are the pin counts of the devices that clash.
func (o *opener) pins() []candidate {
	var all []candidate
	seen := map[string]bool{}
	for _, w := range o.empty {
		for _, name := range w.actions {
			if seen[name] {
				continue
			}
			seen[name] = true
			a := o.base.action(name)
			device, action, _ := strings.Cut(name, ": ")
			if a == nil {
				continue
			}
			for t, x := range a.Triggers {
				if x.Pins == nil {
					continue
				}
				path := fmt.Sprintf("devices.%s.actions.%s.triggers[%d].pins.count", device, action, t)
				for _, way := range [2]int{1, -1} {
					c := candidate{kind: ChangePins, part: true, weigh: func(n int) float64 { return float64(n) }}
					for n := 1; n <= 32 && x.Pins.Count+way*n > 0; n++ {
						if n <= 12 || n%8 == 0 {
							c.sizes = append(c.sizes, n)
						}
					}
					c.change = func(p *Plan, n int) (*Advice, error) {
						e, err := p.Set(path, fmt.Sprint(x.Pins.Count+way*n))
						return &Advice{Kind: ChangePins, Edits: []Edit{e}, Does: fmt.Sprintf("%s pins, not %s, for “%s”", e.Now, e.Before, name)}, err
					}
					all = append(all, c)
				}
			}
		}
	}
	return all
}

// densities are those of the fluids that stand in the well up to the step.
func (o *opener) densities() []candidate {
	used := map[string]bool{}
	for _, c := range o.base.Compartments {
		used[c.Fluid] = true
		for _, l := range c.Layers {
			used[l.Fluid] = true
		}
	}
	for _, s := range o.base.Steps[:o.step+1] {
		for _, d := range s.Displace {
			used[d.Fluid] = true
		}
		for _, x := range s.Pump {
			used[x.Fluid] = true
		}
	}
	var all []candidate
	for _, f := range o.base.Fluids {
		if !used[f.Name] || f.Density.Nominal == 0 {
			continue
		}
		for _, way := range [2]float64{1, -1} {
			text := func(n int) string { return shifted(f.Density, way*float64(n)) }
			all = append(all, candidate{kind: ChangeDensity, sizes: growing, part: true,
				weigh: func(n int) float64 { return float64(n) / float64(f.Density.Nominal) },
				change: func(p *Plan, n int) (*Advice, error) {
					e, err := p.Set("fluids."+f.Name+".density", text(n))
					var now unit.Band[unit.Density]
					if err == nil {
						err = now.UnmarshalText([]byte(e.Now))
					}
					return &Advice{Kind: ChangeDensity, Edits: []Edit{e}, Does: fmt.Sprintf("“%s” of %s in place of %s", f.Name, now.Nominal.Rounded(6), f.Density.Nominal.Rounded(6))}, err
				}})
		}
	}
	return all
}

// shifted is a density, its tolerance kept, with so many steps more: 0.1 lb/gal, or
// 10 kg/m³ where that is what it is whole in.
func shifted(b unit.Band[unit.Density], steps float64) string {
	text := func(d unit.Density) string { return d.Rounded(6) }
	step := 0.1 * unit.PoundPerGallon
	if whole(float64(b.Nominal), float64(5*unit.KilogramPerCubicMetre)) && !whole(float64(b.Nominal), float64(0.05*unit.PoundPerGallon)) {
		step = 10 * unit.KilogramPerCubicMetre
		text = func(d unit.Density) string {
			return fmt.Sprintf("%.6g kg/m3", d.In(unit.KilogramPerCubicMetre))
		}
	}
	to := b.Nominal + unit.Density(steps)*step
	below, above := float64(b.Nominal-b.Least)/float64(b.Nominal), float64(b.Greatest-b.Nominal)/float64(b.Nominal)
	switch {
	case math.Abs(below-above) > 1e-6:
		return text(b.Least+to-b.Nominal) + " .. " + text(to) + " .. " + text(b.Greatest+to-b.Nominal)
	case above == 0:
		return text(to)
	}
	return fmt.Sprintf("%s +/- %.6g %%", text(to), 100*above)
}

// whole tells whether x is a whole number of steps.
func whole(x, step float64) bool { return math.Abs(x/step-math.Round(x/step)) < 1e-6 }

// places are those that the step can be put to: earlier and later. Steps of branches
// stay where they are.
func (o *opener) places() []candidate {
	if o.base.Steps[0].flow != nil {
		return nil
	}
	var all []candidate
	for _, way := range [2]int{-1, 1} {
		c := candidate{kind: ChangeOrder, weigh: func(n int) float64 { return float64(n) }}
		for n := 1; n <= 3 && o.step+way*n >= 0 && o.step+way*n < len(o.base.Steps); n++ {
			c.sizes = append(c.sizes, n)
		}
		c.change = func(p *Plan, n int) (*Advice, error) {
			to := o.step + way*n
			side := placeAfter
			if way < 0 {
				side = placeBefore
			}
			other := p.Steps[to].Name
			e, err := p.Set("steps."+p.Steps[o.step].Name+"."+side, other)
			return &Advice{Kind: ChangeOrder, Edits: []Edit{e}, Places: way * n, Does: fmt.Sprintf("this step %s step %d, “%s”", side, to+1, other)}, err
		}
		all = append(all, c)
	}
	return all
}

// wall is the limit that is passed in all of a window's range; none: there isn't one.
func (k *checker) wall(w *Window, all []proof.Bad) string {
	for _, b := range all {
		if b.Margin != nil && b.Least <= w.held.Least && b.Greatest >= w.held.Greatest {
			return k.edge(b.Margin)
		}
	}
	return ""
}

// acting are the names of the actions that a window's limits are of.
func (k *checker) acting(all []proof.Bad) []string {
	var names []string
	for _, b := range all {
		if m := b.Margin; m != nil && m.Kind.Events() && !slices.Contains(names, k.nameOf(m)) {
			names = append(names, k.nameOf(m))
		}
	}
	slices.Sort(names)
	return names
}
