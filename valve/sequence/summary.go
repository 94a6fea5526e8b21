package sequence

// Summary is the short form of a programme: the answer without the pressures,
// loads and pictures that show how it came about. A failing plan has its findings
// in full.
type Summary struct {
	Plan      string        `json:"plan"`
	Verdict   Verdict       `json:"verdict"`
	Open      string        `json:"open,omitempty"` // what couldn't be decided, and why
	Findings  []Finding     `json:"findings"`
	Margins   []Nearest     `json:"margins"` // the least margin of each kind of limit, tightest first
	Steps     []StepSummary `json:"steps"`
	Unchecked []string      `json:"unchecked"`
}

// Nearest is the limit of one kind that has the least left.
type Nearest struct {
	Kind  Kind    `json:"kind"`
	Limit string  `json:"limit"`
	Step  string  `json:"step"`
	Left  string  `json:"left"`
	Share float64 `json:"share"`
}

// StepSummary is one step in short.
type StepSummary struct {
	Name    string          `json:"name"`
	OK      bool            `json:"ok"`
	Follows string          `json:"follows,omitempty"` // the step that failed before
	Moves   []string        `json:"moves,omitempty"`   // actions that happen with the nominal values, in their order
	Unknown []string        `json:"unknown,omitempty"` // devices whose state isn't certain at the end
	Flows   []FlowAt        `json:"flows,omitempty"`   // at the end
	Windows []WindowSummary `json:"windows,omitempty"`
	Volumes []VolumeMoved   `json:"volumes,omitempty"`
	Zones   []ZoneRate      `json:"zones,omitempty"`
}

// WindowSummary is a window in short.
type WindowSummary struct {
	Compartment string     `json:"compartment,omitempty"` // empty: a pull
	Planned     Level      `json:"planned"`
	Intervals   []Interval `json:"intervals"`
	Awaits      int        `json:"awaits,omitempty"` // the step that has to be mended before it is known
}

// Summary returns the short form of a programme.
func (p *Programme) Summary() Summary {
	s := Summary{Plan: p.Plan, Verdict: p.Verdict, Open: p.Open, Findings: p.Findings, Margins: []Nearest{}, Unchecked: p.Unchecked}
	seen := map[Kind]bool{}
	for _, m := range p.Margins { // tightest first
		if !seen[m.Kind] {
			seen[m.Kind] = true
			s.Margins = append(s.Margins, Nearest{m.Kind, m.Limit, m.Step, m.Left, m.Share})
		}
	}
	for i := range p.Steps {
		s.Steps = append(s.Steps, p.Steps[i].summary())
	}
	return s
}

func (r *StepResult) summary() StepSummary {
	s := StepSummary{Name: r.Name, OK: r.OK, Follows: r.Follows, Unknown: r.Unknown, Volumes: r.Volumes, Zones: r.Zones}
	for _, e := range r.Events {
		if e.Partial == "" {
			s.Moves = append(s.Moves, e.Action)
		}
	}
	if n := len(r.Points); n > 0 {
		s.Flows = r.Points[n-1].Flows
	}
	for _, w := range r.Windows {
		s.Windows = append(s.Windows, WindowSummary{w.Compartment, w.Planned, w.Intervals, w.Awaits})
	}
	return s
}
