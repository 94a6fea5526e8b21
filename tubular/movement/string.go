package movement

import (
	"math"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// String is a completion string from the hanger to the seals in a packer.
type String struct {
	Sections []StringSection    `json:"sections"` // from the hanger down
	Path     *hydrostatics.Path `json:"path"`
	Hanger   unit.Length        `json:"hanger"` // measured depth of the hanger on the path
	Seals    SealBore           `json:"seals"`
	Spacing  unit.Length        `json:"spacing"` // greatest distance between nodes; zero stands for 10 m
	// HelicalOnset is the load at which sinusoidal buckling in an inclined hole
	// turns helical, as a multiple of the sinusoidal load: from 1 to 2√2, which
	// zero stands for (Mitchell 1999). Chen, Lin & Cheatham 1990 have √2, Wu &
	// Juvkam-Wold 1993 have 2√2 - 1.
	HelicalOnset float64 `json:"helical_onset"`
	// Design holds the design factors; zero stands for factors of 1. Sections
	// whose material has a yield strength are rated, others aren't.
	Design tubular.DesignFactors `json:"design"`
}

// WellProfiles is the pressures and temperatures along a string at one time.
type WellProfiles struct {
	// Inside and Outside are the pressures by true vertical depth, at rest:
	// losses by flow apart.
	Inside  func(tvd unit.Length) unit.Pressure `json:"inside"`
	Outside func(tvd unit.Length) unit.Pressure `json:"outside"`
	// Temperature of the pipe by true vertical depth; nil in the reference and
	// all other states alike where temperature plays no part.
	Temperature func(tvd unit.Length) unit.Temperature `json:"temperature"`
	// Friction is the pressure lost to friction inside per length of each
	// section, positive for flow down; nil without flow. OutsideFriction is that
	// outside. It drags the string by its share of the annulus' wall: the shear
	// stress is taken as equal on pipe and hole.
	Friction        []unit.Gradient `json:"friction"`
	OutsideFriction []unit.Gradient `json:"outside_friction"`
	Tail            Tail            `json:"tail"`
	Below           unit.Pressure   `json:"below"` // under the seals, where the tail is plugged
}

// defaultSpacing is the node distance that a zero Spacing stands for.
const defaultSpacing = 10 * unit.Metre

// maxNodes bounds the memory that a mistyped spacing can take.
const maxNodes = 1_000_000

// layDown checks a string and lays out its nodes. Every section's ends and every
// survey station are nodes; an end of two sections is two nodes, so that the step
// of force there is seen. breaks are more of them: see layOut.
func (s *String) layDown(breaks []float64) (line, error) {
	bars, err := bars(s.Hanger, s.Sections)
	faults := []error{err, fault.AtLeast("Hanger", s.Hanger, 0)}
	spacing := s.Spacing
	if spacing == 0 {
		spacing = defaultSpacing
	}
	faults = append(faults, fault.Above("Spacing", spacing, 0))
	ratio := s.HelicalOnset
	if ratio == 0 {
		ratio = 2 * math.Sqrt2
	}
	if !(ratio >= 1 && ratio <= 2*math.Sqrt2) {
		faults = append(faults, fault.New("HelicalOnset", "is %g; must be from 1 to 2√2, or 0 for 2√2", ratio))
	}
	design := s.Design
	if design == (tubular.DesignFactors{}) {
		design = tubular.WithoutReserve()
	}
	faults = append(faults, fault.At("Design", design.Validate()))
	if s.Path == nil {
		faults = append(faults, fault.New("Path", "is missing"))
	} else if n := len(s.Sections); n > 0 && s.Sections[n-1].BottomMD > s.Path.TotalDepth() {
		faults = append(faults, fault.New(fault.Index("Sections", n-1)+".Bottom", "is %v; must be at most the path's end at %v", s.Sections[n-1].BottomMD, s.Path.TotalDepth()))
	}
	if err := fault.Join(scope, faults...); err != nil {
		return line{}, err
	}
	if n := s.Sections[len(s.Sections)-1].BottomMD.In(spacing); n > maxNodes {
		return line{}, fault.NewIn(scope, "Spacing", "is %v; must be at least %v (%d nodes)", spacing, s.Sections[len(s.Sections)-1].BottomMD/maxNodes, maxNodes)
	}
	l := line{sections: slices.Clone(s.Sections), bars: bars, ratio: ratio, design: design}
	if err := l.rate(); err != nil {
		return line{}, err
	}
	l.steps, err = l.layOut(s.Path, float64(spacing), breaks)
	return l, err
}
