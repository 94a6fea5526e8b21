package sequence_test

import (
	"fmt"
	"maps"

	"math"
	"math/rand/v2"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// plainPlan makes the n-th random plan of a seed. What it expects, and its
// limits, are set from a nominal walk, so that about half of the plans are right
// at nominal values and a good share over the whole box.
func plainPlan(seed, n uint64) *sequence.Plan {
	return plainPlanOf(rand.New(rand.NewPCG(seed, n)), fmt.Sprint(seed), n, plainLiquids, nil)
}

// feature adds something to a random plan, so that seeds without it stay what they
// were.
type feature struct {
	devices func(m *plainMaker) // once there are devices without levels
	steps   func(m *plainMaker) // once there are steps
	levels  func(m *plainMaker) // once there are levels
	more    func(m *plainMaker) // once there is what is expected
	goals   func(m *plainMaker, r *plainResult)
	dull    func(r *plainResult) bool // nothing of it happens
}

func plainPlanWith(seed, n uint64, f *feature) *sequence.Plan {
	return plainPlanOf(rand.New(rand.NewPCG(seed, n)), fmt.Sprint(seed), n, plainLiquids, f)
}

// plainWith is what a random well has besides what every one has.
type plainWith int

const (
	plainLiquids plainWith = iota
	plainGases
	plainPumps
)

// plainPlanOf is plainPlan, with gas or pumps or neither.
func plainPlanOf(random *rand.Rand, of string, n uint64, with plainWith, f *feature) *sequence.Plan {
	for {
		m := &plainMaker{random: random, plan: &sequence.Plan{Name: fmt.Sprintf("random %s/%d", of, n)}, held: map[int]bool{}, sand: map[int]bool{}}
		m.width = math.Exp(m.between(math.Log(0.003), math.Log(0.08)))
		m.well()
		switch with {
		case plainGases:
			m.gasify()
		case plainPumps:
			m.pumpify()
		}
		m.devices()
		if m.feature = f; f != nil && f.devices != nil {
			f.devices(m)
		}
		m.steps()
		if f != nil && f.steps != nil {
			f.steps(m)
		}
		if with == plainPumps && !m.pumpSteps() {
			continue
		}
		m.levels()
		if f != nil && f.levels != nil {
			f.levels(m)
		}
		m.goals()
		r := plainWalkOf(m.plan, 4, nil)
		if dull := r.fired() < 1+m.random.IntN(6) && m.chance(0.95); dull || r.fault != nil || (!r.ok() && m.chance(0.5)) {
			continue
		}
		if f != nil && f.dull != nil && f.dull(r) {
			continue
		}
		return m.widen()
	}
}

func (m *plainMaker) steps() {
	shut, last := map[string]bool{}, map[string]pressure{}
	for k := range 2 + m.random.IntN(5) {
		s := sequence.Step{Name: fmt.Sprintf("step %d", k)}
		if k > 0 && m.chance(0.12) {
			s.Shut = []string{m.plan.Compartments[m.random.IntN(2)].Name}
			shut[s.Shut[0]] = true
		}
		if m.chance(0.15) {
			s.Displace = append(s.Displace, m.swap())
		}
		for range 1 + m.random.IntN(3) {
			ramp := map[string]pressure{}
			which := m.random.IntN(9)
			if which < 7 {
				ramp["tubing"] = m.goal()
			}
			if which > 4 {
				ramp["annulus"] = m.goal()
			}
			s.Ramps = append(s.Ramps, ramp)
			for _, name := range slices.Sorted(maps.Keys(ramp)) {
				if m.chance(0.15) { // it stays, or goes back to where it was shut in
					ramp[name] = last[name]
				}
				last[name] = ramp[name]
				delete(shut, name)
			}
		}
		if m.chance(0.4) {
			m.squeeze(&s, shut)
		}
		if m.chance(0.05) {
			s.Ramps = nil
		}
		m.plan.Steps = append(m.plan.Steps, s)
	}
}

func (m *plainMaker) goal() pressure {
	if m.chance(0.35) {
		return 0
	}
	return pounds(m.round(m.between(100, 5500)))
}

func (m *plainMaker) swap() sequence.Displacement {
	i := m.random.IntN(2)
	if m.chance(0.2) {
		i = m.random.IntN(len(m.group))
	}
	c := m.plan.Compartments[i]
	if m.plan.Well.Temperatures != nil && len(c.Layers) == 2 && c.Layers[0].Fluid == "nitrogen" {
		return m.gasSwap(i)
	}
	a, b := c.TopMD.In(foot), c.BottomMD.In(foot)
	if m.chance(0.6) {
		a = math.Round(m.between(a, (a+b)/2))
	}
	if m.chance(0.6) {
		b = math.Round(m.between((a+b)/2+1, b))
	}
	return sequence.Displacement{Compartment: c.Name, Fluid: m.fluid(), FromMD: feet(a), ToMD: feet(b), Up: m.chance(0.3)}
}

// squeeze presses on compartments of bodies that nothing can ever fix, one of
// each body.
func (m *plainMaker) squeeze(s *sequence.Step, shut map[string]bool) {
	done := map[int]bool{}
	for i, c := range m.plan.Compartments {
		g := m.group[i]
		alone := shut[c.Name] && !m.sand[g]
		if done[g] || (m.held[g] && !alone) || m.chance(0.3) {
			continue
		}
		if s.PressureChange == nil {
			s.PressureChange = map[string]pressure{}
		}
		done[g] = true
		s.PressureChange[c.Name] = pounds(m.round(m.between(-800, 4000)))
	}
}

// levels gives every row its levels, from what its action feels when no device
// moves.
func (m *plainMaker) levels() {
	probe := *m.plan
	probe.Devices = slices.Clone(probe.Devices)
	for d := range probe.Devices {
		actions := slices.Clone(probe.Devices[d].Actions)
		for a := range actions {
			actions[a].Disarmed, actions[a].Arms = true, nil
		}
		probe.Devices[d].Actions = actions
	}
	r := plainWalkOf(&probe, 1, nil)
	i := 0
	for d := range m.plan.Devices {
		first := valve.Rising
		if m.chance(0.35) {
			first = valve.Falling
		}
		for a := range m.plan.Devices[d].Actions {
			felt := []float64{0}
			if r.fault == nil {
				felt = nil
				for _, step := range r.stands {
					for _, at := range step {
						felt = append(felt, at.felt[i])
					}
				}
				for _, at := range r.flows {
					if at != nil {
						felt = append(felt, at[i])
					}
				}
			}
			row := m.row(felt, first)
			if d > 0 && a == 0 && m.chance(0.1) { // the very same trigger as another device's
				row[0] = m.plan.Devices[m.random.IntN(d)].Actions[0].Triggers[0]
			}
			m.plan.Devices[d].Actions[a].Triggers = row
			first = valve.Rising + valve.Falling - first
			i++
		}
	}
}

// goals fills in what the plan expects, allows and is limited by, from a walk.
func (m *plainMaker) goals() {
	m.ratings()
	for f := range m.plan.Formations {
		setFracture(&m.plan.Formations[f], 1e-3)
	}
	m.barriers()
	m.plan.Rules.Barriers = len(m.plan.Barriers)
	m.tests()
	r := plainWalkOf(m.plan, 4, nil)
	if r.fault != nil {
		return
	}
	if m.feature != nil && m.feature.goals != nil {
		m.feature.goals(m, r)
		if r = plainWalkOf(m.plan, 4, nil); r.fault != nil {
			return
		}
	}
	flat, _ := plainFlat(m.plan)
	for n := range m.plan.Steps {
		s := &m.plan.Steps[n]
		s.Expect = nil
		k := slices.IndexFunc(flat.Steps, func(x sequence.Step) bool { return x.Name == s.Name })
		for _, e := range r.events {
			if e.step == k && e.fired {
				s.Expect = append(s.Expect, e.action)
			}
		}
		for i := range s.Tests {
			all := r.tests[k][i]
			if all[peakOf(s.Tests[i], all)] < 0 {
				s.Tests[i].Differential = unit.Exactly(pounds(-1)) // its peak is the other way
			}
			s.Tests[i].Differential = m.about(all[peakOf(s.Tests[i], all)])
		}
		for i := range s.Balance {
			s.Balance[i].Overbalance = m.about(r.balances[k][i][len(r.balances[k][i])-1])
		}
	}
	if m.feature != nil && m.feature.more != nil {
		m.feature.more(m)
	}
	m.limits(r)
	if m.chance(0.12) {
		m.mistake()
	}
}

// room is how far a limit stands from the nominal worst, as a share: now and
// then it doesn't.
func (m *plainMaker) room() float64 {
	switch m.random.IntN(40) {
	case 0:
		return m.between(-0.05, 0)
	case 1, 2:
		return 0 // reached, not passed
	}
	return m.width*m.between(0.1, 3) + 0.001
}

func (m *plainMaker) limits(r *plainResult) {
	p := m.plan
	worst := map[string]float64{}
	for _, f := range r.failures {
		key := string(f.Kind) + f.Name
		worst[key] = max(worst[key], f.By)
	}
	for i := range p.Ratings {
		x := &p.Ratings[i]
		limit := exactly(max(2, (1+worst[string(sequence.RatingCross)+x.Name])*(1+m.room())))
		if x.Burst.Nominal > 0 {
			x.Burst = limit
		} else {
			x.Collapse = limit
		}
	}
	lacking := 0.0
	for i := range p.Formations {
		f := &p.Formations[i]
		most := max(worst[string(sequence.Fracture)+f.Name], plainPore(*f))
		if m.chance(0.25) {
			setFracture(f, 0)
		} else {
			setFracture(f, max(most*(1+m.room()), plainPore(*f)*1.002))
		}
		lacking = max(lacking, worst[string(sequence.BarrierLack)+f.Name])
	}
	p.Rules.Barriers = max(0, len(p.Barriers)-int(lacking))
	if m.chance(0.08) && p.Rules.Barriers < len(p.Barriers) {
		p.Rules.Barriers++
	}
	for _, f := range r.failures {
		if f.Kind == sequence.FlowOff && !m.chance(0.03) {
			m.allow(f)
		}
	}
}

func (m *plainMaker) allow(f plainFailure) {
	kind := sequence.FlowIn
	if f.Name[len(f.Name)-4:] == "loss" {
		kind = sequence.FlowOut
	}
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		if s.Name == f.Step && !slices.Contains(s.Allow, kind) {
			s.Allow = append(s.Allow, kind)
		}
	}
}

