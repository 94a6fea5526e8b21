package sequence_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

// plainMaker makes random plans. Everything in them is invented; a seed always
// makes the same.
type plainMaker struct {
	random  *rand.Rand
	plan    *sequence.Plan
	group   []int        // by compartment: what all its ports together would join
	held    map[int]bool // groups with a surface or a formation
	sand    map[int]bool // groups with a formation
	feature *feature
	width   float64 // how wide the bands are, roughly, as a share
}

func (m *plainMaker) between(a, b float64) float64 { return a + (b-a)*m.random.Float64() }
func (m *plainMaker) chance(p float64) bool        { return m.random.Float64() < p }

// round makes every other number one that a person would write: ties come of it.
func (m *plainMaker) round(x float64) float64 {
	if m.chance(0.5) {
		return math.Round(x/10) * 10
	}
	return math.Round(x*10) / 10
}

func feet(x float64) unit.Length { return unit.Length(x) * foot }

func pounds(x float64) pressure { return pressure(x) * psi }

// well makes fluids, compartments, formations and ports.
func (m *plainMaker) well() {
	p := m.plan
	depth := math.Round(m.between(5000, 14000))
	p.Well.MD = feet(depth)
	for k := range 2 + m.random.IntN(3) {
		f := sequence.Fluid{Name: fmt.Sprintf("fluid %d", k)}
		setDensity(&f, math.Round(m.between(70, 120))/10)
		p.Fluids = append(p.Fluids, f)
	}
	m.compartment("tubing", 0, math.Round(m.between(0.7, 1)*depth))
	m.compartment("annulus", 0, math.Round(m.between(0.5, 0.95)*depth))
	p.Compartments[0].Surface, p.Compartments[1].Surface = true, true
	m.held[0], m.held[1] = true, true
	for k := range 1 + m.random.IntN(4) {
		m.further(k, depth)
	}
	for i := range p.Compartments {
		for j := range i {
			if m.group[i] != m.group[j] && !(m.held[m.group[i]] && m.held[m.group[j]]) && m.chance(0.3) {
				m.join(i, j)
			}
		}
	}
}

func (m *plainMaker) fluid() string { return m.plan.Fluids[m.random.IntN(m.liquids())].Name }

// liquids are the first of the plan's fluids.
func (m *plainMaker) liquids() int {
	n := len(m.plan.Fluids)
	if m.plan.Fluids[n-1].Kind == sequence.Nitrogen {
		n--
	}
	return n
}

func (m *plainMaker) compartment(name string, top, bottom float64) int {
	c := sequence.Compartment{Name: name, TopMD: feet(top), BottomMD: feet(bottom), Capacity: unit.Area(m.between(0.005, 0.08)) * unit.BarrelPerFoot}
	if m.chance(0.2) {
		between := math.Round(m.between(top+1, bottom-1))
		c.Layers = []sequence.Layer{{Fluid: m.fluid(), ToMD: feet(between)}, {Fluid: m.fluid(), ToMD: feet(bottom)}}
	} else {
		c.Fluid = m.fluid()
	}
	m.plan.Compartments = append(m.plan.Compartments, c)
	m.group = append(m.group, len(m.group))
	return len(m.group) - 1
}

// further adds a chamber or a sand face, mostly with a port to what is there.
func (m *plainMaker) further(k int, depth float64) {
	parent := m.random.IntN(len(m.group))
	if k > 0 && m.chance(0.5) {
		parent = 2 + m.random.IntN(k)
	}
	top := math.Round(m.between(0.3, 0.9) * m.plan.Compartments[parent].BottomMD.In(foot))
	top = max(top, m.plan.Compartments[parent].TopMD.In(foot))
	bottom := math.Round(min(depth, top+m.between(300, 4000)))
	i := m.compartment(fmt.Sprintf("room %d", k), top, bottom)
	c := &m.plan.Compartments[i]
	sand := m.chance(0.3)
	if m.chance(0.7) && !(sand && m.sand[m.group[parent]]) {
		m.join(i, parent)
	}
	if !sand {
		if m.chance(0.8) {
			setTrapped(c, m.round(m.between(0, 4000)))
		}
		return
	}
	f := sequence.Formation{Name: fmt.Sprintf("sand %d", k), MD: feet(math.Round(m.between(top, bottom)))}
	setPore(&f, m.round(max(100, plainDensity(m.plan.Fluids[0])*psiPerFootPpg*f.MD.In(foot)+m.between(-900, 1200))))
	m.plan.Formations = append(m.plan.Formations, f)
	c.Formation = f.Name
	m.sand[m.group[i]], m.held[m.group[i]] = true, true
}

