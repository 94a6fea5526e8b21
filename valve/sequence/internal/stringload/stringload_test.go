package stringload

import (
	"math"
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/drag"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/walk"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

const (
	foot = unit.Foot
	psi  = float64(unit.PSI)
	lbf  = float64(unit.PoundForce)
)

// Symbols of the rig.
const (
	densityInside = iota
	pressureInside
	dragOfHole
	frictionOfHole
	frictionOfSeal
	symbols
)

func band(k int, least, greatest float64) affine.Form {
	return affine.Form{C: (least + greatest) / 2, T: []affine.Term{{Symbol: k, C: (greatest - least) / 2}}}
}

// rig is 3-1/2 in tubing to 9,000 ft in an incline of 30°, with a joint at 8,500 ft and a
// place that can hold at 8,990 ft, seals at 6,000 ft: tubing is compartment 0, the annulus
// 1.
func rig(t *testing.T) (*Room, *walk.World) {
	t.Helper()
	return rigIn(t, nil)
}

// rigIn is rig in a well that is changed before.
func rigIn(t *testing.T, change func(n *well.Network)) (*Room, *walk.World) {
	t.Helper()
	const slant = 30 * unit.Degree
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: slant}, {MD: 9000 * foot, Inclination: slant}})
	require.NoError(t, err)
	profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{TVD: 0, Temperature: unit.Fahrenheit(80)}, {TVD: 9000 * foot, Temperature: unit.Fahrenheit(200)}})
	require.NoError(t, err)
	at := func(md unit.Length) well.Depth {
		tvd, err := path.TVD(md)
		require.NoError(t, err)
		return well.Depth{MD: float64(md), TVD: float64(tvd)}
	}
	pound := float64(unit.PoundPerGallon)
	n := &well.Network{
		Temperatures: []*hydrostatics.TemperatureProfile{profile}, Devices: 1,
		Fluids:  []well.Fluid{{Name: "inside", Density: band(densityInside, 9*pound, 10*pound)}, {Name: "outside", Density: affine.Const(9.2 * pound)}},
		Actions: []well.Action{{Name: "holds", Outside: -1, Bites: -1, Holds: true}, {Name: "parts", Inside: -1, Outside: -1, Bites: -1, Axial: true}, {Name: "lets go", Outside: -1, Bites: -1, Releases: true}},
	}
	for k := range symbols {
		n.Symbols = append(n.Symbols, well.Symbol{Name: [...]string{"a", "b", "c", "d", "e"}[k], Half: 1})
	}
	for i := range 2 {
		n.Compartments = append(n.Compartments, well.Compartment{Name: [2]string{"tubing", "annulus"}[i], Formation: -1, Surface: true,
			Depths: []well.Depth{at(0), at(9000 * foot)}, Layers: []well.Layer{{Fluid: i, Bottom: at(9000 * foot)}}})
	}
	n.SetHeat([]affine.Form{{}})
	if change != nil {
		change(n)
	}
	n.Prepare()
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel().WithStrength(80000*unit.PSI, 95000*unit.PSI)}
	a := movement.Assembly{Path: path, Block: 10000 * unit.PoundForce, Spacing: 250 * foot,
		Sections: []movement.StringSection{{Pipe: pipe, BottomMD: 9000 * foot, Hole: 6.184 * unit.Inch}},
		Joints:   []movement.Joint{{MD: 8500 * foot, Seal: 4.5 * unit.Inch}}, Holds: []movement.Hold{{MD: 8990 * foot}},
		Seals: []movement.Seal{{MD: 6000 * foot, Bore: 3.5 * unit.Inch, Up: 30 * foot, Down: 30 * foot}}}
	up, err := a.MakeUp()
	require.NoError(t, err)
	r := &Room{Network: n, Temperatures: n.Temperatures, Up: up, Inside: 0, Drag: band(dragOfHole, 2000*lbf, 8000*lbf), Joints: 1,
		Places: map[int]int{0: 0}, Frees: map[int]int{}, Block: float64(a.Block), TopBore: float64(pipe.InnerArea()),
		Seals: []Seal{{MD: float64(6000 * foot), Up: float64(30 * foot), Down: float64(30 * foot)}}, Memory: new(Memory)}
	for range up.OutsideParts() {
		r.Outside = append(r.Outside, []int{1})
	}
	r.Prepare()
	w, err := walk.Start(n, affine.Box(symbols, make([]float64, symbols)))
	require.NoError(t, err)
	require.NoError(t, r.Land(w))
	return r, w
}

