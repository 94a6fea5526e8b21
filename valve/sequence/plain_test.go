package sequence_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// The plain walker is the second way of everything that the programme says
// about pressures: a slow walk of one choice of sharp values, in plain numbers
// (psi, ft, lb/gal), that looks at many places and halves its steps. It shares
// no code with the engine; what it finds wrong in a single draw, no proof may
// call right.
//
// It knows vertical wells, fluids of constant density, nitrogen and a string in them
// (plainstring_test.go), and zones that flow (plainflow_test.go).

// psiPerFootPpg is the gradient of a fluid of 1 lb/gal: a gallon is 231 in³, so
// 12/231 psi/ft at standard gravity.
const psiPerFootPpg = 12.0 / 231

type plainLayer struct {
	top, bottom, gradient float64 // ft, ft, psi/ft
	gas                   bool
	name                  string // of the fluid
}

type plainComp struct {
	name        string
	top, bottom float64
	volume      float64 // in whatever unit; 0: not known
	layers      []plainLayer
	surface     bool
	formation   int // or -1
	trapped     float64
	bores       []sequence.Bore // where their walls are known
}

type plainPort struct {
	name  string
	a, b  int
	depth float64
	open  bool
}

type plainTrigger struct {
	level, rearm float64
	falling      bool
	count        int
}

type plainAction struct {
	name            string
	device          int
	depth           float64
	inside, outside int // outside -1: chamber
	chamber         float64
	row             []plainTrigger
	disarmed        bool
	delay           float64         // s at its level before it moves
	strokes         map[int]float64 // by compartment, in³
	opens, closes   []int
	arms, disarms   []int
	more            []plainPush // of areas: what else pushes
	group           int         // first of the conditions of one action
	conditions      int         // how many it has
	pushed          bool        // by areas
	all             bool        // all of them must be met
	axial           bool        // feels the balance of its joint, in kips,
	unseats         bool        // or what the place there carries,
	latches         string      // or what stands on what a joint of this action has left
	holds, releases bool
	at              unit.Length // depth
}

type plainPush struct {
	comp  int
	times float64
}

type plainFormation struct {
	name                      string
	depth, pressure, fracture float64
	face                      int // the compartment that stands open to it, or -1
	listed                    bool
}

type plainRating struct {
	name            string
	inside, outside int // outside -1: background
	background      float64
	from, to        float64
	burst, collapse float64 // allowed; 0: no limit
	depths          []float64
}

// plainWell is a plan with sharp values, names turned into numbers of lists.
type plainWell struct {
	plan    *sequence.Plan
	comps   []plainComp
	ports   []plainPort
	actions []plainAction
	forms   []plainFormation
	ratings []plainRating
	fluids  map[string]float64 // psi/ft
	depths  []float64          // every depth that the plan names, sorted
	gauge   float64
	gas     string  // the fluid that is nitrogen
	near    float64 // what a near miss is, in psi
}

func indexOf[T any](list []T, name string, nameOf func(T) string) int {
	return slices.IndexFunc(list, func(x T) bool { return nameOf(x) == name })
}

func (w *plainWell) comp(name string) int {
	return indexOf(w.comps, name, func(c plainComp) string { return c.name })
}

func (w *plainWell) port(name string) int {
	return indexOf(w.ports, name, func(p plainPort) string { return p.name })
}

func (w *plainWell) action(name string) int {
	return indexOf(w.actions, name, func(a plainAction) string { return a.name })
}

func (w *plainWell) form(name string) int {
	return indexOf(w.forms, name, func(f plainFormation) string { return f.name })
}

