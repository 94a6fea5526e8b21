package sequence

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
)

// Begin is how the well stands when a programme begins, where that isn't as its
// things were run: stated by a person, or as another programme left it (see
// Plan.Rest). What it doesn't speak of is as the plan's own lists say.
//
// Nothing that is trapped has a pressure by default: each body of fluid that nothing
// fixes wants the pressure of just one of its compartments.
type Begin struct {
	After       string   `json:"after,omitzero"`                                      // what has gone before, for the reader
	Temperature string   `json:"temperature,omitzero"`                                // the undisturbed one where left out
	Happened    []string `json:"happened,omitempty"`                                  // actions that have happened, "device: action", in the order of their last time
	May         []string `json:"may_have_happened,omitempty" was:"may have happened"` // each may have happened after those, or not: the plan is proved in all cases

	Progress map[string][]RowAt `json:"progress,omitempty"` // by action: how far its row has come; several: nobody knows which
	Open     []string           `json:"open,omitempty"`     // ports that stand otherwise than the actions leave them
	Shut     []string           `json:"shut,omitempty"`

	ShutIn  []string                 `json:"shut_in,omitempty" was:"shut in"` // compartments closed at surface
	Applied map[string]unit.Pressure `json:"applied,omitempty"`               // surface pressures by compartment; 0 psi where left out
	// Standing are surface pressures that nobody set, such as what a pump or a producing
	// well leaves, by compartment, where they aren't among Applied.
	Standing map[string]*Stated `json:"standing,omitempty"`
	Trapped  map[string]*Stated `json:"trapped,omitempty"` // by compartment, at its top
	Layers   map[string][]Layer `json:"layers,omitempty"`  // by compartment: what stands in it, from the top down
	// Levels are by compartment the depth at which its gas ends, where that isn't certain,
	// or down to which its column has fallen.
	Levels map[string]*StatedDepth `json:"levels,omitempty"`
	Flowed []string                `json:"flowed,omitempty"` // formations whose inflow has been part of the plan
	If     []*Stated               `json:"if,omitempty"`     // none of these is negative: the values with which the well stands so

	String []StringMoment `json:"string,omitempty"` // what was done to the string, in order; none: it lands at the beginning
}

// RowAt is how far a row of triggers has come.
type RowAt struct {
	Met     int  `json:"met,omitzero"`     // triggers
	Counted int  `json:"counted,omitzero"` // times that the next one was met
	Rearms  bool `json:"rearms,omitzero"`  // and it hasn't come back to its re-arm level since

	// Stood is for how long an action that moves with a delay has been at its level without a
	// break, as of a step's hold; StoodMost the longest that it may have been.
	Stood     string `json:"stood,omitzero"`
	StoodMost string `json:"stood_at_most,omitzero"`

	If []*Stated `json:"if,omitempty"` // none of these is negative: the values with which it has come so far
}

// Stated is a pressure at the top of a compartment.
type Stated struct {
	Pressure unit.Band[unit.Pressure] `json:"pressure,omitzero"`
	With     []Lean                   `json:"with,omitempty"` // what else it moves with
}

// Lean is by how much a pressure is more where a quantity of the plan is To in place
// of From; what lies between is in proportion. From is what the pressure is stated at.
type Lean struct {
	Quantity string        `json:"quantity,omitzero"` // its path, such as "fluids.packer brine.density"
	From     string        `json:"from,omitzero"`
	To       string        `json:"to,omitzero"`
	Change   unit.Pressure `json:"change,omitzero"`
}

// StatedDepth is the measured depth of a level.
type StatedDepth struct {
	Depth unit.Band[unit.Length] `json:"depth,omitzero"`
	With  []LeanDepth            `json:"with,omitempty"` // what it moves with
	// Lacks, in place of both, is the pressure that the column of a fallen level lacks to
	// reach the top: of as much of its fluid as there is air. It is straight in densities
	// and pressures, where the depth isn't.
	Lacks *Stated `json:"lacks,omitzero"`
}

