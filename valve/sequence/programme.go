package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/well"
)

// Programme is a plan that was walked: what happens in each step, by what margin
// nothing else does, and what is wrong with it.
type Programme struct {
	Plan      string       `json:"plan"`
	Verdict   Verdict      `json:"verdict"`
	Open      string       `json:"open,omitempty"`  // what couldn't be decided, and why
	Takes     string       `json:"takes,omitempty"` // all steps but those of branches, as far as the plan says
	Steps     []StepResult `json:"steps"`
	Findings  []Finding    `json:"findings"`
	Margins   []Margin     `json:"margins"`   // the least of every limit over the whole programme, tightest first
	Inputs    int          `json:"inputs"`    // quantities with a tolerance
	Branches  int          `json:"branches"`  // ways in which the programme may go that were told apart
	Unchecked []string     `json:"unchecked"` // what this plan says too little of to be checked
}

// Verdict is what was found of a plan in all choices of its inputs.
type Verdict string

// Verdicts.
const (
	// Proved: no choice of values inside the bands passes a limit.
	Proved Verdict = "proved"
	// Refuted: there is a choice that does; each finding has its witness.
	Refuted Verdict = "refuted"
	// Undecided: neither could be shown.
	Undecided Verdict = "not decided"
)

// OK tells whether the plan is proved.
func (p *Programme) OK() bool { return p.Verdict == Proved }

// Margin is the least that is left of a limit.
type Margin struct {
	Limit  string   `json:"limit"`
	Kind   Kind     `json:"kind"`
	Step   string   `json:"step"`
	Left   string   `json:"left"`  // for a person, such as "37.2 psi"
	Share  float64  `json:"share"` // of what there is to the limit; for putting them in order
	Place  string   `json:"place,omitempty"`
	Method Method   `json:"method"`
	At     []Choice `json:"at,omitempty"`     // the choice that attains it
	Slopes []Slope  `json:"slopes,omitempty"` // what takes most of it
}

// Slope is what one input takes of a margin: how much its whole band counts.
type Slope struct {
	Input string `json:"input"`
	Takes string `json:"takes"`
}

// Method is how a margin was found.
type Method string

// Methods.
const (
	// Exact: straight in the inputs, so that the least is that of a linear
	// programme, checked by its multipliers.
	Exact Method = "exact"
	// Enclosed: between evaluated points, with what isn't straight added.
	Enclosed Method = "enclosed"
)

// StepResult is one step.
type StepResult struct {
	Name     string          `json:"name"`
	Note     string          `json:"note,omitempty"`
	Pull     []unit.Force    `json:"pull,omitempty"`     // weight-indicator readings to pull to
	Wellhead *unit.Pressure  `json:"wellhead,omitempty"` // flowing, where the step produces
	Points   []Point         `json:"points"`             // nominal: at the start and after each ramp, squeeze and pull
	Acts     []ActResult     `json:"acts,omitempty"`     // by hand, nominal
	Events   []Event         `json:"events"`             // nominal
	Triggers []TriggerResult `json:"triggers"`           // every action that was armed
	Ratings  []RatingResult  `json:"ratings"`
	Holding  []HoldingResult `json:"holding,omitempty"` // nominal
	Balance  []BalanceResult `json:"balance"`
	Tests    []TestResult    `json:"tests,omitempty"`
	Barriers []BarrierResult `json:"barriers"`
	Volumes  []Volume        `json:"volumes,omitempty"`
	Pumps    []PumpResult    `json:"pumps,omitempty"`   // nominal
	Gas      []GasAt         `json:"gas,omitempty"`     // nominal: at the end
	Levels   []LevelAt       `json:"levels,omitempty"`  // nominal: of columns that have fallen
	Flowing  []PressureAt    `json:"flowing,omitempty"` // nominal: at the devices while the zones flow
	Rises    []Rise          `json:"rises,omitempty"`   // where the plan says how fast pressures are changed
	Zones    []ZoneRate      `json:"zones,omitempty"`
	Windows  []Window        `json:"windows,omitempty"` // of every pressure that is held or bled to, and of every pull
	Partings []Parting       `json:"partings,omitempty"`
	Forces   []PlaceForces   `json:"forces,omitempty"`   // of the string, over all choices, at every place that holds it or could
	Passage  []Passage       `json:"passage,omitempty"`  // of the plan's tools through the string as it lies at the end, nominal
	SetDown  *SetDown        `json:"set_down,omitempty"` // what could be set down as the string hangs at the end, nominal; with friction factors alone
	// OuterSetDown is SetDown of the outer string.
	OuterSetDown *SetDown    `json:"outer_set_down,omitempty"`
	Ports        []PortState `json:"ports"`   // at the end
	Unknown      []string    `json:"unknown"` // devices whose state isn't certain at the end
	OK           bool        `json:"ok"`
	Follows      string      `json:"follows,omitempty"`   // the step that failed before: what this one shows depends on it
	Time         *Times      `json:"time,omitempty"`      // as far as the plan says
	Otherwise    *Branch     `json:"otherwise,omitempty"` // what is done where it doesn't show what it expects
	BranchOf     string      `json:"branch_of,omitempty"` // the step whose branch this is a part of
}

