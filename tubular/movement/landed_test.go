package movement_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// state turns a condition of the classical case into one of a landed string.
func state(c movement.WellFluids, t unit.Temperature) movement.WellProfiles {
	static := c
	static.Friction = 0
	return movement.WellProfiles{
		Inside: static.Inside, Outside: static.Outside,
		Temperature: func(unit.Length) unit.Temperature { return t },
	}
}

// landed is the string of a classical case, node by node.
func landed(t testing.TB, v movement.Vertical, spacing unit.Length) (*movement.Landed, movement.Case) {
	t.Helper()
	bottom := v.Sections[len(v.Sections)-1].BottomMD
	path, err := hydrostatics.Vertical(bottom)
	require.NoError(t, err)
	s := movement.String{Sections: v.Sections, Path: path, Seals: v.Seals, Spacing: spacing}
	before, after := state(v.Initial, unit.Fahrenheit(150)), state(v.Final, unit.Fahrenheit(150).Add(v.Warming))
	for range v.Sections {
		before.Friction = append(before.Friction, v.Initial.Friction)
		after.Friction = append(after.Friction, v.Final.Friction)
	}
	l, err := s.Land(before, v.SlackOff)
	require.NoError(t, err)
	c, err := l.Load(after)
	require.NoError(t, err)
	return l, c
}

// combination is a tapered string: two sizes and a heavier joint between.
func combination() movement.Vertical {
	v := packerExample()
	pipe := func(od, id, w float64) tubular.Pipe {
		return tubular.Pipe{OD: unit.Length(od) * unit.Inch, ID: unit.Length(id) * unit.Inch, Weight: unit.WeightPerLength(w) * unit.PoundPerFoot, Material: tubular.Steel()}
	}
	v.Sections = []movement.StringSection{
		{Pipe: pipe(3.5, 2.992, 9.3), BottomMD: 5200 * unit.Foot, Hole: 6.094 * unit.Inch},
		{Pipe: pipe(4.5, 2.75, 30), BottomMD: 5240 * unit.Foot, Hole: 6.094 * unit.Inch},
		{Pipe: pipe(2.875, 2.441, 6.5), BottomMD: 10000 * unit.Foot, Hole: 6.094 * unit.Inch},
	}
	return v
}

func TestNodesAgreeWithTheClosedForm(t *testing.T) {
	flowing := combination()
	flowing.Final.Friction = 0.12 * unit.PSIPerFoot
	heavy := packerExample() // buckled over its whole length
	heavy.Final.InsideSurface = 9000 * unit.PSI
	light := packerExample() // floats: compressed from the top
	light.Initial.InsideDensity, light.Final.InsideDensity = 1*unit.PoundPerGallon, 1*unit.PoundPerGallon
	light.Initial.OutsideDensity, light.Final.OutsideDensity = 20*unit.PoundPerGallon, 20*unit.PoundPerGallon
	light.Sections[0].Pipe.Weight = 1 * unit.PoundPerFoot
	for name, v := range map[string]movement.Vertical{
		"uniform": packerExample(), "combination": combination(), "flowing": flowing, "heavy": heavy, "light": light,
	} {
		for _, r := range []movement.Restraint{movement.Free, movement.Anchored, movement.Limited} {
			v.Seals.Restraint, v.SlackOff = r, 0
			v.Seals.Up, v.Seals.Down = 0, 0
			if r != movement.Free {
				v.SlackOff = 20000 * unit.PoundForce
			}
			if r == movement.Limited {
				v.Seals.Up = 30 * unit.Inch
			}
			t.Run(fmt.Sprintf("%s %v", name, r), func(t *testing.T) {
				want, err := v.Analyse()
				require.NoError(t, err)
				for _, spacing := range []unit.Length{10 * unit.Metre, 777 * unit.Foot} {
					_, got := landed(t, v, spacing)
					same := func(name string, got, want, scale float64) {
						t.Helper()
						require.LessOrEqualf(t, math.Abs(got-want), 1e-6*math.Max(math.Abs(want), scale), "%s = %.12g, want %.12g", name, got, want)
					}
					m, w := got.Movement, want.Movement
					same("piston", float64(m.Piston), float64(w.Piston), 0.01)
					same("ballooning", float64(m.Ballooning), float64(w.Ballooning), 0.01)
					same("buckling", float64(m.Buckling), float64(w.Buckling), 0.01)
					same("thermal", float64(m.Thermal), float64(w.Thermal), 0.01)
					same("friction", float64(m.Friction), float64(w.Friction), 0.01)
					same("slack-off stretch", float64(got.SlackOff.Stretch), float64(want.SlackOff.Stretch), 0.01)
					same("slack-off buckling", float64(got.SlackOff.Buckling), float64(want.SlackOff.Buckling), 0.01)
					same("seal movement", float64(got.SealMovement), float64(want.SealMovement), 0.01)
					same("packer force", float64(got.PackerForce), float64(want.PackerForce), 100)
					same("true force", float64(got.TrueForce), float64(want.TrueForce), 100)
					same("effective force", float64(got.EffectiveForce), float64(want.EffectiveForce), 100)
					if r == movement.Free {
						same("neutral point", float64(got.Neutral), float64(v.Sections[len(v.Sections)-1].BottomMD-want.Neutral), 1)
					}
				}
			})
		}
	}
}

