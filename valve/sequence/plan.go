package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/valve"
)

// Plan is an installation programme: the well, what is in it, and what is done
// to it. Names are free words; where one field names a thing, the thing must
// exist. Read reads a plan from JSON, Check walks it.
type Plan struct {
	Version      int           `json:"version,omitzero"` // of the file's form: 1 is the only one so far, and what a file without it has
	Name         string        `json:"name,omitzero"`
	Note         string        `json:"note,omitzero"`
	Well         Well          `json:"well,omitzero"`
	Fluids       []Fluid       `json:"fluids,omitempty"`
	Formations   []Formation   `json:"formations,omitempty"`
	Assembly     *Assembly     `json:"assembly,omitzero"` // what is in the hole as a tally, from which the next ones follow
	Compartments []Compartment `json:"compartments,omitempty"`
	Ports        []Port        `json:"ports,omitempty"`
	Devices      []Device      `json:"devices,omitempty"`
	String       *String       `json:"string,omitzero"`
	OuterString  *String       `json:"outer_string,omitzero"` // the string that it stands in, where that is looked at too
	Holding      *Holding      `json:"holding,omitzero"`
	Ratings      []Rating      `json:"ratings,omitempty"`
	Barriers     []Barrier     `json:"barriers,omitempty"`
	Rules        Rules         `json:"rules,omitzero"`
	Begin        *Begin        `json:"begin,omitzero"` // nil: as its things were run
	Steps        []Step        `json:"steps,omitempty"`

	shares []Choice // how flow between two references is shared out, where a witness says so
}

// Well is the hole: its path and its temperatures.
type Well struct {
	MD           unit.Length            `json:"depth,omitzero"` // measured; the path must reach it
	Path         []Station              `json:"path,omitempty"` // empty: vertical
	Temperatures map[string][]MarkedTVD `json:"temperatures,omitempty"`
	// Flowing are temperatures by name that follow from flow in the tubing, beside those
	// that are written out.
	Flowing map[string]Flowing `json:"flowing_temperatures,omitempty"`
	// Errors are by how much each of the temperatures may be off as a whole.
	Errors map[string]unit.Band[unit.TemperatureDifference] `json:"temperature_errors,omitempty" was:"temperature errors"`
}

// Station is one line of the directional survey.
type Station struct {
	MD          unit.Length `json:"md,omitzero"`
	Inclination unit.Angle  `json:"inclination,omitzero"`
	Azimuth     unit.Angle  `json:"azimuth,omitzero"`
}

// MarkedTVD is a temperature at a true vertical depth.
type MarkedTVD struct {
	TVD         unit.Length      `json:"tvd,omitzero"`
	Temperature unit.Temperature `json:"temperature,omitzero"`
}

// Undisturbed is the name of the temperature that the well has before anything
// is pumped. A plan with a string or with fluids that feel temperature needs it.
const Undisturbed = "undisturbed"

// Fluid is a fluid by name: of constant density, or a clear brine by its
// density at 70 °F, or fresh water, or a gas.
type Fluid struct {
	Name        string                  `json:"name,omitzero"`
	Kind        FluidKind               `json:"kind,omitzero"` // constant where left out
	Density     unit.Band[unit.Density] `json:"density,omitzero"`
	Expansion   unit.Expansivity        `json:"expansion,omitzero"`   // brine: of volume
	Compression unit.Compressibility    `json:"compression,omitzero"` // brine; of the others for volumes to pump

	// Of natural gas: its gravity to air, and what it holds beside hydrocarbons, as
	// mole fractions.
	Gravity          float64 `json:"gravity,omitzero"`
	Nitrogen         float64 `json:"nitrogen,omitzero"`
	CarbonDioxide    float64 `json:"carbon_dioxide,omitzero" was:"carbon dioxide"`
	HydrogenSulphide float64 `json:"hydrogen_sulphide,omitzero" was:"hydrogen sulphide"`

	// How it flows, where it is pumped: a viscosity, with a yield point or without
	// (Bingham), or a consistency with its flow index (power law; Herschel and Bulkley
	// with a yield point).
	Viscosity   unit.Viscosity   `json:"viscosity,omitzero"`
	Yield       unit.Pressure    `json:"yield_point,omitzero" was:"yield point"`
	Consistency unit.Consistency `json:"consistency,omitzero"`
	Index       float64          `json:"flow_index,omitzero" was:"flow index"`
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
	Name     string                   `json:"name,omitzero"`
	MD       unit.Length              `json:"depth,omitzero"` // measured
	Pressure unit.Band[unit.Pressure] `json:"pressure,omitzero"`
	Fracture unit.Band[unit.Pressure] `json:"fracture,omitzero"` // at that depth; zero: not known
	Inflow   *Inflow                  `json:"inflow,omitzero"`   // only where the plan produces it
}

