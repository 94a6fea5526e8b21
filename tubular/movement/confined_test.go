package movement_test

import (
	"fmt"
	"math"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/internal/dimension"
	"completion.example/tubular"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// laid is 2-7/8 in tubing in water in 7 in casing.
func laid(inclination unit.Angle) movement.Confined {
	return movement.Confined{
		Pipe: packerExample().Sections[0].Pipe, Hole: 6.094 * unit.Inch,
		Weight: 0.4727 * unit.PoundPerInch, Inclination: inclination,
	}
}

func ExampleConfined_Sinusoidal() {
	c := laid(90 * unit.Degree)
	fmt.Printf("sinusoidal %.0f lbf, helix possible %.0f lbf, helix full %.0f lbf\n",
		c.Sinusoidal().In(unit.PoundForce), c.HelicalLeast().In(unit.PoundForce), c.Helical().In(unit.PoundForce))
	// Output:
	// sinusoidal 7535 lbf, helix possible 10656 lbf, helix full 13777 lbf
}

func TestSinusoidalOnACurveIsHeAndKyllingstads(t *testing.T) {
	for _, build := range []float64{0.5, 3, 12} {
		c := laid(60 * unit.Degree)
		c.Build = unit.Curvature(build) * unit.DegreePer100Feet
		ei, r := float64(c.Pipe.Material.Young)*float64(c.Pipe.SecondMoment()), float64(c.Clearance())
		k, g := float64(c.Build), float64(c.Weight)*math.Sin(math.Pi/3)
		want := 2 * ei * k / r * (1 + math.Sqrt(1+g*r/(ei*k*k)))
		require.InEpsilon(t, want, float64(c.Sinusoidal()), 1e-12)
	}
}

func TestSinusoidalSolvesItsEquation(t *testing.T) {
	ei := float64(laid(0).Pipe.Material.Young) * float64(laid(0).Pipe.SecondMoment())
	for _, build := range []float64{-8, -1, 0, 1, 8} {
		for _, turn := range []float64{0, 1e-9, 0.5, 6} {
			for _, inc := range []float64{0, 1, 45, 90} {
				c := laid(unit.Angle(inc) * unit.Degree)
				c.Build, c.Turn = unit.Curvature(build)*unit.DegreePer100Feet, unit.Curvature(turn)*unit.DegreePer100Feet
				f := c.Sinusoidal()
				wc := float64(c.Contact(-f))
				if f == 0 {
					require.Zero(t, wc)
					continue
				}
				require.InEpsilonf(t, 4*ei*wc/float64(c.Clearance()), float64(f)*float64(f), 1e-9, "build %g, turn %g, inclination %g: %v", build, turn, inc, f)
			}
		}
	}
}

func TestSinusoidalIsContinuousWithoutTurn(t *testing.T) {
	for _, build := range []float64{-8, -1, 0, 1, 8} {
		c := laid(50 * unit.Degree)
		c.Build = unit.Curvature(build) * unit.DegreePer100Feet
		closed := c.Sinusoidal()
		c.Turn = 1e-12
		require.InEpsilon(t, float64(closed), float64(c.Sinusoidal()), 1e-8, "build %g", build)
	}
}

func TestBuildHoldsThePipeDownAndDropLiftsIt(t *testing.T) {
	c := laid(50 * unit.Degree)
	straight := c.Sinusoidal()
	c.Build = 2 * unit.DegreePer100Feet
	require.Greater(t, c.Sinusoidal(), straight)
	c.Build = -c.Build
	require.Less(t, c.Sinusoidal(), straight)
	// Tension pulls a building pipe to the high side: at w*sinθ/θ' it hangs free.
	c.Build = 2 * unit.DegreePer100Feet
	lift := unit.Force(float64(c.Weight) * math.Sin(float64(c.Inclination)) / float64(c.Build))
	require.InDelta(t, 0, float64(c.Contact(lift)), 1e-9)
}

func TestBucklingFormulasAreHomogeneous(t *testing.T) {
	p := packerExample().Sections[0].Pipe
	curved := laid(50 * unit.Degree)
	curved.Build, curved.Turn = 2*unit.DegreePer100Feet, 0
	dimension.Check(t, dimension.Free, movement.Confined.Sinusoidal, curved)
	dimension.Check(t, dimension.Free, movement.Confined.Contact, curved, -9000*unit.PoundForce)
	h := movement.Helix{Pipe: p, Hole: 6.094 * unit.Inch, Compression: 30000 * unit.PoundForce}
	dimension.Check(t, dimension.Free, movement.Helix.Pitch, h)
	dimension.Check(t, dimension.Free, movement.Helix.Strain, h)
	dimension.Check(t, dimension.Free, movement.Helix.Contact, h)
	dimension.Check(t, dimension.Free, movement.Helix.BendingStress, h)
	dimension.Check(t, dimension.Free, movement.Helix.LongestTool, h, 1.9*unit.Inch)
	dimension.Check(t, dimension.Free, movement.HelicalShortening, p, 500*unit.Foot, 1.6*unit.Inch, 900*unit.PoundForce, -30000*unit.PoundForce)
	dimension.Check(t, dimension.Free, movement.Ballooning, p, 500*unit.Foot, 2000*unit.PSI, 300*unit.PSI)
	dimension.Check(t, dimension.Free, movement.FlowDrag, p, 500*unit.Foot, 0.1*unit.PSIPerFoot)
	dimension.Check(t, dimension.Free, movement.End.Force, movement.End{Bore: 3 * unit.Inch, OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Inside: 300 * unit.PSI, Outside: 70 * unit.PSI, Below: 20 * unit.PSI})
}

func TestHelix(t *testing.T) {
	p := packerExample().Sections[0].Pipe
	h := movement.Helix{Pipe: p, Hole: 6.094 * unit.Inch, Compression: 66323 * unit.PoundForce}
	// Lubinski, Althouse & Logan 1962, formulas by hand: I = 1.6109 in4, r = 1.6095 in.
	near(t, "pitch", h.Pitch().In(unit.Inch), math.Pi*math.Sqrt(8*30e6*1.6109/66323), 0.01)
	near(t, "bending stress", h.BendingStress().In(unit.PSI), 2.875*1.6095*66323/(4*1.6109), 2)
	near(t, "bending by curvature", float64(h.BendingStress()), float64(movement.BendingStress(p, h.Curvature())), 1e-6)
	near(t, "contact", h.Contact().In(unit.PoundPerInch), 1.6095*66323*66323/(4*30e6*1.6109), 0.01)
	// The curvature of a helix of that radius and pitch, r*q²/(1 + r²q²), is the
	// same where the pitch is long.
	q := 2 * math.Pi / h.Pitch().In(unit.Inch)
	near(t, "curvature", float64(h.Curvature())*unit.Inch.In(unit.Metre), 1.6095*q*q, 1e-7)
	// Strain from the same geometry: 1 - cos of the lead angle.
	near(t, "strain", h.Strain(), -1.6095*1.6095*q*q/2, 1e-7)
}

func TestLongestToolOnAWorkedCircle(t *testing.T) {
	// By hand: play 0.375 in; κ = r*F/(2*E*I).
	h := movement.Helix{Pipe: packerExample().Sections[0].Pipe, Hole: 6.094 * unit.Inch, Compression: 30000 * unit.PoundForce}
	got, limited := h.LongestTool(2.066 * unit.Inch)
	require.True(t, limited)
	κ := 1.6095 * 30000 / (2 * 30e6 * 1.6109)
	near(t, "length", got.In(unit.Inch), math.Sqrt(8*0.375/κ), 0.02)
	_, limited = movement.Helix{Pipe: h.Pipe, Hole: 3 * unit.Inch, Compression: h.Compression}.LongestTool(2.066 * unit.Inch)
	require.False(t, limited, "the helix is narrower than the play: any length passes")
	// Any length from where half the play is just the helix's radius, 1/32 m.
	exact := movement.Helix{Pipe: tubular.Pipe{OD: 0.1875, ID: 0.15625, Material: h.Pipe.Material}, Hole: 0.25, Compression: h.Compression}
	_, limited = exact.LongestTool(0.09375)
	require.False(t, limited)
	_, limited = exact.LongestTool(unit.Length(math.Nextafter(0.09375, 1)))
	require.True(t, limited)
	zero, limited := h.LongestTool(2.5 * unit.Inch)
	require.True(t, limited)
	require.Zero(t, zero)
	_, limited = movement.Helix{Pipe: h.Pipe, Hole: h.Hole}.LongestTool(2 * unit.Inch)
	require.False(t, limited, "no compression, no helix")
}

// TestLongestToolPassesTheTrueHelix lays a stiff cylinder of that length into
// the helix itself: along the chord that halves the sagitta.
func TestLongestToolPassesTheTrueHelix(t *testing.T) {
	for _, load := range []float64{5000, 30000, 90000} {
		h := movement.Helix{Pipe: packerExample().Sections[0].Pipe, Hole: 6.094 * unit.Inch, Compression: unit.Force(load) * unit.PoundForce}
		const dt = 2.2
		l, limited := h.LongestTool(dt * unit.Inch)
		require.True(t, limited)
		r, q := h.Hole.In(unit.Inch)/2-2.875/2, 2*math.Pi/h.Pitch().In(unit.Inch)
		half := q * l.In(unit.Inch) / 2
		a, b := r*(1+math.Cos(half))/2, r*math.Sin(half)/half
		worst := 0.0
		for i := range 1001 {
			u := half * float64(i) / 1000
			worst = math.Max(worst, math.Hypot(r*math.Cos(u)-a, r*math.Sin(u)-b*u))
		}
		require.LessOrEqual(t, worst, (2.441-dt)/2*1.001, "load %g", load)
		require.Greater(t, worst, (2.441-dt)/2*0.95, "load %g: not needlessly short", load)
	}
}

func TestEffectiveForceAtTheEnd(t *testing.T) {
	e := movement.End{Bore: 3.25 * unit.Inch, OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Inside: 12000 * unit.PSI, Outside: 4800 * unit.PSI, Below: 12000 * unit.PSI}
	p := tubular.Pipe{OD: e.OD, ID: e.ID, Material: tubular.Steel()}
	near(t, "effective", float64(e.Effective()), float64(p.EffectiveForce(tubular.Load{Axial: e.Force(), Inside: e.Inside, Outside: e.Outside})), 1e-6)
}

func TestBucklingStepsHoldTheirValues(t *testing.T) {
	for _, c := range []movement.Confined{laid(0), laid(35 * unit.Degree), laid(90 * unit.Degree)} {
		workingtest.Check(t, c.Steps())
	}
	curved := laid(35 * unit.Degree)
	curved.Build = unit.DegreePer100Feet
	workingtest.Check(t, curved.Steps())
	curved.Turn = -2 * unit.DegreePer100Feet
	workingtest.Check(t, curved.Steps())
	workingtest.Check(t, movement.Helix{Pipe: curved.Pipe, Hole: curved.Hole, Compression: 9000 * unit.PoundForce}.Steps())
}

func TestPipeLiesAsItsLoadSays(t *testing.T) {
	c := laid(90 * unit.Degree)
	fp := c.Sinusoidal()
	require.Equal(t, movement.Straight, c.Under(fp).Mode, "tension")
	for _, at := range []struct {
		load float64
		mode movement.Mode
	}{{0, movement.Straight}, {0.999, movement.Straight}, {1.001, movement.Sinusoidal}, {2.827, movement.Sinusoidal}, {2.83, movement.Helical}, {9, movement.Helical}} {
		f := unit.Force(at.load) * fp
		got := c.Under(-f)
		require.Equal(t, at.mode, got.Mode, "%g", at.load)
		require.InEpsilon(t, float64(fp), float64(got.Onset), 1e-12)
		h := movement.Helix{Pipe: c.Pipe, Hole: c.Hole, Compression: f}
		switch at.mode {
		case movement.Straight:
			require.Zero(t, got.Strain)
			require.Equal(t, c.Contact(-f), got.Contact)
		case movement.Sinusoidal:
			require.Less(t, got.Strain, 0.0)
			require.Greater(t, got.Strain, h.Strain(), "less than a helix shortens")
			require.Less(t, got.Bending, h.BendingStress()*1.2604)
		case movement.Helical:
			require.InEpsilon(t, h.Strain(), got.Strain, 1e-12)
			require.InEpsilon(t, float64(h.Contact()), float64(got.Contact), 1e-12)
			require.InEpsilon(t, float64(h.BendingStress()), float64(got.Bending), 1e-12)
		}
	}
	require.Equal(t, movement.Helical, laid(0).Under(-1).Mode, "a vertical hole has no critical load here")
	filled := laid(90 * unit.Degree)
	filled.Hole = filled.Pipe.OD
	require.Equal(t, movement.Straight, filled.Under(-1e9).Mode)
	// By hand at 1.5 times the load: 1.5^0.08 * 0.5^0.92 = 0.5459.
	require.InEpsilon(t, 0.7285*0.54591/1.5*movement.Helix{Pipe: c.Pipe, Hole: c.Hole, Compression: 1.5 * fp}.Strain(), c.Under(-1.5*fp).Strain, 1e-4)
}

func TestNodesLieAsTheClosedFormSays(t *testing.T) {
	s := deviated(t, 0)
	c := load(t, s, brine(0, 0), brine(6000*unit.PSI, 0), 0)
	modes := map[movement.Mode]int{}
	for i, n := range c.Nodes {
		if i == 0 || c.Nodes[i-1].Section != n.Section {
			continue
		}
		a, err := s.Path.At(c.Nodes[i-1].MD)
		require.NoError(t, err)
		b, err := s.Path.At(n.MD)
		require.NoError(t, err)
		x := s.Sections[n.Section]
		l := b.MD - a.MD
		bend := math.Acos(math.Min(1, math.Cos(float64(a.Inclination))*math.Cos(float64(b.Inclination))+
			math.Sin(float64(a.Inclination))*math.Sin(float64(b.Inclination))*math.Cos(float64(b.Azimuth-a.Azimuth))))
		build := float64(b.Inclination - a.Inclination)
		got := movement.Confined{
			Pipe: x.Pipe, Hole: x.Hole, Weight: n.Weight, Inclination: b.Inclination,
			Build: unit.Curvature(build / float64(l)), Turn: unit.Curvature(math.Sqrt(max(0, bend*bend-build*build)) / float64(l)),
		}.Under(n.Effective)
		require.Equal(t, n.Mode, got.Mode)
		require.InDelta(t, float64(n.Contact), float64(got.Contact), 1e-3*(1+float64(n.Contact)))
		require.InDelta(t, float64(n.Bending), float64(got.Bending), 1e-3*float64(n.Bending)+1e4)
		modes[n.Mode]++
	}
	require.Len(t, modes, 2, "%v", modes)
}

// A pipe at a depth of a path has its inclination there, and the build and turn of the
// arc that it lies in: 3 deg/100 ft of build in the plane, and in a turn sin(θ)·Δφ of it
// across (geometry).
func TestConfinedAtADepthOfAPath(t *testing.T) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 1000 * unit.Foot}, {MD: 3000 * unit.Foot, Inclination: 60 * unit.Degree},
		{MD: 4000 * unit.Foot, Inclination: 60 * unit.Degree, Azimuth: 20 * unit.Degree}, {MD: 5000 * unit.Foot, Inclination: 60 * unit.Degree, Azimuth: 20 * unit.Degree}})
	require.NoError(t, err)
	c := movement.Confined{Hole: 6 * unit.Inch}
	build, err := c.At(path, 2000*unit.Foot)
	require.NoError(t, err)
	require.InDelta(t, 30, build.Inclination.In(unit.Degree), 1e-9)
	require.InDelta(t, 3, build.Build.In(unit.DegreePer100Feet), 1e-6)
	require.InDelta(t, 0, build.Turn.In(unit.DegreePer100Feet), 1e-6)
	require.Equal(t, c.Hole, build.Hole)
	turn, err := c.At(path, 3500*unit.Foot)
	require.NoError(t, err)
	dogleg := 2 * math.Asin(math.Sin(60*math.Pi/180)*math.Sin(10*math.Pi/180)) * 18 / math.Pi // deg/100 ft
	require.InDelta(t, dogleg, turn.Turn.In(unit.DegreePer100Feet), 1e-3*dogleg)
	hold, err := c.At(path, 5000*unit.Foot)
	require.NoError(t, err)
	require.InDelta(t, 0, hold.Build.In(unit.DegreePer100Feet), 1e-6)
	_, err = c.At(path, 6000*unit.Foot)
	require.Error(t, err)
	_, err = c.At(nil, 0)
	require.ErrorContains(t, err, "Path")
}

func ExampleConfined_At() {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 1000 * unit.Foot}, {MD: 3000 * unit.Foot, Inclination: 60 * unit.Degree}})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := movement.Confined{Pipe: tubular.Pipe{OD: 2.875 * unit.Inch, ID: 2.441 * unit.Inch, Weight: 6.5 * unit.PoundPerFoot, Material: tubular.Steel()},
		Hole: 6.094 * unit.Inch, Weight: 5.7 * unit.PoundPerFoot}.At(path, 2500*unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Inclination.Rounded(3), c.Build.Rounded(3), c.Sinusoidal().Rounded(3))
	// Output:
	// 45 deg 3 deg/100ft 9491 lbf
}
