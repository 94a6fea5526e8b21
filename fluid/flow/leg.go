package flow

import "completion.example/hydrostatics/unit"

// leg is a section as the fluid meets it.
type leg struct {
	section ConduitSection
	side    Side
	v0, v1  float64 // volume from the inlet to its two ends
	md0     float64 // measured depth where the fluid enters
	md1     float64
	z0, z1  float64 // vertical depth where the fluid enters and leaves
}

// legs lists the way of the fluid; inlet is the number of legs, and volume, on
// the inlet side.
func (w Well) legs(reverse bool) (legs []leg, inlet int, volume float64) {
	down, up := side(w.Pipe, PipeSide), side(w.Annulus, AnnulusSide)
	if reverse {
		down, up = up, down
	}
	legs, inlet = down, len(down)
	for i := len(up) - 1; i >= 0; i-- {
		l := up[i]
		l.z0, l.z1 = l.z1, l.z0
		l.md0, l.md1 = l.md1, l.md0
		legs = append(legs, l)
	}
	v := 0.0
	for i := range legs {
		l := &legs[i]
		l.v0 = v
		v += float64(l.section.Conduit.Volume(l.section.Length))
		l.v1 = v
		if i == inlet-1 {
			volume = v
		}
	}
	return legs, inlet, volume
}

func side(sections []ConduitSection, s Side) []leg {
	var legs []leg
	var md, z float64
	for _, x := range sections {
		l := leg{section: x, side: s, md0: md, z0: z}
		md += float64(x.Length)
		z = float64(x.BottomTVD)
		l.md1, l.z1 = md, z
		legs = append(legs, l)
	}
	return legs
}

// loss returns friction with minor losses, per length of the leg.
func (l leg) loss(x PumpedFluid, rate unit.FlowRate) (float64, Friction, error) {
	f, err := Stream{l.section.Conduit, x.Rheology, x.Density, rate}.Friction()
	if err != nil {
		return 0, f, err
	}
	minor := MinorLoss(l.section.Minor, x.Density, f.Velocity)
	return float64(f.Gradient) + float64(minor)/float64(l.section.Length), f, nil
}
