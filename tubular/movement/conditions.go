package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Top says what carries the string at its top.
type Top int

// The tops.
const (
	AtHanger     Top = iota // landed: the top doesn't move
	OnHookOpen              // on the hook, pressure inside doesn't lift it
	OnHookClosed            // on the hook, its top closed: the pressure inside at the top lifts it
)

// Sliding says which way seals slide, for their friction.
type Sliding int

// The ways.
const (
	NotSliding  Sliding = 0  // no friction of seals counted
	SlidingUp   Sliding = 1  // pulled: friction adds to the tension above
	SlidingDown Sliding = -1 // slacked off: it takes from it
)

// Conditions are what acts on an assembly at one time. The functions are called
// for every node of every load, so that they had better be quick.
type Conditions struct {
	// Inside and Outside are the pressures by true vertical depth in each part of
	// the bore and of the annulus, numbered from the top: see MadeUp.InsideParts
	// and OutsideParts. At its own ends a part is asked for its own pressure, so
	// that steps are sharp. Losses by flow are not in them.
	//
	// What acts on the string's lower end from below is the pressure outside in the
	// lowest part. With the pressures inside and outside equal there it makes no
	// difference whether the end is open or closed.
	Inside  func(part int, tvd unit.Length) unit.Pressure `json:"inside"`
	Outside func(part int, tvd unit.Length) unit.Pressure `json:"outside"`
	// Temperature of the pipe by true vertical depth; nil in all conditions of a
	// string alike where temperature plays no part.
	Temperature func(tvd unit.Length) unit.Temperature `json:"temperature"`
	// Friction is the pressure lost to friction inside per length of each section,
	// positive for flow down; nil without flow. OutsideFriction is that outside.
	Friction        []unit.Gradient `json:"friction"`
	OutsideFriction []unit.Gradient `json:"outside_friction"`

	Top Top `json:"top"`
	// Reading is the weight indicator's, on the hook. A string that nothing holds
	// shows what it weighs, whatever the reading asked for.
	Reading unit.Force `json:"reading"`
	// Drag is what the hole takes from a pull before it arrives at depth: positive
	// on the way up, negative on the way down, nothing at the hanger. DragShare is
	// the share of it that the string bears at a measured depth: 1 at the top, 0
	// where it has all been taken. Nil spreads it evenly down to the uppermost joint
	// that hasn't parted or place that holds, or else to the lower end.
	Drag      unit.Force                   `json:"drag"`
	DragShare func(md unit.Length) float64 `json:"drag_share"`
	Sliding   Sliding                      `json:"sliding"`
	// SealFriction is what each seal takes to slide in these conditions, in place of
	// Seal.Friction; nil: that. Only with Sliding; a negative one is one that holds
	// back the other way, such as a string that turns round.
	SealFriction []unit.Force `json:"seal_friction"`

	// Hung are the loads of what hangs on the string at Assembly.Hung, down
	// positive; nil where nothing does.
	Hung []unit.Force `json:"hung"`
	// Around is how far what the string is hung, held and sealed in has moved since
	// it landed, down positive: of an inner string, the outer string. Nil stands for
	// a wellhead and casing that stand still.
	Around func(md unit.Length) unit.Length `json:"around"`
}

// flows tells whether anything is lost to friction on either side.
func (c *Conditions) flows() bool { return len(c.Friction)+len(c.OutsideFriction) > 0 }

func (m *MadeUp) checkConditions(c *Conditions) error {
	faults := fault.In(scope)
	if c.Inside == nil {
		faults.New("Inside", "is missing")
	}
	if c.Outside == nil {
		faults.New("Outside", "is missing")
	}
	if err := m.checkFriction("Friction", c.Friction); err != nil {
		faults.Add(err)
	}
	if err := m.checkFriction("OutsideFriction", c.OutsideFriction); err != nil {
		faults.Add(err)
	}
	if c.Top < AtHanger || c.Top > OnHookClosed {
		faults.New("Top", "is %d; must be AtHanger, OnHookOpen or OnHookClosed", int(c.Top))
	}
	if c.Sliding < SlidingDown || c.Sliding > SlidingUp {
		faults.New("Sliding", "is %d; must be -1, 0 or 1", int(c.Sliding))
	}
	if !allFinite(float64(c.Reading), float64(c.Drag)) {
		faults.Add(fault.Finite("Reading", c.Reading), fault.Finite("Drag", c.Drag))
	}
	if c.Top == AtHanger && (c.Reading != 0 || c.Drag != 0) {
		faults.New("Reading", "is %v, and Drag %v; must be 0 at the hanger", c.Reading, c.Drag)
	}
	if n := len(c.SealFriction); n != 0 && n != len(m.seals) {
		faults.New("SealFriction", "has %d forces; must have none or one for each of %d seals", n, len(m.seals))
	}
	for i, f := range c.SealFriction {
		if !isFinite(float64(f)) {
			faults.Add(fault.Finite(fault.Index("SealFriction", i), f))
		}
	}
	if n := len(c.Hung); n != 0 && n != m.hung {
		faults.New("Hung", "has %d loads; must have none or one for each of %d places", n, m.hung)
	}
	for i, f := range c.Hung {
		if !isFinite(float64(f)) {
			faults.Add(fault.Finite(fault.Index("Hung", i), f))
		}
	}
	return faults.Err()
}

