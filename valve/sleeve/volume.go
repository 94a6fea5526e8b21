package sleeve

import (
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/controlline"
)

// Signature is what one line takes or gives during an action: what the crew at
// the panel should measure.
type Signature struct {
	Line    int         `json:"line"`    // CloseLine, or a sleeve's open line
	Storage unit.Volume `json:"storage"` // to pressure the line; comes back when it is vented
	Swept   unit.Volume `json:"swept"`   // by sleeves: positive pumped in, negative returned
}

// Pumped is what goes into the line, or returns from it if negative, up to the
// end of the shift.
//
//	V = storage + swept
//
// Range: any volumes; they aren't checked.
//
// Source: definition.
func (g Signature) Pumped() unit.Volume { return g.Storage + g.Swept }

// Signatures returns the volumes of a good action at a panel pressure, for the
// lines that take or give something: the close line first.
//
//	open    swept in: Ao·stroke to each open line; returned: Ac·stroke by the close line
//	close   swept in: ΣAc·stroke to the close line; returned: Ao·stroke by each open line
//
// A held open line takes its storage, and nothing is swept. Errors: the
// system's, an action out of range, a pressure that is negative or not finite.
// Source: balance of volumes.
func (s System) Signatures(before []Position, a Action, pressure unit.Pressure) ([]Signature, error) {
	if err := fault.Join(scope, s.Validate(), fault.At("before", s.checkPositions(before))); err != nil {
		return nil, err
	}
	if err := s.checkAction(before, a); err != nil {
		return nil, err
	}
	sign := unit.Volume(1)
	if a.Close {
		sign = -1
	}
	shut := Signature{Line: CloseLine}
	var open []Signature
	for i, v := range s.Sleeves {
		g := Signature{Line: i}
		if a.pressures(i) {
			st, err := s.OpenLines[i].Storage(s.Liquid, pressure)
			if err != nil {
				return nil, fault.Join(scope, fault.At(fault.Index("OpenLines", i), err))
			}
			g.Storage = st.Total()
		}
		if slices.Contains(a.Move, i) {
			g.Swept = sign * unit.Volume(float64(v.OpenArea)*float64(v.Stroke))
			shut.Swept -= sign * unit.Volume(float64(v.CloseArea)*float64(v.Stroke))
		}
		if g.Storage != 0 || g.Swept != 0 {
			open = append(open, g)
		}
	}
	if a.Close {
		st, err := s.CloseLine.Storage(s.Liquid, pressure)
		if err != nil {
			return nil, fault.Join(scope, fault.At("CloseLine", err))
		}
		shut.Storage = st.Total()
	}
	return append([]Signature{shut}, open...), nil
}

// Shift returns the shift of one sleeve as controlline plans and diagnoses it:
// the close line is taken to the sleeve's depth, with its further length beyond
// it left as it is.
//
//	move   (F + Ac·h)/Ao − h opening, (F + Ao·h)/Ac − h closing, F at its greatest
//
// Errors: the system's, no such sleeve, or a pump pressure out of range.
//
// Source: balance of forces on the piston.
func (s System) Shift(sleeve int, closing bool, pump unit.Pressure) (controlline.Shift, error) {
	x, err := s.Shifting(sleeve)
	if err := fault.Join(scope, err, fault.Between("pump", pump, 0, maxPressure)); err != nil {
		return controlline.Shift{}, err
	}
	v := s.Sleeves[sleeve]
	common := s.CloseLine
	common.TVD = v.TVD
	in, out := unit.Volume(float64(v.OpenArea)*float64(v.Stroke)), unit.Volume(float64(v.CloseArea)*float64(v.Stroke))
	shift := controlline.Shift{Feed: s.OpenLines[sleeve], Vent: common, Liquid: s.Liquid, Pump: pump,
		Move: max(0, x.Open.Greatest), Swept: in, Displaced: out}
	if closing {
		shift.Feed, shift.Vent = shift.Vent, shift.Feed
		shift.Move, shift.Swept, shift.Displaced = max(0, x.Close.Greatest), out, in
	}
	return shift, nil
}
