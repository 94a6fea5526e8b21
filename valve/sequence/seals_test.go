package sequence_test

import (
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// sealed is landed with its packer 500 ft above the lower end, which is sealed in a
// bore.
func sealed(diameter unit.Length) *sequence.Plan {
	p := landed()
	p.Devices = p.Devices[:1]
	p.Devices[0].MD, p.String.HeldMD = 8500*foot, 8500*foot
	p.Compartments[1].BottomMD = 8500 * foot
	p.Compartments[2].TopMD = 8500 * foot
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "sump", TopMD: 8990 * foot, BottomMD: 9000 * foot, Fluid: "annulus fluid", Trapped: unit.Exactly(unit.Pressure(column(9.5, 8990)) * psi)})
	p.Ports[0].MD = 8500 * foot
	p.String.Around = []string{"annulus", "below"}
	p.String.Below = "sump"
	p.String.Bore, p.String.Up, p.String.Down = 0, 0, 0
	p.String.Seals = []sequence.Seal{{Name: "lower seals", MD: 9000 * foot, Bore: diameter, Up: 10 * foot, Down: 10 * foot}}
	p.Devices[0].Actions[0].Outside = "annulus"
	return p
}

// A seal's ring is that between pipe and bore: 1,000 psi more below than above lift
// it by 1,000 psi · π/4·(4.5² − 3.5²) in² = 6,283 lbf, and one in a bore of the pipe's
// own diameter by nothing. Before anything holds the string, it moves up by F·L/(E·A):
// 6,283 lbf · 108,000 in / (30e6 psi · 2.590 in²) = 8.73 in; pressure inside, which
// acts on the plugged end, is the same for both.
//
// Source: Lubinski, Althouse and Logan (1962), piston effect; E = 30e6 psi.
func TestTheSealBoreCounts(t *testing.T) {
	at := func(diameter unit.Length) *sequence.StringAt {
		p := sealed(diameter)
		p.Devices[0].Actions[0].Triggers[0] = rising(9000*psi, 9500*psi)
		p.Steps = []sequence.Step{{Name: "heat", PressureChange: map[string]unit.Pressure{"sump": 1000 * psi}}}
		r := verdict(t, p)
		require.True(t, r.OK(), "%+v", r.Findings)
		return lastString(r, 0)
	}
	wide, narrow := at(4.5*unit.Inch), at(3.5*unit.Inch)
	ring := math.Pi / 4 * (4.5*4.5 - 3.5*3.5)
	require.InDelta(t, 1000*ring, (wide.Seals[0].Ring - 0).In(unit.PoundForce), 1)
	require.InDelta(t, 0, narrow.Seals[0].Ring.In(unit.PoundForce), 1e-6)
	// The end is pushed up by 1,000 psi on the pipe's own area and on the ring; the
	// difference between the two bores is that of the ring.
	moved := (wide.Seals[0].Travel - narrow.Seals[0].Travel).In(unit.Inch)
	require.Less(t, moved, -1000*ring*108000/(30e6*(outside-bore))*0.99, "buckling adds to it")
}

// Three forces, never mixed up: the effective one is the wall force less pi·Ai plus
// po·Ao, and the load that the packer carries is a step of it.
func TestWallAndEffectiveForce(t *testing.T) {
	p := landed()
	p.Steps = append(p.Steps, sequence.Step{Name: "pressure up", Ramps: []map[string]unit.Pressure{{"tubing": 2000 * psi}}})
	r := verdict(t, p)
	at := lastString(r, 1)
	pi, po := column(9.5, 9000)+2000, column(9.5, 9000)
	require.InDelta(t, at.Wall.In(unit.PoundForce)-pi*bore+po*outside, at.Effective.In(unit.PoundForce), 0.1)
	// Where it took hold, at 3,375 psi, it carried nothing; bled to 2,000 psi the end's
	// pull is 1,375·Ai less and ballooning takes 2ν of it back.
	require.InDelta(t, (1-2*0.3)*1375*bore, at.Packer.In(unit.PoundForce), 0.01*(1-2*0.3)*1375*bore)
}

// The slips bite somewhere in the packer's band: the tension that stays in the string
// lies between (1−2ν)·p·Ai of its two ends, and the release's margin knows it.
func TestLockInIsABand(t *testing.T) {
	p := landed()
	p.Devices[1].Actions[0].Triggers[0].Tension = unit.Exactly(80000 * unit.PoundForce)
	p.Steps = append(p.Steps, sequence.Step{Name: "wait"})
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	x := triggerOf(t, r.Steps[1], "release: parts")
	require.InDelta(t, 0.4*3375*0.95*bore, inPounds(t, x.Least), 0.01*9492)
	require.InDelta(t, 0.4*3375*1.05*bore, inPounds(t, x.Greatest), 0.01*9492)
	require.InDelta(t, 80000-inPounds(t, x.Greatest), inPounds(t, x.Margin), 1)
}

