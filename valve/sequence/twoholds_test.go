package sequence_test

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

// heldTwice is landed with a second packer at 6,000 ft that parts the annulus, a joint
// between the two, and seals above the upper one and at the lower end; the lower packer
// sets first, at 1,500 psi across, the upper one at 2,500 psi.
func heldTwice() *sequence.Plan {
	p := landed()
	p.Compartments[1].BottomMD = 6000 * foot
	p.Compartments = append(p.Compartments, sequence.Compartment{Name: "between", TopMD: 6000 * foot, BottomMD: 9000 * foot, Fluid: "annulus fluid"})
	p.Ports[0].Joins[0] = "between"
	p.Ports = append(p.Ports, sequence.Port{Name: "upper bypass", Joins: []string{"annulus", "between"}, MD: 6000 * foot, Open: true})
	p.String.Around = []string{"annulus", "between"}
	p.String.Bore, p.String.Up, p.String.Down = 0, 0, 0
	p.String.Seals = []sequence.Seal{{Name: "upper seals", MD: 4000 * foot, Bore: 4 * unit.Inch, Up: 20 * foot, Down: 20 * foot},
		{Name: "lower seals", MD: 9000 * foot, Bore: 3.25 * unit.Inch, Up: 20 * foot, Down: 20 * foot}}
	a := &p.Devices[0].Actions[0]
	a.Outside, a.Triggers = "between", []sequence.Trigger{rising(1500*psi, 1500*psi)}
	p.Devices = append(p.Devices, sequence.Device{Name: "upper packer", MD: 6000 * foot, Actions: []sequence.Action{{Name: "sets", Inside: "tubing", Outside: "annulus",
		Triggers: []sequence.Trigger{rising(2500*psi, 2500*psi)}, Holds: true, Closes: []string{"upper bypass"}}}})
	j := &p.Devices[1]
	j.MD, j.Actions[0].Seal, j.Actions[0].Triggers[0].Tension = 7500*foot, 3.8*unit.Inch, unit.Exactly(300000*unit.PoundForce)
	p.Steps = []sequence.Step{
		{Name: "set", Ramps: []map[string]unit.Pressure{{"tubing": 3000 * psi}, {"tubing": 0}}, Expect: []string{"packer: sets", "upper packer: sets"}},
		{Name: "annulus", Ramps: []map[string]unit.Pressure{{"annulus": 800 * psi}, {"tubing": 1200 * psi}}},
		{Name: "cool", Temperature: "cooled"},
		{Name: "pull", Pull: []unit.Force{120000 * unit.PoundForce}},
	}
	return p
}

