package controlline

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Reading is what was measured at the panel during a shift, with the pump
// pressure still held.
type Reading struct {
	Pumped      unit.Volume `json:"pumped"`
	Returned    unit.Volume `json:"returned"`
	Uncertainty unit.Volume `json:"uncertainty"` // of each of the two
}

// Finding is what a reading says.
type Finding uint8

// Findings.
const (
	Shifted    Finding = iota // full stroke: volumes as planned
	NotMoved                  // the line took up its storage, and nothing more
	PartStroke                // moved, and less than the stroke
	PassingBy                 // more came back than the piston gives: past its seals, or through a second device
	Losing                    // more was pumped than came back accounts for: out of the feed line, or past seals into the well
	Gaining                   // more came back than was pumped accounts for: from the well, or a warming vent line
	CannotTell                // the measurement is too coarse to tell a stroke from nothing
)

var findings = [...]string{"shifted", "not moved", "part stroke", "passing by", "losing", "gaining", "cannot tell"}

// String returns the finding in words.
func (f Finding) String() string {
	if int(f) < len(findings) {
		return findings[f]
	}
	return fmt.Sprintf("finding %d", uint8(f))
}

// MarshalText writes the finding in words.
func (f Finding) MarshalText() ([]byte, error) {
	if int(f) >= len(findings) {
		return nil, fault.NewIn(scope, "", "finding is %d; must be a known one", uint8(f))
	}
	return []byte(findings[f]), nil
}

// UnmarshalText reads a finding as String writes it.
func (f *Finding) UnmarshalText(text []byte) error {
	for i, s := range findings {
		if s == string(text) {
			*f = Finding(i)
			return nil
		}
	}
	return fault.NewIn(scope, "", "finding is %q; must be one of %q", text, findings)
}

// Diagnosis is a reading held against a plan.
type Diagnosis struct {
	Finding   Finding     `json:"finding"`
	Past      unit.Volume `json:"past"`      // pumped beyond the line's storage
	Stroke    float64     `json:"stroke"`    // share of the stroke by the returns; more than 1 isn't stroke
	Unbalance unit.Volume `json:"unbalance"` // past minus what the returns account for on the feed side
}

// Diagnose tells a shift from a leak by the volumes.
//
//	past       = pumped − storage
//	stroke     = returned/displaced
//	unbalance  = past − stroke·swept
//
// With u the uncertainty of a volume and U that of the unbalance,
// u·(1 + swept/displaced):
//
//	cannot tell   2·u ≥ the smaller of swept and displaced
//	losing        unbalance > U
//	gaining       unbalance < −U
//	passing by    returned > displaced + u
//	not moved     returned ≤ u and past ≤ u
//	shifted       returned ≥ displaced − u
//	part stroke   anything between
//
// A leak past the piston's seals that stops short of a stroke's volume looks like
// a part stroke: hold the pressure, and see whether returns cease.
//
// Displaced must be positive: without returns there is nothing to compare. It is
// an error if a volume is negative or not finite. Source: balance of volumes.
func (s Shift) Diagnose(p ShiftPlan, r Reading) (Diagnosis, error) {
	f := fault.In(scope)
	f.Add(fault.Between("Pumped", r.Pumped, 0, maxRead))
	f.Add(fault.Between("Returned", r.Returned, 0, maxRead))
	f.Add(fault.Between("Uncertainty", r.Uncertainty, 0, maxRead))
	f.Add(fault.AboveTo("Swept", s.Swept, minSwept, maxSwept))
	f.Add(fault.AboveTo("Displaced", s.Displaced, minSwept, maxSwept))
	f.Add(fault.Between("Held", p.Held, 0, maxRead))
	if err := f.Err(); err != nil {
		return Diagnosis{}, err
	}
	ratio := float64(s.Swept / s.Displaced)
	d := Diagnosis{
		Past:   r.Pumped - p.Held,
		Stroke: float64(r.Returned / s.Displaced),
	}
	d.Unbalance = d.Past - unit.Volume(ratio*float64(r.Returned))
	u := r.Uncertainty
	U := unit.Volume(float64(u) * (1 + ratio))
	switch {
	case 2*u >= min(s.Swept, s.Displaced):
		d.Finding = CannotTell
	case d.Unbalance > U:
		d.Finding = Losing
	case d.Unbalance < -U:
		d.Finding = Gaining
	case r.Returned > s.Displaced+u:
		d.Finding = PassingBy
	case r.Returned <= u && d.Past <= u:
		d.Finding = NotMoved
	case r.Returned >= s.Displaced-u:
		d.Finding = Shifted
	default:
		d.Finding = PartStroke
	}
	return d, nil
}
