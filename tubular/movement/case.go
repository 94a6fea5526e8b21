package movement

import (
	"errors"
	"sort"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Case is the landed string in one state.
type Case struct {
	// Movement is what seals free to move would do, from the reference state
	// without slack-off, by cause.
	Movement Movement `json:"movement"`
	// SlackOff is the shortening by the weight set down in the reference state.
	SlackOff Shortening `json:"slack_off"`
	// SealMovement is what the seals do, from where they stood after the
	// slack-off; down positive.
	SealMovement unit.Length `json:"seal_movement"`
	// PackerForce is the tubing-to-packer force: positive where the packer
	// holds the string in tension, negative where it bears its weight.
	PackerForce unit.Force `json:"packer_force"`
	// EndForce is the true axial force just above the packer with nothing
	// restrained: what the pressures at the end make.
	EndForce unit.Force `json:"end_force"`
	// TrueForce and EffectiveForce are the axial forces in the string just
	// above the packer, its own force included.
	TrueForce      unit.Force `json:"true_force"`
	EffectiveForce unit.Force `json:"effective_force"`
	// HangerLoad is the true axial force in the string at the hanger.
	HangerLoad unit.Force `json:"hanger_load"`
	// Neutral is the measured depth of the neutral point: the lowest at which
	// the effective force is zero, the string's lower end where all is in
	// effective tension there, the hanger where all is compressed.
	Neutral unit.Length `json:"neutral"`
	// Buckled is the length that is buckled in any way, HelicalLength that in a
	// helix, BuckledShortening the shortening of both; never positive.
	BuckledLength     unit.Length `json:"buckled_length"`
	HelicalLength     unit.Length `json:"helical_length"`
	BuckledShortening unit.Length `json:"buckled_shortening"`
	// Snapping says that the packer's force stands at the load at which a
	// length of uniform force snaps from sinusoidal to helical, part of it having
	// done so: the force is right, the buckling mode of the nodes is not unique.
	Snapping bool `json:"snapping"`
	// Governing is the node and the limit that are used most; its Usage is zero
	// where no section is rated.
	Governing Governing `json:"governing"`
	// Nodes run from the hanger down. A change of section is two nodes.
	Nodes []Node `json:"nodes"`
}

// Node is the string at one depth.
type Node struct {
	MD          unit.Length          `json:"md"`
	TVD         unit.Length          `json:"tvd"`
	Section     int                  `json:"section"`
	Inside      unit.Pressure        `json:"inside"`
	Outside     unit.Pressure        `json:"outside"`
	Temperature unit.Temperature     `json:"temperature"` // zero where no temperatures were given
	True        unit.Force           `json:"true"`        // axial force, tension positive
	Effective   unit.Force           `json:"effective"`
	Weight      unit.WeightPerLength `json:"weight"` // effective
	Onset       unit.Force           `json:"onset"`  // compression at which sinusoidal buckling begins; zero in a vertical hole
	Mode        Mode                 `json:"mode"`
	Contact     unit.WeightPerLength `json:"contact"`   // force against the wall per length
	Curvature   unit.Curvature       `json:"curvature"` // of the pipe's axis: hole and buckling together
	Bending     unit.Pressure        `json:"bending"`   // bending stress at the outer fibre
	Usage       tubular.Usage        `json:"usage"`     // of each limit, design factor included; zero where the section isn't rated
}

// ErrOutsideString says that a depth isn't in the string.
var ErrOutsideString = errors.New("movement: depth outside the string")

// At returns the string at a measured depth, straight between nodes. At a
// change of section it is the upper pipe's end.
//
//	x = xi + (xi+1 − xi)·(md − mdi)/(mdi+1 − mdi)
//
// Errors: ErrOutsideString.
//
// Source: linear interpolation.
func (c *Case) At(md unit.Length) (Node, error) {
	n := 0
	if c != nil {
		n = len(c.Nodes)
	}
	if n == 0 || !(md >= c.Nodes[0].MD && md <= c.Nodes[n-1].MD) {
		var top, bottom unit.Length
		if n > 0 {
			top, bottom = c.Nodes[0].MD, c.Nodes[n-1].MD
		}
		return Node{}, fault.NewIn("movement", "md", "is %s; must be from %s to %s: %w", md.Rounded(6), top.Rounded(6), bottom.Rounded(6), ErrOutsideString)
	}
	i := sort.Search(n, func(i int) bool { return c.Nodes[i].MD >= md })
	b := c.Nodes[i]
	if b.MD == md {
		return b, b.check()
	}
	a := c.Nodes[i-1]
	x := float64((md - a.MD) / (b.MD - a.MD))
	b.MD, b.TVD = md, mix(a.TVD, b.TVD, x)
	b.Inside, b.Outside = mix(a.Inside, b.Inside, x), mix(a.Outside, b.Outside, x)
	b.Temperature = a.Temperature.Add(unit.TemperatureDifference(x) * b.Temperature.Sub(a.Temperature))
	b.True, b.Effective = mix(a.True, b.True, x), mix(a.Effective, b.Effective, x)
	b.Contact, b.Bending, b.Curvature = mix(a.Contact, b.Contact, x), mix(a.Bending, b.Bending, x), mix(a.Curvature, b.Curvature, x)
	b.Usage = tubular.Usage{
		Burst: a.Usage.Burst + (b.Usage.Burst-a.Usage.Burst)*x, Collapse: a.Usage.Collapse + (b.Usage.Collapse-a.Usage.Collapse)*x,
		Axial: a.Usage.Axial + (b.Usage.Axial-a.Usage.Axial)*x, Triaxial: a.Usage.Triaxial + (b.Usage.Triaxial-a.Usage.Triaxial)*x,
	}
	return b, b.check()
}

// check reports a node with something that is no number, as one of a case that was
// edited may have.
func (n *Node) check() error {
	known := allFinite(float64(n.MD), float64(n.TVD), float64(n.Inside), float64(n.Outside), n.Temperature.Kelvin(), float64(n.Weight),
		float64(n.True), float64(n.Effective), float64(n.Onset), float64(n.Contact), float64(n.Bending), float64(n.Curvature),
		n.Usage.Burst, n.Usage.Collapse, n.Usage.Axial, n.Usage.Triaxial)
	if !known {
		return fault.NewIn("movement", "Nodes", "have at %s something that isn't finite; must be those that Load made", n.MD.Rounded(6))
	}
	return nil
}

func mix[Q unit.Scalar](a, b Q, x float64) Q { return a + (b-a)*Q(x) }
