package packer

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// ErrNowhereToCut says that no interval that can be cut is free.
var ErrNowhereToCut = errors.New("packer: no interval to cut is free")

// CutInterval is a stretch of the string that can be cut: plain pipe, no coupling,
// no line clamp, room for the cutter.
type CutInterval struct {
	Name     string      `json:"name"`
	TopMD    unit.Length `json:"top_md"` // measured depth
	BottomMD unit.Length `json:"bottom_md"`
}

// NotParted is a joint that was pulled and did not part.
type NotParted struct {
	Release Release    `json:"release"`
	Tried   unit.Force `json:"tried"` // highest reading of the weight indicator so far

	// Free is the measured depth down to which the string is known to be free,
	// for example by stretch (tubular.FreePoint). Zero stands for the joint.
	FreeMD    unit.Length   `json:"free_md"`
	Clearance unit.Length   `json:"clearance"` // that a cut keeps above it
	Intervals []CutInterval `json:"intervals"`

	CutPull unit.Force `json:"cut_pull"` // at the cut, above what hangs free there, so that it opens
}

// Options are what is left to do.
type Options struct {
	// Joint is the load that the highest reading put on the joint, the greatest
	// drag taken off for its least. Parts is what that should have done: where it
	// is acted, the pull does not reach the joint, or the joint is not what it was
	// taken for, and more pull is no remedy.
	Joint unit.Band[unit.Force] `json:"joint"`
	Parts Outcome               `json:"parts"`

	// Higher is by how much the reading may still be raised within the shares of
	// the ratings; zero where there is none. Most is that reading, and MostParts
	// whether it parts the joint.
	Higher    unit.Force `json:"higher"`
	Most      unit.Force `json:"most"`
	MostParts Outcome    `json:"most_parts"`

	// Pressure is the least tubing pressure, added to what is held, with which the
	// strongest pins part within the shares of the ratings, and PressureReading the
	// reading to pull with it, less than that without as the pressure does its part;
	// zero where none is needed. Where the joint is plugged, or its seal is no wider
	// than the bore of what limits the pull, pressure inside does not help: then it
	// is not available.
	Pressure          unit.Pressure `json:"pressure"`
	PressureReading   unit.Force    `json:"pressure_reading"`
	PressureAvailable bool          `json:"pressure_available"`

	Cut   Cut   `json:"cut"`
	NoCut error `json:"no_cut"` // ErrNowhereToCut with the numbers, where there is no cut
}

// Cut is the deepest cut that can be made.
type Cut struct {
	Interval CutInterval `json:"interval"`
	MD       unit.Length `json:"md"`      // measured
	Reading  unit.Force  `json:"reading"` // that puts the pull wanted on the cut
	After    unit.Force  `json:"after"`   // once cut, string hanging open in the annulus' fluid
	Fish     unit.Length `json:"fish"`    // of pipe left above the joint
}

// Options returns what is left to do when a joint did not part.
//
//	load on joint = tried - Balance(0) - drag
//	Δp            = max over components of (strongest pins - most load) / (Ap - Ai), and for the rig / Ar
//	reading       = Balance(strongest pins) + drag - Δp Ar
//	Ar            = Ap with a closed top, Ap - Ai at surface with an open one
//	after         = -(Ao - Ai) po + Σ w ΔTVD above it + shoulders + cap + block
//	reading       = after + pull wanted at the cut
//
// After is the reading that leaves the neutral point at the cut. The drag is in
// neither. The first three options are in the order of how little they risk: more pull
// within the ratings, pull with pressure, a cut above the joint. The pressure's
// own limits (burst, packer, formation) are not looked at here. Working the pull
// up and down wears pins and pipe alike; nothing is counted for it.
//
// Errors name every field out of range; no place to cut is not an error but
// stands in NoCut. Source: Balance.
func (n NotParted) Options() (Options, error) {
	if err := n.validate(); err != nil {
		return Options{}, err
	}
	r := n.Release
	p, err := r.Parting()
	if err != nil {
		return Options{}, err
	}
	o := Options{Joint: p.Neutral.Times(-1).Shift(n.Tried), Most: p.MostReading, MostParts: p.State}
	o.Parts = stateOf(o.Joint, r.Pins)
	o.Higher = max(0, p.MostReading-n.Tried)
	n.withPressure(&o, p)
	o.Cut, o.NoCut = n.cut()
	if o.NoCut != nil && !errors.Is(o.NoCut, ErrNowhereToCut) {
		return Options{}, o.NoCut
	}
	return o, finiteResult("option", float64(o.Joint.Least), float64(o.Joint.Greatest), float64(o.Higher), float64(o.Pressure))
}