// Pressures step at a seal, not over the nodes around it. A seal of 4.5 in at 6,000 ft
// with 1,000 psi more on the annulus above it: the ring pushes down with 1,000·π/4·(4.5² −
// 3.5²) = 6,283 lbf, and the pressure around the pipe lengthens what is above the seal as
// 2ν·1,000·Ao = 5,773 lbf would: (6,283 + 5,773)·72,000 in/(30e6·2.590 in²) = 11.17 in down,
// with nothing compressed that could buckle.
//
// Source: Lubinski, Althouse and Logan (1962); by hand.
func TestPressureStepsAtASeal(t *testing.T) {
	p := landed()
	p.Devices[0].Actions[0].Triggers[0] = rising(9000*psi, 9500*psi)
	p.Compartments[1].BottomMD, p.Compartments[2].TopMD = 6000*foot, 6000*foot
	p.Compartments[2].Trapped = unit.Exactly(unit.Pressure(column(9.5, 6000)) * psi)
	p.Devices[0].Actions[0].Outside = "below"
	p.Ports[0].MD, p.Ports[0].Open = 6000*foot, false
	p.String.Around = []string{"annulus", "below"}
	p.String.Bore, p.String.Up, p.String.Down = 0, 0, 0
	p.String.Seals = []sequence.Seal{{Name: "seals", MD: 6000 * foot, Bore: 4.5 * unit.Inch, Up: 10 * foot, Down: 10 * foot}}
	p.Steps = []sequence.Step{{Name: "pressure", Ramps: []map[string]unit.Pressure{{"annulus": 1000 * psi}}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	at := lastString(r, 0)
	ring := 1000 * math.Pi / 4 * (4.5*4.5 - 3.5*3.5)
	require.InDelta(t, -ring, (at.Seals[0].Ring - r.Steps[0].Points[0].String.Seals[0].Ring).In(unit.PoundForce), 0.1)
	require.InDelta(t, (ring+2*0.3*1000*outside)*72000/(30e6*(outside-bore)), at.Seals[0].Travel.In(unit.Inch), 0.02)
	require.Zero(t, at.Buckled)
	// It stands where it is told to, 10 ft less what it has moved up and more what it
	// has moved down.
	require.InDelta(t, 120+at.Seals[0].Travel.In(unit.Inch), at.Seals[0].Engaged.In(unit.Inch), 1e-6)
}

// Seals in the packer that may hold them: the pressure steps at the seals' bore and not
// at the pipe. With the end open to the tubing and 1,000 psi on the annulus the ring of
// π/4·(4.5² − 3.5²) in² and ballooning, 2ν·Ao, lengthen the string:
// (6,283 + 5,773) lbf · 108,000 in/(30e6 psi · 2.590 in²) = 16.76 in down.
//
// Source: Lubinski, Althouse and Logan (1962), piston and ballooning; by hand.
func TestSealsInTheirPacker(t *testing.T) {
	p := landed()
	p.Devices[0].Actions[0].Triggers[0] = rising(9000*psi, 9500*psi)
	p.String.Below, p.String.Bore = "tubing", 4.5*unit.Inch
	p.Steps = []sequence.Step{{Name: "pressure", Ramps: []map[string]unit.Pressure{{"annulus": 1000 * psi}}}}
	r := verdict(t, p)
	require.True(t, r.OK(), "%+v", r.Findings)
	ring := math.Pi / 4 * (4.5*4.5 - 3.5*3.5)
	at := lastString(r, 0)
	require.InDelta(t, 1000*(ring+2*0.3*outside)*108000/(30e6*(outside-bore)), at.Seals[0].Travel.In(unit.Inch), 0.01)
	require.InDelta(t, -1000*ring, (at.Seals[0].Ring - r.Steps[0].Points[0].String.Seals[0].Ring).In(unit.PoundForce), 1)
}

// In the demo the isolation seals at 9,050 and 9,350 ft stand in bores of 4.75 in. While the
// packer sets, sleeve A is shut and C open: 1,450 psi more below the lower ones than between
// the two push the string up by the ring, π/4·(4.75² − 4.5²) = 1.816 in², which nothing
// balances; with the packer set, that is locked in: 2,634 lbf, less what the helix above the
// packer takes. With the pipe's own diameter the packer is pulled up in step 7 by 1,261 lbf,
// with its true bores pushed down by 1,330; bores of 6 in make 12.37 in² of it.
func TestTheDemosSealBoresCount(t *testing.T) {
	load := func(diameter unit.Length) float64 {
		p := demoPlan(t)
		require.Len(t, p.String.Seals, 3)
		for i := range p.String.Seals {
			if diameter != 0 {
				p.String.Seals[i].Bore = diameter
			}
		}
		s := stepNamed(t, verdict(t, p), "test the packer from below")
		return s.Points[len(s.Points)-1].String.Packer.In(unit.PoundForce)
	}
	none, own, wide := load(4.5*unit.Inch), load(0), load(6*unit.Inch)
	require.InDelta(t, 1261, none, 1)
	require.InDelta(t, -1330, own, 1)
	ring := func(d float64) float64 { return math.Pi / 4 * (d*d - 4.5*4.5) }
	require.InEpsilon(t, -1450*ring(4.75), own-none, 0.03)
	require.InEpsilon(t, -1450*ring(6), wide-none, 0.1)
}

// Where what is around the string changes and nothing is said to seal, that is told.
func TestWhereNothingSealsIsTold(t *testing.T) {
	p := demoPlan(t)
	require.NotContains(t, strings.Join(verdict(t, p).Unchecked, "\n"), "no seal is said")
	p.String.Seals = p.String.Seals[1:]
	require.Contains(t, verdict(t, p).Unchecked, `string: no seal is said to stand at 9050 ft, between "annulus A" and "annulus B": what differs there acts on the pipe alone`)
}
