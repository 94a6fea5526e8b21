package record

import (
	"errors"
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// Options are what isn't in the record. The zero value takes the defaults.
type Options struct {
	// Factor is between what volumes really go in for a pressure and those of the
	// programme, which takes walls as rigid and knows of no gas; from 0.95 to 1.3 where
	// left out (common practice: steel gives a fifth to a third of what brine does).
	Least    float64 `json:"least"`
	Greatest float64 `json:"greatest"`
	// Gauges are by how much the gauge of a compartment shows too much, beside what the
	// record says itself.
	Gauges map[string]unit.Pressure `json:"gauges"`
}

func (o *Options) validate(p *sequence.Plan) error {
	if o.Least == 0 && o.Greatest == 0 {
		o.Least, o.Greatest = 0.95, 1.3
	}
	var faults []error
	if !(o.Least > 0 && o.Least <= 1 && o.Greatest >= 1 && o.Greatest <= 10) {
		faults = append(faults, fmt.Errorf("record: the factor of volumes is from %v to %v; must begin above 0 and no higher than 1, and end from 1 to 10", o.Least, o.Greatest))
	}
	known := map[string]bool{}
	for _, s := range surfaces(p) {
		known[s] = true
	}
	for name := range o.Gauges {
		if !known[name] {
			faults = append(faults, fmt.Errorf("record: no gauge of a compartment %q", name))
		}
	}
	return errors.Join(faults...)
}

// Shares at which a hypothesis stops to explain, and is ruled out.
const (
	fits     = 1.
	ruledOut = 2.
)

// tolerance is how far an instrument may be trusted in a part, beyond its noise.
func (p *part) tolerance(c int) float64 {
	x := &p.columns[c]
	if x.known {
		return x.within
	}
	least, greatest, most := 0., 0., 0.
	seen := false
	for _, r := range p.rows {
		v := r.cells[c]
		if v != v {
			continue
		}
		if !seen {
			least, greatest, seen = v, v, true
		}
		least, greatest = min(least, v), max(greatest, v)
		most = max(most, v, -v)
	}
	switch x.what {
	case pressure:
		return max(0.01*most, float64(10*unit.PSI))
	case weight:
		return max(0.015*most, float64(1500*unit.PoundForce))
	}
	return 0.015 * (greatest - least)
}
