package record

import (
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence"
)

const falling = valve.Falling

// parted finds, on a pull, the joint whose parting the weight indicator shows: it
// falls away from its peak.
func (f *frame) parted(seen *sequence.Seen, p *sequence.Plan) (string, bool) {
	c := f.column(weight, "")
	n := block(len(f.rows))
	sum, count := 0., 0
	for i := max(len(f.rows)-n, f.peakRow); i < len(f.rows); i++ {
		if v := f.rows[i].cells[c]; v == v {
			sum, count = sum+v, count+1
		}
	}
	if count < 3 || f.peak-sum/float64(count) < 0.1*f.peak {
		return "", false
	}
	for _, e := range p.Steps[f.step].Expect {
		m := Moved{Action: e}
		if a := m.find(p); a != nil && a.Axial && a.LatchesTo == "" {
			return e, true
		}
	}
	return "", false
}

// tunePull gives the joint that parted the strength that its peak shows, as far as its
// band goes.
func (d *diagnoser) tunePull(action string, before *node, i int) (*node, error) {
	m := Moved{Action: action}
	a := m.find(d.plan)
	t := &a.Triggers[m.link]
	band := tension(t)
	q := d.plan.Clone()
	q.Steps[i].Pull = []unit.Force{unit.Force(1.3 * d.frames[i].peak)} // far enough to part it
	x, err := d.through(q, before.faults, i)
	if err != nil {
		return d.again(before.faults, i)
	}
	k := slices.IndexFunc(x.Events, func(e sequence.Event) bool { return e.Action == action && e.Partial == "" })
	if k < 0 {
		return d.again(before.faults, i)
	}
	want := band.Nominal + unit.Force(d.frames[i].peak) - x.Events[k].Pull
	// A peak between two rows was a little higher than the record has it.
	// The drag that was has its own band.
	drag := pulled(d.plan, i).Drag
	more := float64(drag.Greatest-drag.Least) / 2
	want = unit.Force(math.Min(math.Max(float64(want)-0.002*d.frames[i].peak, float64(band.Least)-more), float64(band.Greatest)+more))
	t.Pins, t.Tension = nil, unit.Exactly(want)
	return d.again(before.faults, i)
}

// pulled is the string that a step pulls.
func pulled(p *sequence.Plan, step int) *sequence.String {
	if p.Steps[step].On == sequence.OnOuterString && p.OuterString != nil {
		return p.OuterString
	}
	return p.String
}

// tension is the band of an axial trigger.
func tension(t *sequence.Trigger) unit.Band[unit.Force] {
	if t.Pins == nil {
		return t.Tension
	}
	return unit.Within(unit.Force(float64(t.Pins.Strength)*float64(t.Pins.Count)), t.Pins.Tolerance)
}
