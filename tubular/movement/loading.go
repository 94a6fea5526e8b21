package movement

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

// Loading is an assembly under load: every force under its trade name.
//
//	wall force       true axial force, what a strain gauge in the wall shows
//	effective force  wall force - pi*Ai + po*Ao, what bends the pipe
//	load on a part   what a packer carries, what pins feel, what hangs on the hanger
type Loading struct {
	Top Top `json:"top"`
	// HangerLoad is the wall force at the top: while landed the hanger carries it.
	HangerLoad unit.Force `json:"hanger_load"`
	// Lift is what pushes the hanger up while landed, positive where only a
	// lock-down holds it: po*(Ahanger - Ao) - HangerLoad.
	Lift unit.Force `json:"lift"`
	// Reading is the weight indicator's on the hook: HangerLoad + block, less
	// pi*Ai where the top is closed. Cap is that pi*Ai. Zero while landed.
	Reading unit.Force `json:"reading"`
	Cap     unit.Force `json:"cap"`
	// Free says that the string is on the hook and nothing holds it: it moves as
	// soon as its weight and drag are pulled, and Reading is just that. Movements are
	// then those of a string whose top stands still.
	Free bool `json:"free"`

	Holds  []HoldLoad  `json:"holds"`
	Joints []JointLoad `json:"joints"`
	Seals  []SealLoad  `json:"seals"`
	// HungMoved is how far the places of Assembly.Hung have moved since landing, down
	// positive; zero for what is lost.
	HungMoved []unit.Length `json:"hung_moved"`

	// Limits are the nodes that use most of each limit, over the whole string.
	Limits Limits `json:"limits"`

	// BuckledLength is what is buckled in any way, tail included, HelicalLength
	// what is a helix, BuckledShortening the shortening of both; never positive.
	BuckledLength     unit.Length `json:"buckled_length"`
	HelicalLength     unit.Length `json:"helical_length"`
	BuckledShortening unit.Length `json:"buckled_shortening"`
	// Neutral is the lowest depth below which the string is compressed, down to
	// the uppermost place that holds: effective force zero. Where nothing is, it is
	// that place, or the lower end; where all is, the hanger.
	Neutral unit.Length `json:"neutral"`
	// Movement is what pressure, buckling, heat and flow have done to the string's
	// length since it landed, Held what holding, pull, drag, hung loads and lost
	// weight did; the sum is the movement of the lower end over that of the top.
	Movement Movement    `json:"movement"`
	Held     unit.Length `json:"held"`
	TopMoved unit.Length `json:"top_moved"` // down positive, since it landed
	EndMoved unit.Length `json:"end_moved"` // of the lower end, or of the joint above what is lost
	Lost     unit.Length `json:"lost"`      // measured depth below which the string is gone; zero where it isn't
	Snapping bool        `json:"snapping"`  // see Case.Snapping
	Nodes    []Node      `json:"nodes"`     // from the hanger down; where something steps there are two

	spans      []spanLength
	segments   []segment
	conditions Conditions
	stops      []stop  // by seal: what stops the string there
	dragAt     float64 // measured depth at which all drag is taken
}

// HoldLoad is what a place that can hold the string carries.
type HoldLoad struct {
	Held bool `json:"held"`
	// Load is what the string puts on it, up positive: the wall force above less
	// that below, less what the pressures on the string there make of that.
	//
	//	Load = F above - F below + pb*(Ap - Ao below) - pa*(Ap - Ao above) = Fe above - Fe below + (pb - pa)*Ap
	Load unit.Force `json:"load"`
	// Casing is what the casing gets from it, with the differential on its ring; zero
	// where its casing isn't known or it doesn't hold.
	Casing         unit.Force    `json:"casing"`
	WallAbove      unit.Force    `json:"wall_above"`
	WallBelow      unit.Force    `json:"wall_below"`
	EffectiveAbove unit.Force    `json:"effective_above"`
	EffectiveBelow unit.Force    `json:"effective_below"`
	Above          unit.Pressure `json:"above"` // outside
	Below          unit.Pressure `json:"below"`
	Moved          unit.Length   `json:"moved"` // since landing, down positive
	Lost           bool          `json:"lost"`  // it is gone with what was below a parted joint
}

