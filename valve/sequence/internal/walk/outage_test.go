package walk

import (
	"errors"
	"math"
	"testing"

	"completion.example/fluid/flow"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
	"github.com/stretchr/testify/require"
)

var errOut = errors.New("no answer")

// outage answers so often, and then no more.
type outage struct{ left, asked int }

func (o *outage) ask() error {
	o.asked++
	if o.left--; o.left < 0 {
		return errOut
	}
	return nil
}

// tabled is a liquid of which a metre makes 1 Pa, for as long as its density is known.
type tabled struct{ o *outage }

func (f tabled) Density(unit.Pressure, unit.Temperature) (unit.Density, error) {
	return 1 / well.Gravity, f.o.ask()
}

func (f tabled) UniformDensity() (unit.Density, bool) { return 1 / well.Gravity, f.o.ask() == nil }

// watching is a recorder that may not be able to hold what it is shown against its limits.
type watching struct {
	*recorder
	o *outage
}

func (w watching) Moment(*World, Place) error          { return w.o.ask() }
func (w watching) Standstill(*World, Place, int) error { return w.o.ask() }

// hanging is a string whose first action feels what is pulled, 30 less than is shown, and that is bent 40 below where the hook turns.
type hanging struct{ o *outage }

func (h hanging) Axial(_ *World, actions []int, pulling *affine.Line) ([]affine.Line, error) {
	all := make([]affine.Line, len(actions))
	for i := range all {
		if pulling != nil {
			all[i] = pulling.PlusForm(affine.Const(-30))
		}
	}
	return all, h.o.ask()
}
func (h hanging) Move(*World, int, affine.Form, *affine.Line) error { return h.o.ask() }
func (h hanging) Land(*World) error                                 { return h.o.ask() }
func (h hanging) Weight(*World) (affine.Form, error)                { return affine.Const(100), h.o.ask() }
func (h hanging) Turn(*World, bool, bool, affine.Form) error        { return h.o.ask() }
func (h hanging) Slides(*World, affine.Form) error                  { return h.o.ask() }
func (h hanging) Cut(_ *World, from affine.Form, sign float64, _ affine.Form) (affine.Form, bool, error) {
	if sign > 0 {
		return affine.Form{}, false, h.o.ask()
	}
	return affine.Form{C: from.C - 160, T: []affine.Term{{Symbol: 0, C: 5}}}, from.C > 160.001, h.o.ask()
}

// deep is tubing and an annulus of 100 m that are open at surface, and a pocket from 50 m to 100 m that nothing has moved
// yet, which is open to neither. What stands in them is of weight 1 Pa/m, or twice as heavy.
func deep(o *outage, uniform bool) *rig {
	r := newRig(1)
	r.n.Fluids = []well.Fluid{{Name: "one", Density: affine.Const(1 / well.Gravity)}, {Name: "two", Density: affine.Const(2 / well.Gravity), Rheology: new(flow.Newtonian(1e-3))}}
	r.n.Fluids[0].Rheology = r.n.Fluids[1].Rheology
	if !uniform {
		calm := *o
		o.left = math.MaxInt32
		profile, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{{Temperature: unit.Celsius(20)}, {TVD: 200, Temperature: unit.Celsius(20)}})
		if err != nil {
			panic(err)
		}
		col, err := hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: tabled{o}, BottomTVD: 200}}, profile, hydrostatics.Reference{})
		if err != nil {
			panic(err)
		}
		r.n.Fluids[0].Columns, r.n.Fluids[0].Scale = []*hydrostatics.Column{col}, affine.Const(1)
		*o = calm
	}
	for i := range r.n.Compartments {
		c := &r.n.Compartments[i]
		c.Depths = []well.Depth{{}, {MD: 50, TVD: 50}, {MD: 100, TVD: 100}}
		c.Layers[0].Bottom = c.Depths[2]
		c.Bores = []well.Bore{{Bottom: 100, Conduit: flow.Conduit{Outer: 0.1}}}
		c.Formation = -1
	}
	return r
}

