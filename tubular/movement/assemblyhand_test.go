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

// An invented string for derivations by hand: one pipe of 4-1/2 in 12.6 lb/ft to
// 9,000 ft in a vertical hole, water of 8.5 lb/gal everywhere. A joint that parts
// at 7,990 ft, sealing on 5 in; a packer at 8,000 ft on the pipe's own outside; a
// seal of 4.75 in at 8,800 ft.
const (
	jointAt, packerAt, sealAt, endAt = 7990 * unit.Foot, 8000 * unit.Foot, 8800 * unit.Foot, 9000 * unit.Foot
	jointBore, sealBore              = 5 * unit.Inch, 4.75 * unit.Inch
)

var handPipe = tubular.Pipe{OD: 4.5 * unit.Inch, ID: 3.958 * unit.Inch, Weight: 12.6 * unit.PoundPerFoot,
	Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}

func handAssembly(t testing.TB) movement.Assembly {
	path, err := hydrostatics.Vertical(endAt)
	require.NoError(t, err)
	return movement.Assembly{
		Sections: []movement.StringSection{{Pipe: handPipe, BottomMD: endAt, Hole: 8.535 * unit.Inch}}, Path: path, Block: 15000 * unit.PoundForce,
		Seals:   []movement.Seal{{MD: sealAt, Bore: sealBore, Up: 3 * unit.Foot, Down: 5 * unit.Foot, Length: 6 * unit.Foot}},
		Holds:   []movement.Hold{{MD: packerAt, Casing: 8.535 * unit.Inch}},
		Joints:  []movement.Joint{{MD: jointAt, Seal: jointBore}},
		Spacing: 500 * unit.Foot,
	}
}

// water is one fluid everywhere, with pressures added inside, above the packer,
// between packer and seal, and below the seal.
func water(inside, above, between, below unit.Pressure) movement.Conditions {
	added := [...]unit.Pressure{above, between, below}
	column := func(d unit.Length) unit.Pressure { return hydrostatics.Pressure(8.5*unit.PoundPerGallon, d) }
	return movement.Conditions{
		Inside:  func(_ int, d unit.Length) unit.Pressure { return inside + column(d) },
		Outside: func(part int, d unit.Length) unit.Pressure { return added[part] + column(d) },
	}
}

func lbf(f unit.Force) float64 { return f.In(unit.PoundForce) }

func inch2(d unit.Length) float64 { return math.Pi / 4 * d.In(unit.Inch) * d.In(unit.Inch) }

// buoyed is the effective weight of the pipe in the water, in lbf/ft.
func buoyed() float64 {
	steel := inch2(handPipe.OD) - inch2(handPipe.ID) // in²
	return 12.6 - 8.5*12/231*steel                   // lb/gal times gal/ft of 1 in²: 12 in³ of 231
}

func made(t testing.TB, a movement.Assembly) *movement.MadeUp {
	m, err := a.MakeUp()
	require.NoError(t, err)
	return m
}

// TestJointFeelsItsTailWhileRunningIn: with one fluid everywhere the balance of a
// joint is the buoyed weight below it, whatever it seals on, and not the wall
// force, which is less by the pressure on the steel.
//
// By hand: 1,010 ft × 11.010 lbf/ft = 11,120 lbf; wall force 11,120 - 3,528 psi ×
// 3.600 in² = -1,581 lbf.
func TestJointFeelsItsTailWhileRunningIn(t *testing.T) {
	m := made(t, handAssembly(t))
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	l, err := m.Load(s, water(0, 0, 0, 0))
	require.NoError(t, err)
	tail := 1010 * buoyed()
	require.InDelta(t, 11120, tail, 1)
	require.InDelta(t, tail, lbf(l.Joints[0].Balance), 1e-6*tail)
	steel := inch2(handPipe.OD) - inch2(handPipe.ID)
	p := hydrostatics.Pressure(8.5*unit.PoundPerGallon, jointAt).In(unit.PSI)
	require.InDelta(t, tail-p*steel, lbf(l.Joints[0].Wall), 1e-6*tail)
	require.InDelta(t, -1581, lbf(l.Joints[0].Wall), 5)
	require.InDelta(t, 9000*buoyed(), lbf(l.HangerLoad), 1e-6*tail, "nothing at surface: what hangs is what is weighed")
	require.Zero(t, l.Holds[0].Load)
	require.Zero(t, l.Seals[0].Travel)
	require.Equal(t, 3*unit.Foot, l.Seals[0].Engaged)
}