// press puts pressure on the tubing.
func press(t *testing.T, w *walk.World, f affine.Form) {
	t.Helper()
	w.State.Applied[0] = affine.Flat(f)
	require.NoError(t, w.State.Solve(affine.Form{}))
}

func rubs(t *testing.T, r *Room) {
	t.Helper()
	path, err := hydrostatics.NewPath([]hydrostatics.Station{{Inclination: 30 * unit.Degree}, {MD: 9000 * foot, Inclination: 30 * unit.Degree}})
	require.NoError(t, err)
	pipe := tubular.Pipe{OD: 3.5 * unit.Inch, ID: 2.992 * unit.Inch, Weight: 9.3 * unit.PoundPerFoot, Material: tubular.Steel()}
	r.Hole, err = drag.String{Sections: []drag.PipeSection{{Pipe: pipe, Length: 9000 * foot}}, BottomMD: 9000 * foot, Path: path, Spacing: 250 * foot,
		HoleSections: []drag.HoleSection{{BottomMD: 9000 * foot, Friction: 0.2, Hole: 6.184 * unit.Inch}}}.Prepare()
	require.NoError(t, err)
	r.Factors, r.Drag = []affine.Form{band(frictionOfHole, 0.15, 0.3)}, affine.Form{}
}

// somewhere is a choice of the inputs, half of them at an end.
func somewhere(random *rand.Rand) []float64 {
	e := make([]float64, symbols)
	for i := range e {
		e[i] = 2*random.Float64() - 1
		if random.IntN(2) == 0 {
			e[i] = math.Copysign(1, e[i])
		}
	}
	return e
}

// No choice of the inputs makes the string read what lies outside the forms, at the
// hanger or on the hook, held or not, with drag as a number or along the path.
func TestNoChoiceLiesOutsideTheForms(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 7))
	for _, along := range []bool{false, true} {
		r, w := rig(t)
		if along {
			rubs(t, r)
		}
		r.Seals[0].Friction = band(frictionOfSeal, 500*lbf, 1500*lbf)
		press(t, w, band(pressureInside, 2800*psi, 3200*psi))
		require.NoError(t, r.Move(w, 0, affine.Form{}, nil)) // it takes hold
		press(t, w, affine.Const(500*psi))
		pull := affine.Flat(affine.Const(120000 * lbf))
		for _, pulling := range []*affine.Line{nil, &pull} {
			forms, err := r.enclose(w, affine.Form{}, pulling)
			require.NoError(t, err)
			p, err := r.profileOf(w.State, affine.Form{})
			require.NoError(t, err)
			for range 200 {
				e := somewhere(random)
				var l movement.NestedLoading
				require.NoError(t, r.load(&l, w.State.String.(*standing), p, at(pulling, affine.Form{}, Main), corner{any: true, e: e}, nil))
				for n, v := range r.read(&l.Inner, nil) {
					require.InDelta(t, forms[n].At(e), v, forms[n].R+1e-6*(1+math.Abs(v)), "number %d, along the path %v", n, along)
				}
			}
		}
	}
}

