package tubular_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular"
	"github.com/stretchr/testify/require"
)

func anyLoad(r *rand.Rand) tubular.Load {
	l := tubular.Load{
		Axial:   unit.Force(r.NormFloat64()) * 100 * unit.Kilopound,
		Inside:  unit.Pressure(r.Float64()) * 10 * unit.KSI,
		Outside: unit.Pressure(r.Float64()) * 10 * unit.KSI,
	}
	if r.IntN(2) == 0 {
		l.Curvature = unit.Curvature(r.NormFloat64()) * 5 * unit.DegreePer100Feet
	}
	if r.IntN(2) == 0 {
		l.Torque = unit.Torque(r.NormFloat64()) * 5000 * unit.FootPoundForce
	}
	return l
}

func TestStressBoundaries(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	p := graded(wall(3.5, 0.254), 80*unit.KSI, 95*unit.KSI)
	As := float64(p.SteelArea())
	for range 200 {
		l := anyLoad(r)
		s := p.Stresses(l)
		near(t, -float64(l.Inside), float64(s.Inner.Radial), 1e-10, "the pressure itself at the inner wall")
		near(t, -float64(l.Outside), float64(s.Outer.Radial), 1e-10, "the pressure itself at the outer wall")
		near(t, float64(s.Inner.Radial+s.Inner.Hoop), float64(s.Outer.Radial+s.Outer.Hoop), 1e-8, "Lamé: the sum is constant")
		workingtest.Check(t, s.Steps())

		// Balance of a half pipe: the hoop stress integrated over the wall holds the
		// pressures. Simpson on the smooth stress.
		ri, ro := float64(p.ID)/2, float64(p.OD)/2
		mid := (ri + ro) / 2
		A := float64(s.Inner.Radial+s.Inner.Hoop) / 2
		B := (float64(s.Inner.Hoop) - A) * ri * ri
		hoop := (ro - ri) / 6 * (float64(s.Inner.Hoop) + 4*(A+B/(mid*mid)) + float64(s.Outer.Hoop))
		require.InDelta(t, float64(l.Inside)*ri-float64(l.Outside)*ro, hoop, 1e-4*float64(l.Inside+l.Outside)*ro)

		// Same pressure on both sides and no effective force: von Mises stress is zero.
		even := tubular.Load{Inside: l.Inside, Outside: l.Inside, Axial: -unit.Force(float64(l.Inside) * As)}
		require.Less(t, math.Abs(float64(p.Stresses(even).VonMises())), 1e-6*float64(p.Material.Yield))
	}
}

func TestBendingAndTorsionByHand(t *testing.T) {
	p := graded(bore(2.875, 2.441), 80*unit.KSI, 95*unit.KSI)
	// The field's formula σb = 218 · D · DLS, psi, in and deg/100 ft: 218.166 unrounded
	// (E/2 · π/180/1200; 218 is in every casing handbook, common practice).
	s := p.Stresses(tubular.Load{Curvature: 10 * unit.DegreePer100Feet})
	require.InDelta(t, 218.166*2.875*10, s.Outer.Bending.In(unit.PSI), 0.05)
	near(t, float64(s.Outer.Bending), float64(s.Outer.VonMises), 1e-12)
	require.Equal(t, s, p.Stresses(tubular.Load{Curvature: 10 * unit.DegreePer100Feet}))
	bentBack := p.Stresses(tubular.Load{Curvature: -10 * unit.DegreePer100Feet})
	require.Equal(t, s.Outer.VonMises, bentBack.Outer.VonMises, "the sense of a bend does not matter")

	// Torsion by hand: 1000 ft·lbf = 12000 in·lbf; J = 3.2217 in⁴;
	// τ = 12000 · 1.4375/3.2217 = 5354 psi, von Mises √3 times it.
	tq := p.Stresses(tubular.Load{Torque: 1000 * unit.FootPoundForce})
	require.InDelta(t, 5354, tq.Outer.Shear.In(unit.PSI), 1)
	near(t, math.Sqrt(3)*float64(tq.Outer.Shear), float64(tq.Outer.VonMises), 1e-12)
}

func TestHelixBendingStress(t *testing.T) {
	// Lubinski et al. 1962 give the bending stress of a helix as D r F / (4 I).
	p := bore(2.875, 2.441)
	r, F := 1.6095*unit.Inch, -20*unit.Kilopound
	s := p.Stresses(tubular.Load{Curvature: p.HelixCurvature(r, F)})
	want := float64(p.OD) * float64(r) * 20 * float64(unit.Kilopound) / (4 * float64(p.SecondMoment()))
	near(t, want, float64(s.Outer.Bending), 1e-12)
}

