package packer_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/tubular/drag"
	"completion.example/valve"
	"github.com/stretchr/testify/require"
)

// A band of biting pressures keeps the ends of what is locked in, whichever end of the pressures
// they belong to: under a plug more pressure is more tension, over a chamber less.
func TestBittenTakesTheEnds(t *testing.T) {
	inside := unit.Band[unit.Pressure]{Least: 2000 * unit.PSI, Nominal: 2600 * unit.PSI, Greatest: 3700 * unit.PSI}
	for _, chamber := range []unit.Length{0, 4 * unit.Inch, tubing().ID} {
		l := packer.LockIn{Pipe: tubing(), Length: 9000 * unit.Foot, Chamber: chamber}
		at := func(p unit.Pressure) packer.Locked {
			l := l
			l.Inside = p
			r, err := l.Locked()
			require.NoError(t, err)
			return r
		}
		low, mid, high := at(inside.Least), at(inside.Nominal), at(inside.Greatest)
		b, err := l.Bitten(inside)
		require.NoError(t, err)
		require.Equal(t, mid, b.Nominal)
		require.Equal(t, unit.Band[unit.Force]{Least: min(low.Tension, high.Tension), Nominal: mid.Tension, Greatest: max(low.Tension, high.Tension)}, b.Tension)
		require.Equal(t, unit.Band[unit.Length]{Least: min(low.Stretch, high.Stretch), Nominal: mid.Stretch, Greatest: max(low.Stretch, high.Stretch)}, b.Stretch)
		require.NotEqual(t, b.Tension.Least, b.Tension.Greatest)
	}
}

// In a bend the drag grows with the pull on the joint, which is an effective force: Fe = P − Ap·Δp.
func TestDragInABendIsThatOfTheEffectiveForce(t *testing.T) {
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{}, {MD: 3000 * unit.Foot}, {MD: 6000 * unit.Foot, Inclination: 60 * unit.Degree}, {MD: 9000 * unit.Foot, Inclination: 60 * unit.Degree}})
	require.NoError(t, err)
	hole := holeAlong(t, path)
	r := overpull()
	r.Pull.Path, r.Pull.Inside = path, fluid(9.5*unit.PoundPerGallon, 1500*unit.PSI)
	f := packer.Friction{Least: hole(0.1), Nominal: hole(0.2), Greatest: hole(0.3)}
	band, err := r.DragWith(f)
	require.NoError(t, err)
	push := unit.Force(math.Pi / 4 * math.Pow(float64(4*unit.Inch), 2) * float64(1500*unit.PSI))
	for _, x := range []struct {
		hole       *drag.Prepared
		pins, drag unit.Force
	}{{f.Least, r.Pins.Least, band.Least}, {f.Nominal, r.Pins.Nominal, band.Nominal}, {f.Greatest, r.Pins.Greatest, band.Greatest}} {
		want := x.hole.HookLoad(drag.Pulled, x.pins-push) - x.hole.HookLoad(drag.Rotating, x.pins-push)
		require.InEpsilon(t, float64(want), float64(x.drag), 1e-9)
	}
	for _, missing := range []packer.Friction{{Nominal: f.Nominal, Greatest: f.Greatest}, {Least: f.Least, Greatest: f.Greatest}, {Least: f.Least, Nominal: f.Nominal}} {
		_, err := r.DragWith(missing)
		require.ErrorContains(t, err, "Friction: is incomplete")
	}
}

// A file of an envelope may have a mebibyte and eight levels of brackets.
func TestEnvelopeFileOnItsLimits(t *testing.T) {
	text := `{"vertices": [{"differential": "-5000 psi", "axial": "-50000 lbf"}, {"differential": "5000 psi", "axial": "-50000 lbf"}, {"differential": "0 psi", "axial": "100000 lbf"}]}`
	pad := strings.Repeat(" ", 1<<20-len(text))
	_, err := packer.ReadPolygon(strings.NewReader(text + pad))
	require.NoError(t, err)
	_, err = packer.ReadPolygon(strings.NewReader(text + pad + " "))
	require.ErrorContains(t, err, "more than 1048576 bytes")
	nested := func(n int) error {
		_, err := packer.ReadPolygon(strings.NewReader(`{"vertices": ` + strings.Repeat("[", n-1) + strings.Repeat("]", n-1) + `}`))
		require.Error(t, err)
		return err
	}
	require.NotContains(t, nested(8).Error(), "nested deeper")
	require.ErrorContains(t, nested(9), "nested deeper than 8")
}