// join is a port at the bottom of two compartments.
func (r *rig) join(a, b int, open bool) int {
	p := r.port(a, b, open)
	r.n.Ports[p].AtA, r.n.Ports[p].AtB = 2, 2
	return p
}

// What the walk asks of a fluid, of its observer, of the string and of zones that flow, and gets no answer to, is its own
// answer: whatever is done in the step, and however often it was answered before.
func TestNoAnswerNoStep(t *testing.T) {
	for name, build := range map[string]func(o *outage) (*rig, StringRoom){
		"ramp": func(o *outage) (*rig, StringRoom) {
			r := deep(o, false)
			p := r.join(0, 2, false)
			r.device(0, up(r.band(60, 80))).Opens = []int{p}
			r.device(0, up(r.band(70, 90)), down(r.band(20, 30))).Closes = []int{p}
			r.ramp(120, 0)
			return r, nil
		},
		"more than tubing": func(o *outage) (*rig, StringRoom) { // inside, outside and another, whose depth may be off
			r := deep(o, false)
			a := r.device(0, up(r.band(60, 80)))
			a.AtIn, a.AtOut, a.Off, a.More = 2, 2, affine.Within(-1, 1), []well.Weighed{{Compartment: 2, At: 2, Times: 0.5}}
			r.n.Actions[0].Opens = []int{r.join(0, 2, false)}
			r.ramp(120)
			return r, nil
		},
		"slow": func(o *outage) (*rig, StringRoom) {
			r := deep(o, false)
			p := r.join(0, 2, false)
			a := r.device(0, up(r.band(60, 80)))
			a.Opens, a.Slow, a.Delay = []int{p}, true, affine.Within(100, 120)
			r.ramp(120, 0)
			r.step.Rise, r.step.Holds, r.step.Last = 1, []float64{200}, true
			r.step.Acts = []Act{{Port: r.join(1, 2, false), Opens: true, Action: -1, Vent: -1, Drain: -1, Fill: -1, Takes: 10, Across: []int{1}}}
			return r, nil
		},
		"displacement": func(o *outage) (*rig, StringRoom) {
			r := deep(o, false)
			p := r.join(0, 2, true)
			r.device(2, up(r.band(10, 20))).Closes = []int{p}
			r.n.Actions[0].AtIn, r.n.Actions[0].AtOut = 2, 0
			r.n.Compartments[0].Surface = false
			r.step.Displacements = []Displacement{{Compartment: 0, Fluid: 1, From: r.n.Compartments[0].Depths[0], To: r.n.Compartments[0].Depths[2]}}
			return r, nil
		},
		"by hand": func(o *outage) (*rig, StringRoom) {
			r := deep(o, false)
			p := r.join(0, 2, false)
			r.device(0, up(r.band(60, 80))).Opens = []int{p}
			hand := Act{Port: -1, Action: -1, Vent: -1, Drain: -1, Fill: -1}
			moved, vented := hand, hand
			moved.Action, moved.Across, vented.Vent = 0, []int{p}, 0
			r.step.Acts = []Act{moved, vented}
			r.astra = true
			return r, nil
		},
		"squeeze": func(o *outage) (*rig, StringRoom) {
			r := deep(o, false)
			r.device(2, up(r.band(10, 20))).Opens = []int{r.join(1, 2, false)}
			r.step.RaiseTrapped = map[int]float64{2: 50}
			return r, nil
		},
		"pump": func(o *outage) (*rig, StringRoom) {
			r := deep(o, true)
			r.join(0, 1, true)
			r.n.Fluids[0].Density, r.n.Fluids[1].Density = affine.Const(1000), affine.Const(1200)
			r.device(0, up(affine.Const(1e6)))
			r.step.Pumps = []well.Pump{{Into: 0, To: 1, Formation: -1, Rate: 0.001, Fluid: 1, Volume: 0.5}}
			return r, nil
		},
		"falling": func(o *outage) (*rig, StringRoom) {
			r := deep(o, true)
			r.n.Formations = []well.Formation{{Name: "sand", Depth: well.Depth{MD: 100, TVD: 100}, Pressure: affine.Const(30), Face: 2}}
			r.n.Compartments[2].Formation, r.n.Compartments[2].FormationAt = 0, 2
			r.join(0, 2, true)
			r.device(1, up(affine.Const(50)))
			drain, fill := Act{Port: -1, Action: -1, Vent: -1, Drain: 0, Fill: -1}, Act{Port: -1, Action: -1, Vent: -1, Drain: -1, Fill: 0}
			r.step.Acts = []Act{drain, fill, drain}
			r.ramp(10)
			r.astra = true
			return r, nil
		},
		"pull": func(o *outage) (*rig, StringRoom) {
			r := deep(o, true)
			a := r.device(0, up(r.band(160, 164)))
			a.Axial, a.Releases = true, true
			r.n.Actions[0].Arms = nil
			r.step.Pulls = []affine.Form{affine.Const(200), affine.Const(120), affine.Const(130), affine.Const(90)}
			r.step.Lands = true
			r.astra = true
			return r, hanging{o}
		},
		"flow": func(o *outage) (*rig, StringRoom) {
			r := deep(o, false)
			r.join(0, 2, true)
			r.device(2, up(affine.Const(1e6)))
			r.step.Flow = func(s *well.State) (*well.Flowed, error) {
				profile := well.Profile{{}, affine.Const(40), affine.Const(80)}
				return &well.Flowed{Root: 0, Surface: affine.Const(15), Profiles: map[int]well.Profile{0: profile}, Same: func(*well.State) bool { return true }}, o.ask()
			}
			return r, nil
		},
	} {
		t.Run(name, func(t *testing.T) {
			handed := 0
			for left := 0; ; left++ {
				o := &outage{left: left}
				r, room := build(o)
				o.left = left
				err := r.asked(t, o, room)
				if err == nil {
					require.GreaterOrEqual(t, o.left, 0, "all of it was answered")
					break
				}
				require.ErrorIs(t, err, errOut, "after %d answers", left)
				handed++
			}
			require.Greater(t, handed, 3)
		})
	}
}