// mistake takes an expected action out, puts one in, or turns two round.
func (m *plainMaker) mistake() {
	s := &m.plan.Steps[m.random.IntN(len(m.plan.Steps))]
	if s.Otherwise != nil {
		return // its branch names what it expects
	}
	switch n := len(s.Expect); {
	case n > 1 && m.chance(0.3):
		s.Expect[0], s.Expect[n-1] = s.Expect[n-1], s.Expect[0]
	case n > 0 && m.chance(0.6):
		k := m.random.IntN(n)
		s.Expect = slices.Delete(slices.Clone(s.Expect), k, k+1)
	default:
		d := m.plan.Devices[m.random.IntN(len(m.plan.Devices))]
		s.Expect = append(s.Expect, d.Name+": "+d.Actions[m.random.IntN(len(d.Actions))].Name)
	}
}

// peakOf is where a test of a plan in the making has its differential.
func peakOf(t sequence.Test, all []float64) int {
	switch last := len(all) - 1; {
	case t.Moment == sequence.AtStart || last == 0:
		return 0
	case t.Moment == sequence.AtEnd:
		return last
	}
	at := 1
	for k := 2; k < len(all); k++ {
		if further := all[k] - all[at]; (t.Differential.Nominal >= 0 && further > plainHair) || (t.Differential.Nominal < 0 && further < -plainHair) {
			at = k
		}
	}
	return at
}