// With nothing applied the hook takes over what hangs, and the block; a closed top is
// lifted by the pressure in it.
func TestWeight(t *testing.T) {
	r, w := rig(t)
	open, err := r.Weight(w)
	require.NoError(t, err)
	// In air 9,000 ft · cos 30° · 9.3 lb/ft, less what the annulus carries of the end and
	// with what the tubing's fluid puts on it, no effective force there.
	tvd := 9000 * math.Cos(math.Pi/6)
	ai, ao := math.Pi/4*2.992*2.992, math.Pi/4*3.5*3.5
	want := tvd*9.3 + tvd*4/77*(9.5*ai-9.2*ao) + 10000
	require.InDelta(t, want, open.C/lbf, 1)
	require.InDelta(t, tvd*4/77*0.5*ai, math.Abs(open.T[0].C)/lbf, 1)
	press(t, w, affine.Const(1000*psi))
	r.Closed, r.Memory = true, new(Memory)
	closed, err := r.Weight(w)
	require.NoError(t, err)
	require.InDelta(t, want, closed.C/lbf, 1, "1,000 psi pull at the plugged end as much as they lift the top")
}

// What was done to the string is remembered in its order, and two that stand alike are
// the same.
func TestStanding(t *testing.T) {
	r, w := rig(t)
	require.False(t, r.Holds(w))
	first := w.State.String
	press(t, w, affine.Const(3000*psi))
	require.NoError(t, r.Move(w, 0, affine.Form{}, nil))
	require.True(t, r.Holds(w))
	held := w.State.String
	require.NoError(t, r.Move(w, 0, affine.Form{}, nil))
	require.Same(t, held, w.State.String, "it holds already")
	require.ErrorIs(t, r.Land(w), errHeld)
	again, v := rig(t)
	require.True(t, first.Same(v.State.String))
	require.False(t, held.Same(first))
	press(t, v, affine.Const(3000*psi))
	require.NoError(t, again.Move(v, 0, affine.Form{}, nil))
	require.True(t, held.Same(v.State.String))
	_, other := rig(t)
	press(t, other, affine.Const(2900*psi))
	require.NoError(t, r.Move(other, 0, affine.Form{}, nil))
	require.False(t, held.Same(other.State.String), "100 psi less are locked in")
	require.NoError(t, r.Move(w, 1, affine.Form{}, nil))
	apart := w.State.String
	require.NoError(t, r.Move(w, 1, affine.Form{}, nil))
	require.Same(t, apart, w.State.String, "it has parted already")
	require.NoError(t, r.Move(w, 2, affine.Form{}, nil))
	require.False(t, r.Holds(w))
	now, err := r.standingAt(w.State.String.(*standing), r.middle())
	require.NoError(t, err)
	require.True(t, now.Inner.Parted(0))
}

// Slips that may have bitten early, but whose device has marked nothing, bite as they are set.
func TestSlipsThatNothingHasMarked(t *testing.T) {
	r, w := rig(t)
	press(t, w, affine.Const(3000*psi))
	early := w.Clone()
	require.NoError(t, r.Move(w, 0, affine.Form{}, nil))
	r.Network.Actions[0].Bites, r.Network.Actions[0].Bite = 1, affine.Const(0.5)
	require.NoError(t, r.Move(early, 0, affine.Form{}, nil))
	require.True(t, w.State.String.Same(early.State.String))
	require.Nil(t, early.State.String.(*standing).p.from)
}

// Taking hold on the hook depends on what the weight indicator shows then.
func TestHeldOnTheHook(t *testing.T) {
	r, w := rig(t)
	var all []walk.World
	for _, reading := range []float64{60000, 70000} {
		v := w.Clone()
		pull := affine.Flat(affine.Const(reading * lbf))
		require.NoError(t, r.Move(v, 0, affine.Form{}, &pull))
		all = append(all, *v)
	}
	require.False(t, all[0].State.String.Same(all[1].State.String))
}

// Memory gives the same forms for the same well, and others where it differs.
func TestMemory(t *testing.T) {
	r, w := rig(t)
	a, err := r.enclose(w, affine.Form{}, nil)
	require.NoError(t, err)
	b, err := r.enclose(w, affine.Form{}, nil)
	require.NoError(t, err)
	require.Same(t, &a[0], &b[0])
	press(t, w, affine.Const(10*psi))
	c, err := r.enclose(w, affine.Form{}, nil)
	require.NoError(t, err)
	require.NotEqual(t, a, c)
	r.Memory = nil
	d, err := r.enclose(w, affine.Form{}, nil)
	require.NoError(t, err)
	require.Equal(t, c, d)
}