// JointLoad is what a joint that parts feels.
type JointLoad struct {
	// Balance is the load on its pins: positive where it parts them; see End.Load.
	Balance   unit.Force    `json:"balance"`
	Wall      unit.Force    `json:"wall"` // just above
	Effective unit.Force    `json:"effective"`
	Inside    unit.Pressure `json:"inside"`
	Outside   unit.Pressure `json:"outside"`
	Parted    bool          `json:"parted"`
	// OnRest is, of the uppermost joint that has parted, on the hook, by how much the
	// reading asked for is more than the string above hangs with: negative, it stands
	// with that much on what the joint has left behind. Zero where that is gone.
	OnRest unit.Force `json:"on_rest"`
	Lost   bool       `json:"lost"` // it is gone with what was below another one
}

// SealLoad is what a seal bears and where it stands.
type SealLoad struct {
	// Ring is the force of the pressures on the ring between pipe and bore, up
	// positive: pb*(Ap - Ao below) - pa*(Ap - Ao above).
	Ring   unit.Force    `json:"ring"`
	Above  unit.Pressure `json:"above"` // outside
	Below  unit.Pressure `json:"below"`
	Travel unit.Length   `json:"travel"` // since landing against its bore, down positive
	// Engaged is the length still in the bore, ToShoulder what is left to the stop
	// below; a negative one is how far beyond it would be.
	Engaged    unit.Length `json:"engaged"`
	ToShoulder unit.Length `json:"to_shoulder"`
	// Stands says that the string stands on its locator there, Pulls that it pulls on
	// its latch, and Load what it puts on the one or the other, up positive: so never
	// more than zero on a locator, never less on a latch.
	Stands bool       `json:"stands"`
	Pulls  bool       `json:"pulls"`
	Load   unit.Force `json:"load"`
	Lost   bool       `json:"lost"`
}

// Limits are the places where a string is used most, limit by limit; a Usage of
// zero is not used or not known.
type Limits struct {
	Burst      Governing `json:"burst"`
	Collapse   Governing `json:"collapse"`
	Axial      Governing `json:"axial"`
	Triaxial   Governing `json:"triaxial"`
	Connection Governing `json:"connection"`
}

// Governing returns that of them that is used most.
func (l Limits) Governing() Governing {
	most := l.Burst
	for _, g := range [...]Governing{l.Collapse, l.Axial, l.Triaxial, l.Connection} {
		if g.Usage > most.Usage || g.Usage != g.Usage { // what isn't known is never within its limit
			most = g
		}
	}
	return most
}

func (g *Governing) take(md unit.Length, limit tubular.Limit, usage float64) {
	if usage > g.Usage {
		*g = Governing{MD: md, Limit: limit, Usage: usage}
	}
}

// spanLength is what one span adds to the string's length, in m.
type spanLength struct {
	rest    float64 // with nothing holding it and no buckling
	causes  totals  // of that, weight, pull and drag left out; buckling as it stands
	buckled float64 // by buckling, as it stands
	length  float64 // all told
	change  totals  // of that since landing, by cause
	weighed float64 // what weight, pull and drag have changed
	held    float64 // what the force that holds it has
	lost    bool
}

// segment is the string between two places where it is held, or where it ends.
type segment struct {
	from, to     int     // spans, without to
	upper, lower int     // marks; -1 the top, len(marks) the lower end
	force        float64 // added all along it by what holds it
	fitted       bool    // that force keeps its length
	loose, tight float64 // its shortening by buckling then without that force, and with it
	top, bottom  float64 // how far its ends have moved since landing
	weighed      float64 // what weight, pull and drag have changed of its length since, in m
	squeezed     float64 // what buckling has
	change       totals  // the causes' changes since
	compliance   float64
	lost         bool
}

// Clone returns a loading that later loads into l don't touch.
func (l *Loading) Clone() Loading {
	if l == nil {
		return Loading{}
	}
	c := *l
	c.Holds, c.Joints, c.Seals, c.HungMoved, c.Nodes = slices.Clone(l.Holds), slices.Clone(l.Joints), slices.Clone(l.Seals), slices.Clone(l.HungMoved), slices.Clone(l.Nodes)
	c.spans, c.segments, c.stops = slices.Clone(l.spans), slices.Clone(l.segments), slices.Clone(l.stops)
	return c
}
