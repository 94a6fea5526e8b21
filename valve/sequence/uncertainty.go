package sequence

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Uncertainty says what is drawn. Every threshold is drawn from its band: from
// a normal distribution of which the band is two standard deviations to either
// side of nominal, cut off at the ends, or, where Even is set, from anywhere in
// the band alike.
type Uncertainty struct {
	Samples   int
	Seed      uint64
	Even      bool
	Density   float64       // standard deviation of each fluid's density, as a share; zero: as planned
	Formation unit.Pressure // standard deviation of each formation's pressure
	Workers   int           // zero: all cores; the answer doesn't depend on it
}

// maxSamples bounds time and memory.
const maxSamples = 1_000_000

// Risk is how often a plan goes wrong.
type Risk struct {
	Samples  int         `json:"samples"`
	Seed     uint64      `json:"seed"`
	Fails    Share       `json:"fails"` // the first thing that goes wrong is counted
	Events   []EventRisk `json:"events"`
	Inputs   []Influence `json:"inputs"`             // what matters most first
	Unwalked int         `json:"unwalked,omitempty"` // draws whose fluids left their range; they count as right
}

// Share is how often something happened, with its 95 % interval by Wilson
// (1927).
type Share struct {
	Value    float64 `json:"share"`
	Least    float64 `json:"least"`
	Greatest float64 `json:"greatest"`
}

// EventRisk is an event that goes wrong.
type EventRisk struct {
	Step   string `json:"step"`
	Action string `json:"action"`
	Kind   Kind   `json:"kind"`
	Count  int    `json:"count"`
	Share
}

// Influence is the correlation of an input with failing.
type Influence struct {
	Input       string  `json:"input"`
	Correlation float64 `json:"correlation"`
}

// chunk is how many samples share a random stream: the answer then depends on
// the seed and not on how the chunks are dealt out.
const chunk = 32

// Sample walks a plan with drawn inputs and counts the first thing that goes
// wrong in each: an unintended event, or an intended one that doesn't come.
func Sample(p *Plan, u Uncertainty) (*Risk, error) {
	if err := p.Validate(); err != nil {
		return nil, err
	}
	if err := u.check(); err != nil {
		return nil, err
	}
	n, err := compile(p)
	if err != nil {
		return nil, err
	}
	workers := u.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	draws := make([]draw, u.Samples)
	jobs := make(chan int)
	var group sync.WaitGroup
	for range min(workers, (u.Samples+chunk-1)/chunk) {
		group.Go(func() {
			for start := range jobs {
				random := rand.New(rand.NewPCG(u.Seed, uint64(start)))
				for i := start; i < min(start+chunk, u.Samples); i++ {
					draws[i] = n.draw(random, u)
				}
			}
		})
	}
	for start := 0; start < u.Samples; start += chunk {
		jobs <- start
	}
	close(jobs)
	group.Wait()
	return n.risk(draws, u), nil
}

func (u Uncertainty) check() error {
	var faults []error
	if u.Samples < 1 || u.Samples > maxSamples {
		faults = append(faults, fmt.Errorf("sequence: samples is %d; it must be from 1 to %d", u.Samples, maxSamples))
	}
	if !(u.Density >= 0 && u.Density <= 0.1) {
		faults = append(faults, fmt.Errorf("sequence: density is %v; as a share it must be from 0 to 0.1", u.Density))
	}
	if !(u.Formation >= 0) || math.IsInf(float64(u.Formation), 0) {
		faults = append(faults, fmt.Errorf("sequence: formation is %v; it must not be negative", u.Formation))
	}
	if u.Workers < 0 {
		faults = append(faults, fmt.Errorf("sequence: workers is %d; it must not be negative", u.Workers))
	}
	return errors.Join(faults...)
}

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

// risk counts.
func (n *network) risk(draws []draw, u Uncertainty) *Risk {
	r := &Risk{Samples: len(draws), Seed: u.Seed}
	type event struct {
		step, action int
		kind         Kind
	}
	counts := map[event]int{}
	failed := make([]float64, len(draws))
	wrong := 0
	for i, d := range draws {
		if d.faulty {
			r.Unwalked++
		}
		if d.wrong {
			counts[event{d.step, d.action, d.kind}]++
			failed[i] = 1
			wrong++
		}
	}
	r.Fails = wilson(wrong, len(draws))
	for e, c := range counts {
		r.Events = append(r.Events, EventRisk{n.plan.Steps[e.step].Name, n.actions[e.action].name, e.kind, c, wilson(c, len(draws))})
	}
	slices.SortFunc(r.Events, func(a, b EventRisk) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Step, b.Step), cmp.Compare(a.Action, b.Action))
	})
	if wrong == 0 || wrong == len(draws) {
		return r
	}
	column := make([]float64, len(draws))
	for k, name := range n.inputNames(u) {
		for i := range draws {
			column[i] = draws[i].inputs[k]
		}
		if c := stat.Correlation(column, failed, nil); !math.IsNaN(c) {
			r.Inputs = append(r.Inputs, Influence{name, c})
		}
	}
	slices.SortStableFunc(r.Inputs, func(a, b Influence) int { return cmp.Compare(math.Abs(b.Correlation), math.Abs(a.Correlation)) })
	return r
}

// inputNames are the drawn inputs in the order of draw.
func (n *network) inputNames(u Uncertainty) []string {
	var names []string
	if u.Formation > 0 {
		for _, f := range n.plan.Formations {
			names = append(names, "pressure of "+f.Name)
		}
	}
	if u.Density > 0 {
		for _, f := range n.plan.Fluids {
			names = append(names, "density of "+f.Name)
		}
	}
	for _, a := range n.actions {
		for k := range a.row {
			name := "threshold of “" + a.name + "”"
			if len(a.row) > 1 {
				name += fmt.Sprintf(", trigger %d", k+1)
			}
			names = append(names, name)
		}
	}
	if n.plan.String != nil {
		names = append(names, "drag")
	}
	return names
}

// wilson is the 95 % interval of a share.
//
//	(p̂ + z²/2n ± z·sqrt(p̂(1−p̂)/n + z²/4n²)) / (1 + z²/n)
//
// Source: Wilson, Journal of the American Statistical Association 22, 1927,
// 209-212; z is the 97.5 % quantile of the normal distribution.
func wilson(count, samples int) Share {
	n := float64(samples)
	p := float64(count) / n
	z := distuv.UnitNormal.Quantile(0.975)
	middle := p + z*z/(2*n)
	half := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	d := 1 + z*z/n
	return Share{Value: p, Least: max((middle-half)/d, 0), Greatest: min((middle+half)/d, 1)}
}
