package sequence

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sleeve"
)

// Model is a device of which the library has a model: its actions, their triggers and
// what they arm come from that model. Just one of them is given.
type Model struct {
	Sleeve    *SleeveModel    `json:"sleeve,omitzero"`
	Isolation *IsolationModel `json:"isolation_valve,omitzero" was:"isolation valve"`
	Safety    *SafetyModel    `json:"safety_valve,omitzero" was:"safety valve"`
}

// SleeveModel is a sleeve that two control lines shift, as package valve/sleeve has it:
// "opens" and "closes", each against the friction of its seals.
type SleeveModel struct {
	OpenLine        string                   `json:"open_line,omitzero" was:"open line"`
	CloseLine       string                   `json:"close_line,omitzero" was:"close line"`
	Port            string                   `json:"port,omitzero"`
	OpenArea        unit.Area                `json:"open_area,omitzero" was:"open area"`
	CloseArea       unit.Area                `json:"close_area,omitzero" was:"close area"` // as the open area where left out
	Friction        unit.Band[unit.Force]    `json:"friction,omitzero"`
	Across          unit.Band[unit.Pressure] `json:"across,omitzero"`                                  // differential across it when it is shifted
	PerDifferential unit.Area                `json:"per_differential,omitzero" was:"per differential"` // friction added per differential across it
}

// IsolationModel is an isolation valve that pressure opens, as valve.IsolationValve
// has it: "opens".
type IsolationModel struct {
	Inside  string                   `json:"inside,omitzero"`
	Outside string                   `json:"outside,omitzero"` // or
	Chamber *unit.Pressure           `json:"chamber,omitzero"`
	Port    string                   `json:"port,omitzero"`
	Opens   valve.IsolationKind      `json:"opens,omitzero"`
	Unlock  unit.Band[unit.Pressure] `json:"unlock,omitzero"`
	Bleed   unit.Band[unit.Pressure] `json:"bleed,omitzero"`
	Cycles  int                      `json:"cycles,omitzero"`
}

// SafetyModel is a safety valve that a control line holds open, as valve.SafetyValve
// has it: "opens" and "closes".
type SafetyModel struct {
	Line    string                   `json:"line,omitzero"`
	Backing string                   `json:"backing,omitzero"` // compartment on the other side of the piston; none where left out: a chamber at no pressure
	Port    string                   `json:"port,omitzero"`
	Opens   unit.Band[unit.Pressure] `json:"opens,omitzero"`
	Closes  unit.Band[unit.Pressure] `json:"closes,omitzero"`
}

// Expanded is the plan with the actions of each device that is given by its kind, in
// place of it, and with the steps of each branch behind the step that it is of: what is
// walked. It is the plan itself where there is neither.
func (p *Plan) Expanded() *Plan {
	q := p.modelled()
	if q == nil || !slices.ContainsFunc(q.Steps, func(s Step) bool { return s.Otherwise != nil }) {
		return q
	}
	if q == p {
		q = p.Clone()
	}
	q.Steps = q.flat()
	return q
}

// modelled is the plan with the actions of each device, and the bore of each control line,
// that is given by its kind, in place of it.
func (p *Plan) modelled() *Plan {
	if p == nil {
		return nil
	}
	if !slices.ContainsFunc(p.Devices, func(d Device) bool { return d.Kind != nil }) && !slices.ContainsFunc(p.Compartments, func(c Compartment) bool { return c.Kind != nil }) {
		return p
	}
	q := p.Clone()
	for i := range q.Devices {
		d := &q.Devices[i]
		if d.Kind == nil || len(d.Kind.list()) != 1 || len(d.Actions) > 0 {
			continue // which validation tells
		}
		d.Actions, d.Kind = d.Kind.actions(q), nil
	}
	for i := range q.Compartments {
		if c := &q.Compartments[i]; c.Kind != nil {
			c.Kind.expand(q, c)
		}
	}
	return q
}

// kindOf is a model that can tell what is wrong with it.
type kindOf interface{ Validate() error }

func (k *Model) list() []kindOf {
	var all []kindOf
	if k.Sleeve != nil {
		all = append(all, k.Sleeve)
	}
	if k.Isolation != nil {
		all = append(all, k.Isolation)
	}
	if k.Safety != nil {
		all = append(all, k.Safety)
	}
	return all
}

