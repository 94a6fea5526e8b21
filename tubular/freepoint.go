package tubular

import (
	"fmt"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/fault"
)

// FreePoint is a pull test of a stuck string.
type FreePoint struct {
	Sections []HangingSection `json:"sections"` // from the top
	Stretch  unit.Length      `json:"stretch"`  // between the two marks
	Pull     unit.Force       `json:"pull"`     // the higher pull less the lower one
}

// StuckDepth is where a pull test says a string is stuck.
type StuckDepth struct {
	Depth   unit.Length `json:"depth"`   // below the top of the string, along it
	Section int         `json:"section"` // index of the section it is in
	Into    unit.Length `json:"into"`    // depth below the top of that section

	stretch  unit.Length
	pull     unit.Force
	sections []HangingSection // down to the one it is in
}

// FreeError says that a string stretched more than it could if it were stuck
// anywhere: it is free, or parted.
type FreeError struct {
	Stretch, Greatest unit.Length // measured, and of the whole string
}

func (e *FreeError) Error() string {
	return fmt.Sprintf("tubular: Stretch: is %v; must be at most %v, the stretch of the whole string: it is free",
		e.Stretch.Rounded(5), e.Greatest.Rounded(5))
}

// Find returns the depth at which the string is stuck: the sections' stretches
// are added from the top until the measured one is reached.
//
//	e = ΔF Σ L / (E As)
//
// Friction above the stuck point makes it look shallower. The error is a
// *FreeError when the whole string stretches less than measured.
//
// Source: Lapeyrouse, chapter 4 (stuck pipe), section by section.
func (f FreePoint) Find() (StuckDepth, error) {
	faults := fault.In("tubular")
	faults.Add(validateSections(f.Sections), fault.Above("Stretch", f.Stretch, 0), fault.Above("Pull", f.Pull, 0))
	if err := faults.Err(); err != nil {
		return StuckDepth{}, err
	}
	var above, top unit.Length // stretch of, and length of, the sections above
	for i, s := range f.Sections {
		e := s.Pipe.Stretch(f.Pull, s.Length)
		last := i == len(f.Sections)-1
		if above+e >= f.Stretch || last && nearly(above+e, f.Stretch) {
			into := min(s.Pipe.FreeLength(f.Stretch-above, f.Pull), s.Length)
			return StuckDepth{Depth: top + into, Section: i, Into: into,
				stretch: f.Stretch, pull: f.Pull, sections: slices.Clone(f.Sections[:i+1])}, finiteResult("stuck depth", top+into)
		}
		above, top = above+e, top+s.Length
	}
	return StuckDepth{}, &FreeError{Stretch: f.Stretch, Greatest: above}
}

// nearly forgives the rounding of a string stuck at its very end.
func nearly(a, b unit.Length) bool { return a >= b*(1-1e-12) }

// PullToStretch returns the pull at the top that stretches sections stuck at
// their lower end by e.
//
//	F = e / Σ (L / (E As))
//
// Errors: faults of the sections; a stretch that isn't finite.
//
// Source: Hooke.
func PullToStretch(sections []HangingSection, e unit.Length) (unit.Force, error) {
	if err := fault.Join("tubular", validateSections(sections), fault.Finite("Stretch", e)); err != nil {
		return 0, err
	}
	compliance := 0.0
	for _, s := range sections {
		compliance += float64(s.Length) / (float64(s.Pipe.Material.Young) * float64(s.Pipe.SteelArea()))
	}
	F := unit.Force(float64(e) / compliance)
	return F, finiteResult("pull", F)
}

// MarginOfOverpull returns the pull that is left above a hook load.
//
//	MOP = k F - hook load
//
// share is the part k of the limit F (body yield or weakest joint) that one is
// ready to use: 0.9 for drill pipe and 0.8 to 0.85 for tubing are common
// practice.
//
// Range: any numbers, not checked; negative where there is nothing left to
// pull.
//
// Source: API RP 7G (1998), margin of overpull.
func MarginOfOverpull(limit unit.Force, share float64, hookLoad unit.Force) unit.Force {
	return unit.Force(share)*limit - hookLoad
}

// Steps shows how the stuck depth comes about: what the sections above stretch by,
// and the length that is left to the one it is in.
func (d StuckDepth) Steps() []working.Step {
	if len(d.sections) == 0 {
		return nil
	}
	const source = "Lapeyrouse, chapter 4 (stuck pipe)"
	in := func(symbol string, v working.Value) working.Input { return working.Input{Symbol: symbol, Value: v} }
	e, dF := in("e", inches(d.stretch)), in("dF", working.Of(d.pull))
	left, above := working.Step{Name: "stretch left to the section it is stuck in", Symbol: "eL", Equation: "e", Inputs: []working.Input{e}, Source: "sum"}, unit.Length(0)
	depth := working.Step{Name: "stuck depth along the string", Symbol: "Ls", Value: working.Of(d.Depth), Source: "sum"}
	var steps []working.Step
	for i, s := range d.sections {
		mark := fmt.Sprint(i + 1)
		As, E := in("As"+mark, working.Of(s.Pipe.SteelArea())), in("E", working.Of(s.Pipe.Material.Young))
		steps = append(steps, working.Step{Name: "steel area, section " + mark, Symbol: As.Symbol, Equation: "pi/4*(D*D - d*d)", Value: As.Value, Source: "geometry",
			Inputs: []working.Input{in("D", working.Of(s.Pipe.OD)), in("d", working.Of(s.Pipe.ID))}})
		L := in("L"+mark, working.In(s.Length, unit.Foot, "ft"))
		if i == d.Section {
			left.Value = inches(d.stretch - above)
			L.Value = working.In(d.Into, unit.Foot, "ft")
			steps = append(steps, left, working.Step{Name: "free length in section " + mark, Symbol: L.Symbol, Equation: "E*" + As.Symbol + "*eL/dF", Value: L.Value, Source: source,
				Inputs: []working.Input{E, As, in("eL", left.Value), dF}})
		} else {
			stretch := s.Pipe.Stretch(d.pull, s.Length)
			above += stretch
			part := in("e"+mark, inches(stretch))
			steps = append(steps, working.Step{Name: "stretch of section " + mark, Symbol: part.Symbol, Equation: "dF*" + L.Symbol + "/(E*" + As.Symbol + ")", Value: part.Value, Source: source,
				Inputs: []working.Input{dF, L, E, As}})
			left.Equation += " - " + part.Symbol
			left.Inputs = append(left.Inputs, part)
		}
		if i > 0 {
			depth.Equation += " + "
		}
		depth.Equation += L.Symbol
		depth.Inputs = append(depth.Inputs, L)
	}
	return append(steps, depth)
}