// Joints must reach from above the rotary table to the hanger's lower end; of lengths
// that differ by less than a tally's millimetre the fewest pieces win.
func TestMakeUpOnItsEdges(t *testing.T) {
	l := packer.Landing{Tagged: 3000, Height: 2, HangerDepth: 12, HangerLength: 1, Above: 3, Joints: []unit.Length{9, 9}}
	_, err := l.MakeUp()
	require.NoError(t, err, "18 m of joints for 3 + 2 + 12 + 1")
	for _, longer := range []*unit.Length{&l.Height, &l.HangerDepth, &l.HangerLength, &l.Above} {
		*longer += 0.01
		_, err = l.MakeUp()
		require.ErrorContains(t, err, "Joints: come to")
		*longer -= 0.01
	}
	// needed: 9.5 − 3 − 2 − 1 − 0 = 3.5 m with one joint off, by one pup or by two
	l = packer.Landing{Tagged: 3000, Height: 2, HangerDepth: 1, Above: 3, Joints: []unit.Length{9.5, 9.5, 9.5}, Pups: []unit.Length{2, 1.5, 3.5}}
	m, err := l.MakeUp()
	require.NoError(t, err)
	require.Equal(t, []unit.Length{3.5}, m.Pups)
	require.InDelta(t, 2, float64(m.Height), 1e-12)
	l.Pups[2] = 3.5008 // nearer by two pieces, by less than a tally is read to
	m, err = l.MakeUp()
	require.NoError(t, err)
	require.InDelta(t, 0, float64(m.Off), 1e-3)
	l.Pups[2] = 3.4985 // and by more
	m, err = l.MakeUp()
	require.NoError(t, err)
	require.Equal(t, []unit.Length{2, 1.5}, m.Pups)
}

// On an edge a load is inside, with nothing in hand, and a chord at an edge is an answer; what
// isn't a number has no margin, nor has an envelope without corners.
func TestEnvelopeOnItsEdge(t *testing.T) {
	e, err := box().Envelope()
	require.NoError(t, err)
	m := e.Margin(packer.Load{Differential: 5000 * unit.PSI})
	require.Zero(t, m.Distance)
	require.True(t, m.Inside())
	require.Equal(t, 1.0, m.Usage)
	least, greatest, ok := e.DifferentialAt(100 * unit.Kilopound)
	require.True(t, ok)
	require.InDelta(t, 5000, greatest.In(unit.PSI), 1e-9)
	require.InDelta(t, -5000, least.In(unit.PSI), 1e-9)
	_, _, ok = e.DifferentialAt(100.001 * unit.Kilopound)
	require.False(t, ok)
	nan := math.NaN()
	for _, l := range []packer.Load{{Differential: unit.Pressure(nan)}, {Axial: unit.Force(nan)}} {
		m := e.Margin(l)
		require.True(t, math.IsNaN(float64(m.Nearest.Axial)) && math.IsNaN(m.Distance))
	}
	none := &packer.Envelope{}
	require.True(t, math.IsNaN(none.Margin(packer.Load{}).Distance))
	least, _, ok = none.DifferentialAt(0)
	require.False(t, ok)
	require.True(t, math.IsNaN(float64(least)))

	// The first corner alone has both extremes: the scale is still half of each span, 5,000 psi and
	// 75,000 lbf, so that the middle of the box's half is one of them away.
	p := packer.Polygon{Vertices: []packer.Load{
		{Differential: -5000 * unit.PSI, Axial: -50 * unit.Kilopound}, {Differential: 5000 * unit.PSI, Axial: 25 * unit.Kilopound}, {Differential: -2500 * unit.PSI, Axial: 100 * unit.Kilopound},
	}, Limits: []string{"a", "b", "c"}}
	e, err = p.Envelope()
	require.NoError(t, err)
	m = e.Margin(packer.Load{})
	// edge b from (1, 1/3) to (−1/2, 4/3) in spans: its distance from rest is |1·4/3 + 1/2·1/3|/√(1.5² + 1)
	require.InEpsilon(t, min(1.5/math.Sqrt(1.5*1.5+1), math.Abs(-1*1.0/3+2.0/3)/math.Sqrt(4+1), math.Abs(-0.5*-2.0/3+4.0/3)/math.Sqrt(0.25+4)), m.Distance, 1e-12)

	p.Vertices[2].Axial, p.Vertices[1].Axial = -50*unit.Kilopound, -50*unit.Kilopound
	_, err = p.Envelope()
	require.ErrorContains(t, err, "it spans 10000 psi by 0 lbf")
	p = box()
	for i := range p.Vertices {
		p.Vertices[i].Axial += 60 * unit.Kilopound
	}
	_, err = p.Envelope()
	require.ErrorContains(t, err, "the edge after corner 1 (set-down) leaves it outside")
	back := box()
	back.Vertices[2], back.Vertices[3] = back.Vertices[3], back.Vertices[2]
	_, err = back.Envelope()
	require.ErrorIs(t, err, packer.ErrNotConvex)

	// The same clockwise.
	turned := packer.Polygon{Vertices: []packer.Load{box().Vertices[3], box().Vertices[2], box().Vertices[1], box().Vertices[0]}}
	clockwise, err := turned.Envelope()
	require.NoError(t, err)
	e, err = box().Envelope()
	require.NoError(t, err)
	for _, l := range []packer.Load{{}, {Differential: 3000 * unit.PSI, Axial: 90 * unit.Kilopound}, {Differential: 6000 * unit.PSI, Axial: 110 * unit.Kilopound}} {
		require.InEpsilon(t, e.Margin(l).Distance, clockwise.Margin(l).Distance, 1e-12)
		require.InDelta(t, e.Margin(l).Usage, clockwise.Margin(l).Usage, 1e-12)
	}
	for n, ok := range map[int]bool{2: false, 3: true} {
		_, err := packer.Polygon{Vertices: box().Vertices[:n]}.Envelope()
		require.Equal(t, ok, err == nil || !strings.Contains(err.Error(), "there are"), "%v", err)
	}
}

