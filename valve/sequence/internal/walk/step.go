package walk

import (
	"fmt"

	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/well"
)

// Step is what a person does, put together.
type Step struct {
	Name          string
	Temperature   int // index; -1: as before
	Shut          []int
	Displacements []Displacement
	Acts          []Act       // by hand, before the ramps
	Pumps         []well.Pump // after the swaps
	Ramps         [][]Move
	Holds         []float64 // by ramp: how long the step stands still after it, in s
	Rise          float64   // how fast pressures are changed, Pa/s; 0: not known
	Takes         float64   // how long what isn't counted otherwise takes, in s; 0: not known
	// Tested is, by where the step stands still, how long tests are held there, in s;
	// TestedAnywhere that of those which may be held at any of these places.
	Tested         map[int]float64
	TestedAnywhere float64
	Last           bool // no step comes after it
	Timed          bool // those that come after it say what they take
	RaiseTrapped   map[int]float64
	Press          map[int]float64 // volumes pressed in, between known walls
	Pulls          []affine.Form
	Lands          bool
	On             int  // the string that is pulled or lands
	Keeps          bool // another one is around what lands, and stays as it is
	// Flow, where not nil, is the well while the zones flow at the end of the step; nil
	// where they don't.
	Flow   func(s *well.State) (*well.Flowed, error)
	Expect [][]int // by device, in their order
	Not    []int   // actions that it expects and whose devices may be stuck: those worlds go another way
}

// Move is a surface pressure that is brought to another.
type Move struct {
	Compartment int
	To          affine.Form
}

// Displacement replaces the fluid of a compartment between two depths.
type Displacement struct {
	Compartment, Fluid int
	From, To           well.Depth
	Up                 bool
}

// drive is one thing that is done in a step.
type drive struct {
	number int
	label  string
	run    func(w *World) ([]*World, error)
	stand  int // the number of the place where the step then stands still, or -1

	takes         func(w *World) span // nil: it happens at once
	first         float64             // how long it takes before anything changes, in s
	hold, perhaps float64             // how long it stands still after it
	untimed       string              // what it is, where nobody knows how long it takes
}

// drives are what a step does, in its order.
func (k *Walker) drives(step *Step) []drive {
	all := []drive{{number: -1, label: "start", stand: -1, run: k.rest}}
	for _, sw := range step.Displacements {
		all = append(all, drive{number: -1, label: "displacement", stand: -1, untimed: "while a fluid is displaced", run: func(w *World) ([]*World, error) { return k.displace(w, sw) }})
	}
	for i := range step.Acts {
		d := drive{number: -1, label: fmt.Sprintf("by hand %d", i+1), stand: -1, run: func(w *World) ([]*World, error) { return k.hand(w, i) }}
		k.byHandTakes(&d, &step.Acts[i])
		all = append(all, d)
	}
	for n, p := range step.Pumps {
		all = append(all, drive{number: -1, label: fmt.Sprintf("pump %d", n+1), stand: -1, run: func(w *World) ([]*World, error) { return k.pump(w, p, n) }})
	}
	stand := 0
	all[len(all)-1].stand = stand
	add := func(label string, run func(w *World) ([]*World, error)) {
		stand++
		all = append(all, drive{number: stand - 1, label: label, stand: stand, run: run})
	}
	for i := range step.Ramps {
		add(fmt.Sprintf("ramp %d", i+1), func(w *World) ([]*World, error) { return k.raise(w, step.Ramps[i]) })
		all[len(all)-1].takes = func(w *World) span { return k.took(w, step.Ramps[i]) }
	}
	timed := len(all)
	if len(step.RaiseTrapped)+len(step.Press) > 0 {
		add("pressure change", k.raiseTrapped)
	}
	for i := range step.Pulls {
		add(fmt.Sprintf("pull %d", i+1), func(w *World) ([]*World, error) { return k.pull(w, i) })
	}
	if step.Flow != nil {
		all = append(all, drive{number: stand, label: "flowing", stand: -1, run: k.flow})
	}
	for i := timed; i < len(all); i++ {
		all[i].untimed = "in a " + all[i].label
		if all[i].label == "flowing" {
			all[i].untimed = "while the zones flow"
		}
	}
	k.held(all)
	if step.Lands {
		last := &all[len(all)-1]
		before := last.run
		last.run = func(w *World) ([]*World, error) {
			out, err := before(w)
			for _, x := range out {
				if err == nil {
					err = k.land(x)
				}
			}
			return out, err
		}
	}
	return all
}

// rest is the beginning of a step: what is shut in and the temperature change at
// once, and what is due happens.
func (k *Walker) rest(w *World) ([]*World, error) {
	w = w.Clone()
	fresh := k.place.Step == 0 || len(k.step.Shut) > 0 || w.freed
	w.freed = false
	if t := k.step.Temperature; t >= 0 && t != w.State.Temperature {
		if err := w.State.Warm(t); err != nil {
			return nil, err
		}
		w.State.SetTemperature(t)
		fresh = true
	}
	if err := w.State.Full(k.step.Shut, "shutting it in"); err != nil {
		return nil, err
	}
	for _, i := range k.step.Shut {
		w.State.Surface[i] = false
	}
	if err := w.State.Close(); err != nil {
		return nil, err
	}
	return k.leg(w, affine.Form{}, fresh)
}

// raiseTrapped raises trapped compartments by heat or volume: s goes from 0 to 1 in
// ten thousand parts, so that slopes are of the size of other legs'.
func (k *Walker) raiseTrapped(w *World) ([]*World, error) {
	const length = 1e6
	w = w.Clone()
	by, press := map[int]float64{}, map[int]float64{}
	for i, d := range k.step.RaiseTrapped {
		by[i] = d / length
	}
	for i, v := range k.step.Press {
		press[i] = v / length
	}
	if err := w.State.RaiseTrapped(by, press); err != nil {
		return nil, err
	}
	w.State.Span = length
	return k.leg(w, affine.Const(length), false)
}
