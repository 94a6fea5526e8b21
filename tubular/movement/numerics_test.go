package movement_test

import (
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// TestRefiningNodesConverges halves the spacing on a curved path with curved
// pressures and temperatures: the error of the trapezoid goes with its square.
func TestRefiningNodesConverges(t *testing.T) {
	gas := func(d unit.Length) unit.Pressure {
		return 3000 * unit.PSI * unit.Pressure(math.Exp(d.In(40000*unit.Foot)))
	}
	hot := movement.WellProfiles{
		Inside:  gas,
		Outside: brine(0, 0).Outside,
		Temperature: func(d unit.Length) unit.Temperature {
			return unit.Fahrenheit(120 + 40*math.Sqrt(1+d.In(5000*unit.Foot)))
		},
	}
	length := func(spacing unit.Length) movement.Movement {
		s := deviated(t, 0)
		s.Spacing = spacing
		return load(t, s, brine(0, 0), hot, 0).Movement
	}
	fine := length(2 * unit.Foot)
	order := func(name string, of func(movement.Movement) unit.Length) {
		coarse, half := math.Abs(float64(of(length(200*unit.Foot))-of(fine))), math.Abs(float64(of(length(100*unit.Foot))-of(fine)))
		p := math.Log2(coarse / half)
		t.Logf("%s: order %.2f, error at 100 ft %.1e m", name, p, half)
		require.InDelta(t, 2, p, 0.1, name)
	}
	order("ballooning", func(m movement.Movement) unit.Length { return m.Ballooning })
	order("thermal", func(m movement.Movement) unit.Length { return m.Thermal })
	require.Equal(t, fine.Piston.Rounded(9), length(200*unit.Foot).Piston.Rounded(9))

	// Buckling has kinks where its mode changes; the split keeps it near order 2.
	squeeze := func(spacing unit.Length) float64 {
		s := deviated(t, 0)
		s.Spacing = spacing
		return float64(load(t, s, brine(0, 0), brine(6000*unit.PSI, 0), 0).Movement.Buckling)
	}
	best := squeeze(2 * unit.Foot)
	coarse, half := math.Abs(squeeze(200*unit.Foot)-best), math.Abs(squeeze(50*unit.Foot)-best)
	t.Logf("buckling: order %.2f, error at 50 ft %.1e of %.2f m", math.Log2(coarse/half)/2, half, best)
	require.Greater(t, math.Log2(coarse/half)/2, 1.0)
	require.Less(t, half, 0.002*math.Abs(best))
}

// TestInclinedShorteningIsMitchellsIntegral holds the nodes against the strain
// integrated on its own in a straight inclined hole.
func TestInclinedShorteningIsMitchellsIntegral(t *testing.T) {
	s := slant(t)
	c := load(t, s, brine(0, 0), brine(5500*unit.PSI, 0), 0)
	b := s.Sections[0]
	ei, r := float64(b.Pipe.Material.Young)*float64(b.Pipe.SecondMoment()), float64(b.Hole-b.Pipe.OD)/2
	last := c.Nodes[len(c.Nodes)-1]
	w := float64(last.Weight)
	fp := math.Sqrt(4 * ei * w * math.Sin(math.Pi/6) / r)
	require.InEpsilon(t, fp, float64(last.Onset), 1e-9)
	sum, n := 0.0, 200000
	h := float64(b.BottomMD) / float64(n)
	for i := range n {
		f := -float64(last.Effective) - w*math.Cos(math.Pi/6)*(float64(i)+0.5)*h
		switch {
		case f > 2*math.Sqrt2*fp:
			sum += f * h
		case f > fp:
			sum += 0.7285 * math.Pow(f, 0.08) * math.Pow(f-fp, 0.92) * h
		}
	}
	want := -r * r / (4 * ei) * sum
	require.NotZero(t, c.HelicalLength)
	require.Greater(t, c.BuckledLength, c.HelicalLength)
	require.InEpsilon(t, want, float64(c.Movement.Buckling), 1e-4)
}

func TestAnchoredAlwaysHolds(t *testing.T) {
	// Every seal, any squeeze, on every kind of hole: the string's length answers.
	for _, s := range []movement.String{vertical(t), deviated(t, 0), slant(t), level(t)} {
		s.Seals.Restraint = movement.Anchored
		l, err := s.Land(brine(0, 0), 0)
		require.NoError(t, err)
		for _, p := range []float64{-9000, -2000, 0, 500, 3000, 9000} {
			for _, f := range []float64{20, 70, 200, 450} {
				after := fluids(9.2*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, max(0, unit.Pressure(p)*unit.PSI), max(0, unit.Pressure(-p)*unit.PSI), unit.Fahrenheit(f), 1.5)
				c, err := l.Load(after)
				require.NoError(t, err)
				require.Zero(t, c.SealMovement)
				// Proof by another way: land the free string there with the force as slack-off.
				if !c.Snapping {
					total := c.Movement.Total() + elastic(s, c.PackerForce) + c.BuckledShortening - freeBuckling(t, s, after)
					require.InDelta(t, 0, float64(total), 1e-8)
				}
			}
		}
	}
}

func elastic(s movement.String, f unit.Force) unit.Length {
	var sum, top unit.Length
	for _, x := range s.Sections {
		sum += x.Pipe.Stretch(f, x.BottomMD-top)
		top = x.BottomMD
	}
	return sum
}

func freeBuckling(t *testing.T, s movement.String, after movement.WellProfiles) unit.Length {
	s.Seals.Restraint = movement.Free
	return load(t, s, brine(0, 0), after, 0).BuckledShortening
}

func TestLevelHoleSnapsAndSaysSo(t *testing.T) {
	// In a level hole every foot has the same force, so the whole length snaps at
	// one load, and heat in between finds no single answer.
	s := level(t)
	s.Sections[0].BottomMD = s.Path.TotalDepth()
	s.Seals.Restraint = movement.Anchored
	l, err := s.Land(brine(0, 0), 0)
	require.NoError(t, err)
	var snaps int
	var last unit.Force
	for f := 70.0; f < 1200; f += 10 {
		c, err := l.Load(fluids(9.2*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, 0, 0, unit.Fahrenheit(f), 1.5))
		require.NoError(t, err)
		require.LessOrEqual(t, c.PackerForce, last+1e-6*unit.PoundForce, "more heat never pushes less")
		last = c.PackerForce
		if c.Snapping {
			snaps++
		}
	}
	require.NotZero(t, snaps)
}

func TestNodesUseWhatTheBodyUses(t *testing.T) {
	s := vertical(t)
	s.Sections[0].Pipe.Material = s.Sections[0].Pipe.Material.WithStrength(80000*unit.PSI, 95000*unit.PSI)
	s.Design = tubular.DesignFactors{Burst: 1.1, Collapse: 1.05, Axial: 1.4, Triaxial: 1.25}
	c := load(t, s, brine(0, 0), brine(6000*unit.PSI, 0), 0)
	most := 0.0
	for _, n := range c.Nodes {
		r, err := s.Sections[0].Pipe.Ratings()
		require.NoError(t, err)
		require.InDelta(t, 1.1*float64((n.Inside-n.Outside)/r.InternalYield), n.Usage.Burst, 1e-12)
		σ := s.Sections[0].Pipe.Stresses(tubular.Load{Axial: n.True, Inside: n.Inside, Outside: n.Outside, Curvature: n.Curvature}).VonMises()
		require.InDelta(t, 1.25*float64(σ/(80000*unit.PSI)), n.Usage.Triaxial, 1e-9)
		_, u := n.Usage.Governing()
		most = max(most, u)
	}
	require.InDelta(t, most, c.Governing.Usage, 1e-15)
	require.Greater(t, c.Governing.DesignFactor(1.25), 0.0)

	// A weak joint governs before the body does.
	s.Sections[0].Joint = 50000 * unit.PoundForce
	weak := load(t, s, brine(0, 0), brine(0, 0), 0)
	require.Equal(t, tubular.ConnectionLimit, weak.Governing.Limit)
	require.InDelta(t, 1.4*weak.HangerLoad.In(50000*unit.PoundForce), weak.Governing.Usage, 1e-12)
}

func TestLoadIntoAllocatesNothing(t *testing.T) {
	if raced {
		t.Skip("the race detector makes pools drop what they keep")
	}
	l, states := thousand(t, movement.Anchored, 5000*unit.PoundForce)
	var c movement.Case
	require.NoError(t, l.LoadInto(&c, states[0]))
	i := 0
	require.Zero(t, testing.AllocsPerRun(20, func() {
		i++
		if err := l.LoadInto(&c, states[i%len(states)]); err != nil {
			panic(err)
		}
	}))
}

// The same in a vertical well, where buckling is Lubinski's helix.
func BenchmarkTenLoadCasesVertical(b *testing.B) {
	s := vertical(b)
	s.Spacing, s.Seals.Restraint = 9*unit.Foot, movement.Anchored
	s.Sections[0].Pipe.Material = s.Sections[0].Pipe.Material.WithStrength(80000*unit.PSI, 95000*unit.PSI)
	l, err := s.Land(brine(0, 0), 5000*unit.PoundForce)
	require.NoError(b, err)
	_, states := thousand(b, movement.Free, 0)
	for i := range states {
		states[i].Friction = nil // of two sections
	}
	benchmarkLoads(b, l, states)
}

// thousand is a string of about 1,000 nodes, anchored, with ten load cases.
func thousand(t testing.TB, r movement.Restraint, slackOff unit.Force) (*movement.Landed, []movement.WellProfiles) {
	s := deviated(t, 0)
	s.Spacing = 12 * unit.Foot
	s.Seals.Restraint = r
	for k := range s.Sections {
		s.Sections[k].Pipe.Material = s.Sections[k].Pipe.Material.WithStrength(80000*unit.PSI, 95000*unit.PSI)
	}
	l, err := s.Land(brine(0, 0), slackOff)
	require.NoError(t, err)
	var states []movement.WellProfiles
	for i := range 10 {
		flowing := fluids(8.6*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, unit.Pressure(i)*500*unit.PSI, 200*unit.PSI, unit.Fahrenheit(70+10*float64(i)), 1.4)
		flowing.Friction = []unit.Gradient{0.01 * unit.PSIPerFoot, 0.02 * unit.PSIPerFoot}
		states = append(states, flowing)
	}
	return l, states
}

// Ten load cases of an anchored string of 1,000 nodes, most of it sinusoidally
// buckled, so that the packer force is solved for each.
func BenchmarkTenLoadCasesBuckled(b *testing.B) {
	l, states := thousand(b, movement.Anchored, 5000*unit.PoundForce)
	benchmarkLoads(b, l, states)
}

// The same with free seals: forces, buckling and all limits at every node.
func BenchmarkTenLoadCasesFree(b *testing.B) {
	l, states := thousand(b, movement.Free, 0)
	benchmarkLoads(b, l, states)
}

// The same with pressure on the annulus, which keeps all of it from buckling:
// what forces, burst, collapse and triaxial limits alone cost.
func BenchmarkTenLoadCasesUnbuckled(b *testing.B) {
	l, states := thousand(b, movement.Free, 0)
	for i := range states {
		states[i] = fluids(8.6*unit.PoundPerGallon, 9.2*unit.PoundPerGallon, 0, unit.Pressure(i+2)*500*unit.PSI, unit.Fahrenheit(70+10*float64(i)), 1.4)
	}
	c, err := l.Load(states[0])
	require.NoError(b, err)
	require.Zero(b, c.BuckledLength)
	benchmarkLoads(b, l, states)
}

func benchmarkLoads(b *testing.B, l *movement.Landed, states []movement.WellProfiles) {
	var c movement.Case
	b.ReportAllocs()
	for b.Loop() {
		for _, s := range states {
			if err := l.LoadInto(&c, s); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkPackerForceInClosedForm(b *testing.B) {
	v := packerExample()
	v.Seals.Restraint, v.SlackOff = movement.Anchored, 20000*unit.PoundForce
	b.ReportAllocs()
	for b.Loop() {
		if _, err := v.Analyse(); err != nil {
			b.Fatal(err)
		}
	}
}

// TestWeightSeesNoSealOrInterface puts a step of pressure and a change of fluid
// into the annulus: the effective weight on both sides stays that of the fluids.
func TestWeightSeesNoSealOrInterface(t *testing.T) {
	s := slant(t)
	s.Spacing = 250 * unit.Foot
	step, change := 3000*unit.Foot, 5000*unit.Foot
	held := brine(0, 0)
	held.Outside = func(d unit.Length) unit.Pressure {
		switch {
		case d <= step:
			return 1000*unit.PSI + hydrostatics.Pressure(9*unit.PoundPerGallon, d)
		case d <= change:
			return hydrostatics.Pressure(9*unit.PoundPerGallon, d)
		}
		return hydrostatics.Pressure(9*unit.PoundPerGallon, change) + hydrostatics.Pressure(12*unit.PoundPerGallon, d-change)
	}
	l, err := s.Land(held, 0)
	require.NoError(t, err)
	c := l.AsSet()
	for _, n := range c.Nodes {
		ρo := 9 * unit.PoundPerGallon
		if n.TVD > change+unit.Metre {
			ρo = 12 * unit.PoundPerGallon
		}
		want := s.Sections[0].Pipe.BuoyedWeight(9.2*unit.PoundPerGallon, ρo)
		require.InEpsilon(t, float64(want), float64(n.Weight), 1e-6, "at %v", n.TVD)
	}
}