// Narrowed, the string lies inside what it was.
func TestNarrow(t *testing.T) {
	r, w := rig(t)
	rubs(t, r)
	r.Seals[0].Friction = band(frictionOfSeal, 500*lbf, 1500*lbf)
	pull := affine.Flat(affine.Const(90000 * lbf))
	wide, err := r.enclose(w, affine.Form{}, &pull)
	require.NoError(t, err)
	half := func(k int) (float64, float64, bool) { return 0.5, 0.25, true }
	n := r.Network.Narrow(half)
	small := r.Narrow(n, half)
	small.Memory = new(Memory)
	require.InDelta(t, 0.225+0.5*0.075, small.Factors[0].C, 1e-12)
	v, err := walk.Start(n, affine.Box(symbols, make([]float64, symbols)))
	require.NoError(t, err)
	require.NoError(t, small.Land(v))
	got, err := small.enclose(v, affine.Form{}, &pull)
	require.NoError(t, err)
	for k := range wide {
		slack := 1e-6 * (1 + math.Abs(wide[k].C))
		require.GreaterOrEqual(t, got[k].Least(), wide[k].Least()-slack, "%d", k)
		require.LessOrEqual(t, got[k].Greatest(), wide[k].Greatest()+slack, "%d", k)
	}
}

// Turned round after a pull, twice the drag is given back before anything arrives at
// depth, from the hanger once; going on the same way is no turn.
func TestTurnsAndCuts(t *testing.T) {
	r, w := rig(t)
	r.Seals[0].Friction = affine.Const(1000 * lbf)
	press(t, w, affine.Const(3000*psi))
	require.NoError(t, r.Move(w, 0, affine.Form{}, nil))
	from, length := affine.Const(100000*lbf), affine.Const(30000*lbf)
	_, bends, err := r.Cut(w, from, 1, length)
	require.NoError(t, err)
	require.False(t, bends, "on the way up one number is straight")
	require.NoError(t, r.Turn(w, false, true, from))
	require.Nil(t, w.State.String.(*standing).turn(Main))

	require.NoError(t, r.Turn(w, true, false, from))
	cut, bends, err := r.Cut(w, from, -1, length)
	require.NoError(t, err)
	require.True(t, bends)
	require.InDelta(t, 2*(5000+1000)*lbf, cut.C, 1e-6, "the nominal drag of 5,000 lbf and the seals'")
	require.InDelta(t, 2*3000*lbf, cut.Radius(), 1e-6)
	// At the cut all rubs the other way.
	read := func(shown float64) float64 {
		var l movement.NestedLoading
		p, err := r.profileOf(w.State, affine.Form{})
		require.NoError(t, err)
		f := affine.Const(shown)
		require.NoError(t, r.load(&l, w.State.String.(*standing), p, &reading{f, Main}, r.middle(), nil))
		return float64(l.Inner.Joints[0].Balance)
	}
	begin := read(100000 * lbf)
	require.InDelta(t, begin, read(94000*lbf), 1e-3*lbf, "nothing arrives")
	require.InDelta(t, begin, read(88000*lbf), 1e-3*lbf)
	next := from.Minus(cut)
	require.NoError(t, r.Slides(w, next))
	require.NoError(t, r.Slides(w, next))
	_, bends, err = r.Cut(w, next, -1, length)
	require.NoError(t, err)
	require.False(t, bends)
	require.InDelta(t, begin, read(88000*lbf), 1e-3*lbf)
	require.InDelta(t, begin-5000*lbf, read(83000*lbf), 1e-3*lbf, "all of it arrives")

	require.NoError(t, r.Turn(w, false, false, affine.Const(80000*lbf)))
	require.Equal(t, upwards, w.State.String.(*standing).turn(Main).place)
	require.NoError(t, r.Turn(w, true, true, affine.Const(80000*lbf)))
	cut, _, err = r.Cut(w, affine.Const(80000*lbf), -1, length)
	require.NoError(t, err)
	require.InDelta(t, 6000*lbf, cut.C, 1)
}