func TestNodesAgreeWithThePackerExample(t *testing.T) {
	// Lubinski, Althouse & Logan 1962: -165.2 in (recalled); the neutral point
	// follows from Ff/w = 66,323 lbf / 0.6401 lb/in.
	_, c := landed(t, packerExample(), 0)
	near(t, "total", c.Movement.Total().In(unit.Inch), -165.2, 0.2)
	near(t, "neutral point above the packer", (10000*unit.Foot - c.Neutral).In(unit.Inch), 103611.13, 5)
	require.Equal(t, c.HelicalLength, c.BuckledLength)
	near(t, "length buckled", c.BuckledLength.In(unit.Inch), 103611.13, 5)
}

func TestSlackOffStandsInTheReference(t *testing.T) {
	v := packerExample()
	v.Seals.Restraint, v.SlackOff = movement.Anchored, 20000*unit.PoundForce
	l, _ := landed(t, v, 0)
	c := l.AsSet()
	// By hand: 6.5 lb/ft over 10,000 ft, less 7.31 lb/gal at the end of 1.8119 in².
	weight := 65000.0
	end := 7.31 * 4.0 / 77 * 10000 * math.Pi / 4 * (2.875*2.875 - 2.441*2.441)
	near(t, "hanger load", c.HangerLoad.In(unit.PoundForce), weight-end-20000, 1e-6*weight)
	near(t, "packer force", c.PackerForce.In(unit.PoundForce), -20000, 1e-6)
	near(t, "effective force", c.EffectiveForce.In(unit.PoundForce), -20000, 1e-6)
}

func TestCaseStepsHoldTheirFields(t *testing.T) {
	v := packerExample()
	v.Seals.Restraint, v.SlackOff = movement.Anchored, 20000*unit.PoundForce
	_, c := landed(t, v, 0)
	workingtest.Check(t, c.Steps())
}