// TestSealsStepByTheirOwnBore: 2,000 psi below the seal over the annulus above it
// pushes up with the area of the seal bore in the effective force, and with its
// ring alone in the wall force. By hand 4.75 in: 17.721 in², 35,441 lbf; ring
// 17.721 - 15.904 = 1.816 in², plus the pressures standing there.
func TestSealsStepByTheirOwnBore(t *testing.T) {
	m := made(t, handAssembly(t))
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	c := water(2000*unit.PSI, 0, 0, 2000*unit.PSI)
	l, err := m.Load(s, c)
	require.NoError(t, err)
	push := 2000 * inch2(sealBore)
	require.InDelta(t, 35441, push, 1)
	require.InDelta(t, 1000*buoyed()-push, lbf(l.Holds[0].EffectiveAbove), 1e-3)
	require.InDelta(t, 2000*(inch2(sealBore)-inch2(handPipe.OD)), lbf(l.Seals[0].Ring), 1e-3)
	// A wider bore pushes more; the old model had it at the lower end, where it
	// changed nothing.
	a := handAssembly(t)
	a.Seals[0].Bore = 6 * unit.Inch
	wide := made(t, a)
	s, err = wide.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	w, err := wide.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, -2000*(inch2(6*unit.Inch)-inch2(sealBore)), lbf(w.Holds[0].EffectiveAbove-l.Holds[0].EffectiveAbove), 1e-3)
}

// TestPackerLoadIsTheStepAtThePacker: held at 8,000 ft with nothing on it, then
// 1,000 psi more in the annulus below the packer alone. The string above feels
// nothing of it (it is held on its own outside diameter, Ap = Ao), so that the
// tail's push arrives in the packer: at the seal the annulus pressure pushes the
// ring down, at the packer Ap - Ao is nothing.
func TestPackerLoadIsTheStepAtThePacker(t *testing.T) {
	m := made(t, handAssembly(t))
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
	require.NoError(t, err)
	l, err := m.Load(s, water(0, 0, 0, 0))
	require.NoError(t, err)
	require.InDelta(t, 0, lbf(l.Holds[0].Load), 1e-6)
	l, err = m.Load(s, water(0, 0, 1000*unit.PSI, 0))
	require.NoError(t, err)
	ring := 1000 * (inch2(sealBore) - inch2(handPipe.OD))
	require.InDelta(t, -ring, lbf(l.Holds[0].Load), 1e-3, "the packer carries the ring's push down")
	require.InDelta(t, -ring+1000*(inch2(8.535*unit.Inch)-inch2(handPipe.OD)), lbf(l.Holds[0].Casing), 1e-3)
	require.InDelta(t, -ring, lbf(l.Seals[0].Ring), 1e-3)
}

// TestLockedInForceDependsOnWhereThePlugIs: 4,000 psi in the tubing while the
// packer takes hold, then bled off. Plugged in the string below the packer (1 -
// 2ν)·p·Ai of tension stays: 0.4 × 4,000 × 12.304 = 19,686 lbf. Open below, to a
// chamber under seals of 4.75 in at the packer itself: the pressure pushes the
// string up by p·(Ap - Ai) and balloons it shorter by 2ν·p·Ai, which stays as
// compression: -4,000 × (17.721 - 12.304 + 0.6 × 12.304) = -51,197 lbf.
func TestLockedInForceDependsOnWhereThePlugIs(t *testing.T) {
	bore := inch2(handPipe.ID)
	plugged := handAssembly(t)
	plugged.Seals, plugged.Plugs = nil, []unit.Length{packerAt}
	m := made(t, plugged)
	with := func(p unit.Pressure) movement.Conditions {
		c := water(0, 0, 0, 0)
		still := c.Inside
		c.Inside = func(part int, d unit.Length) unit.Pressure {
			if part == 0 {
				return still(0, d) + p
			}
			return still(0, d)
		}
		return c
	}
	s, err := m.Land(with(0))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, with(4000*unit.PSI))
	require.NoError(t, err)
	l, err := m.Load(s, with(0))
	require.NoError(t, err)
	require.InDelta(t, 19686, 0.4*4000*bore, 5)
	require.InDelta(t, 0.4*4000*bore, lbf(l.Holds[0].Load), 1e-3)

	a := handAssembly(t)
	a.Seals[0].MD = packerAt
	open := made(t, a)
	s, err = open.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	s, err = open.TakeHold(s, 0, water(4000*unit.PSI, 0, 0, 4000*unit.PSI))
	require.NoError(t, err)
	o, err := open.Load(s, water(0, 0, 0, 0))
	require.NoError(t, err)
	want := -4000 * (inch2(sealBore) - bore + 0.6*bore)
	require.InDelta(t, -51197, want, 10)
	// Buckling under the chamber's push takes its own share while it sets: that is
	// locked in as well, and is the whole of the difference.
	shortening := o.Holds[0].Moved
	require.Less(t, float64(shortening), 0.0)
	require.Less(t, lbf(o.Holds[0].Load), want)
}

