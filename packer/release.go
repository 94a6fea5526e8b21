package packer

import (
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Release is a pull that is to part the pins of the joint.
type Release struct {
	Pull Pull                  `json:"pull"`
	Pins unit.Band[unit.Force] `json:"pins"` // load on the joint that parts it

	Components []Component `json:"components"` // whatever bears the pull: pipe bodies, joints, tools
	Rig        unit.Force  `json:"rig"`        // capacity of hook and derrick, as the indicator counts
	RigShare   float64     `json:"rig_share"`  // of it that may be used
}

// Component is a part of the string that the pull must spare.
type Component struct {
	Name   string      `json:"name"`
	MD     unit.Length `json:"md"`     // measured depth at which it stands; the pull is greatest at surface
	Rating unit.Force  `json:"rating"` // in tension
	Share  float64     `json:"share"`  // of the rating that may be used: 0.8 to 0.9 is common practice
}

// Parting is what a release takes.
type Parting struct {
	Pins    unit.Band[unit.Force] `json:"pins"`
	Reading unit.Band[unit.Force] `json:"reading"` // of the weight indicator when the pins part, least pins with least drag
	Neutral unit.Band[unit.Force] `json:"neutral"` // reading with no load on the joint, pulling up

	Nominal Balance `json:"nominal"` // the terms of the nominal reading, without drag

	// Stretch is by how much the top comes up from no load on the joint to its
	// parting.
	Stretch unit.Band[unit.Length] `json:"stretch"`

	Parts   []ComponentLoad `json:"parts"`   // components in the order given, and the rig last
	Weakest ComponentLoad   `json:"weakest"` // with the greatest share of what it may bear

	// Most is the greatest load on the joint that the components permit with the
	// greatest drag, and MostReading the reading it is made with.
	Most        unit.Force `json:"most"`
	MostReading unit.Force `json:"most_reading"`
	// State says whether that parts the joint: acted for certain, unknown inside
	// the band, or not.
	State Outcome `json:"state"`

	drag unit.Force // nominal
}

// ComponentLoad is the load on a component when the strongest pins part with the greatest
// drag.
type ComponentLoad struct {
	Component
	Load  unit.Force `json:"load"`
	Usage float64    `json:"usage"` // share of the rating
	Most  unit.Force `json:"most"`
}

// Over tells whether the load passes the share permitted.
func (u ComponentLoad) Over() bool { return u.Usage > u.Share }

// Parting returns the readings at which the pins part, for the weakest and the
// strongest pins of the band, and what they take of everything that bears the
// pull.
//
//	R      = Balance(P) + drag
//	F(md)  = P + F(end) + Σ w ΔTVD + Σ ΔF(shoulder) from md down, + drag (L - md)/L
//	ΔL     = (P + drag/2) Σ L/(E As)
//	P(max) = min over components of (share × rating - F(md) + P)
//
// The drag is spread evenly along the string, which a straight hole of one
// inclination has; in a hole with doglegs more of it lies above them. Stretch is
// counted from the string up-moving without load on the joint.
//
// Errors name every field out of range. Source: Balance; Hooke.
func (r Release) Parting() (Parting, error) {
	if err := r.Validate(); err != nil {
		return Parting{}, err
	}
	depths := make([]unit.Length, 0, len(r.Components))
	for _, c := range r.Components {
		depths = append(depths, c.MD)
	}
	h, err := r.Pull.hang(depths...)
	if err != nil {
		return Parting{}, err
	}
	p := r.Pull
	none := h.balance(0).Reading
	nominal := h.balance(r.Pins.Nominal)
	out := Parting{Pins: r.Pins, Nominal: nominal, Neutral: p.Drag.Shift(none), drag: p.Drag.Nominal}
	out.Reading = add(r.Pins, out.Neutral)
	compliance := unit.Length(0)
	top := unit.Length(0)
	for _, s := range p.Sections {
		compliance += s.Pipe.Stretch(1, s.BottomMD-top)
		top = s.BottomMD
	}
	for _, end := range [...]struct {
		to         *unit.Length
		pins, drag unit.Force
	}{
		{&out.Stretch.Least, r.Pins.Least, p.Drag.Least},
		{&out.Stretch.Nominal, r.Pins.Nominal, p.Drag.Nominal},
		{&out.Stretch.Greatest, r.Pins.Greatest, p.Drag.Greatest},
	} {
		*end.to = compliance * unit.Length(end.pins+end.drag/2)
	}
	for _, c := range r.Components {
		load := h.force(c.MD, r.Pins.Greatest, p.Drag.Greatest)
		out.Parts = append(out.Parts, use(c, load, r.Pins.Greatest))
	}
	out.Parts = append(out.Parts, use(Component{Name: "rig", Rating: r.Rig, Share: r.RigShare}, out.Reading.Greatest, r.Pins.Greatest))
	out.Weakest, out.Most = out.Parts[0], out.Parts[0].Most
	for _, u := range out.Parts[1:] {
		if u.Usage/u.Share > out.Weakest.Usage/out.Weakest.Share {
			out.Weakest = u
		}
		out.Most = min(out.Most, u.Most)
	}
	out.MostReading = out.Neutral.Greatest + out.Most
	out.State = stateOf(unit.Exactly(out.Most), r.Pins)
	return out, finiteResult("release", float64(out.Reading.Least), float64(out.Reading.Greatest), float64(out.Stretch.Greatest),
		float64(out.Most), float64(out.MostReading), out.Weakest.Usage)
}

// use holds a component against its load with pins at their strongest; less the
// pins, plus Most, is its share.
func use(c Component, load, pins unit.Force) ComponentLoad {
	return ComponentLoad{Component: c, Load: load, Usage: float64(load / c.Rating), Most: unit.Force(c.Share)*c.Rating - load + pins}
}

func add[Q unit.Scalar](a, b unit.Band[Q]) unit.Band[Q] {
	return unit.Band[Q]{Least: a.Least + b.Least, Nominal: a.Nominal + b.Nominal, Greatest: a.Greatest + b.Greatest}
}

// Validate reports everything that is wrong with r.
func (r Release) Validate() error {
	f := fault.In(scope)
	pull := r.Pull.faults()
	f.At("Pull", pull.Err())
	checkPins(&f, "Pins", r.Pins)
	bottom := unit.Length(0)
	if n := len(r.Pull.Sections); n > 0 {
		bottom = r.Pull.Sections[n-1].BottomMD
	}
	for i, c := range r.Components {
		field := fault.Index("Components", i)
		if !(c.MD >= 0 && c.MD <= bottom) {
			f.New(field+".Depth", "of %s is %v; must be from 0 ft to the joint at %v", c.Name, c.MD, bottom)
		}
		f.Add(fault.Above(field+".Rating", c.Rating, 0))
		checkShare(&f, field+".Share", c.Share)
	}
	f.Add(fault.Above("Rig", r.Rig, 0))
	checkShare(&f, "RigShare", r.RigShare)
	return f.Err()
}

func checkShare(f *fault.Faults, field string, x float64) {
	if !(x > 0 && x <= 1) {
		f.Add(fault.AboveTo(field, x, 0, 1))
	}
}

func checkPins(f *fault.Faults, field string, pins unit.Band[unit.Force]) {
	f.At(field, pins.Validate())
	if pins.Least <= 0 {
		f.New(field, "part from %v; must be above 0", pins.Least)
	}
}