// join makes a port between two compartments where both reach.
func (m *plainMaker) join(i, j int) {
	a, b := m.plan.Compartments[i], m.plan.Compartments[j]
	top, bottom := max(a.TopMD, b.TopMD).In(foot), min(a.BottomMD, b.BottomMD).In(foot)
	if top >= bottom {
		return
	}
	m.plan.Ports = append(m.plan.Ports, sequence.Port{Name: fmt.Sprintf("port %d", len(m.plan.Ports)), Joins: []string{a.Name, b.Name},
		MD: feet(math.Round(m.between(top, bottom))), Open: m.chance(0.3)})
	from, to := m.group[i], m.group[j]
	for k := range m.group {
		if m.group[k] == from {
			m.group[k] = to
		}
	}
	m.held[to] = m.held[to] || m.held[from]
	m.sand[to] = m.sand[to] || m.sand[from]
}

// devices makes devices whose rows have no levels yet.
func (m *plainMaker) devices() {
	for k := range 2 + m.random.IntN(7) {
		i := 0
		if m.chance(0.5) {
			i = m.random.IntN(len(m.group))
		}
		c := m.plan.Compartments[i]
		d := sequence.Device{Name: fmt.Sprintf("device %d", k), MD: feet(math.Round(m.between(c.TopMD.In(foot), c.BottomMD.In(foot))))}
		a := sequence.Action{Name: "opens", Inside: c.Name}
		var others []string
		for j, o := range m.plan.Compartments {
			if j != i && o.TopMD <= d.MD && d.MD <= o.BottomMD {
				others = append(others, o.Name)
			}
		}
		if len(others) == 0 || m.chance(0.15) {
			chamber := pounds(float64(m.random.IntN(3) * 1500))
			a.Chamber = &chamber
		} else {
			a.Outside = others[m.random.IntN(len(others))]
		}
		if k > 0 && m.chance(0.25) { // beside another, feeling the same
			twin := m.plan.Devices[m.random.IntN(k)]
			d.MD = twin.MD
			a.Inside, a.Outside, a.Chamber = twin.Actions[0].Inside, twin.Actions[0].Outside, twin.Actions[0].Chamber
		}
		a.Opens = m.somePort()
		d.Actions = []sequence.Action{a}
		if m.chance(0.5) {
			m.latch(&d)
		}
		m.plan.Devices = append(m.plan.Devices, d)
	}
}

func (m *plainMaker) somePort() []string {
	if len(m.plan.Ports) == 0 || m.chance(0.25) {
		return nil
	}
	return []string{m.plan.Ports[m.random.IntN(len(m.plan.Ports))].Name}
}

// latch adds an action that closes what the first opens; they arm each other, or
// a third joins in.
func (m *plainMaker) latch(d *sequence.Device) {
	opens := d.Actions[0]
	closes := sequence.Action{Name: "closes", Inside: opens.Inside, Outside: opens.Outside, Chamber: opens.Chamber, Closes: opens.Opens, Disarmed: true}
	opens.Arms = []string{"closes"}
	if m.chance(0.8) {
		closes.Arms = []string{"opens"}
	}
	if m.chance(0.2) {
		closes.Disarmed = false
	}
	d.Actions = []sequence.Action{opens, closes}
	if m.chance(0.3) {
		third := sequence.Action{Name: "locks", Inside: opens.Inside, Outside: opens.Outside, Chamber: opens.Chamber, Closes: m.somePort(), Disarmed: true}
		if m.chance(0.5) {
			third.Arms = []string{"opens"}
		}
		d.Actions[1].Arms = []string{"locks"}
		d.Actions = append(d.Actions, third)
	}
	if m.chance(0.2) && len(opens.Opens) > 0 { // the other way round
		for i := range d.Actions {
			a := &d.Actions[i]
			a.Opens, a.Closes = a.Closes, a.Opens
		}
	}
}

// row makes triggers with levels that lie about what an action feels in the
// course of the programme.
func (m *plainMaker) row(felt []float64, first valve.Direction) []sequence.Trigger {
	start, least, most := felt[0], felt[0], felt[0]
	for _, x := range felt {
		least, most = min(least, x), max(most, x)
	}
	var row []sequence.Trigger
	n := 1
	if m.chance(0.25) {
		n = 2 + m.random.IntN(2)
	}
	d := first
	for range n {
		t := sequence.Trigger{Direction: d}
		far, away := most, -1.0
		if d == valve.Falling {
			far, away = least, 1
		}
		if math.Abs(far-start) < 50 {
			far = start - away*m.between(200, 2000)
		}
		level := m.round(start + (far-start)*m.between(0.03, 1.15))
		if level == 0 {
			level = 1
		}
		t.Threshold = unit.Exactly(pounds(level))
		if m.chance(0.2) {
			t.Count = 2 + m.random.IntN(2)
			t.Rearm = unit.Exactly(pounds(m.round(level + away*m.between(60, 0.8*(most-least)+120))))
		}
		row = append(row, t)
		start = level
		if m.chance(0.75) {
			d = valve.Rising + valve.Falling - d
		}
	}
	return row
}