// Inflow is what a formation gives.
type Inflow struct {
	Index    unit.ProductivityIndex `json:"index,omitzero"`
	WaterCut float64                `json:"water_cut,omitzero" was:"water cut"` // share of the rate, 0 to 1
	Density  unit.Density           `json:"density,omitzero"`                   // of what flows
	// WaterDensity is that of the water; the density above is then the oil's alone.
	WaterDensity unit.Density `json:"water_density,omitzero"`
	// GasCut is the share of what flows up that is free gas, by volume where it flows:
	// it takes room and weighs nothing.
	GasCut float64       `json:"gas_cut,omitzero"`
	Bubble unit.Pressure `json:"bubble_point,omitzero"` // of oil: under it Vogel's curve; a straight line where left out

	// Of a gas zone, in place of the index: its rate against one atmosphere, at standard
	// conditions, and the exponent of the back-pressure equation.
	OpenFlow unit.FlowRate `json:"open_flow,omitzero"`
	Exponent float64       `json:"exponent,omitzero"`
}

// weighs is the density of what flows, its cuts counted.
//
//	((1-w)·ρ + w·ρ_water)·(1-g)     w water cut, g gas cut
func (in *Inflow) weighs() unit.Density {
	d := in.Density
	if in.WaterDensity != 0 {
		d += unit.Density(in.WaterCut) * (in.WaterDensity - in.Density)
	}
	return d * unit.Density(1-in.GasCut)
}

// gas tells whether a formation gives gas.
func (in *Inflow) gas() bool { return in != nil && in.OpenFlow != 0 }

// Compartment is a connected body of fluid between two measured depths.
type Compartment struct {
	Name      string                   `json:"name,omitzero"`
	Note      string                   `json:"note,omitzero"`
	TopMD     unit.Length              `json:"top,omitzero"`
	BottomMD  unit.Length              `json:"bottom,omitzero"`
	Fluid     string                   `json:"fluid,omitzero"`     // one fluid all the way, or
	Layers    []Layer                  `json:"layers,omitempty"`   // several, from the top down
	Surface   bool                     `json:"surface,omitzero"`   // its top is at surface, where pressure is applied; 0 psi at the start
	Formation string                   `json:"formation,omitzero"` // the formation that it stands open to
	Trapped   unit.Band[unit.Pressure] `json:"trapped"`            // pressure at its top at the start where nothing fixes it
	Capacity  unit.Area                `json:"capacity,omitzero"`  // such as 0.0152 bbl/ft; zero: that of the bores, or volumes aren't counted
	Bores     []Bore                   `json:"bores,omitempty"`    // from the top down, for pumping
	Kind      *LineModel               `json:"kind,omitzero"`      // a control line, in place of capacity and bores
}

// Layer is one fluid down to a measured depth.
type Layer struct {
	Fluid string      `json:"fluid,omitzero"`
	ToMD  unit.Length `json:"to,omitzero"`
}

// Port joins two compartments at a measured depth while it is open.
type Port struct {
	Name  string      `json:"name,omitzero"`
	Note  string      `json:"note,omitzero"`
	Joins []string    `json:"joins,omitempty"` // two compartments
	MD    unit.Length `json:"depth,omitzero"`
	Open  bool        `json:"open,omitzero"` // at the start
}

// Device is something that pressure or pull moves.
type Device struct {
	Name string      `json:"name,omitzero"`
	Note string      `json:"note,omitzero"`
	MD   unit.Length `json:"depth,omitzero"` // measured
	// Error is by how much deeper the device may stand than Depth says.
	Error   unit.Band[unit.Length] `json:"depth_error,omitzero" was:"depth error"`
	On      WhichString            `json:"on,omitzero"`   // string that it holds, frees or parts: the plan's where left out
	Kind    *Model                 `json:"kind,omitzero"` // a device that the library has a model of, in place of actions
	Actions []Action               `json:"actions,omitempty"`
}