// newPlainWell reads the nominal values of a plan.
func newPlainWell(p *sequence.Plan) *plainWell {
	w := &plainWell{plan: p, near: plainHair, fluids: map[string]float64{}, gauge: plainGauge(p)}
	for _, f := range p.Fluids {
		if f.Kind == sequence.Nitrogen {
			w.gas, w.near = f.Name, plainGasHair
			continue
		}
		if f.Kind != "" && f.Kind != sequence.ConstantDensity {
			panic("the plain walker knows fluids of constant density and nitrogen only")
		}
		w.fluids[f.Name] = plainDensity(f) * psiPerFootPpg
	}
	for _, f := range p.Formations {
		w.forms = append(w.forms, plainFormation{f.Name, f.MD.In(foot), plainPore(f), plainFracture(f), -1, false})
	}
	for _, b := range p.Barriers {
		w.forms[w.form(b.Formation)].listed = true
	}
	for i, c := range p.Compartments {
		k := plainComp{name: c.Name, top: c.TopMD.In(foot), bottom: c.BottomMD.In(foot), surface: c.Surface, formation: -1, trapped: plainTrapped(c)}
		k.volume = float64(c.Capacity) * (k.bottom - k.top)
		if c.Capacity == 0 {
			top := k.top
			for _, b := range c.Bores {
				o, i := float64(b.Outer), float64(b.Inner)
				k.volume += math.Pi / 4 * (o*o - i*i) * (b.To.In(foot) - top)
				top = b.To.In(foot)
			}
		}
		k.walls(c)
		layers := c.Layers
		if c.Fluid != "" {
			layers = []sequence.Layer{{Fluid: c.Fluid, ToMD: c.BottomMD}}
		}
		top := k.top
		for _, l := range layers {
			k.layers = append(k.layers, plainLayer{top, l.ToMD.In(foot), w.fluids[l.Fluid], l.Fluid == w.gas && w.gas != "", l.Fluid})
			top = l.ToMD.In(foot)
		}
		if c.Formation != "" {
			k.formation = w.form(c.Formation)
			w.forms[k.formation].face = i
		}
		w.comps = append(w.comps, k)
	}
	for _, x := range p.Ports {
		w.ports = append(w.ports, plainPort{x.Name, w.comp(x.Joins[0]), w.comp(x.Joins[1]), x.MD.In(foot), x.Open})
	}
	w.readActions(p)
	for _, r := range p.Ratings {
		factor := cmp.Or(r.Factor, 1)
		w.ratings = append(w.ratings, plainRating{name: r.Name, inside: w.comp(r.Inside), outside: w.comp(r.Outside),
			background: w.fluids[r.Background], from: r.FromMD.In(foot), to: r.ToMD.In(foot),
			burst: r.Burst.Nominal.In(psi) / factor, collapse: r.Collapse.Nominal.In(psi) / factor})
	}
	w.collectDepths()
	return w
}

func (w *plainWell) readActions(p *sequence.Plan) {
	for d, x := range p.Devices {
		for _, a := range x.Actions {
			first := len(w.actions)
			all := []sequence.Condition{{Inside: a.Inside, Outside: a.Outside, Chamber: a.Chamber, Areas: a.Areas, Triggers: a.Triggers}}
			if len(a.All)+len(a.Any) > 0 {
				all = append(slices.Clone(a.All), a.Any...)
			}
			for _, c := range all {
				k := w.condition(c)
				k.name, k.device, k.depth, k.disarmed, k.group, k.conditions, k.all = x.Name+": "+a.Name, d, x.MD.In(foot), a.Disarmed, first, len(all), len(a.All) > 0
				if a.Delay != "" {
					d, _ := time.ParseDuration(a.Delay)
					k.delay = d.Seconds()
				}
				k.unseats, k.latches = a.Unseats, a.LatchesTo
				k.strokes, k.axial, k.holds, k.releases, k.at = map[int]float64{}, a.Axial, a.Holds, a.Releases, x.MD
				for name, v := range a.Strokes {
					k.strokes[w.comp(name)] = v.In(unit.CubicInch)
				}
				for _, name := range a.Opens {
					k.opens = append(k.opens, w.port(name))
				}
				for _, name := range a.Closes {
					k.closes = append(k.closes, w.port(name))
				}
				w.actions = append(w.actions, k)
			}
		}
	}
	for _, x := range p.Devices {
		for _, a := range x.Actions {
			first := w.action(x.Name + ": " + a.Name)
			for k := range w.actions[first].conditions {
				for _, name := range a.Arms {
					w.actions[first+k].arms = append(w.actions[first+k].arms, w.action(x.Name+": "+name))
				}
				for _, name := range a.Disarms {
					w.actions[first+k].disarms = append(w.actions[first+k].disarms, w.action(x.Name+": "+name))
				}
			}
		}
	}
}

