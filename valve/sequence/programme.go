package sequence

import (
	"cmp"
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
)

// Programme is a plan that was walked: what happens in each step, by what
// margin nothing else does, and what is wrong with it.
type Programme struct {
	Plan     string       `json:"plan"`
	Steps    []StepResult `json:"steps"`
	Findings []Finding    `json:"findings"`
	Worlds   int          `json:"worlds"` // how many choices of thresholds were walked
}

// OK tells whether the plan does what it intends, and nothing else, at both
// ends of every band.
func (p *Programme) OK() bool { return len(p.Findings) == 0 }

// StepResult is one step.
type StepResult struct {
	Name     string          `json:"name"`
	Note     string          `json:"note,omitempty"`
	Pull     []unit.Force    `json:"pull,omitempty"`     // weight-indicator readings to pull to
	Wellhead *unit.Pressure  `json:"wellhead,omitempty"` // flowing, where the step produces
	Points   []Point         `json:"points"`             // nominal: at the start and after each ramp, squeeze and pull
	Events   []Event         `json:"events"`             // nominal
	Triggers []TriggerResult `json:"triggers"`           // every action that was armed
	Ratings  []RatingResult  `json:"ratings"`
	Holding  []HoldingResult `json:"holding,omitempty"` // nominal
	Balance  []BalanceResult `json:"balance"`
	Tests    []TestResult    `json:"tests,omitempty"`
	Barriers []BarrierResult `json:"barriers"`
	Volumes  []Volume        `json:"volumes,omitempty"`
	Zones    []ZoneRate      `json:"zones,omitempty"`
	Window   *Window         `json:"window,omitempty"`
	Partings []Parting       `json:"partings,omitempty"`
	Ports    []PortState     `json:"ports"`   // at the end
	Unknown  []string        `json:"unknown"` // devices whose state isn't certain at the end
	OK       bool            `json:"ok"`
}

// Point is the well where a step stands still.
type Point struct {
	Label     string         `json:"label"`
	Surface   []Reading      `json:"surface"`
	Pressures []PressureAt   `json:"pressures"`
	String    *StringAt      `json:"string,omitempty"`
	Flows     []FlowAt       `json:"flows,omitempty"`
	Profiles  []ProfilePoint `json:"-"`
}

// Reading is the pressure of a compartment at surface: applied, or, where it is
// shut in, what the gauge shows.
type Reading struct {
	Compartment string        `json:"compartment"`
	Pressure    unit.Pressure `json:"pressure"`
	Shut        bool          `json:"shut"`
}

// PressureAt is the pressure of every compartment that reaches a device.
type PressureAt struct {
	Device      string        `json:"device"`
	Depth       unit.Length   `json:"depth"`
	TVD         unit.Length   `json:"tvd"`
	Compartment string        `json:"compartment"`
	Pressure    unit.Pressure `json:"pressure"`
}

// ProfilePoint is a compartment's pressure at a depth, for pictures.
type ProfilePoint struct {
	Compartment string
	TVD         unit.Length
	Pressure    unit.Pressure
}

// StringAt is the string where a step stands still.
type StringAt struct {
	Held    bool          `json:"held"`
	Free    bool          `json:"free,omitempty"` // on a pull that nothing holds: it comes up, at this hook load
	Hook    unit.Force    `json:"hook"`           // what the weight indicator shows, or would show with the string out of its hanger: block included
	Tension unit.Force    `json:"tension"`        // just above where the string is or will be held
	Packer  unit.Force    `json:"packer"`         // pull on what holds it, up positive
	Seals   unit.Length   `json:"seals"`          // movement since landing, down positive
	Usage   float64       `json:"usage"`          // of the governing limit, design factor included
	Limit   string        `json:"limit"`
	LimitMD unit.Length   `json:"limit depth"`
	Buckled unit.Length   `json:"buckled"`
	Along   []StringDepth `json:"-"`
}

// StringDepth is the string at one depth, for pictures.
type StringDepth struct {
	MD      unit.Length
	Tension unit.Force
	Usage   float64
}

// FlowAt is fluid that moves, or would as soon as it may.
type FlowAt struct {
	Kind         Flow          `json:"kind"`
	From         string        `json:"from"`
	To           string        `json:"to"`
	Differential unit.Pressure `json:"differential"`
}

// Event is something that happened.
type Event struct {
	Action       string         `json:"action"`
	Ramp         int            `json:"ramp"`                   // counted from 1; 0 is before the ramps
	Partial      string         `json:"partial,omitempty"`      // how far the row has come, where it hasn't fired
	Differential *unit.Pressure `json:"differential,omitempty"` // that its trigger felt, or
	Tension      *unit.Force    `json:"tension,omitempty"`
	Surface      []Reading      `json:"surface"` // applied at that moment
	Pull         unit.Force     `json:"pull,omitempty"`
	Across       []Across       `json:"across,omitempty"` // over each port that it opens
}