// Action is one thing that a device does once its triggers have fired in a
// row.
type Action struct {
	Name    string         `json:"name,omitzero"`    // such as "opens"
	Inside  string         `json:"inside,omitzero"`  // differential: the pressure of this compartment
	Outside string         `json:"outside,omitzero"` // less that of this one, or of
	Chamber *unit.Pressure `json:"chamber,omitzero"` // a sealed chamber
	Axial   bool           `json:"axial,omitzero"`   // or: the balance of the joint of the string at the device
	Seal    unit.Length    `json:"seal,omitzero"`    // axial: the diameter at which that joint seals
	// Unseats: axial, in place of that balance the load up that the place at the device
	// carries is felt: a straight pull that unseats what holds the string there.
	Unseats bool `json:"unseats,omitzero"`
	// LatchesTo: axial, the string above the joint that this action of the same device has
	// parted is set down on what that left, and latches to it again as it was before:
	// what is felt is by how much its reading is more than it hangs with, so that the
	// tension is negative and falling.
	LatchesTo string      `json:"latches_to,omitzero"`
	Areas     *Areas      `json:"areas,omitzero"` // or: pressures on areas against a spring and the friction of seals
	Triggers  []Trigger   `json:"triggers,omitempty"`
	All       []Condition `json:"all,omitempty"`     // in place of what is felt and its triggers: each must have been met, in whatever order
	Any       []Condition `json:"any,omitempty"`     // or: the first that is met does it
	Disarmed  bool        `json:"disarmed,omitzero"` // at the start: another action arms it
	Opens     []string    `json:"opens,omitempty"`   // ports
	Closes    []string    `json:"closes,omitempty"`
	Arms      []string    `json:"arms,omitempty"`    // actions of the same device
	Disarms   []string    `json:"disarms,omitempty"` // actions of the same device: what locks it
	Holds     bool        `json:"holds,omitzero"`
	// Bites names the action of the same device from which on its slips may bite, such
	// as "starts to set": what is locked into the string lies between what it is like
	// then and now. Where the plug is decides its sign: plugged in the string, tension
	// of (1-2ν)·p·Ai stays when the pressure is bled off; open below to a chamber under
	// its seals, compression.
	Bites    string `json:"bites_from,omitzero" was:"bites from"`
	Releases bool   `json:"releases,omitzero"`
	// Strokes are volumes that it takes from compartments as it happens, negative where
	// it makes room: those that are trapped between known walls feel it.
	Strokes map[string]unit.Volume `json:"strokes,omitempty"`
	// Delay is for how long it must be at its level before it moves, such as "5m", of a
	// metered device; DelayMost the longest that it may take, the same where left out.
	Delay     string `json:"delay,omitzero"`
	DelayMost string `json:"delay_at_most,omitzero"`
}

// Trigger is one threshold of a row: a differential (or a tension), crossed
// rising or falling, once or counted. Shear pins may stand in place of the
// threshold.
type Trigger struct {
	Threshold unit.Band[unit.Pressure] `json:"threshold,omitzero"`
	Tension   unit.Band[unit.Force]    `json:"tension,omitzero"` // where the action is axial
	Pins      *Pins                    `json:"pins,omitzero"`
	Direction valve.Direction          `json:"direction,omitzero"`
	Count     int                      `json:"count,omitzero"`
	Rearm     unit.Band[unit.Pressure] `json:"rearm,omitzero"` // where it must come back to before the next count
}

// Pins are equal shear pins, on a piston unless the action is axial.
type Pins struct {
	Count     int        `json:"count,omitzero"`
	Strength  unit.Force `json:"strength,omitzero"`  // of one pin
	Tolerance float64    `json:"tolerance,omitzero"` // such as 0.05
	Area      unit.Area  `json:"area,omitzero"`      // of the piston
}

