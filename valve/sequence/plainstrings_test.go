package sequence_test

import (
	"fmt"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// hang puts a string into the tubing of a random well, with seals, one or two packers
// that hold it, a joint that parts and, now and then, what frees it.
func (m *plainMaker) hang() {
	p := m.plan
	end := math.Round(min(p.Compartments[0].BottomMD, p.Compartments[1].BottomMD).In(foot) * m.between(0.8, 1))
	even := func(top, bottom float64) []sequence.MarkedTVD {
		return []sequence.MarkedTVD{{Temperature: unit.Fahrenheit(top)}, {TVD: p.Well.MD, Temperature: unit.Fahrenheit(bottom)}}
	}
	p.Well.Temperatures = map[string][]sequence.MarkedTVD{sequence.Undisturbed: even(70, math.Round(m.between(120, 300))),
		"cool": even(60, math.Round(m.between(80, 150))), "hot": even(140, math.Round(m.between(180, 320)))}
	s := &sequence.String{Inside: "tubing", Around: []string{"annulus"}, Block: 15000 * unit.PoundForce, LockDown: unit.Force(m.between(0, 60000)) * unit.PoundForce}
	if m.chance(0.5) {
		s.Top = sequence.TopClosed
	}
	var below []string
	for _, c := range p.Compartments {
		if c.TopMD <= feet(end) && feet(end) <= c.BottomMD {
			below = append(below, c.Name)
		}
	}
	s.Below = below[m.random.IntN(len(below))]
	pipes := []sequence.Pipe{ // of a steel that no load of these wells comes near
		{Size: 3.5 * unit.Inch, Bore: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Yield: 150000 * psi},
		{Size: 4.5 * unit.Inch, Bore: 3.958 * unit.Inch, Weight: 12.75 * unit.PoundPerFoot, Yield: 150000 * psi},
		{Size: 2.875 * unit.Inch, Bore: 2.259 * unit.Inch, Weight: 8.7 * unit.PoundPerFoot, Yield: 150000 * psi},
	}
	pipe := m.random.IntN(2)
	if m.chance(0.4) {
		s.Sections = append(s.Sections, sequence.StringSection{Pipe: pipes[pipe], Hole: 6.184 * unit.Inch, BottomMD: feet(math.Round(end * m.between(0.2, 0.8)))})
		pipe = m.random.IntN(3)
	}
	s.Sections = append(s.Sections, sequence.StringSection{Pipe: pipes[pipe], Hole: 6.184 * unit.Inch, BottomMD: feet(end)})
	seal := func(depth float64) {
		s.Seals = append(s.Seals, sequence.Seal{Name: fmt.Sprintf("seals %d", len(s.Seals)), MD: feet(depth), Bore: unit.Length(m.between(2.5, 5.5)) * unit.Inch,
			Up: 1000 * foot, Down: 1000 * foot})
	}
	if m.chance(0.4) {
		seal(math.Round(end * m.between(0.4, 0.95)))
	}
	seal(end)
	if m.chance(0.7) {
		s.Drag = unit.Exactly(unit.Force(math.Round(m.between(500, 8000))) * unit.PoundForce)
	}
	m.packers(s, end)
	p.String = s
}

// packers are the devices that hold the string, part it and free it.
func (m *plainMaker) packers(s *sequence.String, end float64) {
	p := m.plan
	s.HeldMD = feet(end)
	add := func(name string, depth unit.Length, a sequence.Action) {
		p.Devices = append(p.Devices, sequence.Device{Name: name, MD: depth, Actions: []sequence.Action{a}})
	}
	both := sequence.Action{Inside: "tubing", Outside: "annulus"}
	packers := 1 + m.random.IntN(2)
	var at []unit.Length
	for k := range packers {
		depth := end
		if k+1 < packers || m.chance(0.6) {
			depth = math.Round(end * m.between(0.5, 0.97))
		}
		if slices.Contains(at, feet(depth)) {
			continue
		}
		at = append(at, feet(depth))
		a := both
		a.Name, a.Holds, a.Opens = "sets", true, m.somePort()
		if m.chance(0.6) {
			a.Opens = nil
		}
		add(fmt.Sprintf("packer %d", k), feet(depth), a)
	}
	s.HeldMD = slices.Max(at)
	if m.chance(0.3) {
		a := both
		a.Name, a.Releases = "frees", true
		add("release tool", at[m.random.IntN(len(at))], a)
	}
	depth := math.Round(s.HeldMD.In(foot) * m.between(0.3, 0.98))
	a := sequence.Action{Name: "parts", Axial: true, Seal: unit.Length(m.between(3, 5)) * unit.Inch, Releases: m.chance(0.8)}
	if !a.Releases || m.chance(0.2) {
		a.Opens = m.somePort()
	}
	add("joint", feet(depth), a)
}

// warmings and pulls of some steps; how hard is for later.
func (m *plainMaker) stringSteps() {
	for k := range m.plan.Steps {
		s := &m.plan.Steps[k]
		if m.chance(0.3) {
			s.Temperature = []string{"cool", "hot", sequence.Undisturbed}[m.random.IntN(3)]
		}
		if k == 0 && m.chance(0.2) {
			s.Lands = true
		}
	}
	m.plan.Steps = append(m.plan.Steps, sequence.Step{Name: "pull"})
}

// stringLevels says how hard is pulled and what parts the joints, from walks in which
// none parts.
func (m *plainMaker) stringLevels() {
	p := m.plan
	var joints []int
	for d := range p.Devices {
		if a := &p.Devices[d].Actions[0]; a.Axial {
			a.Triggers, a.Disarmed = []sequence.Trigger{{Tension: unit.Exactly(1e6 * unit.PoundForce)}}, true
			joints = append(joints, d)
		}
	}
	m.stringPulls(plainWalkOf(p, 2, nil))
	r := plainWalkOf(p, 4, nil)
	for _, joint := range joints {
		i := 0
		for d := range joint {
			for _, x := range p.Devices[d].Actions {
				i += max(1, len(x.All)+len(x.Any))
			}
		}
		var felt []float64
		for _, step := range r.stands {
			for _, at := range step {
				felt = append(felt, at.felt[i])
			}
		}
		if len(felt) == 0 {
			felt = []float64{10}
		}
		a := &p.Devices[joint].Actions[0]
		a.Disarmed = false
		t := sequence.Trigger{}
		first, far := felt[0], slices.Max(felt)
		if m.chance(0.15) {
			t.Direction, far = valve.Falling, slices.Min(felt)
		}
		level := math.Round(1000*(first+(far-first)*m.between(0.2, 1.2))) / 1000
		if level == 0 {
			level = 1
		}
		t.Tension = unit.Exactly(unit.Force(level*kips) * unit.PoundForce)
		a.Triggers = []sequence.Trigger{t}
		if m.chance(0.2) && t.Direction != valve.Falling { // pulled, and let go again
			back := unit.Force(math.Round(kips*(level-m.between(1, 20)))) * unit.PoundForce
			a.Triggers = append(a.Triggers, sequence.Trigger{Direction: valve.Falling, Tension: unit.Exactly(back)})
		}
	}
}

// stringPulls lets some steps pull.
func (m *plainMaker) stringPulls(r *plainResult) {
	p := m.plan
	for k := range p.Steps {
		if k >= len(r.stands) || len(r.stands[k]) == 0 || k+1 < len(p.Steps) && m.chance(0.8) {
			continue
		}
		stands := r.stands[k]
		last := stands[len(stands)-1].str
		if last.outer != nil && !p.Steps[k].Lands && m.chance(0.4) {
			last, p.Steps[k].On = last.outer, sequence.OnOuterString
		}
		if len(last.load) == 0 && m.chance(0.85) {
			p.Steps[k].On = sequence.OnString
			continue // nothing holds it
		}
		read := last.reading
		pull := []float64{max(1000, read+m.between(500, 60000))}
		if m.chance(0.15) {
			pull[0] = max(1000, read-m.between(500, 30000))
		}
		for range m.random.IntN(3) {
			if m.chance(0.5) {
				pull = append(pull, max(1000, pull[len(pull)-1]+m.between(-40000, 40000)))
			}
		}
		for _, x := range pull {
			p.Steps[k].Pull = append(p.Steps[k].Pull, unit.Force(math.Round(x))*unit.PoundForce)
		}
	}
}

// nest puts the string of a random well into another one, that stands in a casing.
func (m *plainMaker) nest() {
	m.hang()
	p := m.plan
	s := p.String
	casing := m.compartment("casing", 0, p.Well.MD.In(foot))
	p.Compartments[casing].Surface, m.held[casing] = true, true
	large := sequence.Pipe{Size: 5.5 * unit.Inch, Bore: 4.892 * unit.Inch, Weight: 17 * unit.PoundPerFoot, Yield: 150000 * psi}
	small := []sequence.Pipe{{Size: 3.5 * unit.Inch, Bore: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Yield: 150000 * psi},
		{Size: 2.875 * unit.Inch, Bore: 2.259 * unit.Inch, Weight: 8.7 * unit.PoundPerFoot, Yield: 150000 * psi}}
	for k := range s.Sections {
		s.Sections[k].Pipe, s.Sections[k].Hole = small[m.random.IntN(2)], large.Bore
	}
	for k := range s.Seals {
		s.Seals[k].Bore = unit.Length(m.between(2.5, 4.8)) * unit.Inch
	}
	end := s.Sections[len(s.Sections)-1].BottomMD.In(foot)
	below := math.Round(m.between(end, p.Compartments[1].BottomMD.In(foot)))
	s.Below = "annulus"
	if m.chance(0.35) { // it closes the end of the outer one
		below, s.Below = end, "casing"
	}
	if m.chance(0.5) {
		s.HangerMD = feet(math.Round(end * m.between(0.03, 0.15)))
	}
	o := &sequence.String{Inside: "annulus", Around: []string{"casing"}, Below: "casing", Block: 15000 * unit.PoundForce, LockDown: unit.Force(m.between(0, 90000)) * unit.PoundForce,
		Sections: []sequence.StringSection{{Pipe: large, Hole: 8.535 * unit.Inch, BottomMD: feet(below)}},
		Seals:    []sequence.Seal{{Name: "outer end", MD: feet(below), Bore: unit.Length(m.between(5, 6.5)) * unit.Inch, Up: 1000 * foot, Down: 1000 * foot}}}
	if m.chance(0.6) {
		o.Drag = unit.Exactly(unit.Force(math.Round(m.between(500, 9000))) * unit.PoundForce)
	}
	if m.chance(0.4) {
		o.Temperatures = map[string]string{"cool": sequence.Undisturbed, "hot": "cool"}
	}
	o.HeldMD = feet(math.Round(below * m.between(0.55, 1)))
	add := func(name string, depth unit.Length, a sequence.Action) {
		p.Devices = append(p.Devices, sequence.Device{Name: name, MD: depth, On: sequence.OnOuterString, Actions: []sequence.Action{a}})
	}
	add("outer packer", o.HeldMD, sequence.Action{Name: "sets", Inside: "annulus", Outside: "casing", Holds: true})
	if m.chance(0.5) {
		add("outer joint", feet(math.Round(o.HeldMD.In(foot)*m.between(0.3, 0.98))), sequence.Action{Name: "parts", Axial: true, Seal: unit.Length(m.between(5, 6)) * unit.Inch, Releases: true})
	}
	p.OuterString = o
}

// nestSteps are those of two strings: pressure in the casing, too.
func (m *plainMaker) nestSteps() {
	m.stringSteps()
	for k := range m.plan.Steps {
		if s := &m.plan.Steps[k]; m.chance(0.25) {
			s.Ramps = append(s.Ramps, map[string]pressure{"casing": pounds(m.round(m.between(0, 2500)))})
		}
		if s := &m.plan.Steps[k]; s.Lands && m.chance(0.4) {
			s.On = sequence.OnOuterString
		}
	}
}
