package sequence_test

import (
	"context"
	"fmt"
	"math"
	"os"
	"slices"
	"sync"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// The plain walker's pump: from the top of a compartment into a formation, one bore
// in each compartment and Newtonian fluids. It takes friction at a single rate from
// package flow, as the programme does, and puts it along the way by itself.

type plainPath struct {
	from, to float64 // along the compartment, in the direction of the flow
	pipe     flow.Conduit
}

type plainSlug struct {
	begin, end float64 // volume on the way, ft·ft²
	fluid      string
}

var plainFrictions sync.Map

// plainFriction is psi/ft of a fluid at a rate in ft³/s.
func (w *plainWell) plainFriction(fluid string, pipe flow.Conduit, rate float64) float64 {
	if rate == 0 {
		return 0
	}
	k := slices.IndexFunc(w.plan.Fluids, func(f sequence.Fluid) bool { return f.Name == fluid })
	f := w.plan.Fluids[k]
	key := fmt.Sprint(f.Viscosity, f.Density.Nominal, pipe, rate)
	if x, ok := plainFrictions.Load(key); ok {
		return x.(float64)
	}
	r, err := flow.Stream{Conduit: pipe, Rheology: flow.Newtonian(f.Viscosity), Density: f.Density.Nominal, Rate: unit.FlowRate(rate) * 60 * unit.CubicFootPerMinute}.Friction()
	x := math.NaN()
	if err == nil {
		x = float64(r.Gradient) * float64(foot) / float64(psi)
	}
	plainFrictions.Store(key, x)
	return x
}

// lost is what friction takes between the top of a compartment and a depth: above
// nought where the flow goes down.
func (s *plainState) lost(i int, depth float64) float64 {
	f, ok := s.flows[i]
	if !ok || s.rate == 0 {
		return s.short(i, depth)
	}
	sum := 0.0
	for _, l := range s.layers[i] {
		top, bottom := max(l.top, min(f.from, f.to)), min(l.bottom, max(f.from, f.to), depth)
		if top < bottom {
			sum += s.well.plainFriction(l.name, f.pipe, s.rate) * (bottom - top)
		}
	}
	if f.from > f.to {
		return -sum
	}
	return sum
}

// pump pumps: the rate comes up, the fluids move, the rate goes down.
func (w *plainWalk) pump(p sequence.Pump) error {
	s := w.s
	into := w.comp(p.Into)
	s.surface[into] = false
	if err := w.run(func(float64) {}, nil); err != nil {
		return err
	}
	f := w.form(p.Formation)
	ports, err := w.wayTo(into, w.forms[f].face)
	if err != nil {
		return err
	}
	// The way, compartment by compartment.
	type part struct {
		i          int
		a, b       float64 // depths
		begin, end float64
		area       float64
	}
	var parts []part
	total := 0.0
	add := func(i int, a, b float64) {
		pipe := w.pipe(i)
		area := float64(pipe.Area()) / float64(foot*foot)
		parts = append(parts, part{i, a, b, total, total + area*math.Abs(b-a), area})
		s.flows[i] = plainPath{a, b, pipe}
		total += area * math.Abs(b-a)
	}
	at, depth := into, w.comps[into].top
	for _, n := range ports {
		add(at, depth, w.ports[n].depth)
		at, depth = w.ports[n].a+w.ports[n].b-at, w.ports[n].depth
	}
	add(at, depth, w.forms[f].depth)
	var train []plainSlug
	for _, x := range parts {
		for _, l := range w.along(x.i, x.a, x.b) {
			train = append(train, plainSlug{x.begin + math.Abs(l.top-x.a)*x.area, x.begin + math.Abs(l.bottom-x.a)*x.area, l.name})
		}
	}
	before := slices.Clone(s.layers)
	put := func(volume float64) {
		for _, x := range parts {
			layers := before[x.i]
			slugs := []plainSlug{{0, volume, p.Fluid}}
			for _, g := range train {
				slugs = append(slugs, plainSlug{g.begin + volume, g.end + volume, g.fluid})
			}
			for _, g := range slugs {
				begin, end := max(g.begin, x.begin), min(g.end, x.end)
				if begin >= end {
					continue
				}
				sign := 1.0
				if x.b < x.a {
					sign = -1
				}
				u, v := x.a+sign*(begin-x.begin)/x.area, x.a+sign*(end-x.begin)/x.area
				layers = plainReplace(layers, plainLayer{top: min(u, v), bottom: max(u, v), gradient: w.fluids[g.fluid], name: g.fluid})
			}
			s.layers[x.i] = layers
		}
	}
	rate := float64(p.Rate) / float64(60*unit.CubicFootPerMinute)
	injection := p.Injection.In(psi)
	volume := float64(p.Volume) / float64(foot*foot*foot)
	turn := func(x float64) { s.rate, s.injection[f] = rate*x, injection*x }
	open := slices.Clone(s.open)
	stage := func(set func(float64), kinks []float64) error {
		if err := w.run(set, kinks); err != nil {
			return err
		}
		if now, err := w.wayTo(into, w.forms[f].face); err != nil || !slices.Equal(now, ports) {
			return fmt.Errorf("the way changes while it is pumped")
		}
		return nil
	}
	_ = open
	if err := stage(turn, nil); err != nil {
		return err
	}
	if volume > 0 {
		// Where a front passes anything.
		var kinks []float64
		for _, g := range append([]plainSlug{{0, 0, ""}}, train...) {
			for _, x := range parts {
				for _, d := range append(slices.Clone(w.depths), x.a, x.b) {
					if (d-x.a)*(d-x.b) <= 0 {
						if k := (x.begin + math.Abs(d-x.a)*x.area - g.end) / volume; k > 0 && k < 1 {
							kinks = append(kinks, k)
						}
					}
				}
			}
		}
		slices.Sort(kinks)
		w.takes = volume / rate
		err := stage(func(x float64) { put(volume * x) }, slices.Compact(kinks))
		w.takes = 0
		if err != nil {
			return err
		}
	}
	if err := stage(func(x float64) { turn(1 - x) }, nil); err != nil {
		return err
	}
	s.rate, s.injection[f] = 0, 0
	clear(s.flows)
	w.begin(func(float64) {})
	if err := w.look(0); err != nil {
		return err
	}
	s.surface[into], s.applied[into] = true, s.top[into]
	w.judge()
	return nil
}

func (w *plainWalk) pipe(i int) flow.Conduit {
	b := w.plan.Compartments[i].Bores[0]
	return flow.Conduit{Outer: b.Outer, Inner: b.Inner}
}

// along are the layers of a compartment between two depths, in the direction of the
// flow, each from where it begins in that direction.
func (w *plainWalk) along(i int, a, b float64) []plainLayer {
	var out []plainLayer
	for _, l := range w.s.layers[i] {
		top, bottom := max(l.top, min(a, b)), min(l.bottom, max(a, b))
		if top < bottom {
			l.top, l.bottom = top, bottom
			out = append(out, l)
		}
	}
	if a > b {
		slices.Reverse(out)
		for k := range out {
			out[k].top, out[k].bottom = out[k].bottom, out[k].top
		}
	}
	return out
}

// wayTo are the open ports from one compartment to another.
func (w *plainWalk) wayTo(from, to int) ([]int, error) {
	var way []int
	seen := map[int]bool{from: true}
	var go_ func(at int) bool
	go_ = func(at int) bool {
		if at == to {
			return true
		}
		for n, x := range w.ports {
			next := x.a + x.b - at
			if !w.s.open[n] || x.a != at && x.b != at || seen[next] {
				continue
			}
			seen[next] = true
			way = append(way, n)
			if go_(next) {
				return true
			}
			way = way[:len(way)-1]
		}
		return false
	}
	if !go_(from) {
		return nil, fmt.Errorf("no way is open")
	}
	return way, nil
}

// pumpify gives the well bores and viscosities, and lets some steps pump into sands.
func (m *plainMaker) pumpify() {
	p := m.plan
	for i := range p.Fluids {
		p.Fluids[i].Viscosity = unit.Viscosity(m.between(1, 30)) * unit.Centipoise
	}
	for i := range p.Compartments {
		c := &p.Compartments[i]
		b := sequence.Bore{To: c.BottomMD, Outer: unit.Length(m.between(2, 6)) * unit.Inch}
		if m.chance(0.5) {
			b.Inner = b.Outer * unit.Length(m.between(0.3, 0.7))
		}
		c.Bores = []sequence.Bore{b}
		c.Capacity = flow.Conduit{Outer: b.Outer, Inner: b.Inner}.Area()
	}
}

// It tells whether any does.
func (m *plainMaker) pumpSteps() bool {
	p, any := m.plan, false
	for k := range p.Steps {
		for _, f := range p.Formations {
			face := slices.IndexFunc(p.Compartments, func(c sequence.Compartment) bool { return c.Formation == f.Name })
			for i := range 2 {
				if m.group[face] != m.group[i] || !m.chance(0.5) || len(p.Steps[k].Pump) > 0 {
					continue
				}
				x := sequence.Pump{Into: p.Compartments[i].Name, Formation: f.Name, Rate: unit.FlowRate(m.between(0.3, 6)) * unit.BarrelPerMinute, Injection: pounds(m.round(m.between(0, 600)))}
				if m.chance(0.7) {
					x.Fluid, x.Volume = m.fluid(), unit.Volume(m.between(0.1, 1.3)*float64(p.Compartments[i].Capacity)*float64(p.Compartments[i].BottomMD))
				}
				p.Steps[k].Pump = []sequence.Pump{x}
				any = true
			}
		}
	}
	return any
}

// Random wells that are pumped into their sands, and those in which devices move with a
// delay while that is done.
func TestVerdictsWithPumps(t *testing.T) {
	for _, x := range []struct {
		name    string
		seed    uint64
		feature *feature
	}{{"pumped", 2028, nil}, {"pumped slow", 2029, &feature{levels: (*plainMaker).slowPumps}}} {
		t.Run(x.name, func(t *testing.T) {
			if x.feature != nil && os.Getenv("SEQUENCE_PLANS") == "" {
				t.Skip("slow to make: runs with SEQUENCE_PLANS")
			}
			var c tally
			var mutex sync.Mutex
			refused := map[string]int{}
			from, to := plansWanted(t, long.Size(3, 6))
			pumping := 0
			eachPlan(from, to, func(n uint64) {
				p := plainPlanOf(newRandom(x.seed, n), x.name, n, plainPumps, x.feature)
				v, err := verdictOf(p)
				mutex.Lock()
				if slices.ContainsFunc(p.Steps, func(s sequence.Step) bool { return len(s.Pump) > 0 }) {
					pumping++
				}
				if err != nil {
					refused[err.Error()]++
				}
				mutex.Unlock()
				if err == nil {
					c.holdAgainst(t, p, n, v)
				}
			})
			t.Log(&c, "; pumping:", pumping, "; refused:", len(refused))
			for why := range refused {
				t.Log(why)
			}
			require.Zero(t, c.wrong.Load())
		})
	}
}

// Along a leg of a pump pressures are only enclosed: what the nominal walk doesn't rule out in whole pieces and the proof
// does in finer ones is neither a finding nor told as what moves, nor counted in draws. Both kinds of verdict say the same.
func TestWhatThePumpsPiecesDoNotRuleOut(t *testing.T) {
	t.Parallel()
	p := plainPlanOf(newRandom(2028, 420020), "pumped", 420020, plainPumps, nil)
	for _, o := range [2]sequence.Options{{Only: sequence.FindingsOnly}, {Only: sequence.VerdictOnly}} {
		r, err := sequence.Check(context.Background(), p, o)
		require.NoError(t, err)
		require.Equal(t, sequence.Proved, r.Verdict, "%v", r.Findings)
		for _, s := range r.Steps {
			for _, e := range s.Events {
				require.True(t, e.Action != "device 2: opens" || e.Partial != "")
			}
		}
	}
	risk, err := sequence.Sample(context.Background(), p, sequence.Uncertainty{Samples: 20, Seed: 1})
	require.NoError(t, err)
	require.Zero(t, risk.Fails.Value)
}