// Pipe is a pipe of the API catalogue by size, weight and grade, or one of the
// user's own by its two diameters, its weight and its yield strength.
type Pipe struct {
	Size   unit.Length          `json:"size,omitzero"`
	Weight unit.WeightPerLength `json:"weight,omitzero"`
	Grade  string               `json:"grade,omitzero"`
	Bore   unit.Length          `json:"bore,omitzero"`  // own pipe: inside diameter
	Yield  unit.Pressure        `json:"yield,omitzero"` // own pipe, in place of a grade
}

// String is the completion string, from its hanger down to its lower end.
type String struct {
	Note     string                `json:"note,omitzero"`
	Inside   string                `json:"inside,omitzero"`  // the compartment in it
	Around   []string              `json:"around,omitempty"` // the compartments around it, from the hanger down
	Below    string                `json:"below,omitzero"`   // the compartment under its lower end
	HangerMD unit.Length           `json:"hanger,omitzero"`  // measured depth
	Sections []StringSection       `json:"sections,omitempty"`
	HeldMD   unit.Length           `json:"held_at,omitzero" was:"held at"`     // where an action that holds takes hold
	Bore     unit.Length           `json:"seal_bore,omitzero" was:"seal bore"` // diameter, of seals at the lower end, or
	Up       unit.Length           `json:"up,omitzero"`                        // how far the seals may move up before the first leaves the bore
	Down     unit.Length           `json:"down,omitzero"`                      // how far down before the string shoulders
	Seals    []Seal                `json:"seals,omitempty"`                    // seals wherever they are, in place of the three above
	Block    unit.Force            `json:"block,omitzero"`                     // what the weight indicator shows with no string
	Drag     unit.Band[unit.Force] `json:"drag,omitzero"`                      // of the hole on a pull, above what holds the string, or
	Friction []Friction            `json:"friction,omitempty"`                 // friction factors, from which the drag follows along the path
	Top      TopOfString           `json:"top,omitzero"`                       // on a pull; open where left out
	LockDown unit.Force            `json:"lock_down,omitzero" was:"lock down"` // upward load that the hanger bears; none where left out
	Rig      unit.Force            `json:"rig,omitzero"`                       // greatest reading of the weight indicator; not checked where left out
	// HangerRating is the greatest pull that the hanger and its running tool bear, what hangs on
	// the hook less the block; not checked where left out.
	HangerRating unit.Force `json:"hanger_rating,omitzero"`
	// HangerSeal is the diameter of the hanger's seal in the wellhead: annulus
	// pressure lifts the hanger by the ring between it and the pipe. Zero: it doesn't.
	HangerSeal unit.Length `json:"hanger_seal,omitzero" was:"hanger seal"`
	Derating   *Derating   `json:"derating,omitzero"` // of the yield strength with temperature; none where left out
	// Temperatures are those of the string itself, by the well's: both are names of
	// well.temperatures. Where one is left out, it is the well's.
	Temperatures map[string]string `json:"temperatures,omitempty"`
	// Tools are stiff tools that are to pass through the string: the longest of their
	// diameter that does is told of every step.
	Tools []Tool `json:"tools,omitempty"`
}

// Tool is a stiff tool that is run through the string.
type Tool struct {
	Name     string      `json:"name,omitzero"`
	Diameter unit.Length `json:"diameter,omitzero"`
}

// Seal is a stack of seals in a bore.
type Seal struct {
	Name string      `json:"name,omitzero"`
	MD   unit.Length `json:"depth,omitzero"` // measured
	Bore unit.Length `json:"bore,omitzero"`  // diameter
	Up   unit.Length `json:"up,omitzero"`    // how far it may move up before the first seal leaves the bore
	Down unit.Length `json:"down,omitzero"`  // how far down before it shoulders
	// Friction is what it takes to slide, either way, while the string is on the hook.
	Friction unit.Band[unit.Force] `json:"friction,omitzero"`
}

// TopOfString says whether pressure in the string lifts its top while it hangs on
// the hook.
type TopOfString string

// The tops.
const (
	TopOpen   TopOfString = "open"   // it doesn't
	TopClosed TopOfString = "closed" // it does: the weight indicator shows p·Ai less
)

