package catalogue

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Kind says what a pipe is for.
type Kind string

// The kinds.
const (
	Tubing Kind = "tubing"
	Casing Kind = "casing"
	Line   Kind = "line" // anything else that a user adds
)

// Finish says how the ends of a pipe are made, and with that what its nominal
// weight counts.
type Finish string

// The finishes.
const (
	NonUpset      Finish = "non-upset"
	ExternalUpset Finish = "external upset"
	IntegralJoint Finish = "integral joint"
	Threaded      Finish = "threaded"  // casing, threaded and coupled
	PlainEnd      Finish = "plain end" // sold with the maker's own connection
)

// Provenance says how a row got here.
type Provenance string

// The provenances.
const (
	Published Provenance = "published" // read in the source
	Memory    Provenance = "memory"    // recalled, checked by geometry only
	User      Provenance = "user"      // added by the user
)

// Entry is one pipe of the catalogue.
type Entry struct {
	Kind     Kind                 `json:"kind"`
	OD       unit.Length          `json:"od"`
	Weight   unit.WeightPerLength `json:"weight"` // nominal, couplings included
	Finish   Finish               `json:"finish"`
	Wall     unit.Length          `json:"wall"`
	ID       unit.Length          `json:"id"`
	Drift    unit.Length          `json:"drift"`
	Coupling unit.Length          `json:"coupling"` // outside diameter; zero for none or not known

	// Engaged lengths of API short and long round thread, L4 - M of API Std 5B;
	// zero where it isn't made.
	ShortThread unit.Length `json:"short_thread"`
	LongThread  unit.Length `json:"long_thread"`

	Status Provenance `json:"status"`
	Source string     `json:"source"`
}

// Pipe returns the entry as a pipe of a grade.
func (e Entry) Pipe(g Grade) tubular.Pipe {
	return tubular.Pipe{OD: e.OD, ID: e.ID, Weight: e.Weight, Material: g.Material()}
}

// String writes size, weight and finish.
func (e Entry) String() string {
	return fmt.Sprintf("%v %v %s %s", e.OD, e.Weight, e.Finish, e.Kind)
}

// Validate reports every way in which an entry contradicts itself: the bore must
// be the outside diameter less two walls, the drift not above the bore, the
// nominal weight near that of the steel, a coupling larger than the pipe.
func (e Entry) Validate() error {
	f := fault.In("catalogue")
	switch e.Kind {
	case Tubing, Casing, Line:
	default:
		f.New("Kind", "is %q; must be tubing, casing or line", e.Kind)
	}
	switch e.Finish {
	case NonUpset, ExternalUpset, IntegralJoint, Threaded, PlainEnd:
	default:
		f.New("Finish", "is %q; must be non-upset, external upset, integral joint, threaded or plain end", e.Finish)
	}
	switch e.Status {
	case Published, Memory, User:
	default:
		f.New("Status", "is %q; must be published, memory or user", e.Status)
	}
	p := tubular.Pipe{OD: e.OD, ID: e.ID, Weight: e.Weight, Material: tubular.Steel()}
	if err := p.Validate(); err != nil {
		f.Add(err)
		return f.Err()
	}
	const printed = 0.0006 * unit.Inch // sizes are printed to a thousandth
	if !(math.Abs(float64(e.OD-2*e.Wall-e.ID)) <= float64(printed)) {
		f.New("ID", "is %v; must be %v, the OD of %v less two walls of %v", e.ID, (e.OD - 2*e.Wall).Rounded(5), e.OD, e.Wall)
	}
	if !(e.Drift > 0 && e.Drift <= e.ID) {
		f.New("Drift", "is %v; must be above 0 in and at most the ID of %v", e.Drift, e.ID)
	}
	if plain := p.PlainEndWeight(); !(e.Weight >= 0.985*plain && e.Weight <= 1.10*plain) {
		f.New("Weight", "is %v; must be from 0.985 to 1.10 of the plain-end weight of %v", e.Weight, plain.Rounded(4))
	}
	if e.Coupling != 0 && !(e.Coupling > e.OD && e.Coupling < 3*e.OD) {
		f.New("Coupling", "is %v; must be above the OD of %v, or 0 for none", e.Coupling, e.OD)
	}
	for _, thread := range []struct {
		name   string
		length unit.Length
	}{{"ShortThread", e.ShortThread}, {"LongThread", e.LongThread}} {
		if !(thread.length >= 0 && thread.length < 3*e.OD) {
			f.New(thread.name, "is %v; must be above 0, or 0 for none", thread.length)
		}
	}
	return f.Err()
}
