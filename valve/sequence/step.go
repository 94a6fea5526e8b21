package sequence

import "completion.example/hydrostatics/unit"

// Step is something that a person does.
type Step struct {
	Name        string `json:"name,omitzero"`
	Note        string `json:"note,omitzero"`
	Takes       string `json:"takes,omitzero"`       // how long what isn't counted otherwise takes, such as "2h30m": running, rigging up, waiting for temperature
	Temperature string `json:"temperature,omitzero"` // the well's temperature from this step on; as before where left out

	Shut     []string       `json:"shut,omitempty"`                // compartments closed at surface, first of all; a ramp opens them again
	Displace []Displacement `json:"displace,omitempty" was:"swap"` // fluids that replace others, one after the other, before the ramps

	Do []Act `json:"do,omitempty"` // what is done by hand, one after the other, before the ramps

	// Ramps are walked one after the other. In one ramp all pressures named
	// (surface pressure by compartment) move together from where they stand.
	Ramps []map[string]unit.Pressure `json:"ramps,omitempty"`
	// Pump is what is pumped through the well, one after the other, after the swaps and
	// before the ramps.
	Pump []Pump        `json:"pump,omitempty"`
	Rise unit.Pressure `json:"rise,omitzero"` // by how much surface pressures are changed in a minute, for the reader; that of the rules where left out
	// PressureChange changes the pressure of trapped compartments by this much, by
	// heat or volume, after the ramps.
	PressureChange map[string]unit.Pressure `json:"pressure_change,omitempty" was:"squeeze"`
	// VolumeChange is what is pressed into trapped compartments between known walls, or,
	// negative, bled from them.
	VolumeChange map[string]unit.Volume `json:"volume_change,omitempty"`
	// Hold is how long the step stands still after each of its ramps, such as "10m".
	Hold []string `json:"hold,omitempty"`
	// Pull are hook loads, one after the other, after the ramps. The string is
	// out of its hanger from the first on.
	Pull []unit.Force `json:"pull,omitempty"`

	// Lands says that the string is in its hanger and its seals in their bore
	// at the end of the step: movements count from then.
	Lands bool `json:"lands,omitzero"`
	// On is the string that is pulled or lands, where there are two: the plan's string
	// where left out. With the outer one the string in it lands anew.
	On WhichString `json:"on,omitzero"`

	Expect []string `json:"expect,omitempty"` // actions that must happen: "device: action"
	// Otherwise is what is done where an expected action isn't seen.
	Otherwise *Otherwise `json:"otherwise,omitzero"`
	Balance   []Balance  `json:"balance,omitempty"` // overbalance wanted
	Tests     []Test     `json:"tests,omitempty"`   // differentials wanted
	Allow     []Flow     `json:"allow,omitempty"`   // flow that is part of the plan
	Produce   *Produce   `json:"produce,omitzero"`  // the zones that flow at the end of the step

	flow *course // where it leads, in the list of all steps
}

// Displacement replaces the fluid of a compartment.
type Displacement struct {
	Compartment string      `json:"compartment,omitzero"`
	Fluid       string      `json:"fluid,omitzero"`
	FromMD      unit.Length `json:"from,omitzero"` // measured
	ToMD        unit.Length `json:"to,omitzero"`
	Up          bool        `json:"up,omitzero"` // the new fluid rises from below; else it comes from above
}

// Balance is an overbalance that a step must have: the compartment's pressure
// at the formation's depth less the formation's. Underbalance is negative.
type Balance struct {
	Compartment string                   `json:"compartment,omitzero"`
	Formation   string                   `json:"formation,omitzero"`
	Overbalance unit.Band[unit.Pressure] `json:"overbalance,omitzero"`
	Moment      Moment                   `json:"at,omitzero"`
}

// Moment is when in a step something is held against its goal.
type Moment string

// Moments. A step's end is the default.
const (
	AtStart Moment = "start" // after swaps and acts by hand, and before the first ramp
	AtPeak  Moment = "peak"  // after the first ramp
	AtEnd   Moment = "end"
)

// Test is a differential that a step must reach, inside minus outside at a
// depth: the test of a barrier from one side.
type Test struct {
	Barrier      string                   `json:"barrier,omitzero"`
	Side         string                   `json:"side,omitzero"` // "below" or "above"
	Inside       string                   `json:"inside,omitzero"`
	Outside      string                   `json:"outside,omitzero"`
	MD           unit.Length              `json:"depth,omitzero"`
	Differential unit.Band[unit.Pressure] `json:"differential,omitzero"`
	// The furthest of all places where the step stands still after its start, where
	// left out: the differential must come into its band and never go beyond it.
	Moment Moment `json:"at,omitzero"`

	// What the test sheet says: how long to hold ("15m"), the
	// decline that passes as a share of the differential, and whose rule that is.
	Hold    string  `json:"hold,omitzero"`
	Decline float64 `json:"decline,omitzero"`
	// Warms is by how much what stands in compartments warms over the hold, as a whole,
	// negative where it cools: what that alone makes of the differential is held against
	// the decline. It wants known walls of all that is joined to
	// them, and a moment: start or end.
	Warms     map[string]unit.Band[unit.TemperatureDifference] `json:"warms,omitempty"`
	Criterion string                                           `json:"criterion,omitzero"`
}

// Flow is what two fixed pressures on one body of fluid cause.
type Flow string

// The kinds of flow.
const (
	FlowIn      Flow = "inflow"      // from a formation
	FlowOut     Flow = "loss"        // into a formation
	Circulation Flow = "circulation" // from one surface to another
)

// Produce says which outflow the zones see. Every formation with an inflow
// that is joined to the compartment flows.
type Produce struct {
	Compartment string                          `json:"compartment,omitzero"`
	Surface     unit.Pressure                   `json:"surface,omitzero"` // wellhead flowing pressure
	Loss        unit.Pressure                   `json:"loss,omitzero"`    // of the string, at Rate; grows with the square of the rate
	Rate        unit.FlowRate                   `json:"rate,omitzero"`
	Chokes      map[string]unit.FlowCoefficient `json:"chokes,omitempty"` // by port
	Want        map[string]RateBetween          `json:"want,omitempty"`   // by formation
	Density     unit.Density                    `json:"density,omitzero"` // of what stands in the string while flowing
	// Viscosity of what flows, in place of loss, rate and density: friction is that of the
	// compartment's bores, and its weight that of what comes in below, section by section.
	Viscosity unit.Viscosity `json:"viscosity,omitzero"`
	// Outflow is, in place of surface, loss and rate, the pressure that each rate to surface
	// takes where the topmost zone comes in, rising in rate.
	Outflow []OutflowAt `json:"outflow,omitempty"`
}

// OutflowAt is a line of a table of outflow.
type OutflowAt struct {
	Rate     unit.FlowRate `json:"rate,omitzero"`
	Pressure unit.Pressure `json:"pressure,omitzero"`
}

// RateBetween is the range that a zone's rate must lie in.
type RateBetween struct {
	Least    unit.FlowRate `json:"least,omitzero"`
	Greatest unit.FlowRate `json:"greatest,omitzero"`
}