// TestPreparedBody holds the prepared identity against the textbook form.
func TestPreparedBody(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		od := 1 + 12*r.Float64()
		p := graded(wall(od, od*(0.02+0.2*r.Float64())), 80*unit.KSI, 95*unit.KSI)
		b, err := p.Prepare()
		require.NoError(t, err)
		l := anyLoad(r)
		near(t, float64(p.Stresses(l).VonMises()), float64(b.VonMises(l)), 1e-10)

		l.Curvature, l.Torque = 0, 0
		near(t, float64(p.Stresses(l).VonMises()), float64(b.StraightVonMises(l.Axial, l.Inside, l.Outside)), 1e-10)

		σa := unit.Pressure(float64(l.Axial) / float64(p.SteelArea()))
		if c, err := p.CollapseUnderLoad(σa, l.Inside); err == nil {
			near(t, float64(c.Pressure), float64(b.Collapse(σa, l.Inside)), 1e-12)
		}
	}
	b, err := graded(wall(7, 0.362), 80*unit.KSI, 95*unit.KSI).Prepare()
	require.NoError(t, err)
	require.True(t, math.IsNaN(float64(b.VonMises(tubular.Load{Axial: unit.Force(math.NaN())}))))
	require.Zero(t, float64(b.VonMises(tubular.Load{})))
	_, err = tubular.Pipe{}.Prepare()
	require.Error(t, err)
	// Its own continuation towards the yield strength: continuous, down to zero.
	last := math.Inf(1)
	for s := 0.0; s <= 90; s += 0.01 {
		pc := float64(b.Collapse(unit.Pressure(s)*unit.KSI, 0))
		require.LessOrEqual(t, pc, last)
		require.True(t, s == 0 || last-pc < 50*float64(unit.PSI), "jump at %v ksi", s)
		last = pc
	}
	require.Zero(t, last)
}

func TestUsage(t *testing.T) {
	p := graded(wall(7, 0.362), 80*unit.KSI, 95*unit.KSI)
	b, err := p.Prepare()
	require.NoError(t, err)
	r, err := p.Ratings()
	require.NoError(t, err)
	f := tubular.NorwegianShelf()

	require.Equal(t, tubular.Usage{}, b.Usage(tubular.Load{}, f), "no load, no usage")

	u := b.Usage(tubular.Load{Inside: r.InternalYield / 1.1}, f)
	near(t, 1, u.Burst, 1e-12)
	require.Zero(t, u.Collapse)
	u = b.Usage(tubular.Load{Outside: r.Collapse.Pressure / 2}, f)
	near(t, 0.55, u.Collapse, 1e-12)
	require.Zero(t, u.Burst)
	u = b.Usage(tubular.Load{Axial: -r.BodyYield}, f)
	near(t, 1.25, u.Axial, 1e-12)
	near(t, 1.25, u.Triaxial, 1e-12, "axial force alone")
	require.False(t, u.Within())

	limit, most := tubular.Usage{Burst: 0.1, Collapse: 0.5, Axial: 0.3, Triaxial: 0.4}.Governing()
	require.Equal(t, tubular.CollapseLimit, limit)
	require.Equal(t, 0.5, most)
	limit, _ = tubular.Usage{Triaxial: math.NaN()}.Governing()
	require.Equal(t, tubular.TriaxialLimit, limit, "not a number is never safe")
	require.False(t, tubular.Usage{Triaxial: math.NaN()}.Within())
	require.True(t, tubular.Usage{Axial: 1}.Within())

	beyond := b.Usage(tubular.Load{Axial: 2 * r.BodyYield, Outside: unit.PSI}, f)
	require.Equal(t, 1e6, beyond.Collapse)
	require.False(t, b.Usage(tubular.Load{Inside: unit.Pressure(math.NaN())}, f).Within())
}

func TestDesignFactors(t *testing.T) {
	require.NoError(t, tubular.WithoutReserve().Validate())
	require.NoError(t, tubular.NorwegianShelf().Validate())
	err := tubular.DesignFactors{Burst: 0.9, Collapse: math.NaN(), Axial: 11}.Validate()
	for _, field := range []string{"Burst: is 0.9", "Collapse: is NaN", "Axial: is 11", "Triaxial: is 0"} {
		require.ErrorContains(t, err, field)
	}
	for l := tubular.BurstLimit; l <= tubular.TriaxialLimit; l++ {
		text, err := l.MarshalText()
		require.NoError(t, err)
		var back tubular.Limit
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, l, back)
	}
	_, err = tubular.Limit(7).MarshalText()
	require.Error(t, err)
	var l tubular.Limit
	require.Error(t, l.UnmarshalText([]byte("luck")))
	require.Equal(t, "Limit(7)", tubular.Limit(7).String())
}