// TestPullPartsAJoint: held at the packer, closed top, 1,000 psi held inside. The
// pins of 60,000 lbf part when the reading is
//
//	buoyed weight above the joint + pins - p·A(joint seal) + block
//
// because the cap's lift -p·Ai, the pressure on the steel and the end's push add
// up to the seal's area alone: 7,990 × 11.010 + 60,000 - 1,000 × 19.635 + 15,000.
func TestPullPartsAJoint(t *testing.T) {
	m := made(t, handAssembly(t))
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
	require.NoError(t, err)
	c := water(1000*unit.PSI, 0, 0, 1000*unit.PSI)
	c.Top, c.Reading = movement.OnHookClosed, 120000*unit.PoundForce
	l, err := m.Load(s, c)
	require.NoError(t, err)
	reading, err := m.ReadingForJoint(&l, 0, 60000*unit.PoundForce)
	require.NoError(t, err)
	want := 7990*buoyed() + 60000 - 1000*inch2(jointBore) + 15000
	require.InDelta(t, want, lbf(reading), 1e-3)
	c.Reading = reading
	at, err := m.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, 60000, lbf(at.Joints[0].Balance), 1e-6)
	require.Equal(t, float64(reading), float64(at.Reading))

	// 5,000 lbf of drag is pulled before anything arrives at the joint.
	c.Drag = 5000 * unit.PoundForce
	d, err := m.Load(s, c)
	require.NoError(t, err)
	require.InDelta(t, 55000, lbf(d.Joints[0].Balance), 1e-6)
	require.InDelta(t, lbf(at.HangerLoad), lbf(d.HangerLoad), 1e-6)

	// Parted: only what is above hangs, the packer holds the rest.
	c.Drag = 0
	p, err := m.Part(s, 0)
	require.NoError(t, err)
	after := water(0, 0, 0, 0)
	after.Top, after.Reading = movement.OnHookOpen, reading
	l, err = m.Load(p, after)
	require.NoError(t, err)
	require.True(t, l.Free)
	require.InDelta(t, 7990*buoyed()+15000, lbf(l.Reading), 1e-3)
	require.InDelta(t, -1010*buoyed(), lbf(l.Holds[0].Load), 1e-3)
	require.Zero(t, l.Lost)
	// What nothing holds is gone.
	p, err = m.LetGo(p, 0)
	require.NoError(t, err)
	l, err = m.Load(p, after)
	require.NoError(t, err)
	require.Equal(t, jointAt, l.Lost)
	require.True(t, l.Seals[0].Lost)
	// Unseated by a straight pull with the joint whole, the rest comes too.
	u, err := m.LetGo(s, 0)
	require.NoError(t, err)
	l, err = m.Load(u, after)
	require.NoError(t, err)
	require.InDelta(t, 9000*buoyed()+15000, lbf(l.Reading), 1e-3)
	_, err = m.ReadingForJoint(&l, 0, 0)
	require.ErrorIs(t, err, movement.ErrNotReached)
}

// TestMostReadingIsTheWeakestLink: non-upset connections of 208,730 lbf at surface.
func TestMostReadingIsTheWeakestLink(t *testing.T) {
	a := handAssembly(t)
	a.Sections[0].Joint = 208730 * unit.PoundForce
	m := made(t, a)
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
	require.NoError(t, err)
	c := water(0, 0, 0, 0)
	c.Top, c.Reading = movement.OnHookOpen, 120000*unit.PoundForce
	l, err := m.Load(s, c)
	require.NoError(t, err)
	most, err := m.MostReading(&l, movement.PullLimits{})
	require.NoError(t, err)
	require.InDelta(t, 208730+15000, lbf(most.Reading), 0.01)
	require.Equal(t, "string, connection", most.By)
	most, err = m.MostReading(&l, movement.PullLimits{Rig: 200000 * unit.PoundForce})
	require.NoError(t, err)
	require.Equal(t, "rig", most.By)
	most, err = m.MostReading(&l, movement.PullLimits{Hold: 50000 * unit.PoundForce})
	require.NoError(t, err)
	require.Equal(t, "packer", most.By)
	// At the packer the pull takes the tail's weight off first: 1,000 ft hang there,
	// of which the packer carried nothing.
	require.InDelta(t, 9000*buoyed()+50000+15000, lbf(most.Reading), 1e-3)
	// As strong as the body: its yield 288,036 lbf, by von Mises less where it is
	// also under pressure; at surface there is none.
	a.Sections[0].Joint = 0
	m = made(t, a)
	l, err = m.Load(s, c)
	require.NoError(t, err)
	most, err = m.MostReading(&l, movement.PullLimits{})
	require.NoError(t, err)
	require.InDelta(t, 288036+15000, lbf(most.Reading), 5)
	require.Len(t, m.NotChecked(), 1)
}

func TestAssemblyLoadAllocatesNothing(t *testing.T) {
	m := made(t, handAssembly(t))
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(t, err)
	s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
	require.NoError(t, err)
	c := water(1000*unit.PSI, 0, 0, 1000*unit.PSI)
	var l movement.Loading
	require.NoError(t, m.LoadInto(&l, s, c))
	require.Zero(t, testing.AllocsPerRun(20, func() {
		if err := m.LoadInto(&l, s, c); err != nil {
			panic(err)
		}
	}))
}

func BenchmarkAssemblyLoad(b *testing.B) {
	a := handAssembly(b)
	a.Spacing = 250 * unit.Foot
	m := made(b, a)
	s, err := m.Land(water(0, 0, 0, 0))
	require.NoError(b, err)
	s, err = m.TakeHold(s, 0, water(0, 0, 0, 0))
	require.NoError(b, err)
	c := water(1000*unit.PSI, 0, 0, 1000*unit.PSI)
	var l movement.Loading
	for b.Loop() {
		if err := m.LoadInto(&l, s, c); err != nil {
			b.Fatal(err)
		}
	}
}