// withPressure finds the pressure that helps a pull. It adds Ap per pressure to
// the load on the joint at the same reading, and Ai to the wall force of the pipe
// above it: so at the same load on the joint the pipe bears Ai - Ap of it more,
// and the reading is less by Ap, or with an open top by Ap - Ai.
func (n NotParted) withPressure(o *Options, p Parting) {
	r := n.Release
	o.PressureAvailable = !r.Pull.Plugged
	if !o.PressureAvailable || p.Most >= r.Pins.Greatest {
		return
	}
	seal := tubular.AnnularCapacity(r.Pull.Seal, 0)
	reading := seal
	if r.Pull.OpenTop {
		reading -= r.Pull.Sections[0].Pipe.InnerArea()
	}
	for i, u := range p.Parts {
		short := r.Pins.Greatest - u.Most
		if short <= 0 {
			continue
		}
		gain := reading // the rig, which is the last
		if i < len(r.Components) {
			gain = seal - n.pipeAt(u.MD).InnerArea()
		}
		if gain <= 0 {
			o.Pressure, o.PressureAvailable = 0, false
			return
		}
		o.Pressure = max(o.Pressure, unit.Pressure(float64(short)/float64(gain)))
	}
	o.PressureReading = p.Reading.Greatest - Push(o.Pressure, reading)
}

func (n NotParted) cut() (Cut, error) {
	p := n.Release.Pull
	bottom := p.Sections[len(p.Sections)-1].BottomMD
	free := n.FreeMD
	if free == 0 {
		free = bottom
	}
	limit := free - n.Clearance
	c := Cut{MD: -1}
	for _, i := range n.Intervals {
		if d := min(i.BottomMD, limit); d >= i.TopMD && d > c.MD {
			c.Interval, c.MD = i, d
		}
	}
	if c.MD < 0 {
		return Cut{}, fmt.Errorf("%w: the string is free to %s, less %s of clearance, and none of the intervals given (%d) begins above that",
			ErrNowhereToCut, free.Rounded(5), n.Clearance.Rounded(3), len(n.Intervals))
	}
	// The real force at surface less that at the cut is weight and shoulders
	// between, whatever the load.
	h, err := p.hang(c.MD)
	if err != nil {
		return Cut{}, err
	}
	above := h.balance(0).Reading - p.Block - h.force(c.MD, 0, 0)
	tvd, err := depthOn(p.Path, c.MD)
	if err != nil {
		return Cut{}, err
	}
	c.After = above + p.Block - Push(p.Outside(tvd), n.pipeAt(c.MD).SteelArea())
	c.Reading = c.After + n.CutPull
	c.Fish = bottom - c.MD
	return c, finiteResult("cut", float64(c.Reading), float64(c.After))
}

// pipeAt is the pipe at a depth.
func (n NotParted) pipeAt(md unit.Length) tubular.Pipe {
	sections := n.Release.Pull.Sections
	for _, s := range sections {
		if md <= s.BottomMD {
			return s.Pipe
		}
	}
	return sections[len(sections)-1].Pipe
}

func (n NotParted) validate() error {
	f := fault.In(scope)
	if err := n.Release.Validate(); err != nil {
		f.At("Release", err)
	}
	f.Add(fault.AtLeast("Tried", n.Tried, 0))
	f.Add(fault.AtLeast("FreeMD", n.FreeMD, 0))
	f.Add(fault.AtLeast("Clearance", n.Clearance, 0))
	f.Add(fault.AtLeast("CutPull", n.CutPull, 0))
	if k := len(n.Release.Pull.Sections); k > 0 {
		bottom := n.Release.Pull.Sections[k-1].BottomMD
		if n.FreeMD > bottom {
			f.New("FreeMD", "is %v; must be no deeper than the joint at %v", n.FreeMD, bottom)
		}
		for i, c := range n.Intervals {
			if !(c.TopMD >= 0 && c.TopMD < c.BottomMD && c.BottomMD <= bottom) {
				f.New(fault.Index("Intervals", i), "%s is %v to %v; must be a stretch from surface to the joint at %v", c.Name, c.TopMD, c.BottomMD, bottom)
			}
		}
	}
	return f.Err()
}
