package sequence

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/movement"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/well"
)

// StringAt is the string where a step stands still. Three forces are never mixed
// up: the wall force is what a strain gauge in the pipe would show, the effective
// force is what bends it, and a load is what a part carries.
type StringAt struct {
	Held bool `json:"held"`
	Free bool `json:"free,omitempty"` // on a pull that nothing holds: it comes up, at this reading
	// Hanger is the wall force at the top: what the hanger carries while the string
	// is landed.
	Hanger unit.Force `json:"hanger"`
	// Reading is what the weight indicator shows on a pull, or would show with the
	// string lifted out of its hanger: block included, and less p·Ai where the top is
	// closed.
	Reading   unit.Force `json:"reading"`
	Wall      unit.Force `json:"wall"`      // force just above where the string is or will be held
	Effective unit.Force `json:"effective"` // there
	// Packer is the load that what holds the string carries, up positive: the
	// effective force above it less that below, with the pressures on its ring.
	Packer  unit.Force  `json:"packer"`
	Holds   []HoldAt    `json:"holds,omitempty"`
	Joints  []JointAt   `json:"joints,omitempty"`
	Seals   []SealAt    `json:"seals"`
	Lift    unit.Force  `json:"lift"`  // upward load at the hanger, where positive
	Usage   float64     `json:"usage"` // of the governing limit, design factor included
	Limit   string      `json:"limit"`
	LimitMD unit.Length `json:"limit_md"`
	Buckled unit.Length `json:"buckled"` // tail included
	// Drag is what hole and seals take of a pull, above what holds the string; negative
	// of weight that is slacked off.
	Drag  unit.Force    `json:"drag,omitempty"`
	Along []StringDepth `json:"-"`

	made   *stringMade // and loaded: what Steps shows, once it is asked for
	loaded func() (*movement.Loading, error)
}

// JointAt is what the pins of a joint feel: the effective force just above it, and
// the pressure inside less that outside on the area of its seal.
type JointAt struct {
	Action    string     `json:"action"`
	Balance   unit.Force `json:"balance"`
	Wall      unit.Force `json:"wall"`
	Effective unit.Force `json:"effective"`
	Parted    bool       `json:"parted,omitempty"`
}

// HoldAt is the string at a place that holds it or could.
type HoldAt struct {
	Name      string      `json:"name"` // of the device
	Depth     unit.Length `json:"depth"`
	Held      bool        `json:"held"`
	Load      unit.Force  `json:"load"` // that the place carries, up positive; zero where it doesn't hold
	Wall      unit.Force  `json:"wall"` // just above
	Effective unit.Force  `json:"effective"`
	Below     unit.Force  `json:"below"` // wall force just below
}

// SealAt is where a seal stands and what it bears.
type SealAt struct {
	Name    string      `json:"name"`
	Travel  unit.Length `json:"travel"`  // since landing, down positive
	Ring    unit.Force  `json:"ring"`    // of the pressures on the ring between pipe and bore, up positive
	Engaged unit.Length `json:"engaged"` // length that may still come up before it leaves the bore
}

// StringDepth is the string at one depth, for pictures.
type StringDepth struct {
	MD        unit.Length `json:"md"`
	Wall      unit.Force  `json:"wall"`
	Effective unit.Force  `json:"effective"`
	Usage     float64     `json:"usage"`
}

// loading is the strings where a step stands still, with the nominal values: that of
// the plan is the inner one. It is good until the next is asked for.
func (k *checker) loading(at *standstill) (*movement.NestedLoading, error) {
	err := k.String.Load(&k.loaded, at.world, affine.Form{}, k.pulling(at), k.Nominal())
	return &k.loaded, err
}

// pulling is the weight indicator where a pull ends.
func (k *checker) pulling(at *standstill) *affine.Line {
	s := &k.Steps[at.place.Step]
	n := at.place.Drive - len(s.Ramps)
	if len(s.RaiseTrapped) > 0 {
		n--
	}
	if n < 0 || n >= len(s.Pulls) || at.place.Drive < 0 {
		return nil
	}
	return &affine.Line{F: affine.Const(s.Pulls[n].At(k.Nominal()))}
}

// stringAt is the string where a step stands still, and that around it.
func (k *checker) stringAt(at *standstill) (own, outer *StringAt, err error) {
	if k.String == nil {
		return nil, nil, nil
	}
	l, err := k.loading(at)
	if err != nil {
		return nil, nil, err
	}
	// Few ask for the working: it is loaded again then, and not kept.
	room, world, pulling, nominal := k.String, at.world, k.pulling(at), k.Nominal()
	again := func() (*movement.NestedLoading, error) {
		l := new(movement.NestedLoading)
		err := room.Load(l, world, affine.Form{}, pulling, nominal)
		return l, err
	}
	own = k.oneString(&l.Inner, k.plan.own(OnString))
	own.loaded = func() (*movement.Loading, error) {
		l, err := again()
		return &l.Inner, err
	}
	if k.plan.OuterString != nil {
		outer = k.oneString(&l.Outer, k.plan.own(OnOuterString))
		outer.loaded = func() (*movement.Loading, error) {
			l, err := again()
			return &l.Outer, err
		}
	}
	return own, outer, nil
}