// ask fills in the nodes' pressures and temperatures.
func (m *MadeUp) ask(c *Conditions, nodes []Node) error {
	lostIn, lostOut, flows := 0.0, 0.0, c.flows()
	for i := range m.points {
		p := &m.points[i]
		if i > 0 && flows {
			lostIn += m.lost(c.Friction, i-1)
			lostOut += m.lost(c.OutsideFriction, i-1)
		}
		tvd := unit.Length(p.tvd)
		n := &nodes[i]
		*n = Node{MD: unit.Length(p.md), TVD: tvd, Section: p.section}
		n.Inside = c.Inside(m.inPart[i], tvd) - unit.Pressure(lostIn)
		n.Outside = c.Outside(m.outPart[i], tvd) - unit.Pressure(lostOut)
		if c.Temperature != nil {
			n.Temperature = c.Temperature(tvd)
		}
		if !isFinite(float64(n.Inside+n.Outside) + n.Temperature.Kelvin()) {
			return unfit(tvd, n)
		}
	}
	return nil
}

// densities are the fluids' over an element, from the slope of the pressures;
// ok says that there is enough depth in it.
type densities struct {
	inside, outside float64
	ok              bool
}

// weighAll fills in the effective weights, for which it wants the densities above
// and below a node. They matter where the hole is inclined; the axial force comes
// from the pressures themselves. Where the slopes to both neighbours agree they are
// good; where not, as at a change of fluid, or where there is none, as in a level
// hole, the conditions are asked again close by.
func (m *MadeUp) weighAll(c *Conditions, nodes []Node) {
	var above densities
	for i := range nodes {
		var below densities
		if i < len(m.elements) && m.elements[i].perDrop != 0 {
			a, b, per := &nodes[i], &nodes[i+1], m.elements[i].perDrop
			below = densities{
				inside:  (float64(b.Inside-a.Inside) + m.lost(c.Friction, i)) * per,
				outside: (float64(b.Outside-a.Outside) + m.lost(c.OutsideFriction, i)) * per,
				ok:      true,
			}
		}
		var in, out float64
		switch {
		case above.ok && below.ok && alike(above.inside, below.inside) && alike(above.outside, below.outside):
			in, out = (above.inside+below.inside)/2, (above.outside+below.outside)/2
		case above.ok != below.ok && (i == 0 || i == len(m.elements) || m.elements[i-1].length == 0 || m.elements[i].length == 0):
			in, out = above.inside+below.inside, above.outside+below.outside // the one that is
		default:
			tvd := nodes[i].TVD
			in, out = densityIn(c.Inside, m.inPart[i], tvd), densityIn(c.Outside, m.outPart[i], tvd)
		}
		nodes[i].Weight = unit.WeightPerLength(m.bars[nodes[i].Section].effectiveWeight(in, out))
		above = below
	}
}

func alike(a, b float64) bool {
	d := math.Abs(a - b)
	return d <= 0.01*max(math.Abs(a), math.Abs(b))
}

// leastDrop is the vertical distance, in m, that a slope is taken over at least.
const leastDrop = 1.0

// densityIn is the slope of a part's pressure over the metre above a depth.
func densityIn(pressure func(int, unit.Length) unit.Pressure, part int, tvd unit.Length) float64 {
	low := tvd - unit.Metre
	if low < 0 {
		low = tvd
	}
	ρ := float64(pressure(part, low+unit.Metre)-pressure(part, low)) / (gravity * float64(unit.Metre))
	if !isFinite(ρ) {
		return 0
	}
	return ρ
}

// sealFriction is what a seal takes to slide, up positive.
func (m *MadeUp) sealFriction(c *Conditions, seal int) unit.Force {
	f := m.seals[seal].Friction
	if len(c.SealFriction) > 0 {
		f = c.SealFriction[seal]
	}
	return unit.Force(c.Sliding) * f
}

// even is the share of a drag that is spread evenly from the top to a depth.
func even(md, top, bottom float64) float64 {
	if bottom <= top {
		return 0
	}
	return math.Min(1, math.Max(0, (bottom-md)/(bottom-top)))
}
