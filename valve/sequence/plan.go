package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// Plan is an installation programme: the well, what is in it, and what is done
// to it. Names are free words; where one field names a thing, the thing must
// exist. Read reads a plan from JSON, Check walks it.
type Plan struct {
	Name         string        `json:"name"`
	Note         string        `json:"note"`
	Well         Well          `json:"well"`
	Fluids       []Fluid       `json:"fluids"`
	Formations   []Formation   `json:"formations"`
	Assembly     *Assembly     `json:"assembly"` // what is in the hole as a tally, from which the next ones follow
	Compartments []Compartment `json:"compartments"`
	Ports        []Port        `json:"ports"`
	Devices      []Device      `json:"devices"`
	String       *String       `json:"string"`
	Holding      *Holding      `json:"holding"`
	Ratings      []Rating      `json:"ratings"`
	Barriers     []Barrier     `json:"barriers"`
	Rules        Rules         `json:"rules"`
	Begin        *Begin        `json:"begin"` // nil: as its things were run
	Steps        []Step        `json:"steps"`

	shares []Choice // how flow between two references is shared out, where a witness says so
}

// Well is the hole: its path and its temperatures.
type Well struct {
	Depth        unit.Length            `json:"depth"` // measured; the path must reach it
	Path         []Station              `json:"path"`  // empty: vertical
	Temperatures map[string][]MarkedTVD `json:"temperatures"`
	// Errors are by how much each of the temperatures may be off as a whole.
	Errors map[string]unit.Band[unit.TemperatureDifference] `json:"temperature errors"`
}

// Station is one line of the directional survey.
type Station struct {
	MD          unit.Length `json:"md"`
	Inclination unit.Angle  `json:"inclination"`
	Azimuth     unit.Angle  `json:"azimuth"`
}

// MarkedTVD is a temperature at a true vertical depth.
type MarkedTVD struct {
	TVD         unit.Length      `json:"tvd"`
	Temperature unit.Temperature `json:"temperature"`
}

// Undisturbed is the name of the temperature that the well has before anything
// is pumped. A plan with a string or with fluids that feel temperature needs it.
const Undisturbed = "undisturbed"

// Fluid is a fluid by name: of constant density, or a clear brine by its
// density at 70 °F, or fresh water, or a gas.
type Fluid struct {
	Name        string                  `json:"name"`
	Kind        FluidKind               `json:"kind"` // constant where left out
	Density     unit.Band[unit.Density] `json:"density"`
	Expansion   unit.Expansivity        `json:"expansion"`   // brine: of volume
	Compression unit.Compressibility    `json:"compression"` // brine; of the others for volumes to pump

	// Of natural gas: its gravity to air, and what it holds beside hydrocarbons, as
	// mole fractions.
	Gravity          float64 `json:"gravity"`
	Nitrogen         float64 `json:"nitrogen"`
	CarbonDioxide    float64 `json:"carbon dioxide"`
	HydrogenSulphide float64 `json:"hydrogen sulphide"`

	// How it flows, where it is pumped: a viscosity, with a yield point or without
	// (Bingham), or a consistency with its flow index (power law; Herschel and Bulkley
	// with a yield point).
	Viscosity   unit.Viscosity   `json:"viscosity"`
	Yield       unit.Pressure    `json:"yield point"`
	Consistency unit.Consistency `json:"consistency"`
	Index       float64          `json:"flow index"`
}

// FluidKind names what a fluid's density depends on.
type FluidKind string

// The kinds of fluid.
const (
	ConstantDensity FluidKind = "constant"
	ClearBrine      FluidKind = "brine"
	FreshWater      FluidKind = "water"
	Nitrogen        FluidKind = "nitrogen"
	Methane         FluidKind = "methane"
	NaturalGas      FluidKind = "gas" // by its gravity
)

