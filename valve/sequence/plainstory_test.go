package sequence_test

import (
	"context"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// With sharp values the programme and the plain walker tell the same story of all that
// random plans may have, to 1e-4 psi, whether a limit is passed or not: of heat between walls,
// levels, times, flow.
func TestProgrammeTellsTheStoryOfFeatures(t *testing.T) {
	t.Parallel()
	// Plans, and the least that can be told of them.
	for name, of := range map[string][2]uint64{"levels": {60, 25}, "walls": {60, 25}, "string": {20, 5}, "strings": {6, 1}, "fished": {20, 5}, "fished in": {6, 1},
		"areas": {30, 10}, "conditions": {30, 10}, "begun low": {30, 1}, "slower": {30, 3}, "acts": {30, 8}, "flows": {30, 8}, "outflows": {30, 8}, "rings": {30, 8}} {
		t.Run(name, func(t *testing.T) {
			if !long.Wanted() {
				if strings.HasPrefix(name, "strings") || name == "fished in" {
					long.Skip(t, "two strings")
				}
				of[0], of[1] = of[0]/10, of[1]/20
			}
			told := uint64(0)
			from, to := plansWanted(t, int(of[0]))
			for n := from; n < to; n++ {
				p := sharp(plainPlanWith(3, n, features[name]), nominalOf)
				p.Rules.Barriers = 0
				r := plainWalkOf(p, 16, nil)
				if r.close || len(r.choices) > 0 || r.fault != nil {
					continue
				}
				e, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
				require.NoError(t, err, "%s %d", name, n)
				told++
				if name == "acts" || name == "flows" || name == "outflows" { // whose events have other numbers
					for i, s := range e.Steps {
						require.Empty(t, differenceOfPressures(p, r.stands[i], s), "%s %d", name, n)
						for _, x := range s.Flowing {
							require.InDelta(t, r.flowing[i][[2]string{x.Device, x.Compartment}], x.Pressure.In(psi), 1e-4, "%s %d: %s at %s while %s flows", name, n, x.Compartment, x.Device, s.Name)
						}
					}
					continue
				}
				require.Empty(t, difference(p, r, e), "%s %d", name, n)
			}
			require.GreaterOrEqual(t, told, of[1], name)
		})
	}
}

// The bottom of the hole is the bottom of the hole, wherever pieces of it that are added up
// come to: temperatures there were those of the surface once.
func TestHeatAtTheBottomOfTheHole(t *testing.T) {
	off := 0.0
	for n := range 60 {
		depth := feet(float64(7000 + 13*n))
		p := heatedRoom(depth)
		e, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
		require.NoError(t, err)
		r := plainWalkOf(p, 2, nil)
		profile, err := e.Steps[1].Points[0].Profile()
		require.NoError(t, err)
		for _, x := range profile {
			if x.Compartment == "room 0" {
				off = max(off, x.Pressure.In(psi)-r.stands[1][0].top[2], r.stands[1][0].top[2]-x.Pressure.In(psi))
				break
			}
		}
	}
	require.Less(t, off, 1e-6)
}

// heatedRoom is a hole of some depth with a room between walls at its bottom, which the
// second step heats more below than above.
func heatedRoom(depth unit.Length) *sequence.Plan {
	at := func(d unit.Length, f float64) sequence.MarkedTVD {
		return sequence.MarkedTVD{TVD: d, Temperature: unit.Fahrenheit(f)}
	}
	fluid := sequence.Fluid{Name: "brine", Compression: 3e-6 * unit.PerPSI, Expansion: 2e-4 * unit.PerFahrenheit}
	setDensity(&fluid, 9)
	p := &sequence.Plan{Name: "heated room", Well: sequence.Well{MD: depth, Temperatures: map[string][]sequence.MarkedTVD{
		sequence.Undisturbed: {at(0, 60), at(15000*foot, 250)}, "hot": {at(0, 61), at(15000*foot, 300)}}},
		Fluids: []sequence.Fluid{fluid},
		Compartments: []sequence.Compartment{
			{Name: "tubing", BottomMD: depth, Fluid: "brine", Surface: true}, {Name: "annulus", BottomMD: depth, Fluid: "brine", Surface: true},
			{Name: "room 0", TopMD: depth - 2238*foot, BottomMD: depth, Fluid: "brine",
				Bores: []sequence.Bore{{To: depth - 1119*foot, Outer: 7 * unit.Inch, OuterWall: 0.4 * unit.Inch}, {To: depth, Outer: 8 * unit.Inch, OuterWall: 0.4 * unit.Inch}}}},
		Steps: []sequence.Step{{Name: "cold"}, {Name: "hot", Temperature: "hot"}}}
	setTrapped(&p.Compartments[2], 1000)
	addAction(p, "disc", "room 0", "annulus", rising(15000*psi, 15000*psi))
	p.Devices[0].MD = depth
	return p
}

// A displacement in a trapped body changes what its fluids give as it goes. By hand, with g
// what the room gives, G + κ·s what the annulus does with the front at s, and h its weight
// gained by depth, until the front is past the port at S:
//
//	Δp = -g·h/κ·ln((g + G + κ·S)/(g + G))
func TestDisplacedWhileTrapped(t *testing.T) {
	p := heatedRoom(4000 * foot)
	heavy := sequence.Fluid{Name: "heavy", Compression: 4.5e-6 * unit.PerPSI, Expansion: 2e-4 * unit.PerFahrenheit}
	setDensity(&heavy, 12)
	p.Fluids = append(p.Fluids, heavy)
	p.Compartments[1].Bores = []sequence.Bore{{To: 4000 * foot, Outer: 8 * unit.Inch, OuterWall: 0.4 * unit.Inch}}
	p.Ports = []sequence.Port{{Name: "port", Joins: []string{"annulus", "room 0"}, MD: 2500 * foot, Open: true}}
	p.Compartments[2].Bores = []sequence.Bore{{To: 4000 * foot, Outer: 8 * unit.Inch, OuterWall: 0.4 * unit.Inch}}
	setTrapped(&p.Compartments[2], 0)
	p.Devices[0].Actions[0].Outside = "tubing"
	p.Steps = []sequence.Step{{Name: "apply", Ramps: []map[string]pressure{{"annulus": 1000 * psi}}},
		{Name: "displace", Shut: []string{"annulus"}, Displace: []sequence.Displacement{{Compartment: "annulus", Fluid: "heavy", ToMD: 4000 * foot}}}}
	e, err := sequence.Check(context.Background(), p, sequence.Options{Only: sequence.VerdictOnly})
	require.NoError(t, err)
	profile, err := e.Steps[1].Points[0].Profile()
	require.NoError(t, err)
	o, oo := 4.0, 4.4 // in
	walls := 2 * (1 + plainPoisson) / plainYoung * ((1-2*plainPoisson)*o*o + oo*oo) / (oo*oo - o*o)
	room, annulus := 2238*(3e-6+walls), 4000*(3e-6+walls) // of the same area
	κ := 4.5e-6 - 3e-6
	want := 1000 - room*(12-9)*psiPerFootPpg/κ*math.Log((room+annulus+κ*2500)/(room+annulus))
	for _, x := range profile {
		if x.Compartment == "annulus" {
			require.InDelta(t, want, x.Pressure.In(psi), 1e-3)
			break
		}
	}
}