// Point is the well where a step stands still.
type Point struct {
	Label     string       `json:"label"`
	Surface   []Reading    `json:"surface"`
	Pressures []PressureAt `json:"pressures"`
	String    *StringAt    `json:"string,omitempty"`
	// OuterString is the string that it stands in, where the plan has one.
	OuterString *StringAt   `json:"outer_string,omitempty"`
	Flows       []FlowAt    `json:"flows,omitempty"`
	well        *well.State // for Profile
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
	MD          unit.Length   `json:"md"`
	TVD         unit.Length   `json:"tvd"`
	Compartment string        `json:"compartment"`
	Pressure    unit.Pressure `json:"pressure"`
}

// ProfilePoint is a compartment's pressure at a depth, for pictures.
type ProfilePoint struct {
	Compartment string        `json:"compartment"`
	TVD         unit.Length   `json:"tvd"`
	Pressure    unit.Pressure `json:"pressure"`
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
	Ramp         int            `json:"ramp"` // counted from 1; 0 is before the ramps
	ByHand       bool           `json:"by_hand,omitempty"`
	Partial      string         `json:"partial,omitempty"`      // how far the row has come, where it hasn't fired
	Differential *unit.Pressure `json:"differential,omitempty"` // that its trigger felt, or
	Balance      *unit.Force    `json:"balance,omitempty"`      // of the joint
	Surface      []Reading      `json:"surface"`                // applied at that moment
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

// RatingResult is a rating in a step, at its worst over all choices.
type RatingResult struct {
	Name     string        `json:"name"`
	Burst    unit.Pressure `json:"burst"`    // greatest inside minus outside
	Collapse unit.Pressure `json:"collapse"` // greatest outside minus inside
	Usage    float64       `json:"usage"`    // of the allowed differential that is used most; 1 is the limit
}

// TestResult is a test of a barrier.
type TestResult struct {
	Barrier      string                   `json:"barrier"`
	Side         string                   `json:"side"`
	Inside       unit.Pressure            `json:"inside"`
	Outside      unit.Pressure            `json:"outside"`
	Differential unit.Pressure            `json:"differential"`
	Goal         unit.Band[unit.Pressure] `json:"goal"`
	Hold         string                   `json:"hold,omitempty"`
	Floor        unit.Pressure            `json:"floor"` // differential that must still stand at the end of the hold
	Criterion    string                   `json:"criterion,omitempty"`
	// Warming is what the plan's warming alone makes of the differential over the hold,
	// and Leak the leak that makes it fall to the floor at a steady temperature; zero where
	// the walls aren't known. Nominal.
	Warming unit.Pressure `json:"warming"`
	Leak    unit.FlowRate `json:"leak"`
	OK      bool          `json:"ok"`
}

// BalanceResult is the overbalance of a compartment against a formation:
// positive where the well is heavier.
type BalanceResult struct {
	Compartment string                    `json:"compartment"`
	Formation   string                    `json:"formation"`
	Point       string                    `json:"point"`
	Well        unit.Pressure             `json:"well"` // at the formation's depth
	Pore        unit.Pressure             `json:"pore"`
	Overbalance unit.Pressure             `json:"overbalance"`
	Goal        *unit.Band[unit.Pressure] `json:"goal,omitempty"`
	OK          bool                      `json:"ok"`
}

// BarrierResult is a barrier at the end of a step.
type BarrierResult struct {
	Name      string   `json:"name"`
	Formation string   `json:"formation"`
	Stands    bool     `json:"stands"`
	Tested    []string `json:"tested,omitempty"` // sides from which it has been tested so far
	Lost      bool     `json:"lost"`             // it stood before this step
}

// Volume is fluid pumped in (positive) or let out at surface.
type Volume struct {
	Compartment string      `json:"compartment"`
	What        string      `json:"what"`
	Volume      unit.Volume `json:"volume"`
}

// GasAt is gas in a compartment at the end of a step.
type GasAt struct {
	Compartment string        `json:"compartment"`
	Fluid       string        `json:"fluid"`
	Shut        bool          `json:"shut"`  // its mass stays, and its lower end goes where the pressure under it puts it
	Depth       unit.Length   `json:"depth"` // measured, of its lower end; zero where all of it is gone
	TVD         unit.Length   `json:"tvd"`
	Pressure    unit.Pressure `json:"pressure"` // at its top
	// In is what came in at the top in this step, negative where it was let out, counted
	// at 60 °F and 14.696 psia; zero where the compartment has no capacity.
	In unit.Volume `json:"in"`
}

// LevelAt is the level of a column that falls, or has fallen.
type LevelAt struct {
	Compartment string      `json:"compartment"`
	Fluid       string      `json:"fluid"`
	Depth       unit.Length `json:"depth"` // measured; the lowest in the step
	TVD         unit.Length `json:"tvd"`
	Falls       bool        `json:"falls"`          // in this step
	Into        string      `json:"into,omitempty"` // formation, where it falls
	// Lost is what it loses into that in the step, and Fill what fills it to surface from
	// there; zero where the compartment has no capacity.
	Lost   unit.Volume `json:"lost"`
	Fill   unit.Volume `json:"fill"`
	Filled bool        `json:"filled"` // it is full at the end of the step
}

// ZoneRate is what a formation gives while a step produces.
type ZoneRate struct {
	Formation string        `json:"formation"`
	Rate      unit.FlowRate `json:"rate"` // negative where it takes fluid
	Water     unit.FlowRate `json:"water"`
	Sandface  unit.Pressure `json:"sandface"`
	Tubing    unit.Pressure `json:"tubing"`
	Takes     bool          `json:"takes"`
}