// Formation is a reservoir layer behind one compartment.
type Formation struct {
	Name     string                   `json:"name"`
	Depth    unit.Length              `json:"depth"` // measured
	Pressure unit.Band[unit.Pressure] `json:"pressure"`
	Fracture unit.Band[unit.Pressure] `json:"fracture"` // at that depth; zero: not known
	Inflow   *Inflow                  `json:"inflow"`   // only where the plan produces it
}

// Inflow is what a formation gives.
type Inflow struct {
	Index    unit.ProductivityIndex `json:"index"`
	WaterCut float64                `json:"water cut"` // share of the rate, 0 to 1
	Density  unit.Density           `json:"density"`   // of what flows
}

// Compartment is a connected body of fluid between two measured depths.
type Compartment struct {
	Name      string                   `json:"name"`
	Note      string                   `json:"note"`
	Top       unit.Length              `json:"top"`
	Bottom    unit.Length              `json:"bottom"`
	Fluid     string                   `json:"fluid"`     // one fluid all the way, or
	Layers    []Layer                  `json:"layers"`    // several, from the top down
	Surface   bool                     `json:"surface"`   // its top is at surface, where pressure is applied; 0 psi at the start
	Formation string                   `json:"formation"` // the formation that it stands open to
	Trapped   unit.Band[unit.Pressure] `json:"trapped"`   // pressure at its top at the start where nothing fixes it
	Capacity  unit.Area                `json:"capacity"`  // such as 0.0152 bbl/ft; zero: that of the bores, or volumes aren't counted
	Bores     []Bore                   `json:"bores"`     // from the top down, for pumping
}

// Layer is one fluid down to a measured depth.
type Layer struct {
	Fluid string      `json:"fluid"`
	To    unit.Length `json:"to"`
}

// Port joins two compartments at a measured depth while it is open.
type Port struct {
	Name  string      `json:"name"`
	Note  string      `json:"note"`
	Joins []string    `json:"joins"` // two compartments
	Depth unit.Length `json:"depth"`
	Open  bool        `json:"open"` // at the start
}

// Device is something that pressure or pull moves.
type Device struct {
	Name  string      `json:"name"`
	Note  string      `json:"note"`
	Depth unit.Length `json:"depth"` // measured
	// Error is by how much deeper the device may stand than Depth says.
	Error   unit.Band[unit.Length] `json:"depth error"`
	Kind    *Model                 `json:"kind"` // a device that the library has a model of, in place of actions
	Actions []Action               `json:"actions"`
}

// Action is one thing that a device does once its triggers have fired in a
// row.
type Action struct {
	Name     string         `json:"name"`    // such as "opens"
	Inside   string         `json:"inside"`  // differential: the pressure of this compartment
	Outside  string         `json:"outside"` // less that of this one, or of
	Chamber  *unit.Pressure `json:"chamber"` // a sealed chamber
	Axial    bool           `json:"axial"`   // or: the balance of the joint of the string at the device
	Seal     unit.Length    `json:"seal"`    // axial: the diameter at which that joint seals
	Areas    *Areas         `json:"areas"`   // or: pressures on areas against a spring and the friction of seals
	Triggers []Trigger      `json:"triggers"`
	All      []Condition    `json:"all"`      // in place of what is felt and its triggers: each must have been met, in whatever order
	Any      []Condition    `json:"any"`      // or: the first that is met does it
	Disarmed bool           `json:"disarmed"` // at the start: another action arms it
	Opens    []string       `json:"opens"`    // ports
	Closes   []string       `json:"closes"`
	Arms     []string       `json:"arms"`    // actions of the same device
	Disarms  []string       `json:"disarms"` // actions of the same device: what locks it
	Holds    bool           `json:"holds"`
	// Bites names the action of the same device from which on its slips may bite, such
	// as "starts to set": what is locked into the string lies between what it is like
	// then and now. Where the plug is decides its sign: plugged in the string, tension
	// of (1-2ν)·p·Ai stays when the pressure is bled off; open below to a chamber under
	// its seals, compression.
	Bites    string `json:"bites from"`
	Releases bool   `json:"releases"`
}