// A limit that goes through a corner of the box, but for rounding, makes no edge of no length.
func TestALimitThatGrazesACorner(t *testing.T) {
	r := ratings()
	r.Up, r.Down = 1e9, 1e9
	whole, err := r.Polygon()
	require.NoError(t, err)
	require.Len(t, whole.Vertices, 4)
	for _, off := range []float64{-1e-12, 0, 1e-12} {
		r.Up = (r.Tension + unit.Force(float64(r.FromBelow)*float64(r.Area))) * unit.Force(1+off)
		p, err := r.Polygon()
		require.NoError(t, err)
		require.Len(t, p.Vertices, 4, "%v", off)
	}
	r.Up *= 1 - 1e-6
	p, err := r.Polygon()
	require.NoError(t, err)
	require.Len(t, p.Vertices, 5)
}

// Two legs of two fluids and two sizes each, with levels below surface and pressures held, worked by
// hand along the columns.
func TestPartedWorkedAlongTheColumns(t *testing.T) {
	const g = 9.80665
	leg := func(level, surface float64, d1, d2, a1, a2 float64) hydrostatics.Leg {
		return hydrostatics.Leg{LevelMD: unit.Length(level), Surface: unit.Pressure(surface),
			Sections: []hydrostatics.LegSection{{BottomMD: 1000, Area: unit.Area(a1)}, {BottomMD: 2500, Area: unit.Area(a2)}},
			Fluids:   []hydrostatics.Stretch{{BottomMD: 800, Density: unit.Density(d1)}, {BottomMD: 2000, Density: unit.Density(d2)}}}
	}
	p := packer.Parted{Open: true, Formation: 180e5, Margin: 10e5,
		Legs: hydrostatics.UTube{PortMD: 2000, Tubing: leg(100, 3e5, 1100, 1200, 0.004, 0.005), Annulus: leg(0, 1e5, 1000, 1050, 0.02, 0.03)}}
	a, err := p.Aftermath()
	require.NoError(t, err)
	tubing := g * (1100*700 + 1200*1200)
	annulus := g * (1000*800 + 1050*1200)
	require.InEpsilon(t, 3e5+tubing-1e5-annulus, float64(a.Differential), 1e-12)
	require.Equal(t, a.Differential, a.Hold)
	require.InEpsilon(t, annulus-180e5, float64(a.Overbalance), 1e-9)
	require.InEpsilon(t, 190e5/(g*2000), float64(a.Kill), 1e-12)
	require.InEpsilon(t, 0.004*1000+0.005*1000+0.02*1000+0.03*1000, float64(a.Circulation), 1e-12)
	require.InEpsilon(t, 0.02*1000+0.03*1000, float64(a.Fill), 1e-12)
	require.Equal(t, hydrostatics.Tubing, a.Falling)
	require.Len(t, a.Steps(), 2)

	p.Legs.Tubing, p.Legs.Annulus = p.Legs.Annulus, p.Legs.Tubing
	b, err := p.Aftermath()
	require.NoError(t, err)
	require.InEpsilon(t, float64(a.Hold), float64(b.Hold), 1e-12)
	require.InEpsilon(t, float64(a.Overbalance), float64(b.Overbalance), 1e-9, "of the lighter column, whichever it is")
	p.Legs.Annulus = p.Legs.Tubing
	b, err = p.Aftermath()
	require.NoError(t, err)
	require.Zero(t, b.Fill)
	require.Zero(t, b.Hold)

	p.Open = false
	for _, x := range []struct{ formation, margin unit.Pressure }{{1, 0}, {0, 1}} {
		p.Formation, p.Margin = x.formation, x.margin
		_, err := p.Aftermath()
		require.ErrorContains(t, err, "must be 0 where Open is not set")
	}
	p.Formation, p.Margin = 0, 0
	b, err = p.Aftermath()
	require.NoError(t, err)
	require.Len(t, b.Steps(), 1)
}