// Across is the differential over a port at the moment at which it opens: what
// drives fluid through it, from the higher pressure to the lower. It is never
// negative.
type Across struct {
	Port         string        `json:"port"`
	From         string        `json:"from"` // compartments
	To           string        `json:"to"`
	Differential unit.Pressure `json:"differential"`
}

// PortState is a port at the end of a step.
type PortState struct {
	Port string `json:"port"`
	Open bool   `json:"open"`
}

// Check walks a plan and reports what happens. The error says what keeps it
// from being walked; a plan that can be walked but fails is in the findings.
func Check(p *Plan) (*Programme, error) {
	n, err := p.network()
	if err != nil {
		return nil, err
	}
	c := checker{network: n, programme: &Programme{Plan: p.Name, Findings: []Finding{}}}
	return c.check()
}

// checker walks all worlds side by side, step by step.
type checker struct {
	*network
	programme *Programme
	worlds    []*walked
	reported  map[string]bool // actions that a finding has named: what follows from it isn't one more
	lasting   map[string]lasting
	index     int             // of the present step
	follows   string          // the step in which the nominal world left the plan
	within    string          // the present step, once a world has left the plan in it
	failed    bool            // the present step has a finding, be it one that goes on from an earlier step
	flowed    map[string]bool // formations whose inflow has been part of the plan
	tested    map[string][]string
}

// walked is one world on its way.
type walked struct {
	world
	state  *state
	before *state // as it was when the present step began
	trace  trace
	lost   bool  // it has left the plan
	doubt  []int // the actions with which it did
}

func (c *checker) check() (*Programme, error) {
	c.reported = map[string]bool{}
	c.tested = map[string][]string{}
	c.flowed = map[string]bool{}
	c.lasting = map[string]lasting{}
	for _, w := range c.network.worlds() {
		s := c.start()
		for i := range s.thresholds {
			s.thresholds[i] = sharp(c.actions[i].row, w.ends[i])
		}
		if p := c.plan.String; p != nil {
			s.hold.drag = p.Drag.Nominal
			switch w.name {
			case "earliest":
				s.hold.drag = p.Drag.Least
			case "latest":
				s.hold.drag = p.Drag.Greatest
			}
		}
		if err := first(s.solve(), s.land()); err != nil {
			return nil, err
		}
		c.worlds = append(c.worlds, &walked{world: w, state: s})
	}
	c.programme.Worlds = len(c.worlds)
	for k := range c.plan.Steps {
		if err := c.step(k); err != nil {
			return nil, err
		}
	}
	return c.programme, nil
}

func (c *checker) step(k int) error {
	step := &c.plan.Steps[k]
	c.index, c.within, c.failed = k, "", false
	alive := c.alive()
	faults := make([]error, len(alive))
	atOnce(len(alive), 0, func(i int) {
		w := alive[i]
		w.before = w.state.clone()
		t, err := walkStep(w.state, step, w.thorough)
		if err != nil {
			faults[i] = fmt.Errorf("%w (%s)", err, w.words)
		}
		w.trace = t
	})
	if err := first(faults...); err != nil {
		return err
	}
	r := c.result(step)
	before := len(c.programme.Findings)
	c.events(step, r)
	c.ratingResults(step, r)
	if err := first(c.balance(step, r), c.tests(step, r)); err != nil {
		return stepFault{step.Name, err}
	}
	c.stringResults(step)
	c.freePull(step)
	c.flowResults(step)
	if err := first(c.holdingResults(step, r), c.fractures(step)); err != nil {
		return stepFault{step.Name, err}
	}
	c.barrierResults(step, r)
	if err := c.produce(step, r); err != nil {
		return err
	}
	r.OK = !c.failed
	findings := c.programme.Findings[before:]
	c.partings(step, r, findings)
	c.window(step, r, findings)
	for i := range findings {
		findings[i].Cure = cmp.Or(findings[i].Cure, "look at the order of the steps: another step has to come before or after this one")
	}
	for _, w := range c.worlds {
		if !w.lost {
			w.doubt = append(w.doubt, c.strayed(step, w)...)
			if w.lost = len(w.doubt) > 0; w.lost && w == c.worlds[0] {
				c.follows = step.Name
			}
		}
	}
	c.unknown(r)
	c.programme.Steps = append(c.programme.Steps, *r)
	return nil
}

// alive are the worlds that have kept to the plan so far, the nominal one
// always.
func (c *checker) alive() []*walked {
	var ws []*walked
	for i, w := range c.worlds {
		if i == 0 || !w.lost {
			ws = append(ws, w)
		}
	}
	return ws
}

// done are the names of the actions that were completed in a step.
func (w *walked) done() []string {
	var names []string
	for _, e := range w.trace.events {
		if e.complete {
			names = append(names, w.state.actions[e.action].name)
		}
	}
	return names
}

// strayed are the actions with which a world has left the plan in a step.
func (c *checker) strayed(step *Step, w *walked) []int {
	var all []int
	done := w.done()
	for i := range c.actions {
		name := c.actions[i].name
		if slices.Contains(done, name) != slices.Contains(step.Expect, name) {
			all = append(all, i)
		}
	}
	return all
}
