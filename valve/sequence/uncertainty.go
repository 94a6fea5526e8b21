package sequence

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"completion.example/hydrostatics/unit"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Uncertainty says what is drawn. Every threshold is drawn from its band: from
// a normal distribution of which the band is two standard deviations to either
// side of nominal, cut off at the ends, or, where Even is set, from anywhere in
// the band alike.
type Uncertainty struct {
	Samples int
	Seed    uint64
	Even    bool
	Workers int // zero: all cores; the answer doesn't depend on it

	// Standard deviations of normal distributions; zero: as planned.
	Density     float64                    // of each fluid's density, as a share
	Formation   unit.Pressure              // of each formation's pressure
	Gauge       unit.Pressure              // of what is really applied where a gauge shows the planned pressure, the same in all steps
	Temperature unit.TemperatureDifference // of every temperature, all shifted alike
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
	n, err := p.network()
	if err != nil {
		return nil, err
	}
	if err := u.check(); err != nil {
		return nil, err
	}
	draws := make([]draw, u.Samples)
	atOnce((u.Samples+chunk-1)/chunk, u.Workers, func(k int) {
		random := rand.New(rand.NewPCG(u.Seed, uint64(k)))
		for i := k * chunk; i < min((k+1)*chunk, u.Samples); i++ {
			draws[i] = n.draw(random, u)
		}
	})
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
	for _, d := range []struct {
		name  string
		value fmt.Stringer
		x     float64
	}{{"formation", u.Formation, float64(u.Formation)}, {"gauge", u.Gauge, float64(u.Gauge)}, {"temperature", u.Temperature, float64(u.Temperature)}} {
		if !(d.x >= 0) || math.IsInf(d.x, 0) {
			faults = append(faults, fmt.Errorf("sequence: %s is %v; it must not be negative", d.name, d.value))
		}
	}
	if u.Workers < 0 {
		faults = append(faults, fmt.Errorf("sequence: workers is %d; it must not be negative", u.Workers))
	}
	return errors.Join(faults...)
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
	if u.Gauge > 0 {
		names = append(names, "gauge")
	}
	if u.Temperature > 0 {
		names = append(names, "temperature")
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