// What hangs above a cut, of two pipes with different fluids in and around them: its weight in air, less
// what pushes on the cut's steel and on the shoulder.
func TestCutInEachPipe(t *testing.T) {
	n := notParted()
	n.Release.Pull, n.Clearance, n.Tried = taper(), 0, 0
	n.Release.Pull.Drag = unit.Exactly(unit.Force(0))
	p := n.Release.Pull
	big, small := p.Sections[0].Pipe, p.Sections[1].Pipe
	for _, md := range []unit.Length{3000 * unit.Foot, 7000 * unit.Foot} {
		n.Intervals = []packer.CutInterval{{Name: "there", TopMD: md - 1, BottomMD: md}}
		o, err := n.Options()
		require.NoError(t, err)
		want := float64(big.WeightInAir())*float64(md) - float64(p.Outside(md))*float64(big.SteelArea())
		if md > 4000*unit.Foot {
			step := p.Sections[0].BottomMD
			want = float64(big.WeightInAir())*float64(step) + float64(small.WeightInAir())*float64(md-step) - float64(p.Outside(md))*float64(small.SteelArea()) -
				float64(p.Outside(step))*float64(big.OuterArea()-small.OuterArea()) + float64(p.Inside(step))*float64(big.InnerArea()-small.InnerArea())
		}
		want -= float64(p.Inside(0)) * float64(big.InnerArea()) // on the closed top
		require.InEpsilon(t, want+float64(p.Block), float64(o.Cut.After), 1e-9, "%v: %v", md, want+float64(p.Block)-float64(o.Cut.After))
		require.Equal(t, o.Cut.After+n.CutPull, o.Cut.Reading)
		require.Equal(t, 9000*unit.Foot-md, o.Cut.Fish)
	}
	// An interval that begins just where the string stops being free is in reach.
	n.FreeMD, n.Intervals = 5000*unit.Foot, []packer.CutInterval{{Name: "at the free point", TopMD: 5000 * unit.Foot, BottomMD: 5001 * unit.Foot}}
	o, err := n.Options()
	require.NoError(t, err)
	require.Equal(t, 5000*unit.Foot, o.Cut.MD)
	n.FreeMD = 9000 * unit.Foot
	_, err = n.Options()
	require.NoError(t, err)
	n.FreeMD = 9000*unit.Foot + 1e-6
	_, err = n.Options()
	require.ErrorContains(t, err, "FreeMD: is")
	n.Release.Pull.Sections = nil
	_, err = n.Options()
	require.ErrorContains(t, err, "Release")
}

// Weight on the hook after a packer comes free under trapped pressure: the balance of a plugged string
// with that pressure below it.
func TestFreedIsTheBalanceOverThatPressure(t *testing.T) {
	u := packer.Unseating{Pull: taper(), Trapped: unit.Within(2000*unit.PSI, 0.1), Reserve: 5 * unit.Kilopound}
	f, err := u.Freed()
	require.NoError(t, err)
	p := u.Pull
	p.Plugged = true
	for below, want := range map[unit.Pressure]unit.Force{u.Trapped.Least: f.Weight.Greatest, u.Trapped.Nominal: f.Weight.Nominal, u.Trapped.Greatest: f.Weight.Least} {
		p.Below = below
		b, err := p.Balance(0)
		require.NoError(t, err)
		require.InEpsilon(t, float64(b.Reading-p.Block), float64(want), 1e-12)
	}
	require.InEpsilon(t, float64(u.Trapped.Nominal-u.Pull.Outside(9000*unit.Foot)), float64(f.Differential.Nominal), 1e-12)
}