// Trigger is one threshold of a row: a differential (or a tension), crossed
// rising or falling, once or counted. Shear pins may stand in place of the
// threshold.
type Trigger struct {
	Threshold unit.Band[unit.Pressure] `json:"threshold"`
	Tension   unit.Band[unit.Force]    `json:"tension"` // where the action is axial
	Pins      *Pins                    `json:"pins"`
	Direction valve.Direction          `json:"direction"`
	Count     int                      `json:"count"`
	Rearm     unit.Band[unit.Pressure] `json:"rearm"` // where it must come back to before the next count
}

// Pins are equal shear pins, on a piston unless the action is axial.
type Pins struct {
	Count     int        `json:"count"`
	Strength  unit.Force `json:"strength"`  // of one pin
	Tolerance float64    `json:"tolerance"` // such as 0.05
	Area      unit.Area  `json:"area"`      // of the piston
}

// Pipe is a pipe of the API catalogue by size, weight and grade, or one of the
// user's own by its two diameters, its weight and its yield strength.
type Pipe struct {
	Size   unit.Length          `json:"size"`
	Weight unit.WeightPerLength `json:"weight"`
	Grade  string               `json:"grade"`
	Bore   unit.Length          `json:"bore"`  // own pipe: inside diameter
	Yield  unit.Pressure        `json:"yield"` // own pipe, in place of a grade
}

// String is the completion string, from its hanger down to its lower end.
type String struct {
	Note     string                `json:"note"`
	Inside   string                `json:"inside"` // the compartment in it
	Around   []string              `json:"around"` // the compartments around it, from the hanger down
	Below    string                `json:"below"`  // the compartment under its lower end
	Hanger   unit.Length           `json:"hanger"` // measured depth
	Sections []Section             `json:"sections"`
	Held     unit.Length           `json:"held at"`   // where an action that holds takes hold
	Bore     unit.Length           `json:"seal bore"` // diameter, of seals at the lower end, or
	Up       unit.Length           `json:"up"`        // how far the seals may move up before the first leaves the bore
	Down     unit.Length           `json:"down"`      // how far down before the string shoulders
	Seals    []Seal                `json:"seals"`     // seals wherever they are, in place of the three above
	Block    unit.Force            `json:"block"`     // what the weight indicator shows with no string
	Drag     unit.Band[unit.Force] `json:"drag"`      // of the hole on a pull, above what holds the string, or
	Friction []Friction            `json:"friction"`  // friction factors, from which the drag follows along the path
	Top      TopOfString           `json:"top"`       // on a pull; open where left out
	LockDown unit.Force            `json:"lock down"` // upward load that the hanger bears; none where left out
	Rig      unit.Force            `json:"rig"`       // greatest reading of the weight indicator; not checked where left out
	// HangerSeal is the diameter of the hanger's seal in the wellhead: annulus
	// pressure lifts the hanger by the ring between it and the pipe. Zero: it doesn't.
	HangerSeal unit.Length `json:"hanger seal"`
	Derating   *Derating   `json:"derating"` // of the yield strength with temperature; none where left out
	// Tools are stiff tools that are to pass through the string: the longest of their
	// diameter that does is told of every step.
	Tools []Tool `json:"tools"`
}

// Tool is a stiff tool that is run through the string.
type Tool struct {
	Name     string      `json:"name"`
	Diameter unit.Length `json:"diameter"`
}

// Seal is a stack of seals in a bore.
type Seal struct {
	Name  string      `json:"name"`
	Depth unit.Length `json:"depth"` // measured
	Bore  unit.Length `json:"bore"`  // diameter
	Up    unit.Length `json:"up"`    // how far it may move up before the first seal leaves the bore
	Down  unit.Length `json:"down"`  // how far down before it shoulders
	// Friction is what it takes to slide, either way, while the string is on the hook.
	Friction unit.Band[unit.Force] `json:"friction"`
}

// TopOfString says whether pressure in the string lifts its top while it hangs on
// the hook.
type TopOfString string

