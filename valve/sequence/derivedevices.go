package sequence

import (
	"fmt"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"completion.example/valve/sequence/internal/assembly"
)

// devices are what pressure or pull moves.
func (d *deriver) devices() {
	for i := range d.Strings {
		for k := range d.Strings[i].Pieces {
			p, x := &d.Strings[i].Pieces[k], &d.a.Strings[i].Pieces[k]
			v := Device{Name: p.Name, MD: unit.Length(p.At), Error: x.Error}
			in, out := d.sensedBetween(i, p, x)
			switch x.Kind {
			case PackerPiece:
				d.sets(i, p, x, &v)
			case SleevePiece, IsolationValve:
				d.shifts(p, x, &v, in, out)
			case PlugPiece:
				if len(x.Shears) > 0 {
					v.Actions = []Action{{Name: "shears out", Inside: in, Outside: out, Triggers: x.Shears, Opens: []string{p.Name}}}
				}
				v.Note = fmt.Sprintf("feels %s less %s", in, out)
			case ReleasePiece:
				v.Actions = []Action{{Name: "parts", Axial: true, Seal: x.Seal, Triggers: x.Parts, Opens: []string{"parted " + p.Name}, Releases: true}}
				v.On = d.on(i)
				v.Note = "its joint feels the string's load at its depth; the string is free above it once it has parted"
				d.part = p.Name + ": parts"
			case SafetyValve:
				d.held(p, x, &v, in)
			case PipeLength, SealStack, SealBore, ScreenPiece, OtherPiece:
			}
			if len(v.Actions) > 0 {
				d.out.Devices = append(d.out.Devices, v)
			}
		}
	}
}

// sensedBetween is the inside and the outside of a piece: whose differential it feels and
// bears.
func (d *deriver) sensedBetween(i int, p *assembly.Placed, x *Piece) (in, out string) {
	in, out = d.space(d.Inside(i), p.At), d.space(i, p.At)
	switch {
	case x.Kind == PackerPiece || x.Kind == SealStack: // from below
		return out, d.above(i, p.At)
	case x.cuts() == assembly.Bore && i != d.Innermost():
		return d.above(i+1, p.At), d.space(i+1, p.At)
	}
	return in, out
}

// sets is a packer.
func (d *deriver) sets(i int, p *assembly.Placed, x *Piece, v *Device) {
	if len(x.Sets) == 0 {
		return
	}
	in, around := d.above(d.Inside(i), p.At), d.above(i, p.At)
	if len(x.Starts) > 0 {
		v.Actions = append(v.Actions, Action{Name: "starts to set", Inside: in, Outside: around, Triggers: x.Starts})
	}
	a := Action{Name: "sets", Inside: in, Outside: around, Triggers: x.Sets}
	if d.joined(p.Name + " bypass") {
		a.Closes = []string{p.Name + " bypass"}
	}
	v.Note = fmt.Sprintf("feels %s less %s; set, it closes the way around it", in, around)
	if (i == d.Innermost() || d.outer(i)) && !x.Free {
		a.Holds, v.On = true, d.on(i)
		v.Note += " and holds the string"
	}
	v.Actions = append(v.Actions, a)
}

// outer tells whether a string is the one around the innermost, where the plan looks at
// that too.
func (d *deriver) outer(i int) bool {
	return d.plan.OuterString != nil && i >= 0 && i == d.Innermost()-1
}

// on is which string of the plan a string of the tally is.
func (d *deriver) on(i int) WhichString {
	if d.outer(i) {
		return OnOuterString
	}
	return OnString
}

// joined tells whether a port was made.
func (d *deriver) joined(port string) bool {
	for _, w := range d.ways {
		if w.name == port {
			return true
		}
	}
	return false
}

// shifts is a sleeve or an isolation valve.
func (d *deriver) shifts(p *assembly.Placed, x *Piece, v *Device, in, out string) {
	opens, closes := x.Opens, x.Closes
	if len(x.Shifts) > 0 {
		opens, closes = x.Shifts, x.Shifts
	}
	v.Note = fmt.Sprintf("feels %s less %s", in, out)
	from, against := [2]string{in, in}, [2]string{out, out} // opening, closing
	if x.OpenLine != "" {
		other := x.CloseLine
		if other == "" {
			other = in
		}
		from, against = [2]string{x.OpenLine, other}, [2]string{other, x.OpenLine}
		v.Note = fmt.Sprintf("opens on %s less %s, closes on the reverse", x.OpenLine, other)
	}
	if len(opens) > 0 {
		a := Action{Name: "opens", Inside: from[0], Outside: against[0], Triggers: opens, Opens: []string{p.Name}}
		if len(closes) > 0 {
			a.Arms, a.Disarmed = []string{"closes"}, x.Open
		}
		v.Actions = append(v.Actions, a)
		v.Note += "; " + manner(opens)
	}
	if len(closes) > 0 {
		a := Action{Name: "closes", Inside: from[1], Outside: against[1], Triggers: closes, Closes: []string{p.Name}}
		if len(opens) > 0 {
			a.Arms, a.Disarmed = []string{"opens"}, !x.Open
		}
		v.Actions = append(v.Actions, a)
	}
}

// manner says how a row of triggers opens.
func manner(row []Trigger) string {
	last := row[len(row)-1]
	text := "opens on pressure"
	if last.Direction == valve.Falling {
		text = "opens as pressure is bled off"
	}
	if first := row[0]; len(row) > 1 && first.Count > 1 {
		text += fmt.Sprintf(", after %d cycles", first.Count)
	} else if len(row) > 1 {
		text += ", after it was unlocked"
	}
	return text
}

// held is a safety valve: the line holds it open.
func (d *deriver) held(p *assembly.Placed, x *Piece, v *Device, in string) {
	v.Note = fmt.Sprintf("opens on %s less %s, and closes where that falls too low; the string's inside stays one compartment", x.Line, in)
	if len(x.Opens) > 0 {
		v.Actions = append(v.Actions, Action{Name: "opens", Inside: x.Line, Outside: in, Triggers: x.Opens})
	}
	if len(x.Closes) > 0 {
		falling := append([]Trigger(nil), x.Closes...)
		for i := range falling {
			falling[i].Direction = valve.Falling
		}
		v.Actions = append(v.Actions, Action{Name: "closes", Inside: x.Line, Outside: in, Triggers: falling})
		if len(x.Opens) > 0 {
			v.Actions[0].Arms, v.Actions[1].Arms, v.Actions[1].Disarmed = []string{"closes"}, []string{"opens"}, true
		}
	}
}