// condition reads what one condition feels, as sums of pressures each so many times,
// and its row. Areas are told as over the first.
func (w *plainWell) condition(c sequence.Condition) plainAction {
	k := plainAction{inside: w.comp(c.Inside), outside: w.comp(c.Outside)}
	if c.Chamber != nil {
		k.chamber = c.Chamber.In(psi)
	}
	if c.Areas == nil {
		for _, t := range c.Triggers {
			k.row = append(k.row, plainTriggerOf(t))
		}
		return k
	}
	k.pushed = true
	first := c.Areas.On[0].Area.In(unit.SquareInch)
	k.inside = w.comp(c.Areas.On[0].Compartment)
	for _, x := range c.Areas.On[1:] {
		k.more = append(k.more, plainPush{w.comp(x.Compartment), x.Area.In(unit.SquareInch) / first})
	}
	s, f := c.Areas.Spring.Nominal.In(unit.PoundForce)/first, c.Areas.Friction.Nominal.In(unit.PoundForce)/first
	for _, t := range c.Triggers {
		x := plainTrigger{level: s + f, rearm: s - f, falling: t.Direction == valve.Falling, count: max(t.Count, 1)}
		if x.falling {
			x.level, x.rearm = x.rearm, x.level
		}
		k.row = append(k.row, x)
	}
	return k
}

// plainTriggerOf takes the nominal of a trigger; pins by their strength over
// their piston's area.
func plainTriggerOf(t sequence.Trigger) plainTrigger {
	if t.Tension.Nominal != 0 {
		return plainTensionOf(t)
	}
	level := t.Threshold.Nominal.In(psi)
	if t.Pins != nil {
		level = float64(t.Pins.Count) * t.Pins.Strength.In(unit.PoundForce) / t.Pins.Area.In(unit.SquareInch)
	}
	return plainTrigger{level: level, rearm: t.Rearm.Nominal.In(psi), falling: t.Direction == valve.Falling, count: max(t.Count, 1)}
}

// collectDepths keeps every depth at which a passing front may make a
// difference.
func (w *plainWell) collectDepths() {
	p := w.plan
	for _, c := range w.comps {
		w.depths = append(w.depths, c.top)
		for _, l := range c.layers {
			w.depths = append(w.depths, l.bottom)
		}
	}
	for _, x := range w.ports {
		w.depths = append(w.depths, x.depth)
	}
	for _, a := range w.actions {
		w.depths = append(w.depths, a.depth)
	}
	for _, f := range w.forms {
		w.depths = append(w.depths, f.depth)
	}
	for _, r := range w.ratings {
		w.depths = append(w.depths, r.from, r.to)
	}
	for _, s := range p.Steps {
		for _, x := range s.Displace {
			w.depths = append(w.depths, x.FromMD.In(foot), x.ToMD.In(foot))
		}
		for _, t := range s.Tests {
			w.depths = append(w.depths, t.MD.In(foot))
		}
	}
	slices.Sort(w.depths)
	w.depths = slices.Compact(w.depths)
}

// plainFailure is a limit that one walk breaks, by how much at worst.
type plainFailure struct {
	Kind sequence.Kind
	Step string
	Name string
	By   float64 // psi, or a count
}

func (f plainFailure) String() string {
	return fmt.Sprintf("%s | %s | %s (by %.7g)", f.Kind, f.Step, f.Name, f.By)
}

// Kinds of failure that only the plain walker knows by these names.
const (
	plainVacuum                 = sequence.ColumnFalls
	plainUnwalked sequence.Kind = "cannot be walked"
)

// plainEvent is a count, a link or a whole row that was met.
type plainEvent struct {
	step, leg      int // leg as the programme counts: 0 before the ramps, then 1, 2, ...
	action         string
	fired          bool
	links, counted int
	felt           float64
	surface        []float64 // by compartment, what is applied
}

// plainResult is one walk.
type plainResult struct {
	failures []plainFailure
	events   []plainEvent
	walked   []string                // steps that it has gone through: branches may lead past some
	stands   [][]plainStand          // by step: start, then the end of each ramp and of the squeeze
	close    bool                    // something missed another thing by a hair: another computer may see it otherwise
	fault    error                   // it couldn't be walked to its end
	met      bool                    // trapped bodies have met
	choices  []int                   // where several things were due at once: how many
	tests    [][][]float64           // by step, test, stand: differential
	across   [][][]float64           // by step and act by hand: differential across each port that it opens, without sign
	held     [][]plainHeld           // by step and test
	balances [][][]float64           // by step, balance, stand: overbalance
	rates    [][]plainRate           // by step: what zones give
	flows    [][]float64             // by step that produces: what every action then feels
	flowing  []map[[2]string]float64 // and by device and compartment the pressure there
}

type plainStand struct {
	top  []float64 // by compartment
	open []bool
	felt []float64 // by action
	str  *plainLoads
}

func (r *plainResult) ok() bool { return len(r.failures) == 0 }

// fired counts the actions that happened.
func (r *plainResult) fired() int {
	n := 0
	for _, e := range r.events {
		if e.fired {
			n++
		}
	}
	return n
}