// Bands that just touch: what is reached at most and what is needed at least.
func TestThresholdsThatTouch(t *testing.T) {
	pins := unit.Band[unit.Force]{Least: 90, Nominal: 100, Greatest: 110}
	m, err := packer.HoldPins(pins, true, []packer.PinCase{{Load: 89.999}, {Load: 90}, {Load: 110}, {Load: -90}, {Load: 109.999}})
	require.NoError(t, err)
	for i, want := range []packer.Outcome{packer.NotActed, packer.Unknown, packer.Acted, packer.Unknown, packer.Unknown} {
		require.Equal(t, want, m[i].State, i)
	}
	require.False(t, packer.ComponentLoad{Component: packer.Component{Share: 0.8}, Usage: 0.8}.Over())
	require.True(t, packer.ComponentLoad{Component: packer.Component{Share: 0.8}, Usage: 0.8001}.Over())
	r := overpull()
	for share, ok := range map[float64]bool{0: false, 1: true, 1.0000001: false} {
		r.RigShare = share
		require.Equal(t, ok, r.Validate() == nil, share)
	}

	p := packer.Pressures{Start: unit.Band[unit.Pressure]{Least: 30, Nominal: 35, Greatest: 40}, Complete: unit.Band[unit.Pressure]{Least: 40, Nominal: 50, Greatest: 60}}
	for applied, ok := range map[unit.Pressure]bool{35: false, 49.99: false, 50: true} {
		_, bites := p.Bite(applied)
		require.Equal(t, ok, bites, applied)
	}
	p.Start.Least = 55
	for applied, ok := range map[unit.Pressure]bool{54.99: false, 55: true} {
		_, bites := p.Bite(applied)
		require.Equal(t, ok, bites, applied)
	}

	plan := plan()
	plan.Engaged = 20 * unit.Foot // the whole stack of seals
	require.NoError(t, plan.Validate())
	plan.Engaged *= 1 + 1e-12
	require.ErrorContains(t, plan.Validate(), "Engaged: is")
	s, err := packer.StrokeOf([]packer.Travel{{Case: "still"}, {Case: "down", Movement: 1}, {Case: "as far", Movement: 1}, {Case: "up", Movement: -2}, {Case: "as far up", Movement: -2}})
	require.NoError(t, err)
	require.Equal(t, packer.Stroke{Up: 2, Down: 1, UpCase: "up", DownCase: "down"}, s)
	s, err = packer.StrokeOf([]packer.Travel{{Case: "still"}})
	require.NoError(t, err)
	require.Equal(t, packer.Stroke{}, s)
}

// To spare the packer its first stage must hold, to set it all must act; a plug that is rated holds
// either way.
func TestDemandsOfASetting(t *testing.T) {
	s := setting(t)
	for purpose, names := range map[packer.Purpose]string{packer.Set: "packer: slips, packer: element packed off, plug", packer.Spare: "packer: slips, plug"} {
		d, err := s.Demands(purpose)
		require.NoError(t, err)
		var got []string
		for _, x := range d {
			got = append(got, x.Name)
			require.Equal(t, purpose == packer.Set && x.Name != "plug", x.Fire)
		}
		require.Equal(t, names, strings.Join(got, ", "))
	}
	s.Stages = nil
	_, err := s.Window(packer.Set, valve.SurfaceRange{Greatest: 1e9}, nil, 0)
	require.ErrorContains(t, err, "Stages: is empty")
	s = setting(t)
	s.Stages[0].Acts = unit.Band[unit.Pressure]{Nominal: 1, Greatest: 2}
	require.ErrorContains(t, s.Validate(), "begins at 0 psi; must be above 0")
	require.Contains(t, fmt.Sprint(s.Validate()), "slips")
}

// A pull's depths: one at the joint itself is in the string, one beyond isn't.
func TestComponentAtTheJoint(t *testing.T) {
	r := overpull()
	for md, ok := range map[unit.Length]bool{0: true, 9000 * unit.Foot: true, 9000.001 * unit.Foot: false} {
		r.Components[0].MD = md
		_, err := r.Parting()
		require.Equal(t, ok, err == nil, "%v", md)
	}
}
