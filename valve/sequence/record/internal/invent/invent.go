// Package invent makes records of jobs that never were, from a plan's own figures
// and noise: for tests, and for the demo's records. It walks the plan as the programme
// does, with thresholds and faults that it is told, and writes down what instruments
// would have shown.
package invent

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Job is what was done, and what went wrong in it.
type Job struct {
	Seed   uint64
	Steps  int     // how many of the plan's steps; zero: all
	Factor float64 // of volumes, against the programme's; zero: 1.12
	Noise  float64 // of all instruments, in shares of usual; negative: none
	Stuck  []Stuck
	Leaks  []Leak
	Every  float64 // s between rows; zero: 15
	// Pump is the pressure of the pump while something is pumped through the well.
	Pump unit.Pressure
	// Wild turns the record into nonsense: volumes that no well takes.
	Wild bool
	// Share is how far into its band each threshold lies, from 0 to 1, by action;
	// what isn't named is drawn.
	Share map[string]float64
}

// Stuck is an action that doesn't happen from a step (from 0) on.
type Stuck struct {
	Step   int
	Action string
}

// Leak is fluid that leaves a compartment in a step.
type Leak struct {
	Step int
	From string
	To   string      // another compartment at surface, or empty: away
	Rate unit.Volume // a minute, for each 1,000 psi
}

// Usual noise: standard deviations.
const (
	gauge = 4 * unit.PSI
	tank  = 0.008 * unit.Barrel
	meter = 0.0008 * unit.Gallon
	scale = 400 * unit.PoundForce
)

type maker struct {
	Job
	plan     *sequence.Plan
	random   *rand.Rand
	out      *csv.Writer
	b        bytes.Buffer
	names    []string
	small    []bool
	net      [][2]float64 // in, out, by name
	pressure []float64
	weight   float64
	time     float64
	step     int
	before   []sequence.Take
}

// CSV walks a job and writes its record.
func (j Job) CSV(ctx context.Context, p *sequence.Plan) ([]byte, error) {
	p, err := p.Derive()
	if err != nil {
		return nil, err
	}
	p = p.Expanded()
	m := &maker{Job: j, plan: p, random: rand.New(rand.NewPCG(j.Seed, 7))}
	m.out = csv.NewWriter(&m.b)
	if m.Factor == 0 {
		m.Factor = 1.12
	}
	if m.Every == 0 {
		m.Every = 15
	}
	switch {
	case m.Noise == 0:
		m.Noise = 1
	case m.Noise < 0:
		m.Noise = 0
	}
	if m.Steps == 0 {
		m.Steps = len(p.Steps)
	}
	m.thresholds()
	m.header()
	f, err := sequence.Follow(m.plan)
	if err != nil {
		return nil, err
	}
	var at *sequence.Situation
	for i := range m.Steps {
		m.step = i
		seen, next, err := f.Step(ctx, at, i, m.still(i))
		if err != nil {
			return nil, err
		}
		m.walk(seen)
		at = next
	}
	m.out.Flush()
	return m.b.Bytes(), m.out.Error()
}

// thresholds puts every threshold somewhere in its band.
func (m *maker) thresholds() {
	for d := range m.plan.Devices {
		dev := &m.plan.Devices[d]
		for a := range dev.Actions {
			x := &dev.Actions[a]
			for n := range x.Triggers {
				t := &x.Triggers[n]
				share := min(max(0.5+0.25*m.random.NormFloat64(), 0.02), 0.98)
				if s, ok := m.Share[dev.Name+": "+x.Name]; ok {
					share = s
				}
				switch {
				case t.Pins != nil && !x.Axial:
					f := unit.Within(unit.Force(float64(t.Pins.Strength)*float64(t.Pins.Count)), t.Pins.Tolerance)
					t.Threshold = unit.Exactly((f.Least + unit.Force(share)*(f.Greatest-f.Least)).Over(t.Pins.Area))
					t.Pins = nil
				case t.Pins != nil:
					f := unit.Within(unit.Force(float64(t.Pins.Strength)*float64(t.Pins.Count)), t.Pins.Tolerance)
					t.Tension = unit.Exactly(f.Least + unit.Force(share)*(f.Greatest-f.Least))
					t.Pins = nil
				case x.Axial:
					t.Tension = unit.Exactly(t.Tension.Least + unit.Force(share)*(t.Tension.Greatest-t.Tension.Least))
				default:
					t.Threshold = unit.Exactly(t.Threshold.Least + unit.Pressure(share)*(t.Threshold.Greatest-t.Threshold.Least))
				}
			}
		}
	}
}