// LeanDepth is a Lean of a depth: by how much deeper it is.
type LeanDepth struct {
	Quantity string      `json:"quantity,omitzero"`
	From     string      `json:"from,omitzero"`
	To       string      `json:"to,omitzero"`
	Change   unit.Length `json:"change,omitzero"`
}

// StringMoment is something that was done to the string, and the well then: the
// pressures of the compartments that the string feels, at their tops.
type StringMoment struct {
	Does        string             `json:"does,omitzero"` // "lands", or an action
	On          WhichString        `json:"on,omitzero"`   // the string that landed or was pulled, where there are two
	Temperature string             `json:"temperature,omitzero"`
	Pressures   map[string]*Stated `json:"pressures,omitempty"`
	Layers      map[string][]Layer `json:"layers,omitempty"` // of those in which something else stood than at the beginning
	Reading     unit.Force         `json:"reading,omitzero"` // of the weight indicator, where it was on a pull
	// Levels are those of gas, or of columns that had fallen, as they were then.
	Levels map[string]*StatedDepth `json:"levels,omitempty"`
}

// lands is what a moment does that isn't an action.
const lands = "lands"

// mostMay bounds the cases that are proved.
const mostMay = 8

// stated are the pressures of a beginning, with their paths.
func (b *Begin) stated(each func(path, name string, s *Stated)) {
	if b == nil {
		return
	}
	for _, name := range sortedKeys(b.Trapped) {
		each("begin.trapped."+name+".pressure", "pressure trapped in "+name+" at the beginning", b.Trapped[name])
	}
	for _, name := range sortedKeys(b.Standing) {
		each("begin.standing."+name+".pressure", "pressure that "+name+" stands at at the beginning", b.Standing[name])
	}
	for i, s := range b.If {
		each(fmt.Sprintf("begin.if[%d].pressure", i), "condition of the beginning", s)
	}
	for _, name := range sortedKeys(b.Progress) {
		for k, r := range b.Progress[name] {
			for i, s := range r.If {
				each(fmt.Sprintf("begin.progress.%s[%d].if[%d].pressure", name, k, i), "condition of the progress of "+name, s)
			}
		}
	}
	b.levels(func(path, name string, s *StatedDepth) {
		if s != nil && s.Lacks != nil {
			each(strings.TrimSuffix(path, "depth")+"lacks.pressure", name+", what its column lacks", s.Lacks)
		}
	})
	for i := range b.String {
		m := &b.String[i]
		for _, name := range sortedKeys(m.Pressures) {
			each(fmt.Sprintf("begin.string[%d].pressures.%s.pressure", i, name), "pressure of "+name+" when the string "+m.Does, m.Pressures[name])
		}
	}
}

// levels are the depths of a beginning, with their paths.
func (b *Begin) levels(each func(path, name string, s *StatedDepth)) {
	if b == nil {
		return
	}
	for _, name := range sortedKeys(b.Levels) {
		each("begin.levels."+name+".depth", "level in "+name+" at the beginning", b.Levels[name])
	}
	for i := range b.String {
		m := &b.String[i]
		for _, name := range sortedKeys(m.Levels) {
			each(fmt.Sprintf("begin.string[%d].levels.%s.depth", i, name), "level in "+name+" when the string "+m.Does, m.Levels[name])
		}
	}
}

// lean is a Lean of whatever, in SI.
type lean struct {
	quantity, from, to string
	change             float64
}

func (s *Stated) leans() []lean {
	var all []lean
	for _, l := range s.With {
		all = append(all, lean{l.Quantity, l.From, l.To, float64(l.Change)})
	}
	return all
}

func (s *StatedDepth) leans() []lean {
	var all []lean
	for _, l := range s.With {
		all = append(all, lean{l.Quantity, l.From, l.To, float64(l.Change)})
	}
	return all
}
