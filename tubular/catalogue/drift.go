package catalogue

import "completion.example/hydrostatics/unit"

// Drift returns the diameter of API's standard drift mandrel: what passes
// through every joint of new pipe.
//
//	tubing up to 2-7/8 in              d - 3/32 in
//	tubing above, casing below 9-5/8   d - 1/8 in
//	casing 9-5/8 to 13-3/8 in          d - 5/32 in
//	casing above                       d - 3/16 in
//
// Anything but casing is taken as tubing. Some casing is made with a special
// drift, which is larger; that is the maker's to say.
//
// Range: any sizes, not checked: a bore below the allowance gives a negative
// drift. NaN in, NaN out.
//
// Source: API Spec 5CT, drift mandrel; the rules are from memory, the drifts of
// the published rows confirm them.
func Drift(kind Kind, od, id unit.Length) unit.Length {
	const slack = 0.001 * unit.Inch
	switch casing := kind == Casing; {
	case od != od:
		return od // NaN
	case casing && od > 13.375*unit.Inch+slack:
		return id - 3.0/16*unit.Inch
	case casing && od > 9.625*unit.Inch-slack:
		return id - 5.0/32*unit.Inch
	case !casing && od < 2.875*unit.Inch+slack:
		return id - 3.0/32*unit.Inch
	}
	return id - 1.0/8*unit.Inch
}
