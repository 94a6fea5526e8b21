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
	Movement Movement
	// SlackOff is the shortening by the weight set down in the reference state.
	SlackOff SlackOff
	// SealMovement is what the seals do, from where they stood after the
	// slack-off; down positive.
	SealMovement unit.Length
	// PackerForce is the tubing-to-packer force: positive where the packer
	// holds the string in tension, negative where it bears its weight.
	PackerForce unit.Force
	// EndForce is the true axial force just above the packer with nothing
	// restrained: what the pressures at the end make.
	EndForce unit.Force
	// TrueForce and EffectiveForce are the axial forces in the string just
	// above the packer, its own force included.
	TrueForce, EffectiveForce unit.Force
	// HangerLoad is the true axial force in the string at the hanger.
	HangerLoad unit.Force
	// Neutral is the measured depth of the neutral point: the lowest at which
	// the effective force is zero, the string's lower end where all is in
	// effective tension there, the hanger where all is compressed.
	Neutral unit.Length
	// Buckled is the length that is buckled in any way, HelicalLength that in a
	// helix, BuckledShortening the shortening of both; never positive.
	BuckledLength, HelicalLength, BuckledShortening unit.Length
	// Snapping says that the packer's force stands at the load at which a
	// length of uniform force snaps from sinusoidal to helical, part of it having
	// done so: the force is right, the buckling mode of the nodes is not unique.
	Snapping bool
	// Governing is the node and the limit that are used most; its Usage is zero
	// where no section is rated.
	Governing Governing
	// Nodes run from the hanger down. A change of section is two nodes.
	Nodes []Node
}

// Node is the string at one depth.
type Node struct {
	MD, TVD         unit.Length
	Section         int
	Inside, Outside unit.Pressure
	Temperature     unit.Temperature     // zero where no temperatures were given
	True, Effective unit.Force           // axial force, tension positive
	Weight          unit.WeightPerLength // effective
	Onset           unit.Force           // compression at which sinusoidal buckling begins; zero in a vertical hole
	Mode            Mode
	Contact         unit.WeightPerLength // force against the wall per length
	Curvature       unit.Curvature       // of the pipe's axis: hole and buckling together
	Bending         unit.Pressure        // bending stress at the outer fibre
	Usage           tubular.Usage        // of each limit, design factor included; zero where the section isn't rated
}

// ErrOutsideString says that a depth isn't in the string.
var ErrOutsideString = errors.New("movement: depth outside the string")

// At returns the string at a measured depth, straight between nodes. At a
// change of section it is the upper pipe's end.
func (c *Case) At(md unit.Length) (Node, error) {
	n := len(c.Nodes)
	if n == 0 || !(md >= c.Nodes[0].MD && md <= c.Nodes[n-1].MD) {
		var top, bottom unit.Length
		if n > 0 {
			top, bottom = c.Nodes[0].MD, c.Nodes[n-1].MD
		}
		return Node{}, fault.NewIn("movement", "md", "is %s; must be from %s to %s: %w", md.Rounded(6), top.Rounded(6), bottom.Rounded(6), ErrOutsideString)
	}
	i := sort.Search(n, func(i int) bool { return c.Nodes[i].MD >= md })
	b := c.Nodes[i]
	if i == 0 || b.MD == md {
		return b, nil
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
	return b, nil
}

func mix[Q unit.Scalar](a, b Q, x float64) Q { return a + (b-a)*Q(x) }
