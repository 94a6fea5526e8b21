package confined

import (
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Criterion is what a pressure test has to meet.
type Criterion struct {
	Name   string        `json:"name"`
	Hold   time.Duration `json:"hold"` // from the start of the hold
	Source string        `json:"source"`
	Status string        `json:"status"` // "published", "common practice" or "memory": how sure the figures are

	// MostDecline is the greatest fall over the hold, as a share of the pressure
	// at its start. Zero allows no fall but what the gauge can't resolve.
	MostDecline float64 `json:"most_decline"`
	// Stabilizing asks that the fall slows down, or has stopped.
	Stabilizing bool `json:"stabilizing,omitempty"`
	// AfterTemperature judges the fall less what cooling explains.
	AfterTemperature bool `json:"after_temperature,omitempty"`
}

// Presets lists criteria in use. They are figures to check against the rules
// that apply: a regulation may have changed, and those marked memory were not
// read in their source.
//
//	least p(end) = (1 − d)·p(start)
//
// Source: of each criterion stands in it.
func Presets() []Criterion {
	return []Criterion{
		{
			Name: "us-offshore-casing", Hold: 30 * time.Minute, MostDecline: 0.10,
			Source: "30 CFR 250.721(f): no more than 10 % decline in 30 minutes", Status: "published",
		},
		{
			Name: "alaska-injection", Hold: 30 * time.Minute, MostDecline: 0.10, Stabilizing: true,
			Source: "20 AAC 25.412(c): stabilizing pressure, no more than 10 % decline in 30 minutes", Status: "published",
		},
		{
			Name: "alabama-cavity", Hold: 24 * time.Hour, MostDecline: 0.03, AfterTemperature: true,
			Source: "Ala. Admin. Code 400-6-8-.01: 24 hours, 3 % after the effect of temperature", Status: "published",
		},
		{
			Name: "packer-liquid", Hold: 15 * time.Minute, MostDecline: 0.01,
			Source: "ISO 14310:2008, 6.5.2: 15 minutes or more, liquid no more than 1 % decline", Status: "memory",
		},
		{
			Name: "barrier-low", Hold: 5 * time.Minute,
			Source: "NORSOK D-010, 4.2.3.5: 15 to 20 bar for 5 minutes, stable", Status: "memory",
		},
		{
			Name: "barrier-high", Hold: 10 * time.Minute,
			Source: "NORSOK D-010, 4.2.3.5: greatest expected differential for 10 minutes, stable", Status: "memory",
		},
	}
}

// Preset returns the criterion of a name; an unknown name is an error that
// lists those there are.
func Preset(name string) (Criterion, error) {
	var names []string
	for _, c := range Presets() {
		if c.Name == name {
			return c, nil
		}
		names = append(names, c.Name)
	}
	return Criterion{}, fault.NewIn("confined", "name", "is %q; must be one of %s", name, strings.Join(names, ", "))
}

// Validate reports everything that is wrong with c.
func (c Criterion) Validate() error {
	f := fault.In("confined")
	f.Add(fault.Duration("Hold", c.Hold, time.Second, 1e7*time.Second))
	f.Add(fault.Between("MostDecline", c.MostDecline, 0, 1))
	return f.Err()
}

// Allowed returns the fall that the criterion lets pass from a pressure at the
// start of the hold.
//
//	Δp = d·p
//
// Range: any pressure; a share from 0 to 1, which Validate checks.
//
// Source: definition of a decline as a share of the pressure.
func (c Criterion) Allowed(start unit.Pressure) unit.Pressure {
	return unit.Pressure(c.MostDecline) * start
}
