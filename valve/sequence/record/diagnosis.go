package record

import "completion.example/valve/sequence"

// Finding is what was made of a record.
type Finding string

// Findings.
const (
	AsPlanned Finding = "as planned"  // every device moving as its step means it to explains the record
	Otherwise Finding = "otherwise"   // only what is named explains it
	NotTold   Finding = "not told"    // nothing explains it well, but something isn't ruled out
	Contrary  Finding = "contradicts" // everything that was tried is ruled out
)

// Diagnosis is a record held against its programme.
type Diagnosis struct {
	Finding  Finding       `json:"finding"`
	Says     string        `json:"says"`
	Steps    []Step        `json:"steps"`
	Explains []Explanation `json:"explains"`  // simplest first
	Doubtful []Explanation `json:"doubtful"`  // neither explain it nor are ruled out
	RuledOut []Explanation `json:"ruled_out"` // nearest first
	// Open are single things that may have been otherwise beside, and that the record
	// doesn't tell.
	Open    []string `json:"open"`
	Known   []State  `json:"known"`
	Unknown []State  `json:"unknown"`
	// Leaks says that what is reported has a leak, which Onward has not.
	Leaks bool `json:"leaks"`
	// Tried is how many ways were walked, each through all steps recorded.
	Tried int `json:"tried"`

	// Onward is the plan with the recorded steps as they were done, thresholds as
	// narrow as the record tells, and devices that did not move taken as never moving;
	// nil where the record contradicts the plan.
	Onward *sequence.Plan `json:"-"`
}

// Step is one step's record.
type Step struct {
	Number int     `json:"number"`
	Name   string  `json:"name"`
	Rows   int     `json:"rows"`
	Took   string  `json:"took"`           // such as "26m15s"
	Left   string  `json:"left,omitempty"` // what isn't held against the record, and why
	Checks []Check `json:"checks"`
	Moved  []Moved `json:"moved,omitempty"`
}

// Check is one thing that the programme expects and the record shows.
type Check struct {
	What     string `json:"what"`
	Expected string `json:"expected"`
	Recorded string `json:"recorded"`
	Mark     Mark   `json:"mark"`
}

// Mark is what came of a check.
type Mark string

// Marks.
const (
	OK     Mark = "ok"
	Off    Mark = "off"
	Untold Mark = "not told" // no instrument shows it
)

// Explanation is a hypothesis: what was otherwise than the walk has it.
type Explanation struct {
	Says []string `json:"says"`
	// Share is what speaks most against it, of what instruments and noise may be off:
	// up to 1 it explains the record, above 2 it is ruled out.
	Share   float64 `json:"share"`
	Step    string  `json:"step,omitempty"`    // in which that is
	Against string  `json:"against,omitempty"` // what it is
}

// State is how a port or a device stands after the record.
type State struct {
	Of    string   `json:"of"`
	Is    string   `json:"is,omitempty"`
	Maybe []string `json:"maybe,omitempty"` // where it isn't known
	Why   string   `json:"why,omitempty"`
}