func (k *Model) actions(p *Plan) []Action {
	switch {
	case k.Sleeve != nil:
		return k.Sleeve.actions(p.portOpen(k.Sleeve.Port))
	case k.Isolation != nil:
		x := k.Isolation
		return []Action{{Name: "opens", Inside: x.Inside, Outside: x.Outside, Chamber: x.Chamber, Triggers: rowOf(x.model().Row()), Opens: []string{x.Port}}}
	}
	return k.Safety.actions(p.portOpen(k.Safety.Port))
}

func (p *Plan) portOpen(name string) bool {
	x := p.port(name)
	return x != nil && x.Open
}

// rowOf are the triggers of a row of package valve.
func rowOf(row valve.Row) []Trigger {
	var all []Trigger
	for _, t := range row {
		all = append(all, Trigger{Threshold: t.Threshold, Direction: t.Direction, Count: t.Count, Rearm: t.Rearm})
	}
	return all
}

// model is the sleeve as package sleeve knows it.
func (k *SleeveModel) model() sleeve.Sleeve {
	close := k.CloseArea
	if close == 0 {
		close = k.OpenArea
	}
	return sleeve.Sleeve{OpenArea: k.OpenArea, CloseArea: close, Friction: k.Friction, Across: k.Across, PerDifferential: k.PerDifferential}
}

// actions are the two of a sleeve: Ao·po − Ac·pc ≥ F opens it, the reverse closes it.
func (k *SleeveModel) actions(open bool) []Action {
	m := k.model()
	piston := func(line string, area unit.Area, other string, back unit.Area) *Areas {
		return &Areas{On: []Pressed{{line, area}, {other, -back}}, Friction: m.Resistance()}
	}
	once := []Trigger{{}}
	return []Action{
		{Name: "opens", Areas: piston(k.OpenLine, m.OpenArea, k.CloseLine, m.CloseArea), Triggers: once, Opens: []string{k.Port}, Arms: []string{"closes"}, Disarmed: open},
		{Name: "closes", Areas: piston(k.CloseLine, m.CloseArea, k.OpenLine, m.OpenArea), Triggers: once, Closes: []string{k.Port}, Arms: []string{"opens"}, Disarmed: !open},
	}
}

// Validate reports what is wrong with the sleeve's own numbers.
func (k *SleeveModel) Validate() error {
	return firstOf(k.Friction.Validate(), k.Across.Validate(), positive("open area", float64(k.OpenArea)), notNegative("close area", float64(k.CloseArea)),
		notNegative("friction", float64(k.Friction.Least)), notNegative("per differential", float64(k.PerDifferential)))
}

func (k *IsolationModel) model() valve.IsolationValve {
	return valve.IsolationValve{Kind: k.Opens, Unlock: k.Unlock, Bleed: k.Bleed, Cycles: k.Cycles}
}

// Validate reports what is wrong with the valve's own numbers.
func (k *IsolationModel) Validate() error { return k.model().Validate() }

func (k *SafetyModel) model() valve.SafetyValve {
	b := valve.Unbacked
	if k.Backing != "" {
		b = valve.TubingBacked
	}
	return valve.SafetyValve{Backing: b, Opens: k.Opens, Closes: k.Closes}
}

func (k *SafetyModel) actions(open bool) []Action {
	opens, closes := k.model().Rows()
	var chamber *unit.Pressure
	if k.Backing == "" {
		chamber = new(unit.Pressure)
	}
	return []Action{
		{Name: "opens", Inside: k.Line, Outside: k.Backing, Chamber: chamber, Triggers: rowOf(opens), Opens: []string{k.Port}, Arms: []string{"closes"}, Disarmed: open},
		{Name: "closes", Inside: k.Line, Outside: k.Backing, Chamber: chamber, Triggers: rowOf(closes), Closes: []string{k.Port}, Arms: []string{"opens"}, Disarmed: !open},
	}
}

// Validate reports what is wrong with the valve's own numbers.
func (k *SafetyModel) Validate() error { return k.model().Validate() }