// A string that two packers hold, with seals, is in the programme what tubular/movement
// makes of the same string landed, held twice in the conditions of those moments, and
// loaded, to 1e-9: put together here a second time.
func TestHeldTwiceIsThatOfMovement(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 41))
	between := func(a, b float64) float64 { return a + (b-a)*random.Float64() }
	for range 6 {
		p := heldTwice()
		in, out := unit.Density(between(8.5, 10.5))*ppg, unit.Density(between(8.5, 10.5))*ppg
		p.Fluids[0].Density, p.Fluids[1].Density = unit.Exactly(in), unit.Exactly(out)
		slant := unit.Angle(between(0, 40)) * unit.Degree
		p.Well.Path = []sequence.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}}
		p.Steps[1].Ramps[0]["annulus"] = pounds(between(200, 1200))
		r := verdict(t, p)
		require.NotNil(t, r.Steps[3].Points[1].String, "%+v", r.Findings)

		path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}})
		require.NoError(t, err)
		pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
		pipe.Material.Yield, pipe.Material.Tensile = 80000*psi, 95000*psi
		up, err := movement.Assembly{Path: path, Block: p.String.Block, Spacing: 250 * foot,
			Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9000 * foot, Hole: 6.184 * unit.Inch}},
			Holds:    []movement.Hold{{MD: 6000 * foot}, {MD: 9000 * foot}}, Joints: []movement.Joint{{MD: 7500 * foot, Seal: 3.8 * unit.Inch}},
			Seals: []movement.Seal{{MD: 4000 * foot, Bore: 4 * unit.Inch, Up: 20 * foot, Down: 20 * foot}, {MD: 9000 * foot, Bore: 3.25 * unit.Inch, Up: 20 * foot, Down: 20 * foot}}}.MakeUp()
		require.NoError(t, err)
		column := func(d unit.Density, top unit.Pressure) func(unit.Length) unit.Pressure {
			return func(tvd unit.Length) unit.Pressure {
				return top + unit.Pressure(float64(d)*9.80665*float64(tvd))
			}
		}
		// The seals at 4,000 ft, the packer at 6,000 ft, that at 9,000 ft and the seals
		// there: what stood between the packers when the upper one set stays.
		state := func(tubing, annulus unit.Pressure, fahrenheit float64) movement.Conditions {
			parts := []unit.Pressure{annulus, annulus, 0, 0, 0}
			return movement.Conditions{Inside: func(_ int, tvd unit.Length) unit.Pressure { return column(in, tubing)(tvd) },
				Outside:     func(part int, tvd unit.Length) unit.Pressure { return column(out, parts[part])(tvd) },
				Temperature: func(unit.Length) unit.Temperature { return unit.Fahrenheit(fahrenheit) }}
		}
		surface := func(action string) unit.Pressure {
			return eventOf(t, r.Steps[0], action).Surface[0].Pressure
		}
		s, err := up.Land(state(0, 0, 150))
		require.NoError(t, err)
		s, err = up.TakeHold(s, 1, state(surface("packer: sets"), 0, 150))
		require.NoError(t, err)
		s, err = up.TakeHold(s, 0, state(surface("upper packer: sets"), 0, 150))
		require.NoError(t, err)
		same := func(step int, c movement.Conditions) {
			l, err := up.Load(s, c)
			require.NoError(t, err)
			at := lastString(r, step)
			near := func(want, got unit.Force) {
				require.InDelta(t, float64(want), float64(got), 1e-9*5e5, "%v", p.Steps[step].Name)
			}
			near(l.HangerLoad, at.Hanger)
			near(l.Joints[0].Balance, at.Joints[0].Balance)
			require.Len(t, at.Holds, 2)
			for _, h := range at.Holds {
				place := 0
				if h.Name == "packer" {
					place = 1
				}
				require.True(t, h.Held)
				near(l.Holds[place].Load, h.Load)
				near(l.Holds[place].WallAbove, h.Wall)
				near(l.Holds[place].WallBelow, h.Below)
			}
			for k := range at.Seals {
				require.InDelta(t, float64(l.Seals[k].Travel), float64(at.Seals[k].Travel), 1e-9)
				near(l.Seals[k].Ring, at.Seals[k].Ring)
			}
			require.InEpsilon(t, l.Limits.Governing().Usage, at.Usage, 1e-9)
		}
		annulus := p.Steps[1].Ramps[0]["annulus"]
		same(0, state(0, 0, 150))
		same(1, state(1200*psi, annulus, 150))
		same(2, state(1200*psi, annulus, 50))
		pulled := state(1200*psi, annulus, 50)
		pulled.Top, pulled.Reading = movement.OnHookOpen, 120000*unit.PoundForce
		same(3, pulled)
	}
}

// By hand: between two packers nothing moves, so 100 °F of cooling pull with E·α·ΔT·As,
// 53,617 lbf, in both lengths alike, and neither packer gets any of it from that: what
// the upper one holds more comes from the pressures alone.
func TestCoolingBetweenTwoPackersLoadsNeither(t *testing.T) {
	r := verdict(t, heldTwice())
	require.Empty(t, r.Findings)
	before, after := lastString(r, 1), lastString(r, 2)
	require.InDelta(t, 53617, (after.Hanger - before.Hanger).In(unit.PoundForce), 0.002*53617)
	for _, h := range after.Holds {
		if h.Name == "upper packer" {
			for _, b := range before.Holds {
				if b.Name == h.Name {
					require.InDelta(t, b.Load.In(unit.PoundForce), h.Load.In(unit.PoundForce), 150, "the helix that it takes out counts")
				}
			}
		}
	}
}