// asked walks the step with an observer that may not answer.
func (r *rig) asked(t *testing.T, o *outage, room StringRoom) error {
	t.Helper()
	r.n.Prepare()
	r.step.Expect = make([][]int, r.n.Devices)
	for i := range r.n.Actions {
		r.n.Actions[i].Of, r.n.Actions[i].Bites = i, -1
	}
	var ties []int
	if room != nil {
		ties = []int{0}
	}
	region := affine.Box(max(len(r.n.Symbols), 1), make([]float64, max(len(r.n.Symbols), 1)))
	all, err := Starts(r.n, region, nil, room)
	if err != nil {
		return err
	}
	for i := range all {
		if err := all[i].State.Solve(affine.Form{}); err != nil {
			return err
		}
	}
	k := New(r.n, watching{&recorder{}, o}, [][]int{{0, 2}}, ties, room)
	k.PastUnintended = true
	k.Producing = func(*World, Place) error { return o.ask() }
	_, err = k.Step(all, r.step, 0)
	return err
}

// Zones that could flow to surface by two ways are refused where the step has gone as intended; a walk that goes on past what isn't lets
// them, as that is a failure already.
func TestZonesThatFlowTwoWays(t *testing.T) {
	for _, past := range []bool{false, true} {
		o := &outage{left: math.MaxInt32}
		r := deep(o, true)
		r.join(0, 1, true)
		r.device(2, up(affine.Const(1e6)))
		r.step.Flow = func(*well.State) (*well.Flowed, error) {
			profile := well.Profile{{}, affine.Const(40), affine.Const(80)}
			return &well.Flowed{Root: 0, Surface: affine.Const(15), Profiles: map[int]well.Profile{0: profile}, Same: func(*well.State) bool { return true }}, nil
		}
		r.astra = past
		_, _, err := r.walk(t, r.n, affine.Box(1, []float64{0}))
		if past {
			require.NoError(t, err)
		} else {
			require.ErrorContains(t, err, `zones flow through "c0" while "c1" stands open at surface too`)
		}
	}
}