// The tops.
const (
	TopOpen   TopOfString = "open"   // it doesn't
	TopClosed TopOfString = "closed" // it does: the weight indicator shows p·Ai less
)

// Section is a length of one pipe in one hole.
type Section struct {
	Pipe   Pipe        `json:"pipe"`
	Bottom unit.Length `json:"bottom"` // measured depth
	Hole   unit.Length `json:"hole"`   // diameter of the casing around it
	Joint  unit.Force  `json:"joint"`  // tensile strength of its connections; the catalogue's where left out, if it has one
	// Connection is what its connections bear in every way, in place of Joint.
	Connection *Connection `json:"connection"`
	Wear       Wear        `json:"wear"`
	Derating   *Derating   `json:"derating"` // that of the string where left out
}

// Connection is what the connections of a section bear. What is left out isn't
// known and isn't checked: the programme says so.
type Connection struct {
	Name        string        `json:"name"`
	Tension     unit.Force    `json:"tension"`
	Compression unit.Force    `json:"compression"`
	Inside      unit.Pressure `json:"internal pressure"` // that it holds, inside over outside
	Outside     unit.Pressure `json:"external pressure"`
	Triaxial    float64       `json:"triaxial"` // share of the body's yield strength that von Mises stress may reach
	Source      string        `json:"source"`
}

// Wear is wall that is counted as lost to wear and corrosion: the limits leave it
// out, weight and stiffness keep it.
type Wear struct {
	Inside  unit.Length `json:"inside"`
	Outside unit.Length `json:"outside"`
}

// Derating is the yield strength that steel loses when it is hot. The zero value is
// what is in use for carbon steel: see tubular.UsualDerating.
type Derating struct {
	From unit.Temperature `json:"from"` // where it begins
	Rate unit.Expansivity `json:"rate"` // share of the yield strength per degree
}

// Rating is a differential that must not be passed, at a depth or all along
// two compartments.
type Rating struct {
	Name       string                   `json:"name"`
	Note       string                   `json:"note"`
	Pipe       *Pipe                    `json:"pipe"` // its ratings in place of burst and collapse
	Inside     string                   `json:"inside"`
	Outside    string                   `json:"outside"`    // compartment, or
	Background string                   `json:"background"` // the fluid behind the pipe, from surface
	From       unit.Length              `json:"from"`       // measured
	To         unit.Length              `json:"to"`
	Burst      unit.Band[unit.Pressure] `json:"burst"`    // greatest inside minus outside, before the design factor
	Collapse   unit.Band[unit.Pressure] `json:"collapse"` // greatest outside minus inside
	Factor     float64                  `json:"factor"`   // design factor; 1 where left out
}

// Barrier is something that stands between a formation and surface.
type Barrier struct {
	Name      string `json:"name"`
	Note      string `json:"note"`
	Formation string `json:"formation"` // between this formation and surface
	Port      string `json:"port"`      // stands while this port is shut, or
	Action    string `json:"action"`    // once this action ("device: action") has happened,
	Until     string `json:"until"`     // and until this one has, or
	Column    string `json:"column"`    // while this compartment's fluid overbalances the formation, to the 0.5 psi that count as no flow; none of them: always
}

// Rules are the plan's own requirements, each an input.
type Rules struct {
	Barriers int     `json:"barriers"` // least number of barriers that stand before each formation at every moment, until its flow is part of the plan
	Burst    float64 `json:"burst"`    // design factors of the string; 1 where left out
	Collapse float64 `json:"collapse"` //
	Axial    float64 `json:"axial"`    //
	Triaxial float64 `json:"triaxial"` //
	Source   string  `json:"source"`   // where these numbers come from

	// Gauge is by how much what is really applied may differ from what the gauges
	// show, wherever a pressure above nothing is applied: one error in the whole
	// programme.
	Gauge unit.Band[unit.Pressure] `json:"gauge"`

	Rise unit.Pressure `json:"rise"` // by how much surface pressures are changed in a minute, for the reader
}
