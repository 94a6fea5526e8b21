package sequence

import (
	"maps"
	"math/rand/v2"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"gonum.org/v1/gonum/stat/distuv"
)

// draw is one sample: its inputs in standard deviations, and what went wrong.
type draw struct {
	inputs []float64
	wrong  bool
	step   int
	action int
	kind   Kind
	faulty bool // it couldn't be walked
}

func (n *network) draw(random *rand.Rand, u Uncertainty) draw {
	var d draw
	normal := distuv.Normal{Sigma: 1, Src: random}
	plan := *n.plan
	plan.Formations = slices.Clone(plan.Formations)
	m := *n
	m.plan = &plan
	if u.Formation > 0 {
		for i := range plan.Formations {
			z := normal.Rand()
			d.inputs = append(d.inputs, z)
			plan.Formations[i].Pressure += unit.Pressure(z) * u.Formation
		}
	}
	if u.Density > 0 {
		m.fluids = map[string]hydrostatics.Fluid{}
		for _, f := range plan.Fluids {
			z := normal.Rand()
			d.inputs = append(d.inputs, z)
			m.fluids[f.Name] = scaled{n.fluids[f.Name], 1 + z*u.Density}
		}
	}
	if u.Gauge > 0 {
		z := normal.Rand()
		d.inputs = append(d.inputs, z)
		plan.Steps = misread(plan.Steps, unit.Pressure(z)*u.Gauge)
	}
	if u.Temperature > 0 {
		z := normal.Rand()
		d.inputs = append(d.inputs, z)
		m.temperatures = shifted(n.temperatures, unit.TemperatureDifference(z)*u.Temperature)
	}
	s := m.start()
	for i, a := range m.actions {
		row := make(valve.Row, len(a.row))
		for k, t := range a.row {
			z := u.place(random, normal)
			d.inputs = append(d.inputs, z)
			t.Threshold = unit.Exactly(inBand(t.Threshold, z))
			t.Rearm = unit.Exactly(t.Rearm.Nominal)
			row[k] = t
		}
		s.thresholds[i] = row
	}
	if p := plan.String; p != nil {
		z := u.place(random, normal)
		d.inputs = append(d.inputs, z)
		s.hold.drag = unit.Force(inBand(force2pressure(p.Drag, 1), z))
	}
	if s.solve() != nil || s.land() != nil {
		d.faulty = true
		return d
	}
	for k := range plan.Steps {
		step := &plan.Steps[k]
		t, err := walkStep(s, step, false)
		if err != nil {
			d.faulty = true
			return d
		}
		if i, kind, wrong := m.firstWrong(step, t); wrong {
			d.wrong, d.step, d.action, d.kind = true, k, i, kind
			return d
		}
	}
	return d
}

// misread returns steps in which every applied pressure is off by as much; what
// is bled to nothing stays nothing.
func misread(steps []Step, by unit.Pressure) []Step {
	off := slices.Clone(steps)
	for i := range off {
		off[i].Ramps = slices.Clone(off[i].Ramps)
		for k, ramp := range off[i].Ramps {
			off[i].Ramps[k] = maps.Clone(ramp)
			for name, p := range ramp {
				if p > 0 {
					off[i].Ramps[k][name] = max(p+by, 0)
				}
			}
		}
	}
	return off
}

// shifted returns temperatures that are all off by as much. A profile that
// can't be shifted stays as it is.
func shifted(profiles map[string]*hydrostatics.TemperatureProfile, by unit.TemperatureDifference) map[string]*hydrostatics.TemperatureProfile {
	off := make(map[string]*hydrostatics.TemperatureProfile, len(profiles))
	for name, p := range profiles {
		points := slices.Clone(p.Points())
		for i := range points {
			points[i].Temperature = points[i].Temperature.Add(by)
		}
		off[name] = p
		if q, err := hydrostatics.NewTemperatureProfile(points); err == nil {
			off[name] = q
		}
	}
	return off
}

// place draws where in its band a threshold lies: from -1, the least, over 0,
// nominal, to 1, the greatest.
func (u Uncertainty) place(random *rand.Rand, normal distuv.Normal) float64 {
	if u.Even {
		return 2*random.Float64() - 1
	}
	for {
		if z := normal.Rand() / 2; z >= -1 && z <= 1 {
			return z
		}
	}
}

func inBand(b unit.Band[unit.Pressure], z float64) unit.Pressure {
	if z < 0 {
		return b.Nominal + unit.Pressure(z)*(b.Nominal-b.Least)
	}
	return b.Nominal + unit.Pressure(z)*(b.Greatest-b.Nominal)
}

// scaled is a fluid of another density.
type scaled struct {
	fluid hydrostatics.Fluid
	by    float64
}

func (f scaled) Density(p unit.Pressure, t unit.Temperature) (unit.Density, error) {
	rho, err := f.fluid.Density(p, t)
	return rho * unit.Density(f.by), err
}

// UniformDensity tells whether the density is the same everywhere.
func (f scaled) UniformDensity() (unit.Density, bool) {
	u, ok := f.fluid.(hydrostatics.Uniform)
	if !ok {
		return 0, false
	}
	rho, ok := u.UniformDensity()
	return rho * unit.Density(f.by), ok
}

// firstWrong is the first thing in a step that isn't as intended.
func (n *network) firstWrong(step *Step, t trace) (action int, kind Kind, wrong bool) {
	done := map[int]bool{}
	for _, e := range t.events {
		if !e.complete {
			continue
		}
		done[e.action] = true
		if !slices.Contains(step.Expect, n.actions[e.action].name) {
			return e.action, Unintended, true
		}
	}
	for _, name := range step.Expect {
		if i := n.byName.action[name]; !done[i] {
			return i, Missing, true
		}
	}
	return 0, "", false
}
