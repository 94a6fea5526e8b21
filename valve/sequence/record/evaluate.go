package record

import (
	"fmt"
	"math"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// digits of values in words.
const digits = 4

// item is one thing that was held against the record.
type item struct {
	share           float64 // of what it may be off
	says            string
	what, want, got string  // of an instrument that shows one value
	level           float64 // that it shows, SI
}

// outcome is a step's record held against a walk of it.
type outcome struct {
	items   []item
	fits    map[string]fit
	courses map[string]*course
	to      string // where a leak goes, as far as the record tells
	lost    float64
}

func (o *outcome) add(share float64, format string, args ...any) {
	o.items = append(o.items, item{share: share, says: fmt.Sprintf(format, args...)})
}

// shows adds an instrument that shows one value and would show another.
func (o *outcome) shows(share, level float64, what, want, got string) {
	o.items = append(o.items, item{share, fmt.Sprintf("%s: shows %s, and would show %s", what, got, want), what, want, got, level})
}

// worst is what speaks most against the walk.
func (o *outcome) worst() item {
	var w item
	for _, x := range o.items {
		if x.share > w.share {
			w = x
		}
	}
	return w
}

// evaluate holds the record of a step against a walk, with a leak of one compartment
// or none.
func (f *frame) evaluate(seen *sequence.Seen, p *sequence.Plan, opt *Options, leak string) *outcome {
	o := &outcome{fits: map[string]fit{}, courses: map[string]*course{}}
	if f.mode == aside || f.mode == asPlan {
		return o
	}
	spots := f.spots(seen)
	if f.mode == pumped {
		return o
	}
	if f.mode == swapped {
		f.gauges(o, seen, spots, "", nil)
		return o
	}
	var leaking *course
	if leak != "" {
		leaking = f.course(seen, spots, leak)
	}
	for _, name := range surfaces(p) {
		x := f.course(seen, spots, name)
		if x == nil {
			continue
		}
		o.courses[name] = x
		if x.still() {
			f.volumes(o, x, opt, leak, leaking)
		}
	}
	for _, name := range surfaces(p) {
		if x := o.courses[name]; x != nil && !f.pull { // a joint that parts lets fluid by in its own time
			f.flowing(o, x, p)
		}
	}
	f.gauges(o, seen, spots, leak, leaking)
	f.weights(o, seen, p)
	return o
}

// still tells whether there are rows in which nothing flows.
func (x *course) still() bool {
	for _, r := range x.run {
		if r >= 0 {
			return true
		}
	}
	return false
}

// volumes holds what a compartment took while nothing flowed against the walk.
func (f *frame) volumes(o *outcome, x *course, opt *Options, leak string, leaking *course) {
	a := x.fitted(opt.Least, opt.Greatest, 1, x.name == leak, x.load)
	if leak != "" && x.name != leak && a.misfit > fits && leaking != nil {
		// What has leaked there may come back here.
		b := x.fitted(opt.Least, opt.Greatest, -1, true, leaking.load)
		if b.leak < 0 && b.misfit < a.misfit/2 {
			a, o.to = b, x.name
		}
	}
	o.fits[x.name] = a
	if x.name == leak {
		o.lost = a.leak * x.load[len(x.load)-1]
	}
	if a.misfit == 0 {
		return
	}
	way := "more than"
	if a.by < 0 {
		way = "less than"
	}
	o.add(a.misfit, "%s: %s %s the volume that this takes, about %s into the step (row %d)",
		x.name, size(math.Abs(a.by)), way, clock(f.time[min(a.at, len(f.time)-1)]-f.time[0]), f.rows[min(a.at, len(f.rows)-1)].line)
}

func size(v float64) string {
	if math.Abs(v) < float64(0.5*unit.Barrel) {
		return fmt.Sprintf("%s gal", short(unit.Volume(v).In(unit.Gallon)))
	}
	return fmt.Sprintf("%s bbl", short(unit.Volume(v).In(unit.Barrel)))
}

// short is a number in three digits.
func short(v float64) string { return fmt.Sprintf("%.3g", v) }

func clock(seconds float64) string {
	if seconds < 120 {
		return fmt.Sprintf("%.0f s", seconds)
	}
	return fmt.Sprintf("%.0f min", seconds/60)
}

// takes tells whether what meets a body is known to let fluid by: another surface, or a
// formation whose inflow the plan states. Another formation's face may be plugged.
func takes(p *sequence.Plan, m sequence.OtherReference) bool {
	for _, f := range p.Formations {
		if f.Name == m.Name {
			return f.Inflow != nil
		}
	}
	return true
}

// surelyFlows is the differential that makes fluid flow whatever stands in its way.
const surelyFlows = 250 * unit.PSI

// flowing holds stretches in which something must flow against the record.
func (f *frame) flowing(o *outcome, x *course, p *sequence.Plan) {
	for _, w := range x.flows {
		if w.turns || w.last-w.first < 3 {
			continue
		}
		n := min(3, (w.last-w.first)/2+1)
		mean := func(from int, of []float64) float64 {
			sum := 0.
			for i := from; i < from+n; i++ {
				sum += of[i]
			}
			return sum / float64(n)
		}
		pumped := mean(w.last-n+1, x.net) - mean(w.first, x.net)
		kept := mean(w.last-n+1, x.closed) - mean(w.first, x.closed)
		g := 1.
		slack := 0.3 * math.Abs(kept)
		if y, ok := o.fits[x.name]; ok && y.sure && !math.IsNaN(y.factor) {
			g, slack = y.factor, 0.05*math.Abs(kept)
		}
		gone := pumped - g*kept
		if !w.meets.Out {
			gone = -gone
		}
		may := x.within + 4*x.noise/math.Sqrt(float64(n)) + slack + 1e-9
		share := gone / may
		if share >= 1 {
			continue
		}
		off := 0.
		begun := w.after != "" || x.driven || f.drives(w.meets.Name)
		switch {
		case w.meets.Drive >= surelyFlows && begun && takes(p, w.meets):
			off = 2.5 - 1.5*max(share, 0)
		case w.meets.Drive >= 50*unit.PSI && begun, w.meets.Drive >= surelyFlows:
			off = 1.5 - 0.5*max(share, 0)
		default:
			continue
		}
		says := "nothing more than pressure takes went in"
		if !w.meets.Out {
			says = "nothing more than pressure gives came back"
		}
		after := ""
		if w.after != "" {
			after = " once “" + w.after + "” has happened"
		}
		o.add(off, "%s: %s, though %s drive fluid %s %s%s", x.name, says, w.meets.Drive.Rounded(digits), toFrom(w.meets.Out), w.meets.Name, after)
	}
}

func toFrom(out bool) string {
	if out {
		return "to"
	}
	return "from"
}

// gauges holds the gauges of what isn't moved against the walk, where it stands still.
func (f *frame) gauges(o *outcome, seen *sequence.Seen, spots []spot, leak string, leaking *course) {
	type end struct{ first, last, leg int }
	var ends []end
	n := block(len(f.rows))
	switch {
	case f.mode == swapped || f.pull || len(f.legs) == 0:
		ends = []end{{max(len(f.rows)-n, 0), len(f.rows), len(seen.Legs) - 1}}
	default:
		if f.rest >= 3 {
			ends = append(ends, end{max(f.rest-n, 0), f.rest, 0})
		}
		for k, l := range f.legs {
			if k+1 < len(seen.Legs) {
				ends = append(ends, end{max(l.end, l.next-n, l.begin), l.next, k + 1})
			}
		}
	}
	for c := range f.columns {
		x := &f.columns[c]
		if x.what != pressure || f.drives(x.compartment) || !f.ample[c] {
			continue
		}
		for _, e := range ends {
			want := shown(seen.Legs[e.leg].To, x.compartment)
			sum, count := 0., 0
			for i := e.first; i < e.last && i < len(f.rows); i++ {
				if v := f.rows[i].cells[c]; v == v {
					sum, count = sum+v, count+1
				}
			}
			if count == 0 || math.IsNaN(want) {
				continue
			}
			got := sum / float64(count)
			may := x.within
			if !x.known {
				may = max(0.02*max(math.Abs(want), math.Abs(got)), float64(20*unit.PSI))
			}
			may += 4 * f.noise[c] / math.Sqrt(float64(count))
			share := math.Abs(got-want) / may
			if share > fits && leaking != nil && x.compartment != leak && got > want {
				o.to = x.compartment // what leaks raises it
				continue
			}
			o.shows(share, max(got, want), x.compartment+" gauge at the end of "+legName(seen.Legs[e.leg].Label), unit.Pressure(want).Rounded(digits), unit.Pressure(got).Rounded(digits))
		}
	}
}

func legName(label string) string {
	if label == "start" || label == "" {
		return "the step's start"
	}
	return label
}

// weights holds what the weight indicator comes down to against the walk.
func (f *frame) weights(o *outcome, seen *sequence.Seen, p *sequence.Plan) {
	if !f.pull {
		return
	}
	want := float64(seen.Legs[len(seen.Legs)-1].Weight)
	c := f.column(weight, "")
	n := block(len(f.rows))
	sum, count := 0., 0
	for i := max(len(f.rows)-n, 0); i < len(f.rows); i++ {
		if v := f.rows[i].cells[c]; v == v {
			sum, count = sum+v, count+1
		}
	}
	if count == 0 || want == 0 {
		return
	}
	got := sum / float64(count)
	may := f.columns[c].within
	if !f.columns[c].known {
		may = max(0.03*want, float64(2000*unit.PoundForce))
	}
	drag := pulled(p, f.step).Drag
	may += float64(drag.Greatest-drag.Least)/2 + 4*f.noise[c]/math.Sqrt(float64(count))
	o.shows(math.Abs(got-want)/may, got, "weight indicator at the end", unit.Force(want).Rounded(digits), unit.Force(got).Rounded(digits))
}