func TestEnvelope(t *testing.T) {
	p := graded(wall(7, 0.362), 80*unit.KSI, 95*unit.KSI)
	b, err := p.Prepare()
	require.NoError(t, err)
	for _, backing := range []unit.Pressure{0, 3 * unit.KSI} {
		e, err := p.Envelope(tubular.Outline{Factors: tubular.NorwegianShelf(), Backing: backing, Points: 64})
		require.NoError(t, err)
		require.Len(t, e.Triaxial, 65)
		require.Equal(t, e.Triaxial[0], e.Triaxial[64], "closed")
		for _, at := range e.Triaxial {
			l := tubular.Load{Axial: at.Axial, Inside: backing, Outside: backing}
			if at.Differential > 0 {
				l.Inside += at.Differential
			} else {
				l.Outside -= at.Differential
			}
			near(t, float64(p.Material.Yield)/1.25, float64(b.VonMises(l)), 1e-12, "every point has the allowed stress")
		}
		require.NotEmpty(t, e.Collapse)
		for _, at := range e.Collapse {
			u := b.Usage(tubular.Load{Axial: at.Axial, Inside: backing, Outside: backing - at.Differential}, tubular.NorwegianShelf())
			near(t, 1, u.Collapse, 1e-12)
		}
		near(t, float64(p.BodyYield())/1.25, float64(e.BodyYield), 1e-12)
		near(t, float64(p.InternalYield())/1.1, float64(e.InternalYield), 1e-12)
	}
	usual, err := p.Envelope(tubular.Outline{Factors: tubular.WithoutReserve()})
	require.NoError(t, err)
	require.Len(t, usual.Triaxial, 181)

	_, err = tubular.Pipe{}.Envelope(tubular.Outline{Points: 3, Backing: unit.Pressure(math.NaN())})
	for _, field := range []string{"tubular: OD: is", "Outline.Factors.Burst", "Outline.Points: is 3", "Outline.Backing"} {
		require.ErrorContains(t, err, field)
	}
}

func ExamplePipe_Stresses() {
	// Lamé's problem with closed ends: 30 and 50 mm radius, 20 MPa inside and 5 MPa
	// outside; the axial stress is 3.44 MPa.
	p := tubular.Pipe{OD: 100 * unit.Millimetre, ID: 60 * unit.Millimetre, Material: tubular.Steel()}
	l := tubular.Load{Inside: 20 * unit.Megapascal, Outside: 5 * unit.Megapascal}
	l.Axial = -p.EffectiveForce(l)
	s := p.Stresses(l)
	fmt.Printf("axial %.2f, hoop %.3f inside and %.3f outside, von Mises %.2f MPa\n", s.Inner.Axial.In(unit.Megapascal),
		s.Inner.Hoop.In(unit.Megapascal), s.Outer.Hoop.In(unit.Megapascal), s.VonMises().In(unit.Megapascal))
	// Output: axial 3.44, hoop 26.875 inside and 11.875 outside, von Mises 40.59 MPa
}

func ExampleBody_Usage() {
	p := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Material: tubular.Steel().WithStrength(80*unit.KSI, 95*unit.KSI)}
	b, err := p.Prepare()
	if err != nil {
		fmt.Println(err)
		return
	}
	u := b.Usage(tubular.Load{Axial: 80 * unit.Kilopound, Inside: 6000 * unit.PSI, Outside: 1000 * unit.PSI}, tubular.NorwegianShelf())
	limit, most := u.Governing()
	fmt.Printf("%v %.0f %%\n", limit, 100*most)
	// Output: triaxial 58 %
}

func ExamplePipe_Envelope() {
	p := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Material: tubular.Steel().WithStrength(80*unit.KSI, 95*unit.KSI)}
	e, err := p.Envelope(tubular.Outline{Factors: tubular.WithoutReserve(), Points: 4000})
	if err != nil {
		fmt.Println(err)
		return
	}
	top := e.Triaxial[0]
	for _, at := range e.Triaxial {
		if at.Differential > top.Differential {
			top = at
		}
	}
	fmt.Println("greatest differential", top.Differential.Rounded(4), "at", top.Axial.Rounded(4))
	// Output: greatest differential 12435 psi at 87428 lbf
}
