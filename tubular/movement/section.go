package movement

import (
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// StringSection is a length of one pipe in one hole. A crossover, a tool or a
// thick-walled sub is a section too. A string is a list of sections from the
// hanger down.
type StringSection struct {
	Pipe     tubular.Pipe `json:"pipe"`
	BottomMD unit.Length  `json:"bottom_md"` // measured depth of its lower end
	Hole     unit.Length  `json:"hole"`      // inside diameter of the casing or hole around it
	Joint    unit.Force   `json:"joint"`     // tensile strength of its connections, for Connection.Tension; zero where that has it, or nothing is known
	// Connection is what the connections bear in other ways. What isn't known is
	// not checked: see MadeUp.NotChecked.
	Connection tubular.Connection `json:"connection"`
	// Wear is wall that the ratings leave out; weight and stiffness keep it.
	Wear tubular.Allowance `json:"wear"`
	// Derating of the section's yield strength where temperatures are given; nil:
	// that of the assembly.
	Derating *tubular.Derating `json:"derating"`
}

// connection is what is known of the section's connections.
func (s *StringSection) connection() tubular.Connection {
	c := s.Connection
	if c.Tension == 0 {
		c.Tension = s.Joint
	}
	return c
}

// bar is a section as plain numbers in SI.
type bar struct {
	top, bottom float64 // measured depth
	ai, ao, as  float64 // bore, outside and steel area
	e, i, nu    float64
	alpha       float64
	ws          float64 // weight in air per length
	od          float64
	lateral

	// Prepared for every node of every case.
	perEA     float64 // 1/(E*As)
	fibre     float64 // bending stress at the outer fibre over curvature
	outerDrag float64 // drag on the pipe per pressure lost outside: see Landed.axial
}

func (b *bar) length() float64 { return b.bottom - b.top }

// effectiveWeight is the slope of the effective force in a vertical hole with
// fluids of these densities. It takes the areas of the pipe body, as Lubinski
// does: what couplings displace is left out.
func (b *bar) effectiveWeight(inside, outside float64) float64 {
	return b.ws + gravity*(inside*b.ai-outside*b.ao)
}

// effective is the effective force that goes with a node's true one.
func (b *bar) effective(n *Node) unit.Force {
	return unit.Force(float64(n.True) - float64(n.Inside)*b.ai + float64(n.Outside)*b.ao)
}

// bars checks sections below a top and turns them into numbers.
func bars(top unit.Length, sections []StringSection) ([]bar, error) {
	if len(sections) == 0 {
		return nil, fault.New("Sections", "is empty; must be one section of pipe or more")
	}
	faults := fault.In(scope)
	out := make([]bar, 0, len(sections))
	for k, s := range sections {
		faults.AtIndex("Sections", k, fault.Join("", fault.At("Pipe", s.Pipe.Validate()), fault.At("Connection", s.Connection.Validate()),
			fault.AtLeast("Hole", s.Hole, s.Pipe.OD), fault.AtLeast("Joint", s.Joint, 0), fault.Above("BottomMD", s.BottomMD, top)))
		out = append(out, newBar(top, s))
		top = s.BottomMD
	}
	return out, faults.Err()
}

func newBar(top unit.Length, s StringSection) bar {
	p, m := s.Pipe, s.Pipe.Material
	b := bar{
		top: float64(top), bottom: float64(s.BottomMD), od: float64(p.OD),
		ai: float64(p.InnerArea()), ao: float64(p.OuterArea()), as: float64(p.SteelArea()),
		e: float64(m.Young), i: float64(p.SecondMoment()), nu: m.Poisson, alpha: float64(m.Expansion),
		ws: float64(p.WeightInAir()),
	}
	b.lateral = confine(b.e*b.i, float64(s.Hole-p.OD)/2)
	b.perEA, b.fibre, b.outerDrag = 1/(b.e*b.as), b.e*b.od/2, math.Pi/2*b.r*b.od
	return b
}

// gravity is standard gravity, in m/s².
const gravity = 9.80665