// ExampleString_Land: tubing is pressured up against a plug below the packer to
// set it, bled off, then treated through; the packer takes the difference.
func ExampleString_Land() {
	path, err := hydrostatics.Vertical(9000 * unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	column := func(surface unit.Pressure) func(unit.Length) unit.Pressure {
		return func(tvd unit.Length) unit.Pressure {
			return surface + hydrostatics.Pressure(9.2*unit.PoundPerGallon, tvd)
		}
	}
	tubing := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	landed, err := movement.String{
		Sections: []movement.StringSection{{Pipe: tubing, BottomMD: 9000 * unit.Foot, Hole: 6.184 * unit.Inch}},
		Path:     path,
		Seals:    movement.SealBore{Bore: 3.5 * unit.Inch, Restraint: movement.Anchored},
	}.Land(movement.WellProfiles{Inside: column(3500 * unit.PSI), Outside: column(0), Tail: movement.Hanging}, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range []unit.Pressure{0, 5000 * unit.PSI} {
		c, err := landed.Load(movement.WellProfiles{Inside: column(p), Outside: column(0)})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v at surface: free movement %.1f in, packer holds %.0f lbf, hanger %.0f lbf\n",
			p, c.Movement.Total().In(unit.Inch), c.PackerForce.In(unit.PoundForce), c.HangerLoad.In(unit.PoundForce))
	}
	// Output:
	// 0 psi at surface: free movement -13.7 in, packer holds 9843 lbf, hanger 82402 lbf
	// 5000 psi at surface: free movement -68.5 in, packer holds 43928 lbf, hanger 103536 lbf
}

func TestDepthsOutsideTheString(t *testing.T) {
	_, c := landed(t, packerExample(), 0)
	for _, md := range []unit.Length{-1, 10001 * unit.Foot, unit.Length(math.NaN())} {
		_, err := c.At(md)
		require.ErrorIs(t, err, movement.ErrOutsideString)
	}
	var empty movement.Case
	_, err := empty.At(0)
	require.ErrorIs(t, err, movement.ErrOutsideString)
	n, err := c.At(5001 * unit.Foot)
	require.NoError(t, err)
	// Straight between nodes, by hand: weight in air below.
	near(t, "true force", n.True.In(unit.PoundForce), c.TrueForce.In(unit.PoundForce)+6.5*4999, 1e-3)
}

func TestForceStepsAtAShoulder(t *testing.T) {
	_, c := landed(t, combination(), 0)
	for i := range len(c.Nodes) - 1 {
		a, b := c.Nodes[i], c.Nodes[i+1]
		if a.Section == b.Section {
			continue
		}
		require.Equal(t, a.MD, b.MD)
		require.InDelta(t, float64(a.Effective), float64(b.Effective), 1e-6, "the effective force has no step")
		s := combination().Sections
		step := movement.ShoulderForce(a.Inside, a.Outside, s[a.Section].Pipe.OD, s[a.Section].Pipe.ID, s[b.Section].Pipe.OD, s[b.Section].Pipe.ID)
		require.InDelta(t, float64(step), float64(a.True-b.True), 1e-6)
		require.NotZero(t, step)
	}
}

func TestFlowOutsideDragsThePipe(t *testing.T) {
	// Reverse circulation: 0.05 psi/ft lost on the way down the annulus.
	s := vertical(t)
	s.Seals.Bore = s.Sections[0].Pipe.OD // no pressure from outside on the seals
	after := brine(0, 0)
	after.OutsideFriction = []unit.Gradient{0.05 * unit.PSIPerFoot}
	m := load(t, s, brine(0, 0), after, 0).Movement
	// By hand: shear τ on both walls, δ*(Ah - Ao) = τ*π*(Dh + Do), pipe's part τ*π*Do.
	δ, dh, do, di, l := 0.05/12, 6.184, 3.5, 2.992, 108000.0
	as := math.Pi / 4 * (do*do - di*di)
	part := δ * math.Pi / 4 * (dh*dh - do*do) * do / (dh + do)
	near(t, "drag", m.Friction.In(unit.Inch), part*l*l/(2*30e6*as), 1e-9)
	// The mean pressure outside falls by half the loss.
	near(t, "ballooning", m.Ballooning.In(unit.Inch), -2*0.3*l*math.Pi/4*do*do*δ*l/2/(30e6*as), 1e-6)
	near(t, "piston", m.Piston.In(unit.Inch), 0, 1e-9)
	after.OutsideFriction = append(after.OutsideFriction, 1)
	l2, err := s.Land(brine(0, 0), 0)
	require.NoError(t, err)
	_, err = l2.Load(after)
	require.ErrorContains(t, err, "OutsideFriction: has 2")
}