func (m *maker) header() {
	head := []string{"time [s]", "step"}
	within := []string{"within", ""}
	for _, c := range m.plan.Compartments {
		if !c.Surface {
			continue
		}
		small := float64(c.Capacity)*float64(c.BottomMD-c.TopMD) < float64(5*unit.Barrel)
		m.names, m.small = append(m.names, c.Name), append(m.small, small)
		u, tolerance := "bbl", "0.03 bbl"
		if small {
			u, tolerance = "gal", "0.004 gal"
		}
		head = append(head, c.Name+" pressure [psi]", c.Name+" in ["+u+"]", c.Name+" out ["+u+"]")
		within = append(within, "12 psi", tolerance, tolerance)
	}
	m.net, m.pressure = make([][2]float64, len(m.names)), make([]float64, len(m.names))
	if m.plan.String != nil {
		head, within = append(head, "weight [lbf]"), append(within, "2500 lbf")
		m.weight = float64(m.plan.String.Block)
	}
	m.out.Write(head)   //nolint:errcheck // the writer's Error is asked at the end
	m.out.Write(within) //nolint:errcheck // the same
}

// row writes one row as it stands.
func (m *maker) row() {
	cells := []string{strconv.FormatFloat(m.time, 'f', 0, 64), strconv.Itoa(m.step + 1)}
	put := func(v, noise, of float64, digits int) {
		v += m.Noise * noise * m.random.NormFloat64()
		cells = append(cells, strconv.FormatFloat(v/of, 'f', digits, 64))
	}
	for i := range m.names {
		put(m.pressure[i], float64(gauge), float64(unit.PSI), 1)
		for side, v := range m.net[i] {
			if m.Wild && side == 0 {
				v += float64(unit.Barrel) * math.Sin(m.time/40+float64(i))
			}
			if m.small[i] {
				put(v, float64(meter), float64(unit.Gallon), 4)
			} else {
				put(v, float64(tank), float64(unit.Barrel), 3)
			}
		}
	}
	if m.plan.String != nil {
		put(m.weight, float64(scale), float64(unit.PoundForce), 0)
	}
	m.out.Write(cells) //nolint:errcheck // the writer's Error is asked at the end
	m.time += m.Every
}

func (m *maker) flow(i int, volume float64) {
	if volume > 0 {
		m.net[i][0] += volume
	} else {
		m.net[i][1] -= volume
	}
}

// Rows of a leg on its way, and of a rest.
const (
	wayRows  = 32
	restRows = 14
)

func (m *maker) walk(seen *sequence.Seen) {
	step := &m.plan.Steps[m.step]
	for n := range seen.Legs {
		l := &seen.Legs[n]
		switch {
		case n == 0:
			m.swap(step)
			m.pump(step)
			m.leg(l, nil, seen, restRows)
		case l.Weight != 0:
			m.pull(l, seen, float64(step.Pull[0]))
		default:
			m.leg(l, step, seen, wayRows)
			m.leg(l, nil, seen, restRows)
		}
	}
	last := seen.Legs[len(seen.Legs)-1]
	m.before = last.Stretches[len(last.Stretches)-1].Takes
}

// pump pumps through the well, with the returns at surface; the pressure of the pump is
// invented.
func (m *maker) pump(step *sequence.Step) {
	for _, p := range step.Pump {
		i, back := slices.Index(m.names, p.Into), slices.Index(m.names, p.Returns)
		if i < 0 {
			continue
		}
		stood := m.pressure[i]
		m.row()
		for range 40 {
			m.flow(i, float64(p.Volume)/40)
			if back >= 0 {
				m.flow(back, -float64(p.Volume)/40)
			}
			m.pressure[i] = float64(m.Pump)
			m.row()
		}
		m.pressure[i] = stood
	}
}

// swap pumps the step's swaps, with returns where the compartment meets another.
func (m *maker) swap(step *sequence.Step) {
	for _, w := range step.Displace {
		i := slices.Index(m.names, w.Compartment)
		if i < 0 {
			continue // what goes on down there no tank shows
		}
		var volume float64
		for _, c := range m.plan.Compartments {
			if c.Name == w.Compartment {
				volume = float64(c.Capacity) * float64(w.ToMD-w.FromMD)
			}
		}
		back := -1
		for _, t := range m.before {
			for _, x := range t.References {
				if t.Compartment == w.Compartment && slices.Contains(m.names, x.Name) {
					back = slices.Index(m.names, x.Name)
				}
			}
		}
		m.row()
		for range 40 {
			m.flow(i, volume/40)
			if back >= 0 {
				m.flow(back, -volume/40)
			}
			m.row()
		}
	}
}

// leg writes the rows of a leg on its way, or, without a step, of standing at its end.
func (m *maker) leg(l *sequence.Leg, step *sequence.Step, seen *sequence.Seen, rows int) {
	at, to := readings(l.From, m.names), readings(l.To, m.names)
	lead := 0
	for i := range at {
		if math.Abs(to[i]-at[i]) > math.Abs(to[lead]-at[lead]) {
			lead = i
		}
	}
	stretch := 0
	if step == nil {
		stretch = len(l.Stretches) - 1
		copy(at, to)
	}
	for k := 1; k <= rows; k++ {
		share := float64(k) / float64(rows)
		p := make([]float64, len(at))
		for i := range p {
			if p[i] = at[i] + share*(to[i]-at[i]); step == nil {
				p[i] = to[i]
			}
		}
		for i, name := range m.names {
			m.take(l, i, name, m.pressure[i], p[i], to[lead]-p[lead], lead, stretch)
		}
		for step != nil && stretch+1 < len(l.Stretches) && passed(readings(l.Stretches[stretch+1].At, m.names)[lead], at[lead], p[lead]) {
			stretch++
			for i, name := range m.names {
				for _, t := range l.Stretches[stretch].Takes {
					if t.Compartment == name {
						m.flow(i, m.Factor*float64(t.AtOnce))
					}
				}
			}
		}
		copy(m.pressure, p)
		m.row()
	}
}