func (k *checker) oneString(l *movement.Loading, s ownString) *StringAt {
	room := k.room(s.of)
	x := &StringAt{Free: l.Free, Hanger: l.HangerLoad, Reading: l.Reading, Lift: max(l.Lift, 0), Buckled: l.BuckledLength}
	if l.Top != movement.AtHanger {
		t := room.Up.Terms(l)
		x.Drag = t.Drag + t.Seals
	}
	if l.Top == movement.AtHanger {
		x.Reading = l.HangerLoad + s.Block
		if s.Top == TopClosed && len(l.Nodes) > 0 {
			x.Reading -= unit.Force(l.Nodes[0].Inside) * unit.Force(room.TopBore)
		}
	}
	places := k.plan.places(s.on())
	for n, h := range l.Holds {
		if !x.Held && (h.Held || x.Wall == 0) {
			x.Wall, x.Effective = h.WallAbove, h.EffectiveAbove
		}
		if h.Held && !h.Lost && !x.Held {
			x.Held, x.Packer = true, h.Load
		}
		if h.Lost {
			continue
		}
		x.Holds = append(x.Holds, HoldAt{places[n].Name, places[n].Depth, h.Held, h.Load, h.WallAbove, h.EffectiveAbove, h.WallBelow})
	}
	n := 0
	for i := range k.Network.Actions {
		if a := &k.Network.Actions[i]; a.Axial && a.Feels == well.OfJoint && k.plan.Devices[a.Device].On == s.on() {
			j := l.Joints[n]
			x.Joints = append(x.Joints, JointAt{a.Name, j.Balance, j.Wall, j.Effective, j.Parted})
			n++
		}
	}
	for n, seal := range s.seals() {
		if !l.Seals[n].Lost {
			x.Seals = append(x.Seals, SealAt{seal.name(n), l.Seals[n].Travel, l.Seals[n].Ring, seal.Up + l.Seals[n].Travel})
		}
	}
	g := l.Limits.Governing()
	x.Usage, x.Limit, x.LimitMD = g.Usage, g.Limit.String(), g.MD
	x.Along = make([]StringDepth, 0, len(l.Nodes))
	for _, node := range l.Nodes {
		_, usage := node.Usage.Governing()
		x.Along = append(x.Along, StringDepth{node.MD, node.True, node.Effective, usage})
	}
	x.made = k.made[s.of]
	return x
}

func (s Seal) name(n int) string {
	if s.Name != "" {
		return s.Name
	}
	return "seals at " + s.MD.Rounded(digits)
}

// Parting is an axial action on a pull: the weight-indicator readings at which
// it happens over all choices of values.
type Parting struct {
	Action   string     `json:"action"`
	Least    unit.Force `json:"least"`
	Nominal  unit.Force `json:"nominal"`
	Greatest unit.Force `json:"greatest"`
	Planned  unit.Force `json:"planned"` // the highest reading of the step, or the lowest where setting down does it
	OK       bool       `json:"ok"`      // it happens whatever the values
	// Above is what then hangs on the hook, without the block: what is above the
	// joint; Below the load down on what holds the rest, with the pressures on it.
	Above unit.Force `json:"above"`
	Below unit.Force `json:"below"`
	// Brings is, where it is not a joint that parts but a place that is unseated, what of
	// Above hangs below the lowest joint of the string: the rest, where that had parted.
	Brings unit.Force `json:"brings,omitempty"`
}

// partings tells for every axial action that a pull is meant to move what the
// weight indicator reads when it does.
func (k *checker) partings(i int, r *StepResult) {
	step := &k.plan.Steps[i]
	if len(step.Pull) == 0 {
		return
	}
	for n := range k.Network.Actions {
		a := &k.Network.Actions[n]
		if !a.Axial || !slices.Contains(step.Expect, a.Name) {
			continue
		}
		f := k.out.Judge.SensedBy(i, n)
		p := Parting{Action: a.Name, OK: f.Pulled && !k.broken(i, judge.Omission, n), Planned: k.pulledTo(i, n)}
		if f.Pulled {
			p.Least, p.Greatest = unit.Force(f.PullLeast), unit.Force(f.PullGreatest)
		}
		for _, e := range r.Events {
			if e.Action == a.Name && e.Partial == "" {
				p.Nominal = e.Pull
			}
		}
		if p.Nominal == 0 && !f.Pulled {
			continue
		}
		if p.Nominal == 0 {
			p.Nominal = p.Least + (p.Greatest-p.Least)/2
		}
		if len(r.Points) > 1 && a.Feels != well.OnRest {
			last := r.Points[len(r.Points)-1].String
			if k.plan.Devices[a.Device].On == OnOuterString {
				last = r.Points[len(r.Points)-1].OuterString
			}
			p.Above = last.Hanger
			if last.Held {
				p.Below = -last.Packer
			}
			if a.Feels == well.OfPlace {
				for _, j := range last.Joints { // of what hangs free the effective force falls with depth
					if !j.Parted && (p.Brings == 0 || j.Effective < p.Brings) {
						p.Brings = j.Effective
					}
				}
			}
		}
		r.Partings = append(r.Partings, p)
	}
}