// StringSection is a length of one pipe in one hole.
type StringSection struct {
	Pipe     Pipe        `json:"pipe,omitzero"`
	BottomMD unit.Length `json:"bottom,omitzero"` // measured depth
	Hole     unit.Length `json:"hole,omitzero"`   // diameter of the casing around it
	Joint    unit.Force  `json:"joint,omitzero"`  // tensile strength of its connections; the catalogue's where left out, if it has one
	// Connection is what its connections bear in every way, in place of Joint.
	Connection *Connection `json:"connection,omitzero"`
	Wear       Wear        `json:"wear,omitzero"`
	Derating   *Derating   `json:"derating,omitzero"` // that of the string where left out
}

// Connection is what the connections of a section bear. What is left out isn't
// known and isn't checked: the programme says so.
type Connection struct {
	Name        string        `json:"name,omitzero"`
	Tension     unit.Force    `json:"tension,omitzero"`
	Compression unit.Force    `json:"compression,omitzero"`
	Inside      unit.Pressure `json:"internal_pressure,omitzero"` // that it holds, inside over outside
	Outside     unit.Pressure `json:"external_pressure,omitzero"`
	Triaxial    float64       `json:"triaxial,omitzero"` // share of the body's yield strength that von Mises stress may reach
	Source      string        `json:"source,omitzero"`
}

// Wear is wall that is counted as lost to wear and corrosion: the limits leave it
// out, weight and stiffness keep it.
type Wear struct {
	Inside  unit.Length `json:"inside,omitzero"`
	Outside unit.Length `json:"outside,omitzero"`
}

// Derating is the yield strength that steel loses when it is hot. The zero value is
// what is in use for carbon steel: see tubular.UsualDerating.
type Derating struct {
	From unit.Temperature `json:"from,omitzero"` // where it begins
	Rate unit.Expansivity `json:"rate,omitzero"` // share of the yield strength per degree
}

// Rating is a differential that must not be passed, at a depth or all along
// two compartments.
type Rating struct {
	Name       string                   `json:"name,omitzero"`
	Note       string                   `json:"note,omitzero"`
	Pipe       *Pipe                    `json:"pipe,omitzero"` // its ratings in place of burst and collapse
	Inside     string                   `json:"inside,omitzero"`
	Outside    string                   `json:"outside,omitzero"`    // compartment, or
	Background string                   `json:"background,omitzero"` // the fluid behind the pipe, from surface
	FromMD     unit.Length              `json:"from,omitzero"`       // measured
	ToMD       unit.Length              `json:"to,omitzero"`
	Burst      unit.Band[unit.Pressure] `json:"burst,omitzero"`    // greatest inside minus outside, before the design factor
	Collapse   unit.Band[unit.Pressure] `json:"collapse,omitzero"` // greatest outside minus inside
	Factor     float64                  `json:"factor,omitzero"`   // design factor; 1 where left out
}

// Barrier is something that stands between a formation and surface.
type Barrier struct {
	Name      string `json:"name,omitzero"`
	Note      string `json:"note,omitzero"`
	Formation string `json:"formation,omitzero"` // between this formation and surface
	Port      string `json:"port,omitzero"`      // stands while this port is shut, or
	Action    string `json:"action,omitzero"`    // once this action ("device: action") has happened,
	Until     string `json:"until,omitzero"`     // and until this one has, or
	Column    string `json:"column,omitzero"`    // while this compartment's fluid overbalances the formation, to the 0.5 psi that count as no flow; none of them: always
}

// Rules are the plan's own requirements, each an input.
type Rules struct {
	Barriers int     `json:"barriers,omitzero"` // least number of barriers that stand before each formation at every moment, until its flow is part of the plan
	Burst    float64 `json:"burst,omitzero"`    // design factors of the string; 1 where left out
	Collapse float64 `json:"collapse,omitzero"` //
	Axial    float64 `json:"axial,omitzero"`    //
	Triaxial float64 `json:"triaxial,omitzero"` //
	Source   string  `json:"source,omitzero"`   // where these numbers come from

	// Gauge is by how much what is really applied may differ from what the gauges
	// show, wherever a pressure above nothing is applied: one error in the whole
	// programme.
	Gauge unit.Band[unit.Pressure] `json:"gauge,omitzero"`

	Rise unit.Pressure `json:"rise,omitzero"` // by how much surface pressures are changed in a minute, for the reader
}