func passed(mark, from, p float64) bool {
	if p >= from {
		return mark <= p
	}
	return mark >= p
}

// take lets a compartment take what it does while its pressure goes from a to b. left
// is what the leading one has still to go.
func (m *maker) take(l *sequence.Leg, i int, name string, a, b, left float64, lead, stretch int) {
	for _, t := range l.Stretches[stretch].Takes {
		if t.Compartment != name {
			continue
		}
		m.flow(i, m.Factor*float64(t.PerPSI)/float64(unit.PSI)*(b-a))
		for _, x := range t.References {
			drive := float64(x.Drive)
			if !x.Out {
				drive = -drive
			}
			switch {
			case i == lead:
				drive -= left
			case x.Name == m.names[lead]:
				drive += left
			}
			if x.Flow != "" {
				// An invented injectivity: a twentieth of a barrel a minute for each 100 psi.
				m.flow(i, drive/float64(100*unit.PSI)*float64(0.05*unit.Barrel)/60*m.Every)
			}
		}
	}
	for _, k := range m.Leaks {
		if k.Step == m.step && k.From == name {
			lost := float64(k.Rate) / 60 * m.Every * b / float64(1000*unit.PSI)
			m.flow(i, lost)
			if to := slices.Index(m.names, k.To); to >= 0 {
				m.flow(to, -lost)
			}
		}
	}
}

// pull takes the weight indicator up, and lets it fall where something parts.
func (m *maker) pull(l *sequence.Leg, seen *sequence.Seen, to float64) {
	parts := math.Inf(1)
	for _, e := range seen.Events {
		if e.Pull != 0 && e.Partial == "" {
			parts = float64(e.Pull)
		}
	}
	if math.IsInf(parts, 1) { // nothing holds what is free already
		to = min(to, float64(l.Weight))
	}
	from := m.weight
	for k := 1; k <= 60; k++ {
		w := from + (to-from)*float64(k)/60
		if w > parts {
			m.weight = parts
			m.row()
			break
		}
		m.weight = w
		m.row()
	}
	if to >= parts {
		m.weight = float64(l.Weight)
	}
	for range restRows {
		m.row()
	}
}

func readings(all []sequence.Reading, names []string) []float64 {
	out := make([]float64, len(names))
	for i, n := range names {
		for _, r := range all {
			if r.Compartment == n {
				out[i] = float64(r.Pressure)
			}
		}
	}
	return out
}

// String names a job, for tests.
func (j Job) String() string { return fmt.Sprintf("seed %d", j.Seed) }

// Ports are how the ports stand at the end of a job: "open" or "shut".
func (j Job) Ports(ctx context.Context, p *sequence.Plan) (map[string]string, error) {
	all := map[string]string{}
	err := j.follow(ctx, p, func(_ int, _ *sequence.Seen, ports []sequence.PortState) {
		for _, s := range ports {
			all[s.Port] = "shut"
			if s.Open {
				all[s.Port] = "open"
			}
		}
	})
	return all, err
}

// Happened are the actions that happened in a job, by step (from 0).
func (j Job) Happened(ctx context.Context, p *sequence.Plan) ([][]string, error) {
	var all [][]string
	err := j.follow(ctx, p, func(_ int, seen *sequence.Seen, _ []sequence.PortState) {
		var names []string
		for _, e := range seen.Events {
			if e.Partial == "" {
				names = append(names, e.Action)
			}
		}
		all = append(all, names)
	})
	return all, err
}

// follow walks a job, and gives what each step shows and how the ports stand after it.
func (j Job) follow(ctx context.Context, p *sequence.Plan, each func(i int, seen *sequence.Seen, ports []sequence.PortState)) error {
	p, err := p.Derive()
	if err != nil {
		return err
	}
	p = p.Expanded()
	m := &maker{Job: j, plan: p, random: rand.New(rand.NewPCG(j.Seed, 7))}
	m.thresholds()
	f, err := sequence.Follow(m.plan)
	if err != nil {
		return err
	}
	if m.Steps == 0 {
		m.Steps = len(p.Steps)
	}
	var at *sequence.Situation
	for i := range m.Steps {
		var seen *sequence.Seen
		if seen, at, err = f.Step(ctx, at, i, m.still(i)); err != nil {
			return err
		}
		each(i, seen, f.Ports(at))
	}
	return nil
}

// still are the actions that don't happen in a step.
func (m *maker) still(i int) []string {
	var all []string
	for _, s := range m.Stuck {
		if s.Step <= i {
			all = append(all, s.Action)
		}
	}
	return all
}
